using CsCheck;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Tests.Physics.Migration;

public class SorptionTests
{
    private static readonly Source Made = new("made for a test", Evidence.Estimate);

    [Fact]
    public void Gab_BothWaysRound_IsTheSame() =>
        Gen.Select(Gen.Double[0.001, 0.2], Gen.Double[0.2, 60], Gen.Double[0.3, 1], Gen.Double[0.001, 0.98]).Sample((monolayer, c, k, activity) =>
        {
            var gab = Gab.Of(monolayer, c, k);
            var water = gab.WaterGramsPerGramDry(activity);
            return water > 0 && Math.Abs(gab.WaterActivity(water) - activity) < 1e-9;
        });

    [Fact]
    public void Gab_AtTheMonolayer_HasOneLayerOfWater()
    {
        // Brunauer, Emmett and Teller 1938: with K = 1 the first layer is full at a = 1/(1 + √C).
        var gab = Gab.Of(0.05, 9, 1);

        Assert.Equal(0.05, gab.WaterGramsPerGramDry(0.25), 12);
    }

    [Theory]
    [InlineData(0, 10, 0.9, "first layer of water")]
    [InlineData(0.05, -1, 0.9, "C is a number above 0, found -1")]
    [InlineData(0.05, 10, 1.2, "K is above 0 and at most 1, found 1.2")]
    [InlineData(double.NaN, 10, 0.9, "found NaN")]
    public void Gab_OutOfRange_IsRefusedInASentence(double monolayer, double c, double k, string sentence) =>
        Assert.Contains(sentence, Assert.Throws<ArgumentException>(() => Gab.Of(monolayer, c, k)).Message, StringComparison.Ordinal);

    [Fact]
    public void Gab_SeveralOutOfRange_NamesAll()
    {
        var message = Assert.Throws<ArgumentException>(() => Gab.Of(2, 0, 0)).Message;

        Assert.Contains("first layer", message, StringComparison.Ordinal);
        Assert.Contains("C is", message, StringComparison.Ordinal);
        Assert.Contains("K is", message, StringComparison.Ordinal);
    }

    [Fact]
    public void OfPoints_BetweenAndBeyondThem_RisesSteadily()
    {
        var sucrose = MigrationData.Kit.Isotherm("sucrose, amorphous");
        double[] water = [.. Enumerable.Range(1, 300).Select(i => sucrose.WaterActivity(i * 0.01))];

        // Sloan and Labuza 1975, as reprinted: 35 g of water per 100 g at a water activity of 0.80.
        Assert.Equal(0.80, sucrose.WaterActivity(0.35), 9);
        Assert.All(water.Zip(water.Skip(1)), pair => Assert.True(pair.First < pair.Second));
        Assert.All(water, activity => Assert.InRange(activity, 0, 0.9999));
        Assert.Equal(0.62, sucrose.WaterActivity(sucrose.WaterGramsPerGramDry(0.62)), 12);
    }

    [Fact]
    public void OfPoints_ThatFall_AreRefused() =>
        Assert.Contains("must rise", Assert.Throws<ArgumentException>(() => SorptionIsotherm.OfPoints("x", [(0.5, 0.2), (0.6, 0.1)], Made)).Message, StringComparison.Ordinal);

    [Fact]
    public void OfComposition_ASyrupByRaoult_IsAskedBothWays()
    {
        // Raoult for sucrose: moles of water over moles of all.
        static double Raoult(double water) => water / 18.015 / (water / 18.015 + 1 / 342.3);
        var syrup = SorptionIsotherm.OfComposition("syrup", Raoult, Interval.Between(0.2, 20), Made);

        Assert.Equal(Raoult(0.5), syrup.WaterActivity(0.5), 12);
        Assert.Equal(0.5, syrup.WaterGramsPerGramDry(Raoult(0.5)), 9);
        // Raoult is in proportion in a/(1 − a), which is how the isotherm goes on beyond what it was asked for.
        Assert.Equal(Raoult(0.05), syrup.WaterActivity(0.05), 12);
        Assert.Equal(Raoult(50), syrup.WaterActivity(50), 12);
        Assert.Equal(18.015 / 342.3, 1 / (syrup.WaterActivity(1) / (1 - syrup.WaterActivity(1))), 9);
    }

