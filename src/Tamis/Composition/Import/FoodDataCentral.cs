using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>Imports the CSV download of USDA FoodData Central: foods, nutrients, portions, derivations, factors.</summary>
/// <remarks>Columns are found by name, because the number of them differs from release to release. Taken are foods that are records of a table
/// (foundation, SR legacy, survey); samples, acquisitions and branded labels are left and counted.</remarks>
internal sealed class FoodDataCentral
{
    private static readonly SourceRow Publication = new("FDC", Evidence.Published, "USDA FoodData Central")
    {
        Publisher = "U.S. Department of Agriculture, Agricultural Research Service", Licence = "CC0 1.0 (public domain)",
        Cite = "U.S. Department of Agriculture, Agricultural Research Service. FoodData Central. fdc.nal.usda.gov.",
    };

    private static readonly HashSet<string> Records = new(StringComparer.OrdinalIgnoreCase) { "foundation_food", "sr_legacy_food", "survey_fndds_food" };

    private readonly string _folder;
    private readonly ImportDraft _draft;
    private readonly Dictionary<string, ImportCode> _nutrients = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _foods = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _derivations = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _units = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _groups = new(StringComparer.Ordinal);

    private FoodDataCentral(string folder, ImportCodes codes) => (_folder, _draft) = (folder, new("FoodData Central", Publication, codes));

    /// <summary>Imports a folder.</summary>
    /// <exception cref="TableException">A file that must be there is not, or something in the files cannot be read.</exception>
    public static Imported Import(string folder, ImportCodes codes) => new FoodDataCentral(folder, codes).Run();

    private Imported Run()
    {
        ForEach("food_category.csv", ["id", "description"], false, row => _groups[row.Text("id")] = row.Text("description"));
        ForEach("food_nutrient_derivation.csv", ["id", "code", "description"], false, row => _derivations[row.Text("id")] = $"{row.Text("code")}, {row.Text("description")}");
        ForEach("measure_unit.csv", ["id", "name"], false, row => _units[row.Text("id")] = row.Text("name"));
        ForEach("food.csv", ["fdc_id", "data_type", "description"], true, Food);
        foreach (var file in (string[])["sr_legacy_food.csv", "foundation_food.csv"]) ForEach(file, ["fdc_id", "NDB_number"], false, OlderNumber);
        Factors();
        ForEach("food_component.csv", ["fdc_id", "is_refuse", "pct_weight"], false, Refuse);
        ForEach("nutrient.csv", ["id", "name", "unit_name"], true, Nutrient);
        ForEach("food_nutrient.csv", ["fdc_id", "nutrient_id", "amount"], true, Value);
        ForEach("food_portion.csv", ["fdc_id", "amount", "gram_weight"], false, Portion);
        return _draft.Build();
    }

    private void ForEach(string file, IReadOnlyList<string> needed, bool isNeeded, Action<OpenRow> each)
    {
        var path = Path.Combine(_folder, file);
        if (File.Exists(path)) _draft.Read(file, OpenRow.Read(path, needed, _draft.Problems, each));
        else if (isNeeded) _draft.Problems.Add(new(file, 0, "", "", "there is no such file in the folder, and the layout needs it"));
    }

    private void Food(OpenRow row)
    {
        var (id, type) = (row.Text("fdc_id"), row.Text("data_type"));
        if (!Records.Contains(type))
        {
            _draft.Note(ImportDeed.Left, "foods", $"no record of a table: {type}", row.Text("description"));
            return;
        }
        if (id.Length == 0)
        {
            row.Note("fdc_id", "the number of the food");
            return;
        }
        if (_foods.ContainsKey(id)) _draft.Note(ImportDeed.Merged, "foods", "a number that comes again: the first description counts", $"{id} {row.Text("description")}");
        var category = row.Text("food_category_id");
        _foods[id] = _draft.Add(new Food($"FDC {id}", row.Text("description"), _groups.GetValueOrDefault(category, category), _draft.Source with { Locator = $"food {id}" }));
    }

    private void OlderNumber(OpenRow row)
    {
        // Some files lost the leading zero of the older number, which has five digits.
        if (_foods.TryGetValue(row.Text("fdc_id"), out var food) && row.Text("NDB_number") is { Length: > 0 } number)
            _draft.Replace(food, known => known with { Notes = $"Number {number.PadLeft(5, '0')} of the Standard Reference." });
    }

