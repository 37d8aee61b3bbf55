using Tamis.Losses;

namespace Tamis.Production;

/// <summary>How much a piece of equipment must and can hold when a component is made in it.</summary>
/// <param name="Equipment">Its name.</param>
/// <param name="Step">The step that uses it.</param>
/// <param name="LeastGrams">The least that it works with; null where nobody said.</param>
/// <param name="MostGrams">The most that it holds; null where nobody said.</param>
/// <param name="Origin">Where that stands.</param>
public sealed record MakeLimit(string Equipment, int Step, double? LeastGrams, double? MostGrams, Source Origin);

/// <summary>What amounts are asked for.</summary>
public sealed record AmountsRequest
{
    /// <summary>The trial as its formula has it.</summary>
    public required Batch Batch { get; init; }

    /// <summary>How many pieces; null for as many as <see cref="Have"/> is enough for.</summary>
    public int? Pieces { get; init; }

    /// <summary>What a component weighs in one piece, finished, in grams; 0 where it only goes into others. Null where unknown.</summary>
    public required Func<string, double?> PieceGrams { get; init; }

    /// <summary>What is made beyond what the pieces need, as a share of it, 0 or more.</summary>
    public double ReserveShare { get; init; }

    /// <summary>What the equipment of a component's steps asks of one make.</summary>
    public Func<string, IReadOnlyList<MakeLimit>> LimitsOf { get; init; } = _ => [];

    /// <summary>In how many makes a component is made at least, and why: one a round of its moulds.</summary>
    public Func<string, (int Makes, string Why)?> LeastMakesOf { get; init; } = _ => null;

    /// <summary>Components that are there already, in grams: nothing of them is made.</summary>
    public IReadOnlyDictionary<string, double> Have { get; init; } = new Dictionary<string, double>();

    /// <summary>Scales, the finest first: up to which mass each weighs, and in which steps, in grams.</summary>
    public IReadOnlyList<(double MostGrams, double StepGrams)> Scales { get; init; } = [];

    /// <summary>From this mass of one piece on a make takes at least a whole one: nobody opens an egg for a third of it. In grams; common practice, no source.</summary>
    public double WholeFromGrams { get; init; } = 10;
}
