using Tamis.Physics;

namespace Tamis.Views;

/// <summary>A part of a piece and a place in it that can be pointed at.</summary>
/// <param name="Name">What it is.</param>
/// <param name="RadiusMillimetres">The place, from the middle line.</param>
/// <param name="HeightMillimetres">The place, above the floor.</param>
internal readonly record struct SectionPart(string Name, double RadiusMillimetres, double HeightMillimetres);

/// <summary>To scale: as many units a millimetre across as upwards, the middle line in the middle.</summary>
internal readonly struct SectionScale
{
    private const double Edge = 4;
    private readonly double unitsPerMillimetre, middle, top;

    public SectionScale(MouldedPiece piece, double widthUnits)
    {
        RadiusMillimetres = piece.Axes.RadiusMillimetres[^1];
        (unitsPerMillimetre, middle, top) = ((widthUnits - 2 * Edge) / (2 * RadiusMillimetres), widthUnits / 2, piece.Axes.HeightMillimetres[^1]);
        Height = (top - piece.Axes.HeightMillimetres[0]) * unitsPerMillimetre + 2 * Edge;
    }

    public double RadiusMillimetres { get; }

    public double Height { get; }

    public double X(double millimetres) => middle + millimetres * unitsPerMillimetre;

    public double Y(double millimetres) => Edge + (top - millimetres) * unitsPerMillimetre;
}

/// <summary>Where one part of a piece ends and the next begins, from its cells: parts may take each other's place, so their own measures do not tell.</summary>
internal static class SectionOutline
{
    /// <summary>The lines between parts, in units of a picture, both halves.</summary>
    public static IReadOnlyList<IEnumerable<(double X, double Y)>> Of(MouldedPiece piece, SectionScale scale, double lower)
    {
        var (radius, height) = (piece.Axes.RadiusMillimetres, piece.Axes.HeightMillimetres);
        var (rings, floors) = (piece.Axes.Rings, piece.Axes.Floors);
        List<IEnumerable<(double X, double Y)>> lines = [];
        for (var ring = 1; ring <= rings; ring++)
            foreach (var (from, to) in Ranges(floors, floor => OwnerOf(ring - 1, floor) != OwnerOf(ring, floor)))
                foreach (var side in (double[])[-1, 1])
                    lines.Add([(scale.X(side * radius[ring]), lower + scale.Y(height[from])), (scale.X(side * radius[ring]), lower + scale.Y(height[to]))]);
        for (var floor = 0; floor <= floors; floor++)
            foreach (var (from, to) in Ranges(rings, ring => OwnerOf(ring, floor - 1) != OwnerOf(ring, floor)))
            {
                var y = lower + scale.Y(height[floor]);
                if (from == 0) lines.Add([(scale.X(-radius[to]), y), (scale.X(radius[to]), y)]);
                else foreach (var side in (double[])[-1, 1]) lines.Add([(scale.X(side * radius[from]), y), (scale.X(side * radius[to]), y)]);
            }
        return lines;

        int OwnerOf(int ring, int floor) => ring >= 0 && ring < rings && floor >= 0 && floor < floors ? piece.DiscOfCell[floor * rings + ring] : MouldedPiece.Air;
    }

    /// <summary>The parts, the uppermost first, each with its outermost cell at the middle of its height.</summary>
    public static IReadOnlyList<SectionPart> PartsOf(MouldedPiece piece)
    {
        var (radius, height, rings) = (piece.Axes.RadiusMillimetres, piece.Axes.HeightMillimetres, piece.Axes.Rings);
        return
        [
            .. Enumerable.Range(0, piece.Cells).Where(cell => piece.DiscOfCell[cell] != MouldedPiece.Air)
                .GroupBy(cell => piece.Discs[piece.DiscOfCell[cell]].Material?.Name ?? "", Names.Comparer)
                .Select(cells => Place(cells.Key, [.. cells])).OrderByDescending(part => part.HeightMillimetres)
        ];

        SectionPart Place(string name, IReadOnlyList<int> cells)
        {
            // The floor on which the part reaches farthest out; of several, the middle one.
            var farthest = cells.Max(cell => cell % rings);
            int[] there = [.. cells.Where(cell => cell % rings == farthest).Select(cell => cell / rings).Order()];
            var floor = there[there.Length / 2];
            return new(name, (radius[farthest] + radius[farthest + 1]) / 2, (height[floor] + height[floor + 1]) / 2);
        }
    }

    private static IEnumerable<(int From, int To)> Ranges(int count, Func<int, bool> isLine)
    {
        var start = -1;
        for (var at = 0; at <= count; at++)
        {
            if (at < count && isLine(at)) start = start < 0 ? at : start;
            else if (start >= 0)
            {
                yield return (start, at);
                start = -1;
            }
        }
    }
}
