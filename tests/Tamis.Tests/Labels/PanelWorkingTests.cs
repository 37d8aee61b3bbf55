using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class PanelWorkingTests
{
    private static NutritionPanel Panel { get; } = NutritionPanel.Of(LabelKit.Foods(20, ("SR28 01145", 100), ("SR28 20080", 200)), LabelKit.Eu, PanelBasis.Per100Grams);

    private static string[] Steps(string key, string unit) => [.. Panel.Line(key, unit).Explain().Walk().Select(step => $"{step.Step.Step} | {step.Step.Source}")];

    [Fact]
    public void Explain_Protein_NamesRowFoodFactorLossAndRule()
    {
        var steps = Steps("protein", "g");

        Assert.Equal("protein per 100 g, declared as 10 g: nearest 1 g from 10 g, ties up (guidance) | Commission guidance on tolerances for nutrient values, December 2012, rounding table", steps[0]);
        Assert.Contains(steps, step => step.EndsWith("as weighed in, less its part of what stayed behind | formula.csv, row 3, column T1", StringComparison.Ordinal));
        Assert.Contains(steps, step => step.Contains("protein in 100 g of", StringComparison.Ordinal) && step.Contains("20080", StringComparison.Ordinal));
        Assert.Contains("the protein was published as nitrogen × 5.83; the law’s factor | Regulation (EU) No 1169/2011, Annex I(10)", steps);
        Assert.Contains(steps, step => step.StartsWith("water that left", StringComparison.Ordinal));
    }

    [Fact]
    public void Explain_Energy_NamesEachFactorWithItsArticle()
    {
        var steps = Steps("energy", "kJ");

        foreach (var word in new[] { "fat, 37", "carbohydrate except polyols, 17", "protein, 17", "fibre, 8", "alcohol, 29", "organic acids, 13", "polyols, 10" })
            Assert.Contains($"{word} kJ a gram (law) | Regulation (EU) No 1169/2011, Annex XIV", steps);
    }

    [Fact]
    public void Explain_AFigureThatIsNotKnown_NamesWhatIsLacking()
    {
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("syrup", 90, LabelKit.Profile("syrup", null, ("FAT", 0), ("CHOAVLDF", 80), ("PROCNT", 0))), LabelKit.Part("leaf", 10, null)), LabelKit.Eu, PanelBasis.Per100Grams);

        string[] steps = [.. panel.Line("energy", "kJ").Explain().Walk().Select(step => step.Step.Step)];

        Assert.Equal("energy, not declared: not known for any of the mass, 99.9\u202f% is asked for", steps[0]);
        Assert.Contains("fibre in 100 g of syrup: not stated", steps);
        Assert.Contains("energy of leaf: not known, neither a food nor a document gives figures", steps);
        Assert.Contains("polyols in 100 g of syrup: not stated, counted as none", steps);
    }

    [Fact]
    public void Explain_Percent_NamesTheReferenceValue()
    {
        var percent = Panel.Line("fat").Explain().From[1];

        Assert.Equal(Panel.Line("fat").Value!.Value / 70 * 100, percent.Value, 9);
        Assert.Equal((70, "Annex XIII Part B, Article 32(4)"), (percent.From[0].Value, percent.From[0].Source.Locator));
    }

    // The butter of the shipped table has more organic acids, an estimate, than carbohydrate.
    [Fact]
    public void Explain_ShippedButter_TakesNothingBelowZero() =>
        Assert.All(Panel.Lines.SelectMany(line => line.Explain().Walk()), step => Assert.False(step.Step.Value < 0, step.Step.Step));

    [Fact]
    public void Explain_EveryStep_HasASource() =>
        Assert.All(Panel.Lines.SelectMany(line => line.Explain().Walk()), step => Assert.NotEmpty(step.Step.Source.Key));
}
