using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>What is held against the limit of a condition.</summary>
public enum ClaimComparison
{
    /// <summary>The figure itself.</summary>
    Figure,
    /// <summary>Nothing: nothing of the kind may have been added.</summary>
    NoneAdded,
    /// <summary>By how many per cent there is less than in another food.</summary>
    LessBy,
    /// <summary>By how many per cent there is more than in another food.</summary>
    MoreBy,
}

/// <summary>What a limit speaks of.</summary>
public enum ClaimBasis
{
    /// <summary>100 g.</summary>
    Per100Grams,
    /// <summary>100 ml.</summary>
    Per100Millilitres,
    /// <summary>100 kcal.</summary>
    Per100Kilocalories,
    /// <summary>Per cent of the energy.</summary>
    EnergyShare,
    /// <summary>Per cent of the fatty acids.</summary>
    FattyAcidShare,
    /// <summary>The amount usually eaten, as the law lays it down.</summary>
    ReferenceAmount,
    /// <summary>The serving on the label.</summary>
    Serving,
    /// <summary>50 g, where the reference amount is 30 g or less.</summary>
    FiftyGramsIfSmall,
    /// <summary>Per cent of the reference value, in 100 g.</summary>
    ReferenceValuePer100Grams,
    /// <summary>Per cent of the reference value, in the reference amount.</summary>
    ReferenceValuePerReferenceAmount,
    /// <summary>The ingredients.</summary>
    Ingredients,
    /// <summary>Another food of the same category.</summary>
    OtherFood,
}

/// <summary>One condition of a claim.</summary>
public sealed record ClaimCondition
{
    /// <summary>The figure, by its key in the declaration, or by a formula of contents; empty for a condition on ingredients.</summary>
    public required string Figure { get; init; }

    /// <summary>The word for it.</summary>
    public required string Word { get; init; }

    /// <summary>The unit of the figure.</summary>
    public required string Unit { get; init; }

    /// <summary>What is held against the limit.</summary>
    public required ClaimComparison Comparison { get; init; }

    /// <summary>How it is held against the limit.</summary>
    public required LimitTest Test { get; init; }

    /// <summary>The limit, in <see cref="Unit"/> or in per cent where the basis is a share; 0 for a condition on ingredients.</summary>
    public required double Limit { get; init; }

    /// <summary>What the limit speaks of.</summary>
    public required ClaimBasis Basis { get; init; }

    /// <summary>Kilocalories a gram of the figure, for a share of the energy.</summary>
    public double KilocaloriesPerGram { get; init; }

    /// <summary>Conditions of one way must all hold; one way is enough.</summary>
    public required string Way { get; init; }

    /// <summary>Whether it is for liquids; null for foods of both kinds.</summary>
    public bool? IsForLiquids { get; init; }

    /// <summary>Where it came from.</summary>
    public required RuleOrigin Origin { get; init; }
}

/// <summary>A nutrition claim of a rule set.</summary>
/// <param name="Name">Its words.</param>
/// <param name="OtherWords">Other words that have the same meaning.</param>
/// <param name="Conditions">Its conditions.</param>
/// <param name="Needs">What a person must see to besides.</param>
public sealed record ClaimRule(string Name, IReadOnlyList<string> OtherWords, IReadOnlyList<ClaimCondition> Conditions, IReadOnlyList<string> Needs)
{
    /// <summary>Whether it compares with another food.</summary>
    public bool IsComparative => Conditions.Any(condition => condition.Basis == ClaimBasis.OtherFood);
}

/// <summary>The nutrition claims of a rule set: <c>claims.csv</c>.</summary>
public sealed class ClaimRules
{
    private static readonly Dictionary<string, (ClaimComparison What, LimitTest Test)> Comparisons = new(Names.Comparer)
    {
        ["at most"] = (ClaimComparison.Figure, LimitTest.AtMost), ["at least"] = (ClaimComparison.Figure, LimitTest.AtLeast),
        ["below"] = (ClaimComparison.Figure, LimitTest.Below), ["above"] = (ClaimComparison.Figure, LimitTest.Above),
        ["none added"] = (ClaimComparison.NoneAdded, LimitTest.NotListed), ["less by"] = (ClaimComparison.LessBy, LimitTest.AtLeast), ["more by"] = (ClaimComparison.MoreBy, LimitTest.AtLeast),
    };

