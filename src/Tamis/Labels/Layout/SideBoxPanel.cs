namespace Tamis.Labels;

/// <summary>A panel as an upright box without its notes, and at its right, set off by an upright rule, what the law lets stand there: the notes, and the lines after the last one that must stand at the left.</summary>
internal static class SideBoxPanel
{
    // The right side is as narrow as it can be without becoming higher than the left one; wider than this it would take the room of the text.
    private const int MostLeastColumns = 4;

    public static LabelBlock Draw(PanelContent content, TextSetter setter)
    {
        var sizes = setter.Sizes;
        PanelContentLine[] moved = [.. PanelBlocks.After(content, sizes, "aside")];
        var left = BoxPanel.Inside(content with { Lines = [.. content.Lines.Except(moved)], Footnotes = content.FootStatements }, setter, isPaired: true);
        string[] notes = [.. content.Footnotes.Except(content.FootStatements)];
        if (moved is [] && notes is []) return PanelBlocks.Framed(left, sizes);
        var least = sizes.SpaceMillimetres("least column");
        LabelBlock[] options = [.. Enumerable.Range(1, MostLeastColumns).Select(times => Right(content with { Lines = moved, Footnotes = notes }, setter, times * least))];
        var right = Array.Find(options, option => option.HeightMillimetres <= left.HeightMillimetres) ?? options[^1];
        var gap = sizes.SpaceMillimetres("column gap");
        var height = Math.Max(left.HeightMillimetres, right.HeightMillimetres);
        var rule = BoxColumns.Rules([left.WidthMillimetres + gap], 0, height, sizes);
        return PanelBlocks.Framed(new(left.WidthMillimetres + 2 * gap + right.WidthMillimetres, height, [.. left.Marks, .. rule, .. right.At(left.WidthMillimetres + 2 * gap, 0)]), sizes);
    }

    private static LabelBlock Right(PanelContent content, TextSetter setter, double least)
    {
        var sizes = setter.Sizes;
        var columns = content is { HasColumns: true, Lines.Count: > 0 } ? new BoxColumns(content, setter, content.Lines, least) : null;
        var width = columns?.WidthMillimetres ?? content.Lines.Select(line => BoxLines.NutrientWidth(line, setter, "vitamin")).Append(least).Max();
        BoxColumn column = new(sizes, width);
        if (columns is not null)
        {
            column.Add(columns.Heads());
            column.Add(columns.PercentHeads());
        }
        else if (content is { PercentHead.Length: > 0, Lines.Count: > 0 }) column.Add(BoxLines.Right(setter.Line(content.PercentHead, "percent head", sizes.IsBold("percent head")), width));
        foreach (var line in content.Lines)
        {
            if (column.HeightMillimetres > 0) column.Hairline(0);
            column.Add(columns?.Nutrient(line, "vitamin") ?? BoxLines.Nutrient(line, setter, width, "vitamin"));
        }
        if (columns is not null) column.Rules(columns.EdgesMillimetres, 0);
        if (content is { Footnotes.Count: > 0, Lines.Count: > 0 }) column.Bar("before footnote");
        foreach (var note in content.Footnotes) column.Add(setter.Paragraph(PanelBlocks.Plain(note, "footnote", sizes), width));
        return column.Block;
    }
}
