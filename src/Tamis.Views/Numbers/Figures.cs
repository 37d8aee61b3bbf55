using System.Globalization;

namespace Tamis.Views;

/// <summary>Writes numbers as a page of one language shows them: rounded once, at the end, by what kind of quantity they are.</summary>
/// <remarks>A number that is null or not finite is said to be not known; it is never shown as zero. Halves are rounded away from zero.</remarks>
/// <param name="language">The language of the page.</param>
public sealed class Figures(Language language)
{
    /// <summary>Numbers as an English page shows them.</summary>
    public static Figures English { get; } = new(Language.English);

    /// <summary>The language of the page.</summary>
    public Language Language { get; } = language;

    /// <summary>What is said where nobody has a figure.</summary>
    public Num NotKnown => Num.Said(Language.Words.NotKnown);

    /// <summary>A mass: one decimal under 10 g, else whole grams.</summary>
    public Num Mass(double? grams) => Number(grams, MassDecimals(grams), "g");

    /// <summary>A share of a mixture, 0 to 1, as per cent with one decimal.</summary>
    public Num Share(double? share) => Number(share * 100, 1, "%");

    /// <summary>A share, 0 to 1, as whole per cent, for bars and coverage.</summary>
    public Num WholeShare(double? share) => Number(share * 100, 0, "%");

    /// <summary>The dose of a gelling agent, 0 to 1 of the component, as per cent with two decimals.</summary>
    public Num Dose(double? share) => Number(share * 100, 2, "%");

    /// <summary>Water activity, 0 to 1, two decimals.</summary>
    public Num WaterActivity(double? activityRatio) => Number(activityRatio, 2, "");

    /// <summary>A temperature in whole degrees Celsius.</summary>
    public Num Celsius(double? celsius) => Number(celsius, 0, "°C");

    /// <summary>A score in points, one decimal.</summary>
    public Num Score(double? points) => Number(points, 1, "");

    /// <summary>Energy in whole kilojoules.</summary>
    public Num Kilojoules(double? kilojoules) => Number(kilojoules, 0, "kJ");

    /// <summary>Energy in whole kilocalories.</summary>
    public Num Kilocalories(double? kilocalories) => Number(kilocalories, 0, "kcal");

    /// <summary>A time in whole minutes.</summary>
    public Num Minutes(double? minutes) => Number(minutes, 0, Language.Words.Minutes);

    /// <summary>A range of minutes, <c>13 to 15 min</c>; one number where both ends print the same.</summary>
    public string Minutes(Interval minutes) => Between(minutes, 0, Language.Words.Minutes);

    /// <summary>A length in millimetres, one decimal.</summary>
    public Num Millimetres(double? millimetres) => Number(millimetres, 1, "mm");

    /// <summary>An acidity in pH or a Brix value, one decimal.</summary>
    public Num OneDecimal(double? value, string unit = "") => Number(value, 1, unit);

    /// <summary>A whole number of things.</summary>
    public Num Count(int count) => Number(count, 0, "");

    /// <summary>A part of a ratio: as many decimals as it needs, two at most.</summary>
    public Num Part(double? ratio) => Number(ratio, ratio is { } value ? DecimalsNeeded(value, 2) : 0, "");

    /// <summary>A ratio of parts, <c>2 : 1 : 0.8</c>.</summary>
    public string Ratio(params ReadOnlySpan<double> parts)
    {
        List<string> shown = [];
        foreach (var part in parts) shown.Add(Part(part).Text);
        return string.Join($"{Num.UnitSpace}:{Num.UnitSpace}", shown);
    }

    /// <summary>A number where no other rule holds: three significant digits at most.</summary>
    public Num Significant(double? value, string unit = "", int digits = 3) =>
        Number(value, value is { } number && double.IsFinite(number) && number != 0 ? Math.Clamp(digits - 1 - Magnitude(number), 0, 6) : 0, unit);

    /// <summary>A figure as somebody stated it, with no zero added and no digit taken off: up to five digits as they stand, else three significant ones, since nobody states more.</summary>
    public Num AsStated(double? value, string unit = "") =>
        value is { } number && double.IsFinite(number) && DecimalsNeeded(number, 6) is var decimals && Math.Abs(Math.Round(number, decimals) - number) <= 1e-9 * Math.Abs(number) && Math.Abs(number) * Math.Pow(10, decimals) < 1e5
            ? Number(number, decimals, unit) : Significant(value, unit);

    /// <summary>A difference: its sign is always written, a zero has none.</summary>
    public Num Difference(double? value, int decimals, string unit = "") => Signed(Number(value, decimals, unit));

    /// <summary>A sum of what is known: the number where all is known, else <c>at least</c> the sum, else not known.</summary>
    public Num Sum(Amount amount, int decimals, string unit) =>
        amount.IsWhole ? Number(amount.Known, decimals, unit)
        : amount.CoveredMassGrams > 0 ? Number(amount.Known, decimals, unit) is var known ? known with { Whole = $"{Language.Words.AtLeast} {known.Whole}" } : default
        : NotKnown;

