using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>How a rule set wants allergens shown in a list of ingredients.</summary>
public enum AllergensInList
{
    /// <summary>Named, in the same type as the rest.</summary>
    Named,
    /// <summary>Named, and standing out from the rest.</summary>
    Emphasised,
}

/// <summary>How a statement of what the food contains stands beside a list of ingredients.</summary>
public enum ContainsStatement
{
    /// <summary>There is none.</summary>
    None,
    /// <summary>It stands in the type of the list.</summary>
    Plain,
    /// <summary>Its first word stands out as its names do.</summary>
    Emphasised,
}

/// <summary>How an additive is called behind its class.</summary>
public enum AdditiveNumbering
{
    /// <summary>By name alone.</summary>
    None,
    /// <summary>By the number of the Union's list: <c>E 440</c>.</summary>
    E,
    /// <summary>By the number of the Codex list: <c>INS 440</c>.</summary>
    Ins,
    /// <summary>By the number without a letter: <c>440</c>.</summary>
    Bare,
}

/// <summary>The rules of a list of ingredients: <c>ingredient-list.csv</c>.</summary>
public sealed record ListRules
{
    /// <summary>The word that heads the list, in English.</summary>
    public required string Heading { get; init; }

    /// <summary>Up to what share of the finished mass added water may be left out, in per cent.</summary>
    public required double WaterLimitPercent { get; init; }

    /// <summary>Whether exactly the limit may be left out.</summary>
    public required bool WaterLimitIncluded { get; init; }

    /// <summary>Whether added water counts by what is left of it in the finished food; otherwise by what was used.</summary>
    public required bool WaterByFinishedMass { get; init; }

    /// <summary>Under what share of the finished mass a compound need not be opened, in per cent; 0 where there is no such share.</summary>
    public required double CompoundLimitPercent { get; init; }

    /// <summary>The compounds that the limit is for, by name; <c>any</c> for all.</summary>
    public required IReadOnlyList<string> CompoundLimitFor { get; init; }

    /// <summary>Whether the class of an additive stands before its name.</summary>
    public required bool HasAdditiveClass { get; init; }

    /// <summary>How an additive may be called instead of by its name.</summary>
    public required AdditiveNumbering Numbering { get; init; }

    /// <summary>How allergens are shown.</summary>
    public required AllergensInList Allergens { get; init; }

    /// <summary>How a statement of what the food contains stands beside the list.</summary>
    public required ContainsStatement Contains { get; init; }

    /// <summary>Whether a statement of what the food contains stands beside the list.</summary>
    public bool HasContainsStatement => Contains != ContainsStatement.None;

    /// <summary>Whether the title of the list, and that of the statement of what the food contains, stands in bold type.</summary>
    public required bool HasBoldTitles { get; init; }

    /// <summary>Whether each ingredient of the list itself, and each entry of the statement of what the food contains, begins with a capital; what stands in brackets does not.</summary>
    public required bool HasCapitals { get; init; }

    /// <summary>Whether the quantity of an emphasised ingredient is stated.</summary>
    public required bool HasQuantities { get; init; }

    /// <summary>Below what percentage a quantity is rounded to a half and not to a whole.</summary>
    public required double QuantityHalfBelowPercent { get; init; }

    /// <summary>The names of ingredients that are grouped as sugars; empty where the law does not group them.</summary>
    public required IReadOnlyList<string> GroupedSugars { get; init; }

    /// <summary>Where each rule came from, by its key.</summary>
    public required IReadOnlyDictionary<string, RuleOrigin> Origins { get; init; }

    /// <summary>The rules of a rule set.</summary>
    /// <exception cref="TableException">A file is missing or a cell cannot be read.</exception>
    public static ListRules Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>Whether added water of this share of the finished mass, in per cent, must be listed.</summary>
    public bool ListsWater(double sharePercent) => sharePercent > 0 && (WaterLimitIncluded ? sharePercent > WaterLimitPercent : sharePercent >= WaterLimitPercent);

    /// <summary>Whether a compound of this share of the finished mass, in per cent, may stand without its own list.</summary>
    public bool MaySummarise(string name, double sharePercent) => sharePercent < CompoundLimitPercent
        && (CompoundLimitFor.Contains("any", Names.Comparer) || CompoundLimitFor.Contains(name, Names.Comparer));

    /// <summary>The quantity of an emphasised ingredient as printed: what was used, as a share of the finished food. Where that is more than all of it, because water left, it is said in grams per 100 g.</summary>
    /// <param name="usedGrams">What was used, in grams, 0 or more.</param>
    /// <param name="finishedGrams">What the finished food weighs, in grams, above 0.</param>
    public string Quantity(double usedGrams, double finishedGrams)
    {
        var share = RoundingTable.ToDecimal(usedGrams) / RoundingTable.ToDecimal(finishedGrams) * 100;
        var step = (double)share < QuantityHalfBelowPercent ? 0.5m : 1m;
        var rounded = (Math.Round(share / step, MidpointRounding.AwayFromZero) * step).ToString("0.#", CultureInfo.InvariantCulture);
        return share > 100 ? $"{rounded}\u00a0g per 100\u00a0g" : $"{rounded}\u00a0%";
    }

    private static ListRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        const string file = "ingredient-list.csv";
        RuleSettings settings = new(folder.Rows(file, ["key", "value"], problems), problems, file);
        return new()
        {
            Heading = settings.Text("heading"),
            WaterLimitPercent = settings.Percent("water_limit_percent"),
            WaterLimitIncluded = settings.Is("water_limit", "not more than", "less than"),
            WaterByFinishedMass = settings.Is("water_by", "finished mass", "mass used"),
            CompoundLimitPercent = settings.Percent("compound_limit_percent"),
            CompoundLimitFor = settings.Words("compound_limit_for"),
            HasAdditiveClass = settings.Is("additive_class", "yes", "no"),
            Numbering = settings.Words("additive_number") is [var number] ? settings.Choice("additive_number", number, Numberings) : AdditiveNumbering.None,
            Allergens = settings.Is("allergens_in_list", "emphasised", "named") ? AllergensInList.Emphasised : AllergensInList.Named,
            Contains = settings.Choice("contains_statement", ContainsStatements),
            HasBoldTitles = settings.IsIfAny("titles", "bold", "regular"),
            HasCapitals = settings.IsIfAny("first_letter", "upper case", "as written"),
            HasQuantities = settings.Is("quantity_of_emphasised", "yes", "no"),
            QuantityHalfBelowPercent = settings.Percent("quantity_half_below_percent"),
            GroupedSugars = settings.Is("group_sugars", "yes", "no") ? [.. folder.Rows("sugars-based.csv", ["name"], problems).Select(row => row.Cells.Required("name"))] : [],
            Origins = settings.Origins,
        };
    }

    private static readonly Dictionary<string, ContainsStatement> ContainsStatements = new(Names.Comparer)
    {
        ["never"] = ContainsStatement.None,
        ["always"] = ContainsStatement.Plain,
        ["emphasised"] = ContainsStatement.Emphasised,
    };

    private static readonly Dictionary<string, AdditiveNumbering> Numberings = new(Names.Comparer)
    {
        ["E"] = AdditiveNumbering.E,
        ["INS"] = AdditiveNumbering.Ins,
        ["bare"] = AdditiveNumbering.Bare,
    };
}
