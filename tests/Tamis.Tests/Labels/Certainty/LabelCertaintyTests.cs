using Tamis.Composition;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;

namespace Tamis.Tests.Labels;

public class LabelCertaintyTests
{
    private static Dessert Loaf { get; } = Dessert.Open(Repository.Path("data", "desserts", "travel-loaf"));

    private static NutritionPanel Of(double fat, double deviation, int samples, RuleSet? rules = null, double waterGrams = 0)
    {
        Source source = new("a laboratory", Evidence.Published);
        var contents = LabelKit.Nutrients.All.Select(nutrient => nutrient.Tag == "FAT" ? Content.Spread(ContentState.Measured, fat, source, samples, deviation) : new Content(ContentState.Measured, 0, null, source)).ToArray();
        Mixture mixture = new() { Parts = [new(new Ingredient { Name = "cream", Profile = new("cream", LabelKit.Nutrients, contents, 6.25) }, 100 + waterGrams, 0, source)], EvaporatedGrams = waterGrams };
        return NutritionPanel.Of(mixture, rules ?? LabelKit.Eu, PanelBasis.Per100Grams);
    }

    // By hand: 8.0 g declared, 1.5 g accepted on either side (guidance of December 2012, Table 1: below 10 g); a lot's standard deviation of 1 with 24 samples is 1·√(1 + 1/24) = 1.0206;
    // two-sided, z = 1.4697: 2 · (1 − Φ(1.4697)) = 0.1416 (a table of the normal distribution gives Φ(1.47) = 0.9292).
    [Fact]
    public void Of_OneContent_HasTheProbabilityOfANormalTable()
    {
        var figure = LabelCertainty.Of(Of(8, 1, 24)).Figures.Single(each => each.Line.Key == "fat");

        Assert.Equal(1.0206, figure.Number.StandardUncertainty, 4);
        Assert.Equal(0.1416, figure.OutsideProbability!.Value, 3);
        Assert.Equal(("cream", 1.0), figure.Shares.Single());
    }

    [Fact]
    public void Drawn_AgreesWithFirstOrder()
    {
        var certainty = LabelCertainty.Of(DessertPanels.Of(Loaf, "V1", "eu"), new(2, 10, 1));

        var drawn = certainty.Drawn(200_000, seed: 3);

        for (var at = 0; at < drawn.Count; at++)
        {
            var figure = certainty.Figures[at];
            Assert.Equal(figure.Number.Value, drawn[at].Mean, 0.005 * Math.Max(0.1, figure.Number.Value));
            if (figure.Number.StandardUncertainty > 0) Assert.Equal(1, drawn[at].StandardDeviation / figure.Number.StandardUncertainty, 0.03);
            if (figure.OutsideProbability is { } outside) Assert.Equal(outside, drawn[at].Outside!.Value, 0.01);
        }
    }

    [Fact]
    public void Drawn_SameSeed_IsTheSameOnAnyNumberOfThreads()
    {
        var certainty = LabelCertainty.Of(DessertPanels.Of(Loaf, "V1", "eu"), new(2, 10, 1));

        Assert.Equal(certainty.Drawn(20_000, seed: 5, threads: 1), certainty.Drawn(20_000, seed: 5, threads: 2));
    }

    // More water leaves or less: the figure moves, and the water is what moves it.
    [Fact]
    public void Of_DryingVaries_WaterHasItsShare()
    {
        var without = LabelCertainty.Of(DessertPanels.Of(Loaf, "V1", "eu"), new(0, 0, 0));
        var with = LabelCertainty.Of(DessertPanels.Of(Loaf, "V1", "eu"), new(0, 50, 0));

        Assert.All(without.Figures.Zip(with.Figures).Where(pair => pair.First.Number.Value > 0), pair => Assert.True(pair.Second.Number.StandardUncertainty > pair.First.Number.StandardUncertainty));
        Assert.Contains(with.Figures, figure => figure.Shares.Any(share => share.Ingredient == "the water that leaves"));
    }

