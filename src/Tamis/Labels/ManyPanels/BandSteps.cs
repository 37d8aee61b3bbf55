namespace Tamis.Labels;

/// <summary>A rounded figure as many panels print it.</summary>
/// <param name="Text">What is printed.</param>
/// <param name="Number">The rounded number; null where a text stands for the band.</param>
/// <param name="Percent">The percentage of the reference value where the law takes it from the declared number; null where it does not, or there is none.</param>
/// <param name="IsZero">Whether the label shows nothing but zero.</param>
internal sealed record PrintedStep(string Text, decimal? Number, string? Percent, bool IsZero);

/// <summary>The rounding bands of one figure, laid out so that an amount finds its printed text without decimal arithmetic.</summary>
/// <remarks>Between two ends of bands and powers of ten the step is the same, and all amounts nearest to one multiple of it print the same text:
/// the rounding table itself gives that text once, for the first amount that comes. An amount near an end of a band or near a tie, is left to the table; so is one in a band that hangs on a condition, where nobody said which conditions are met.</remarks>
internal sealed class BandSteps
{
    // A binary fraction holds 15 figures; a tie that is told from its neighbours by less is worked out in decimals.
    private const double Near = 1e-9;
    private const int MostSteps = 1 << 14;
    private static readonly double[] Tens = [.. Enumerable.Range(-9, 19).Select(power => Math.Pow(10, power))];

    private readonly RoundingTable _table;
    private readonly (string Key, string Unit) _figure;
    private readonly Func<RoundedAmount, string?> _percent;
    private readonly IReadOnlySet<string>? _met;
    private readonly double[] _ends;
    // Between its two ends, a hair within them, each stretch has one step; its inverse is kept, 0 where a text stands for all of it, NaN where only the table can say.
    private readonly double[] _low;
    private readonly double[] _high;
    private readonly double[] _perStep;
    private readonly PrintedStep?[][] _printed;
    private readonly PrintedStep? _zero;

    /// <summary>Lays out the bands of a figure.</summary>
    /// <param name="table">The rounding table.</param>
    /// <param name="key">The figure.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="percent">The percentage that goes with a rounded amount; null where it goes with none.</param>
    /// <param name="met">The conditions that are met; null where nobody said, and what hangs on one is left open.</param>
    public BandSteps(RoundingTable table, string key, string unit, Func<RoundedAmount, string?> percent, IReadOnlySet<string>? met = null)
    {
        (_table, _figure, _percent, _met) = (table, (key, unit), percent, met);
        var bands = table.For(key, unit).ToArray();
        var isSignificant = Array.Exists(bands, band => band.Method == RoundingMethod.Significant);
        _ends = [.. bands.SelectMany(band => band.To is { } to ? new[] { (double)band.From, (double)to } : [(double)band.From])
            .Concat(isSignificant ? Tens : []).Where(end => end > 0).Distinct().Order()];
        (_low, _high, _perStep) = (new double[_ends.Length + 1], new double[_ends.Length + 1], new double[_ends.Length + 1]);
        _printed = new PrintedStep?[_perStep.Length][];
        for (var at = 0; at < _perStep.Length; at++)
        {
            (_low[at], _high[at]) = (at == 0 ? 0 : _ends[at - 1] * (1 + Near), at == _ends.Length ? double.PositiveInfinity : _ends[at] * (1 - Near));
            var within = (decimal)(at == 0 ? _ends.Length > 0 ? _ends[0] / 2 : 1 : at == _ends.Length ? _ends[^1] * 2 : (_ends[at - 1] + _ends[at]) / 2);
            _perStep[at] = StepOf(bands, within) is var step && step > 0 ? 1 / step : step;
            _printed[at] = [];
        }
        _zero = BandFor(bands, 0) is null ? null : Printed(0);
    }

    /// <summary>What is printed for an amount; null where only the table can say.</summary>
    public PrintedStep? For(double amount)
    {
        if (amount <= 0) return _zero;
        var at = 0;
        while (at < _ends.Length && amount >= _ends[at]) at++;
        if (amount < _low[at] || amount > _high[at]) return null;
        var steps = amount * _perStep[at];
        if (!(steps < MostSteps)) return null;
        var whole = (int)(steps + 0.5);
        if (Math.Abs(steps - whole) > 0.5 - Near * (1 + steps)) return null;
        var kept = _printed[at];
        return (uint)whole < (uint)kept.Length && kept[whole] is { } printed ? printed : Kept(at, whole, amount);
    }

    private PrintedStep Kept(int at, int steps, double amount)
    {
        if (steps >= _printed[at].Length)
        {
            var more = new PrintedStep?[Math.Min(MostSteps, Math.Max(steps + 1, 2 * _printed[at].Length))];
            _printed[at].CopyTo(more, 0);
            _printed[at] = more;
        }
        return _printed[at][steps] ??= Printed(amount);
    }

    private PrintedStep Printed(double amount)
    {
        var rounded = _table.Round(_figure.Key, _figure.Unit, RoundingTable.ToDecimal(amount), _met is null ? null : _met.Contains);
        return new(rounded.Text, rounded.Number, _percent(rounded), rounded.IsZero);
    }

    // The step between two ends: 0 where a text stands for all of it, NaN where only the table can say.
    private double StepOf(RoundingBand[] bands, decimal within) => BandFor(bands, within) switch
    {
        null => double.NaN,
        { Method: RoundingMethod.Text } => 0,
        { Method: RoundingMethod.Nearest } band => (double)band.Increment,
        var band => Math.Pow(10, Math.Floor(Math.Log10((double)within)) + 1 - (double)band.Increment),
    };

    // As the table chooses it: the first whose condition is met, or else the first without one; null where that is open.
    private RoundingBand? BandFor(RoundingBand[] bands, decimal amount)
    {
        RoundingBand[] taking = Array.FindAll(bands, band => band.Takes(amount));
        if (_met is null && Array.Exists(taking, band => band.If.Length > 0)) return null;
        return Array.Find(taking, band => band.If.Length > 0 && _met!.Contains(band.If)) ?? Array.Find(taking, band => band.If.Length == 0);
    }
}
