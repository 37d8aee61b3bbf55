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
}
