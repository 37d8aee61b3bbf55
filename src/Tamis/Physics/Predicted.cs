using System.Globalization;

namespace Tamis.Physics;

/// <summary>What a model says: a figure with its unit, its range where the inputs have one, and why it may not be trusted.</summary>
/// <remarks>A figure outside the range where its equation was tested is kept, with <see cref="Outside"/> saying what lies outside; one whose inputs are unknown has no value, with <see cref="Lacks"/> saying what to supply.</remarks>
public sealed record Predicted
{
    private readonly Func<IReadOnlyList<Working>> _steps;

    private Predicted(Equation equation, double value, Func<IReadOnlyList<Working>> steps) => (Equation, Value, _steps) = (equation, value, steps);

    /// <summary>The equation behind it.</summary>
    public Equation Equation { get; }

    /// <summary>The figure, in <see cref="Unit"/>; NaN where it could not be worked out.</summary>
    public double Value { get; }

    /// <summary>The unit, empty for a pure number.</summary>
    public string Unit => Equation.Unit;

    /// <summary>Where the figure lies when the inputs lie in their ranges, or as far as the models differ; null where no input has a range.</summary>
    public Interval? Range { get; init; }

    /// <summary>One sentence for each input that lies outside the range where the equation was tested; empty where all lie inside.</summary>
    public IReadOnlyList<string> Outside { get; init; } = [];

    /// <summary>What would have to be known; empty where the figure was worked out.</summary>
    public IReadOnlyList<string> Lacks { get; init; } = [];

    /// <summary>Whether there is a figure.</summary>
    public bool IsKnown => double.IsFinite(Value);

    /// <summary>Whether there is a figure and its equation was tested for such inputs.</summary>
    public bool IsSound => IsKnown && Outside.Count == 0;

    /// <summary>How it was worked out; built only when asked.</summary>
    public Working Working => new(Equation.Name, Value, Unit, Equation.Source) { From = _steps() };

    /// <summary>A figure that was worked out from given ones.</summary>
    /// <param name="equation">The equation.</param>
    /// <param name="given">What it was given, in the order in which <paramref name="compute"/> takes it.</param>
    /// <param name="compute">The equation on bare numbers. It may return NaN where it has no answer, never throw for finite inputs.</param>
    /// <remarks>Where inputs have ranges the figure is computed at every corner of them, which bounds it for an equation that rises or falls steadily in each.</remarks>
    public static Predicted From(Equation equation, IReadOnlyList<Given> given, Func<double[], double> compute)
    {
        Func<IReadOnlyList<Working>> steps = () => [.. given.Select(each => each.Working)];
        string[] lacks = [.. given.Where(each => !each.IsKnown).Select(each => each.Name)];
        if (lacks.Length > 0) return new(equation, double.NaN, steps) { Lacks = lacks };
        var value = compute([.. given.Select(each => each.Value)]);
        return new(equation, value, steps)
        {
            Range = double.IsFinite(value) ? Corners(given, compute) : null,
            Outside = [.. equation.Valid.Select(range => given.FirstOrDefault(each => Names.Same(each.Name, range.Of)) is { } input ? range.Outside(input.Value) : null).OfType<string>()],
        };
    }

    /// <summary>A figure that nothing can be said of, with what would have to be known.</summary>
    public static Predicted Unknown(Equation equation, params IReadOnlyList<string> lacks) => new(equation, double.NaN, () => []) { Lacks = lacks };

    /// <summary>A figure that another program path worked out (a numerical march, a sum), with its steps.</summary>
    public static Predicted Computed(Equation equation, double value, Func<IReadOnlyList<Working>> steps) => new(equation, value, steps);

    /// <summary>The figure with its unit, for a debugger and for error messages; pages write figures their own way.</summary>
    public override string ToString() => IsKnown
        ? string.Create(CultureInfo.InvariantCulture, $"{Equation.Name}: {Value:G4} {Unit}").TrimEnd()
        : $"{Equation.Name}: not known without {string.Join(", ", Lacks)}";

    private static Interval? Corners(IReadOnlyList<Given> given, Func<double[], double> compute)
    {
        int[] ranged = [.. Enumerable.Range(0, given.Count).Where(i => given[i].Range is { IsPoint: false })];
        if (ranged.Length is 0 or > 12) return null;
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var corner = 0; corner < 1 << ranged.Length; corner++)
        {
            double[] at = [.. given.Select(each => each.Value)];
            for (var i = 0; i < ranged.Length; i++)
                if (given[ranged[i]].Range is { } range) at[ranged[i]] = (corner >> i & 1) == 0 ? range.Low : range.High;
            var value = compute(at);
            if (!double.IsFinite(value)) return null;
            (low, high) = (Math.Min(low, value), Math.Max(high, value));
        }
        return Interval.Between(low, high);
    }
}
