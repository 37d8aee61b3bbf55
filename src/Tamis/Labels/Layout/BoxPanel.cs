namespace Tamis.Labels;

/// <summary>A panel as an upright box: heading, servings, energy, lines with rules between, the vitamins, the notes.</summary>
internal static class BoxPanel
{
    public static LabelBlock Draw(PanelContent content, TextSetter setter)
    {
        var sizes = setter.Sizes;
        var columns = content.HasColumns ? new BoxColumns(content, setter, Shown(content), HeadWidth(content, setter)) : null;
        var width = columns?.WidthMillimetres ?? NaturalWidth(content, setter);
        var vitamins = PanelBlocks.Vitamins(content, sizes);
        Column column = new(sizes, width);
        column.Add(BoxLines.Title(content, setter, width));
        column.Bar("after title");
        foreach (var line in BoxLines.Servings(content, setter, width)) column.Add(line);
        column.Bar("after servings");
        var top = column.HeightMillimetres;
        // Heads of several columns stand in place of the words over the amounts of one.
        if (columns is not null) column.Add(columns.Heads());
        else if (content.AmountPer.Length > 0) column.Add(setter.Line(content.AmountPer, "amount per", sizes.IsBold("amount per")));
        foreach (var line in content.Lines.Where(line => line.IsEnergy)) column.Add(columns?.Energy(line) ?? BoxLines.Energy(line, setter, width));
        column.Bar("after energy");
        if (columns is not null) column.Add(columns.PercentHeads());
        else if (content.PercentHead.Length > 0) column.Add(BoxLines.Right(setter.Line(content.PercentHead, "percent head", sizes.IsBold("percent head")), width));
        foreach (var group in PanelLineGroup.Of([.. content.Lines.Where(line => !line.IsEnergy && !vitamins.Contains(line))]))
        {
            column.Hairline(group.Indent > 1 ? BoxLines.IndentMillimetres(group.Lines[0], setter) : 0);
            column.Add(group.Drawn(line => Nutrient(line, "nutrient")));
        }
        if (vitamins.Count > 0) column.Bar("before vitamins");
        foreach (var (line, at) in vitamins.Select((line, at) => (line, at)))
        {
            if (at > 0) column.Hairline(0);
            column.Add(Nutrient(line, "vitamin"));
        }
        if (columns is not null) column.Rules(columns.EdgesMillimetres, top);
        if (content.Footnotes.Count > 0) column.Bar("before footnote");
        foreach (var note in content.Footnotes) column.Add(setter.Paragraph(PanelBlocks.Plain(note, "footnote", sizes), width));
        return PanelBlocks.Framed(column.Block, sizes);

        LabelBlock Nutrient(PanelContentLine line, string part) => columns?.Nutrient(line, part) ?? BoxLines.Nutrient(line, setter, width, part);
    }

    // Nothing of an upright box is broken but its notes: the widest line gives the width.
    private static double NaturalWidth(PanelContent content, TextSetter setter) => ((double[])
    [
        HeadWidth(content, setter),
        setter.WidthMillimetres(content.AmountPer, "amount per", setter.Sizes.IsBold("amount per")),
        .. Shown(content).Select(line => line.IsEnergy ? BoxLines.EnergyWidth(line, setter) : BoxLines.NutrientWidth(line, setter, "nutrient")),
    ]).Max();

    // The lines whose words are drawn: a percentage that stands beside others has none.
    private static PanelContentLine[] Shown(PanelContent content) => [.. PanelLineGroup.Of(content.Lines).SelectMany(group => group.Lines)];

    private static double HeadWidth(PanelContent content, TextSetter setter) => ((double[])
    [
        setter.WidthMillimetres(content.Title, "title", setter.Sizes.IsBold("title")),
        setter.WidthMillimetres(content.Servings, "servings", setter.Sizes.IsBold("servings")),
        BoxLines.ServingSizeWidth(content, setter),
    ]).Max();

    /// <summary>Lines and bars, one under the other.</summary>
    private sealed class Column(TypeSizes sizes, double width)
    {
        private readonly List<LabelMark> _marks = [];
        private double _y;

        public double HeightMillimetres => _y;

        public LabelBlock Block => new(width, _y, _marks);

        public void Add(LabelBlock block)
        {
            _marks.AddRange(block.At(0, _y));
            _y += block.HeightMillimetres;
        }

        public void Bar(string part)
        {
            if (sizes.BarMillimetres(part) is not { } thickness) return;
            // A point of room on either side, as between lines of text.
            var room = Typeface.Kit.PointMillimetres;
            _marks.Add(new BarMark(0, _y + room, width, thickness));
            _y += thickness + 2 * room;
        }

        // Upright rules at these places, from a height down to here.
        public void Rules(IEnumerable<double> edges, double top) => _marks.AddRange(BoxColumns.Rules(edges, top, _y, sizes));

        // Within the leading of the lines: it takes no room of its own.
        public void Hairline(double left)
        {
            if (sizes.BarMillimetres("hairline") is { } thickness) _marks.Add(new BarMark(left, _y - thickness / 2, width - left, thickness));
        }
    }
}
