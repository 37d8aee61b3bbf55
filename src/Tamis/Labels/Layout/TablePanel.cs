namespace Tamis.Labels;

/// <summary>A panel as a table: a term a row, a column of amounts for each basis, percentages last.</summary>
internal static class TablePanel
{
    private const string Nutrient = "nutrient";
    private const string Head = "column head";

    public static LabelBlock Draw(PanelContent content, TextSetter setter, double widthMillimetres)
    {
        var sizes = setter.Sizes;
        var room = widthMillimetres - 2 * PanelBlocks.EdgeMillimetres(sizes);
        var gap = sizes.SpaceMillimetres("column gap");
        var indent = sizes.SpaceMillimetres("indent", sizes.Size(Nutrient).SizeMillimetres);
        // What parts two languages does not begin a line.
        string[] heads = [.. content.ColumnHeads.Select(Joined), .. content.PercentHead.Length > 0 ? [Joined(content.PercentHead)] : Array.Empty<string>()];
        string[] Cells(PanelContentLine line) => [.. Enumerable.Range(0, content.ColumnHeads.Count).Select(at => at < line.Amounts.Count ? line.Amounts[at] : ""), .. content.PercentHead.Length > 0 ? [line.Percent] : Array.Empty<string>()];
        double WidthOf(string text) => setter.WidthMillimetres(text, Nutrient, false);

        double[] least = [.. heads.Select((head, at) => Math.Max(content.Lines.Max(line => WidthOf(Cells(line)[at])), head.Split(' ').Max(word => setter.WidthMillimetres(word, Head, false))))];
        double[] natural = [.. heads.Select((head, at) => Math.Max(least[at], setter.WidthMillimetres(head, Head, false)))];
        var terms = content.Lines.Max(line => line.Indent * indent + WidthOf(line.Term));
        var columns = terms + natural.Sum() + gap * heads.Length <= room ? natural : least;
        var term = Math.Min(terms, Math.Max(content.Lines.Max(line => line.Indent * indent + line.Term.Split(' ').Max(WidthOf)), room - columns.Sum() - gap * heads.Length));
        var width = term + columns.Sum() + gap * heads.Length;

        List<LabelBlock> rows = [setter.Paragraph(PanelBlocks.Plain(content.Title, "title", sizes), width)];
        foreach (var line in new[] { content.Servings, content.ServingSizeHead }.Where(line => line.Length > 0))
            rows.Add(setter.Paragraph(PanelBlocks.Plain(line, "servings", sizes), width));
        rows.Add(Row(LabelBlock.Nothing, heads, Head));
        rows.AddRange(content.Lines.Select(line => Row(Indented(line), Cells(line), Nutrient)));
        LabelBlock body = Ruled(rows, width, sizes);
        var notes = content.Footnotes.Select(note => setter.Paragraph(PanelBlocks.Plain(note, "footnote", sizes), width));
        return PanelBlocks.Framed(LabelBlock.Stack([body, .. notes], 0), sizes);

        LabelBlock Indented(PanelContentLine line)
        {
            var block = setter.Paragraph([new(line.Term, Nutrient, false)], term - line.Indent * indent);
            return new(term, block.HeightMillimetres, [.. block.At(line.Indent * indent, 0)]);
        }

        LabelBlock Row(LabelBlock first, string[] cells, string part)
        {
            List<LabelMark> marks = [.. first.Marks];
            var height = Math.Max(first.HeightMillimetres, setter.LeadMillimetres(part));
            var x = term;
            for (var at = 0; at < cells.Length; at++)
            {
                var block = setter.Paragraph([new(cells[at], part, false)], columns[at], isRight: true);
                marks.AddRange(block.At(x + gap, 0));
                x += gap + columns[at];
                height = Math.Max(height, block.HeightMillimetres);
            }
            return new(width, height, marks);
        }
    }

    private static string Joined(string head) => head.Replace(PanelContent.BetweenLanguages, PanelContent.BetweenLanguages.Replace(" /", "\u00a0/", StringComparison.Ordinal), StringComparison.Ordinal);

    // Rules do not touch the print: half the room of a box on either side.
    private static LabelBlock Ruled(List<LabelBlock> rows, double width, TypeSizes sizes)
    {
        if (sizes.BarMillimetres("hairline") is not { } hairline) return LabelBlock.Stack(rows, 0);
        var room = sizes.SpaceMillimetres("pad") / 2;
        List<LabelMark> marks = [];
        var y = 0.0;
        foreach (var row in rows)
        {
            marks.AddRange(row.At(0, y));
            y += row.HeightMillimetres + room;
            marks.Add(new BarMark(0, y, width, hairline));
            y += hairline + room;
        }
        return new(width, y, marks);
    }
}
