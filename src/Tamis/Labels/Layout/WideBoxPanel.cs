namespace Tamis.Labels;

/// <summary>A panel as a box on its side: heading, servings and energy at the left, the nutrients in two columns, vitamins and notes under them.</summary>
internal static class WideBoxPanel
{
    // More columns than this leave no line together with the ones that it is made of.
    private const int MostColumns = 3;

    public static LabelBlock Draw(PanelContent content, TextSetter setter, double widthMillimetres)
    {
        var left = Left(content, setter);
        var options = Enumerable.Range(1, MostColumns).Select(columns => Drawn(content, setter, left, columns)).ToArray();
        return options.OrderBy(block => Math.Max(0, block.WidthMillimetres - widthMillimetres)).ThenBy(block => block.HeightMillimetres).First();
    }

    private static LabelBlock Drawn(PanelContent content, TextSetter setter, LabelBlock left, int count)
    {
        var sizes = setter.Sizes;
        var gap = sizes.SpaceMillimetres("column gap");
        var vitamins = PanelBlocks.Vitamins(content, sizes);
        PanelContentLine[] lines = [.. content.Lines.Where(line => !line.IsEnergy && !vitamins.Contains(line))];
        PanelLineGroup[] groups = [.. PanelLineGroup.Of(lines)];
        var columns = content.HasColumns ? new BoxColumns(content, setter, [.. groups.SelectMany(group => group.Lines), .. vitamins]) : null;
        var nutrients = SideBySide(Parts(groups).Select(part => columns is null ? Nutrients(content, part, setter) : Columned(columns, part, "nutrient", setter, hasHeads: true)), gap);
        var wide = nutrients.WidthMillimetres;
        List<LabelBlock> under = [];
        if (vitamins.Count > 0)
        {
            var block = columns is null ? setter.Paragraph(VitaminRuns(vitamins, sizes), wide) : SideBySide(Parts([.. PanelLineGroup.Of(vitamins)]).Select(part => Columned(columns, part, "vitamin", setter, hasHeads: false)), gap);
            under.Add(Ruled(block, wide, sizes.BarMillimetres("before vitamins")));
        }
        if (content.Footnotes.Count > 0)
            under.Add(Ruled(LabelBlock.Stack(content.Footnotes.Select(note => setter.Paragraph(PanelBlocks.Plain(note, "footnote", sizes), wide)), 0), wide, sizes.BarMillimetres("before footnote")));
        var right = LabelBlock.Stack([nutrients, .. under], 0);
        return PanelBlocks.Framed(new(left.WidthMillimetres + gap + right.WidthMillimetres, Math.Max(left.HeightMillimetres, right.HeightMillimetres), [.. left.Marks, .. right.At(left.WidthMillimetres + gap, 0)]), sizes);

        IEnumerable<PanelLineGroup[]> Parts(PanelLineGroup[] all) => all.Chunk((all.Length + count - 1) / count);
    }

    private static LabelBlock SideBySide(IEnumerable<LabelBlock> blocks, double gap)
    {
        List<LabelMark> marks = [];
        double x = 0, height = 0;
        foreach (var block in blocks)
        {
            marks.AddRange(block.At(x, 0));
            (x, height) = (x + block.WidthMillimetres + gap, Math.Max(height, block.HeightMillimetres));
        }
        return new(x - gap, height, marks);
    }

    // What stands in several languages takes a line for each.
    private static LabelBlock Left(PanelContent content, TextSetter setter)
    {
        var sizes = setter.Sizes;
        const string size = "serving size";
        IEnumerable<LabelBlock> Lines(string text, string part) => text.Split(PanelContent.BetweenLanguages).Where(line => line.Length > 0).Select(line => setter.Line(line, part, sizes.IsBold(part)));
        List<LabelBlock> lines = [.. Lines(content.Title, "title"), .. Lines(content.Servings, "servings")];
        if (content.ServingSizeHead.Length > 0) lines.Add(setter.Line($"{content.ServingSizeHead} {content.ServingSize}", size, sizes.IsBold(size)));
        var energy = content.Lines.Where(line => line.IsEnergy).ToArray();
        var least = lines.Max(line => line.WidthMillimetres);
        var columns = content.HasColumns && energy.Length > 0 ? new BoxColumns(content, setter, energy, least) : null;
        var width = columns?.WidthMillimetres ?? Math.Max(least, energy.Select(line => BoxLines.EnergyWidth(line, setter)).DefaultIfEmpty(0).Max());
        List<LabelBlock> under = columns is null ? [.. energy.Select(line => BoxLines.Energy(line, setter, width))] : [WithRules(LabelBlock.Stack([columns.Heads(), .. energy.Select(columns.Energy)], 0), columns, sizes)];
        if (under.Count > 0) under[0] = Ruled(under[0], width, sizes.BarMillimetres("after servings"));
        return LabelBlock.Stack([.. lines, .. under], 0) with { WidthMillimetres = width };
    }

