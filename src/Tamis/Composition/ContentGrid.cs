namespace Tamis.Composition;

/// <summary>All contents of a table in dense columns: one row a food, one column a nutrient, rows one after another.</summary>
/// <remarks>Rows are padded with NaN to a multiple of <see cref="Pitch"/>, so that sums run in whole vectors and a row fills whole lines of the cache.</remarks>
internal sealed class ContentGrid
{
    /// <summary>Doubles in the widest vector that the sums use (512 bits).</summary>
    public const int Lane = 8;

    /// <summary>Columns in a cache line of 64 bytes, as whole numbers of 32 bits: rows are padded to a multiple of it.</summary>
    public const int Pitch = 2 * Lane;

    private readonly Detail[] _details;
    private readonly Source[] _sources;

    private ContentGrid(int rows, int columns, double[] values, ContentState[] states, Detail[] details, Source[] sources) =>
        (Rows, Columns, Stride, Per100Grams, States, _details, _sources) = (rows, columns, StrideOf(columns), values, states, details, sources);

    public int Rows { get; }

    public int Columns { get; }

    public int Stride { get; }

    /// <summary>Contents in 100 g, NaN where unknown.</summary>
    public double[] Per100Grams { get; }

    public ContentState[] States { get; }

    public static int StrideOf(int columns) => (columns + Pitch - 1) / Pitch * Pitch;

    public Content this[int row, int column]
    {
        get
        {
            var cell = row * Stride + column;
            var state = States[cell];
            if (state == ContentState.Unknown) return Content.Unknown;
            ref readonly var detail = ref _details[cell];
            var source = _sources[detail.Source];
            var value = Per100Grams[cell];
            return state switch
            {
                ContentState.BelowLimit => Content.Below(detail.High, source),
                // The ends of an estimate are its own bounds; those of an analysed figure are the extremes of its samples,
                // which say less about a further lot than the standard deviation does.
                ContentState.Estimated when detail.High > detail.Low => new(state, value, Interval.Between(detail.Low, detail.High), source),
                _ => Content.Spread(state, value, source, detail.Samples > 0 ? detail.Samples : null, detail.StandardDeviation),
            };
        }
    }

    /// <summary>The lowest and highest sample or bound; null where the data do not say.</summary>
    public Interval? Extremes(int row, int column) =>
        _details[row * Stride + column] is { Low: var low, High: var high } && high > low ? Interval.Between(low, high) : null;

    /// <summary>The contents with every one below a limit at a share of its limit, 0 to 1, in place of the middle.</summary>
    public double[] WithBelowLimitAt(double share)
    {
        var values = (double[])Per100Grams.Clone();
        for (var cell = 0; cell < values.Length; cell++)
            if (States[cell] == ContentState.BelowLimit) values[cell] = _details[cell].High * share;
        return values;
    }

    /// <summary>The sources that its contents point to.</summary>
    public IReadOnlyList<Source> Sources => _sources;

    /// <summary>Whether a content of this state was filled in and not looked up.</summary>
    public static bool IsFilledIn(ContentState state) => state is ContentState.Estimated or ContentState.AssumedZero;

    /// <summary>Whether a content follows from others of the same food and was not stated.</summary>
    public bool IsDerived(int row, int column) => _details[row * Stride + column].Source == Detail.Derived;

    /// <summary>What belongs to a content besides its figure; default is nothing.</summary>
    public record struct Detail(double Low, double High, double StandardDeviation, int Samples, int Source)
    {
        /// <summary>The source of a content that follows from others of the same food.</summary>
        public const int Derived = -1;
    }

    /// <summary>Fills a grid cell by cell.</summary>
    public sealed class Builder(int rows, int columns)
    {
        private readonly int _stride = StrideOf(columns);
        private readonly double[] _values = NotANumber(rows * StrideOf(columns));
        private readonly ContentState[] _states = new ContentState[rows * StrideOf(columns)];
        private readonly Detail[] _details = new Detail[rows * StrideOf(columns)];

        public void Set(int row, int column, ContentState state, double per100Grams, Detail detail)
        {
            var cell = row * _stride + column;
            (_values[cell], _states[cell], _details[cell]) = (per100Grams, state, detail);
        }

        /// <summary>The content in 100 g as filled so far, NaN where unknown.</summary>
        public double Per100Grams(int row, int column) => _values[row * _stride + column];

        /// <summary>The state as filled so far.</summary>
        public ContentState State(int row, int column) => _states[row * _stride + column];

        /// <summary>Takes over what a row of another grid states; what follows from others there is left out.</summary>
        /// <param name="row">The row here.</param>
        /// <param name="from">The other grid.</param>
        /// <param name="fromRow">The row there.</param>
        /// <param name="fromColumns">For each column here its column there, −1 where there is none.</param>
        /// <param name="firstSource">The place of the other grid's first source among those of this one.</param>
        public void Take(int row, ContentGrid from, int fromRow, int[] fromColumns, int firstSource)
        {
            for (var column = 0; column < columns; column++)
            {
                if (fromColumns[column] < 0 || fromRow * from.Stride + fromColumns[column] is var cell && (from.States[cell] == ContentState.Unknown || from._details[cell].Source == Detail.Derived)) continue;
                Set(row, column, from.States[cell], from.Per100Grams[cell], from._details[cell] with { Source = from._details[cell].Source + firstSource });
            }
        }

        public ContentGrid Build(IEnumerable<Source> sources) => new(rows, columns, _values, _states, _details, [.. sources]);

        private static double[] NotANumber(int length)
        {
            var values = GC.AllocateUninitializedArray<double>(length);
            Array.Fill(values, double.NaN);
            return values;
        }
    }
}
