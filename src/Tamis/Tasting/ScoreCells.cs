namespace Tamis.Tasting;

/// <summary>The marks of one attribute in one tasting, an assessor's marks of a trial averaged to one cell: the assessor is the unit.</summary>
internal sealed class ScoreCells
{
    private readonly List<Cell> _cells;

    public ScoreCells(IEnumerable<Score> scores) =>
        _cells = [.. scores.GroupBy(score => (score.Serving.Assessor, score.Serving.Trial))
            .Select(group => new Cell(group.Key.Assessor, group.Key.Trial, group.Average(score => score.Points), group.Count()))];

    /// <summary>All cells, in the order in which the scores first name them.</summary>
    public IReadOnlyList<Cell> All => _cells;

    /// <summary>The cells of assessors who scored two trials or more: those who can be compared with themselves.</summary>
    public IReadOnlyList<Cell> Comparable => field ??=
        [.. _cells.GroupBy(cell => cell.Assessor).Where(group => group.Count() > 1).SelectMany(group => group)];

    public bool Has(string trial) => _cells.Exists(cell => cell.Trial == trial);

    /// <summary>What each assessor gave two trials, by the assessor's id.</summary>
    public IReadOnlyList<AssessorPoints> Points(string trial, string against) =>
        [.. _cells.Where(cell => cell.Trial == trial || cell.Trial == against).GroupBy(cell => cell.Assessor)
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => new AssessorPoints(group.Key, Of(group, trial), Of(group, against)))];

    private static double? Of(IEnumerable<Cell> cells, string trial) => cells.FirstOrDefault(cell => cell.Trial == trial)?.Points;

    internal sealed record Cell(string Assessor, string Trial, double Points, int Servings);
}
