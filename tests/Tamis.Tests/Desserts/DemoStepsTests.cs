using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Tests.Desserts;

/// <summary>The traps that are built into the demo: what the kit may say of them and what not.</summary>
public class DemoStepsTests
{
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));

    private static IReadOnlyList<FigureDifference> Figures(string from, string to) => FigureDifference.Between(Tart.Trial(from), Tart.Trial(to));

    // One mass changed, but the dose of gelatine rose from 1.40 to 1.50 % of what goes in.
    [Fact]
    public void Between_T1AndT4_DoseOfGelatineMovesThoughNobodyTouchedIt()
    {
        var dose = Assert.Single(Figures("T1", "T4"), figure => figure.Figure.Name == "dose of gelatine");

        Assert.Equal((1.40, 1.50), (Math.Round(dose.From!.Value, 2), Math.Round(dose.To!.Value, 2)));
        Assert.Contains(Figures("T1", "T4"), figure => figure.Figure.Name == "sweetness as sucrose" && figure.To < figure.From);
        Assert.Contains(Figures("T1", "T4"), figure => figure.Figure.Name == "water activity" && figure.To > figure.From);
    }

    // The rye paste is in the ganache and in the bound crumble: its change goes with it.
    [Fact]
    public void Between_T4AndT5_ComponentsInsideOthersCarryTheirChange() =>
        Assert.Superset(new HashSet<string> { "rye paste", "ganache", "bound crumble" }, Figures("T4", "T5").Select(figure => figure.Component).ToHashSet());

    [Fact]
    public void Between_T4AndT7_GelFamilyChanges()
    {
        Assert.Contains(Figures("T4", "T7"), figure => figure is { Figure.Name: "dose of pectin", From: null, To: not null });
        Assert.Contains(Figures("T4", "T7"), figure => figure is { Figure.Name: "dose of gelatine", From: not null, To: null });
    }

    [Fact]
    public void Effects_OneMake_AreT2T3AndTheLastThree() => Assert.Equal(["T10", "T11", "T12", "T2", "T3"], Tart.Effects!.OneMake.Order(StringComparer.Ordinal));

    [Fact]
    public void Effects_EveryStep_IsLinkedByATasting() => Assert.All(Tart.Effects!.Effects, effect => Assert.NotNull(effect.Formula));

    // Bay and sugar moved together in T6: its aroma rose beyond chance, and T8, which takes only the sugar back, keeps it.
    [Fact]
    public void Effects_T6AndT8_LayTheAromaToTheBay()
    {
        Assert.True(Effect("T6", "bay aroma") is { StandsAmongAll: true, Formula.Points: > 0.8, Step.IsConfounded: true });
        Assert.False(Effect("T8", "bay aroma").StandsAmongAll);

        static StepEffect Effect(string trial, string scale) => Tart.Effects!.Effects.Single(effect => effect.Step.To.Name == trial && effect.Attribute.Name == scale);
    }

    [Fact]
    public void ReportOf_EveryTasting_GivesOnlyNumbers()
    {
        foreach (var session in Tart.Tastings!.Sessions)
            foreach (var pair in Tart.ReportOf(session.Name).Scales.SelectMany(scale => scale.Pairs))
                Assert.True(double.IsFinite(pair.Points) && pair.Range is not null);
        Assert.Equal("", string.Concat(Tart.ReportOf("S4").Scales.Select(scale => scale.WhyNot)));
    }

    [Fact]
    public void AllergenNotice_OfTheTart_NamesAllAndTheGelatine()
    {
        var notice = AllergenNotice.Of(Tart, ["T1", "T10"]);

        Assert.Equal(["almond", "egg", "milk", "rye", "soya", "wheat"], notice.Held.Contains);
        Assert.Empty(notice.Held.NotLookedAt);
        Assert.Contains(notice.AlsoTell, told => told.What == "gelatine");
    }
}
