using Tamis.Desserts;
using Tamis.Production;

namespace Tamis.Views.Tests.Desserts;

public class ShowWorkTests
{
    private static Dessert Tart => Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));

    [Fact]
    public void PlanOfWork_DemoOrder_SaysWhenToBeginAndMarksWhatIsCritical()
    {
        var plan = Desserts.PlanOfWork(Tart);
        var shown = Show.PlanOfWork(plan);

        Assert.Contains("Sat 28 Nov 11:00", shown.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("no plan can begin later", shown.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("<b>critical</b>", shown.Markup, StringComparison.Ordinal);
        Assert.Equal(3, shown.Markup.Split("<svg ").Length - 1);
        Assert.Equal(shown.Markup, Show.PlanOfWork(Desserts.PlanOfWork(Tart)).Markup);
        Assert.Contains("Without the blast chiller", Show.WhatIfDown(plan, "blast chiller").ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void PlanWithout_BlastChiller_SaysWhereToFreezeAndWhoMustAllowIt()
    {
        var text = Show.PlanWithout(PlanOfWork.Of(Tart, "T10"), "blast chiller").ToPlainText();

        Assert.Contains("somebody who may decide it allows another temperature", text, StringComparison.Ordinal);
        Assert.Contains("by the model of the piece", text, StringComparison.Ordinal);
        Assert.Contains("begin", text, StringComparison.Ordinal);
    }

    [Fact]
    public void PlanWithout_TheOnlyOven_SaysTheLeastThatWouldDo() =>
        Assert.Contains("one oven that reaches", Show.PlanWithout(Desserts.PlanOfWork(Tart), "oven").ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void HandsBySize_MoreThanThereAreMoulds_CountsTheRounds()
    {
        var text = Show.HandsBySize(Tart, "T10", 4, 12, 24).ToPlainText();

        Assert.Contains("380", text, StringComparison.Ordinal);
        // 14 rings serve 24 tarts in two rounds: more hands than one make of them, fewer a piece.
        Assert.Contains($"1{Num.UnitSpace}310", text, StringComparison.Ordinal);
        Assert.DoesNotContain("cannot be worked out", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Amounts_TwoTarts_SaysWhyMoreIsMade()
    {
        var text = Show.Amounts(Tart, "T10", 2, 5).ToPlainText();

        Assert.Contains("the grinder needs 300" + Num.UnitSpace + "g", text, StringComparison.Ordinal);
        Assert.Contains("in reserve", text, StringComparison.Ordinal);
    }

    [Fact]
    public void HowManyPieces_Paste_SaysHowManyAndWhatIsLeft() =>
        Assert.Contains("are enough for 8 pieces of T10", Show.HowManyPieces(Tart, "T10", "rye paste", 400).ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void CriticalSteps_Demo_DefersToLocalCodesAndNamesTheRecord()
    {
        var text = Show.CriticalSteps(Tart, "T10", Desserts.PlanOfWork(Tart)).ToPlainText();

        Assert.Contains("the local code in force", text, StringComparison.Ordinal);
        Assert.Contains("critical-log.csv", text, StringComparison.Ordinal);
        Assert.Contains("Fri 06:00", text, StringComparison.Ordinal);
        Assert.DoesNotContain("mousse 3", text, StringComparison.Ordinal);
    }

    private static class Desserts
    {
        public static PlanOfWork PlanOfWork(Dessert dessert) => Tamis.Desserts.PlanOfWork.Of(dessert, "T10", usePhysics: false);
    }
}
