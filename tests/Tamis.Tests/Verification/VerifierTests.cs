using Tamis.Tables;
using Tamis.Verification;

namespace Tamis.Tests.Verification;

public class VerifierTests
{
    private static readonly Dictionary<string, Func<CheckInputs, CheckValue>> Some = new()
    {
        ["double_g"] = inputs => CheckValue.Of(2 * inputs.Number("mass_g")),
        ["echo"] = inputs => CheckValue.Of(inputs.Text("text")),
        ["nothing"] = _ => CheckValue.Of(double.NaN),
    };

    private static CheckOutcome Run(string quantity, string inputs, string expected, string tolerance)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("checks.csv", $"topic,quantity,inputs,expected,unit,tolerance,source,checked\nt,{quantity},{inputs},{expected},g,{tolerance},by hand,computed\n");
        return Assert.Single(Verifier.Run(CheckFile.Read(path), Some));
    }

    public static TheoryData<string> PublishedFiles() => [.. Directory.EnumerateFiles(KitFolder.Data("published"), "*.csv").Select(path => Path.GetFileName(path))];

    // The sources stand in the rows themselves.
    [Theory]
    [MemberData(nameof(PublishedFiles))]
    public void Run_PublishedFigures_KitAgreesWithEach(string file)
    {
        var rows = CheckFile.Read(Path.Combine(KitFolder.Data("published"), file));

        var misses = Verifier.Run(rows, Quantities.All).Where(outcome => outcome.Verdict != CheckVerdict.Agrees);

        Assert.NotEmpty(rows);
        Assert.Empty(misses.Select(miss => $"{file} row {miss.Row.RowNumber}: {miss.Row.Inputs} gives '{miss.Computed}', expected {miss.Row.Expected}: {miss.Reason}"));
    }

    [Fact]
    public void Published_EveryFigure_NamesItsSource() =>
        Assert.DoesNotContain(CheckFile.Published(), row => row.Source.Length == 0 || row.Checked is not ("text" or "computed" or "from memory" or "common practice"));

    [Theory]
    [InlineData("double_g", "mass_g=2", "4", "0", CheckVerdict.Agrees)]
    [InlineData("double_g", "mass_g=2", "4", "exact", CheckVerdict.Agrees)]
    [InlineData("double_g", "mass_g=2", "4.01", "0.02", CheckVerdict.Agrees)]
    [InlineData("double_g", "mass_g=2", "4.03", "0.02", CheckVerdict.Misses)]
    [InlineData("double_g", "mass_g=2", "3 | 4", "exact", CheckVerdict.Agrees)]
    [InlineData("double_g", "mass_g=2", "4.0e0", "1e-9", CheckVerdict.Agrees)]
    [InlineData("double_g", "mass_g=2", "four", "exact", CheckVerdict.Misses)]
    [InlineData("nothing", "", "4", "1", CheckVerdict.Misses)]
    [InlineData("echo", "text=0 g", "0 g | <0.5 g", "exact", CheckVerdict.Agrees)]
    [InlineData("echo", "text=<0.5 g", "0 g | <0.5 g", "exact", CheckVerdict.Agrees)]
    [InlineData("echo", "text=0 G", "0 g | <0.5 g", "exact", CheckVerdict.Misses)]
    [InlineData("echo", "text=unknown", "4", "0.1", CheckVerdict.Misses)]
    public void Run_OneRow_Verdict(string quantity, string inputs, string expected, string tolerance, CheckVerdict verdict) =>
        Assert.Equal(verdict, Run(quantity, inputs, expected, tolerance).Verdict);

    [Fact]
    public void Run_NumberBesideExpected_GivesTheDifference() => Assert.Equal(0.25, Run("double_g", "mass_g=2.125", "4", "1").Difference);

    [Theory]
    [InlineData("tripel_g", "mass_g=2", "no quantity 'tripel_g'")]
    [InlineData("double", "mass_g=2", "near ones: double_g")]
    [InlineData("double_g", "g=2", "lack 'mass_g'")]
    [InlineData("double_g", "mass_g=two", "'two', not a number")]
    [InlineData("double_g", "mass_g", "not name=value")]
    [InlineData("double_g", "mass_g=1;mass_g=2", "stands twice")]
    public void Run_WhatCannotBeComputed_IsAMissThatSaysWhy(string quantity, string inputs, string reason)
    {
        var outcome = Run(quantity, inputs, "4", "exact");

        Assert.Equal(CheckVerdict.Misses, outcome.Verdict);
        Assert.Contains(reason, outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_BadTolerance_NamesTheCell()
    {
        var error = Assert.Throws<TableException>(() => Run("double_g", "mass_g=2", "4", "about"));

        Assert.Equal((2, "tolerance"), (error.Problems[0].Row, error.Problems[0].Column));
    }

    [Fact]
    public void Merge_OneNameTwice_Refused() => Assert.Throws<InvalidOperationException>(() => Quantities.Merge(Some, Some));

    [Theory]
    [InlineData("lines=a:1|a:2;base=a;of=b", "ratio")]
    [InlineData("lines=a:0|b:2;base=a;of=b", "ratio")]
    [InlineData("lines=a|b:2;base=a;of=b", "ratio")]
    [InlineData("text=2 g;decimal_mark=dot", "quantity_mass_g")]
    [InlineData("text=2 cups;measures=imperial", "quantity_mass_g")]
    public void Run_KitsOwnQuantityWithBadInputs_IsAMiss(string inputs, string quantity)
    {
        CheckRow row = new("x.csv", 2, "t", quantity, inputs, "1", "g", 1, "by hand", "computed", "");

        Assert.Equal(CheckVerdict.Misses, Assert.Single(Verifier.Run([row], Quantities.All)).Verdict);
    }
}
