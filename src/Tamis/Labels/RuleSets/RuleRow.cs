using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Reads what every row of a rule file has: its origin, its days in force, decimals and formulas.</summary>
internal sealed class RuleRow(RowReader cells)
{
    private static readonly Dictionary<string, RuleStrength> Strengths = new(Names.Comparer)
    {
        ["law"] = RuleStrength.Law,
        ["guidance"] = RuleStrength.Guidance,
        ["convention"] = RuleStrength.Convention,
        ["policy"] = RuleStrength.Policy,
    };

    private static readonly Dictionary<string, bool> Checked = new(Names.Comparer) { ["text"] = false, ["from memory"] = true, ["policy"] = false };

    /// <summary>The columns of the origin, which every rule file has.</summary>
    public static readonly string[] OriginColumns = ["source", "locator", "strength", "checked", "note"];

    /// <summary>The cells of the row.</summary>
    public RowReader Cells => cells;

    /// <summary>Where the row came from; a row without a source is a problem.</summary>
    public RuleOrigin Origin()
    {
        var act = cells.Required("source");
        if (cells.Text("strength") is null) cells.Note("strength", "one of: law, guidance, convention, policy");
        if (cells.Text("checked") is null) cells.Note("checked", "one of: text, from memory, policy");
        return new(act.Length > 0 ? act : "not named", cells.Text("locator") ?? "", cells.Choice("strength", Strengths) ?? RuleStrength.Policy,
            cells.Choice("checked", Checked) ?? true, cells.Text("note") ?? "");
    }

    /// <summary>The days in force, from the columns <c>in_force_from</c> and <c>in_force_to</c> where the file has them.</summary>
    public InForce InForce() => new(cells.Date("in_force_from"), cells.Date("in_force_to"));

    /// <summary>A decimal as it is written, zero or more; null where the cell is blank.</summary>
    public decimal? Decimal(string column)
    {
        if (cells.Text(column) is not { } text) return null;
        if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)) return number;
        cells.Note(column, "a number of 0 or more with a decimal point");
        return null;
    }

    /// <summary>A decimal that may not be blank; 0 after a problem.</summary>
    public decimal RequiredDecimal(string column)
    {
        if (cells.Text(column) is null) cells.Note(column, "a number of 0 or more with a decimal point");
        return Decimal(column) ?? 0;
    }

    /// <summary>One of a few choices that may not be blank.</summary>
    public T Choice<T>(string column, IReadOnlyDictionary<string, T> choices) where T : struct
    {
        if (cells.Text(column) is null) cells.Note(column, $"one of: {string.Join(", ", choices.Keys)}");
        return cells.Choice(column, choices) ?? choices.Values.First();
    }

    /// <summary>1 is true, 0 is false.</summary>
    public bool Flag(string column) => Choice(column, Flags);

    /// <summary>A cell of <c>yes</c> or <c>no</c>.</summary>
    public bool YesOrNo(string column) => Choice(column, RowReader.YesNo);

    /// <summary>A range, from its four columns; the ends' columns may be called after their unit: <c>from_percent</c>.</summary>
    public FigureBand Band(string unit = "") => new(RequiredDecimal($"from{unit}"), Flag("from_inclusive"), Decimal($"to{unit}"), Flag("to_inclusive"));

    private static readonly Dictionary<string, bool> Flags = new() { ["1"] = true, ["0"] = false };

    /// <summary>What the row says in each language that it has a term in: every column that is neither of the origin nor one of these is a language.</summary>
    public IReadOnlyDictionary<string, string> ByLanguage(IEnumerable<string> others) => Terms.ByLanguage(cells, cells.Row.Sheet.Besides([.. others, .. OriginColumns]));

    /// <summary>A formula; null where the cell is blank or cannot be read.</summary>
    public ContentFormula? Formula(string column)
    {
        if (cells.Text(column) is not { } text) return null;
        if (ContentFormula.Parse(text) is { } formula) return formula;
        cells.Note(column, "tags with + or - between them, such as 0.0025 NA or CHOCDF - FIBTG | CHOAVLDF");
        return null;
    }
}
