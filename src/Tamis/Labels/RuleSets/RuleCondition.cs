namespace Tamis.Labels;

/// <summary>What a requirement of a condition holds against its limit.</summary>
public enum ConditionTest
{
    /// <summary>The amount is below the limit.</summary>
    Below,
    /// <summary>The amount is at the limit or below it.</summary>
    AtMost,
    /// <summary>Each of the figures is declared as zero, or is not on the panel.</summary>
    DeclaredAsZero,
    /// <summary>The conditions named are met.</summary>
    Meets,
}

/// <summary>One requirement of a condition under which a law lets a figure be declared in another way: <c>free of fat</c> asks for less than 0.5 g.</summary>
/// <remarks>A condition holds when all of its requirements hold. What is not known is not taken to hold.</remarks>
public sealed record RuleCondition
{
    /// <summary>The condition that it is a requirement of: <c>free of fat</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The figures whose amounts are summed, by their keys; for <see cref="ConditionTest.Meets"/> the names of conditions.</summary>
    public required IReadOnlyList<string> Of { get; init; }

    /// <summary>What it asks.</summary>
    public required ConditionTest Test { get; init; }

    /// <summary>The limit: in the unit of the figures, or in per cent of the energy where <see cref="EnergyFactor"/> is given; null where the test needs none.</summary>
    public required double? Limit { get; init; }

    /// <summary>The energy factor by which the sum becomes a share of the energy; null where the amount itself is held against the limit.</summary>
    public EnergyFactor? EnergyFactor { get; init; }

    /// <summary>Whether it must hold in the reference amount too, and not in the serving alone.</summary>
    public bool InReferenceAmountToo { get; init; }

    /// <summary>Where it came from.</summary>
    public required RuleOrigin Origin { get; init; }

    /// <summary>When the row is in force.</summary>
    public InForce InForce { get; init; } = InForce.Always;
}
