using Tamis.Statistics.MixedModels;

namespace Tamis.Statistics.Tests.MixedModels;

public class MixedFormulaTests
{
    [Theory]
    [InlineData("y ~ a + (1 | g)", "y ~ 1 + a + (1 | g)")]
    [InlineData("y ~ (1 | g) + a * b", "y ~ 1 + a + b + a:b + (1 | g)")]
    [InlineData("y ~ (1 | g)", "y ~ 1 + (1 | g)")]
    [InlineData("y ~ 0 + a + (1|g:h)", "y ~ 0 + a + (1 | g:h)")]
    [InlineData("y ~ a + (1 | g/h)", "y ~ 1 + a + (1 | g) + (1 | g:h)")]
    [InlineData("y ~ x + (x | g)", "y ~ 1 + x + (1 + x | g)")]
    [InlineData("y ~ x + (0 + x | g) + (1 | g)", "y ~ 1 + x + (0 + x | g) + (1 | g)")]
    public void Parse_Model_IsExpanded(string text, string expanded) => Assert.Equal(expanded, MixedFormula.Parse(text).ToString());

    [Theory]
    [InlineData("y ~ a", "no random term")]
    [InlineData("y ~ a + 1 | g", "brackets")]
    [InlineData("y ~ a - (1 | g)", "expected + or ~")]
    [InlineData("y ~ a + (a:b | g)", "one column a slope")]
    [InlineData("y ~ a + (1 | g + h)", "behind |")]
    [InlineData("y ~ a + (1 | g) + (1 | g)", "twice")]
    public void Parse_NoModel_SaysWhy(string text, string why) =>
        Assert.Contains(why, Assert.Throws<FormatException>(() => MixedFormula.Parse(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void Without_OneOfTwoTerms_LeavesTheOther()
    {
        var model = MixedFormula.Parse("y ~ a + (1 | g/h)");

        Assert.Equal("y ~ 1 + a + (1 | g:h)", model.Without(model.Random[0])!.ToString());
        Assert.Null(MixedFormula.Parse("y ~ a + (1 | g)").Without(MixedFormula.Parse("y ~ (1 | g)").Random[0]));
    }
}
