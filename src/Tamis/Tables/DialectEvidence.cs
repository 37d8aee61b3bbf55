namespace Tamis.Tables;

/// <summary>What the cells of a file tell of its decimal mark and its date order.</summary>
/// <param name="Points">Cells that can only be decimals with a point.</param>
/// <param name="Commas">Cells that can only be decimals with a comma.</param>
/// <param name="DayFirst">A date that can only have its day first.</param>
/// <param name="MonthFirst">A date that can only have its month first.</param>
/// <param name="EitherOrder">A date that could be read both ways.</param>
internal sealed record DialectEvidence(int Points, int Commas, string? DayFirst, string? MonthFirst, string? EitherOrder)
{
    public static DialectEvidence Gather(IEnumerable<string> cells)
    {
        int points = 0, commas = 0;
        string? dayFirst = null, monthFirst = null, either = null;
        foreach (var cell in cells)
        {
            var text = cell.AsSpan().Trim();
            if (text.Length < 2 || text.Length > 200) continue;
            var mark = NumberText.TellingMark(text);
            if (mark == '.') points++;
            else if (mark == ',') commas++;
            // The shortest date that leaves its order open is 1/2/26.
            if (text.Length < 6 || !char.IsAsciiDigit(text[0]) || !text.ContainsAny('/', '-', '.')) continue;
            foreach (var part in cell.Split(';', StringSplitOptions.TrimEntries))
            {
                switch (DateText.TellingOrder(part))
                {
                    case DateEvidence.DayFirst: dayFirst ??= part; break;
                    case DateEvidence.MonthFirst: monthFirst ??= part; break;
                    case DateEvidence.Either: either ??= part; break;
                    default: break;
                }
            }
        }
        return new(points, commas, dayFirst, monthFirst, either);
    }

    /// <summary>The mark that most telling cells use; without any, comma where semicolons part the cells, else point.</summary>
    public char DecimalMark(char separator) =>
        Points != Commas ? (Points > Commas ? '.' : ',')
        : separator == ';' ? ',' : '.';

    public DateOrder DateOrder => DayFirst is not null ? DateOrder.DayMonthYear
        : MonthFirst is not null ? DateOrder.MonthDayYear
        : DateOrder.YearMonthDay;

    /// <summary>The question that the file's dates leave open; null where they leave none.</summary>
    public string? DateOrderDoubt =>
        (DayFirst, MonthFirst) is ({ } day, { } month) ? $"the dates stand in two orders ('{day}' and '{month}'); write them year first, 2026-11-25"
        : DayFirst is null && MonthFirst is null && EitherOrder is { } date ? $"'{date}' could be day or month first, and no date of the file settles it; set date_order, or write dates year first, 2026-11-25"
        : null;
}
