using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class SupplierListTests
{
    private static IReadOnlyList<SupplierPart> Read(string text, List<string>? unknown = null) =>
        SupplierList.Read(text, Additives.Of(LabelKit.Eu), LabelWords.Of(LabelKit.Eu.Folder), unknown ?? []);

    [Fact]
    public void Read_ClassInThePlural_GoesOnAsLongAsAdditivesFollow()
    {
        var parts = Read("sugar, emulsifiers: lecithins (rapeseed), E 476, natural flavouring");

        Assert.Equal(["sugar", "lecithins", "E 476", "natural flavouring"], parts.Select(part => part.Name));
        Assert.Equal([null, "emulsifier", "emulsifier", null], parts.Select(part => part.Class));
        Assert.Equal("rapeseed", Assert.Single(parts[1].Parts).Name);
    }

    [Fact]
    public void Read_ClassInTheSingular_NamesOneAdditive() =>
        Assert.Equal(["gelling agent", null], Read("gelling agent: pectins, sugar").Select(part => part.Class));

    // Each class of the law in both numbers: none is taken for the plural of the one that stands before it in words.csv, as acidity regulator was of acids.
    [Theory]
    [InlineData("acidity regulator: citric acid", "acidity regulator")]
    [InlineData("acidity regulators: citric acid", "acidity regulator")]
    [InlineData("acid: citric acid", "acid")]
    [InlineData("acids: citric acid", "acid")]
    [InlineData("modified starches: citric acid", "modified starch")]
    [InlineData("propellent gases: citric acid", "propellent gas")]
    public void Read_EveryClass_KeepsItsOwnWord(string text, string additiveClass) => Assert.Equal([additiveClass], Read(text).Select(part => part.Class));

    [Theory]
    [InlineData("apricot puree 32 %, sugar", "apricot puree", 32)]
    [InlineData("cocoa 14,5%, sugar", "cocoa", 14.5)]
    [InlineData("fruit (apple 60 %, pear) 35 %, sugar", "fruit", 35)]
    public void Read_Percentage_IsTakenFromTheName(string text, string name, double percent)
    {
        var part = Read(text)[0];

        Assert.Equal(name, part.Name);
        Assert.Equal(percent, part.Percent);
        Assert.Equal(2, Read(text).Count);
    }

    [Fact]
    public void Read_UnknownBehindAClass_IsTold()
    {
        List<string> unknown = [];
        Read("emulsifier: moondust", unknown);

        Assert.Equal(["moondust"], unknown);
    }

    [Theory]
    [InlineData("")]
    [InlineData(",;, ")]
    [InlineData("(((")]
    [InlineData("a) b (c")]
    [InlineData("emulsifier:")]
    public void Read_Nonsense_DoesNotBreak(string text) => Assert.NotNull(Read(text));
}
