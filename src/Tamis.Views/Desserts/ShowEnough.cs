using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>How many servings a tasting with scores needs to see the gap that a kitchen would act on, by the spread of earlier tastings.</summary>
    internal static Html Enough(TastingPreparation preparation) => preparation.Session.Test is { } test
        ? test == DifferenceTest.Paired ? Html.Empty : EnoughForTest(preparation, test)
        : EnoughForScores(preparation);

    private static Html EnoughForTest(TastingPreparation preparation, DifferenceTest test)
    {
        var policy = TastingPolicy.Kit;
        var sets = preparation.Plan.Servings.Count / test.SetSize;
        var power = Binomials.Power(sets, test.Guess, policy.DistinguisherShare, policy.FalseAlarmShare);
        return Notes.Paragraph(Html.Of($"{sets} sets are planned: if {Figures.WholeShare(policy.DistinguisherShare).Text} of people really tell the two apart, {Figures.WholeShare(power).Text} of such tests would find it.")) + AnswersNeeded(test);
    }

    private static Html EnoughForScores(TastingPreparation preparation)
    {
        var policy = TastingPolicy.Kit;
        var scales = preparation.Asked.Where(attribute => attribute.IsScale).ToArray();
        if (scales.Length == 0) return Html.Empty;
        var earlier = EarlierSpread(preparation);
        var had = preparation.Plan.Servings.GroupBy(serving => serving.Trial).Min(group => group.Count());
        var rows = scales.Select(scale =>
        {
            var length = scale.HighPoints - scale.LowPoints;
            var gap = policy.GapWorthSeeingShare * length;
            var (spread, from) = earlier.TryGetValue(scale.Name, out var known) ? (known, "earlier tastings") : (policy.AssumedSpreadShare * length, "assumed");
            return (scale, gap, spread, from, needed: ServingsNeeded.ToSee(spread, gap, policy));
        }).ToArray();
        var few = rows.Where(row => row.needed > had).ToArray();
        var table = new DataTable("Servings needed of each trial",
            [Column.Words("Scale"), Column.Numbers("spread from plate to plate", "points"), Column.Words("from"), Column.Numbers("gap to see", "points"), Column.Numbers("servings needed"), Column.Numbers("planned")],
            [.. rows.Select(row => new Row(row.scale.Name, Figures.Score(row.spread), row.from, Figures.Part(row.gap), row.needed is { } needed ? Figures.Count(needed) : Num.Said("too many"), Figures.Count(had)))])
        { Notes = [Html.Of($"Of two trials side by side, each assessor tasting both; the gap is seen in {Figures.WholeShare(policy.WantedPowerShare).Text} of such tastings at a risk of {Figures.WholeShare(policy.FalseAlarmShare).Text} of a false alarm. Among more trials, or over several scales, it takes more. A tenth of the scale is what a kitchen would act on: common practice, no source.")] };
        return Notes.Paragraph(few.Length == 0 ? Html.Of($"{had} servings of each trial are enough for every scale.")
            : Html.Of($"{had} servings of each trial are too few for {AndAll(few.Select(row => row.scale.Name))}: a gap of {Figures.Part(few[0].gap).Text} {(few[0].gap == 1 ? "point" : "points")} would often be missed.")) + table.ToHtml();
    }

    private static Dictionary<string, double> EarlierSpread(TastingPreparation preparation)
    {
        if (preparation.Dessert.Tastings is not { } log) return [];
        return log.Sessions.Where(session => !session.IsBench && !Names.Same(session.Name, preparation.Session.Name) && log.TrialsIn(session.Name).Any())
            .SelectMany(session => preparation.Dessert.ReportOf(session.Name).Scales).Where(scale => scale.PlatePoints is > 0)
            .GroupBy(scale => scale.Attribute.Name).ToDictionary(group => group.Key, group => Math.Sqrt(group.Average(scale => scale.PlatePoints!.Value * scale.PlatePoints.Value)));
    }
}
