using CsCheck;

namespace Tamis.Tests;

public class NamesTests
{
    private static readonly Gen<string> GenName = Gen.Char["aAbÉé _\t\u00a0"].Array[0, 6].Select(letters => new string(letters));

    [Fact]
    public void Comparer_AnyTwoNames_AgreesWithTheirKeys() => Gen.Select(GenName, GenName).Sample((left, right) =>
    {
        var isOne = Names.Key(left) == Names.Key(right);
        Assert.Equal(isOne, Names.Comparer.Equals(left, right));
        Assert.True(!isOne || Names.Comparer.GetHashCode(left) == Names.Comparer.GetHashCode(right));
    });

    [Theory]
    [InlineData("Rye flour", "rye_flour")]
    [InlineData(" rye  flour ", "RYE FLOUR")]
    public void Same_SpellingsOfOneName_AreOne(string left, string right) => Assert.True(Names.Same(left, right));

    [Theory]
    [InlineData("rye flour", "ryeflour")]
    [InlineData("rye flour", "rye flours")]
    public void Same_OtherNames_AreNot(string left, string right) => Assert.False(Names.Same(left, right));

    // Each line: how many of the three ways find the word, from the loosest to the strictest.
    [Theory]
    [InlineData("move to the freezer", "freeze", true, false, false)]
    [InlineData("slice it", "ice", false, false, false)]
    [InlineData("syrup (sugars, water)", "sugar", true, true, false)]
    [InlineData("cocoa butter, Sugar", "sugar", true, true, true)]
    [InlineData("soft-boiled egg", "boiled_egg", true, true, true)]
    [InlineData("rye  flour", "rye flour", true, true, true)]
    public void Holds_WordOfAText_ByHowItEnds(string text, string word, bool begins, bool orMore, bool whole) =>
        Assert.Equal((begins, orMore, whole), (Names.HoldsBeginning(text, word), Names.Holds(text, word), Names.HoldsWhole(text, word)));

    [Theory]
    [InlineData("Vollmilchschokolade, 30 %", "schokolade", true)]
    [InlineData("Schokolade", "schokolade", true)]
    [InlineData("Schokoladenpulver", "schokolade", false)]
    public void HoldsEnding_WordOfAText_ByWhereItEnds(string text, string word, bool ends) => Assert.Equal(ends, Names.HoldsEnding(text, word));
}
