using Tamis.Desserts;
using Tamis.Losses;
using Tamis.Tasting;

namespace Tamis.Tests.Desserts;

/// <summary>The demo's two desserts against figures that a second program, written apart from the kit, computed from the same sheets.</summary>
public class DemoTests
{
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));

    [Fact]
    public void Open_DemoFolders_HaveNothingToMend()
    {
        Assert.Empty(Tart.Problems);
        Assert.Empty(Loaf.Problems);
        Assert.Equal(12, Tart.Batches.Count);
        Assert.Equal("T10", Tart.Candidate);
        Assert.Equal(12, Tart.WantedPieces("T10"));
    }

    // component, mass in, mass out, then water, fat, sugars, protein and fibre in 100 g finished; T1 of the tart.
    [Theory]
    [InlineData("shell", 521.80, 407.07, 4.08, 30.78, 18.44, 7.86, 3.39)]
    [InlineData("almond cream", 599.12, 540.47, 19.79, 36.27, 23.73, 9.63, 3.14)]
    [InlineData("rye paste", 391.00, 329.37, 1.44, 30.24, 31.21, 12.77, 9.10)]
    [InlineData("crumble", 259.50, 237.78, 2.88, 31.28, 26.46, 7.65, 4.85)]
    [InlineData("bound crumble", 335.00, 239.00, 2.28, 37.19, 25.22, 8.19, 5.43)]
    [InlineData("gel", 570.00, 541.84, 69.11, 0.08, 22.12, 1.69, 1.67)]
    [InlineData("mousse", 889.70, 841.82, 62.59, 22.37, 10.09, 4.33, 0.00)]
    public void Batches_FirstTart_AgreeWithASecondProgram(string component, double massIn, double massOut, params double[] contents)
    {
        var made = Tart.Trial("T1").Find(component)!;

        Assert.Equal(massIn, made.MassInGrams, 0.0051);
        Assert.Equal(massOut, made.YieldGrams, 0.0051);
        string[] tags = ["WATER", "FAT", "SUGAR", "PROCNT", "FIBTG"];
        for (var i = 0; i < tags.Length; i++) Assert.Equal(contents[i], made.Out.Per100Grams(tags[i])!.Value, 0.0051);
    }

    [Theory]
    [InlineData("V1", 2219.85, 326.50, 21.31)]
    [InlineData("V1b", 2239.85, 326.50, 21.75)]
    [InlineData("V3", 2219.85, 327.25, 23.44)]
    public void Batches_Loaf_AgreeWithASecondProgram(string trial, double massIn, double loafGrams, double water)
    {
        var cake = Loaf.Trial(trial).Find("cake")!;

        // The second program took a United States teaspoon of cinnamon, 2.61 g; the kit's is metric, 2.65 g.
        Assert.Equal(massIn + 0.04, cake.MassInGrams, 0.0051);
        // Its loaf is of the 362 g of batter that go into a case, not of a sixth of all; in V3 the fruit is piped in later.
        var batterGrams = (cake.MassInGrams - cake.Losses.Single(loss => loss.Name == "bowl").MassGrams) / 6;
        if (trial != "V3") Assert.Equal(loafGrams, cake.YieldGrams / 6 * 362 / batterGrams, 0.011);
        Assert.Equal(water, cake.Out.Per100Grams("WATER")!.Value, 0.0051);
    }

    [Fact]
    public void Changes_OfTheTree_ReadAsTheCookMadeThem()
    {
        var steps = Tart.Steps.ToDictionary(step => step.To.Name);

        Assert.Equal((ChangeKind.Together, "gelatine leaf"), Only(steps["T2"]));
        Assert.Equal((ChangeKind.Swapped, "rye flour"), Only(steps["T3"]));
        Assert.Equal((ChangeKind.Moved, "caster sugar"), Only(steps["T4"]));
        Assert.Equal(2, steps["T5"].Changes.Count);
        Assert.True(steps["T6"].IsConfounded);
        Assert.Equal((ChangeKind.Replaced, "pectin NH"), Only(steps["T7"]));
        Assert.Equal((ChangeKind.Swapped, "dark chocolate 55 %"), Only(steps["T9"]));
        Assert.Equal(["mousse", "shell"], steps["T10"].Changes.Select(change => change.Component).Order());
        Assert.Equal((ChangeKind.Swapped, "damson puree lot 2"), Only(steps["T11"]));
        Assert.Equal((ChangeKind.Added, "cocoa butter"), Only(steps["T12"]));

        static (ChangeKind, string) Only(TrialStep step) => (Assert.Single(step.Changes).Kind, step.Changes[0].Leading.Line);
    }

    // Computed by a second program from the same scores: T10 less T1 in S4, liking +2.6 (1.1 to 4.0), bay aroma +2.4 (0.6 to 4.3); T10 less T8, liking -0.2 (-1.6 to 1.2).
    [Fact]
    public void Compare_WithinAssessors_AgreesWithASecondProgram()
    {
        TastingAnalysis within = new(Tart.Tastings!);

        Near(2.6, 1.1, 4.0, "T10", "T1", "liking");
        Near(2.4, 0.6, 4.3, "T10", "T1", "bay aroma");
        Near(-0.2, -1.6, 1.2, "T10", "T8", "liking");

        void Near(double points, double low, double high, string trial, string against, string attribute)
        {
            var found = Assert.Single(within.Compare(trial, against, within.Scales.Single(each => each.Name == attribute)));
            Assert.Equal(points, found.DifferencePoints!.Value, 0.05);
            Assert.Equal(low, found.Range!.Value.Low, 0.051);
            Assert.Equal(high, found.Range!.Value.High, 0.051);
        }
    }

    // A pair has one answer, whether it is asked for as a step of the tree or as part of its tasting.
    [Fact]
    public void Comparisons_OfTheCandidate_AreThoseOfTheTastingsReport()
    {
        var reported = TrialStep.Between(Tart, "T1", "T10").Comparisons.Where(each => each.StandsAmongAll is not null).ToArray();
        Assert.NotEmpty(reported);
        Assert.All(reported, found =>
        {
            var pair = Tart.ReportOf(Assert.Single(found.Tastings)).Scales.Single(scale => scale.Attribute == found.Attribute).PairOf("T10", "T1")!;
            Assert.Equal((pair.Points, pair.Range, pair.Verdict), (found.DifferencePoints, found.Range, found.Verdict));
        });
    }
}
