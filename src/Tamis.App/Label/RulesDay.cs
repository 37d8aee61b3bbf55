using System.CommandLine;
using System.Globalization;

namespace Tamis.App.Label;

/// <summary>The option <c>--day</c>: the day whose rules a label is drawn up by.</summary>
internal static class RulesDay
{
    private const string Format = "yyyy-MM-dd";

    /// <summary>The option.</summary>
    public static Option<string?> Create() => new("--day") { Description = "Draw the label up by the rules of this day, whatever rules_day of dessert.csv says.", HelpName = "YYYY-MM-DD" };

    /// <summary>The day that was asked for; null where none was.</summary>
    /// <exception cref="UserProblem">It is no day.</exception>
    public static DateOnly? Of(string? text) => text is null ? null
        : DateOnly.TryParseExact(text, Format, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw new UserProblem($"--day: found '{text}', expected a day as year-month-day, such as 2026-06-13. Nothing was written.");

    /// <summary>The day in words, behind what was done; empty where none was asked for.</summary>
    public static string InWords(DateOnly? day) => day is { } asked ? $", by the rules of {asked.ToString(Format, CultureInfo.InvariantCulture)}" : "";
}