    [Fact]
    public void Of_SharesOfTheVariance_AddUpToAll() =>
        Assert.All(LabelCertainty.Of(DessertPanels.Of(Loaf, "V1", "eu"), new(2, 10, 1)).Figures.Where(figure => figure.Number.StandardUncertainty > 0), figure => Assert.Equal(1, figure.Shares.Sum(share => share.Share), 9));

    [Theory]
    [InlineData("fat", 9.9, 8.4, 11.4)]
    [InlineData("fat", 10, 8, 12)]
    [InlineData("fat", 40.1, 32.1, 48.1)]
    [InlineData("saturates", 3.9, 3.1, 4.7)]
    [InlineData("saturates", 4, 3.2, 4.8)]
    [InlineData("salt", 1.2, 0.825, 1.575)]
    [InlineData("salt", 1.25, 1, 1.5)]
    public void Tolerances_EuropeanUnion_AreThoseOfTheGuidance(string figure, double declared, double lowest, double highest)
    {
        var tolerance = Tolerances.Of(LabelKit.Eu).For(figure, "g", declared)!;

        Assert.Equal(lowest, tolerance.Lowest(declared), 9);
        Assert.Equal(highest, tolerance.Highest(declared), 9);
    }

    // 21 CFR 101.9(g): what is naturally there at least 80 %, fats, sugars and sodium at most 120 % of what is declared.
    [Fact]
    public void Tolerances_UnitedStates_AreOneSided()
    {
        var fibre = Tolerances.Of(LabelKit.Us).For("dietary fiber", "g", 5)!;
        var fat = Tolerances.Of(LabelKit.Us).For("total fat", "g", 10)!;

        Assert.Equal((4.0, double.PositiveInfinity), (fibre.Lowest(5), fibre.Highest(5)));
        Assert.Equal((double.NegativeInfinity, 12.0), (fat.Lowest(10), fat.Highest(10)));
    }

    // By hand: fat 10 g, declared 10 g, 12 g at most (21 CFR 101.9(g)(5)). 100 g of 200 g leave as water; drying varies by 20 % of it from piece to piece, 20 g of 100 g finished:
    // one pack 10 · 20/100 = 2 g, z = 1, 0.1587; twelve packs 2/√12 = 0.5774 g, z = 3.464, 0.00027 (a table of the normal distribution).
    [Fact]
    public void Of_TwelvePacks_AverageTheDryingOfEachPiece()
    {
        var figure = LabelCertainty.Of(Of(5, 0, 24, AnyCoverage(LabelKit.Us), 100), new() { PieceWaterPercent = 20 }).Figures.Single(each => each.Line.Key == "total fat");

        Assert.Equal((10.0, 12), (figure.Declared, figure.Tolerance!.Sample.Units));
        Assert.Equal(0.1587, figure.OutsideProbability!.Value, 4);
        Assert.Equal(0.00027, figure.SampleProbability!.Value, 5);
    }

    // What a make shares is not averaged over its packs.
    [Fact]
    public void Of_DryingOfTheMake_IsTheSameForOnePackAndTwelve()
    {
        var figure = LabelCertainty.Of(Of(5, 0, 24, AnyCoverage(LabelKit.Us), 100), new(WaterLossPercent: 20)).Figures.Single(each => each.Line.Key == "total fat");

        Assert.Equal(figure.OutsideProbability!.Value, figure.SampleProbability!.Value, 12);
    }

    // By hand: 8 g ± 1.5 g with nothing but a laboratory's 10 %, 0.8 g: z = 1.875, 2 · 0.0304 = 0.0608.
    [Fact]
    public void Of_MeasurementIncludedInTheTolerance_IsPartOfTheResult()
    {
        var figure = LabelCertainty.Of(Of(8, 0, 24), new() { MeasurementPercent = 10 }).Figures.Single(each => each.Line.Key == "fat");

        Assert.Equal(0.0608, figure.OutsideProbability!.Value, 4);
        Assert.Equal(0, figure.Number.StandardUncertainty);
    }

