using System.Text.RegularExpressions;
using Tamis.Desserts;

namespace Tamis.Views.Tests.Desserts;

public class ShowPhysicsTests
{
    private static readonly Dessert Tart = Open("damson-tart");
    private static readonly Dessert Bare = Open("first");

    public static TheoryData<string, Func<Dessert, Html>> Views => new()
    {
        { "balances", dessert => Show.Balances(dessert, dessert.Candidate).ToHtml() },
        { "check-ups", dessert => Show.CheckUps(dessert, dessert.Candidate) },
        { "mends", dessert => Show.Mends(dessert, dessert.Candidate) },
        { "section", dessert => Show.Section(dessert, dessert.Candidate) },
        { "water activity", dessert => Show.WaterActivities(dessert, dessert.Candidate).ToHtml() },
        { "sugar", dessert => Show.SugarWork(dessert, dessert.Candidate) },
        { "sweet and cold", dessert => Show.SweetAndCold(dessert, dessert.Candidate) },
        { "gelatine", dessert => Show.Gelatines(dessert, dessert.Candidate) },
        { "freezing", dessert => Show.Freezing(dessert, dessert.Candidate) },
        { "thawing", dessert => Show.Thawing(dessert, dessert.Candidate) },
        { "water", dessert => Show.WaterMoves(dessert, dessert.Candidate) },
        { "logs", dessert => Show.Logs(dessert, dessert.Trial(dessert.Candidate).Trial, "US model code") },
        { "measured", dessert => Show.PredictedAndMeasured(dessert, dessert.Candidate) },
        { "cautions", dessert => Show.CautionsOf(dessert, dessert.Candidate) },
    };

    [Theory]
    [MemberData(nameof(Views))]
    public void View_OfTheDemo_IsQuietShortAndPlain(string name, Func<Dessert, Html> view)
    {
        var html = view(Tart);
        Markup.IsQuiet(Markup.Read(html));
        // Coordinates of drawings and the data of live charts are not read by anybody.
        var text = html.ToPlainText();
        Assert.DoesNotMatch(@"\bNaN\b|Infinity|Tamis\.|Interval \{|\d\.\d{6,}", text);
        Assert.True(text.Length > 40, name);
    }

    [Theory]
    [MemberData(nameof(Views))]
    public void View_OfAFolderWithAFormulaAlone_SaysWhatIsLackingOrShowsWhatIsThere(string name, Func<Dessert, Html> view)
    {
        var text = view(Bare).ToPlainText();
        Assert.DoesNotMatch(@"\bNaN\b|Infinity|Tamis\.", text);
        if (name is "section" or "freezing" or "thawing" or "water") Assert.Contains("montage.csv", text, StringComparison.Ordinal);
    }

    [Fact]
    public void SugarWork_Demo_CooksTheCaramelOfThePasteToItsStage() =>
        Assert.Equal("light caramel", Assert.Single(Markup.Read(Show.SugarWork(Tart, "T10")).QuerySelectorAll("tbody b")).TextContent);

    [Fact]
    public void Thawing_PlanTooShort_SaysSo() => Assert.Matches(new Regex("too short: probe the middle"), Show.Thawing(Tart, "T10").ToPlainText());

    private static Dessert Open(string folder) => Dessert.Open(Path.Combine(KitFolder.Data("desserts"), folder));
}
