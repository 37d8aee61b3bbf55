using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.Models;

public class ModelFormulaTests
{
    [Theory]
    [InlineData("y ~ a", "y ~ 1 + a")]
    [InlineData("y ~ 1", "y ~ 1")]
    [InlineData("y ~ a * b", "y ~ 1 + a + b + a:b")]
    [InlineData("y ~ a:b + a + b", "y ~ 1 + a + b + a:b")]
    [InlineData("y ~ a * b * c", "y ~ 1 + a + b + c + a:b + a:c + b:c + a:b:c")]
    [InlineData("y ~ a * b - a:b", "y ~ 1 + a + b")]
    [InlineData("y ~ (a + b) : c", "y ~ 1 + a:c + b:c")]
    [InlineData("y ~ a:b + b:a", "y ~ 1 + a:b")]
    [InlineData("y ~ 0 + x1 + x2 + x1:x2", "y ~ 0 + x1 + x2 + x1:x2")]
    [InlineData("y ~ x - 1", "y ~ 0 + x")]
    [InlineData("y~x+I(x^2)", "y ~ 1 + x + I(x^2)")]
    [InlineData("`bay aroma` ~ `bay leaf`", "bay aroma ~ 1 + bay leaf")]
    public void Parse_Model_IsExpanded(string text, string expanded) => Assert.Equal(expanded, ModelFormula.Parse(text).ToString());

    [Theory]
    [InlineData("y", "'~'")]
    [InlineData("y ~ a +", "a column name")]
    [InlineData("y ~ a b", "+, -, * or :")]
    [InlineData("y ~ I(x^)", "a whole power")]
    [InlineData("y ~ (a + b", "')'")]
    [InlineData("y ~ `a", "closing back-tick")]
    [InlineData("y ~ a + (1 | g)", "random term")]
    public void Parse_NoModel_SaysWhatWasExpected(string text, string expected) =>
        Assert.Contains(expected, Assert.Throws<FormatException>(() => ModelFormula.Parse(text)).Message, StringComparison.Ordinal);
}
