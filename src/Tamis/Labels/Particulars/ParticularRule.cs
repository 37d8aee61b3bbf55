using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A statement that a food must bear, and what triggers it. Every trigger that is filled must hold.</summary>
public sealed partial record ParticularRule
{
    [GeneratedRegex(@"\{(\w+)\}")]
    private static partial Regex Braces();

    /// <summary>A few words for it: <c>polyols</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The categories of food that it is for; empty for all.</summary>
    public required IReadOnlyList<string> For { get; init; }

    /// <summary>One of these additives is in it.</summary>
    public required IReadOnlyList<string> Additives { get; init; }

    /// <summary>An additive of this class is in it, as it is used here; null where none is asked.</summary>
    public required string? Class { get; init; }

    /// <summary>An ingredient has one of these words in its name or its own list.</summary>
    public required IReadOnlyList<string> Ingredients { get; init; }

    /// <summary>No ingredient has one of these words in its name or its own list.</summary>
    public required IReadOnlyList<string> Without { get; init; }

    /// <summary>The content by its tagname, or the column of a document, that is held against the limit; null where none is.</summary>
    public required string? Content { get; init; }

    /// <summary>How it is held against the limit.</summary>
    public required LimitTest Test { get; init; }

    /// <summary>The limit, in <see cref="Unit"/>.</summary>
    public required decimal Limit { get; init; }

    /// <summary>The unit: <c>g/100 g</c>, <c>mg/100 g</c>, <c>mg/kg</c>; <c>mg/100 ml</c> of what is drunk; <c>mg/100 g or 100 ml</c> for whichever the nutrition panel speaks of.</summary>
    public required string Unit { get; init; }

    private const string PerVolume = "/100 ml", AsPanel = "/100 g or 100 ml";

    /// <summary>The unit in which a food's content is said.</summary>
    /// <param name="isLiquid">Whether the food is sold by volume.</param>
    public string UnitFor(bool isLiquid) => !Unit.EndsWith(AsPanel, StringComparison.Ordinal) ? Unit : Unit[..^AsPanel.Length] + (isLiquid ? PerVolume : "/100 g");

    /// <summary>Whether a food's content is said by volume, for which its density is needed.</summary>
    /// <inheritdoc cref="UnitFor"/>
    public bool IsByVolume(bool isLiquid) => UnitFor(isLiquid).EndsWith(PerVolume, StringComparison.Ordinal);

    /// <summary>The key of <c>dessert.csv</c> that says whether it is so, with the value that says yes; null where none is asked.</summary>
    public required (string Key, string Yes)? Says { get; init; }

    /// <summary>Where it stands on the pack.</summary>
    public required string Place { get; init; }

    /// <summary>Whether it stands with the name of the food, and goes with it where a label is spread over several faces.</summary>
    public bool IsWithName => Place.StartsWith("beside the name", StringComparison.Ordinal) || Place.StartsWith("in one field of vision with the name", StringComparison.Ordinal);

    /// <summary>Exemptions by which it falls away, as the key <c>exemption</c> of <c>dessert.csv</c> asks for them.</summary>
    public required IReadOnlyList<string> Exemptions { get; init; }

    /// <summary>The wording by language; a language without a term has none. In braces stands what is filled in: <c>{amount}</c> is the content of the whole food, <c>{additives}</c> the names of those that trigger it, <c>{additive_grams}</c> what a serving of <c>{serving_grams}</c> g holds of them, any other word a key of <c>dessert.csv</c>.</summary>
    public required IReadOnlyDictionary<string, string> Wording { get; init; }

    /// <summary>What the wording has in braces.</summary>
    public IReadOnlyList<string> Named => [.. Wording.Values.SelectMany(words => Braces().Matches(words).Select(match => match.Groups[1].Value)).Distinct(StringComparer.Ordinal)];

    /// <summary>The keys of <c>dessert.csv</c> that the wording names.</summary>
    public IReadOnlyList<string> NamedKeys => [.. Named.Where(word => word is not (AmountWord or AdditivesWord or AdditiveGrams.Word or AdditiveGrams.ServingWord))];

    internal const string AmountWord = "amount", AdditivesWord = "additives";

    /// <summary>Where the row came from.</summary>
    public required RuleOrigin Origin { get; init; }

    /// <summary>When it is in force.</summary>
    public required InForce InForce { get; init; }

    /// <summary>Whether the law has it, and not the workshop or the kit.</summary>
    public bool IsLaw => Origin.Strength is RuleStrength.Law or RuleStrength.Guidance;
}

/// <summary>The statements of a rule set: <c>particulars.csv</c>. A further language is a further column.</summary>
public sealed class ParticularRules
{
    /// <summary>The file.</summary>
    public const string File = "particulars.csv";

    private static readonly string[] Columns = ["particular", "for", "additives", "class", "ingredients", "without", "content", "test", "limit", "unit", "says", "place", "exemptions", "en"];

    private ParticularRules(IReadOnlyList<ParticularRule> all) => All = all;

    /// <summary>Every statement.</summary>
    public IReadOnlyList<ParticularRule> All { get; }

    /// <summary>The statements of a rule set on a day; with no day, those that have no end.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static ParticularRules Of(RuleSet rules, DateOnly? day = null) => new([.. rules.Folder.Table(Read).All.Where(rule => rule.InForce.On(day))]);

    private static ParticularRules Read(RuleFolder folder, List<CellProblem> problems) => new([.. folder.RowsIfAny(File, Columns, problems).Select(row => RuleOf(row, folder))]);

    private static ParticularRule RuleOf(RuleRow row, RuleFolder folder)
    {
        var cells = row.Cells;
        var content = cells.Text("content");
        var says = cells.Text("says")?.Split('=', 2, StringSplitOptions.TrimEntries);
        if (says is { Length: 1 }) cells.Note("says", "a key of dessert.csv and the value that says yes, such as thawed=yes");
        ParticularRule rule = new()
        {
            Name = cells.Required("particular"), For = cells.Words("for"), Additives = cells.Words("additives"), Class = cells.Text("class"),
            Ingredients = cells.Words("ingredients"), Without = cells.Words("without"), Content = content,
            Test = content is null ? LimitTest.Above : row.Choice("test", LimitTests.Words), Limit = content is null ? 0 : row.RequiredDecimal("limit"), Unit = cells.Text("unit") ?? "",
            Says = says is { Length: 2 } ? (says[0], says[1]) : null, Place = cells.Text("place") ?? "", Exemptions = cells.Words("exemptions"),
            Wording = row.ByLanguage([.. Columns[..^1], "in_force_from", "in_force_to"]),
            Origin = row.Origin(), InForce = row.InForce(),
        };
        if (rule.Additives.Count == 0 && rule.Class is null && rule.Ingredients.Count == 0 && content is null && rule.Says is null)
            cells.Note("additives", "an additive, a class, an ingredient, a content or a key under says: a row with none would stand on every pack");
        if (rule.Named.Contains(ParticularRule.AmountWord) && content is null) cells.Note("content", $"the content that {{{ParticularRule.AmountWord}}} of the wording stands for");
        if (content is not null && rule.Unit.Length == 0) cells.Note("unit", "the unit of the limit, such as g/100 g");
        foreach (var number in rule.Additives.Where(number => Labels.Additives.Of(folder).Find(number) is null)) cells.Note("additives", $"a number of additives.csv; '{number}' is none");
        return rule;
    }

}
