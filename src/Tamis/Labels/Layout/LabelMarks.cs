namespace Tamis.Labels;

/// <summary>Something drawn on a label. Places are in mm from the upper left corner of the face.</summary>
public abstract record LabelMark
{
    /// <summary>The left edge, in mm.</summary>
    public abstract double LeftMillimetres { get; }

    /// <summary>The upper edge of what is inked, in mm.</summary>
    public abstract double TopMillimetres { get; }

    /// <summary>The right edge, in mm.</summary>
    public abstract double RightMillimetres { get; }

    /// <summary>The lower edge of what is inked, in mm.</summary>
    public abstract double BottomMillimetres { get; }

    /// <summary>The colour that it is printed in where a law fixes one; null for that of the label.</summary>
    public LabelColour? Ink { get; init; }

    /// <summary>The same, moved right and down.</summary>
    public abstract LabelMark Moved(double rightMillimetres, double downMillimetres);
}

/// <summary>A stretch of text in one size and weight, on one line.</summary>
public sealed record TextMark : LabelMark
{
    /// <summary>The words.</summary>
    public required string Text { get; init; }

    /// <summary>Where it begins, in mm.</summary>
    public required double XMillimetres { get; init; }

    /// <summary>Its base line, in mm.</summary>
    public required double BaseLineMillimetres { get; init; }

    /// <summary>The type size, in mm.</summary>
    public required double SizeMillimetres { get; init; }

    /// <summary>Whether it stands in bold type.</summary>
    public required bool IsBold { get; init; }

    /// <summary>The part of the label that it belongs to: <c>list</c>.</summary>
    public required string Part { get; init; }

    /// <summary>The code of its language; empty for figures and marks of several languages.</summary>
    public string Language { get; init; } = "";

    /// <summary>How wide it is, in mm.</summary>
    public double WidthMillimetres => Typeface.Kit.WidthMillimetres(Text, SizeMillimetres, IsBold);

    /// <inheritdoc/>
    public override double LeftMillimetres => XMillimetres;

    /// <inheritdoc/>
    public override double TopMillimetres => BaseLineMillimetres - SizeMillimetres * Typeface.Kit.AscenderRatio;

    /// <inheritdoc/>
    public override double RightMillimetres => XMillimetres + WidthMillimetres;

    /// <inheritdoc/>
    public override double BottomMillimetres => BaseLineMillimetres + SizeMillimetres * Typeface.Kit.DescenderRatio;

    /// <inheritdoc/>
    public override LabelMark Moved(double rightMillimetres, double downMillimetres) => this with { XMillimetres = XMillimetres + rightMillimetres, BaseLineMillimetres = BaseLineMillimetres + downMillimetres };
}

/// <summary>A level rule: its upper edge, its ends and how heavy it is, in mm.</summary>
public sealed record BarMark(double XMillimetres, double YMillimetres, double WidthMillimetres, double ThicknessMillimetres) : LabelMark
{
    /// <inheritdoc/>
    public override double LeftMillimetres => XMillimetres;

    /// <inheritdoc/>
    public override double TopMillimetres => YMillimetres;

    /// <inheritdoc/>
    public override double RightMillimetres => XMillimetres + WidthMillimetres;

    /// <inheritdoc/>
    public override double BottomMillimetres => YMillimetres + ThicknessMillimetres;

    /// <inheritdoc/>
    public override LabelMark Moved(double rightMillimetres, double downMillimetres) => this with { XMillimetres = XMillimetres + rightMillimetres, YMillimetres = YMillimetres + downMillimetres };
}

/// <summary>A mark with four edges: where its upper left corner is, and its outer width and height, in mm.</summary>
public abstract record BoxMark(double XMillimetres, double YMillimetres, double WidthMillimetres, double HeightMillimetres) : LabelMark
{
    /// <inheritdoc/>
    public override double LeftMillimetres => XMillimetres;

    /// <inheritdoc/>
    public override double TopMillimetres => YMillimetres;

    /// <inheritdoc/>
    public override double RightMillimetres => XMillimetres + WidthMillimetres;

    /// <inheritdoc/>
    public override double BottomMillimetres => YMillimetres + HeightMillimetres;

    /// <inheritdoc/>
    public override LabelMark Moved(double rightMillimetres, double downMillimetres) => this with { XMillimetres = XMillimetres + rightMillimetres, YMillimetres = YMillimetres + downMillimetres };
}

/// <summary>A place that is kept free for the artwork of an authority: shown on a draft, never printed.</summary>
public sealed record ReserveMark(double XMillimetres, double YMillimetres, double WidthMillimetres, double HeightMillimetres)
    : BoxMark(XMillimetres, YMillimetres, WidthMillimetres, HeightMillimetres);

/// <summary>A ground of its own colour under a part of the label, in mm.</summary>
public sealed record GroundMark(double XMillimetres, double YMillimetres, double WidthMillimetres, double HeightMillimetres, LabelColour Colour)
    : BoxMark(XMillimetres, YMillimetres, WidthMillimetres, HeightMillimetres);

/// <summary>A box: its outer edges and how heavy its line is, in mm.</summary>
public sealed record FrameMark(double XMillimetres, double YMillimetres, double WidthMillimetres, double HeightMillimetres, double ThicknessMillimetres)
    : BoxMark(XMillimetres, YMillimetres, WidthMillimetres, HeightMillimetres);

/// <summary>Marks that are placed together: in mm from the upper left corner of the block.</summary>
internal sealed record LabelBlock(double WidthMillimetres, double HeightMillimetres, IReadOnlyList<LabelMark> Marks)
{
    /// <summary>Nothing.</summary>
    public static LabelBlock Nothing { get; } = new(0, 0, []);

    /// <summary>Its marks, moved to where it stands.</summary>
    public IEnumerable<LabelMark> At(double xMillimetres, double yMillimetres) => Marks.Select(mark => mark.Moved(xMillimetres, yMillimetres));

    /// <summary>Blocks one under the other; those that hold nothing take no room.</summary>
    public static LabelBlock Stack(IEnumerable<LabelBlock> blocks, double gapMillimetres)
    {
        List<LabelMark> marks = [];
        double width = 0, height = 0;
        foreach (var block in blocks.Where(block => block.Marks.Count > 0))
        {
            if (height > 0) height += gapMillimetres;
            marks.AddRange(block.At(0, height));
            (width, height) = (Math.Max(width, block.WidthMillimetres), height + block.HeightMillimetres);
        }
        return new(width, height, marks);
    }

    /// <summary>The block within a box.</summary>
    public LabelBlock Framed(double thicknessMillimetres, double padMillimetres)
    {
        var edge = thicknessMillimetres + padMillimetres;
        var (width, height) = (WidthMillimetres + 2 * edge, HeightMillimetres + 2 * edge);
        return new(width, height, [new FrameMark(0, 0, width, height, thicknessMillimetres), .. At(edge, edge)]);
    }

    /// <summary>The block in colours of its own; as it is where there are none.</summary>
    public LabelBlock In(LabelColours? colours) => colours is null || Marks.Count == 0 ? this
        : this with { Marks = [new GroundMark(0, 0, WidthMillimetres, HeightMillimetres, colours.Ground), .. Marks.Select(mark => mark with { Ink = colours.Ink })] };
}
