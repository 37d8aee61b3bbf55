namespace Tamis.Tasting;

/// <summary>The order of the plates in the sets of a test of same or different.</summary>
internal static class SetOrders
{
    /// <summary>For each assessor the numbers of the trials, set after set; every order of a set comes equally often, or as near as the number of sets allows.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> Of(DifferenceTest test, TastingSession session, SeededOrder random)
    {
        var orders = test.Orders();
        var setsEach = session.ServingsEach!.Value / test.SetSize;
        var wanted = session.Assessors.Count * setsEach;
        List<IReadOnlyList<bool>> sets = [];
        while (sets.Count < wanted) sets.AddRange(random.Shuffled(orders));
        var dealt = random.Shuffled([.. sets.Take(wanted)]);
        return [.. Enumerable.Range(0, session.Assessors.Count).Select(assessor =>
            (IReadOnlyList<int>)[.. Enumerable.Range(0, setsEach).SelectMany(set => dealt[assessor * setsEach + set]).Select(isSecond => isSecond ? 1 : 0)])];
    }
}
