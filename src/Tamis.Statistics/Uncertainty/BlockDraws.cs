using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Tamis.Statistics.Uncertainty;

/// <summary>Draws of single inputs, a block at a time.</summary>
internal static class BlockDraws
{
    /// <summary>How many draws a block has; the random numbers of each start anew.</summary>
    public const int Size = 1_024;

    /// <summary>The vectors of a block.</summary>
    public const int Vectors = Size / 8;

    /// <summary>Fills a block with draws of an input.</summary>
    public static void Fill(ref BlockRandom random, UncertainNumber input, Span<double> block)
    {
        var vectors = MemoryMarshal.Cast<double, Vector512<double>>(block);
        if (input.StandardUncertainty == 0)
        {
            block.Fill(input.Value);
            return;
        }
        if (input.Shape == DrawShape.Rectangular)
        {
            var half = input.StandardUncertainty * Math.Sqrt(3);
            for (var i = 0; i < vectors.Length; i++)
                vectors[i] = Vector512.FusedMultiplyAdd(random.Uniform(), Vector512.Create(2 * half), Vector512.Create(input.Value - half));
            return;
        }
        var isLog = input.Shape == DrawShape.Lognormal;
        var (mean, deviation) = isLog ? input.OfLogarithm : (input.Value, input.StandardUncertainty);
        for (var i = 0; i < vectors.Length; i += 2)
        {
            var (first, second) = random.Normals();
            vectors[i] = Vector512.FusedMultiplyAdd(first, Vector512.Create(deviation), Vector512.Create(mean));
            vectors[i + 1] = Vector512.FusedMultiplyAdd(second, Vector512.Create(deviation), Vector512.Create(mean));
            if (isLog) (vectors[i], vectors[i + 1]) = (BlockRandom.Exp(vectors[i]), BlockRandom.Exp(vectors[i + 1]));
        }
    }
}
