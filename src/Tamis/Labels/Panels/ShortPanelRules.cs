using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>By which way a figure may be left off a panel.</summary>
public enum ShortWay
{
    /// <summary>By itself, with a statement in its place.</summary>
    Alone,
    /// <summary>In the simplified format, which the law allows where enough figures are insignificant.</summary>
    Simplified,
    /// <summary>In the format of a package that is one serving: nothing is said in its place.</summary>
    SingleServing,
}

/// <summary>What the simplified format does with a figure.</summary>
public enum SimplifiedRole
{
    /// <summary>It is counted, and left off where it is insignificant.</summary>
    LeftOff,
    /// <summary>It is counted, and stands whatever it is.</summary>
    Kept,
    /// <summary>It is not counted, and left off where it is insignificant: a sum of others.</summary>
    NotCounted,
}

/// <summary>When a figure is insignificant.</summary>
/// <param name="Way">By which way it may then be left off.</param>
/// <param name="Figure">The figure, by its key.</param>
/// <param name="Of">The figure whose amount is held against the limit: its own, or that of the whole that it is a part of; several are parted by semicolons, and each must be within it.</param>
/// <param name="Below">The limit, in <paramref name="Unit"/>, which the amount before rounding must be below; null where it must be declared as 0.</param>
/// <param name="Unit">The unit of the limit: that of <paramref name="Of"/>, or % of its reference value; <c>any amount</c> where there is no limit.</param>
/// <param name="Role">What the simplified format does with it.</param>
/// <param name="UnlessClaimed">Figures about which the pack may claim nothing.</param>
/// <param name="Words">What the statement calls it, by language.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record InsignificantFigure(
    ShortWay Way, string Figure, string Of, decimal? Below, string Unit, SimplifiedRole Role, IReadOnlyList<string> UnlessClaimed, IReadOnlyDictionary<string, string> Words, RuleOrigin Origin)
{
    /// <summary>When it is insignificant, in words: <c>total fat below 0.5 g</c>.</summary>
    public string LimitInWords => IsWithoutLimit ? "whatever there is of it" : Below is { } limit ? $"{Of} below {limit.ToString(CultureInfo.InvariantCulture)} {Unit}" : $"{string.Join(", ", Held)} declared as 0";

    /// <summary>The figures whose amounts are held against the limit, by their keys.</summary>
    public IReadOnlyList<string> Held => Of.Split(';', StringSplitOptions.TrimEntries);

    /// <summary>Whether it may be left off whatever there is of it.</summary>
    public bool IsWithoutLimit => Names.Same(Unit, ShortPanelRules.AnyAmount);

    /// <summary>Whether an amount is insignificant.</summary>
    /// <param name="rules">The rule set.</param>
    /// <param name="amount">The amount of <see cref="Of"/> before rounding, in the unit of the declaration.</param>
    /// <param name="isZero">Whether the label declares it as 0.</param>
    public bool Takes(RuleSet rules, decimal amount, bool isZero) => Below is not { } limit ? isZero
        : Unit == "%" ? rules.ReferenceValues.FirstOrDefault(reference => Names.Same(reference.Key, Of)) is { } reference && amount / RoundingTable.ToDecimal(reference.Value) * 100 < limit
        : amount < limit;
}

/// <summary>What a rule set lets a maker leave off a panel, and what is said in its place: <c>short-panel.csv</c>. A further language is a further column.</summary>
public sealed class ShortPanelRules
{
    private const string File = "short-panel.csv";

    internal const string AnyAmount = "any amount";

    private static readonly string[] Columns = ["way", "figure", "of", "below", "unit", "role", "unless_claimed"];

    private static readonly Dictionary<string, ShortWay> Ways = new(Names.Comparer) { ["alone"] = ShortWay.Alone, ["simplified"] = ShortWay.Simplified, ["single serving"] = ShortWay.SingleServing };

    private static readonly Dictionary<string, SimplifiedRole> Roles = new(Names.Comparer)
    {
        ["left off"] = SimplifiedRole.LeftOff,
        ["kept"] = SimplifiedRole.Kept,
        ["not counted"] = SimplifiedRole.NotCounted,
    };

    private ShortPanelRules()
    {
    }

    /// <summary>The figures, each with when it is insignificant; none where the law lets nothing be left off.</summary>
    public IReadOnlyList<InsignificantFigure> Figures { get; private init; } = [];

    /// <summary>How many figures must be insignificant for the simplified format; null where the law has none.</summary>
    public int? SimplifiedFrom { get; private init; }

    /// <summary>The statement by language, # for the names of the figures.</summary>
    public IReadOnlyDictionary<string, string> Statements { get; private init; } = new Dictionary<string, string>();

    /// <summary>The word before the last name, by language.</summary>
    public IReadOnlyDictionary<string, string> And { get; private init; } = new Dictionary<string, string>();

    /// <summary>The rules of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static ShortPanelRules Of(RuleSet rules) => rules.Folder.Table(Read);

    private static ShortPanelRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        var rows = folder.RowsIfAny(File, Columns, problems);
        List<InsignificantFigure> figures = [];
        int? from = null;
        IReadOnlyDictionary<string, string> statements = new Dictionary<string, string>(), and = statements;
        foreach (var row in rows)
        {
            var said = row.ByLanguage(Columns);
            switch (row.Cells.Text("way"))
            {
                case "statement": statements = said; row.Origin(); break;
                case "and": and = said; row.Origin(); break;
                case "simplified from": from = (int)row.RequiredDecimal("below"); row.Origin(); break;
                default: figures.Add(Figure(row, said)); break;
            }
        }
        if (rows.Count > 0 && statements.Count == 0) problems.Add(new(File, 0, "way", "", "a row 'statement' with the words that stand in place of what is left off, # for its names"));
        return new() { Figures = figures, SimplifiedFrom = from, Statements = statements, And = and };
    }

    private static InsignificantFigure Figure(RuleRow row, IReadOnlyDictionary<string, string> names)
    {
        var figure = row.Cells.Required("figure");
        var way = row.Choice("way", Ways);
        if (names.Count == 0 != (way == ShortWay.SingleServing)) row.Cells.Note("figure", way == ShortWay.SingleServing ? "no words: in this format nothing is said in place of a figure" : "what the statement calls it, in the column of a language");
        return new(way, figure, row.Cells.Text("of") ?? figure, row.Decimal("below"), row.Cells.Text("unit") ?? "",
            row.Cells.Choice("role", Roles) ?? SimplifiedRole.LeftOff, row.Cells.Words("unless_claimed"), names, row.Origin());
    }
}
