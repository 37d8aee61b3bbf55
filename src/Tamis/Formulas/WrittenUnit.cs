namespace Tamis.Formulas;

/// <summary>The units of mass and volume that a cook writes.</summary>
internal static class WrittenUnit
{
    private static readonly Dictionary<string, Func<double>> Grams = new(StringComparer.Ordinal)
    {
        ["g"] = () => 1,
        ["gr"] = () => 1,
        ["gram"] = () => 1,
        ["gramme"] = () => 1,
        ["kg"] = () => 1000,
        ["kilo"] = () => 1000,
        ["kilogram"] = () => 1000,
        ["mg"] = () => 0.001,
        ["oz"] = () => UnitsNet.Mass.FromOunces(1).Grams,
        ["ounce"] = () => UnitsNet.Mass.FromOunces(1).Grams,
        ["lb"] = () => UnitsNet.Mass.FromPounds(1).Grams,
        ["pound"] = () => UnitsNet.Mass.FromPounds(1).Grams,
    };

    private static readonly Dictionary<string, Func<KitchenMeasures, double?>> Millilitres = new(StringComparer.Ordinal)
    {
        ["ml"] = _ => 1,
        ["millilitre"] = _ => 1,
        ["milliliter"] = _ => 1,
        ["cl"] = _ => 10,
        ["centilitre"] = _ => 10,
        ["dl"] = _ => 100,
        ["decilitre"] = _ => 100,
        ["l"] = _ => 1000,
        ["litre"] = _ => 1000,
        ["liter"] = _ => 1000,
        ["tbsp"] = measures => measures.TablespoonMillilitres,
        ["tablespoon"] = measures => measures.TablespoonMillilitres,
        ["tsp"] = measures => measures.TeaspoonMillilitres,
        ["teaspoon"] = measures => measures.TeaspoonMillilitres,
        ["cup"] = measures => measures.CupMillilitres,
        ["fl oz"] = measures => measures.FluidOunceMillilitres,
        ["fluid ounce"] = measures => measures.FluidOunceMillilitres,
    };

    /// <summary>All words of mass and volume, singular.</summary>
    public static IEnumerable<string> Words => Grams.Keys.Concat(Millilitres.Keys);

    /// <summary>The unit that a word names: mass in grams or volume in millilitres to one of it; null where it names none.</summary>
    public static (QuantityKind Kind, double Factor)? Find(string word, KitchenMeasures measures, out string? expected)
    {
        expected = null;
        var key = PieceWord.Singular(Names.Key(word.Replace('.', ' ')));
        if (Grams.TryGetValue(key, out var grams)) return (QuantityKind.Mass, grams());
        if (!Millilitres.TryGetValue(key, out var millilitres)) return null;
        if (millilitres(measures) is { } factor) return (QuantityKind.Volume, factor);
        expected = $"a unit of the {measures.Name} kitchen (ml, tbsp, tsp, cup), which has no {key}";
        return null;
    }
}
