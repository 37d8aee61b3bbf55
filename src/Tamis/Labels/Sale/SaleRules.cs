using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Whether a form of sale asks for something.</summary>
public enum Needed
{
    /// <summary>On the pack, or on the ticket, the notice or the page that stands for it.</summary>
    Yes,
    /// <summary>Where the case arises, as the row says.</summary>
    If,
    /// <summary>Told to whoever asks.</summary>
    OnRequest,
    /// <summary>Not asked for.</summary>
    No,
}

/// <summary>What a form of sale asks for.</summary>
/// <param name="Form">The form of sale: <c>loose</c>, <c>prepacked</c>.</param>
/// <param name="Particular">What is asked for: <c>list of ingredients</c>.</param>
/// <param name="Needed">Whether it is asked for.</param>
/// <param name="When">When or how; empty where nothing more is said.</param>
/// <param name="By">What shows that it is there: <c>fact net_g</c>, <c>list</c>, <c>allergens</c>, <c>panel</c>, <c>quantities</c>, <c>particulars</c>, <c>date</c>, <c>symbol</c>; <c>person</c> where nothing in the sheets does.</param>
/// <param name="Exemptions">Exemptions that lift it, by the names under which <c>dessert.csv</c> asks for them.</param>
/// <param name="Origin">Where the row came from.</param>
/// <param name="InForce">When it is in force.</param>
public sealed record SaleRequirement(string Form, string Particular, Needed Needed, string When, string By, IReadOnlyList<string> Exemptions, RuleOrigin Origin, InForce InForce)
{
    /// <summary>The keys of <c>dessert.csv</c> of which one shows that it is there; none where something else does.</summary>
    public IReadOnlyList<string> FactKeys => By.StartsWith(FactWord, StringComparison.Ordinal) ? By[FactWord.Length..].Split(';', StringSplitOptions.TrimEntries) : [];

    internal const string FactWord = "fact ";
}

/// <summary>What each form of sale asks for under a rule set: <c>form-of-sale.csv</c>.</summary>
public sealed class SaleRules
{
    /// <summary>The file.</summary>
    public const string File = "form-of-sale.csv";

    /// <summary>What can show in the sheets that something is there.</summary>
    internal static IReadOnlyList<string> Showing { get; } = ["list", "allergens", "panel", "quantities", "particulars", "date", "symbol", "person"];

    private static readonly Dictionary<string, Needed> Words = new(Names.Comparer) { ["yes"] = Needed.Yes, ["if"] = Needed.If, ["on request"] = Needed.OnRequest, ["no"] = Needed.No };

    private SaleRules(IReadOnlyList<SaleRequirement> all) => All = all;

    /// <summary>Every row.</summary>
    public IReadOnlyList<SaleRequirement> All { get; }

    /// <summary>The forms of sale that the rule set parts, in the order of its file.</summary>
    public IReadOnlyList<string> Forms => [.. All.Select(row => row.Form).Distinct(Names.Comparer)];

    /// <summary>The exemptions that it knows.</summary>
    public IReadOnlyList<string> Exemptions => [.. All.SelectMany(row => row.Exemptions).Distinct(Names.Comparer)];

    /// <summary>The rules of a rule set on a day; with no day, those that have no end.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static SaleRules Of(RuleSet rules, DateOnly? day = null) => new([.. rules.Folder.Table(Read).All.Where(row => row.InForce.On(day))]);

    /// <summary>What a form of sale asks for, in the order of the file.</summary>
    public IReadOnlyList<SaleRequirement> For(string form) => [.. All.Where(row => Names.Same(row.Form, form))];

    private static SaleRules Read(RuleFolder folder, List<CellProblem> problems) => new([.. folder.RowsIfAny(File, ["form", "particular", "needed", "when", "by", "exemptions"], problems).Select(row =>
    {
        var by = row.Cells.Required("by");
        if (!by.StartsWith(SaleRequirement.FactWord, StringComparison.Ordinal) && !Showing.Contains(by, Names.Comparer)) row.Cells.Note("by", $"fact and a key of dessert.csv, or one of: {string.Join(", ", Showing)}");
        return new SaleRequirement(row.Cells.Required("form"), row.Cells.Required("particular"), row.Choice("needed", Words), row.Cells.Text("when") ?? "", by, row.Cells.Words("exemptions"), row.Origin(), row.InForce());
    })]);
}
