using Tamis.Labels;
using Tamis.Tests.Composition;
using Tamis.Tests.Labels;
using Tamis.Verification;

namespace Tamis.Tests.Verification;

public class LabelQuantitiesTests
{
    private static readonly IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> Quantities = LabelQuantities.Of(new(() => ShippedTable.Table), name => RuleSets.Load(LabelKit.Folder, name));

    // Each row names its source: 21 CFR 101.9, Regulation (EU) No 1169/2011, Commission guidance of December 2012, panels computed by two programs from USDA SR28.
    [Fact]
    public void Of_EveryPublishedRow_IsMet()
    {
        var outcomes = Verifier.Run(CheckFile.Read(Repository.Path("data", "published", "labels.csv")), Quantities);

        Assert.True(outcomes.Count >= 55);
        Assert.Empty(outcomes.Where(outcome => outcome.Verdict != CheckVerdict.Agrees).Select(outcome => $"row {outcome.Row.RowNumber}: {outcome.Row.Inputs} is {outcome.Computed}, expected {outcome.Row.Expected}; {outcome.Reason}"));
    }

    [Theory]
    [InlineData("declared_amount", "rule_set=mars;nutrient=fat;amount=1;unit=g", "No rule set is called 'mars'")]
    [InlineData("declared_amount", "rule_set=eu;nutrient=fats;amount=1;unit=g", "near ones: fat")]
    [InlineData("declared_amount", "rule_set=eu;nutrient=fat;amount=one;unit=g", "'one', not a number")]
    [InlineData("declared_amount", "rule_set=eu;nutrient=fat;amount=1;unit=mg", "has it in g")]
    [InlineData("declared_percent", "rule_set=eu;nutrient=fibre;amount=1;unit=g", "no reference value")]
    [InlineData("declared_energy", "rule_set=eu;fat_g=1;salatrim_g=1", "'salatrim_g'")]
    [InlineData("panel_energy", "lines=SR28 01145:100;water_lost_g=0;rule_set=us;protein_factor=food;energy_unit=kJ", "no energy in kJ")]
    public void Run_WhatTheRulesDoNotHave_IsAMissThatSaysWhy(string quantity, string inputs, string reason)
    {
        CheckRow row = new("x.csv", 2, "labels", quantity, inputs, "1", "text", null, "by hand", "computed", "");

        var outcome = Assert.Single(Verifier.Run([row], Quantities));

        Assert.Equal(CheckVerdict.Misses, outcome.Verdict);
        Assert.Contains(reason, outcome.Reason, StringComparison.Ordinal);
    }
}
