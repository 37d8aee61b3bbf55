using System.Globalization;

namespace Tamis.Verification;

/// <summary>Whether the kit agrees with a published figure.</summary>
public enum CheckVerdict
{
    /// <summary>It does, within the tolerance.</summary>
    Agrees,
    /// <summary>It does not, or the kit cannot compute it.</summary>
    Misses,
}

/// <summary>A published figure beside the kit's own.</summary>
/// <param name="Row">The published figure.</param>
/// <param name="Computed">What the kit computed, as text; empty where it computed nothing.</param>
/// <param name="Difference">Computed less expected, in the row's unit; null where texts were compared or nothing was computed.</param>
/// <param name="Verdict">Whether they agree.</param>
/// <param name="Reason">Why they do not; empty where they agree.</param>
public sealed record CheckOutcome(CheckRow Row, string Computed, double? Difference, CheckVerdict Verdict, string Reason)
{
    /// <summary>The tolerance as text.</summary>
    public string ToleranceText => Row.Tolerance?.ToString("G", CultureInfo.InvariantCulture) ?? "exact";
}

/// <summary>Recomputes published figures.</summary>
public static class Verifier
{
    private const string Or = " | ";

    /// <summary>Recomputes each row with the quantity of its name. A quantity that nobody lends is a miss, and so is one that fails.</summary>
    /// <param name="rows">The published figures.</param>
    /// <param name="quantities">What can be computed, by name.</param>
    public static IReadOnlyList<CheckOutcome> Run(IEnumerable<CheckRow> rows, IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> quantities) =>
        [.. rows.Select(row => Run(row, quantities))];

    private static CheckOutcome Run(CheckRow row, IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> quantities)
    {
        if (!quantities.TryGetValue(row.Quantity, out var compute))
        {
            var near = Names.Nearest(row.Quantity, quantities.Keys);
            return Miss(row, $"the kit has no quantity '{row.Quantity}'" + (near is [] ? "" : $"; near ones: {string.Join(", ", near)}"));
        }
        try
        {
            return Compare(row, compute(CheckInputs.Parse(row.Inputs, row.Folder)));
        }
        catch (Exception error) when (error is FormatException or KeyNotFoundException or ArgumentException or InvalidOperationException or ArithmeticException or IOException)
        {
            return Miss(row, error.Message);
        }
    }

    private static CheckOutcome Compare(CheckRow row, CheckValue value)
    {
        var alternatives = row.Expected.Split(Or, StringSplitOptions.TrimEntries);
        if (value.Number is not { } number)
        {
            var text = value.Text ?? "";
            return alternatives.Contains(text, StringComparer.Ordinal)
                ? new(row, text, null, CheckVerdict.Agrees, "")
                : new(row, text, null, CheckVerdict.Misses, "another text was expected");
        }
        var computed = number.ToString("G15", CultureInfo.InvariantCulture);
        double[] figures = [.. alternatives.Select(Figure).OfType<double>()];
        if (figures is []) return new(row, computed, null, CheckVerdict.Misses, "a text was expected, not a number");
        var difference = figures.Select(figure => number - figure).MinBy(Math.Abs);
        return Math.Abs(difference) <= (row.Tolerance ?? 0)
            ? new(row, computed, difference, CheckVerdict.Agrees, "")
            : new(row, computed, difference, CheckVerdict.Misses, "the difference is more than the tolerance");
    }

    private static double? Figure(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var figure) ? figure : null;

    private static CheckOutcome Miss(CheckRow row, string reason) => new(row, "", null, CheckVerdict.Misses, reason);
}
