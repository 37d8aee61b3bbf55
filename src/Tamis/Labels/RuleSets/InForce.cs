namespace Tamis.Labels;

/// <summary>From which to which day a rule is in force, both included; null is open.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day.</param>
public readonly record struct InForce(DateOnly? From, DateOnly? To)
{
    /// <summary>No bounds; what <c>default</c> is too.</summary>
    public static InForce Always => default;

    /// <summary>Whether the rule is in force on a day; with no day asked, whether it has no end.</summary>
    public bool On(DateOnly? day) => day is { } asked ? (From is not { } from || asked >= from) && (To is not { } to || asked <= to) : To is null;
}
