namespace Tamis.Labels;

/// <summary>The lines of a boxed panel with several columns: words, then for each column its amount and its percentage, all columns alike in width and type.</summary>
internal sealed class BoxColumns
{
    private const string Head = "column head";

    private readonly PanelContent _content;
    private readonly TextSetter _setter;
    private readonly double _pad;

    // Set where the columns are wider than their words need.
    private readonly double _spare;

    /// <param name="content">The panel.</param>
    /// <param name="setter">Sets its text.</param>
    /// <param name="lines">The lines whose words and figures must find room.</param>
    /// <param name="widthMillimetres">How wide the lines are at least.</param>
    public BoxColumns(PanelContent content, TextSetter setter, IReadOnlyList<PanelContentLine> lines, double widthMillimetres = 0)
    {
        (_content, _setter, _pad) = (content, setter, setter.Sizes.SpaceMillimetres("column gap") / 2);
        TermMillimetres = lines.Max(TermWidth) + _pad;
        CellMillimetres = Math.Max(lines.Max(CellWidth), Math.Max(content.ColumnHeads.Max(head => HeadLines(head).Max(line => Width(line, Head))), HeadLines(content.ColumnPercentHead).Max(line => Width(line, "percent head")))) + 2 * _pad;
        _spare = Math.Max(0, widthMillimetres - WidthMillimetres);
    }

    /// <summary>The room of the words, in mm.</summary>
    public double TermMillimetres { get; }

    /// <summary>The room of each column, in mm.</summary>
    public double CellMillimetres { get; }

    /// <summary>How wide the lines are, in mm: the last column ends with its figures, as that of a single one does.</summary>
    public double WidthMillimetres => _spare + TermMillimetres + CellMillimetres * _content.ColumnHeads.Count - _pad;

    /// <summary>Where each column begins, in mm: a rule stands there.</summary>
    public IEnumerable<double> EdgesMillimetres => Enumerable.Range(0, _content.ColumnHeads.Count).Select(Edge);

    /// <summary>The heads of the columns.</summary>
    public LabelBlock Heads() => Each(at => Stacked(_content.ColumnHeads[at], Head));

    /// <summary>The heads of the percentages, one in each column; nothing where there are none.</summary>
    public LabelBlock PercentHeads() => _content.ColumnPercentHead.Length == 0 ? LabelBlock.Nothing : Each(_ => Stacked(_content.ColumnPercentHead, "percent head"));

    /// <summary>The energy: its word at the left, a figure in each column, on one base line.</summary>
    public LabelBlock Energy(PanelContentLine line)
    {
        var figures = Each(at => _setter.Line(Amount(line, at), "energy figure", _setter.Sizes.IsBold("energy figure")));
        var word = (TextMark)_setter.Line(line.Term, "energy", _setter.Sizes.IsBold("energy")).Marks[0];
        return figures with { Marks = [word with { BaseLineMillimetres = ((TextMark)figures.Marks[0]).BaseLineMillimetres }, .. figures.Marks] };
    }

    /// <summary>A nutrient: its word, and in each column the amount at the left and the percentage at the right.</summary>
    public LabelBlock Nutrient(PanelContentLine line, string part)
    {
        var word = _setter.Line(line.Term, part, BoxLines.IsTermBold(line, _setter.Sizes, part));
        List<LabelMark> marks = [.. word.At(BoxLines.IndentMillimetres(line, _setter), 0)];
        for (var at = 0; at < _content.ColumnHeads.Count; at++)
        {
            if (Amount(line, at) is { Length: > 0 } amount) marks.AddRange(_setter.Line(amount, part, false).At(Edge(at) + _pad, 0));
            if (Percent(line, at) is { Length: > 0 } percent) marks.AddRange(AtEnd(_setter.Line(percent, part, BoxLines.IsPercentBold(_setter.Sizes, part)), at));
        }
        return new(WidthMillimetres, word.HeightMillimetres, marks);
    }

    /// <summary>Upright rules at the edges of columns, in mm; none where the form has none.</summary>
    public static IEnumerable<LabelMark> Rules(IEnumerable<double> edges, double top, double bottom, TypeSizes sizes) =>
        sizes.BarMillimetres("column rule") is { } thickness ? edges.Select(x => new BarMark(x - thickness / 2, top, thickness, bottom - top)) : [];

    // Each language has a line of its own: a column is no wider than its figures need.
    private static string[] HeadLines(string head) => head.Split(PanelContent.BetweenLanguages);

    private LabelBlock Stacked(string head, string part)
    {
        LabelBlock[] lines = [.. HeadLines(head).Select(line => _setter.Line(line, part, _setter.Sizes.IsBold(part)))];
        var width = lines.Max(line => line.WidthMillimetres);
        return LabelBlock.Stack(lines.Select(line => BoxLines.Right(line, width)), 0);
    }

    private LabelBlock Each(Func<int, LabelBlock> make)
    {
        LabelBlock[] blocks = [.. Enumerable.Range(0, _content.ColumnHeads.Count).Select(make)];
        return new(WidthMillimetres, blocks.Max(block => block.HeightMillimetres), [.. blocks.SelectMany(AtEnd)]);
    }

    private IEnumerable<LabelMark> AtEnd(LabelBlock block, int column) => block.At(Edge(column) + CellMillimetres - _pad - block.WidthMillimetres, 0);

    private double Edge(int column) => _spare + TermMillimetres + CellMillimetres * column;

    private double TermWidth(PanelContentLine line) => line.IsEnergy ? Width(line.Term, "energy")
        : BoxLines.IndentMillimetres(line, _setter) + _setter.WidthMillimetres(line.Term, PartOf(line), BoxLines.IsTermBold(line, _setter.Sizes, PartOf(line)));

    private double CellWidth(PanelContentLine line) => Enumerable.Range(0, _content.ColumnHeads.Count).Max(at => line.IsEnergy ? Width(Amount(line, at), "energy figure")
        : _setter.WidthMillimetres(Amount(line, at), PartOf(line), false) + (Percent(line, at) is { Length: > 0 } percent ? _setter.WidthMillimetres($"\u00a0\u00a0{percent}", PartOf(line), true) : 0));

    private string PartOf(PanelContentLine line) => PanelBlocks.Vitamins(_content, _setter.Sizes).Contains(line) ? "vitamin" : "nutrient";

    private double Width(string text, string part) => _setter.WidthMillimetres(text, part, _setter.Sizes.IsBold(part));

    private static string Amount(PanelContentLine line, int column) => (line.Amounts.ElementAtOrDefault(column) ?? "").Replace(' ', '\u00a0');

    private static string Percent(PanelContentLine line, int column) => line.Percents.ElementAtOrDefault(column) ?? "";
}
