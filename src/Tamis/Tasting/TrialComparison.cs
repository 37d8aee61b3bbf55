using Tamis.Statistics;

namespace Tamis.Tasting;

/// <summary>The mean of a trial in one tasting.</summary>
/// <param name="Tasting">The tasting.</param>
/// <param name="Attribute">What was asked.</param>
/// <param name="Trial">The trial.</param>
/// <param name="AssessorCount">How many assessors scored it; each counts once.</param>
/// <param name="ServingCount">How many servings they scored.</param>
/// <param name="MeanPoints">The mean over the assessors, after each one's servings were averaged.</param>
/// <param name="Range">Its interval by Student's t over the assessors; null for one assessor.</param>
public sealed record TrialMean(string Tasting, SensoryAttribute Attribute, string Trial, int AssessorCount, int ServingCount, double MeanPoints, Interval? Range);

/// <summary>What one assessor gave two trials.</summary>
/// <param name="Assessor">The assessor's id, for telling points apart; never for a page.</param>
/// <param name="TrialPoints">The mean of the assessor's marks of the trial; null where there is none.</param>
/// <param name="AgainstPoints">The mean of the assessor's marks of the other trial; null where there is none.</param>
public sealed record AssessorPoints(string Assessor, double? TrialPoints, double? AgainstPoints);

/// <summary>One trial compared with another on one attribute, within assessors.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Against">The trial that it is compared with.</param>
/// <param name="Attribute">What was asked.</param>
/// <param name="Verdict">What can be said.</param>
public sealed record TrialComparison(string Trial, string Against, SensoryAttribute Attribute, Verdict Verdict)
{
    /// <summary>The tastings that it rests on: one where both were served, two where a control links them, none where never together.</summary>
    public IReadOnlyList<string> Tastings { get; init; } = [];

    /// <summary>The control that links the two tastings; null where both trials were in one.</summary>
    public string? Through { get; init; }

    /// <summary>The mean of the trial less that of the other, within assessors; null where nothing can be estimated.</summary>
    public double? DifferencePoints { get; init; }

    /// <summary>The interval of the difference: for all pairs of a scale together where the tasting's report has it, else by Student's t; null without spread or estimate.</summary>
    public Interval? Range { get; init; }

    /// <summary>
    /// The smallest gap that would have been seen: half the width of the interval, since a gap of less would have left zero within it.
    /// </summary>
    public double? SmallestGapPoints => Range?.Width / 2;

    /// <summary>
    /// The standard deviation of one assessor's mark about what assessor and trial explain, the larger of the two where a control links two
    /// tastings; null where nothing tells it.
    /// </summary>
    public double? WithinAssessorPoints { get; init; }

    /// <summary>Whether trials differ on the scale when chance is counted over all scales of the tasting; null where the comparison is not one of all pairs of a report.</summary>
    public bool? StandsAmongAll { get; init; }

    /// <summary>How many assessors scored the trial that fewer scored, counting those who scored two trials or more.</summary>
    public int AssessorCount { get; init; }

    /// <summary>How many assessors scored both.</summary>
    public int BothCount { get; init; }

    /// <summary>The makes of the trial that were served in these tastings.</summary>
    public IReadOnlyList<int> TrialMakes { get; init; } = [];

    /// <summary>The makes of the other trial that were served in these tastings.</summary>
    public IReadOnlyList<int> AgainstMakes { get; init; } = [];

    /// <summary>What each assessor gave the two; empty unless both trials were in one tasting.</summary>
    public IReadOnlyList<AssessorPoints> Points { get; init; } = [];

    /// <summary>Whether an interval was looked at, so that chance had its turn.</summary>
    public bool IsLook => Range is not null && Verdict is Verdict.Shown or Verdict.AtEdge or Verdict.NotShown;
}

/// <summary>How many questions were looked at, and how many would show something by chance if nothing had changed.</summary>
/// <param name="Count">Scales of a tasting, or differences that stand by themselves, with an interval.</param>
/// <param name="ByChance">The count times the share of intervals that miss: 1 in 20.</param>
public readonly record struct Looks(int Count, double ByChance);

/// <summary>Every trial of a tree compared with its parent.</summary>
/// <param name="Comparisons">In the order of the tree, then of the attributes, then of the tastings.</param>
/// <param name="Looks">How often chance had its turn.</param>
public sealed record TreeComparison(IReadOnlyList<TrialComparison> Comparisons, Looks Looks);
