using Tamis.Statistics.Models;

namespace Tamis.Statistics.MixedModels;

/// <summary>Effects that vary from level to level of a grouping as if drawn at random: <c>(1 | judge)</c>, <c>(1 + x | judge)</c>.</summary>
/// <param name="HasIntercept">Whether the mean itself varies.</param>
/// <param name="Slopes">The numbers whose slopes vary; intercept and slopes of one term may be correlated.</param>
/// <param name="Grouping">The factors of the grouping; several stand for their combinations that occur.</param>
public sealed record RandomTerm(bool HasIntercept, IReadOnlyList<ModelVariable> Slopes, IReadOnlyList<string> Grouping)
{
    /// <summary>The grouping as a model writes it, <c>recipe:replicate</c>.</summary>
    public string Group => string.Join(':', Grouping);

    /// <summary>How many effects each level has.</summary>
    public int EffectCount => Slopes.Count + (HasIntercept ? 1 : 0);

    /// <summary>The names of the effects of a level.</summary>
    public IEnumerable<string> Effects => Slopes.Select(slope => slope.ToString()).Prepend("(Intercept)").Skip(HasIntercept ? 0 : 1);

    /// <summary>Whether the other term is written the same.</summary>
    public bool Equals(RandomTerm? other) => other is not null && string.Equals(ToString(), other.ToString(), StringComparison.Ordinal);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(ToString());

    /// <summary>The term as the model writes it.</summary>
    public override string ToString() => $"({string.Join(" + ", Slopes.Select(slope => slope.ToString()).Prepend(HasIntercept ? "1" : "0"))} | {Group})";
}
