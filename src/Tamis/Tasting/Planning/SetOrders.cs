namespace Tamis.Tasting;

/// <summary>The order of the plates in the sets of a test of same or different.</summary>
internal static class SetOrders
{
    /// <summary>For each assessor the numbers of the trials, set after set; every order of a set comes equally often, in all and among everybody's first sets, second sets and so on, or as near as their numbers allow.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> Of(DifferenceTest test, TastingSession session, SeededOrder random)
    {
        var orders = test.Orders();
        var setsEach = session.ServingsEach!.Value / test.SetSize;
        var assessors = session.Assessors.Count;
        List<IReadOnlyList<bool>> sets = [];
        while (sets.Count < assessors * setsEach) sets.AddRange(random.Shuffled(orders));
        // Everybody's first sets are dealt out before the second ones: all orders come round as often as they can in each place of the session.
        var dealt = Enumerable.Range(0, setsEach).Select(set => random.Shuffled([.. sets.Skip(set * assessors).Take(assessors)])).ToArray();
        return [.. Enumerable.Range(0, assessors).Select(assessor =>
            (IReadOnlyList<int>)[.. dealt.SelectMany(round => round[assessor]).Select(isSecond => isSecond ? 1 : 0)])];
    }
}
