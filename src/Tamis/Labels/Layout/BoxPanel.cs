namespace Tamis.Labels;

/// <summary>A panel as an upright box: heading, servings, energy, lines with rules between, the vitamins, the notes.</summary>
internal static class BoxPanel
{
    // What parts two vitamins on a line.
    private const string Between = "\u2022";

    public static LabelBlock Draw(PanelContent content, TextSetter setter) => PanelBlocks.Framed(Inside(content, setter, isPaired: false), setter.Sizes);

    /// <summary>What stands within the box.</summary>
    /// <param name="content">The panel.</param>
    /// <param name="setter">Sets its text.</param>
    /// <param name="isPaired">Whether two vitamins stand on a line where there is one column of amounts.</param>
    public static LabelBlock Inside(PanelContent content, TextSetter setter, bool isPaired)
    {
        var sizes = setter.Sizes;
        var columns = content.HasColumns ? new BoxColumns(content, setter, Shown(content), HeadWidth(content, setter)) : null;
        var width = columns?.WidthMillimetres ?? NaturalWidth(content, setter, isPaired);
        var vitamins = PanelBlocks.Vitamins(content, sizes);
        BoxColumn column = new(sizes, width);
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
        foreach (var (block, at) in (isPaired && columns is null ? vitamins.Chunk(2).Select(pair => Pair(pair, setter, width)) : vitamins.Select(line => Nutrient(line, "vitamin"))).Select((block, at) => (block, at)))
        {
            if (at > 0) column.Hairline(0);
            column.Add(block);
        }
        if (columns is not null) column.Rules(columns.EdgesMillimetres, top);
        if (content.Footnotes.Count > 0) column.Bar("before footnote");
        foreach (var note in content.Footnotes) column.Add(setter.Paragraph(PanelBlocks.Plain(note, "footnote", sizes), width));
        return column.Block;

        LabelBlock Nutrient(PanelContentLine line, string part) => columns?.Nutrient(line, part) ?? BoxLines.Nutrient(line, setter, width, part);
    }

    // Two vitamins on one line, each with its percentage at the end of its half.
    private static LabelBlock Pair(PanelContentLine[] pair, TextSetter setter, double width)
    {
        var half = (width - PairGap(setter)) / 2;
        LabelBlock[] halves = [.. pair.Select(line => BoxLines.Nutrient(line, setter, half, "vitamin"))];
        var between = setter.Line(Between, "vitamin", false);
        return new(width, halves[0].HeightMillimetres, halves is [var first, var second]
            ? [.. first.Marks, .. between.At((width - between.WidthMillimetres) / 2, 0), .. second.At(width - half, 0)] : halves[0].Marks);
    }

    private static double PairGap(TextSetter setter) => Math.Max(setter.Sizes.SpaceMillimetres("column gap"), setter.WidthMillimetres($"\u00a0{Between}\u00a0", "vitamin", false));

    // Nothing of an upright box is broken but its notes: the widest line gives the width.
    private static double NaturalWidth(PanelContent content, TextSetter setter, bool isPaired) => ((double[])
    [
        isPaired ? 2 * PanelBlocks.Vitamins(content, setter.Sizes).Select(line => BoxLines.NutrientWidth(line, setter, "vitamin")).DefaultIfEmpty(0).Max() + PairGap(setter) : 0,
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
}
