namespace Tamis.Labels;

/// <summary>Lines and bars of a box, one under the other.</summary>
/// <param name="sizes">The weights of the bars.</param>
/// <param name="width">How wide it is, in mm.</param>
internal sealed class BoxColumn(TypeSizes sizes, double width)
{
    private readonly List<LabelMark> _marks = [];
    private double _y;

    /// <summary>How high it is so far, in mm.</summary>
    public double HeightMillimetres => _y;

    /// <summary>All of it.</summary>
    public LabelBlock Block => new(width, _y, _marks);

    /// <summary>Adds a block at the foot.</summary>
    public void Add(LabelBlock block)
    {
        _marks.AddRange(block.At(0, _y));
        _y += block.HeightMillimetres;
    }

    /// <summary>Adds a bar with a point of room on either side, where the form has it.</summary>
    public void Bar(string part)
    {
        if (sizes.BarMillimetres(part) is not { } thickness) return;
        // A point of room on either side, as between lines of text.
        var room = Typeface.Kit.PointMillimetres;
        _marks.Add(new BarMark(0, _y + room, width, thickness));
        _y += thickness + 2 * room;
    }

    /// <summary>Adds upright rules at these places, from a height down to the foot.</summary>
    public void Rules(IEnumerable<double> edges, double top) => _marks.AddRange(BoxColumns.Rules(edges, top, _y, sizes));

    /// <summary>Adds a hairline at the foot; it stands within the leading of the lines and takes no room of its own.</summary>
    public void Hairline(double left)
    {
        if (sizes.BarMillimetres("hairline") is { } thickness) _marks.Add(new BarMark(left, _y - thickness / 2, width - left, thickness));
    }
}
