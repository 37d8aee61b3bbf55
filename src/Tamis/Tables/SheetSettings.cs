namespace Tamis.Tables;

/// <summary>What is said about a file beforehand, in place of what its own cells would tell.</summary>
/// <param name="DecimalMark">Point or comma; null = decided from the file.</param>
/// <param name="DateOrder">How dates stand; null = decided from the file.</param>
public sealed record SheetSettings(char? DecimalMark = null, DateOrder? DateOrder = null)
{
    /// <summary>The decimal marks by the words of a setting: <c>point</c>, <c>comma</c>.</summary>
    public static IReadOnlyDictionary<string, char> DecimalMarks { get; } = new Dictionary<string, char>(StringComparer.Ordinal) { ["point"] = '.', ["comma"] = ',' };

    /// <summary>The date orders by the words of a setting: <c>year-month-day</c>, <c>day-month-year</c>, <c>month-day-year</c>.</summary>
    public static IReadOnlyDictionary<string, DateOrder> DateOrders { get; } = new Dictionary<string, DateOrder>(StringComparer.Ordinal)
    {
        ["year-month-day"] = Tables.DateOrder.YearMonthDay,
        ["day-month-year"] = Tables.DateOrder.DayMonthYear,
        ["month-day-year"] = Tables.DateOrder.MonthDayYear,
    };
}