    [Fact]
    public void OfComposition_AFunctionThatFalls_IsRefused() =>
        Assert.Contains("must rise with its water", Assert.Throws<ArgumentException>(() => SorptionIsotherm.OfComposition("x", water => 0.9 - 0.1 * water, Interval.Between(0.1, 2), Made)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(1)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void WaterGramsPerGramDry_ActivityOutOfRange_IsRefused(double activity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MigrationData.Kit.Isotherm("sponge").WaterGramsPerGramDry(activity));

    [Fact]
    public void Kit_WhatWasNotMeasured_IsNeverPublished() =>
        Assert.All(MigrationData.Kit.Isotherms.Values.Where(isotherm => isotherm.IsIllustrative), isotherm => Assert.Equal(Evidence.Estimate, isotherm.Source.Evidence));

    [Fact]
    public void Kit_AMistypedName_IsAnsweredWithTheNearest() =>
        Assert.Contains("near ones: sponge", Assert.Throws<KeyNotFoundException>(() => MigrationData.Kit.Isotherm("spnge")).Message, StringComparison.Ordinal);

    [Fact]
    public void Kit_EveryFamilyOfTheDemo_HasALayerKind() => Assert.Empty(
        SheetFile.Read(Repository.Path("data", "desserts", "damson-tart", "components.csv")).Rows.Select(row => row["family"]).Except(MigrationData.Kit.Kinds.Keys, Names.Comparer));

    [Fact]
    public void Kit_AWetFamily_TakesItsIsothermFromItsComposition()
    {
        Assert.Null(MigrationData.Kit.Kinds["gelatine gel"].Isotherm);
        Assert.Equal("biscuit and shortcrust", MigrationData.Kit.Kinds["tart shell, lined"].Limit!.Figure.Name);
    }

    [Fact]
    public void Kit_AShell_HoldsWaterInItsStarchFibreAndProteinAlone()
    {
        var kind = MigrationData.Kit.Kinds["tart shell, lined"];
        var shell = kind.IsothermOf("shell", 0.4)!;

        Assert.Equal(0.4 * kind.Isotherm!.WaterGramsPerGramDry(0.45), shell.WaterGramsPerGramDry(0.45), 12);
        Assert.Equal(0.45, shell.WaterActivity(shell.WaterGramsPerGramDry(0.45)), 9);
        Assert.True(shell.IsIllustrative);
        Assert.Throws<ArgumentOutOfRangeException>(() => kind.IsothermOf("shell", 0));
    }

    [Fact]
    public void At_TheTemperatureOfAFridge_IsSlowerAndLessSure()
    {
        var sponge = MigrationData.Kit.Diffusivity("sponge");
        var cold = MigrationData.At(sponge, 4);

        Assert.InRange(cold.Value / sponge.Value, 0.05, 0.12);
        Assert.True(cold.Range!.Value.High / cold.Range.Value.Low > sponge.Range!.Value.High / sponge.Range.Value.Low);
        Assert.Equal(1, MigrationData.At(sponge, 20).Value / sponge.Value, 12);
        Assert.Throws<ArgumentOutOfRangeException>(() => MigrationData.At(sponge, -18));
    }

    [Fact]
    public void Read_BadCells_AreAllNamedAtOnce()
    {
        using TemporaryFolder folder = new();
        folder.Write("sorption.csv", "material,monolayer_g_per_g,c,k,temperature_c,low,high,status,notes,source,checked\nx,0.02,-3,0.9,20,0.1,0.8,guessed,,me,estimate\ny,0.02,3,0.9,20,0.9,0.8,illustrative,,me,estimate\n");
        folder.Write("sorption-points.csv", "solid,form,water_activity,water_g_per_100g,notes,source,checked\nz,dry,0.6,10,,me,text\nz,dry,0.7,9,,me,text\n");
        folder.Write("water-movement.csv", "kind,name,value,unit,low,high,temperature_c,notes,source,checked\nspeed,x,1,m²/s,,,,,me,estimate\nsoft above,x,1.4,,,,,,me,estimate\n");
        folder.Write("migration-families.csv", "family,isotherm,of,diffusivity,limit,notes,source,checked\na,spong,,x,,,me,estimate\n");

        var problems = Assert.Throws<TableException>(() => MigrationData.Read(PhysicsData.Load(folder.Path))).Problems;

        Assert.Equal(["c", "status", "high", "water_g_per_100g", "kind", "value", "isotherm", "diffusivity"], problems.Select(problem => problem.Column).Distinct());
        Assert.Contains(problems, problem => problem.ToString().Contains("water-movement.csv, row 3, column 'value': found '1.4'", StringComparison.Ordinal));
    }
}
