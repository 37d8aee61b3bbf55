using System.Globalization;

namespace Tamis.Composition.Import;

/// <summary>What a cell of the French table says.</summary>
internal enum CiqualKind
{
    /// <summary>Nothing, or a dash: nobody has a figure.</summary>
    Missing,
    /// <summary>A number.</summary>
    Number,
    /// <summary>Below a limit.</summary>
    Below,
    /// <summary>There, but too little for a figure.</summary>
    Trace,
    /// <summary>Something else, which no cell of the table should hold.</summary>
    Other,
}

/// <summary>A cell of the French table: decimal comma, <c>-</c> or nothing for unknown, <c>&lt; 0,5</c>, <c>traces</c>.</summary>
internal readonly record struct CiqualCell(CiqualKind Kind, double Value)
{
    public static CiqualCell Parse(ReadOnlySpan<char> cell)
    {
        var text = cell.Trim();
        if (text.IsEmpty || text is "-") return new(CiqualKind.Missing, double.NaN);
        if (text is "traces" or "trace") return new(CiqualKind.Trace, 0);
        var isBelow = text[0] == '<';
        return Number(isBelow ? text[1..].Trim() : text) is var value && double.IsNaN(value) ? new(CiqualKind.Other, double.NaN)
            : new(isBelow ? CiqualKind.Below : CiqualKind.Number, value);
    }

    /// <summary>A number with a decimal comma, zero or more; NaN for anything else.</summary>
    public static double Number(ReadOnlySpan<char> text)
    {
        Span<char> pointed = stackalloc char[32];
        if (text.Length is 0 or > 32) return double.NaN;
        text.CopyTo(pointed);
        pointed = pointed[..text.Length];
        // A point too: the later releases write some columns so. Both at once are no number.
        if (pointed.Contains(',') && pointed.Contains('.')) return double.NaN;
        pointed.Replace(',', '.');
        return double.TryParse(pointed, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : double.NaN;
    }

    /// <summary>The cell as a statement of the table; null where it states nothing.</summary>
    public ContentRow? ToRow(string source, string method) => Kind switch
    {
        CiqualKind.Number => new(Value == 0 ? ContentState.Zero : ContentState.Measured, Value, source, method),
        CiqualKind.Below when Value > 0 => new ContentRow(ContentState.BelowLimit, double.NaN, source, method) { Low = 0, High = Value },
        // Below a limit of nothing is nothing.
        CiqualKind.Below => new(ContentState.Zero, 0, source, method),
        CiqualKind.Trace => new(ContentState.Trace, 0, source, method),
        _ => null,
    };
}
