namespace Tamis.Views;

/// <summary>The language of a page: how it writes numbers, its fixed words and its sentences.</summary>
/// <remarks>Texts of laws keep their own language and their own decimal mark, whatever the page's.</remarks>
public sealed record Language
{
    /// <summary>English with a decimal point: the default of every page.</summary>
    public static Language English { get; } = new();

    /// <summary>The tag of the language as HTML writes it, such as <c>en</c>.</summary>
    public string Tag { get; init; } = "en";

    /// <summary>What stands between the whole part of a number and its decimals.</summary>
    public string DecimalMark { get; init; } = ".";

    /// <summary>What stands between thousands, from 1 000 on; by default the narrow space that does not break.</summary>
    public string GroupMark { get; init; } = "\u202f";

    /// <summary>The fixed words of pages, tables and charts.</summary>
    public Words Words { get; init; } = new();

    /// <summary>The sentences that say how sure something is and what is missing.</summary>
    public Sentences Sentences { get; init; } = new();

    /// <summary>The two marks as the charts want them.</summary>
    internal string Separators => DecimalMark + GroupMark;
}
