using Tamis.Formulas;

namespace Tamis.Tests.Formulas;

public class PieceWordTests
{
    [Theory]
    [InlineData("leaf", "leaves")]
    [InlineData("egg yolk", "egg yolks")]
    [InlineData("pinch", "pinches")]
    [InlineData("pie", "pies")]
    [InlineData("berry", "berries")]
    [InlineData("tray", "trays")]
    [InlineData("box", "boxes")]
    [InlineData("tbsp", "tbsps")]
    public void Plural_AndBack_IsTheSameWord(string one, string many)
    {
        Assert.Equal(many, PieceWord.Plural(one));
        Assert.Equal(one, PieceWord.Singular(many));
        Assert.Equal(many, PieceWord.Plural(many));
    }
}
