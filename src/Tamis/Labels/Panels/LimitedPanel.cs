using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A panel of few figures that a law lets stand where it asks for no panel. All that is filled must hold.</summary>
/// <param name="Form">Its name, as <c>panel_form</c> of <c>dessert.csv</c> asks for it: <c>energy alone</c>.</param>
/// <param name="Figures">The figures that it has, by their keys.</param>
/// <param name="Sold">The forms of sale that it is for; empty for all.</param>
/// <param name="For">The categories of food that it is for; empty for all.</param>
/// <param name="Says">The key of <c>dessert.csv</c> with a number that is held against a limit; null where none is.</param>
/// <param name="IsWithClaims">Whether the pack may make a nutrition claim beside it.</param>
/// <param name="Origin">Where the row came from.</param>
/// <param name="InForce">When it is in force.</param>
public sealed record LimitedPanel(string Form, IReadOnlyList<string> Figures, IReadOnlyList<string> Sold, IReadOnlyList<string> For, SaidLimit? Says, bool IsWithClaims, RuleOrigin Origin, InForce InForce)
{
    /// <summary>Whether it has a figure.</summary>
    /// <param name="figure">The figure, by its key.</param>
    public bool Has(string figure) => Figures.Contains(figure, Names.Comparer);
}

/// <summary>A number of <c>dessert.csv</c> held against a limit.</summary>
/// <param name="Key">The key: <c>alcohol_percent_vol</c>.</param>
/// <param name="Test">How it is held against the limit.</param>
/// <param name="Limit">The limit.</param>
/// <param name="Unit">The unit of both: <c>% vol</c>.</param>
public sealed record SaidLimit(string Key, LimitTest Test, decimal Limit, string Unit)
{
    /// <summary>The limit in words: <c>more than 1.2 % vol</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Test.InWords} {Limit} {Unit}");
}

/// <summary>The panels of few figures of a rule set: <c>limited-panel.csv</c>; none where it has no such file.</summary>
public sealed class LimitedPanels
{
    /// <summary>The file.</summary>
    public const string File = "limited-panel.csv";

    private LimitedPanels(IReadOnlyList<LimitedPanel> all) => All = all;

    /// <summary>Every row, in the order of the file; a name may come again, for other foods.</summary>
    public IReadOnlyList<LimitedPanel> All { get; }

    /// <summary>The panels of a rule set on a day; with no day, those that have no end.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static LimitedPanels Of(RuleSet rules, DateOnly? day = null) => new([.. rules.Folder.Table(Read).All.Where(row => row.InForce.On(day))]);

    private static LimitedPanels Read(RuleFolder folder, List<CellProblem> problems) => new([.. folder.RowsIfAny(File, ["panel_form", "figures", "sold", "for", "says", "test", "limit", "unit", "claims"], problems).Select(RowOf)]);

    private static LimitedPanel RowOf(RuleRow row)
    {
        var cells = row.Cells;
        var figures = cells.Words("figures");
        if (figures.Count == 0) cells.Note("figures", "the figures that the panel has, by their keys in declaration.csv");
        if (cells.Words("sold").Count == 0 && cells.Words("for").Count == 0) cells.Note("sold", "a form of sale, or a category of food under for: a row with neither would be for every pack");
        if (cells.Text("claims") is { } claims && !Names.Same(claims, "none")) cells.Note("claims", "none, where the pack may make no nutrition claim, or blank");
        var says = cells.Text("says") is { } key ? new SaidLimit(key, row.Choice("test", LimitTests.Words), row.RequiredDecimal("limit"), cells.Required("unit")) : null;
        return new(cells.Required("panel_form"), figures, cells.Words("sold"), cells.Words("for"), says, cells.Text("claims") is null, row.Origin(), row.InForce());
    }
}
