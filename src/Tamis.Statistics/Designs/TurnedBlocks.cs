using System.Numerics;

namespace Tamis.Statistics.Designs;

/// <summary>Balanced incomplete blocks that a group of turns carries into themselves: a few blocks are found, and turned into all of them.</summary>
/// <remarks>
/// Treatments are the elements of an abelian group, several copies of it, or these and one treatment that stands still; blocks are turned by adding an element.
/// All orbits of blocks that put no pair together too often are listed, and picked until every kind of pair has what it must have: difference sets and families
/// (Bose 1939, Annals of Eugenics 9; Singer 1938, Transactions of the American Mathematical Society 43) with one copy, mixed differences with several
/// (Kramer and Mesner 1976, Discrete Mathematics 15, for groups in general). The search ends after so many steps, so that it may miss a design that exists.
/// </remarks>
internal static class TurnedBlocks
{
    // A block is a set of bits.
    private const int MostTreatments = 64;
    private const int MostCopies = 4, MostListed = 400_000, MostOrbits = 20_000, MostSteps = 2_000_000;

    /// <summary>So many blocks, every treatment and every pair equally often; null where none was found.</summary>
    public static int[][]? Find(int treatments, int size, int blocks)
    {
        if (treatments > MostTreatments) return null;
        // What is left out of the blocks of a balanced design is a balanced design as well, and smaller blocks are found sooner.
        if (size > treatments / 2 && treatments - size >= 2)
            return Find(treatments, treatments - size, blocks) is { } rest ? [.. rest.Select(block => Enumerable.Range(0, treatments).Except(block).ToArray())] : null;
        // A smaller balanced design several times over serves as well; the smallest is found soonest.
        for (var part = 1; part <= blocks; part++)
            if (blocks % part == 0 && IncompleteBlocks.MayBalance(treatments, size, part) && Once(treatments, size, part) is { } found)
                return [.. Enumerable.Repeat(found, blocks / part).SelectMany(each => each)];
        return null;
    }

    private static int[][]? Once(int treatments, int size, int blocks)
    {
        var wanted = blocks * size / treatments * (size - 1) / (treatments - 1);
        for (var copies = 1; copies <= MostCopies; copies++)
            foreach (var moved in (int[])[treatments, treatments - 1])
                if (moved % copies == 0 && moved / copies > 1)
                    foreach (var orders in Groups(moved / copies))
                        if (new Turns(treatments, size, copies, orders).Pick(blocks, wanted) is { } found) return found;
        return null;
    }

    // Every abelian group with so many elements, as the orders of the rings that it is made of; those of fewest rings first.
    private static IEnumerable<int[]> Groups(int order)
    {
        IEnumerable<int[]> groups = [[]];
        for (var prime = 2; order > 1; prime++)
        {
            var power = 0;
            while (order % prime == 0) (order, power) = (order / prime, power + 1);
            var own = Partitions(power, power).Select(parts => parts.Select(part => (int)Math.Pow(prime, part)).ToArray()).ToArray();
            groups = [.. from made in groups from rings in own select (int[])[.. made, .. rings]];
        }
        return groups.OrderBy(rings => rings.Length);
    }

    private static IEnumerable<int[]> Partitions(int whole, int most)
    {
        if (whole == 0) yield return [];
        for (var part = Math.Min(whole, most); part >= 1; part--)
            foreach (var rest in Partitions(whole - part, part)) yield return [part, .. rest];
    }

    private sealed class Turns
    {
        private readonly int _treatments, _size, _copies, _order;
        private readonly int[][] _turned;
        private readonly int[,] _kind;
        private readonly int[] _kindSize;

        public Turns(int treatments, int size, int copies, int[] rings)
        {
            (_treatments, _size, _copies, _order) = (treatments, size, copies, rings.Aggregate(1, (product, ring) => product * ring));
            _turned = [.. Enumerable.Range(0, _order).Select(by => Enumerable.Range(0, treatments).Select(treatment =>
                treatment < copies * _order ? treatment / _order * _order + Sum(treatment % _order, by, rings) : treatment).ToArray())];
            (_kind, _kindSize) = Kinds();
        }

        // Element by element of the rings that the group is made of.
        private static int Sum(int left, int right, int[] rings)
        {
            var (sum, place) = (0, 1);
            foreach (var ring in rings)
            {
                sum += (left / place % ring + right / place % ring) % ring * place;
                place *= ring;
            }
            return sum;
        }

