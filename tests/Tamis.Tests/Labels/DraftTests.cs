using Tamis.Composition;
using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class DraftTests
{
    private static readonly NutrientProfile Butter = LabelKit.Whole("butter", 6.38, ("FAT", 80), ("FASAT", 50), ("CHOAVLDF", 1), ("SUGAR", 1), ("PROCNT", 0.8), ("NA", 10));

    private static NutritionPanel Panel(params (string Name, double MassGrams, NutrientProfile? Profile)[] parts) =>
        NutritionPanel.Of(LabelKit.Of([.. parts.Select(part => LabelKit.Part(part.Name, part.MassGrams, part.Profile))]), LabelKit.Eu, PanelBasis.Per100Grams);

    [Fact]
    public void Of_AllKnown_IsNoDraft()
    {
        var panel = Panel(("butter", 100, Butter));

        Assert.False(panel.IsDraft);
        Assert.Empty(panel.Missing);
        Assert.Equal("Nutrition declaration per 100 g (European Union).", panel.Status);
    }

    [Fact]
    public void Of_AnIngredientWithoutFigures_IsADraftThatNamesIt()
    {
        var panel = Panel(("butter", 80, Butter), ("bay leaf", 20, null));

        Assert.True(panel.IsDraft);
        Assert.Equal(8, panel.Missing.Count);
        Assert.Equal("fat: known for 80\u202f% of the mass; not known of bay leaf (20\u202f%).", panel.Missing.Single(figure => figure.Line.Key == "fat").ToString());
        Assert.Equal("at least 64 g", panel.Declared("fat"));
        Assert.Equal("Draft: 8 mandatory figures are not known well enough.", panel.Status);
        Assert.Null(panel.Line("fat").Value);
        Assert.Null(panel.Line("fat").Percent);
    }

    [Fact]
    public void Of_NothingKnown_SaysNotKnown() => Assert.Equal("not known", Panel(("bay leaf", 5, null)).Declared("fat"));

    // Less than a thousandth of the mass may stay open (policy of the rule set, known_share_percent).
    [Theory]
    [InlineData(0.09, false)]
    [InlineData(0.11, true)]
    public void Of_ATraceWithoutFigures_IsADraftAboveTheShareThatTheRulesLeaveOpen(double massGrams, bool isDraft) =>
        Assert.Equal(isDraft, Panel(("butter", 100 - massGrams, Butter), ("vegetable carbon", massGrams, null)).IsDraft);

    [Fact]
    public void Of_FibreNotStated_BlocksTheEnergyAndLeavesTheLineOff()
    {
        var fruit = LabelKit.Profile("fruit", 6.25, ("FAT", 0.1), ("FASAT", 0), ("CHOAVLDF", 62), ("SUGAR", 55), ("PROCNT", 0.5), ("NA", 16));
        var panel = Panel(("butter", 50, Butter), ("fruit", 50, fruit));

        Assert.Equal(["energy", "energy"], panel.Missing.Select(figure => figure.Line.Key));
        Assert.DoesNotContain(panel.Lines, line => line.Key == "fibre");
        Assert.Equal("fibre: left off, known for 50\u202f% of the mass; not known of fruit (50\u202f%).", Assert.Single(panel.LeftOff).ToString());
    }

    [Fact]
    public void Remarks_WhatNobodyStates_IsSaidToCountAsNone()
    {
        var plum = LabelKit.Profile("plum", null, ("FAT", 0.3), ("FASAT", 0), ("CHOAVLDF", 10), ("FIBTG", 1.4), ("SUGAR", 9.9), ("PROCNT", 0.7), ("NA", 0));

        Assert.Equal(
            [
                "No table or document states organic acids of plum; the panel counts none there.",
                "No table or document states polyols of plum; the panel counts none there.",
                "No table or document states alcohol of plum; the panel counts none there.",
                "The law reckons protein as nitrogen × 6.25; the nitrogen factor of plum is not stated, and its protein is taken as published.",
            ],
            Panel(("butter", 50, Butter), ("plum", 50, plum)).Remarks);
    }

    [Fact]
    public void Remarks_AnotherBasisThanTheLaws_IsSaid()
    {
        var mixture = LabelKit.Of(LabelKit.Part("butter", 100, Butter));

        Assert.Equal("The law asks for figures per serving; these are per 100 g.", NutritionPanel.Of(mixture, LabelKit.Us, PanelBasis.Per100Grams).Remarks[0]);
        Assert.StartsWith("The law asks for figures per 100\u202fg; these are per slice (40 g)", NutritionPanel.Of(mixture, LabelKit.Eu, PanelBasis.Piece(40, "slice")).Remarks[0]);
        Assert.Empty(NutritionPanel.Of(mixture, LabelKit.Eu, PanelBasis.Per100Grams).Remarks);
    }

    // Regulation (EU) No 1169/2011, Article 55: the nutrition declaration is mandatory from 13 December 2016.
    [Theory]
    [InlineData("2016-12-12", true)]
    [InlineData("2016-12-13", false)]
    public void Of_ADayBeforeTheRulesAreInForce_IsADraft(string day, bool isDraft)
    {
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("butter", 100, Butter)), LabelKit.Eu, PanelBasis.Per100Grams, DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture));

        Assert.Equal(isDraft, panel.IsDraft);
        if (isDraft) Assert.Equal("Regulation (EU) No 1169/2011 is in force from 2016-12-13, not on 2016-12-12.", Assert.Single(panel.DraftReasons));
    }

    // A part of what is not there is not there either: release 28 states no saturates for demerara sugar, which has no fat.
    [Fact]
    public void Of_NoneOfTheWhole_IsNoneOfThePart()
    {
        var sugar = LabelKit.Profile("sugar", 6.25, ("FAT", 0), ("CHOCDF", 98), ("CHOAVLDF", 98), ("FIBTG", 0), ("SUGAR", 97), ("PROCNT", 0), ("NA", 28));
        var panel = Panel(("butter", 50, Butter), ("sugar", 50, sugar));

        Assert.Equal(25, panel.Line("saturates").Value);
        Assert.Contains("no fat in sugar, so none of this part of it", panel.Line("saturates").Explain().Walk().Select(step => step.Step.Step));
    }

    [Fact]
    public void Of_ATraceOfTheWhole_LeavesThePartUnknown()
    {
        NutrientProfile trace = new("leaf", new([new("FAT", "fat", "g"), new("FASAT", "saturates", "g")]), [new(ContentState.Trace, 0, null, new("table", Evidence.Published)), Content.Unknown]);

        Assert.Null(Panel(("leaf", 100, trace)).Line("saturates").Value);
    }
}