    private static LabelBlock Nutrients(PanelContent content, PanelLineGroup[] groups, TextSetter setter)
    {
        var sizes = setter.Sizes;
        var amount = content.AmountPer.Length > 0 ? setter.Line(content.AmountPer, "amount per", sizes.IsBold("amount per")) : LabelBlock.Nothing;
        var percent = content.PercentHead.Length > 0 ? setter.Line(content.PercentHead, "percent head", sizes.IsBold("percent head")) : LabelBlock.Nothing;
        var gap = sizes.SpaceMillimetres("column gap");
        var width = Math.Max(amount.WidthMillimetres + gap + percent.WidthMillimetres, groups.SelectMany(group => group.Lines).Max(line => BoxLines.NutrientWidth(line, setter, "nutrient")));
        var body = Hairlined(groups.Select(group => group.Drawn(line => BoxLines.Nutrient(line, setter, width, "nutrient"))), Math.Max(amount.HeightMillimetres, percent.HeightMillimetres), width, sizes);
        return body with { Marks = [.. amount.Marks, .. BoxLines.Right(percent, width).Marks, .. body.Marks] };
    }

    private static LabelBlock Columned(BoxColumns columns, PanelLineGroup[] groups, string part, TextSetter setter, bool hasHeads)
    {
        LabelBlock head = hasHeads ? LabelBlock.Stack([columns.Heads(), columns.PercentHeads()], 0) : LabelBlock.Nothing;
        var body = Hairlined(groups.Select(group => group.Drawn(line => columns.Nutrient(line, part))), head.HeightMillimetres, columns.WidthMillimetres, setter.Sizes);
        return WithRules(body with { Marks = [.. head.Marks, .. body.Marks] }, columns, setter.Sizes);
    }

    private static LabelBlock WithRules(LabelBlock block, BoxColumns columns, TypeSizes sizes) =>
        block with { WidthMillimetres = columns.WidthMillimetres, Marks = [.. block.Marks, .. BoxColumns.Rules(columns.EdgesMillimetres, 0, block.HeightMillimetres, sizes)] };

    // A hairline over every line but one that begins at the top.
    private static LabelBlock Hairlined(IEnumerable<LabelBlock> lines, double top, double width, TypeSizes sizes)
    {
        List<LabelMark> marks = [];
        var y = top;
        foreach (var line in lines)
        {
            if (sizes.BarMillimetres("hairline") is { } hairline && y > 0) marks.Add(new BarMark(0, y - hairline / 2, width, hairline));
            marks.AddRange(line.At(0, y));
            y += line.HeightMillimetres;
        }
        return new(width, y, marks);
    }

    private static IEnumerable<SetRun> VitaminRuns(IReadOnlyList<PanelContentLine> vitamins, TypeSizes sizes) =>
        vitamins.SelectMany((line, at) => (SetRun[])
        [
            .. BoxLines.Runs(line with { Term = line.Term.Replace(' ', '\u00a0') }, sizes, "vitamin"),
            new($"{(line.Percent.Length > 0 ? $"\u00a0{line.Percent}" : "")}{(at < vitamins.Count - 1 ? " \u2022 " : "")}", "vitamin", false),
        ]);

    private static LabelBlock Ruled(LabelBlock block, double width, double? thickness)
    {
        if (thickness is not { } thick) return block;
        var room = Typeface.Kit.PointMillimetres;
        return new(Math.Max(width, block.WidthMillimetres), block.HeightMillimetres + thick + 2 * room, [new BarMark(0, room, width, thick), .. block.At(0, thick + 2 * room)]);
    }
}
