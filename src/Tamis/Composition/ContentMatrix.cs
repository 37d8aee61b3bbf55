namespace Tamis.Composition;

/// <summary>Contents of many foods in one block of numbers, for sums over many mixtures.</summary>
public sealed class ContentMatrix
{
    private readonly double[] _per100Grams;

    internal ContentMatrix(int rows, int columns, int stride, double[] per100Grams, int threads = 1) =>
        (Rows, Columns, Stride, _per100Grams, Whole) = (rows, columns, stride, per100Grams, WholeContents.Of(per100Grams, stride, columns, threads));

    /// <summary>How many foods.</summary>
    public int Rows { get; }

    /// <summary>How many nutrients.</summary>
    public int Columns { get; }

    /// <summary>From the start of one row to the next; at least <see cref="Columns"/>, the rest NaN.</summary>
    public int Stride { get; }

    /// <summary>The contents in 100 g, row after row, NaN where unknown.</summary>
    public ReadOnlySpan<double> Per100Grams => _per100Grams;

    /// <summary>Whether each column is decimals of a few digits: such contents are summed as whole numbers of a decimal unit, in half the time.</summary>
    public bool IsInWholeUnits => Whole is not null;

    /// <summary>The same contents as whole numbers; null where they are none.</summary>
    internal WholeContents? Whole { get; }

    /// <summary>One food's contents in 100 g, NaN where unknown.</summary>
    public ReadOnlySpan<double> Row(int row) => Per100Grams.Slice(row * Stride, Columns);

    /// <summary>The contents of profiles that share one list of nutrients: row i is profile i.</summary>
    /// <exception cref="ArgumentException">A profile has another number of nutrients than the first.</exception>
    public static ContentMatrix Of(IReadOnlyList<NutrientProfile> profiles)
    {
        var columns = profiles.Count == 0 ? 0 : profiles[0].Nutrients.Count;
        if (profiles.FirstOrDefault(profile => profile.Nutrients.Count != columns) is { } odd)
            throw new ArgumentException($"'{odd.Name}' has {odd.Nutrients.Count} nutrients, '{profiles[0].Name}' has {columns}; give all profiles one list.", nameof(profiles));
        return FromRows(profiles.Count, columns, row => profiles[row].Per100Grams);
    }

    /// <summary>A matrix from rows of contents in 100 g, NaN where unknown.</summary>
    /// <exception cref="ArgumentException">A row has not <paramref name="columns"/> contents.</exception>
    public static ContentMatrix FromRows(int rows, int columns, RowOf rowOf)
    {
        var stride = ContentGrid.StrideOf(columns);
        var values = new double[rows * stride];
        for (var row = 0; row < rows; row++)
        {
            var contents = rowOf(row);
            if (contents.Length != columns) throw new ArgumentException($"Row {row} has {contents.Length} contents, not {columns}.", nameof(rowOf));
            contents.CopyTo(values.AsSpan(row * stride));
            values.AsSpan(row * stride + columns, stride - columns).Fill(double.NaN);
        }
        return new(rows, columns, stride, values);
    }

    /// <summary>Gives the contents of a row in 100 g, NaN where unknown.</summary>
    public delegate ReadOnlySpan<double> RowOf(int row);
}
