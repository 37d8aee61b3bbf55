namespace Tamis.Composition;

/// <summary>Shares pieces of work out over cores.</summary>
internal static class Cores
{
    /// <summary>Does all pieces, whoever is free the next one; the caller works too, and none is left running afterwards.</summary>
    /// <remarks>Bare tasks: heavier machinery takes longer to start than a large file takes to read.</remarks>
    /// <param name="count">How many pieces.</param>
    /// <param name="threads">On how many cores at most.</param>
    /// <param name="work">Does a piece by its place; pieces may be done at the same time and in any order.</param>
    public static void Each(int count, int threads, Action<int> work)
    {
        var next = -1;
        void Take()
        {
            for (int piece; (piece = Interlocked.Increment(ref next)) < count;) work(piece);
        }

        var others = new Task[Math.Max(0, Math.Min(count, threads) - 1)];
        for (var other = 0; other < others.Length; other++) others[other] = Task.Run(Take);
        try
        {
            Take();
        }
        finally
        {
            foreach (var other in others) other.GetAwaiter().GetResult();
        }
    }
}