    /// <summary>A content of a food: measured zero is 0, a trace and a bound are said in words, and what nobody has measured is not known.</summary>
    public Num Content(Composition.Content content, int decimals, string unit) => content.State switch
    {
        Composition.ContentState.Unknown => NotKnown,
        Composition.ContentState.Trace => Num.Said(Language.Words.Trace),
        Composition.ContentState.Zero or Composition.ContentState.AssumedZero => Number(0, 0, unit),
        Composition.ContentState.BelowLimit when content.Range is { } range => Number(range.High, decimals, unit) is var limit ? limit with { Whole = $"{Language.Words.Under} {limit.Whole}" } : default,
        _ => Number(content.Per100Grams, decimals, unit),
    };

    /// <summary>A range of two numbers, <c>1.0 to 1.5 %</c>; one number where both ends print the same.</summary>
    public string Between(Interval range, int decimals, string unit)
    {
        var (low, high) = (Number(range.Low, decimals, unit), Number(range.High, decimals, unit));
        return low == high ? high.Text : $"{low.Figure} {Language.Words.To} {high.Text}";
    }

    /// <summary>An estimate with its interval, both to the place that the interval can carry.</summary>
    /// <param name="value">The estimate.</param>
    /// <param name="interval">Its interval; null where the data give no spread, and then none is shown.</param>
    /// <param name="unit">The unit of all three.</param>
    /// <param name="decimals">The decimals to show; null for one or two significant digits of the interval.</param>
    /// <param name="signed">Whether it is a difference, so that signs are written.</param>
    public Estimate Estimate(double? value, Interval? interval, string unit = "", int? decimals = null, bool signed = false)
    {
        if (interval is not { } range) return new(Write(value, decimals), null, null);
        var places = decimals ?? PlacesOf(range);
        return new(Write(value, places), Write(range.Low, places), Write(range.High, places)) { To = Language.Words.To };

        Num Write(double? number, int? places)
        {
            var shown = places is { } fixedPlaces ? Number(number, fixedPlaces, unit) : Significant(number, unit);
            return signed ? Signed(shown) : shown;
        }
    }

    /// <summary>A number with a given number of decimals; a negative number of decimals rounds to tens, hundreds.</summary>
    public Num Number(double? value, int decimals, string unit = "")
    {
        if (value is not { } number || !double.IsFinite(number)) return NotKnown;
        var rounded = Round(number, decimals);
        var digits = Math.Abs(rounded).ToString(decimals > 0 ? "F" + decimals.ToString(CultureInfo.InvariantCulture) : "F0", CultureInfo.InvariantCulture);
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var whole = point < 0 ? digits : digits[..point];
        for (var at = whole.Length - 3; at > 0; at -= 3) whole = whole.Insert(at, Language.GroupMark);
        return new((rounded < 0 ? "\u2212" : "") + whole, point < 0 ? "" : Language.DecimalMark + digits[(point + 1)..], unit);
    }

    /// <summary>The decimals that an interval can carry: its half width to one significant digit, two if that digit is a one. May be negative.</summary>
    internal static int PlacesOf(Interval interval)
    {
        var half = interval.Width / 2;
        if (half <= 0) return 2;
        var places = -Magnitude(half);
        return half * Math.Pow(10, places) < 1.95 ? places + 1 : places;
    }

    /// <summary>Rounds as every page does: halves away from zero, on the decimal digits that were written, not on their binary shadow.</summary>
    internal static double Round(double value, int decimals)
    {
        // 2.675 is stored just under 2.675; fifteen significant digits give back what was written.
        if (Math.Abs(value) >= 7e27) return value;
        var exact = decimal.Parse(value.ToString("G15", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
        if (decimals >= 0) return (double)Math.Round(exact, Math.Min(decimals, 15), MidpointRounding.AwayFromZero);
        var unit = (decimal)Math.Pow(10, -decimals);
        return (double)(Math.Round(exact / unit, MidpointRounding.AwayFromZero) * unit);
    }

    private static int MassDecimals(double? grams) => grams is { } mass && Math.Abs(Round(mass, 1)) < 10 ? 1 : 0;

    private static int DecimalsNeeded(double value, int most)
    {
        for (var decimals = 0; decimals < most; decimals++)
            if (Math.Abs(Round(value, decimals) - Round(value, most)) < 1e-9) return decimals;
        return most;
    }

    private static int Magnitude(double value) => (int)Math.Floor(Math.Log10(Math.Abs(value)) + 1e-12);

    private static Num Signed(Num number) =>
        number.Whole.Length == 0 || !char.IsAsciiDigit(number.Whole[0]) || (number.Whole + number.Decimals).All(digit => !char.IsAsciiDigit(digit) || digit == '0')
            ? number
            : number with { Whole = "+" + number.Whole };
}
