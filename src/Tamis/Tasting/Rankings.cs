using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Checks the places of a ranking, which only make sense together.</summary>
internal static class Rankings
{
    /// <summary>Adds a problem for every place that stands twice in one ranking, and for every place beyond what was ranked.</summary>
    public static void Check(IEnumerable<(Score Score, SheetRow Row, string Column)> places, ICollection<CellProblem> problems)
    {
        foreach (var ranking in places.GroupBy(each => (each.Score.Serving.Tasting, each.Score.Serving.Assessor, each.Score.Attribute.Name)))
        {
            HashSet<double> met = [];
            var count = ranking.Count();
            foreach (var (score, row, column) in ranking)
                if (score.Points > count)
                    problems.Add(row.Problem(column, $"a place from 1 to {count}: {ranking.Key.Assessor} ranked so many"));
                else if (!met.Add(score.Points))
                    problems.Add(row.Problem(column, "each place once in a ranking: where two seem alike, the assessor chooses"));
        }
    }
}
