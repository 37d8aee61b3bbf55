using System.Globalization;
using Tamis.Losses;

namespace Tamis.Physics;

/// <summary>What a finished mass is made of, by function: each gram once, with a named rest, so that all of it adds up to 100 %.</summary>
/// <remarks>What is unknown stays unknown: a part is an <see cref="Amount"/> that says for which mass it is known, and its unknown grams lie in the rest.
/// The rest may lie a little below zero where published analyses of one food add up to more than 100 g.</remarks>
public sealed class Balance
{
    private static readonly Source Sum = new("sum over the parts, by mass", Evidence.Computed);

    private readonly IReadOnlyList<(MixturePart Part, IngredientParts Parts)> _from;
    private readonly Amount[] _amounts;

    private Balance(double finishedGrams, Amount[] amounts, Amount higherSaccharidesMoles, IReadOnlyList<(MixturePart, IngredientParts)> from)
    {
        (FinishedGrams, _amounts, HigherSaccharidesMoles, _from) = (finishedGrams, amounts, higherSaccharidesMoles, from);
        Remarks = [.. _from.SelectMany(each => each.Parts.Remarks).Distinct()];
    }

    /// <summary>The finished mass, in grams.</summary>
    public double FinishedGrams { get; }

    /// <summary>Moles of higher saccharides, from the dextrose equivalents of the syrups; what lowers water activity and freezing point is their number.</summary>
    public Amount HigherSaccharidesMoles { get; }

    /// <summary>What a reader should know of the data behind: figures that contradict each other.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>How much of a part there is, in grams, with its coverage. The rest is known where every other part is.</summary>
    public Amount this[BalancePart part] => part == BalancePart.Rest ? Rest : _amounts[(int)part];

    /// <summary>The balance of a mixture, from composition data and the functional data of its ingredients.</summary>
    /// <param name="mixture">What was weighed in, less what left.</param>
    /// <param name="kinds">What kind of solids an ingredient carries; the kit's own where null.</param>
    public static Balance Of(Mixture mixture, IngredientKinds? kinds = null)
    {
        kinds ??= IngredientKinds.Kit;
        var from = new (MixturePart Part, IngredientParts Parts)[mixture.Parts.Count];
        for (var i = 0; i < from.Length; i++) from[i] = (mixture.Parts[i], kinds.PartsOf(mixture.Parts[i].Ingredient));
        var amounts = new Amount[BalanceParts.Known.Count];
        foreach (var part in BalanceParts.Known) amounts[(int)part] = SumOver(from, parts => parts[part].Per100Grams);
        var water = amounts[(int)BalancePart.Water];
        amounts[(int)BalancePart.Water] = water with { Known = water.Known - mixture.WaterLostGrams };
        return new(mixture.FinishedGrams, amounts, SumOver(from, parts => parts.HigherSaccharidesMolesPer100Grams), from);
    }

    /// <summary>A balance by hand: the parts that are given, none of the others, and the rest by difference.</summary>
    /// <param name="finishedGrams">The whole mass, above zero.</param>
    /// <param name="parts">The mass of each part, zero or more; a part may stand once.</param>
    /// <exception cref="ArgumentException">A mass is negative or not a number, a part stands twice, or the parts weigh more than the whole.</exception>
    public static Balance FromGrams(double finishedGrams, params IReadOnlyList<(BalancePart Part, double Grams)> parts)
    {
        if (!(finishedGrams > 0) || !double.IsFinite(finishedGrams))
            throw new ArgumentException(Text($"A balance is of a mass above zero; found {finishedGrams} g."), nameof(finishedGrams));
        var amounts = new Amount[BalanceParts.Known.Count];
        Array.Fill(amounts, new Amount(0, finishedGrams, finishedGrams));
        var sum = 0.0;
        HashSet<BalancePart> seen = [];
        foreach (var (part, grams) in parts)
        {
            if (part == BalancePart.Rest) throw new ArgumentException("The rest is what the other parts leave; it is not given.", nameof(parts));
            if (!(grams >= 0) || !double.IsFinite(grams)) throw new ArgumentException(Text($"A part weighs zero grams or more; found {grams} g of {BalanceParts.Word(part)}."), nameof(parts));
            if (!seen.Add(part)) throw new ArgumentException($"{BalanceParts.Word(part)} stands twice; give its whole mass once.", nameof(parts));
            amounts[(int)part] = amounts[(int)part] with { Known = grams };
            sum += grams;
        }
        if (sum > finishedGrams * (1 + 1e-9)) throw new ArgumentException(Text($"The parts weigh {sum:0.##} g together, more than the {finishedGrams:0.##} g of the whole."), nameof(parts));
        var higher = amounts[(int)BalancePart.HigherSaccharides].Known;
        return new(finishedGrams, amounts, new(0, higher > 0 ? 0 : finishedGrams, finishedGrams), []);
    }

