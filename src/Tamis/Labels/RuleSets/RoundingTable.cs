using System.Globalization;

namespace Tamis.Labels;

/// <summary>An amount as a label prints it.</summary>
/// <param name="Text">What is printed.</param>
/// <param name="Alternatives">Other texts that are as lawful.</param>
/// <param name="Number">The rounded number in the unit of the band; null where a text stands for the band.</param>
/// <param name="Band">The band that was chosen.</param>
public sealed record RoundedAmount(string Text, IReadOnlyList<string> Alternatives, decimal? Number, RoundingBand Band)
{
    /// <summary>The number that the label shows, in the unit of the band; null where it shows words such as <c>less than 5 mg</c>.</summary>
    public decimal? ShownNumber => Number ?? (decimal.TryParse(Text.Split(' ', '%')[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var shown) ? shown : null);

    /// <summary>Whether the label shows nothing but zero.</summary>
    public bool IsZero => ShownNumber == 0;
}

/// <summary>The rounding bands of a rule set.</summary>
public sealed class RoundingTable
{
    // A decimal has 28 places; what is smaller than this rounds to nothing.
    private const decimal SmallestStep = 1e-24m;

    private readonly ILookup<(string, string), RoundingBand> _byFigure;

    /// <summary>Makes a table.</summary>
    /// <param name="bands">All bands.</param>
    /// <param name="keepsClosingZeros">Whether <c>0.10 g</c> is printed with its closing zero; the other spelling is an alternative.</param>
    public RoundingTable(IReadOnlyList<RoundingBand> bands, bool keepsClosingZeros)
    {
        (Bands, KeepsClosingZeros) = (bands, keepsClosingZeros);
        _byFigure = bands.ToLookup(band => (Names.Key(band.Key), band.Unit));
    }

    /// <summary>All bands, in the order of the file.</summary>
    public IReadOnlyList<RoundingBand> Bands { get; }

    /// <summary>Whether <c>0.10 g</c> is printed with its closing zero.</summary>
    public bool KeepsClosingZeros { get; }

    /// <summary>The bands of a figure, in the order of the file; none where the table has none.</summary>
    public IEnumerable<RoundingBand> For(string key, string unit) => _byFigure[(Names.Key(key), unit)];

    /// <summary>Rounds an amount for print. An amount below zero (carbohydrate by difference can be) prints as zero.</summary>
    /// <param name="key">The figure, by the key of the declaration.</param>
    /// <param name="unit">The unit of the amount.</param>
    /// <param name="amount">The amount, not rounded, in <paramref name="unit"/>.</param>
    /// <param name="isMet">Whether a condition that a band hangs on is met; without it none is.</param>
    /// <exception cref="KeyNotFoundException">The table has no band for such a figure.</exception>
    public RoundedAmount Round(string key, string unit, decimal amount, Func<string, bool>? isMet = null)
    {
        amount = Math.Max(0, amount);
        RoundingBand? otherwise = null;
        foreach (var band in For(key, unit))
        {
            if (!band.Takes(amount)) continue;
            if (band.If.Length == 0) otherwise ??= band;
            else if (isMet is not null && isMet(band.If)) return Round(band, amount);
        }
        return otherwise is not null ? Round(otherwise, amount) : throw new KeyNotFoundException(Miss(key, unit));
    }

    /// <summary>Rounds an amount down to the step of its band, for words such as <c>at least 12 g</c>.</summary>
    /// <returns>The text, or null where only a text stands for the band, or the step down is nothing.</returns>
    public string? RoundDown(string key, string unit, decimal amount)
    {
        if (amount <= 0 || For(key, unit).FirstOrDefault(band => band.If.Length == 0 && band.Takes(amount)) is not { } band || band.Method == RoundingMethod.Text) return null;
        var step = StepOf(band, amount);
        var down = Math.Floor(amount / step) * step;
        return down > 0 ? Print(band, down, step, KeepsClosingZeros) : null;
    }

    /// <summary>A number as an amount to round. A binary fraction is taken at the 15 figures that it holds, so that 0.246 × 2.5 is 0.615.</summary>
    /// <exception cref="OverflowException">The number is not finite, or larger than a decimal holds.</exception>
    public static decimal ToDecimal(double number) => (decimal)number;

    private RoundedAmount Round(RoundingBand band, decimal amount)
    {
        List<string> texts = [];
        decimal? number = null;
        if (band.Method == RoundingMethod.Text) texts.Add(band.Text);
        else
        {
            var step = StepOf(band, amount);
            number = Nearest(amount, step);
            // 9.96 to two figures is 10, not 10.0.
            if (band.Method == RoundingMethod.Significant) step = StepOf(band, number.Value);
            texts.AddRange([Print(band, number.Value, step, KeepsClosingZeros), Print(band, number.Value, step, !KeepsClosingZeros)]);
        }
        texts.AddRange(band.Alternatives);
        if (band.AlternativeIncrement is { } other) texts.Add(PatternOf(band).Replace("#", Plain(Nearest(amount, other))));
        if (band.AlternativeFigures is { } figures) texts.Add(PatternOf(band).Replace("#", Plain(Nearest(amount, StepOf(figures, amount)))));
        string[] distinct = [.. texts.Distinct()];
        return new(distinct[0], distinct[1..], number, band);
    }

    private static decimal Nearest(decimal amount, decimal step) => Math.Round(amount / step, MidpointRounding.AwayFromZero) * step;

    private static decimal StepOf(RoundingBand band, decimal amount) =>
        band.Method == RoundingMethod.Nearest ? band.Increment : StepOf((int)band.Increment, amount);

    // The place of the last significant figure: 12.34 to two figures steps by 1, 0.0456 by 0.001.
    private static decimal StepOf(int figures, decimal amount)
    {
        var step = 1m;
        if (amount == 0) return step;
        var scaled = amount;
        for (; scaled >= 10; scaled /= 10) step *= 10;
        for (; scaled < 1 && step > SmallestStep; scaled *= 10) step /= 10;
        for (var figure = 1; figure < figures && step > SmallestStep; figure++) step /= 10;
        return step;
    }

    private static string Print(RoundingBand band, decimal number, decimal step, bool keepsClosingZeros) =>
        PatternOf(band).Replace("#", keepsClosingZeros ? number.ToString($"F{DecimalsOf(step)}", CultureInfo.InvariantCulture) : Plain(number));

    // A text band's other step is printed as the figure's other bands are: in the unit of its own text, '0' or '0 g'.
    private static string PatternOf(RoundingBand band) =>
        band.Printed.Length > 0 ? band.Printed : band.Text.Contains(' ') ? $"# {band.Unit}" : "#";

    // Dividing by a one with many zeros drops the closing zeros of a decimal, so that its scale is what a reader would write.
    private static int DecimalsOf(decimal step) => (step / 1.0000000000000000000000000000m).Scale;

    private static string Plain(decimal number) => number.ToString("0.##########", CultureInfo.InvariantCulture);

    private string Miss(string key, string unit)
    {
        var units = Bands.Where(band => Names.Same(band.Key, key)).Select(band => band.Unit).Distinct().ToArray();
        return units is []
            ? $"No rounding rule for '{key}'; near ones: {string.Join(", ", Names.Nearest(key, Bands.Select(band => band.Key)))}."
            : $"No rounding rule for '{key}' in {unit}; the rule set has it in {string.Join(" and ", units)}.";
    }
}
