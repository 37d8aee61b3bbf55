namespace Tamis.Labels;

/// <summary>Draws a panel in a form.</summary>
internal static class PanelBlocks
{
    /// <summary>The panel; a table and running text are no wider than the width where their words allow it, a box is as wide as its lines need.</summary>
    public static LabelBlock Draw(PanelDrawing drawing, PanelContent content, TextSetter setter, double widthMillimetres) => drawing switch
    {
        PanelDrawing.Table => TablePanel.Draw(content, setter, widthMillimetres),
        PanelDrawing.Box => BoxPanel.Draw(content, setter),
        PanelDrawing.SideBox => SideBoxPanel.Draw(content, setter),
        PanelDrawing.WideBox => WideBoxPanel.Draw(content, setter, widthMillimetres),
        _ => LinePanel.Draw(content, setter, widthMillimetres),
    };

    /// <summary>The room that a box takes on each side, in mm.</summary>
    public static double EdgeMillimetres(TypeSizes sizes) => sizes.BarMillimetres("box") is { } box ? box + sizes.PadMillimetres : 0;

    /// <summary>A block within the box of its form, where the form has one.</summary>
    public static LabelBlock Framed(LabelBlock block, TypeSizes sizes) => sizes.BarMillimetres("box") is { } box ? block.Framed(box, sizes.PadMillimetres) : block;

    /// <summary>The runs of a text that is all of one part.</summary>
    public static SetRun[] Plain(string text, string part, TypeSizes sizes) => [new(text, part, sizes.IsBold(part))];

    /// <summary>The lines that stand under the bar of vitamins; none where the form has no such section.</summary>
    public static IReadOnlyList<PanelContentLine> Vitamins(PanelContent content, TypeSizes sizes) => After(content, sizes, "vitamins");

    /// <summary>The lines of a section of the panel: those after the last line that stands before it; none where the form has no such section.</summary>
    public static IReadOnlyList<PanelContentLine> After(PanelContent content, TypeSizes sizes, string section)
    {
        if (sizes.SectionAfter(section) is not { } last) return [];
        // The line after which they begin may itself be left off.
        var before = content.Order.TakeWhile(key => !Names.Same(key, last)).Append(last).ToHashSet(Names.Comparer);
        return content.Order.Contains(last, Names.Comparer) ? [.. content.Lines.Where(line => !before.Contains(line.Key))] : [];
    }
}
