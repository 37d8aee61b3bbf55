namespace Tamis.Notebooks.Tests;

public class ExpectTests
{
    [Fact]
    public void Near_WithinAndAtTheLimit_IsQuiet()
    {
        Expect.Near(1.84, 1.8425, within: 0.005);
        Expect.Near(2, 1.5, within: 0.5);
    }

    [Theory]
    [InlineData(1.90)]
    [InlineData(double.NaN)]
    public void Near_FurtherOrUnknown_SaysBothFigures(double found)
    {
        var problem = Assert.Throws<ExpectationException>(() => Expect.Near(1.84, found, within: 0.005));
        Assert.StartsWith("The text says 1.84, the sheets give ", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EqualAndTrue_Broken_SayTheStatement()
    {
        Expect.Equal("T8", "T8");
        Expect.True(true, "T8 is liked best");
        Assert.Contains("'T10'", Assert.Throws<ExpectationException>(() => Expect.Equal("T8", "T10")).Message, StringComparison.Ordinal);
        Assert.Contains("T8 is liked best", Assert.Throws<ExpectationException>(() => Expect.True(false, "T8 is liked best")).Message, StringComparison.Ordinal);
    }
}