    private static readonly Dictionary<string, ClaimBasis> Bases = new(Names.Comparer)
    {
        ["100 g"] = ClaimBasis.Per100Grams, ["100 ml"] = ClaimBasis.Per100Millilitres, ["100 kcal"] = ClaimBasis.Per100Kilocalories,
        ["energy share"] = ClaimBasis.EnergyShare, ["share of fatty acids"] = ClaimBasis.FattyAcidShare, ["reference amount"] = ClaimBasis.ReferenceAmount,
        ["serving"] = ClaimBasis.Serving, ["50 g where the reference amount is small"] = ClaimBasis.FiftyGramsIfSmall,
        ["reference value of 100 g"] = ClaimBasis.ReferenceValuePer100Grams, ["reference value of the reference amount"] = ClaimBasis.ReferenceValuePerReferenceAmount,
        ["ingredients"] = ClaimBasis.Ingredients, ["other food"] = ClaimBasis.OtherFood,
    };

    private static readonly Dictionary<string, bool> States = new(Names.Comparer) { ["solid"] = false, ["liquid"] = true };

    private ClaimRules(IReadOnlyList<ClaimRule> all, ILookup<string, string> added) => (All, Added) = (all, added);

    /// <summary>The claims in the order of the file.</summary>
    public IReadOnlyList<ClaimRule> All { get; }

    /// <summary>Words of ingredients that add something (<c>sugars</c>, <c>salt</c>): <c>adds.csv</c> beside the rule sets.</summary>
    public ILookup<string, string> Added { get; }

    /// <summary>The claims of a rule set; none where its folder has no such file.</summary>
    /// <exception cref="TableException">A cell cannot be read, or a figure is none of the rule set; all problems at once.</exception>
    public static ClaimRules Of(RuleSet rules) => rules.Folder.Table((folder, problems) => Read(folder, rules, problems));

    /// <summary>The claim of these words; null where the rule set has none.</summary>
    public ClaimRule? Find(string words) => All.FirstOrDefault(claim => Names.Same(claim.Name, words) || claim.OtherWords.Contains(words, Names.Comparer));

    /// <summary>The claims whose words are nearest.</summary>
    public IReadOnlyList<string> Nearest(string words) => Names.Nearest(words, All.SelectMany(claim => claim.OtherWords.Prepend(claim.Name)));

    private static ClaimRules Read(RuleFolder folder, RuleSet rules, List<CellProblem> problems)
    {
        var rows = folder.RowsIfAny("claims.csv", ["claim", "also", "way", "state", "figure", "word", "unit", "comparison", "value", "basis", "kcal_per_g", "needs"], problems);
        var read = rows.Select(row => (Name: row.Cells.Required("claim"), Also: row.Cells.Words("also"), Needs: row.Cells.Text("needs"), Condition: ConditionOf(row, rules))).ToArray();
        var added = folder.SharedRows("adds.csv", ["what", "word"], problems).Select(row => (What: row.Cells.Required("what"), Word: row.Cells.Required("word"))).ToArray();
        return new([.. read.GroupBy(row => row.Name, Names.Comparer).Select(same => new ClaimRule(same.Key, [.. same.SelectMany(row => row.Also)], [.. same.Select(row => row.Condition)], [.. same.Select(row => row.Needs).OfType<string>().Distinct()]))],
            added.ToLookup(row => row.What, row => row.Word));
    }

    private static ClaimCondition ConditionOf(RuleRow row, RuleSet rules)
    {
        var basis = row.Choice("basis", Bases);
        var (what, test) = row.Choice("comparison", Comparisons);
        var (figure, unit) = (row.Cells.Text("figure") ?? "", row.Cells.Text("unit") ?? "");
        if (figure.Length > 0 && !rules.Declaration.Any(line => Names.Same(line.Key, figure)) && ContentFormula.Parse(figure) is null)
            row.Cells.Note("figure", $"a line of declaration.csv, or tags with + or - between them{(Names.Nearest(figure, rules.Declaration.Select(line => line.Key)) is [var near, ..] ? $"; is it '{near}'?" : "")}");
        if (figure.Length == 0 && basis != ClaimBasis.Ingredients) row.Cells.Note("figure", "a figure: only a condition on ingredients has none");
        return new()
        {
            Figure = figure,
            Word = row.Cells.Required("word"),
            Unit = unit,
            Comparison = what,
            Test = test,
            Limit = row.Cells.Number("value", 0) ?? 0,
            Basis = basis,
            KilocaloriesPerGram = row.Cells.Number("kcal_per_g", 0) ?? 0,
            Way = row.Cells.Text("way") ?? "",
            IsForLiquids = row.Cells.Choice("state", States),
            Origin = row.Origin(),
        };
    }
}
