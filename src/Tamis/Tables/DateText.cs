using System.Globalization;
using System.Text.RegularExpressions;

namespace Tamis.Tables;

/// <summary>What a written date tells of the order of day and month.</summary>
internal enum DateEvidence
{
    None,
    DayFirst,
    MonthFirst,
    Either,
}

/// <summary>Dates as people and spreadsheets write them.</summary>
public static partial class DateText
{
    private static readonly string[] NamedMonths = ["d MMM yyyy", "d MMM yy", "d MMMM yyyy", "d MMMM yy"];

    /// <summary>Reads a date: year first always, else in the order given; a month's English name needs no order.</summary>
    /// <param name="text">The text.</param>
    /// <param name="order">How the file's dates stand.</param>
    /// <param name="date">The date.</param>
    public static bool TryParse(string text, DateOrder order, out DateOnly date)
    {
        date = default;
        var plain = text.Trim();
        if (YearFirst().Match(plain) is { Success: true } iso) return Make(iso.Groups["year"].Value, iso.Groups["month"].Value, iso.Groups["day"].Value, out date);
        if (ThreeNumbers().Match(plain) is { Success: true } match)
        {
            var (first, second, year) = (match.Groups["first"].Value, match.Groups["second"].Value, match.Groups["year"].Value);
            return order switch
            {
                DateOrder.DayMonthYear => Make(year, second, first, out date),
                DateOrder.MonthDayYear => Make(year, first, second, out date),
                // 05/05/2026 is one day in either order.
                _ => Number(first) == Number(second) && Make(year, second, first, out date),
            };
        }
        return DateOnly.TryParseExact(plain.Replace('-', ' ').Replace(".", "", StringComparison.Ordinal), NamedMonths, CultureInfo.InvariantCulture, DateTimeStyles.None, out date);
    }

    /// <summary>The date as a file of this order has it.</summary>
    public static string Write(DateOnly date, DateOrder order) => date.ToString(order switch
    {
        DateOrder.DayMonthYear => "dd/MM/yyyy",
        DateOrder.MonthDayYear => "MM/dd/yyyy",
        _ => "yyyy-MM-dd",
    }, CultureInfo.InvariantCulture);

    /// <summary>Whether a text is what a spreadsheet makes of a range such as <c>8-12</c>: a day and a month, a month and a year.</summary>
    /// <remarks><c>08.Dec</c>, <c>12-Aug</c>, <c>8. Dez</c>, <c>Dec-25</c>, <c>08/12/2026</c>, <c>2026-12-08</c>.</remarks>
    public static bool LooksLikeDate(string text) =>
        YearFirst().IsMatch(text.Trim()) || ThreeNumbers().IsMatch(text.Trim()) || DayAndMonth().IsMatch(text.Trim());

    internal static DateEvidence TellingOrder(string text)
    {
        if (ThreeNumbers().Match(text) is not { Success: true } match) return DateEvidence.None;
        var first = int.Parse(match.Groups["first"].Value, CultureInfo.InvariantCulture);
        var second = int.Parse(match.Groups["second"].Value, CultureInfo.InvariantCulture);
        return (first, second) switch
        {
            ( < 1 or > 31, _) or (_, < 1 or > 31) or ( > 12, > 12) => DateEvidence.None,
            ( > 12, _) => DateEvidence.DayFirst,
            (_, > 12) => DateEvidence.MonthFirst,
            // Dots between day and month are written day first everywhere (common practice, no source).
            _ when match.Groups["mark"].Value == "." => DateEvidence.DayFirst,
            _ => first == second ? DateEvidence.None : DateEvidence.Either,
        };
    }

    // Two digits are years of this century: no kitchen's log is older.
    private static bool Make(string year, string month, string day, out DateOnly date)
    {
        date = default;
        var (y, m, d) = (Number(year) + (year.Length == 2 ? 2000 : 0), Number(month), Number(day));
        if (y is < 1 or > 9999 || m is < 1 or > 12 || d < 1 || d > DateTime.DaysInMonth(y, m)) return false;
        date = new(y, m, d);
        return true;
    }

    private static int Number(string digits) => int.Parse(digits, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<year>\d{4})([-/.])(?<month>\d{1,2})\1(?<day>\d{1,2})$", RegexOptions.CultureInvariant)]
    private static partial Regex YearFirst();

    [GeneratedRegex(@"^(?<first>\d{1,2})(?<mark>[-/.])\s?(?<second>\d{1,2})\k<mark>\s?(?<year>\d{4}|\d{2})$", RegexOptions.CultureInvariant)]
    private static partial Regex ThreeNumbers();

    // A blank alone does not part day and month here: `3 mars` is three bars.
    [GeneratedRegex(@"^(\d{1,2}(-|/|\. ?)" + Months + @"\.?((-|/|\. ?)\d{2,4})?|" + Months + @"\.?(-|/|\. ?)\d{2,4})$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex DayAndMonth();

    private const string Months = "(jan|janv|january|januar|janvier|feb|fev|fév|févr|february|februar|février|mar|mär|mrz|märz|march|mars|apr|avr|april|avril|may|mai|jun|june|juni|juin"
        + "|jul|july|juli|juil|juillet|aug|august|aoû|août|sep|sept|september|septembre|oct|okt|october|oktober|octobre|nov|november|novembre|dec|dez|déc|december|dezember|décembre)";
}
