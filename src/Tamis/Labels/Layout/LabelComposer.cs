namespace Tamis.Labels;

/// <summary>Tries the lawful layouts of a label one after the other.</summary>
internal sealed class LabelComposer(LabelContent content)
{
    // How much of the face's width a panel may take beside the text: tried in steps, and the lowest label is kept.
    private const int Steps = 20;

    private const string List = "list";

    // Figures of a fraction of a micrometre are sums of rounding, not print outside the face.
    private const double NoWidthMillimetres = 1e-6;

    private readonly LayoutRules _rules = LayoutRules.Of(content.Rules);

    private readonly PackSymbol? _symbol = content.Symbol is { } symbol ? PackSymbol.Of(content.Rules, symbol.Named, content.Pack) : null;

    public LabelDrawing Compose()
    {
        List<Candidate> tried = [];
        foreach (var candidate in AllCandidates())
        {
            tried.Add(candidate);
            if (candidate.Attempt.Fits) break;
        }
        var taken = tried.Find(candidate => candidate.Attempt.Fits) is { } fitting ? WithWhatFitsAgain(fitting, tried) : tried.MinBy(candidate => candidate.Attempt.OverWidthMillimetres + candidate.Attempt.OverHeightMillimetres)!;
        return new()
        {
            Content = content,
            Layout = taken.Attempt,
            Attempts = [.. tried.Select(candidate => candidate.Attempt)],
            Marks = taken.Marks,
            Sizes = [.. taken.Sizes.Used],
            ContrastRule = _rules.Rows.FirstOrDefault(row => Names.Same(row.Rule, "contrast")),
            Remarks = [.. Remarks(taken)],
            SymbolPlace = Kept(taken.Sizes)?.Symbol,
            SymbolProblem = Kept(taken.Sizes)?.Problem,
        };
    }

    private KeptPlace? Kept(TypeSizes sizes) => _symbol?.Space is { } space ? new(_symbol.Figure, space, content.Pack, sizes) : null;

    private IReadOnlyList<PrintRegion> Regions(TypeSizes sizes) => Kept(sizes) is { } kept ? [.. kept.Regions] : [new(0, 0, Room(sizes), "")];

    // All that is told stands on the face where any layout holds it; then one particular after the other goes that the law lets go, in the order of the rules.
    private IEnumerable<Candidate> AllCandidates()
    {
        var mayGo = _rules.Rows.Where(row => content.Languages.SelectMany(language => language.Paragraphs).Any(paragraph => IsOf(paragraph, row)) && ReferenceEquals(_rules.Exemption(row.Part, content.Pack, content.NetGrams), row)).ToArray();
        return Enumerable.Range(0, mayGo.Length + 1).SelectMany(count => CandidatesWithout(mayGo[..count]));
    }

    // What went first may be shorter than what went last: what has room again once that is gone stands again.
    private Candidate WithWhatFitsAgain(Candidate fitting, List<Candidate> tried)
    {
        var taken = fitting;
        foreach (var rule in fitting.Attempt.LeftOff.SkipLast(1).Reverse())
        {
            Candidate[] again = [.. CandidatesWithout([.. taken.Attempt.LeftOff.Where(each => each != rule)])];
            tried.AddRange(again);
            taken = Array.Find(again, candidate => candidate.Attempt.Fits) ?? taken;
        }
        return taken;
    }

    private IEnumerable<Candidate> CandidatesWithout(LayoutRule[] leftOff) => leftOff is [] ? Candidates()
        : new LabelComposer(content with
        {
            Languages = [.. content.Languages.Select(language => language with { Paragraphs = [.. language.Paragraphs.Where(paragraph => !Array.Exists(leftOff, rule => IsOf(paragraph, rule)))] }).Where(language => language.Paragraphs.Count > 0)],
        }).Candidates().Where(candidate => candidate.Attempt.Form is null || PanelExemption is null).Select(candidate => candidate with { Attempt = candidate.Attempt with { LeftOff = leftOff } });

    private static bool IsOf(LabelParagraph paragraph, LayoutRule rule) => paragraph.Particular.Length > 0 && Names.Same(paragraph.Particular, rule.Part);

    private IEnumerable<Candidate> Candidates()
    {
        var forms = content.Panel is null ? [] : _rules.FormsFor(content.Pack, content.NetGrams);
        // What is told of one's own accord takes no room from what must be told: it goes before the form does.
        foreach (var form in forms)
            foreach (var panel in PanelsOf(form).Where(panel => HasNoRoomBefore(form, panel)))
            {
                var setter = SetterFor(form);
                foreach (var region in HasText ? Regions(setter.Sizes) : []) yield return Beside(form, panel, setter, region);
                foreach (var region in Regions(setter.Sizes)) yield return Under(form, panel, setter, region);
            }
        if (content.Panel is null || HasText && (forms is [] || PanelExemption is not null))
        {
            var setter = SetterFor(null);
            foreach (var region in Regions(setter.Sizes)) yield return TextAlone(setter, region);
        }
    }

