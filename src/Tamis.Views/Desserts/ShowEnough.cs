using Tamis.Desserts;
using Tamis.Statistics.Designs;
using Tamis.Statistics.Discrimination;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>How often a tasting as planned sees the gap that a kitchen would act on, and how many assessors it needs, by the spread of earlier tastings.</summary>
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
        var own = preparation.Plan.Servings.GroupBy(serving => serving.Assessor).Select(each => (Trials: each.Select(serving => serving.Trial).Distinct().Count(), Servings: each.Count())).ToArray();
        var trials = preparation.Plan.Servings.Select(serving => serving.Trial).Distinct().Count();
        if (trials < 2) return Html.Empty;
        CrossedDesign design = new(own.Length, trials, Math.Max(2, (int)own.Average(each => each.Trials)), Math.Max(1, (int)own.Average(each => (double)each.Servings / each.Trials)));
        var rows = scales.Select(scale =>
        {
            var length = scale.HighPoints - scale.LowPoints;
            var gap = policy.GapWorthSeeingShare * length;
            var (spread, found, from) = earlier.TryGetValue(scale.Name, out var known) ? (known.Plate, known.Own, "earlier tastings") : (policy.AssumedSpreadShare * length, 0, "assumed");
            return (scale, gap, spread: Math.Sqrt(spread * spread + found * found), from, power: design.PowerOfPair(gap, spread, found, policy.ConfidenceShare),
                needed: design.BlocksNeeded(gap, spread, found, policy.WantedPowerShare, policy.ConfidenceShare));
        }).ToArray();
        var few = rows.Where(row => row.power < policy.WantedPowerShare).ToArray();
        var table = new DataTable("Assessors needed for a tasting set out like this",
            [Column.Words("Scale"), Column.Numbers("spread of a serving", "points"), Column.Words("from"), Column.Numbers("gap to see", "points"), Column.Numbers("seen in", "% of such tastings"), Column.Numbers("assessors needed"), Column.Numbers("planned")],
            [.. rows.Select(row => new Row(row.scale.Name, Figures.Score(row.spread), row.from, Figures.Part(row.gap), Figures.WholeShare(row.power).WithoutUnit(), row.needed is { } needed ? Figures.Count(needed) : Num.Said("too many"), Figures.Count(design.Blocks)))])
        {
            IsWide = true, LeastRem = 40,
            Notes = [Html.Of($"Of any two of the {trials} trials, all pairs of a scale counted together, at a risk of {Figures.WholeShare(policy.FalseAlarmShare).Text} of a false alarm; {design.Each} trials for each assessor{(design.Times > 1 ? $", each served {design.Times} times" : "")}. Needed is what sees the gap in {Figures.WholeShare(policy.WantedPowerShare).Text} of such tastings; over several scales it takes more. By the non-central F distribution. A tenth of the scale is what a kitchen would act on: common practice, no source.")],
        };
        return Notes.Paragraph(few.Length == 0 ? Html.Of($"{design.Blocks} assessors are enough for every scale.")
            : Html.Of($"{design.Blocks} assessors are too few for {AndAll(few.Select(row => row.scale.Name))}: a gap of {Figures.Part(few[0].gap).Text} {(few[0].gap == 1 ? "point" : "points")} between two of {trials} trials would often be missed. Fewer trials, each served twice, or more people would see it.")) + table.ToHtml();
    }

    // One serving's spread, parted where trials were served again into what an assessor finds again and what is from plate to plate.
    private static Dictionary<string, (double Plate, double Own)> EarlierSpread(TastingPreparation preparation)
    {
        if (preparation.Dessert.Tastings is not { } log) return [];
        return log.Sessions.Where(session => !session.IsBench && !Names.Same(session.Name, preparation.Session.Name) && log.TrialsIn(session.Name).Any())
            .SelectMany(session => preparation.Dessert.ReportOf(session.Name).Scales).Where(scale => scale.PlatePoints is > 0)
            .GroupBy(scale => scale.Attribute.Name).ToDictionary(group => group.Key, group =>
            {
                var all = group.Average(scale => scale.ServingPoints!.Value * scale.ServingPoints.Value);
                var own = group.Where(scale => scale.OwnPoints > 0).Select(scale => scale.OwnPoints * scale.OwnPoints).DefaultIfEmpty(0).Average();
                // Never less than a tenth of the whole from plate to plate: nobody is that steady.
                own = Math.Min(own, 0.9 * all);
                return (Math.Sqrt(all - own), Math.Sqrt(own));
            });
    }
}
