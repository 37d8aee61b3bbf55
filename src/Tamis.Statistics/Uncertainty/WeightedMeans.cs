using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Tamis.Statistics.Uncertainty;

/// <summary>Weighted means of many columns at once, with uncertain weights and values: what 100 g of a mixture hold of each nutrient.</summary>
/// <remarks>Result j is the sum over lines of weight × value(line, j), over the sum of the weights; all inputs independent.</remarks>
public sealed class WeightedMeans
{
    private readonly UncertainNumber[] _weights;
    private readonly UncertainNumber[] _values;

    /// <summary>Takes the lines.</summary>
    /// <param name="weights">The weight of each line.</param>
    /// <param name="values">The values of each line, line after line, one a column.</param>
    /// <exception cref="ArgumentException">The lists do not fit each other, or a number cannot be drawn.</exception>
    public WeightedMeans(IReadOnlyList<UncertainNumber> weights, IReadOnlyList<UncertainNumber> values)
    {
        if (weights.Count == 0 || values.Count % weights.Count != 0)
            throw new ArgumentException($"{values.Count} values do not part into {weights.Count} lines.", nameof(values));
        (_weights, _values) = ([.. weights], [.. values]);
        foreach (var number in _weights) number.Check(nameof(weights));
        foreach (var number in _values) number.Check(nameof(values));
    }

    /// <summary>How many columns there are.</summary>
    public int Columns => _values.Length / _weights.Length;

    /// <summary>A column's mean and its uncertainty to first order (JCGM 100:2008, 5.1): sensitivities first of the weights, then of the values, line by line.</summary>
    public Propagated FirstOrder(int column)
    {
        var total = _weights.Sum(weight => weight.Value);
        UncertainNumber[] values = [.. _weights.Select((_, line) => _values[line * Columns + column])];
        var mean = values.Zip(_weights, (value, weight) => value.Value * weight.Value).Sum() / total;
        return new(mean,
            [.. values.Select(value => (value.Value - mean) / total), .. _weights.Select(weight => weight.Value / total)],
            [.. _weights.Select(weight => weight.StandardUncertainty), .. values.Select(value => value.StandardUncertainty)]);
    }

    /// <summary>Draws all columns.</summary>
    /// <param name="draws">How many draws, two at least.</param>
    /// <param name="seed">The same seed gives the same draws, on any number of threads.</param>
    /// <param name="threads">At most so many threads; 0 for as many as the machine has.</param>
    /// <param name="room">Room that an earlier call used, to be used again; null for new room.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than two draws.</exception>
    public DrawnColumns Draw(int draws, ulong seed, int threads = 0, DrawnColumns? room = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 2);
        var results = DrawnColumns.RoomFor(Columns, draws, room);
        (Vector512<double> Mean, Vector512<double> Deviation)[] plans = [.. _values.Select(Plan)];
        Simulation.InBlocks(draws, threads, block => Block(new(seed, block), block, plans, results));
        return results;
    }

    private static (Vector512<double>, Vector512<double>) Plan(UncertainNumber value)
    {
        var (mean, deviation) = value.Shape == DrawShape.Lognormal && value.StandardUncertainty > 0 ? value.OfLogarithm : (value.Value, value.StandardUncertainty);
        return (Vector512.Create(mean), Vector512.Create(deviation));
    }

    private void Block(BlockRandom random, int block, (Vector512<double> Mean, Vector512<double> Deviation)[] plans, DrawnColumns results)
    {
        var weights = new double[_weights.Length * BlockDraws.Size];
        Span<Vector512<double>> shares = stackalloc Vector512<double>[BlockDraws.Vectors];
        Span<Vector512<double>> sums = stackalloc Vector512<double>[BlockDraws.Vectors];
        Span<double> other = stackalloc double[BlockDraws.Size];
        shares.Clear();
        for (var line = 0; line < _weights.Length; line++)
        {
            var drawn = weights.AsSpan(line * BlockDraws.Size, BlockDraws.Size);
            BlockDraws.Fill(ref random, _weights[line], drawn);
            var vectors = MemoryMarshal.Cast<double, Vector512<double>>(drawn);
            for (var i = 0; i < vectors.Length; i++) shares[i] += vectors[i];
        }
        for (var i = 0; i < shares.Length; i++) shares[i] = Vector512<double>.One / shares[i];
        var columns = Columns;
        for (var column = 0; column < columns; column++)
        {
            sums.Clear();
            for (var line = 0; line < _weights.Length; line++)
            {
                var at = line * columns + column;
                var weight = MemoryMarshal.Cast<double, Vector512<double>>(weights.AsSpan(line * BlockDraws.Size, BlockDraws.Size));
                var (mean, deviation) = plans[at];
                switch (_values[at])
                {
                    case { StandardUncertainty: 0 }:
                        for (var i = 0; i < weight.Length; i++) sums[i] = Vector512.FusedMultiplyAdd(weight[i], mean, sums[i]);
                        break;
                    case { Shape: DrawShape.Rectangular } value:
                        BlockDraws.Fill(ref random, value, other);
                        for (var i = 0; i < weight.Length; i++) sums[i] = Vector512.FusedMultiplyAdd(weight[i], MemoryMarshal.Cast<double, Vector512<double>>(other)[i], sums[i]);
                        break;
                    case { Shape: DrawShape.Lognormal }:
                        AddLognormal(ref random, mean, deviation, weight, sums);
                        break;
                    default:
                        AddNormal(ref random, mean, deviation, weight, sums);
                        break;
                }
            }
            for (var i = 0; i < sums.Length; i++) sums[i] *= shares[i];
            results.Set(column, block, MemoryMarshal.Cast<Vector512<double>, double>(sums));
        }
    }

    private static void AddNormal(ref BlockRandom shared, Vector512<double> mean, Vector512<double> deviation, ReadOnlySpan<Vector512<double>> weight, Span<Vector512<double>> sums)
    {
        // A copy of its own stays in registers.
        var random = shared;
        for (var i = 0; i < weight.Length - 1 && i < sums.Length - 1; i += 2)
        {
            var (first, second) = random.Normals();
            sums[i] = Vector512.FusedMultiplyAdd(weight[i], Vector512.FusedMultiplyAdd(first, deviation, mean), sums[i]);
            sums[i + 1] = Vector512.FusedMultiplyAdd(weight[i + 1], Vector512.FusedMultiplyAdd(second, deviation, mean), sums[i + 1]);
        }
        shared = random;
    }

    private static void AddLognormal(ref BlockRandom shared, Vector512<double> mean, Vector512<double> deviation, ReadOnlySpan<Vector512<double>> weight, Span<Vector512<double>> sums)
    {
        var random = shared;
        for (var i = 0; i < weight.Length - 1 && i < sums.Length - 1; i += 2)
        {
            var (first, second) = random.Normals();
            sums[i] = Vector512.FusedMultiplyAdd(weight[i], BlockRandom.Exp(Vector512.FusedMultiplyAdd(first, deviation, mean)), sums[i]);
            sums[i + 1] = Vector512.FusedMultiplyAdd(weight[i + 1], BlockRandom.Exp(Vector512.FusedMultiplyAdd(second, deviation, mean)), sums[i + 1]);
        }
        shared = random;
    }
}
