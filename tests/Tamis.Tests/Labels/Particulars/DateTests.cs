using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class DateTests
{
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));

    [Fact]
    public void Of_Loaf_AsksWithoutDeciding()
    {
        var prompt = DatePrompt.Of(Loaf, "V1", "eu");

        Assert.Equal("Best before", prompt.Mark!.Wording["en"]);
        Assert.Equal("day and month", prompt.Form!.Name);
        // About 0.84 by Norrish, as the second program computed from the same sheets.
        Assert.Equal(0.84, prompt.Components[0].Ratio!.Value, 0.01);
        Assert.Null(prompt.OverChillingLimit);
    }

    [Fact]
    public void Of_MoisterTrial_LiesOverTheChillingLimit() => Assert.NotNull(DatePrompt.Of(Loaf, "V3", "eu").OverChillingLimit);

    [Fact]
    public void Of_Tart_PutsTheMoistestFirstAndNamesWhatIsNotKnown()
    {
        var prompt = DatePrompt.Of(Tart, "T10", "eu");

        Assert.Equal("mousse", prompt.Components[0].Component);
        Assert.Contains("shell", prompt.NotKnown);
        Assert.Null(prompt.Mark);
    }

    [Theory]
    [InlineData("eu", "use by; best before; best before end")]
    [InlineData("us", "best before")]
    [InlineData("ca", "best before; packaged on")]
    public void Marks_RuleSet_AreItsOwn(string rules, string expected) => Assert.Equal(expected, string.Join("; ", DateRules.Of(RuleSets.Load(LabelKit.Folder, rules)).Marks.Select(mark => mark.Name)));

    [Fact]
    public void Marks_Union_HaveTheirWordsInFiveLanguages() => Assert.All(DateRules.Of(LabelKit.Eu).Marks, mark => Assert.Equal(["de", "en", "es", "fr", "it"], mark.Wording.Keys.Order(StringComparer.Ordinal)));
}
