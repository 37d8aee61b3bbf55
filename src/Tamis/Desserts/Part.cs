using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What one or more sheets gave, or everything in them that must be mended first: a bad sheet stops what uses it and nothing else.</summary>
internal sealed class Part<T>(T value, IReadOnlyList<CellProblem> problems)
{
    public IReadOnlyList<CellProblem> Problems => problems;

    public T Value => problems.Count == 0 ? value : throw new TableException(problems);

    public static Part<T> Read(Func<List<CellProblem>, T> read, T otherwise, params IEnumerable<IReadOnlyList<CellProblem>> before)
    {
        List<CellProblem> problems = [.. before.SelectMany(each => each)];
        if (problems.Count > 0) return new(otherwise, problems);
        try
        {
            return new(read(problems), problems);
        }
        catch (TableException bad)
        {
            return new(otherwise, bad.Problems);
        }
    }
}
