using System.Globalization;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What <c>dessert.csv</c> asks of a label and that must be one of the rules' own words.</summary>
internal static class LabelAsked
{
    private const string DryMatter = "dry matter";

    /// <summary>How a day is written: year, month and day.</summary>
    public const string DayFormat = "yyyy-MM-dd";

    /// <summary>The day whose rules the label of a trial is drawn up by: the one that was asked for (<see cref="Dessert.RulesDay"/>), or else <c>rules_day</c>; null where no row says one: then those count that have no end.</summary>
    /// <exception cref="TableException">The cell is no day.</exception>
    public static DateOnly? Day(Dessert dessert, string trial) => dessert.RulesDay is { } asked ? asked : dessert.Facts.Text("rules_day", trial) is not { } text ? null
        : DateOnly.TryParseExact(text, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw new TableException([dessert.Facts.Problem("rules_day", trial, "a day as year-month-day, such as 2026-06-13")]);

    /// <summary>The exemptions that a trial asks for.</summary>
    /// <exception cref="TableException">A row names an exemption that no rule set knows; every one is named, with those that there are.</exception>
    public static IReadOnlyList<string> Exemptions(Dessert dessert, string trial)
    {
        string[] known = [.. KitData.RuleSetNames.Select(KitData.Rules).SelectMany(set => SaleRules.Of(set).Exemptions.Concat(ParticularRules.Of(set).All.SelectMany(rule => rule.Exemptions))).Distinct(Names.Comparer)];
        return AllOf(dessert, trial, "exemption", known);
    }

    /// <summary>How a trial is sold.</summary>
    /// <exception cref="TableException">No row says it, or a form that the rule set does not know.</exception>
    public static string FormOfSale(Dessert dessert, string trial, SaleRules rules) => AllOf(dessert, trial, "form_of_sale", rules.Forms) is [.., var form] ? form
        : throw new TableException([DessertFacts.InNoRow("key", $"a row form_of_sale with one of: {string.Join(", ", rules.Forms)}")]);

    /// <summary>The category of food that a trial is; null where no row says it.</summary>
    /// <exception cref="TableException">A category that the rule set does not know.</exception>
    public static FoodCategory? Category(Dessert dessert, string trial, RuleSet rules)
    {
        var known = FoodCategories.Of(rules);
        if (known.All.Count == 0) return null;
        return AllOf(dessert, trial, "food_category", [.. known.All.Select(each => each.Name)]) is [.., var name] ? known.Find(name) : null;
    }

    /// <summary>Whether compound ingredients are summarised where the law lets them be.</summary>
    /// <exception cref="TableException">A row says neither.</exception>
    public static bool SummarisesCompounds(Dessert dessert, string trial) => AllOf(dessert, trial, "compounds", ["short", "full"]) is [.., "short"];

    /// <summary>Whether additives are called by their numbers where the law lets them be.</summary>
    /// <exception cref="TableException">A row says neither.</exception>
    public static bool NumbersAdditives(Dessert dessert, string trial) => AllOf(dessert, trial, "additives", ["numbers", "names"]) is [.., "numbers"];

    /// <summary>What a swap that is proposed for a claim keeps: the mass, unless a row says the dry matter.</summary>
    /// <exception cref="TableException">A row says neither.</exception>
    public static SwapKeeps SwapBy(Dessert dessert, string trial) => AllOf(dessert, trial, "swap_by", ["mass", DryMatter]) is [.., DryMatter] ? SwapKeeps.DryMatter : SwapKeeps.Mass;

    /// <summary>Whether any row says how large the pack is.</summary>
    public static bool HasPack(Dessert dessert) => dessert.Facts.Keys.Intersect(["box_mm", "surface_cm2"], Names.Comparer).Any();

    /// <summary>The outside of the pack: the box, or the largest face.</summary>
    /// <exception cref="TableException">Neither is written, or a cell holds no size.</exception>
    public static PackShape Pack(Dessert dessert, string trial)
    {
        if (dessert.Facts.Text("box_mm", trial) is { } box) return PackShape.Parse(box) ?? throw new TableException([dessert.Facts.Problem("box_mm", trial, "length, width and height in mm, such as 185 x 75 x 65")]);
        return dessert.Facts.Number("surface_cm2", trial) is > 0 and { } surface ? PackShape.Surface(surface)
            : throw new TableException([dessert.Facts.Text("surface_cm2", trial) is null
                ? DessertFacts.InNoRow("key", "a row box_mm (length x width x height in mm), or surface_cm2 of the largest face: sizes of print hang on it; food that is sold without a pack has no label to draw")
                : dessert.Facts.Problem("surface_cm2", trial, "the largest face in cm2, a number above zero: sizes of print hang on it")]);
    }

    /// <summary>Other amounts of the food that the panel speaks of beside the serving (rows <c>other_amount</c>: <c>2 slices; 80</c>), in the order of the sheet.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="serving">The serving beside which they stand; null where the rows are looked at without one.</param>
    /// <exception cref="TableException">A row is no measure with its grams, or says the serving again or more than the package holds; every one is named.</exception>
    public static IReadOnlyList<PanelBasis> OtherAmounts(Dessert dessert, string trial, Serving? serving)
    {
        var container = serving is null ? dessert.Facts.Number("net_g", trial) : serving.ContainerGrams;
        List<CellProblem> problems = [];
        List<PanelBasis> amounts = [];
        foreach (var (value, row) in dessert.Facts.RowsOf("other_amount", trial))
        {
            if (value.Split(';', StringSplitOptions.TrimEntries) is not [{ Length: > 0 } household, var mass] || !double.TryParse(mass.EndsWith(" g", StringComparison.Ordinal) ? mass[..^2] : mass, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var grams) || grams <= 0)
                problems.Add(row.Problem("value", "an amount in a household measure, a semicolon and its grams, such as 2 slices; 80"));
            else if (container is { } net && grams > net) problems.Add(row.Problem("value", string.Create(CultureInfo.InvariantCulture, $"at most the {net:0.#} g of the package (net_g)")));
            else if (serving is not null && Math.Abs(grams - serving.Grams) < 0.05 || amounts.Exists(amount => amount.MassGrams == grams))
                problems.Add(row.Problem("value", $"another amount than {(serving is null ? "the other rows" : string.Create(CultureInfo.InvariantCulture, $"the serving of {serving.Grams:0.#} g"))}, each once"));
            else amounts.Add(PanelBasis.OtherAmount(grams, household) with { ReferenceGrams = serving?.Basis.ReferenceGrams });
        }
        return problems is [] ? amounts : throw new TableException(problems);
    }

    /// <summary>The faces over which a label is spread, with what stands on each; none where it all stands on the largest.</summary>
    /// <exception cref="TableException">A row names no face of the box or no part of a label, or a part stands nowhere; all problems at once.</exception>
    public static IReadOnlyList<PackFace> Faces(Dessert dessert, string trial, PackShape pack)
    {
        var all = dessert.Facts.RowsOf("face", trial).ToArray();
        var own = Array.FindAll(all, each => each.Row["trial"].Length > 0);
        List<CellProblem> problems = [];
        List<PackFace> faces = [];
        foreach (var (value, row) in own.Length > 0 ? own : all)
        {
            var (size, parts) = value.Split(':', StringSplitOptions.TrimEntries) is [var before, var after] ? (before, after.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)) : ("", []);
            double?[] sides = [.. size.Replace('×', 'x').Split('x', StringSplitOptions.TrimEntries).Select(side => double.TryParse(side, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : (double?)null)];
            if (sides is not [{ } width, { } height] || parts is []) problems.Add(row.Problem("value", "width x height of a face and what stands on it, such as 185 x 65: panel; list"));
            else if (pack.OnFace(width, height) is not { } shape) problems.Add(row.Problem("value", pack.IsBox ? $"a face of the box: {pack.FacesInWords}" : "no face without a row box_mm: the sides of the pack are not known"));
            else if (parts.FirstOrDefault(part => !PackFace.Known.Contains(part, Names.Comparer)) is { } unknown) problems.Add(row.Problem("value", $"for '{unknown}' one of: {string.Join(", ", PackFace.Known)}"));
            else if (faces.Count(face => face.Shape == shape || face.Shape == pack.OnFace(height, width)) == 2) problems.Add(row.Problem("value", "a size at most twice: a box has two faces of each"));
            else faces.Add(new(shape, parts));
        }
        if (problems is [] && faces.Count > 0 && !faces.Exists(face => face.Parts.Contains(PackFace.Rest, Names.Comparer))
            && PackFace.Known.Where(part => part != PackFace.Rest && !faces.Exists(face => face.Parts.Contains(part, Names.Comparer))).ToArray() is { Length: > 0 } nowhere)
            problems.Add(DessertFacts.InNoRow("face", $"a face for {string.Join(", ", nowhere)}, or for 'rest'"));
        return problems is [] ? faces : throw new TableException(problems);
    }

    private static IReadOnlyList<string> AllOf(Dessert dessert, string trial, string key, IReadOnlyList<string> known)
    {
        List<CellProblem> problems = [];
        List<string> asked = [];
        // A row that names the trial stands after the one for all, and the last one counts where one is wanted.
        foreach (var (value, row) in dessert.Facts.RowsOf(key, trial).OrderBy(each => each.Row["trial"].Length > 0))
        {
            if (known.FirstOrDefault(each => Names.Same(each, value)) is { } found) asked.Add(found);
            else
            {
                var near = Names.Nearest(value, known);
                problems.Add(row.Problem("value", $"one of: {string.Join(", ", near.Concat(known.Except(near)))}"));
            }
        }
        return problems is [] ? asked : throw new TableException(problems);
    }
}