    /// <summary>The same with higher saccharides of a dextrose equivalent, for a balance by hand.</summary>
    /// <param name="dextroseEquivalentPercent">Of the dry matter of the syrup: its higher saccharides with the glucose and maltose given, above 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no such percentage.</exception>
    public Balance WithDextroseEquivalent(double dextroseEquivalentPercent)
    {
        if (!(dextroseEquivalentPercent > 0 && dextroseEquivalentPercent <= 100))
            throw new ArgumentOutOfRangeException(nameof(dextroseEquivalentPercent), dextroseEquivalentPercent, "A dextrose equivalent lies above 0 and at most at 100.");
        var moles = this[BalancePart.HigherSaccharides].Known * dextroseEquivalentPercent / GlucoseSyrups.HundredGlucoseGramsPerMole;
        return new(FinishedGrams, _amounts, new(moles, FinishedGrams, FinishedGrams), _from);
    }

    /// <summary>A part in per cent of the finished mass if it is known for all of it, else null.</summary>
    public double? PercentOf(BalancePart part) => PercentOf(this[part]);

    /// <summary>An amount of this balance in per cent of its finished mass if it is known for all of it, else null.</summary>
    public double? PercentOf(Amount amount) => FinishedGrams > 0 && amount.Whole is { } grams ? grams / FinishedGrams * 100 : null;

    /// <summary>Every part that there is something of, or of which something is unknown, and the rest; the known per cents add up to 100.</summary>
    public IReadOnlyList<BalanceShare> Shares =>
        [.. Enum.GetValues<BalancePart>().Where(part => part == BalancePart.Rest || this[part] is { Known: not 0 } || !this[part].IsWhole && (BalanceParts.TotalOf(part) ?? part) == part)
            .Select(part => new BalanceShare(part, BalanceParts.Word(part), this[part].Known, FinishedGrams > 0 ? this[part].Known / FinishedGrams * 100 : 0, this[part].CoveredShare))];

    /// <summary>Several parts together, in grams; known for the ingredients of which every one is known, or their total.</summary>
    public Amount Together(params IReadOnlyList<BalancePart> parts)
    {
        if (_from.Count == 0) return new(parts.Sum(part => this[part].Known), parts.Min(part => this[part].CoveredMassGrams), this[BalancePart.Water].TotalMassGrams);
        var sum = SumOver(_from, each => SumOf(each, parts));
        return parts.Contains(BalancePart.Water) ? sum with { Known = sum.Known - WaterLostGrams } : sum;
    }

    /// <summary>All fat.</summary>
    public Amount Fat => Together(BalanceParts.Fats);

    /// <summary>All mono- and disaccharides.</summary>
    public Amount Sugars => Together(BalanceParts.Sugars);

    /// <summary>All sugar alcohols.</summary>
    public Amount Polyols => Together(BalanceParts.Polyols);

    /// <summary>Water and what is dissolved in it, as far as it dissolves.</summary>
    public Amount WaterPhase => Together(BalanceParts.WaterPhase);

    /// <summary>Milk solids not fat in the traditional sense: with the lactose.</summary>
    public Amount MilkSolidsNonFat => Together(BalancePart.MilkSolids, BalancePart.Lactose);

    /// <summary>Cocoa butter with the fat-free cocoa solids.</summary>
    public Amount Cocoa => Together(BalancePart.CocoaButter, BalancePart.CocoaSolids);

    /// <summary>Egg yolk solids with the yolk's fat.</summary>
    public Amount EggYolkSolidsWithFat => Together(BalancePart.EggYolkSolids, BalancePart.EggFat);

