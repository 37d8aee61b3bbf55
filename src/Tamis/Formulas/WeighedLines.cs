namespace Tamis.Formulas;

/// <summary>A name and its mass.</summary>
/// <param name="Name">The ingredient or component.</param>
/// <param name="MassGrams">Its mass as weighed in, in grams.</param>
public sealed record WeighedLine(string Name, double MassGrams);

/// <summary>Lines by their masses: ratios to a base, baker's percentages, scaling.</summary>
/// <remarks>The same name may stand in several lines: a ratio is of their sum.</remarks>
public sealed class WeighedLines(IReadOnlyList<WeighedLine> lines)
{
    /// <summary>The lines in their order.</summary>
    public IReadOnlyList<WeighedLine> Lines => lines;

    /// <summary>All lines together, in grams.</summary>
    public double TotalGrams => lines.Sum(line => line.MassGrams);

    /// <summary>The mass of a name, in grams.</summary>
    /// <exception cref="KeyNotFoundException">No line has this name.</exception>
    public double MassGrams(string name)
    {
        List<WeighedLine> named = [.. lines.Where(line => Names.Same(line.Name, name))];
        if (named is []) throw new KeyNotFoundException($"no line is called '{name}'; near ones: {string.Join(", ", Names.Nearest(name, lines.Select(line => line.Name)))}");
        return named.Sum(line => line.MassGrams);
    }

    /// <summary>The mass of a name over the mass of the base together, dimensionless.</summary>
    /// <param name="name">The line.</param>
    /// <param name="baseNames">The lines that are the base, together one.</param>
    /// <exception cref="KeyNotFoundException">No line has one of the names.</exception>
    /// <exception cref="InvalidOperationException">The base weighs nothing.</exception>
    public double Ratio(string name, IEnumerable<string> baseNames)
    {
        var baseGrams = baseNames.Distinct(Names.Comparer).Sum(MassGrams);
        return baseGrams > 0 ? MassGrams(name) / baseGrams : throw new InvalidOperationException("the base weighs nothing, so nothing has a ratio to it");
    }

    /// <summary>The mass of a name in per cent of all flours together (definition of the baker's percentage: flour is 100).</summary>
    public double BakersPercentage(string name, IEnumerable<string> flours) => 100 * Ratio(name, flours);

    /// <summary>Every mass times the same factor.</summary>
    public WeighedLines Scaled(double factor) => double.IsFinite(factor) && factor >= 0
        ? new([.. lines.Select(line => line with { MassGrams = line.MassGrams * factor })])
        : throw new ArgumentOutOfRangeException(nameof(factor), factor, "A factor is zero or more.");

    /// <summary>Scaled so that all lines together weigh so many grams.</summary>
    public WeighedLines ScaledToTotal(double totalGrams) => Scaled(totalGrams / TotalGrams);

    /// <summary>Scaled so that what is left after the loss weighs so many grams; the loss grows with the masses.</summary>
    /// <param name="finishedGrams">What shall be there in the end, in grams.</param>
    /// <param name="lostGrams">What these lines lose as they stand, in grams.</param>
    public WeighedLines ScaledToFinished(double finishedGrams, double lostGrams) => Scaled(finishedGrams / (TotalGrams - lostGrams));

    /// <summary>Scaled so that one name weighs so many grams.</summary>
    public WeighedLines ScaledToLine(string name, double massGrams) => Scaled(massGrams / MassGrams(name));
}
