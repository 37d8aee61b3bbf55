using Tamis.Physics;
using Tamis.Verification;

namespace Tamis.Tests.Physics.Migration;

public class KeepingDaysTests
{
    [Fact]
    public void Of_ABareShell_GoesSoftSoonerThanAFilmedOne()
    {
        var bare = KeepingDays.Of(Stacks.Tart(FatFilm.None), "shell", 30);
        var filmed = KeepingDays.Of(Stacks.Tart(MigrationData.Kit.Film("cocoa butter", 0.4)), "shell", 30);

        Assert.InRange(bare.Days.Value, 0.05, filmed.Days.Value);
        Assert.False(bare.IsKept);
        Assert.Equal(false, bare.IsKeptForEver);
        Assert.Contains(bare.Days.Working.From, step => step.Step == "biscuit and shortcrust" && step.Value == 0.45);
    }

    [Fact]
    public void Of_ALayerPastItsLimitAlready_SaysSoAndAtWhichWaterItWouldStand()
    {
        var keeping = KeepingDays.Of(WaterStack.Of([Stacks.Shell(0.6), Stacks.Sponge()], [], 20), "shell", 5);

        Assert.True(keeping.IsPassedAtStart);
        Assert.Equal(0, keeping.Days.Value);
        var held = MigrationData.Kit.Isotherm("biscuit and shortcrust").WaterGramsPerGramDry(0.45);
        Assert.Equal(100 * held / (1 + held), keeping.LimitWaterPercent, 9);
    }

    [Fact]
    public void Of_TheDayOfTheLimit_IsTheDayOfTheCourse()
    {
        var stack = Stacks.Tart(FatFilm.None);
        var day = KeepingDays.Of(stack, "shell", 20).Days.Value;

        Assert.Equal(0.45, WaterCourse.Of(stack, day, new(24, 1600)).Of("shell").MeanWaterActivity[^1], 2);
    }

    [Fact]
    public void Of_TheSurface_PassesBeforeTheMean() =>
        Assert.True(KeepingDays.Of(Stacks.Tart(FatFilm.None), "shell", 20, LimitAt.Surface).Days.Value < KeepingDays.Of(Stacks.Tart(FatFilm.None), "shell", 20).Days.Value);

    [Fact]
    public void Of_ALayerThatKeeps_HasNoDay()
    {
        var keeping = KeepingDays.Of(WaterStack.Of([Stacks.Shell(), Stacks.Sponge(0.38)], [], 20), "shell", 30);

        Assert.True(keeping.IsKept);
        Assert.True(keeping.IsKeptForEver);
        Assert.False(keeping.Days.IsKnown);
        Assert.Null(keeping.Between.Latest);
    }

    [Fact]
    public void Of_AnIntervalOfDiffusivity_BoundsTheDay()
    {
        var diffusivity = Stacks.Diffusivity(3e-12) with { Range = Interval.Between(1e-12, 1e-11) };
        var keeping = KeepingDays.Of(WaterStack.Of([Stacks.Shell().WithDiffusivity(diffusivity), Stacks.Sponge()], [], 20), "shell", 60);

        Assert.InRange(keeping.Days.Value, keeping.Between.Earliest!.Value, keeping.Between.Latest!.Value);
        Assert.Equal(Interval.Between(keeping.Between.Earliest.Value, keeping.Between.Latest.Value), keeping.Days.Range);
    }

    [Fact]
    public void Of_ASpongeOnADryBase_GoesDry()
    {
        var keeping = KeepingDays.Of(WaterStack.Of([Stacks.Shell(0.2, 12, 1e-10), Stacks.Sponge(0.8, 5)], [], 20), "sponge", 60);

        Assert.Equal(LimitSide.DryBelow, keeping.Limit.Side);
        Assert.InRange(keeping.Days.Value, 0.01, 60);
        Assert.InRange(keeping.EquilibriumWaterActivity, 0.2, 0.7);
    }

    [Fact]
    public void ByThickness_AThickerFilm_BuysDays()
    {
        var table = KeepingDays.ByThickness(Stacks.Tart(MigrationData.Kit.Film("dark chocolate", 0.3)), 0, [0, 0.2, 0.4, 0.8], "shell", 60);

        Assert.Equal([0, 0.2, 0.4, 0.8], table.Select(row => row.ThicknessMillimetres));
        Assert.All(table.Zip(table.Skip(1)), pair => Assert.True(pair.First.Keeping.Days.Value < pair.Second.Keeping.Days.Value));
    }

    [Fact]
    public void ByThickness_WithoutAFilm_IsRefused() =>
        Assert.Contains("no film with a permeability above layer 0", Assert.Throws<ArgumentException>(() => KeepingDays.ByThickness(Stacks.Tart(FatFilm.None), 0, [0.1], "shell", 10)).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_ALayerWithoutLimit_IsRefused() =>
        Assert.Contains("has no water activity that it must not pass", Assert.Throws<ArgumentException>(() => KeepingDays.Of(WaterStack.Of([Stacks.Shell() with { Limit = null }], [], 20), "shell", 10)).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_AnUnknownLayer_NamesThoseThatAre() =>
        Assert.Contains("it has shell, sponge", Assert.Throws<KeyNotFoundException>(() => KeepingDays.Of(Stacks.Tart(FatFilm.None), "shel", 10)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(-0.1, 0, "thickness is 0 mm or more, found -0.1")]
    [InlineData(0.1, 1.5, "bare share of its area is from 0 to 1, found 1.5")]
    public void Film_OutOfRange_IsRefusedInASentence(double thickness, double bare, string sentence) =>
        Assert.Contains(sentence, Assert.Throws<ArgumentException>(() => MigrationData.Kit.Film("cocoa butter", thickness, bare)).Message, StringComparison.Ordinal);

    [Fact]
    public void DiffusionRatio_InAFridge_IsMuchSlower()
    {
        var energy = PhysicsData.Kit.Constant("activation energy of water diffusion in sponge");

        Assert.InRange(WaterVapour.DiffusionRatio(4, 20, energy.Value), 0.05, 0.12);
        Assert.Equal(1, WaterVapour.DiffusionRatio(20, 20, energy.Value), 12);
    }

    [Fact]
    public void Flux_ThroughAFilm_HasItsRangeAndSource()
    {
        var flux = MigrationData.Kit.Film("dark chocolate", 0.3).FluxGramsPerSquareMetreDay(new("wet side", 0.9, "", Stacks.Made), new("dry side", 0.4, "", Stacks.Made), new("temperature", 20, "°C", Stacks.Made));

        Assert.Equal(6.74, flux.Value, 1);
        Assert.Equal(flux.Value / 2, flux.Range!.Value.Low, 9);
        Assert.True(flux.IsSound);
    }

    // Each row names its source.
    [Fact]
    public void Quantities_EveryPublishedRow_IsMet()
    {
        var outcomes = Verifier.Run(CheckFile.Read(Repository.Path("data", "published", "kitchen-migration.csv")), MigrationQuantities.All);

        Assert.True(outcomes.Count >= 15);
        Assert.Empty(outcomes.Where(outcome => outcome.Verdict != CheckVerdict.Agrees).Select(outcome => $"row {outcome.Row.RowNumber}: {outcome.Row.Inputs} is {outcome.Computed}, expected {outcome.Row.Expected}; {outcome.Reason}"));
    }
}
