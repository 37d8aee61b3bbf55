namespace Tamis.Statistics.Designs;

/// <summary>In which order each block gets its treatments, so that places and neighbours are spread as evenly as can be.</summary>
public static class BlockOrders
{
    private const int Runs = 60, Sweeps = 12, PlaceWeight = 10, SearchWeight = 2, MostOrders = 720;

    /// <summary>The blocks, each in an order such that every treatment stands in every place, and comes straight after every other, as equally often as was found.</summary>
    /// <param name="treatments">How many treatments there are.</param>
    /// <param name="blocks">The numbers of the treatments, from 0, block by block; no block holds one twice.</param>
    /// <param name="below">Chance: a whole number from 0 to one less than its argument.</param>
    /// <remarks>Block by block the order that makes the counts most even, given all other blocks, one by chance where several do; several times round, and the best of several
    /// beginnings. Places weigh more than neighbours; on the way there less
    /// so, or no block could leave its place for another. Blocks of more than six treatments try every exchange of two and some orders by chance in place of all.</remarks>
    public static IReadOnlyList<IReadOnlyList<int>> Of(int treatments, IReadOnlyList<IReadOnlyList<int>> blocks, Func<int, int> below)
    {
        int[][] best = [];
        var least = long.MaxValue;
        var sizes = blocks.Select(block => block.Count).Distinct().ToDictionary(size => size, size => Permutations(size, below));
        for (var run = 0; run < Runs; run++)
        {
            var (orders, cost) = Settled(treatments, blocks, sizes, below);
            if (cost < least) (best, least) = (orders, cost);
        }
        return best;
    }

    private static (int[][] Orders, long Cost) Settled(int treatments, IReadOnlyList<IReadOnlyList<int>> blocks, Dictionary<int, int[][]> permutations, Func<int, int> below)
    {
        var longest = blocks.Max(block => block.Count);
        var (places, after) = (new int[treatments, longest], new int[treatments, treatments]);
        int[][] orders = [.. blocks.Select(block => Shuffled([.. block], below))];
        foreach (var order in orders) Count(order, 1);
        for (var sweep = 0; sweep < Sweeps; sweep++)
            for (var block = 0; block < orders.Length; block++)
            {
                var own = orders[block];
                Count(own, -1);
                var (chosen, cost, equals) = (Array.Empty<int>(), long.MaxValue, 0);
                foreach (var tried in permutations[own.Length])
                {
                    var other = Cost(own, tried);
                    // One of those that do equally well, each as likely as the others, so that the search does not stand still on a plain.
                    if (other < cost) (chosen, cost, equals) = (tried, other, 1);
                    else if (other == cost && below(++equals) == 0) chosen = tried;
                }
                orders[block] = [.. chosen.Select(place => own[place])];
                Count(orders[block], 1);
            }
        return (orders, Squares(places) * PlaceWeight + Squares(after));

        void Count(int[] order, int by)
        {
            for (var place = 0; place < order.Length; place++)
            {
                places[order[place], place] += by;
                if (place > 0) after[order[place], order[place - 1]] += by;
            }
        }

        // By how much the squares of the counts would grow.
        long Cost(int[] block, int[] order)
        {
            long sum = 0;
            for (var place = 0; place < order.Length; place++)
                sum += SearchWeight * (2L * places[block[order[place]], place] + 1) + (place > 0 ? 2L * after[block[order[place]], block[order[place - 1]]] + 1 : 0);
            return sum;
        }
    }

    private static long Squares(int[,] counts)
    {
        long sum = 0;
        foreach (var count in counts) sum += (long)count * count;
        return sum;
    }

    private static int[][] Permutations(int size, Func<int, int> below)
    {
        int[] places = [.. Enumerable.Range(0, size)];
        if (size > 6)
            return [.. from one in places from other in places where one <= other select Exchanged(places, one, other), .. Enumerable.Range(0, MostOrders).Select(_ => Shuffled([.. places], below))];
        IEnumerable<int[]> all = [[]];
        foreach (var _ in places) all = [.. from order in all from next in places where !order.Contains(next) select (int[])[.. order, next]];
        return [.. all];
    }

    private static int[] Exchanged(int[] places, int one, int other)
    {
        int[] exchanged = [.. places];
        (exchanged[one], exchanged[other]) = (exchanged[other], exchanged[one]);
        return exchanged;
    }

    // Fisher and Yates.
    private static int[] Shuffled(int[] things, Func<int, int> below)
    {
        for (var last = things.Length - 1; last > 0; last--)
            if (below(last + 1) is var other) (things[last], things[other]) = (things[other], things[last]);
        return things;
    }
}
