namespace Tamis.Tasting;

/// <summary>The order of trials for each assessor of a tasting with scores.</summary>
/// <remarks>
/// All trials for everybody: Williams squares (1949, Australian Journal of Scientific Research A2), in which every trial stands in every place and straight
/// after every other equally often; one square for an even number of trials, two for an odd one. Some trials for each: incomplete blocks, picked one after
/// the other so that trials are served, meet, stand in places and follow each other as evenly as can be; balanced where the numbers allow and the picking finds it,
/// which the counts of the plan say.
/// </remarks>
internal static class ServingOrders
{
    private const int MostCandidates = 5040, Runs = 60;

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

    private static IReadOnlyList<IReadOnlyList<int>> Incomplete(int trials, int each, int assessors, SeededOrder random)
    {
        var counts = new Counts(trials, each);
        List<IReadOnlyList<int>> dealt = [];
        foreach (var set in Sets(trials, each, assessors, random))
        {
            dealt.Add(Best(Orders(set, random), counts.OfOrder));
            counts.Add(dealt[^1]);
        }
        return random.Shuffled(dealt);
    }

    // Picking one set after the other may end in a corner; of several runs the most even counts, and the first that is wholly even ends the search.
    private static IReadOnlyList<IReadOnlyList<int>> Sets(int trials, int each, int assessors, SeededOrder random)
    {
        var candidates = Subsets(trials, each, random);
        IReadOnlyList<IReadOnlyList<int>> best = [];
        var least = long.MaxValue;
        for (var run = 0; run < Runs && least > 0; run++)
        {
            var counts = new Counts(trials, each);
            List<IReadOnlyList<int>> sets = [];
            while (sets.Count < assessors)
            {
                sets.Add(Best(random.Shuffled(candidates), counts.OfSet));
                counts.Add(sets[^1]);
            }
            if (counts.Unevenness < least) (best, least) = (sets, counts.Unevenness);
        }
        return best;
    }

    private static IReadOnlyList<int> Best(IEnumerable<IReadOnlyList<int>> candidates, Func<IReadOnlyList<int>, long> cost) => candidates.MinBy(cost)!;

    // Every choice of trials; where there are too many of them, a sample.
    private static IReadOnlyList<IReadOnlyList<int>> Subsets(int trials, int size, SeededOrder random)
    {
        List<IReadOnlyList<int>> all = [[]];
        for (var place = 0; place < size && all.Count <= MostCandidates; place++)
            all = [.. from set in all from next in Enumerable.Range(set.Count == 0 ? 0 : set[^1] + 1, trials - (set.Count == 0 ? 0 : set[^1] + 1)) select (IReadOnlyList<int>)[.. set, next]];
        return all.Count is > 0 and <= MostCandidates && all[0].Count == size ? all
            : [.. Enumerable.Range(0, MostCandidates / 10).Select(_ => (IReadOnlyList<int>)[.. random.Shuffled([.. Enumerable.Range(0, trials)]).Take(size).Order()])];
    }

    private static IEnumerable<IReadOnlyList<int>> Orders(IReadOnlyList<int> set, SeededOrder random)
    {
        if (set.Count > 6) return [.. Enumerable.Range(0, MostCandidates / 10).Select(_ => random.Shuffled(set))];
        List<IReadOnlyList<int>> all = [[]];
        foreach (var _ in set) all = [.. from order in all from next in set where !order.Contains(next) select (IReadOnlyList<int>)[.. order, next]];
        return random.Shuffled(all);
    }

    // Squares grow faster than counts, so that the smallest sum of squares is the most even.
    private sealed class Counts(int trials, int places)
    {
        private readonly int[] _served = new int[trials];
        private readonly int[,] _together = new int[trials, trials], _place = new int[trials, places], _after = new int[trials, trials];

        /// <summary>How far trials and pairs are from being served equally often; 0 where they are.</summary>
        public long Unevenness
        {
            get
            {
                int[] pairs = [.. from first in Enumerable.Range(0, trials) from second in Enumerable.Range(first + 1, trials - first - 1) select _together[first, second]];
                return 1000L * Spread(_served) + Spread(pairs);
            }
        }

        // Times the number of counts, so that it is whole: their sum of squares about the mean.
        private static long Spread(int[] counts) => counts.Length * counts.Sum(count => (long)count * count) - (long)counts.Sum() * counts.Sum();

        public long OfSet(IReadOnlyList<int> set) => 1000L * set.Sum(trial => 2 * _served[trial] + 1)
            + set.SelectMany((trial, at) => set.Skip(at + 1).Select(other => 2 * _together[trial, other] + 1)).Sum();

        public long OfOrder(IReadOnlyList<int> order) => order.Select((trial, place) => 10L * (2 * _place[trial, place] + 1) + (place > 0 ? 2 * _after[trial, order[place - 1]] + 1 : 0)).Sum();

        public void Add(IReadOnlyList<int> order)
        {
            for (var place = 0; place < order.Count; place++)
            {
                _served[order[place]]++;
                _place[order[place], place]++;
                if (place > 0) _after[order[place], order[place - 1]]++;
                for (var other = 0; other < order.Count; other++)
                    if (other != place) _together[order[place], order[other]]++;
            }
        }
    }
}
