namespace Tamis.Verification;

/// <summary>What the statistics lend to published checks when samples are compared, topic by topic.</summary>
public static class ComparisonQuantities
{
    /// <summary>The quantities of all topics.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new[]
    {
        RangeQuantities.All,
        MixedQuantities.All,
        DiscriminationQuantities.All,
        RankQuantities.All,
        OrdinalQuantities.All,
    }.SelectMany(topic => topic).ToDictionary(StringComparer.Ordinal);
}
