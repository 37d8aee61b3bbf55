namespace Tamis.Views.Tests.Numbers;

public class TypesetTests
{
    [Theory]
    [InlineData("keep below 22 °C", "keep below 22\u202f°C")]
    [InlineData("from -18 to 4 °C", "from \u221218 to 4\u202f°C")]
    [InlineData("largest surface under 10 cm2", "largest surface under 10\u202fcm²")]
    [InlineData("10 cm2; drink with more than 1.2 % vol", "10\u202fcm²; drink with more than 1.2\u202f% vol")]
    [InlineData("5 g of salt, 5 gas rings", "5\u202fg of salt, 5 gas rings")]
    [InlineData("room 4 m2x", "room 4 m2x")]
    public void Text_FiguresOfACook_AreSetAsAPageSetsItsOwn(string written, string set) => Assert.Equal(set, Typeset.Text(written));
}
