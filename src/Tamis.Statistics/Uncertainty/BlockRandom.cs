using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Tamis.Statistics.Uncertainty;

/// <summary>Random numbers of one block of draws: eight streams side by side, seeded by (seed, block), so that the draws are the same on any number of threads.</summary>
/// <remarks>The generator is xoshiro256++ (Blackman and Vigna 2021), its states from SplitMix64 (Steele, Lea and Flood 2014).
/// Logarithm, sine, cosine and exponential are short series, good to 1e-11: far finer than any number of draws can tell.</remarks>
internal struct BlockRandom
{
    private Vector512<ulong> _a, _b, _c, _d;

    public BlockRandom(ulong seed, int block)
    {
        var state = Mixed(seed + 0x9E3779B97F4A7C15UL) ^ Mixed((ulong)block * 0xD1342543DE82EF95UL + 1);
        Span<ulong> words = stackalloc ulong[32];
        for (var i = 0; i < words.Length; i++) words[i] = Mixed(state += 0x9E3779B97F4A7C15UL);
        (_a, _b, _c, _d) = (Vector512.Create<ulong>(words), Vector512.Create<ulong>(words[8..]), Vector512.Create<ulong>(words[16..]), Vector512.Create<ulong>(words[24..]));
    }

    /// <summary>Eight uniform numbers above 0, at most 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<double> Uniform() => Vector512.Create(2.0) - OneToTwo(Bits());

    /// <summary>Twice eight independent normal numbers (Box and Muller 1958).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (Vector512<double> First, Vector512<double> Second) Normals()
    {
        var radius = Vector512.Sqrt(MinusTwoLog(Uniform()));
        // An angle within an eighth turn on either side of the axis; two spare bits choose the axis and its direction.
        var bits = Bits();
        var angle = (OneToTwo(bits) - Vector512.Create(1.5)) * Vector512.Create(Math.PI / 2);
        var square = angle * angle;
        var sine = angle * Plus(Plus(Plus(Plus(Plus(Vector512.Create(-1.0 / 39916800), square, 1.0 / 362880), square, -1.0 / 5040), square, 1.0 / 120), square, -1.0 / 6), square, 1);
        var cosine = Vector512.FusedMultiplyAdd(Plus(Plus(Plus(Plus(Plus(Vector512.Create(1.0 / 479001600), square, -1.0 / 3628800), square, 1.0 / 40320), square, -1.0 / 720), square, 1.0 / 24), square, -1.0 / 2), square, Vector512<double>.One);
        cosine = (cosine.AsUInt64() ^ (bits << 63)).AsDouble();
        var isTurned = Vector512.Equals(bits & Vector512.Create(2UL), Vector512<ulong>.Zero).AsDouble();
        return (radius * Vector512.ConditionalSelect(isTurned, sine, cosine), radius * Vector512.ConditionalSelect(isTurned, cosine, sine));
    }

    /// <summary>e to the power of numbers between −700 and 700.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector512<double> Exp(Vector512<double> x)
    {
        // Adding 1.5 · 2^52 leaves the nearest whole number in the lowest bits.
        var shifted = Vector512.FusedMultiplyAdd(x, Vector512.Create(1.4426950408889634), Vector512.Create(6755399441055744.0));
        var whole = shifted - Vector512.Create(6755399441055744.0);
        var rest = Vector512.FusedMultiplyAdd(whole, Vector512.Create(-0.6931471805599453), x);
        var power = Plus(Plus(Plus(Plus(Plus(Plus(Plus(Plus(Plus(Vector512.Create(1.0 / 362880), rest, 1.0 / 40320), rest, 1.0 / 5040), rest, 1.0 / 720), rest, 1.0 / 120), rest, 1.0 / 24), rest, 1.0 / 6), rest, 0.5), rest, 1), rest, 1);
        return (power.AsUInt64() + (shifted.AsUInt64() << 52)).AsDouble();
    }

    // −2 ln u for 0 < u ≤ 1: the exponent apart, ln of the rest (from √½ to √2) by the series of the area tangent.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> MinusTwoLog(Vector512<double> u)
    {
        var bits = u.AsInt64();
        var exponent = (bits - Vector512.Create(0x3FE6A09E667F3BCDL)) >> 52;
        var rest = (bits - (exponent << 52)).AsDouble();
        var s = (rest - Vector512<double>.One) / (rest + Vector512<double>.One);
        var square = s * s;
        var series = Plus(Plus(Plus(Plus(Plus(Plus(Vector512.Create(4.0 / 13), square, 4.0 / 11), square, 4.0 / 9), square, 4.0 / 7), square, 4.0 / 5), square, 4.0 / 3), square, 4);
        return Vector512.FusedMultiplyAdd(Vector512.ConvertToDouble(exponent), Vector512.Create(-2 * 0.6931471805599453), Vector512.Create(-1.0) * s * series);
    }

    // One step of Horner's scheme: sum · x + term.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Plus(Vector512<double> sum, Vector512<double> x, double term) => Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(term));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> OneToTwo(Vector512<ulong> bits) => ((bits >> 12) | Vector512.Create(0x3FF0000000000000UL)).AsDouble();

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector512<ulong> Bits()
    {
        var result = Rotated(_a + _d, 23) + _a;
        var kept = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= kept;
        _d = Rotated(_d, 45);
        return result;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<ulong> Rotated(Vector512<ulong> bits, int by) => (bits << by) | (bits >> (64 - by));

    private static ulong Mixed(ulong x)
    {
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9UL;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EBUL;
        return x ^ (x >> 31);
    }
}
