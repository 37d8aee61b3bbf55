namespace Tamis.Views.Tests.Words;

public class SaysTests
{
    private static string Said(Html html) => html.ToPlainText().Replace('\u202f', ' ');

    [Theory]
    [InlineData(1.3, 0.5, 2.1, Finding.Gain)]
    [InlineData(-0.9, -1.6, -0.2, Finding.Loss)]
    [InlineData(0.8, 0.01, 1.6, Finding.AtEdge)]
    [InlineData(-0.8, -1.6, -0.04, Finding.AtEdge)]
    [InlineData(0.8, -0.04, 1.6, Finding.AtEdge)]
    [InlineData(-0.2, -1.6, 1.2, Finding.NotShown)]
    public void Finding_Interval_IsJudgedAsItIsPrinted(double points, double low, double high, Finding expected) =>
        Assert.Equal(expected, new Difference(points, Interval.Between(low, high)).Finding);

    [Fact]
    public void Finding_WithoutInterval_ShowsNothing() => Assert.Equal(Finding.NotShown, new Difference(3, null).Finding);

    [Fact]
    public void Of_EveryFinding_IsOneSentenceWithItsFigures()
    {
        Assert.Equal("T2 is liked better than T1 by 1.3 points of 10 (0.5 to 2.1).", Said(Says.English.Of("liking", true, "T2", "T1", new(1.3, Interval.Between(0.5, 2.1)))));
        Assert.Equal("T7 is liked less than T1 by 1.3 points of 10 (0.5 to 2.1).", Said(Says.English.Of("liking", true, "T7", "T1", new(-1.3, Interval.Between(-2.1, -0.5)))));
        Assert.Equal("T2 has less mousse firmness than T1: −0.9 points of 10 (−1.6 to −0.2).", Said(Says.English.Of("mousse firmness", false, "T2", "T1", new(-0.9, Interval.Between(-1.6, -0.2)))));
        Assert.Equal("T4 may be liked better than T1: +0.8 (0.0 to +1.6).", Said(Says.English.Of("liking", true, "T4", "T1", new(0.8, Interval.Between(0.01, 1.6)))));
        Assert.Equal("The tasting cannot tell T10 from T8: liking −0.2 (−1.6 to +1.2).", Said(Says.English.Of("liking", true, "T10", "T8", new(-0.2, Interval.Between(-1.6, 1.2)))));
    }

    [Fact]
    public void OtherSentences_Filled_ReadAsTheRulesSay()
    {
        Assert.Equal("A gap under about 1.4 points would not have been seen.", Said(Says.English.SmallestSeen(1.42)));
        Assert.Equal("T8 and T10 side by side, about 20 servings of each, from a second make of both.", Said(Says.English.WouldSettle("T8", "T10", 20)));
        Assert.Equal("Bay and sugar moved together in T6; T8 takes them apart.", Said(Says.English.TwoChanges("Bay", "sugar", "T6", "T8")));
        Assert.Equal("Bay and sugar moved together in T6; they cannot be told apart yet.", Said(Says.English.TwoChanges("Bay", "sugar", "T6", null)));
        Assert.Equal("3 people: notes, not evidence.", Said(Says.English.TooFew(3)));
        Assert.Equal("One person: notes, not evidence.", Said(Says.English.TooFew(1)));
        Assert.Equal("Of 90 figures that were looked at, about 4 or 5 would stand out by chance.", Said(Says.English.ManyLooks(90)));
        Assert.Equal("Of 24 figures that were looked at, about 1 would stand out by chance.", Said(Says.English.ManyLooks(24)));
        Assert.Equal("With prices.csv this page would add the cost of a piece.", Said(Says.English.MissingSheet("prices.csv", "the cost of a piece")));
        Assert.Equal("Gelatine is 0.92 %, under the usual 1.0 to 1.5 %. family windows; common practice, no source",
            Said(Says.English.Window("Gelatine", 0.92, Interval.Between(1, 1.5), 1, "%", new("family windows", Evidence.Practice), figureDecimals: 2)));
    }

    [Fact]
    public void Sentences_EveryTemplate_NeverClaimsSamenessOrSignificance()
    {
        string[] texts = [.. typeof(Sentences).GetProperties().Select(property => property.GetValue(new Sentences())).Select(value => value switch
        {
            Template template => template.Text,
            Plural plural => plural.One + plural.Several,
            _ => "",
        }).Where(text => text.Length > 0)];

        Assert.True(texts.Length > 15);
        Assert.All(texts, text =>
        {
            Assert.DoesNotContain("significant", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("the same", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("no difference", text, StringComparison.OrdinalIgnoreCase);
        });
    }

    [Fact]
    public void Fill_HoleWithoutValue_IsRefused() =>
        Assert.Contains("'trial'", Assert.Throws<ArgumentException>(() => new Template("{trial} was made.").Fill(("other", "T1"))).Message, StringComparison.Ordinal);

    [Fact]
    public void Fill_TextFromAFile_IsEscaped() =>
        Assert.Equal("&lt;b&gt; was made.", new Template("{trial} was made.").Fill(("trial", "<b>")).Markup);
}
