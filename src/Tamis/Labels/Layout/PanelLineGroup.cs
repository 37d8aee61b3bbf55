namespace Tamis.Labels;

/// <summary>Lines of a panel that are drawn together: one, or several with one percentage beside them.</summary>
/// <param name="Lines">The lines, at least one.</param>
/// <param name="Beside">The line whose percentage stands in the middle beside them; null where each has its own.</param>
internal sealed record PanelLineGroup(IReadOnlyList<PanelContentLine> Lines, PanelContentLine? Beside)
{
    /// <summary>How far the first line stands in.</summary>
    public int Indent => Lines[0].Indent;

    /// <summary>The lines in groups, in their order. A percentage of several lines stands beside them where they come right before it, and otherwise on a line of its own.</summary>
    public static IReadOnlyList<PanelLineGroup> Of(IReadOnlyList<PanelContentLine> lines)
    {
        List<PanelLineGroup> groups = [];
        for (var at = 0; at < lines.Count;)
        {
            var beside = Enumerable.Range(at + 1, lines.Count - at - 1).Select(sum => lines[sum]).FirstOrDefault(sum => sum.Beside.Count > 0 && lines.Skip(at).Take(sum.Beside.Count).Select(line => line.Key).SequenceEqual(sum.Beside, Names.Comparer)
                && ReferenceEquals(lines.ElementAtOrDefault(at + sum.Beside.Count), sum));
            groups.Add(beside is null ? new([lines[at]], null) : new([.. lines.Skip(at).Take(beside.Beside.Count)], beside));
            at += groups[^1].Lines.Count + (beside is null ? 0 : 1);
        }
        return groups;
    }

    /// <summary>The block of the group: its lines one under the other, and in the middle beside them the percentage that they share.</summary>
    /// <param name="draw">Draws one line.</param>
    public LabelBlock Drawn(Func<PanelContentLine, LabelBlock> draw)
    {
        var lines = LabelBlock.Stack(Lines.Select(draw), 0);
        if (Beside is null) return lines;
        // A space stands for its words, so that the line is as high as the others.
        var percent = draw(Beside with { Term = "\u00a0", Indent = 0 });
        return lines with { Marks = [.. lines.Marks, .. percent.At(0, (lines.HeightMillimetres - percent.HeightMillimetres) / 2).Where(mark => mark is TextMark text && !string.IsNullOrWhiteSpace(text.Text))] };
    }
}
