namespace Tamis.Statistics.Uncertainty;

/// <summary>Propagation of distributions by drawing (JCGM 101:2008): for any model, with independent inputs.</summary>
public static class Simulation
{
    /// <summary>Draws the inputs and works the model out for each draw.</summary>
    /// <param name="model">The model; it is called from several threads, with an array that it must not keep.</param>
    /// <param name="inputs">The inputs, in the order of the model.</param>
    /// <param name="draws">How many draws, two at least.</param>
    /// <param name="seed">The same seed gives the same draws, on any number of threads.</param>
    /// <param name="threads">At most so many threads; 0 for as many as the machine has.</param>
    /// <exception cref="ArgumentException">An input cannot be drawn.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than two draws.</exception>
    public static DrawnNumbers Run(Func<double[], double> model, IReadOnlyList<UncertainNumber> inputs, int draws, ulong seed, int threads = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 2);
        foreach (var input in inputs) input.Check(nameof(inputs));
        var results = new double[draws];
        InBlocks(draws, threads, block =>
        {
            BlockRandom random = new(seed, block);
            var drawn = new double[inputs.Count][];
            for (var i = 0; i < drawn.Length; i++) BlockDraws.Fill(ref random, inputs[i], drawn[i] = new double[BlockDraws.Size]);
            var at = new double[inputs.Count];
            for (var draw = 0; draw < BlockDraws.Size && block * BlockDraws.Size + draw < draws; draw++)
            {
                for (var i = 0; i < at.Length; i++) at[i] = drawn[i][draw];
                results[block * BlockDraws.Size + draw] = model(at);
            }
        });
        return new(results);
    }

    /// <summary>Runs the blocks of so many draws, each on whatever thread is free.</summary>
    internal static void InBlocks(int draws, int threads, Action<int> block)
    {
        var blocks = (draws + BlockDraws.Size - 1) / BlockDraws.Size;
        if (threads == 1) for (var i = 0; i < blocks; i++) block(i);
        else Parallel.For(0, blocks, new ParallelOptions { MaxDegreeOfParallelism = threads <= 0 ? -1 : threads }, block);
    }
}