    /// <summary>All that is neither water nor alcohol, in grams.</summary>
    public Amount Solids => Together(BalancePart.Water, BalancePart.Alcohol) is var liquid ? liquid with { Known = FinishedGrams - liquid.Known } : default;

    /// <summary>Cocoa butter in per cent of all fat; null where either is not known, or there is no fat.</summary>
    public double? CocoaButterPercentOfFat => this[BalancePart.CocoaButter].Whole is { } butter && Fat.Whole is { } fat and > 0 ? butter / fat * 100 : null;

    /// <summary>Mean dextrose equivalent of the glucose syrups, by their dry matter, in per cent; null where there are none, or one has none stated.</summary>
    public double? DextroseEquivalentPercent
    {
        get
        {
            var (solids, reducing) = (0.0, 0.0);
            foreach (var (part, parts) in _from)
            {
                if (parts.Kind.CarbohydrateIs != BalancePart.HigherSaccharides || !(parts[BalancePart.HigherSaccharides].Per100Grams > 0)) continue;
                if (parts.Ingredient.DextroseEquivalentPercent is not { } de || !parts[BalancePart.Water].IsKnown) return null;
                var dry = part.MassGrams * (100 - parts[BalancePart.Water].Per100Grams) / 100;
                (solids, reducing) = (solids + dry, reducing + dry * de);
            }
            return solids > 0 ? reducing / solids : null;
        }
    }

    /// <summary>How a part was worked out, ingredient by ingredient, in grams.</summary>
    public Working Why(BalancePart part)
    {
        if (part == BalancePart.Rest)
            return new("the rest, by difference to the finished mass", Rest.Known, "g", Sum) { From = [new("finished mass", FinishedGrams, "g", Sum), .. BalanceParts.Known.Where(each => this[each].Known != 0).Select(each => new Working(BalanceParts.Word(each), this[each].Known, "g", Sum))] };
        Working[] steps = [.. _from.Where(each => !(each.Parts[part].Per100Grams == 0)).Select(each => StepOf(each.Part, each.Parts[part]))];
        return new(BalanceParts.Word(part), this[part].Known, "g", Sum)
        { From = part == BalancePart.Water && WaterLostGrams != 0 ? [.. steps, new("water that left", -WaterLostGrams, "g", Sum)] : steps };
    }

    private double WaterLostGrams => _from.Sum(each => each.Part.MassGrams) is var weighedIn and > 0 ? weighedIn - FinishedGrams : 0;

    private Amount Rest
    {
        get
        {
            var known = FinishedGrams;
            var (covered, total) = (double.PositiveInfinity, _amounts[0].TotalMassGrams);
            foreach (var amount in _amounts)
            {
                known -= amount.Known;
                covered = Math.Min(covered, amount.CoveredMassGrams);
            }
            return new(known, covered, total);
        }
    }

    private static Working StepOf(MixturePart part, PartContent content) =>
        new($"{part.Ingredient.Name}: {content.How}", part.MassGrams * content.Per100Grams / 100, "g", part.Origin)
        { From = content.Source is { } source ? [new("in 100 g", content.Per100Grams, "g", source)] : [] };

    // Sugars of one ingredient may be known together and not one by one: then what is not split stands for those that are unknown.
    private static double SumOf(IngredientParts parts, IReadOnlyList<BalancePart> wanted)
    {
        var sum = 0.0;
        foreach (var part in wanted)
        {
            var content = parts[part].Per100Grams;
            if (!double.IsNaN(content)) sum += content;
            else if (BalanceParts.TotalOf(part) is not { } total || !wanted.Contains(total) || double.IsNaN(parts[total].Per100Grams)) return double.NaN;
        }
        return sum;
    }

    private static Amount SumOver(IReadOnlyList<(MixturePart Part, IngredientParts Parts)> from, Func<IngredientParts, double> per100Grams)
    {
        double known = 0, covered = 0, total = 0;
        foreach (var (part, parts) in from)
        {
            total += part.MassGrams;
            var content = per100Grams(parts);
            if (double.IsNaN(content)) continue;
            covered += part.MassGrams;
            known += part.MassGrams * content / 100;
        }
        return new(known, covered, total);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
