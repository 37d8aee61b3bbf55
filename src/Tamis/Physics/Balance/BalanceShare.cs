namespace Tamis.Physics;

/// <summary>One part of a mixture as a flat row: what a chart stacks and a sheet lists.</summary>
/// <param name="Part">The part.</param>
/// <param name="Name">Its word.</param>
/// <param name="KnownGrams">What is known of it in the whole finished mass, in grams.</param>
/// <param name="KnownPercent">The same in per cent of the finished mass. All rows of a balance add up to 100.</param>
/// <param name="CoveredShare">For which share of the mass weighed in it is known, 0 to 1.</param>
public sealed record BalanceShare(BalancePart Part, string Name, double KnownGrams, double KnownPercent, double CoveredShare);
