using CsCheck;
using Tamis.Tables;

namespace Tamis.Tests.Tables;

public class NumberTextTests
{
    private static readonly Gen<string> NumberLikeText = Gen.Char["0123456789.,' -"].Array[1, 9].Select(characters => new string(characters));

    [Theory]
    [InlineData("1.5", '.', 1.5)]
    [InlineData("1,5", ',', 1.5)]
    [InlineData("1.234", '.', 1.234)]
    [InlineData("1,234", ',', 1.234)]
    [InlineData("1,234.5", '.', 1234.5)]
    [InlineData("1.234,5", ',', 1234.5)]
    [InlineData("1,234,567", '.', 1234567)]
    [InlineData("1 234,5", ',', 1234.5)]
    [InlineData("1\u202f234,5", ',', 1234.5)]
    [InlineData("1'234.5", '.', 1234.5)]
    [InlineData("-3", '.', -3)]
    [InlineData("\u22123", '.', -3)]
    [InlineData("+3", '.', 3)]
    [InlineData(".5", '.', 0.5)]
    [InlineData("0", ',', 0)]
    [InlineData("1E-05", '.', 0.00001)]
    [InlineData("1,5E+02", ',', 150)]
    [InlineData(" 12 ", '.', 12)]
    public void TryParse_AsWritten_Read(string text, char decimalMark, double value)
    {
        Assert.True(NumberText.TryParse(text, decimalMark, out var read, out _));
        Assert.Equal(value, read);
    }

    [Theory]
    [InlineData("1,5", '.')]
    [InlineData("1.5", ',')]
    [InlineData("1.234", ',')]
    [InlineData("1,234", '.')]
    [InlineData("1.23.4", '.')]
    [InlineData("1,23,4", '.')]
    [InlineData("12,34.5", '.')]
    [InlineData("1 23", '.')]
    [InlineData("1e400", '.')]
    [InlineData("NaN", '.')]
    [InlineData("Infinity", '.')]
    [InlineData("twelve", '.')]
    [InlineData("12 g", '.')]
    [InlineData("0x1F", '.')]
    [InlineData("", '.')]
    [InlineData("-", '.')]
    [InlineData("1-2", '.')]
    public void TryParse_NoPlainNumber_Refused(string text, char decimalMark)
    {
        Assert.False(NumberText.TryParse(text, decimalMark, out var value, out var expected));
        Assert.True(double.IsNaN(value));
        Assert.NotEmpty(expected);
    }

    [Fact]
    public void TryParse_OtherMark_SaysHowToWriteIt()
    {
        NumberText.TryParse("1.234", ',', out _, out var expected);

        Assert.Contains("write 1,234", expected, StringComparison.Ordinal);
        Assert.Contains("thousands", expected, StringComparison.Ordinal);
    }

    [Fact]
    public void TryParse_AnyText_SameUnderBothMarksOrRefusedByOne() => NumberLikeText.Sample(text =>
        !NumberText.TryParse(text, '.', out var point, out _) || !NumberText.TryParse(text, ',', out var comma, out _) || point == comma);

    [Fact]
    public void Write_AnyNumber_ReadsBackTheSame() => Gen.Double.Where(double.IsFinite).Select(Gen.Bool).Sample((value, isComma) =>
    {
        var mark = isComma ? ',' : '.';
        return NumberText.TryParse(NumberText.Write(value, mark), mark, out var read, out _) && read == value;
    });
}