    // A form that may not carry all columns is tried with those that it may, and only where the law asks for no more there.
    private IEnumerable<PanelContent> PanelsOf(LayoutForm form) =>
        new[] { content.Panel, content.ShortPanel, SecondColumnExemption(form) is null ? null : content.ServingPanel }.OfType<PanelContent>().Where(form.Carries);

    // Some forms are lawful only where the panel of another one, whatever stands beside it, is higher than the face.
    private bool HasNoRoomBefore(LayoutForm form, PanelContent panel)
    {
        if (_rules.TooHighBefore(form, content.Pack, content.NetGrams) is not { } before) return true;
        var setter = SetterFor(before);
        return Over(Panel(before, panel, setter, Room(setter.Sizes)).HeightMillimetres + 2 * setter.Sizes.SpaceMillimetres("margin") - content.Pack.FaceHeightMillimetres) > 0;
    }

    private LayoutRule? SecondColumnExemption(LayoutForm? form) => form is null ? null : _rules.Exemption(LayoutRules.SecondColumn, content.Pack, content.NetGrams, form.Name);

    private bool HasText => content.Languages.Count > 0 || content.NetQuantity.Length > 0;

    private bool StandsElsewhere => content is { Panel: null, Face: not null, WhyNoPanel: null };

    private LayoutRule? PanelExemption => _rules.Exemption("panel", content.Pack, content.NetGrams);

