using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class EnergyTests
{
    // Regulation (EU) No 1169/2011, Annex XIV: conversion factors, kJ and kcal a gram.
    [Theory]
    [InlineData("fat", 37, 9)]
    [InlineData("carbohydrate", 17, 4)]
    [InlineData("polyols", 10, 2.4)]
    [InlineData("protein", 17, 4)]
    [InlineData("alcohol", 29, 7)]
    [InlineData("organic acid", 13, 3)]
    [InlineData("fibre", 8, 2)]
    [InlineData("salatrim", 25, 6)]
    [InlineData("erythritol", 0, 0)]
    public void EnergyFactors_OfTheUnion_AreThoseOfAnnexXiv(string key, double kilojoules, double kilocalories)
    {
        var factor = LabelKit.Eu.EnergyFactors.Single(row => row.Key == key);

        Assert.Equal((kilojoules, kilocalories), (factor.KilojoulesPerGram, factor.KilocaloriesPerGram));
        Assert.Equal("Annex XIV", factor.Origin.Locator);
    }

    // A gram of each: 37 + 17 + 10 + 17 + 29 + 13 + 8 kJ and 9 + 4 + 2.4 + 4 + 7 + 3 + 2 kcal (Annex XIV).
    // A carbohydrate by difference of 3 g holds the gram of polyols and the gram of acids.
    [Fact]
    public void Energy_OfAGramOfEach_IsTheSumOfTheFactorsInEachUnit()
    {
        var profile = LabelKit.Whole("mixture", 6.25, ("FAT", 1), ("CHOAVLDF", 3), ("POLYL", 1), ("PROCNT", 1), ("ALC", 1), ("OA", 1), ("FIBTG", 1));
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("mixture", 100, profile)), LabelKit.Eu, PanelBasis.Per100Grams);

        Assert.Equal(131, panel.Line("energy", "kJ").Value!.Value, 9);
        Assert.Equal(31.4, panel.Line("energy", "kcal").Value!.Value, 9);
        Assert.Equal(2, panel.Line("carbohydrate").Value!.Value, 9);
        Assert.Equal("1.0 g", panel.Line("polyols").Declared);
    }

    // Butter by difference: 0.06 g of carbohydrate, and 0.096 g of acids estimated by themselves. None of the carbohydrate is left, and the acids count 13 kJ and 3 kcal a gram.
    [Fact]
    public void Energy_MoreAcidsThanCarbohydrate_HoldsTheRestAtZeroAndSaysSo()
    {
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("butter", 100, LabelKit.Whole("butter", 6.38, ("CHOAVLDF", 0.06), ("OA", 0.096)))), LabelKit.Eu, PanelBasis.Per100Grams);
        var energy = panel.Line("energy", "kJ");

        Assert.Equal(13 * 0.096, energy.Value!.Value, 9);
        Assert.Equal(3 * 0.096, panel.Line("energy", "kcal").Value!.Value, 9);
        Assert.Equal(energy.Value!.Value, FigureLedger.Of(energy).InWhole, 9);
        Assert.All(energy.Explain().Walk(), step => Assert.False(step.Step.Value < 0, step.Step.Step));
        Assert.Contains("carbohydrate except polyols in 100 g of butter: by these figures 0.036 g more would be taken away than there is, held at 0", energy.Explain().Walk().Select(step => step.Step.Step));
    }

    // 21 CFR 101.9(c)(1)(i)(B): general factors 4, 4 and 9; total carbohydrate with its fibre.
    [Fact]
    public void Energy_OfTheUnitedStates_CountsFibreWithTheCarbohydrate()
    {
        var profile = LabelKit.Whole("mixture", 6.25, ("FAT", 1), ("CHOCDF", 3), ("CHOAVLDF", 2), ("FIBTG", 1), ("PROCNT", 1));
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("mixture", 100, profile)), LabelKit.Us, PanelBasis.Serving(100));

        Assert.Equal(25, panel.Line("calories").Value!.Value, 9);
    }

    [Fact]
    public void Energy_FibreNotStated_IsNotKnown()
    {
        var profile = LabelKit.Profile("syrup", 6.25, ("FAT", 0), ("CHOAVLDF", 80), ("PROCNT", 0), ("FASAT", 0), ("SUGAR", 70), ("NA", 0));
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("syrup", 100, profile)), LabelKit.Eu, PanelBasis.Per100Grams);

        Assert.Null(panel.Line("energy", "kJ").Value);
        Assert.Equal("at least 1360 kJ", panel.Line("energy", "kJ").Declared);
        Assert.True(panel.IsDraft);
    }
}
