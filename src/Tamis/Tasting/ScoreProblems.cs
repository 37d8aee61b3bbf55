using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Gathers what is wrong in the scores; what is wrong in the same way in many rows is told once, with all of its rows.</summary>
/// <remarks>A sheet of a row an answer repeats tasting, assessor and code a dozen times: one slip there is one thing to mend and not twelve.</remarks>
internal sealed class ScoreProblems
{
    private readonly List<Slip> _slips = [];

    /// <summary>Adds something that is wrong in this one cell.</summary>
    public void Add(CellProblem problem) => _slips.Add(new(problem, $"row {problem.Row}, {problem.Column}, {problem.Found}, {_slips.Count}"));

    /// <summary>Adds something that other rows may have too, word for word.</summary>
    public void AddAlike(CellProblem problem) => _slips.Add(new(problem, $"{problem.Column}\n{problem.Found}\n{problem.Expected}"));

    /// <summary>Adds a row that answers for a serving again.</summary>
    /// <param name="row">The row.</param>
    /// <param name="serving">The serving.</param>
    /// <param name="before">The row that answers for it already.</param>
    /// <param name="attribute">The question, where a row is one answer; empty where it is a serving.</param>
    public void AddTwice(SheetRow row, Serving serving, int before, string attribute) =>
        _slips.Add(new(row.Problem("code", $"each code once for an assessor in a tasting; {serving.Assessor} has it in row {before} already{(attribute.Length > 0 ? $" for {attribute}" : "")}"), attribute.Length > 0 ? $"{serving.Tasting}\n{serving.Assessor}\n{serving.Code}" : $"row {row.Number}, twice") { Twice = serving });

    /// <summary>Adds a code that its assessor was not served.</summary>
    /// <param name="problem">What is wrong.</param>
    /// <param name="own">A serving of the same assessor in the same tasting.</param>
    /// <param name="code">The code that was found.</param>
    public void AddStrange(CellProblem problem, Serving own, string code) => _slips.Add(new(problem, $"{own.Tasting}\n{own.Assessor}\n{code}") { Strange = own with { Code = code } });

    /// <summary>Everything, in the order in which it was met.</summary>
    /// <param name="withoutARow">The codes of an assessor in a tasting that no row answers.</param>
    public IEnumerable<CellProblem> Told(Func<Serving, IEnumerable<string>> withoutARow)
    {
        var strange = _slips.Where(slip => slip.Strange is not null).DistinctBy(slip => slip.Key).ToArray();
        return _slips.GroupBy(slip => slip.Key).Select(alike =>
        {
            var first = alike.First();
            int[] more = [.. alike.Skip(1).Select(slip => slip.Problem.Row)];
            string[] open = (first.Twice ?? first.Strange) is { } serving ? [.. withoutARow(serving)] : [];
            return first.Problem with
            {
                Expected = first.Problem.Expected
                    + (Exchanged(first, strange, withoutARow) is { } other ? $"; row {other.Problem.Row} has {other.Strange!.Code} where {first.Strange!.Code} belongs, so the two may have been exchanged"
                        : open is [var only] ? $"; {only} has no row yet" : "")
                    + (more.Length == 0 ? "" : $"; it is the same in {(more.Length == 1 ? "row" : "rows")} {Ranges(more)}"),
            };
        });
    }

    // Two codes that each stand with the assessor who was served the other.
    private static Slip? Exchanged(Slip slip, Slip[] strange, Func<Serving, IEnumerable<string>> withoutARow) => slip.Strange is not { } own ? null
        : Array.Find(strange, other => other.Strange!.Tasting == own.Tasting && other.Strange.Assessor != own.Assessor
            && withoutARow(other.Strange).Contains(own.Code) && withoutARow(own).Contains(other.Strange.Code));

    // 3, 4, 5, 9 as "3 to 5 and 9".
    private static string Ranges(int[] rows)
    {
        List<(int From, int To)> runs = [];
        foreach (var row in rows.Distinct().Order())
            if (runs.Count > 0 && runs[^1].To == row - 1) runs[^1] = (runs[^1].From, row);
            else runs.Add((row, row));
        return string.Join(" and ", runs.Select(run => run.From == run.To ? $"{run.From}" : $"{run.From} to {run.To}"));
    }

    private sealed record Slip(CellProblem Problem, string Key)
    {
        public Serving? Twice { get; init; }

        public Serving? Strange { get; init; }
    }
}