        // Pairs that turn into each other are together equally often and count as one kind.
        private (int[,] Kind, int[] Size) Kinds()
        {
            var kind = new int[_treatments, _treatments];
            List<int> sizes = [];
            for (var one = 0; one < _treatments; one++)
                for (var other = one + 1; other < _treatments; other++)
                {
                    if (kind[one, other] > 0) continue;
                    HashSet<(int, int)> pairs = [.. _turned.Select(turn => (Math.Min(turn[one], turn[other]), Math.Max(turn[one], turn[other])))];
                    sizes.Add(pairs.Count);
                    foreach (var (low, high) in pairs) kind[low, high] = kind[high, low] = sizes.Count;
                }
            return (kind, [0, .. sizes]);
        }

        public int[][]? Pick(int blocks, int wanted)
        {
            var orbits = Orbits(blocks, wanted);
            int[][] having = [.. _kindSize.Select((_, kind) => Enumerable.Range(0, orbits.Count).Where(at => orbits[at].Counts[kind] > 0).ToArray())];
            if (having.Skip(1).Any(those => those.Length == 0)) return null;
            var (sum, left, steps) = (new int[_kindSize.Length], blocks, 0);
            // The kind of pair that the fewest orbits have is filled first.
            int[] kinds = [.. Enumerable.Range(1, sum.Length - 1).OrderBy(kind => having[kind].Length)];
            List<int> picked = [];
            return Next() ? [.. picked.SelectMany(at => Turned(orbits[at].Block))] : null;

            bool Next()
            {
                var lacking = Array.FindIndex(kinds, kind => sum[kind] < wanted);
                if (lacking < 0) return left == 0;
                foreach (var at in having[kinds[lacking]])
                {
                    if (++steps > MostSteps) return false;
                    var (_, length, counts) = orbits[at];
                    if (length > left || !Fits(counts)) continue;
                    for (var kind = 0; kind < sum.Length; kind++) sum[kind] += counts[kind];
                    left -= length;
                    picked.Add(at);
                    if (Next()) return true;
                    picked.RemoveAt(picked.Count - 1);
                    left += length;
                    for (var kind = 0; kind < sum.Length; kind++) sum[kind] -= counts[kind];
                }
                return false;
            }

            bool Fits(int[] counts)
            {
                for (var kind = 0; kind < sum.Length; kind++)
                    if (sum[kind] + counts[kind] > wanted) return false;
                return true;
            }
        }

        private IEnumerable<int[]> Turned(int[] block) =>
            _turned.DistinctBy(turn => Bits(block, turn)).Select(turn => block.Select(treatment => turn[treatment]).Order().ToArray());

        // One block of every orbit has the first element of its first copy, so that only such are looked at.
        private List<(int[] Block, int Length, int[] Counts)> Orbits(int blocks, int wanted)
        {
            List<(int[] Block, int Length, int[] Counts)> orbits = [];
            HashSet<ulong> met = [];
            // What leaves a block as it is turns its moved treatments without standing still, so its number divides theirs: no orbit is shorter than this.
            var shortest = _order / Math.Max(Common(_order, _size), _treatments > _copies * _order ? Common(_order, _size - 1) : 1);
            var (block, own, listed) = (new int[_size], new int[_kindSize.Length], 0);
            for (var copy = 0; copy < _copies; copy++)
            {
                block[0] = copy * _order;
                Add(1);
            }
            return orbits;

            void Add(int place)
            {
                if (listed > MostListed || orbits.Count >= MostOrbits) return;
                if (place == _size)
                {
                    Orbit();
                    return;
                }
                for (var next = block[place - 1] + 1; next < _treatments; next++)
                {
                    listed++;
                    var fits = true;
                    for (var at = 0; at < place; at++) own[_kind[block[at], next]]++;
                    for (var at = 0; at < place && fits; at++) fits = (long)own[_kind[block[at], next]] * shortest <= (long)wanted * _kindSize[_kind[block[at], next]];
                    block[place] = next;
                    if (fits) Add(place + 1);
                    for (var at = 0; at < place; at++) own[_kind[block[at], next]]--;
                }
            }

            void Orbit()
            {
                if (met.Contains(Bits(block, _turned[0]))) return;
                var length = _turned.Count(turn => met.Add(Bits(block, turn)));
                int[] counts = [.. own.Select((count, kind) => kind == 0 ? 0 : count * length / _kindSize[kind])];
                if (length <= blocks && counts.All(count => count <= wanted)) orbits.Add(([.. block], length, counts));
            }
        }

        private static ulong Bits(int[] block, int[] turn)
        {
            var bits = 0UL;
            foreach (var treatment in block) bits |= 1UL << turn[treatment];
            return bits;
        }

        private static int Common(int left, int right) => (int)BigInteger.GreatestCommonDivisor(left, right);
    }
}
