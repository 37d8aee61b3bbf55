using System.Globalization;
using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>What a row of <c>tastings.csv</c> must say before servings can be planned.</summary>
internal static class PlanNeeds
{
    /// <summary>Adds a problem for everything that is missing or does not fit; true where nothing does.</summary>
    public static bool AreMet(TastingSession session, ICollection<CellProblem> problems)
    {
        List<CellProblem> own = [];
        if (session.IsBench) Need("kind", session.Kind, "scores, ranking or a test such as triangle: a bench tasting takes words in any order and needs no plan");
        if (session.Trials.Count < 2) Need("trials", string.Join("; ", session.Trials), "two trials or more, parted by '; '");
        if (session.Trials.Distinct(Names.Comparer).Count() < session.Trials.Count) Need("trials", string.Join("; ", session.Trials), "each trial once; servings_each says how often it is served");
        if (session.Control is { } control && !session.Trials.Contains(control, Names.Comparer)) Need("control", control, $"one of the trials that are served: {string.Join(", ", session.Trials)}");
        if (session.Assessors.Count == 0) Need("assessors", "", "how many there are, or their ids parted by '; '");
        if (session.Seed is null) Need("seed", "", "a whole number, such as 4115: whoever plans with it gets the same plan");
        if (session.ServingsEach is not { } each) Need("servings_each", "", "how many servings each assessor gets");
        else if (session.Test is { } test)
        {
            if (session.Trials.Count != 2) Need("trials", string.Join("; ", session.Trials), $"two trials: a {test.Word} test compares two");
            if (each % test.SetSize != 0) Need("servings_each", Text(each), $"a multiple of {test.SetSize}: a set of a {test.Word} test has {test.SetSize} plates");
        }
        else if (each < 2 || each > session.Trials.Count && session.Trials.Count > 0 && each % session.Trials.Count != 0)
            Need("servings_each", Text(each), $"from 2 to {session.Trials.Count}, or {session.Trials.Count} once, twice … over: every trial as often as every other");
        foreach (var problem in own) problems.Add(problem);
        return own.Count == 0;

        void Need(string column, string found, string expected) => own.Add(new("tastings.csv", session.Row, column, found, expected));
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
