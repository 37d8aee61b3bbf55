namespace Tamis.Tasting;

/// <summary>What a few people said of one trial at the bench: notes, not evidence.</summary>
/// <param name="Tasting">The bench tasting.</param>
/// <param name="Trial">The trial.</param>
/// <param name="AssessorCount">How many people tasted it.</param>
/// <param name="Texts">Their words, in the order of the sheet, without saying whose.</param>
public sealed record BenchNotes(string Tasting, string Trial, int AssessorCount, IReadOnlyList<string> Texts)
{
    /// <summary>The notes of every trial that a bench tasting served.</summary>
    public static IReadOnlyList<BenchNotes> Of(TastingLog log) =>
        [.. from session in log.Sessions
            where session.IsBench
            from trial in log.TrialsIn(session.Name)
            let tasted = log.Tasted.Where(serving => serving.Tasting == session.Name && serving.Trial == trial).ToHashSet()
            select new BenchNotes(session.Name, trial, tasted.Select(serving => serving.Assessor).Distinct().Count(),
                [.. log.Remarks.Where(remark => tasted.Contains(remark.Serving)).Select(remark => remark.Text)])];
}
