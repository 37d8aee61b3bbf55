using Tamis.Statistics.Designs;

namespace Tamis.Tasting;

/// <summary>The order of trials for each assessor of a tasting with scores.</summary>
/// <remarks>
/// All trials for everybody: Williams squares (1949, Australian Journal of Scientific Research A2), in which every trial stands in every place and straight
/// after every other equally often; one square for an even number of trials, two for an odd one. Some trials for each: balanced incomplete blocks where the
/// numbers allow them, the nearest to them otherwise, and orders that spread places and neighbours; the counts of the plan say how evenly.
/// </remarks>
internal static class ServingOrders
{
    /// <summary>For each assessor the numbers of the trials, place after place.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> Of(TastingSession session, SeededOrder random)
    {
        var (trials, each, assessors) = (session.Trials.Count, session.ServingsEach!.Value, session.Assessors.Count);
        return each >= trials ? Complete(trials, each / trials, assessors, random) : Incomplete(trials, each, assessors, random);
    }

    /// <summary>The rows of the Williams square or squares for so many trials.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> Williams(int trials)
    {
        // 0, 1, last, 2, last but one …: neighbouring differences are all different.
        int[] first = [.. Enumerable.Range(0, trials).Select(place => place == 0 ? 0 : place % 2 == 1 ? (place + 1) / 2 : trials - place / 2)];
        IReadOnlyList<int>[] square = [.. Enumerable.Range(0, trials).Select(row => (IReadOnlyList<int>)[.. first.Select(trial => (trial + row) % trials)])];
        return trials % 2 == 0 ? square : [.. square, .. square.Select(row => (IReadOnlyList<int>)[.. row.Reverse()])];
    }

    private static List<IReadOnlyList<int>> Complete(int trials, int times, int assessors, SeededOrder random)
    {
        var rows = Williams(trials);
        var names = random.Shuffled([.. Enumerable.Range(0, trials)]);
        List<IReadOnlyList<int>> dealt = [];
        // Whole squares are dealt one after the other; each time over begins at another row, so that nobody gets one order twice.
        var deck = Enumerable.Range(0, times).Select(_ => Deck(rows.Count, assessors, random)).ToArray();
        for (var assessor = 0; assessor < assessors; assessor++)
            dealt.Add([.. Enumerable.Range(0, times).SelectMany(time => rows[(deck[0][assessor] + time) % rows.Count]).Select(trial => names[trial])]);
        return dealt;
    }

    private static List<int> Deck(int rows, int assessors, SeededOrder random)
    {
        List<int> deck = [];
        while (deck.Count < assessors) deck.AddRange(random.Shuffled([.. Enumerable.Range(0, rows)]));
        return deck;
    }

    // Which trials each assessor gets, then in which order; who gets which set is left to chance.
    private static IReadOnlyList<IReadOnlyList<int>> Incomplete(int trials, int each, int assessors, SeededOrder random) =>
        random.Shuffled(BlockOrders.Of(trials, IncompleteBlocks.Of(trials, each, assessors, random.Below).Blocks, random.Below));
}
