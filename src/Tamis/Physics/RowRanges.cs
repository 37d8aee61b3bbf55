using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>Reads ranges from two cells of a row, as the tables of the kitchen have them.</summary>
internal static class RowRanges
{
    extension(RowReader row)
    {
        /// <summary>The range of two cells, or null where both are blank.</summary>
        public Interval? Range(string low, string high, double least = double.NegativeInfinity, double most = double.PositiveInfinity) =>
            row.Text(low) is null && row.Text(high) is null ? null : row.RequiredRange(low, high, least, most);

        /// <summary>The range of two cells that may not be blank; the point 0 after a problem.</summary>
        public Interval RequiredRange(string low, string high, double least = double.NegativeInfinity, double most = double.PositiveInfinity)
        {
            var (from, to) = (row.RequiredNumber(low, least, most), row.RequiredNumber(high, least, most));
            if (from <= to) return Interval.Between(from, to);
            if (from > to) row.Note(high, $"at least the number under {low}");
            return Interval.At(0);
        }
    }
}
