using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Every trial of a tasting against its control on every scale, with intervals that hold for all pairs of a scale.</summary>
    public static Html Differences(Dessert dessert, string tasting)
    {
        var (_, session) = SessionOf(dessert, tasting);
        var fitted = dessert.ReportOf(tasting).Scales.Where(scale => scale.WhyNot.Length == 0 && scale.Pairs.Count > 0).ToArray();
        if (fitted.Length == 0) return Html.Empty;
        var control = session.Control ?? fitted[0].Means[0].Trial;
        var byTrial = fitted.SelectMany(scale => scale.Pairs.Select(pair => (scale, pair: Names.Same(pair.Trial, control) ? pair.Turned : pair)))
            .Where(each => Names.Same(each.pair.Against, control) && each.pair.Verdict != Tasting.Verdict.TooFew).GroupBy(each => each.pair.Trial).OrderBy(group => TrialOrder(dessert, group.Key)).ToArray();
        if (byTrial.Length == 0) return Html.Empty;
        var axis = DotPanel.AxisAround(byTrial.SelectMany(group => group).Select(each => new DotRow("", each.pair.Points, each.pair.Range)));
        DotPanel[] panels = [.. byTrial.Select(group => new DotPanel(TitleOf(dessert, group.Key, control),
            [.. group.OrderBy(each => each.scale.Attribute.Kind == AttributeKind.Liking ? 0 : 1).Select(each => new DotRow(each.scale.Attribute.Name, each.pair.Points, each.pair.Range))], axis)
        { DifferenceFrom = control, Description = $"{group.Key} less {control} on {group.Count()} scales, with intervals." })];
        return DotsWithIntervals.Of(panels, Html.Of($"Points, less and more than {control}. {EvenedOut(fitted)} The line is the 95 % interval, wide enough for all pairs of trials of a scale together. <b>Filled dot:</b> the interval leaves zero. <b>Hollow dot:</b> it does not, which is not the same as no difference.")).ToHtml();
    }

    /// <summary>Where the spread of the marks of a tasting comes from, in words, and whether place or what came before moved them.</summary>
    public static Html Spread(Dessert dessert, string tasting)
    {
        var fitted = dessert.ReportOf(tasting).Scales.Where(scale => scale.Spread.Count > 0).ToArray();
        if (fitted.Length == 0) return Html.Empty;
        SpreadFrom[] from = [.. fitted.SelectMany(scale => scale.Spread).Select(part => part.From).Distinct().Order()];
        var table = new DataTable("Where the spread of the marks comes from",
            [Column.Words("Scale"), .. from.Select(each => Column.Numbers(Word(each), "%")), Column.Numbers("plate to plate", "points"), Column.Numbers("a place later", "points"), Column.Numbers("95 % interval")],
            [.. fitted.Select(scale => new Row([scale.Attribute.Name,
                .. from.Select(each => scale.Spread.FirstOrDefault(part => part.From == each) is { } part ? (Cell)Figures.WholeShare(part.Share).WithoutUnit() : Num.Said("")),
                Figures.Score(scale.PlatePoints), .. Later(scale)]))])
        { IsWide = true, LeastRem = 40 };
        var moved = fitted.Where(scale => scale.LaterPlace is { } later && new Difference(later.Points, later.Range).Finding is Finding.Gain or Finding.Loss).ToArray();
        var carried = fitted.Where(scale => scale.CarryOverP < TastingPolicy.Kit.FalseAlarmShare / fitted.Length).ToArray();
        List<Html> said = [Html.Of($"Of the spread of {fitted[^1].Attribute.Name} that the trials do not explain, {InWords(fitted[^1])}.")];
        var levels = fitted.Where(scale => scale.AssessorsP < TastingPolicy.Kit.FalseAlarmShare / fitted.Length).Select(scale => scale.Attribute.Name).ToArray();
        if (levels.Length > 0) said.Add(Html.Of($"That people use a scale at different heights is more than chance in {(levels.Length == fitted.Length && levels.Length > 1 ? "every scale" : AndAll(levels))}; it is taken out of every comparison."));
        if (moved.Length > 0)
            said.Add(Html.Of($"Later plates were scored otherwise: {string.Join("; ", moved.Select(scale => $"{scale.Attribute.Name} {Figures.Difference(scale.LaterPlace!.Value.Points, 1).Text} a place"))}. The differences above are with places evened out."));
        if (carried.Length > 0) said.Add(Html.Of($"What came straight before left its mark on {AndAll(carried.Select(scale => scale.Attribute.Name))}: give more water, bread and time between plates. {(carried.All(scale => scale.CarryOver.Standing == CarryOverStanding.EvenedOut) ? "It is evened out of the differences above." : "It is still in the differences above, so read those with care.")}"));
        var silent = fitted.Where(scale => scale.Spread.Any(part => part is { From: SpreadFrom.Assessor, Share: 0 })).ToArray();
        if (silent.Length > 0) said.Add(Html.Of($"In {AndAll(silent.Select(scale => scale.Attribute.Name))} assessors differ no more than plates do, so nobody has a scale of his own there."));
        return Notes.Folded("How the marks spread", Notes.Paragraph(Html.Join(said, " ")) + table.ToHtml());
    }

    /// <summary>What means and differences are evened out for, scale by scale where scales differ in it.</summary>
    internal static string EvenedOut(IReadOnlyList<ScaleModel> scales)
    {
        var alike = scales.GroupBy(scale => scale.CarryOver.Standing).OrderByDescending(group => group.Count()).ToArray();
        return string.Join(" ", alike.Select(group => (alike.Length == 1 ? "" : $"{Capital(AndAll(group.Select(scale => scale.Attribute.Name)))}: ") + (group.Key switch
        {
            CarryOverStanding.EvenedOut => "The place in the order of tasting and what was tasted just before are evened out.",
            CarryOverStanding.CostsTooMuch => $"The place in the order of tasting is evened out; what was tasted just before is not, because in this order of serving that would make the intervals wider by {Figures.WholeShare(group.Max(scale => scale.CarryOver.WiderShare!.Value)).Text}.",
            CarryOverStanding.CannotBeTold => "The place in the order of tasting is evened out; what was tasted just before cannot be, because in this order of serving nothing tells what a trial leaves behind from what it is.",
            _ => "Nothing is evened out for the order of tasting, which is not known.",
        })));
    }

    private static Cell[] Later(ScaleModel scale) => scale.LaterPlace is { } later
        ? [Figures.Difference(later.Points, 1), Num.Said(new Difference(later.Points, later.Range).Shown(Figures).Range)] : [Num.Said(""), Num.Said("")];

    private static string InWords(ScaleModel scale) => AndAll(scale.Spread.Where(part => part.Share > 0.005).Select(part => $"{Figures.WholeShare(part.Share).Text} {Long(part.From)}"));

    private static string Word(SpreadFrom from) => from switch
    {
        SpreadFrom.Assessor => "assessors",
        SpreadFrom.AssessorInTrial => "assessors in single trials",
        SpreadFrom.AssessorOnTheDay => "assessors on the day",
        SpreadFrom.Make => "makes",
        _ => "plates",
    };

    private static string Long(SpreadFrom from) => from switch
    {
        SpreadFrom.Assessor => "is between assessors (some use the top of the scale, some the bottom)",
        SpreadFrom.AssessorInTrial => "is what single assessors find in single trials and find again",
        SpreadFrom.AssessorOnTheDay => "is between days of the same assessor",
        SpreadFrom.Make => "is between makes of one trial",
        _ => "is from plate to plate",
    };

    private static string AndAll(IEnumerable<string> names) => names.ToArray() is var all && all.Length > 1 ? $"{string.Join(", ", all[..^1])} and {all[^1]}" : string.Concat(all);

    private static int TrialOrder(Dessert dessert, string trial) => dessert.Batches.Select((batch, at) => (batch, at)).FirstOrDefault(each => Names.Same(each.batch.Trial, trial)).at;

    private static string TitleOf(Dessert dessert, string trial, string control) =>
        dessert.Steps.FirstOrDefault(step => Names.Same(step.To.Name, trial) && Names.Same(step.From.Name, control)) is { } step ? $"{trial}: {ChangesInWords(step).ToPlainText()}" : $"{trial} beside {control}";
}