    // The text may go on under the panel: each block stands wholly in one of the two columns, and the lowest label is kept.
    private Candidate Beside(LayoutForm form, PanelContent words, TextSetter setter, PrintRegion region)
    {
        var (room, gap, apart) = (region.WidthMillimetres, setter.Sizes.SpaceMillimetres("gap"), setter.Sizes.SpaceMillimetres("panel gap"));
        var least = setter.Sizes.SpaceMillimetres("least column");
        LabelBlock? best = null;
        foreach (var step in Enumerable.Range(1, Steps - 1))
        {
            var panel = Panel(form, words, setter, room * step / Steps);
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
        return Placed(form, LabelArrangement.Beside, form.Origin, best!, setter, region, words);
    }

    private Candidate Under(LayoutForm form, PanelContent words, TextSetter setter, PrintRegion region)
    {
        var room = region.WidthMillimetres;
        var block = LabelBlock.Stack([TextBlock(setter, room), Panel(form, words, setter, room)], setter.Sizes.SpaceMillimetres("gap"));
        return Placed(form, HasText ? LabelArrangement.Under : LabelArrangement.PanelAlone, form.Origin, block, setter, region, words);
    }

    private Candidate TextAlone(TextSetter setter, PrintRegion region)
    {
        var why = StandsElsewhere ? new("sheets", "", RuleStrength.Policy, false, "the panel stands on another face")
            : PanelExemption?.Origin ?? new("sheets", "", RuleStrength.Policy, false, content.WhyNoPanel ?? "no panel is asked for");
        return Placed(null, content.Panel is null ? LabelArrangement.TextAlone : LabelArrangement.WithoutPanel, why, TextBlock(setter, region.WidthMillimetres), setter, region);
    }

    private TextSetter SetterFor(LayoutForm? form) => new(new TypeSizes(_rules, content.Pack, content.NetGrams, form?.Name ?? ""));

    private double Room(TypeSizes sizes) => content.Pack.FaceWidthMillimetres - 2 * sizes.SpaceMillimetres("margin");

    private LabelBlock Panel(LayoutForm form, PanelContent words, TextSetter setter, double width) =>
        PanelBlocks.Draw(form.Drawing, words, setter, width).In(setter.Sizes.ColoursOf("panel", content.Colours));

    private LabelBlock TextBlock(TextSetter setter, double width) => LabelBlock.Stack(TextBlocks(setter, width), setter.Sizes.SpaceMillimetres("gap"));

    // The languages one under the other, then the net quantity, which needs no language.
    private List<LabelBlock> TextBlocks(TextSetter setter, double width)
    {
        var isListLeftOff = _rules.Exemption(List, content.Pack, content.NetGrams) is not null;
        List<LabelBlock> blocks = [];
        foreach (var language in content.Languages)
        {
            List<LabelBlock> parts = [];
            List<LabelParagraph> list = [];
            foreach (var paragraph in language.Paragraphs.Where(paragraph => paragraph.Runs.Count > 0 && !(isListLeftOff && Names.Same(paragraph.Part, List))))
            {
                if (Names.Same(paragraph.StandsWith, List)) list.Add(paragraph);
                else
                {
                    EndList();
                    parts.Add(Paragraph(paragraph, width));
                }
            }
            EndList();
            blocks.Add(LabelBlock.Stack(parts, 0));

            // The list and the statements that follow it are shown in one manner, with nothing between them.
            void EndList()
            {
                if (list.Count > 0) parts.Add(Boxed(list, width));
                list = [];
            }

            LabelBlock Boxed(IReadOnlyList<LabelParagraph> paragraphs, double room)
            {
                var line = setter.Sizes.BarMillimetres(List);
                var edge = line is { } bar ? bar + setter.Sizes.PadOf(List) : 0;
                var block = LabelBlock.Stack(paragraphs.Select(paragraph => Paragraph(paragraph, room - 2 * edge)), 0);
                if (line is { } thickness) block = (block with { WidthMillimetres = Math.Max(block.WidthMillimetres, room - 2 * edge) }).Framed(thickness, setter.Sizes.PadOf(List));
                block = block.In(setter.Sizes.ColoursOf(List, content.Colours));
                // What stands under a box keeps as far from it as what stands within.
                return line is null ? block : block with { HeightMillimetres = block.HeightMillimetres + setter.Sizes.PadOf(List) };
            }

            LabelBlock Paragraph(LabelParagraph paragraph, double room) =>
                setter.Paragraph(paragraph.Runs.Select(run => new SetRun(run.Text, paragraph.Part, run.IsEmphasised || setter.Sizes.IsBold(paragraph.Part), language.Language)), room);
        }
        if (content.NetQuantity.Length > 0) blocks.Add(setter.Line(content.NetQuantity, "net quantity", setter.Sizes.IsBold("net quantity")));
        return blocks;
    }

    private Candidate Placed(LayoutForm? form, LabelArrangement arrangement, RuleOrigin why, LabelBlock block, TextSetter setter, PrintRegion region, PanelContent? words = null)
    {
        var margin = setter.Sizes.SpaceMillimetres("margin");
        var kept = Kept(setter.Sizes);
        var (wide, high) = kept?.Whole(region, block) ?? (block.WidthMillimetres, block.HeightMillimetres);
        var (width, height) = (wide + 2 * margin, high + 2 * margin);
        LayoutAttempt attempt = new(form, arrangement, why, width, height, Over(width - content.Pack.FaceWidthMillimetres), Over(height - content.Pack.FaceHeightMillimetres)) 
        {
            BesideSymbol = region.Words,
            IsShort = words is not null && ReferenceEquals(words, content.ShortPanel),
            IsWithoutSecondColumn = words is not null && ReferenceEquals(words, content.ServingPanel),
        };
        // Where the artwork is at hand the place stays blank for it.
        var place = kept is not null && content.Symbol is { HasArtwork: false } ? kept.Marks(setter, region.TopMillimetres > 0 ? 0 : attempt.OverWidthMillimetres) : [];
        return new(attempt, [.. block.At(margin + region.LeftMillimetres, margin + region.TopMillimetres), .. place], setter.Sizes);
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
        if (Kept(taken.Sizes) is { } kept) yield return kept.Remark;
        else if (_symbol is not null) yield return $"No place is kept for symbol {_symbol.Figure}: front-of-pack-symbol.csv of the rules does not give its size on a front of this size. Leave room for it on {_symbol.Place}.";
        if (content.WhyNoPanel is { } none) yield return $"The nutrition panel is a draft and is left off: {none}.";
        if (PanelExemption is { } panel && !StandsElsewhere) yield return $"The law lets the panel be left off a pack like this: {panel.Origin}.";
        if (_rules.Exemption(List, content.Pack, content.NetGrams) is { } list) yield return $"The list of ingredients is left off and given by other means: {list.Origin}.";
        foreach (var rule in taken.Attempt.LeftOff) yield return $"Left off, as no layout has room for it, and given by other means: the {rule.Value} ({rule.Origin}{(rule.Origin.Note.Length > 0 ? $"; {rule.Origin.Note}" : "")}).";
        foreach (var remark in content.Remarks) yield return remark;
        foreach (var remark in _rules.RemarksOn(taken.Attempt.Form?.Name ?? "", content.Pack, content.NetGrams)) yield return $"{remark.Part}: {remark.Origin.Note} ({remark.Origin}).";
        string[] unknown = [.. taken.Marks.OfType<TextMark>().SelectMany(mark => mark.Text.EnumerateRunes()).Where(rune => !Typeface.Kit.Knows(rune.ToString())).Select(rune => rune.ToString()).Distinct()];
        if (unknown.Length > 0) yield return $"The width of these characters is not known and was taken to be a whole type size: {string.Join(" ", unknown)}.";
    }

    private sealed record Candidate(LayoutAttempt Attempt, IReadOnlyList<LabelMark> Marks, TypeSizes Sizes);
}