    private void Factors()
    {
        Dictionary<string, int> foodOf = new(StringComparer.Ordinal);
        ForEach("food_nutrient_conversion_factor.csv", ["id", "fdc_id"], false, row => { if (_foods.TryGetValue(row.Text("fdc_id"), out var food)) foodOf[row.Text("id")] = food; });
        ForEach("food_protein_conversion_factor.csv", ["food_nutrient_conversion_factor_id", "value"], false, row =>
        {
            if (foodOf.TryGetValue(row.Text("food_nutrient_conversion_factor_id"), out var food) && row.Number("value") is > 0 and var factor) _draft.Replace(food, known => known with { NitrogenFactor = factor });
        });
        ForEach("food_calorie_conversion_factor.csv", ["food_nutrient_conversion_factor_id", "protein_value", "fat_value", "carbohydrate_value"], false, row =>
        {
            var (protein, fat, carbohydrate) = (row.Number("protein_value"), row.Number("fat_value"), row.Number("carbohydrate_value"));
            if (!foodOf.TryGetValue(row.Text("food_nutrient_conversion_factor_id"), out var food)) return;
            if (double.IsNaN(protein + fat + carbohydrate)) _draft.Note(ImportDeed.Left, "energy factors", "not all three are stated", _draft.FoodAt(food).Id);
            else _draft.Replace(food, known => known with { EnergyFactors = new(protein, fat, carbohydrate) });
        });
    }

    private void Refuse(OpenRow row)
    {
        if (_foods.TryGetValue(row.Text("fdc_id"), out var food) && row.Text("is_refuse") is "Y" or "y" or "1" && row.Number("pct_weight") is >= 0 and <= 100 and var percent)
            _draft.Replace(food, known => known with { EdiblePercent = (known.EdiblePercent ?? 100) - percent });
    }

    // By its own number, or else by the number that the Standard Reference gave it.
    private void Nutrient(OpenRow row)
    {
        var (id, number, unit) = (row.Text("id"), row.Text("nutrient_nbr"), row.Text("unit_name"));
        if (!_draft.Codes.Of("fdc").TryGetValue(id, out var code) && !_draft.Codes.Of("sr28").TryGetValue(number, out code))
            _draft.Note(ImportDeed.Left, "nutrients", "import-codes.csv has no tag for it", $"{id} {row.Text("name")}");
        else if (!string.Equals(unit, code.Unit, StringComparison.OrdinalIgnoreCase)) row.Note("unit_name", $"{code.Unit}, the unit of nutrient {id} in import-codes.csv");
        else _nutrients[id] = code;
    }

    private void Value(OpenRow row)
    {
        if (!_foods.TryGetValue(row.Text("fdc_id"), out var food)) _draft.Note(ImportDeed.Left, "values", "of a food that was left");
        else if (!_nutrients.TryGetValue(row.Text("nutrient_id"), out var code)) _draft.Note(ImportDeed.Left, "values", "of a nutrient that was left", row.Text("nutrient_id"));
        else if (row.Number("amount") is var amount && double.IsNaN(amount)) _draft.Note(ImportDeed.Left, "values", "blank in the file: unknown, not zero", $"{_draft.FoodAt(food).Id} {code.Name}");
        else if (amount < 0) _draft.Note(ImportDeed.Left, "values", "below zero, as a difference can come out", $"{_draft.FoodAt(food).Id} {code.Name}");
        else
        {
            var method = _derivations.GetValueOrDefault(row.Text("derivation_id"), "");
            var limit = row.Number("loq");
            // Nothing found by a method with a limit says only that there is less than the limit.
            _draft.Take(food, code, amount == 0 && limit > 0
                ? new ContentRow(ContentState.BelowLimit, double.NaN, Publication.Key, method) { Low = 0, High = limit }
                : new ContentRow(amount == 0 ? ContentState.Zero : ContentState.Measured, amount, Publication.Key, method)
                {
                    Low = row.Number("min"), High = row.Number("max"), Samples = row.Samples("data_points"),
                });
        }
    }

    private void Portion(OpenRow row)
    {
        if (!_foods.TryGetValue(row.Text("fdc_id"), out var food)) return;
        var (amount, grams) = (row.Number("amount"), row.Number("gram_weight"));
        var unit = _units.GetValueOrDefault(row.Text("measure_unit_id"), "");
        // The unit stands in its own table, in the modifier, or, with the amount, in a description: each release its own way.
        string[] parts = [unit is "undetermined" ? "" : unit, row.Text("portion_description"), double.IsNaN(amount) ? "" : row.Text("modifier")];
        var words = string.Join(", ", parts.Where(part => part.Length > 0));
        if (!(grams > 0) || words.Length == 0) _draft.Note(ImportDeed.Left, "measures", "without a mass or a word", _draft.FoodAt(food).Id);
        else
        {
            var count = amount > 0 ? amount : 1;
            _draft.Add(new FoodMeasure(_draft.FoodAt(food).Id, words, count, grams, _draft.FoodAt(food).Source)
            {
                VolumeMillilitres = _draft.Codes.Millilitres(words) * count,
                Samples = row.Samples("data_points") is > 0 and var samples ? samples : null,
            });
        }
    }
}
