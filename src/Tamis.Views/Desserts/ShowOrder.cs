using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What the marks of a tasting say if they are taken for an order and nothing more, beside what their points say, and what it means where the two disagree.</summary>
    public static Html OrderAlone(Dessert dessert, string tasting)
    {
        var (log, session) = SessionOf(dessert, tasting);
        var policy = TastingPolicy.Kit;
        var read = log.Attributes.Where(attribute => OrderModel.IsFor(attribute) && log.Asked(session.Name, attribute)).Select(attribute => (
            Order: OrderModel.Of(log, session, attribute, policy),
            Points: dessert.ReportOf(tasting).Scales.FirstOrDefault(scale => scale.Attribute == attribute) ?? ScaleModel.Of(log, session, attribute, policy))).ToArray();
        var fitted = read.Where(each => each.Order.Pairs.Count > 0).ToArray();
        var silent = read.Where(each => each.Order.Pairs.Count == 0).Select(each => Notes.Small(Html.Text(Capital(each.Order.WhyNot)))).ToArray();
        // Where nobody can be compared at all, the page has said so already.
        if (fitted.Length == 0) return Html.Empty;
        var apart = fitted.SelectMany(each => Disagreeing(each.Order, each.Points)).ToArray();
        var cut = fitted.Any(each => each.Order.IsCut) ? Html.Of($" A line is cut into tenths for this.") : Html.Empty;
        var again = fitted[0].Points.Design is { Times: > 1 } ? Html.Of($" Plates served again to one person count as plates of their own, so these intervals are rather too narrow here.") : Html.Empty;
        var same = fitted.All(each => Around(each.Order, session).All(pair => each.Points.PairOf(pair.Trial, pair.Against) is not { } points || points.Verdict == pair.Verdict));
        var title = apart.Length > 0 ? "Taken as an order alone" : same ? "Taken as an order alone: the answer is the same" : "Taken as an order alone: the answer is nearly the same";
        var explained = Notes.Paragraph(Html.Of($"That 4 is above 3 is sure; that it is as far above as 3 is above 2 is not. The means take every step of a scale for as much as any other, here only the order of the marks counts, people again as a sample.{cut}{again}"));
        var table = new DataTable($"Of 100 pairs of plates, in how many the same person puts the first higher, {session.Name}",
            [Column.Words("Question"), Column.Words("first"), Column.Words("second"), Column.Numbers("first is higher", "of 100"), Column.Numbers("95 % interval"), Column.Words("by order"), Column.Words("by points")],
            [.. fitted.SelectMany(each => Around(each.Order, session).Select(pair => new Row(each.Order.Attribute.Name, pair.Trial, pair.Against, Figures.WholeShare(pair.HigherShare).WithoutUnit(),
                Num.Said($"{Figures.WholeShare(pair.Range.Low).Figure} to {Figures.WholeShare(pair.Range.High).Figure}"), Standing(pair.Verdict), each.Points.PairOf(pair.Trial, pair.Against) is { } points ? Standing(points.Verdict) : "")))])
        { IsWide = true, LeastRem = 40, Notes = [Html.Of($"50 of 100 is a coin. Intervals hold for all pairs of trials of a question together.")] };
        return Html.Join(apart.Select(one => Notes.LookAt(one)))
            + Notes.Folded(title, explained + Html.Join(fitted.Select(each => Notes.Paragraph(InWords(each.Order, each.Points, session)))) + table.ToHtml() + Html.Join(silent));
    }

    private static IEnumerable<OrderPair> Around(OrderModel order, TastingSession session) => order.Pairs.Select(pair => Names.Same(pair.Trial, session.Control) ? pair.Turned : pair)
        .Where(pair => session.Control is null || Names.Same(pair.Against, session.Control) || pair.Verdict == Tasting.Verdict.Shown);

    private static Html InWords(OrderModel order, ScaleModel points, TastingSession session)
    {
        var shown = Around(order, session).Where(pair => pair.Verdict == Tasting.Verdict.Shown).ToArray();
        var said = shown.Length == 0 ? Html.Of($"the order shows no difference{(points.WhyNot.Length == 0 && points.Pairs.All(pair => pair.Verdict != Tasting.Verdict.Shown) ? " either" : "")}.")
            : Html.Join(shown.Select(pair => pair.HigherShare >= 0.5 ? pair : pair.Turned).Select(pair =>
                Html.Of($"in {Figures.WholeShare(pair.HigherShare).Figure} of 100 pairs of plates the same person puts {pair.Trial} above {pair.Against} ({Figures.WholeShare(pair.Range.Low).Figure} to {Figures.WholeShare(pair.Range.High).Figure})")), "; ") + Html.Of($".");
        return Html.Of($"<b>{Capital(order.Attribute.Name)}:</b> {said}");
    }

    // Shown by the one and not by the other; what ends at zero in one of them is no disagreement worth a sentence.
    private static IEnumerable<Html> Disagreeing(OrderModel order, ScaleModel points)
    {
        foreach (var pair in order.Pairs)
        {
            if (points.PairOf(pair.Trial, pair.Against) is not { } other) continue;
            if (other.Verdict == Tasting.Verdict.Shown && pair.Verdict == Tasting.Verdict.NotShown)
                yield return Html.Of($"{Capital(order.Attribute.Name)}, {pair.Trial} and {pair.Against}: the points show a difference, their order alone does not. It hangs on a few marks that lie far out, or on a step at the end of the scale being worth as much as one in the middle. Look at the marks before acting on it.");
            if (pair.Verdict == Tasting.Verdict.Shown && other.Verdict == Tasting.Verdict.NotShown)
                yield return Html.Of($"{Capital(order.Attribute.Name)}, {pair.Trial} and {pair.Against}: the order of the marks shows a difference, the points do not. Most people put one above the other by a little, and a few marks far out hide it in the mean. In boxes the order is the safer answer; serve them again if much hangs on it.");
        }
    }

    private static string Standing(Tasting.Verdict verdict) => verdict switch
    {
        Tasting.Verdict.Shown => "shown",
        Tasting.Verdict.AtEdge => "at the edge",
        Tasting.Verdict.TooFew => "too few people",
        Tasting.Verdict.NoSpread => "no spread",
        _ => "not shown",
    };
}
