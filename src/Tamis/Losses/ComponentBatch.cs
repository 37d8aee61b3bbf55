using Tamis.Formulas;

namespace Tamis.Losses;

/// <summary>A line as it was weighed into a batch.</summary>
/// <param name="Name">The ingredient or component.</param>
/// <param name="Step">The step at which it goes in.</param>
/// <param name="MassGrams">Its mass, edible part.</param>
/// <param name="RangeGrams">The range that the written quantity leaves open; a point for a plain mass.</param>
/// <param name="Quantity">The quantity as the cook wrote it.</param>
/// <param name="Assumption">What was assumed to turn it into grams, empty for a mass.</param>
/// <param name="IsComponent">Whether it is another component.</param>
/// <param name="Origin">The cell.</param>
/// <param name="Notes">The remark of the row.</param>
public sealed record BatchLine(string Name, int Step, double MassGrams, Interval RangeGrams, WrittenQuantity Quantity, string Assumption, bool IsComponent, Source Origin, string Notes);

/// <summary>Mass that left a batch.</summary>
/// <param name="Name">The word for what leaves.</param>
/// <param name="Step">The step at which it leaves.</param>
/// <param name="MassGrams">How much left.</param>
/// <param name="IsWater">Whether it left as water alone; anything else takes a share of all that is in.</param>
/// <param name="Of">The line that it left from; null where it left from everything.</param>
/// <param name="Written">The quantity as written.</param>
/// <param name="Origin">The cell.</param>
public sealed record Loss(string Name, int Step, double MassGrams, bool IsWater, string? Of, string Written, Source Origin);

/// <summary>One component as a batch of it is made: what went in, what left, what is there.</summary>
/// <remarks>What went in equals the losses and what is there: see <see cref="YieldGrams"/>.</remarks>
public sealed record ComponentBatch
{
    /// <summary>The component's name.</summary>
    public required string Name { get; init; }

    /// <summary>The trial whose cells these are.</summary>
    public required string WrittenIn { get; init; }

    /// <summary>What was weighed in, in the order of the sheet; lines of zero are left out.</summary>
    public required IReadOnlyList<BatchLine> Lines { get; init; }

    /// <summary>What left, in the order in which it left.</summary>
    public required IReadOnlyList<Loss> Losses { get; init; }

    /// <summary>What went in, before anything left.</summary>
    public required Mixture In { get; init; }

    /// <summary>What the finished batch is made of.</summary>
    public required Mixture Out { get; init; }

    /// <summary>The yield that was weighed in this trial; null where nobody weighed.</summary>
    public double? WeighedYieldGrams { get; init; }

    /// <summary>Where the weighed yield stands.</summary>
    public Source? WeighedYieldOrigin { get; init; }

    /// <summary>The lines by their masses, for ratios and scaling.</summary>
    public WeighedLines Weighed => new([.. Lines.Select(line => new WeighedLine(line.Name, line.MassGrams))]);

    /// <summary>All that was weighed in, in grams.</summary>
    public double MassInGrams => Lines.Sum(line => line.MassGrams);

    /// <summary>What is there in the end, by the losses that were written, in grams.</summary>
    public double YieldGrams => Out.FinishedGrams;

    /// <summary>What the written losses leave unexplained of the weighed yield: computed less weighed, in grams; null where nobody weighed.</summary>
    public double? UnexplainedGrams => WeighedYieldGrams is { } weighed ? YieldGrams - weighed : null;

    /// <summary>The mass of a line over all its rows, 0 where it does not go in.</summary>
    public double LineGrams(string name) => Lines.Where(line => Names.Same(line.Name, name)).Sum(line => line.MassGrams);

    /// <summary>The share of a line in all that was weighed in, 0 to 1; 0 for an empty batch.</summary>
    public double LineShare(string name) => MassInGrams > 0 ? LineGrams(name) / MassInGrams : 0;
}
