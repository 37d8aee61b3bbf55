namespace Tamis.Statistics.Designs;

/// <summary>Which treatments go together into blocks that cannot hold them all.</summary>
/// <param name="Blocks">The numbers of the treatments, from 0, block by block.</param>
/// <param name="Together">How many blocks two treatments share, the fewest and the most of all pairs.</param>
/// <param name="Served">How many blocks a treatment is in, the fewest and the most.</param>
public sealed record IncompleteBlocks(IReadOnlyList<IReadOnlyList<int>> Blocks, (int Fewest, int Most) Together, (int Fewest, int Most) Served)
{
    private const int Runs = 12;

    /// <summary>Whether all treatments are served, and all pairs share a block, equally often.</summary>
    public bool IsBalanced => Together.Fewest == Together.Most && Served.Fewest == Served.Most;

    /// <summary>Whether the numbers allow a balanced design at all: b k divides by t, r (k − 1) by t − 1, and b ≥ t (Fisher 1940, Annals of Eugenics 10).</summary>
    public static bool MayBalance(int treatments, int size, int blocks) => size == treatments
        || blocks >= treatments && blocks * size % treatments == 0 && blocks * size / treatments * (size - 1) % (treatments - 1) == 0;

    /// <summary>The number of blocks nearest to a wanted one, and not below half of it, for which a balanced design may exist.</summary>
    /// <param name="treatments">How many treatments, 2 or more.</param>
    /// <param name="size">How many a block holds, from 2 to all.</param>
    /// <param name="blocks">The wanted number of blocks.</param>
    public static int NearestCount(int treatments, int size, int blocks)
    {
        for (var away = 0; ; away++)
        {
            if (MayBalance(treatments, size, blocks + away)) return blocks + away;
            if (blocks - away >= (blocks + 1) / 2 && blocks - away > 0 && MayBalance(treatments, size, blocks - away)) return blocks - away;
        }
    }

    /// <summary>A balanced design, or where none exists or is found the one nearest to it.</summary>
    /// <param name="treatments">How many treatments, 2 or more.</param>
    /// <param name="size">How many a block holds, from 2 to all of them.</param>
    /// <param name="blocks">How many blocks, 1 or more.</param>
    /// <param name="below">Chance: a whole number from 0 to one less than its argument.</param>
    /// <remarks>
    /// First by orbits of blocks under turning treatments within abelian groups, with or without one treatment that stands still (Bose 1939, Annals of Eugenics 9),
    /// several times over where the number of blocks is a multiple; then by exchanging treatments between blocks, repeats kept equal, so that the
    /// squares of the pairs' counts fall (John and Mitchell 1977, Journal of the Royal Statistical Society B 39: regular graph designs).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than two treatments, no block, or a block holds fewer than two or more than there are.</exception>
    public static IncompleteBlocks Of(int treatments, int size, int blocks, Func<int, int> below)
    {
        if (treatments < 2) throw new ArgumentOutOfRangeException(nameof(treatments), treatments, "A design compares two treatments or more.");
        if (size < 2 || size > treatments) throw new ArgumentOutOfRangeException(nameof(size), size, $"A block holds from 2 to {treatments} treatments.");
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(blocks);
        return Counted(treatments, TurnedBlocks.Find(treatments, size, blocks) ?? Exchanged(treatments, size, blocks, below));
    }

    private static IncompleteBlocks Counted(int treatments, int[][] blocks)
    {
        var together = Pairs(treatments, blocks);
        int[] pairs = [.. from i in Enumerable.Range(0, treatments) from j in Enumerable.Range(i + 1, treatments - i - 1) select together[i, j]];
        int[] served = [.. Enumerable.Range(0, treatments).Select(treatment => together[treatment, treatment])];
        return new(blocks, (pairs.Min(), pairs.Max()), (served.Min(), served.Max()));
    }

    private static int[][] Exchanged(int treatments, int size, int blocks, Func<int, int> below)
    {
        int[][] best = [];
        var least = long.MaxValue;
        var floor = Floor(treatments, size, blocks);
        for (var run = 0; run < Runs && least > floor; run++)
        {
            var found = Dealt(treatments, size, blocks, below);
            var cost = Improve(found, Pairs(treatments, found), below);
            if (cost < least) (best, least) = (found, cost);
        }
        return best;
    }

    // The sum of squares that pairs would have if they were as equal as whole numbers can be: nothing lies below it.
    private static long Floor(int treatments, int size, int blocks)
    {
        long pairs = (long)treatments * (treatments - 1) / 2, all = (long)blocks * size * (size - 1) / 2, each = all / pairs, more = all % pairs;
        return (pairs - more) * each * each + more * (each + 1) * (each + 1);
    }

    // Treatments dealt out evenly: each block takes those that were dealt least so far.
    private static int[][] Dealt(int treatments, int size, int blocks, Func<int, int> below)
    {
        var served = new int[treatments];
        return [.. Enumerable.Range(0, blocks).Select(_ =>
        {
            int[] block = [.. Enumerable.Range(0, treatments).Select(treatment => (treatment, chance: below(1 << 20))).OrderBy(each => served[each.treatment]).ThenBy(each => each.chance).Take(size).Select(each => each.treatment)];
            foreach (var treatment in block) served[treatment]++;
            return block;
        })];
    }

    // Two blocks exchange a treatment each; what makes pairs less even is taken only now and then, and less often as time goes by.
    private static long Improve(int[][] blocks, int[,] together, Func<int, int> below)
    {
        var (cost, treatments) = (0L, together.GetLength(0));
        for (var i = 0; i < treatments; i++)
            for (var j = i + 1; j < treatments; j++) cost += (long)together[i, j] * together[i, j];
        if (blocks.Length < 2) return cost;
        var (least, kept) = (cost, blocks.Select(block => (int[])[.. block]).ToArray());
        var steps = 400 * blocks.Length * blocks[0].Length;
        for (var step = 0; step < steps; step++)
        {
            var (first, second) = (blocks[below(blocks.Length)], blocks[below(blocks.Length)]);
            var (here, there) = (below(first.Length), below(second.Length));
            var (leaves, comes) = (first[here], second[there]);
            if (Array.IndexOf(first, comes) >= 0 || Array.IndexOf(second, leaves) >= 0) continue;
            var change = Move(first, leaves, comes) + Move(second, comes, leaves);
            if (change <= 0 || below(1000) < 1000 * Math.Exp(-change / (2.0 * (steps - step) / steps)))
            {
                (first[here], second[there], cost) = (comes, leaves, cost + change);
                if (cost < least) (least, kept) = (cost, [.. blocks.Select(block => (int[])[.. block])]);
            }
            else
            {
                Move(second, leaves, comes);
                Move(first, comes, leaves);
            }
        }
        for (var block = 0; block < blocks.Length; block++) blocks[block] = kept[block];
        return least;

        // Counts a treatment out of the company of a block and another one in, and says by how much the squares grow.
        long Move(int[] block, int leaving, int coming)
        {
            long change = 0;
            foreach (var other in block)
            {
                if (other == leaving || other == coming) continue;
                change += 1 - 2 * together[leaving, other];
                together[leaving, other]--;
                together[other, leaving]--;
                change += 1 + 2 * together[coming, other];
                together[coming, other]++;
                together[other, coming]++;
            }
            return change;
        }
    }

    // How many blocks two treatments share; on the diagonal, how many a treatment is in.
    private static int[,] Pairs(int treatments, int[][] blocks)
    {
        var together = new int[treatments, treatments];
        foreach (var block in blocks)
            foreach (var one in block)
                foreach (var other in block) together[one, other]++;
        return together;
    }
}
