namespace Tamis.Tasting;

/// <summary>Chance by a stated seed: the same seed gives the same order on every machine and with every version of the runtime.</summary>
/// <remarks>SplitMix64 (Steele, Lea and Flood 2014, OOPSLA): the runtime's own generator does not promise to stay as it is.</remarks>
public sealed class SeededOrder(int seed)
{
    private ulong _state = unchecked((ulong)seed);

    /// <summary>A whole number from 0 to one less than <paramref name="below"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The bound is not more than zero.</exception>
    public int Below(int below)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(below);
        // The high half times the bound: bias is under one in four thousand million.
        return (int)((Next() >> 32) * (ulong)below >> 32);
    }

    /// <summary>The same things in an order of chance (Fisher and Yates).</summary>
    public IReadOnlyList<T> Shuffled<T>(IReadOnlyList<T> things)
    {
        T[] shuffled = [.. things];
        for (var last = shuffled.Length - 1; last > 0; last--)
        {
            var other = Below(last + 1);
            (shuffled[last], shuffled[other]) = (shuffled[other], shuffled[last]);
        }
        return shuffled;
    }

    private ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var mixed = _state;
            mixed = (mixed ^ mixed >> 30) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ mixed >> 27) * 0x94D049BB133111EB;
            return mixed ^ mixed >> 31;
        }
    }
}
