namespace Tamis.Labels;

/// <summary>Tries the lawful layouts of a label one after the other.</summary>
internal sealed class LabelComposer(LabelContent content)
{
    // How much of the face's width a panel may take beside the text: tried in steps, and the lowest label is kept.
    private const int Steps = 20;

    // Figures of a fraction of a micrometre are sums of rounding, not print outside the face.
    private const double NoWidthMillimetres = 1e-6;

    private readonly LayoutRules _rules = LayoutRules.Of(content.Rules);

    public LabelDrawing Compose()
    {
        List<Candidate> tried = [];
        foreach (var candidate in Candidates())
        {
            tried.Add(candidate);
            if (candidate.Attempt.Fits) break;
        }
        var taken = tried.Find(candidate => candidate.Attempt.Fits) ?? tried.MinBy(candidate => candidate.Attempt.OverWidthMillimetres + candidate.Attempt.OverHeightMillimetres)!;
        return new()
        {
            Content = content,
            Layout = taken.Attempt,
            Attempts = [.. tried.Select(candidate => candidate.Attempt)],
            Marks = taken.Marks,
            Sizes = [.. taken.Sizes.Used],
            ContrastRule = _rules.Rows.FirstOrDefault(row => Names.Same(row.Rule, "contrast")),
            Remarks = [.. Remarks(taken)],
        };
    }

    private IEnumerable<Candidate> Candidates()
    {
        var forms = content.Panel is null ? [] : _rules.FormsFor(content.Pack, content.NetGrams);
        // What is told of one's own accord takes no room from what must be told: it goes before the form does.
        foreach (var form in forms)
            foreach (var panel in PanelsOf(form))
            {
                if (HasText) yield return Beside(form, panel);
                yield return Under(form, panel);
            }
        if (content.Panel is null || HasText && (forms is [] || PanelExemption is not null)) yield return TextAlone();
    }

    // A form that may not carry all columns is tried with those that it may, and only where the law asks for no more there.
    private IEnumerable<PanelContent> PanelsOf(LayoutForm form) =>
        new[] { content.Panel, content.ShortPanel, SecondColumnExemption(form) is null ? null : content.ServingPanel }.OfType<PanelContent>().Where(form.Carries);

    private LayoutRule? SecondColumnExemption(LayoutForm? form) => form is null ? null : _rules.Exemption(LayoutRules.SecondColumn, content.Pack, content.NetGrams, form.Name);

    private bool HasText => content.Languages.Count > 0 || content.NetQuantity.Length > 0;

    private bool StandsElsewhere => content is { Panel: null, Face: not null, WhyNoPanel: null };

    private LayoutRule? PanelExemption => _rules.Exemption("panel", content.Pack, content.NetGrams);

    // The text may go on under the panel: each block stands wholly in one of the two columns, and the lowest label is kept.
    private Candidate Beside(LayoutForm form, PanelContent words)
    {
        var setter = SetterFor(form);
        var (room, gap, apart) = (Room(setter.Sizes), setter.Sizes.SpaceMillimetres("gap"), setter.Sizes.SpaceMillimetres("panel gap"));
        var least = setter.Sizes.SpaceMillimetres("least column");
        LabelBlock? best = null;
        foreach (var step in Enumerable.Range(1, Steps - 1))
        {
            var panel = PanelBlocks.Draw(form.Drawing, words, setter, room * step / Steps);
            var right = TextBlocks(setter, Math.Max(least, room - panel.WidthMillimetres - apart));
            var left = TextBlocks(setter, panel.WidthMillimetres);
            for (var count = 1; count <= right.Count; count++)
            {
                var (first, second) = (LabelBlock.Stack([panel, .. left.Skip(count)], gap), LabelBlock.Stack(right.Take(count), gap));
                var x = Math.Max(first.WidthMillimetres, panel.WidthMillimetres) + apart;
                LabelBlock both = new(x + Math.Max(second.WidthMillimetres, least), Math.Max(first.HeightMillimetres, second.HeightMillimetres), [.. second.At(x, 0), .. first.Marks]);
                if (best is null || (Over(both.WidthMillimetres - room), both.HeightMillimetres).CompareTo((Over(best.WidthMillimetres - room), best.HeightMillimetres)) < 0) best = both;
            }
        }
        return Placed(form, LabelArrangement.Beside, form.Origin, best!, setter.Sizes, words);
    }

    private Candidate Under(LayoutForm form, PanelContent words)
    {
        var setter = SetterFor(form);
        var room = Room(setter.Sizes);
        var block = LabelBlock.Stack([TextBlock(setter, room), PanelBlocks.Draw(form.Drawing, words, setter, room)], setter.Sizes.SpaceMillimetres("gap"));
        return Placed(form, HasText ? LabelArrangement.Under : LabelArrangement.PanelAlone, form.Origin, block, setter.Sizes, words);
    }

