using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What one or more sheets gave, or everything in them that must be mended first: a bad sheet stops what uses it and nothing else.</summary>
internal sealed class Part<T>(T value, IReadOnlyList<CellProblem> problems)
{
    public IReadOnlyList<CellProblem> Problems => problems;

    public T Value => problems.Count == 0 ? value : throw new TableException(problems);

    /// <summary>Reads a part.</summary>
    /// <param name="read">Reads it. The first list receives what is wrong, the second the cells that the spreadsheet itself could not compute: they hide nothing else.</param>
    /// <param name="otherwise">What stands where nothing can be read.</param>
    /// <param name="before">What must be mended before.</param>
    public static Part<T> Read(Func<List<CellProblem>, List<CellProblem>, T> read, T otherwise, params IEnumerable<IReadOnlyList<CellProblem>> before)
    {
        List<CellProblem> problems = [.. before.SelectMany(each => each)], bad = [];
        if (problems.Count > 0) return new(otherwise, problems);
        try
        {
            var value = read(problems, bad);
            return bad.Count == 0 ? new(value, problems) : new(value, InOrder(bad, problems));
        }
        catch (TableException error)
        {
            return new(otherwise, InOrder(bad, [.. problems, .. error.Problems]));
        }
    }

    /// <summary>Reads a part that cannot be used while something beside it has to be mended, and is read all the same: whoever mends one sheet wants to know what waits in the next.</summary>
    public static Part<T> ReadBeside(IReadOnlyList<CellProblem> beside, Func<List<CellProblem>, List<CellProblem>, T> read, T otherwise) =>
        Read(read, otherwise) is var own && beside.Count == 0 ? own : new(otherwise, InOrder([], [.. beside, .. own.Problems]));

    // A cell that the spreadsheet could not compute is named by its sheet; what readers say of it besides adds nothing.
    private static CellProblem[] InOrder(IReadOnlyList<CellProblem> bad, IEnumerable<CellProblem> problems)
    {
        var cells = bad.Select(problem => (problem.File, problem.Row, problem.Column)).ToHashSet();
        return [.. bad.Concat(problems.Where(problem => !cells.Contains((problem.File, problem.Row, problem.Column)))).Distinct().GroupBy(problem => problem.File).SelectMany(file => file.OrderBy(problem => problem.Row))];
    }
}