    // Table 3 of the guidance of December 2012: for a claim of at most so much fat 3 g below, above nothing but the uncertainty of the measurement, here 2 · 10 % of 2 g.
    [Fact]
    public void Of_ClaimOfAtMost_HasTheTolerancesOfTheClaim()
    {
        Dictionary<string, ClaimSubject> claims = new(Names.Comparer) { ["fat"] = ClaimSubject.AtMost };

        Assert.Equal((0.0, 2.0), LabelCertainty.Of(Of(2, 0.1, 24), claims: claims).Figures.Single(each => each.Line.Key == "fat").Accepted);
        Assert.Equal((0.0, 2.4), LabelCertainty.Of(Of(2, 0.1, 24), new() { MeasurementPercent = 10 }, claims).Figures.Single(each => each.Line.Key == "fat").Accepted);
    }

    // 120 % of nothing is nothing; what the law itself prints as 0 g (below 0.5 g, 21 CFR 101.9(c)(2)) is not wrong for being more.
    [Fact]
    public void Of_PrintedAsZero_AcceptsWhatIsPrintedAsZero()
    {
        var figure = LabelCertainty.Of(Of(0.3, 0.05, 24, AnyCoverage(LabelKit.Us))).Figures.Single(each => each.Line.Key == "total fat");

        Assert.Equal(("0 g", 0.5), (figure.Line.Declared, figure.Accepted!.Value.Highest));
        Assert.True(figure.OutsideProbability < 0.001);
    }

    [Fact]
    public void Drawn_CompositeAndMeasurement_AgreeWithFirstOrder()
    {
        var certainty = LabelCertainty.Of(Of(5, 0.4, 24, AnyCoverage(LabelKit.Us), 100), new(1, 2, 1) { PieceWaterPercent = 4, MeasurementPercent = 4 });
        var at = certainty.Figures.ToList().FindIndex(figure => figure.Line.Key == "total fat");

        var drawn = certainty.Drawn(200_000, seed: 11)[at];

        Assert.Equal(certainty.Figures[at].OutsideProbability!.Value, drawn.Outside!.Value, 0.02);
        Assert.Equal(certainty.Figures[at].SampleProbability!.Value, drawn.SampleOutside!.Value, 0.02);
    }

    // No tolerance is listed: no chance is offered, and the authority's words are there to be shown.
    [Theory]
    [InlineData("au-nz")]
    [InlineData("codex")]
    public void Tolerances_NoneListed_GiveNoChance(string name)
    {
        var rules = RuleSets.Load(LabelKit.Folder, name);

        Assert.All(LabelCertainty.Of(Of(8, 1, 24, rules)).Figures, figure => Assert.Null(figure.OutsideProbability));
        Assert.NotEmpty(Tolerances.Of(rules).None.Single().Origin.Note);
    }

    [Fact]
    public void Tolerances_Broken_NameEveryCell()
    {
        using var folder = new TemporaryFolder();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(LabelKit.Folder, "eu"))) File.Copy(file, Path.Combine(folder.Path, Path.GetFileName(file)));
        var path = Path.Combine(folder.Path, "tolerances.csv");
        File.WriteAllText(path, string.Join('\n', File.ReadLines(path).Take(1)) + "\nfatt,g,no claim,0,1,10,0,,,amount,perhaps,0,1,guidance,,law,text,\n");

        var error = Assert.Throws<Tamis.Tables.TableException>(() => Tolerances.Of(RuleSet.Load(folder.Path)));

        Assert.Equal(["figure", "measurement", "minus", "units"], error.Problems.Select(problem => problem.Column).Order());
    }

    private static RuleSet AnyCoverage(RuleSet rules) => rules with { KnownSharePercent = 0 };
}