    private Candidate TextAlone()
    {
        var setter = SetterFor(null);
        var why = StandsElsewhere ? new("sheets", "", RuleStrength.Policy, false, "the panel stands on another face")
            : PanelExemption?.Origin ?? new("sheets", "", RuleStrength.Policy, false, content.WhyNoPanel ?? "no panel is asked for");
        return Placed(null, content.Panel is null ? LabelArrangement.TextAlone : LabelArrangement.WithoutPanel, why, TextBlock(setter, Room(setter.Sizes)), setter.Sizes);
    }

    private TextSetter SetterFor(LayoutForm? form) => new(new TypeSizes(_rules, content.Pack, content.NetGrams, form?.Name ?? ""));

    private double Room(TypeSizes sizes) => content.Pack.FaceWidthMillimetres - 2 * sizes.SpaceMillimetres("margin");

    private LabelBlock TextBlock(TextSetter setter, double width) => LabelBlock.Stack(TextBlocks(setter, width), setter.Sizes.SpaceMillimetres("gap"));

    // The languages one under the other, then the net quantity, which needs no language.
    private List<LabelBlock> TextBlocks(TextSetter setter, double width)
    {
        var isListLeftOff = _rules.Exemption("list", content.Pack, content.NetGrams) is not null;
        List<LabelBlock> blocks = [];
        foreach (var language in content.Languages)
        {
            var paragraphs = language.Paragraphs.Where(paragraph => paragraph.Runs.Count > 0 && !(isListLeftOff && Names.Same(paragraph.Part, "list")))
                .Select(paragraph => setter.Paragraph(paragraph.Runs.Select(run => new SetRun(run.Text, paragraph.Part, run.IsEmphasised || setter.Sizes.IsBold(paragraph.Part), language.Language)), width));
            blocks.Add(LabelBlock.Stack(paragraphs, 0));
        }
        if (content.NetQuantity.Length > 0) blocks.Add(setter.Line(content.NetQuantity, "net quantity", setter.Sizes.IsBold("net quantity")));
        return blocks;
    }

    private Candidate Placed(LayoutForm? form, LabelArrangement arrangement, RuleOrigin why, LabelBlock block, TypeSizes sizes, PanelContent? words = null)
    {
        var margin = sizes.SpaceMillimetres("margin");
        var (width, height) = (block.WidthMillimetres + 2 * margin, block.HeightMillimetres + 2 * margin);
        LayoutAttempt attempt = new(form, arrangement, why, width, height, Over(width - content.Pack.FaceWidthMillimetres), Over(height - content.Pack.FaceHeightMillimetres)) 
        {
            IsShort = words is not null && ReferenceEquals(words, content.ShortPanel),
            IsWithoutSecondColumn = words is not null && ReferenceEquals(words, content.ServingPanel),
        };
        return new(attempt, [.. block.At(margin, margin)], sizes);
    }

    private static double Over(double millimetres) => millimetres > NoWidthMillimetres ? millimetres : 0;

    private IEnumerable<string> Remarks(Candidate taken)
    {
        if (content.Day is { } day) yield return $"Drawn up by the rules as of {day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}.";
        if (!content.Pack.IsBox) yield return "The sides of the pack are not known: write box_mm in dessert.csv. A square of the area stands for its face, and no other face is counted.";
        if (content.Pack.IsBox && content.Face is null && taken.Attempt.Form is { } form && form != _rules.FormsFor(content.Pack, content.NetGrams)[0])
            yield return "Only the largest face is drawn: where another face has room, a form that comes before this one may stand there (rows 'face' in dessert.csv).";
        if (taken.Attempt.IsShort) yield return "Columns and percentages that the law does not ask for are left off: they may not take the room of what it asks for.";
        if (taken.Attempt.IsWithoutSecondColumn && SecondColumnExemption(taken.Attempt.Form) is { } column) yield return $"The second column is left off, as the law asks for none in this form: {column.Origin}.";
        if (content.WhyNoPanel is { } none) yield return $"The nutrition panel is a draft and is left off: {none}.";
        if (PanelExemption is { } panel && !StandsElsewhere) yield return $"The law lets the panel be left off a pack like this: {panel.Origin}.";
        if (_rules.Exemption("list", content.Pack, content.NetGrams) is { } list) yield return $"The list of ingredients is left off and given by other means: {list.Origin}.";
        foreach (var remark in _rules.Remarks) yield return $"{remark.Part}: {remark.Origin.Note} ({remark.Origin}).";
        string[] unknown = [.. taken.Marks.OfType<TextMark>().SelectMany(mark => mark.Text.EnumerateRunes()).Where(rune => !Typeface.Kit.Knows(rune.ToString())).Select(rune => rune.ToString()).Distinct()];
        if (unknown.Length > 0) yield return $"The width of these characters is not known and was taken to be a whole type size: {string.Join(" ", unknown)}.";
    }

    private sealed record Candidate(LayoutAttempt Attempt, IReadOnlyList<LabelMark> Marks, TypeSizes Sizes);
}
