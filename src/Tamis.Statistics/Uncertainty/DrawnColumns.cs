namespace Tamis.Statistics.Uncertainty;

/// <summary>The draws of several results, column after column.</summary>
public sealed class DrawnColumns
{
    private readonly double[] _draws;

    private DrawnColumns(int columns, int count, double[] draws) => (Columns, Count, _draws) = (columns, count, draws);

    /// <summary>How many results.</summary>
    public int Columns { get; }

    /// <summary>How many draws each has.</summary>
    public int Count { get; }

    /// <summary>The draws of one result; they stand until the room is used again.</summary>
    public DrawnNumbers this[int column] => new(_draws.AsMemory(column * Count, Count));

    /// <summary>The same quantiles of every result, result after result.</summary>
    /// <param name="shares">Each 0 to 1.</param>
    /// <param name="threads">At most so many threads; 0 for as many as the machine has.</param>
    public double[][] Quantiles(double[] shares, int threads = 0)
    {
        var all = new double[Columns][];
        if (threads == 1) for (var column = 0; column < Columns; column++) all[column] = this[column].Quantiles(shares);
        else Parallel.For(0, Columns, new ParallelOptions { MaxDegreeOfParallelism = threads <= 0 ? -1 : threads }, column => all[column] = this[column].Quantiles(shares));
        return all;
    }

    internal static DrawnColumns RoomFor(int columns, int count, DrawnColumns? used) =>
        new(columns, count, used is not null && used._draws.Length >= columns * count ? used._draws : GC.AllocateUninitializedArray<double>(columns * count));

    internal void Set(int column, int block, ReadOnlySpan<double> drawn)
    {
        var first = block * BlockDraws.Size;
        drawn[..Math.Min(drawn.Length, Count - first)].CopyTo(_draws.AsSpan(column * Count + first));
    }
}
