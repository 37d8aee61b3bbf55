using System.Globalization;

namespace Tamis.Views;

/// <summary>A column of a table.</summary>
/// <param name="Name">Its header.</param>
/// <param name="Unit">The unit of its numbers, on a line of its own; nothing for words or mixed units.</param>
/// <param name="IsNumber">Whether its cells stand right, on the decimal mark.</param>
public sealed record Column(string Name, string Unit = "", bool IsNumber = false)
{
    /// <summary>A column of words.</summary>
    public static Column Words(string name) => new(name);

    /// <summary>A column of numbers.</summary>
    public static Column Numbers(string name, string unit = "") => new(name, unit, true);
}

/// <summary>A cell of a table: words, markup or a number.</summary>
public sealed record Cell
{
    private Cell(Html content, Num? number) => (Content, Number) = (content, number);

    /// <summary>What stands in it.</summary>
    public Html Content { get; private init; }

    /// <summary>The number that stands in it, or null.</summary>
    internal Num? Number { get; }

    /// <summary>The name of the tracked figure that it shows, or null.</summary>
    public string? Figure { get; init; }

    /// <summary>Where it came from: sheet, row and column; a line under the content.</summary>
    public string? From { get; init; }

    /// <summary>Words.</summary>
    public static implicit operator Cell(string words) => new(Html.Text(words), null);

    /// <summary>Markup.</summary>
    public static implicit operator Cell(Html content) => new(content, null);

    /// <summary>A number; its unit is left to the header unless the column has none.</summary>
    public static implicit operator Cell(Num number) => new(number.Cell, number);

    /// <summary>The same cell as one that shows a tracked figure.</summary>
    public Cell Tracked(string figure) => this with { Figure = figure };
}

/// <summary>A row of a table; the first cell is its header.</summary>
/// <param name="Cells">One cell a column.</param>
public sealed record Row(params IReadOnlyList<Cell> Cells)
{
    /// <summary>What kind of row it is.</summary>
    public RowKind Kind { get; init; }
}

/// <summary>What kind of row it is.</summary>
public enum RowKind
{
    /// <summary>One of the lines.</summary>
    Line,
    /// <summary>The row of the trial spoken of.</summary>
    Chosen,
    /// <summary>The sum of the lines above.</summary>
    Total,
    /// <summary>A part of the line above, indented.</summary>
    Part,
}

/// <summary>A table of data: words first, numbers right of them on the decimal mark.</summary>
/// <param name="Name">What it is a table of; read out, and the name of the part that scrolls.</param>
/// <param name="Columns">Its columns, eight at most.</param>
/// <param name="Rows">Its rows.</param>
[TypeFormatterSource(typeof(ViewFormatters<DataTable>), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed record DataTable(string Name, IReadOnlyList<Column> Columns, IReadOnlyList<Row> Rows) : IView
{
    /// <summary>What stands above the table, or nothing.</summary>
    public Html Caption { get; init; }

    /// <summary>Notes under the table.</summary>
    public IReadOnlyList<Html> Notes { get; init; } = [];

    /// <summary>Whether it may be wider than the text column.</summary>
    public bool IsWide { get; init; }

    /// <summary>Whether it is only as wide as its content.</summary>
    public bool Fits { get; init; }

    /// <summary>Whether it may be cut between rows on paper.</summary>
    public bool IsLong { get; init; }

    /// <summary>The width under which it scrolls on a phone, in text heights.</summary>
    public double? LeastRem { get; init; }

    /// <summary>The table as markup.</summary>
    /// <exception cref="ArgumentException">A row has not one cell a column.</exception>
    public Html ToHtml()
    {
        foreach (var row in Rows)
            if (row.Cells.Count != Columns.Count)
                throw new ArgumentException($"The table '{Name}' has {Columns.Count} columns, but a row has {row.Cells.Count} cells.");

        var kinds = string.Join(' ', ((string[])[Fits ? "fit" : "", IsLong ? "long" : ""]).Where(part => part.Length > 0));
        var head = Html.Join(Columns.Select(Header));
        var body = Html.Join(Rows.Select(Line));
        var foot = Notes.Count == 0 ? Html.Empty : Html.Of($"<tfoot>{Notes.Select(note => Html.Of($"<tr><td colspan=\"{Columns.Count}\">{note}</td></tr>"))}</tfoot>");
        var caption = Caption.IsEmpty ? Html.Empty : Html.Of($"<caption>{Caption}</caption>");
        var table = Html.Of($"<table{Attribute("class", kinds)}{Attribute("style", Least())}>{caption}<thead><tr>{head}</tr></thead>\n<tbody>{body}</tbody>{foot}</table>");
        return Html.Of($"<div class=\"{(IsWide ? "table wide" : "table")}\"><div class=\"across\" tabindex=\"0\" role=\"region\" aria-label=\"{Name}\">{table}</div></div>\n");

        string Least() => LeastRem is { } rem ? $"--least:{rem.ToString("0.##", CultureInfo.InvariantCulture)}rem" : Columns.Count > 4 ? $"--least:{Columns.Count * 5}rem" : "";
    }

    private static Html Header(Column column) => Html.Of(
        $"<th scope=\"col\"{Attribute("class", column.IsNumber ? "num" : "")}>{column.Name}{(column.Unit.Length == 0 ? Html.Empty : Html.Of($" <span class=\"unit\">{column.Unit}</span>"))}</th>");

    private Html Line(Row row)
    {
        var kind = row.Kind switch { RowKind.Chosen => "chosen", RowKind.Total => "total", RowKind.Part => "in", _ => "" };
        return Html.Of($"<tr{Attribute("class", kind)}>{row.Cells.Select(Content)}</tr>\n");
    }

    private Html Content(Cell cell, int at)
    {
        var column = Columns[at];
        var content = cell.Number is { Unit.Length: > 0 } number && column.Unit.Length == 0 ? Html.Text(number.Text) : cell.Content;
        if (cell.From is { Length: > 0 } from) content += Html.Of($" <span class=\"from\">{from}</span>");
        var figure = Attribute("data-figure", cell.Figure ?? "");
        if (at == 0) return Html.Of($"<th scope=\"row\"{figure}>{content}</th>");
        return Html.Of($"<td{Attribute("class", column.IsNumber ? Aligned(cell, at) : "")}{figure}>{content}</td>");
    }

    // The cells of a column make room for its most decimals, so that decimal marks stand above each other; words stand at the edge.
    private string Aligned(Cell cell, int at)
    {
        var most = Rows.Max(row => Math.Min(6, Math.Max(0, (row.Cells[at].Number?.Decimals?.Length ?? 0) - 1)));
        var isSaid = cell.Number is not { } number || !number.Figure.Any(char.IsAsciiDigit) || number.Unit.Length > 0 && Columns[at].Unit.Length == 0;
        return (most == 0 ? "num" : "num d" + most.ToString(CultureInfo.InvariantCulture)) + (isSaid && most > 0 ? " said" : "");
    }

    private static Html Attribute(string name, string value) => value.Length == 0 ? Html.Empty : Html.Of($" {name}=\"{value}\"");
}
