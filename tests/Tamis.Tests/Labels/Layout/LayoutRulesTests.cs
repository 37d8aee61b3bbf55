using CsCheck;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels.Layout;

public class LayoutRulesTests
{
    public static TheoryData<string> Sets => [.. RuleSets.NamesIn(LabelKit.Folder)];

    [Theory]
    [MemberData(nameof(Sets))]
    public void Size_AnyPack_IsThereAndNoSmallerOnALargerFace(string set)
    {
        var rules = LayoutRules.Of(RuleSets.Load(LabelKit.Folder, set));
        Gen.Select(Gen.Double[1, 5000], Gen.Double[1, 5000], Gen.Double[1, 3000]).Sample((one, other, grams) =>
        {
            var (small, large) = (PackShape.Surface(Math.Min(one, other)), PackShape.Surface(Math.Max(one, other)));
            foreach (var part in new[] { "text", "list", "name", "warning", "net quantity", "nutrient", "footnote" })
                Assert.True(rules.Size(part, small, grams).SizeMillimetres <= rules.Size(part, large, grams).SizeMillimetres, $"{part} of {set} on {small} and {large}");
        });
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Forms_AnyPack_OneIsAlwaysLawful(string set)
    {
        var rules = LayoutRules.Of(RuleSets.Load(LabelKit.Folder, set));
        Gen.Double[1, 5000].Sample(surface => Assert.NotEmpty(rules.FormsFor(PackShape.Surface(surface), null)));
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Rows_EveryRule_NamesItsSource(string set) =>
        Assert.All(LayoutRules.Of(RuleSets.Load(LabelKit.Folder, set)).Rows, row => Assert.False(string.IsNullOrWhiteSpace(row.Origin.Act), row.ToString()));

    // Article 13(2) and (3): an x-height of 1.2 mm, of 0.9 mm where the largest surface is below 80 cm².
    [Theory]
    [InlineData(79.99, 0.9)]
    [InlineData(80, 1.2)]
    [InlineData(138.75, 1.2)]
    public void Size_XHeight_IsThatOfTheArticle(double surface, double xHeight)
    {
        var size = LayoutRules.Of(LabelKit.Eu).Size("list", PackShape.Surface(surface), 320);

        Assert.Equal(xHeight, size.XHeightMillimetres, 9);
        Assert.Equal("Article 13", size.Rule.Origin.Locator[..10]);
    }

    [Fact]
    public void Condition_OnAPage_HasTheSignsOfPrint() =>
        Assert.Equal("largest surface ≥ 80\u202fcm²", LayoutRules.Of(LabelKit.Eu).Size("text", PackShape.Surface(100), null).Rule.Conditions.Single().ToString());

    [Fact]
    public void Size_InPoints_IsThatManySeventySecondsOfAnInch() =>
        Assert.Equal(22 * 25.4 / 72, LayoutRules.Of(LabelKit.Us).Size("energy figure", PackShape.Box(185, 75, 65), 320, "vertical").SizeMillimetres, 9);

    [Fact]
    public void Of_BadCells_AreAllNamedAtOnce()
    {
        using TemporaryFolder folder = new();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(LabelKit.Folder, "codex"))) File.Copy(file, Path.Combine(folder.Path, Path.GetFileName(file)));
        File.WriteAllText(Path.Combine(folder.Path, "layout.csv"), """
            rule,form,part,value,unit,where,source,locator,strength,checked,note
            form,table,table,tabel,,,a law,,law,text,
            size,,text,1.2,mm,,a law,,law,text,
            size,,text,-1,pt,,a law,,law,text,
            size,,text,1,pt,largest surface about 80 cm2,a law,,law,text,
            colour,,text,1,pt,,a law,,law,text,
            bar,,box,0.5,pt,,,,law,text,
            """);

        var problems = Assert.Throws<TableException>(() => LayoutRules.Of(RuleSet.Load(folder.Path))).Problems;

        Assert.Equal(["value", "unit", "value", "where", "rule", "source"], problems.Select(problem => problem.Column));
        Assert.Equal([2, 3, 4, 5, 6, 7], problems.Select(problem => problem.Row));
    }

