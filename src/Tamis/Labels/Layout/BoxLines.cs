namespace Tamis.Labels;

/// <summary>The lines of a boxed panel.</summary>
internal static class BoxLines
{
    /// <summary>The heading, as wide as the panel where the law wants that.</summary>
    public static LabelBlock Title(PanelContent content, TextSetter setter, double width)
    {
        var isBold = setter.Sizes.IsBold("title");
        var least = setter.Sizes.Size("title").SizeMillimetres;
        var filling = width / Typeface.Kit.WidthMillimetres(TextSetter.Plain(content.Title), 1, isBold);
        return setter.Line(content.Title, "title", isBold, setter.Sizes.Fills("title") ? Math.Max(least, filling) : least);
    }

    /// <summary>How many servings, and how large one is.</summary>
    public static IEnumerable<LabelBlock> Servings(PanelContent content, TextSetter setter, double width)
    {
        const string size = "serving size";
        var sizes = setter.Sizes;
        if (content.Servings.Length > 0) yield return setter.Line(content.Servings, "servings", sizes.IsBold("servings"));
        if (content.ServingSizeHead.Length == 0) yield break;
        var isBold = sizes.IsBold(size);
        if (!sizes.Fills(size)) yield return setter.Line($"{content.ServingSizeHead} {content.ServingSize}", size, isBold);
        else
        {
            var head = setter.Line(content.ServingSizeHead, size, isBold);
            yield return head with { WidthMillimetres = width, Marks = [.. head.Marks, .. Right(setter.Line(content.ServingSize, size, isBold), width).Marks] };
        }
    }

    /// <summary>How wide the line of the serving size is at least, in mm.</summary>
    public static double ServingSizeWidth(PanelContent content, TextSetter setter) =>
        setter.WidthMillimetres($"{content.ServingSizeHead}  {content.ServingSize}", "serving size", setter.Sizes.IsBold("serving size"));

    /// <summary>The energy: its word left, its figure at the right edge, on one base line.</summary>
    public static LabelBlock Energy(PanelContentLine line, TextSetter setter, double width)
    {
        var figure = Right(setter.Line(Figure(line), "energy figure", setter.Sizes.IsBold("energy figure")), width);
        var baseLine = ((TextMark)figure.Marks[0]).BaseLineMillimetres;
        var word = setter.Line(line.Term, "energy", setter.Sizes.IsBold("energy"));
        return new(width, figure.HeightMillimetres, [((TextMark)word.Marks[0]) with { BaseLineMillimetres = baseLine }, .. figure.Marks]);
    }

    /// <summary>How wide the line of the energy is at least, in mm.</summary>
    public static double EnergyWidth(PanelContentLine line, TextSetter setter) =>
        setter.WidthMillimetres($"{line.Term} ", "energy", setter.Sizes.IsBold("energy")) + setter.WidthMillimetres(Figure(line), "energy figure", setter.Sizes.IsBold("energy figure"));

    /// <summary>A nutrient: its word, its amount beside it, its percentage at the right edge.</summary>
    public static LabelBlock Nutrient(PanelContentLine line, TextSetter setter, double width, string part)
    {
        var text = setter.Paragraph(Runs(line, setter.Sizes, part), double.MaxValue);
        List<LabelMark> marks = [.. text.At(IndentMillimetres(line, setter), 0)];
        if (line.Percent.Length > 0) marks.AddRange(Right(setter.Line(line.Percent, part, IsPercentBold(setter.Sizes, part)), width).Marks);
        return new(width, text.HeightMillimetres, marks);
    }

    /// <summary>How wide the line of a nutrient is at least, in mm.</summary>
    public static double NutrientWidth(PanelContentLine line, TextSetter setter, string part) =>
        IndentMillimetres(line, setter) + setter.Paragraph(Runs(line, setter.Sizes, part), double.MaxValue).WidthMillimetres
        + (line.Percent.Length > 0 ? setter.WidthMillimetres($"\u00a0\u00a0{line.Percent}", part, true) : 0);

    /// <summary>How far a line stands in, in mm.</summary>
    public static double IndentMillimetres(PanelContentLine line, TextSetter setter) =>
        line.Indent * setter.Sizes.SpaceMillimetres("indent", setter.Sizes.Size("nutrient").SizeMillimetres);

    /// <summary>A word and its amount, the word in the weight that the law wants.</summary>
    public static IEnumerable<SetRun> Runs(PanelContentLine line, TypeSizes sizes, string part) =>
        [new(line.Term, part, IsTermBold(line, sizes, part)), .. line.Amounts.Take(1).Where(amount => amount.Length > 0).Select(amount => new SetRun($" {amount.Replace(' ', '\u00a0')}", part, false))];

    /// <summary>Whether percentages stand in bold type.</summary>
    public static bool IsPercentBold(TypeSizes sizes, string part) => part == "nutrient" && sizes.IsBold("percent");

    /// <summary>A block at the right edge.</summary>
    public static LabelBlock Right(LabelBlock block, double width) => new(width, block.HeightMillimetres, [.. block.At(width - block.WidthMillimetres, 0)]);

    // The law counts calories: the figure stands without the unit that its word says.
    private static string Figure(PanelContentLine line) => line.Amounts.FirstOrDefault() ?? "";

    /// <summary>Whether the words of a line stand in bold type.</summary>
    public static bool IsTermBold(PanelContentLine line, TypeSizes sizes, string part) => part == "nutrient" && line.Indent == 0 && sizes.IsBold("nutrient");
}
