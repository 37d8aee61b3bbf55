namespace Tamis.Labels;

/// <summary>A panel as running text, one figure after the other.</summary>
internal static class LinePanel
{
    public static LabelBlock Draw(PanelContent content, TextSetter setter, double widthMillimetres)
    {
        var sizes = setter.Sizes;
        var vitamins = PanelBlocks.Vitamins(content, sizes);
        List<SetRun> runs = [.. PanelBlocks.Plain($"{content.Title} ", "title", sizes)];
        if (content.Servings.Length > 0) runs.AddRange(PanelBlocks.Plain($"{content.Servings}, ", "servings", sizes));
        if (content.ServingSizeHead.Length > 0) runs.AddRange(PanelBlocks.Plain($"{content.ServingSizeHead} {content.ServingSize}, ", "serving size", sizes));
        if (content.AmountPer.Length > 0 && !content.HasColumns) runs.AddRange(PanelBlocks.Plain($"{content.Colon(content.AmountPer)} ", "amount per", sizes));
        for (var column = 0; column < content.ColumnHeads.Count; column++)
        {
            if (content.AmountPer.Length == 0 || content.HasColumns) runs.AddRange(PanelBlocks.Plain($"{content.Colon(content.ColumnHeads[column])} ", "column head", sizes));
            var isLast = column == content.ColumnHeads.Count - 1;
            foreach (var (line, at) in content.Lines.Select((line, at) => (line, at)))
                runs.AddRange(RunsOf(line, vitamins.Contains(line) ? "vitamin" : "nutrient", column, sizes, column == content.PercentColumn, at < content.Lines.Count - 1 ? ", " : isLast ? "." : "; "));
        }
        foreach (var note in content.Footnotes) runs.AddRange(PanelBlocks.Plain($" {note.Replace("* ", "*\u00a0", StringComparison.Ordinal)}", "footnote", sizes));
        var room = widthMillimetres - 2 * PanelBlocks.EdgeMillimetres(sizes);
        return PanelBlocks.Framed(setter.Paragraph(runs, room), sizes);
    }

    private static IEnumerable<SetRun> RunsOf(PanelContentLine line, string part, int column, TypeSizes sizes, bool hasPercent, string end)
    {
        var (word, figure) = line.IsEnergy ? ("energy", "energy figure") : (part, part);
        yield return new(line.Term, word, sizes.IsBold(word) && line.Indent == 0);
        if (column < line.Amounts.Count && line.Amounts[column].Length > 0) yield return new($" {line.Amounts[column].Replace(' ', '\u00a0')}", figure, line.IsEnergy && sizes.IsBold(figure));
        if (hasPercent && line.Percent.Length > 0)
        {
            yield return new(" (", part, false);
            yield return new(line.Percent, part, BoxLines.IsPercentBold(sizes, part));
            yield return new(")", part, false);
        }
        yield return new(end, part, false);
    }
}