    [Theory]
    [InlineData("ink,,list,black,,,a law,,law,text,", "value", "a colour")]
    [InlineData("ground,,list,,,,a law,,law,text,", "value", "a colour")]
    [InlineData("tint,,list,5,mm,,a law,,law,text,", "unit", "%")]
    [InlineData("columns,table,panel,2,more than,,a law,,law,text,", "unit", "at least")]
    public void Of_ColoursAndLimitsThatCannotBeRead_NamesTheCell(string row, string column, string expected)
    {
        var problem = Assert.Single(Assert.Throws<TableException>(() => Rules("form,table,table,table,,,a law,,law,text,", row)).Problems);

        Assert.Equal(column, problem.Column);
        Assert.Contains(expected, problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_FormThatAnUnknownOneMustBeTooHighFor_NamesTheForms()
    {
        var problem = Assert.Single(Assert.Throws<TableException>(() => Rules("form,table,table,table,,,a law,,law,text,", "too high,table,panel,upright,,,a law,,law,text,")).Problems);

        Assert.Equal(("upright", "in a row 'too high', one of the forms: table"), (problem.Found, problem.Expected));
    }

    // A form for one column and another for more carry every panel together.
    [Fact]
    public void Of_FormsThatCarryEveryPanelTogether_AreEnough()
    {
        var rules = Rules("form,table,table,table,,,a law,,law,text,", "form,wide,table,wide box,,,a law,,law,text,", "columns,table,panel,1,at most,,a law,,law,text,", "columns,wide,panel,2,at least,,a law,,law,text,");

        Assert.Equal([(true, false), (false, true)], rules.Forms.Select(form => (form.Carries(1), form.Carries(3))));
    }

    private static LayoutRules Rules(params string[] rows)
    {
        using TemporaryFolder folder = new();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(LabelKit.Folder, "codex"))) File.Copy(file, Path.Combine(folder.Path, Path.GetFileName(file)));
        File.WriteAllLines(Path.Combine(folder.Path, "layout.csv"), ["rule,form,part,value,unit,where,source,locator,strength,checked,note", "size,,text,1.2,mm x-height,,a law,,law,text,", .. rows]);
        return LayoutRules.Of(RuleSet.Load(folder.Path));
    }

    // What no other form carries must stand in one that has neither a condition nor a limit of columns.
    [Theory]
    [InlineData("form,table,table,table,,largest surface > 80 cm2,a law,,law,text,", "")]
    [InlineData("form,table,table,table,,,a law,,law,text,", "columns,table,panel,1,at most,,a law,,law,text,")]
    [InlineData("form,table,table,table,,,a law,,law,text,", "too high,table,panel,table,,,a law,,law,text,")]
    public void Of_NoFormForEveryPanel_AsksForOne(string form, string limit)
    {
        Assert.Contains("without a limit of columns", Assert.Single(Assert.Throws<TableException>(() => Rules(form, limit)).Problems).ToString(), StringComparison.Ordinal);
    }

    // Web Content Accessibility Guidelines 2.1: from 1 to 21, whichever is the ink.
    [Fact]
    public void Contrast_AnyColours_IsTheSameBothWaysAndWithinItsLimits() => Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte, Gen.Byte, Gen.Byte, Gen.Byte).Sample((a, b, c, d, e, f) =>
    {
        LabelColours colours = new(new(a, b, c), new(d, e, f));
        Assert.InRange(colours.ContrastRatio, 1, 21 + 1e-9);
        Assert.Equal(colours.ContrastRatio, new LabelColours(colours.Ground, colours.Ink).ContrastRatio, 12);
        Assert.Equal(colours.Ink, LabelColour.Parse(colours.Ink.ToString()));
    });
}
