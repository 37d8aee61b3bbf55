using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using Tamis.Desserts;
using Tamis.Tables;
using Tamis.Tasting;

namespace Tamis.Views.Tests.Desserts;

/// <summary>What the pages of tastings say, and that they never show what is no number.</summary>
public sealed partial class TastingShowTests : IDisposable
{
    private const string Attributes = "attribute,kind,low,high,low_word,high_word,question,words\nliking,liking,0,10,,,,\nsweetness,intensity,0,10,,,,\nright,just-right,1,5,too little,too much,,\nterms,words,,,,,,nutty; jammy\nbest,ranking,,,,,,\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-tasting-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [GeneratedRegex(@"NaN|\bnull\b|∞|Infinity|E-\d\d|Tamis\.|\d\.\d{6,}|significant|\bN/A\b", RegexOptions.IgnoreCase)]
    private static partial Regex Forbidden();

    internal static IEnumerable<Html> AllOf(Dessert dessert) =>
    [
        Show.Verdict(dessert), Show.Effects(dessert), Show.ScoresAgainstChanges(dessert), Show.Means(dessert), Show.Tastings(dessert), Show.EachTasting(dessert), Show.SameOrDifferent(dessert), Show.AtTheBench(dessert), Show.Tree(dessert), Show.ScoresAgainstFormula(dessert), Show.ScoresAgainstFigures(dessert), Show.TrialMaps(dessert), Show.Assessors(dessert),
        .. TastingPages.Feedback(dessert) is { } feedback ? [feedback.Page.Main] : Array.Empty<Html>(),
        .. dessert.Tastings?.Sessions.Where(session => session.Trials.Count > 0).SelectMany(session => TastingPages.AllOf(TastingPreparation.Of(dessert, session.Name))).Select(page => page.Page.Main) ?? [],
    ];

    internal static string TextOf(Html html)
    {
        var page = new HtmlParser().ParseDocument(html.Markup.Replace("</", " </", StringComparison.Ordinal));
        foreach (var script in page.QuerySelectorAll("script")) script.Remove();
        return Regex.Replace(page.Body!.TextContent, @"[ \n]+", " ");
    }

    internal static void SaysNothingForbidden(Dessert dessert)
    {
        foreach (var html in AllOf(dessert))
        {
            var text = TextOf(html);
            Assert.False(Forbidden().IsMatch(text), $"shows {Forbidden().Match(text).Value} in …{text[Math.Max(0, Forbidden().Match(text).Index - 60)..Math.Min(text.Length, Forbidden().Match(text).Index + 40)]}…");
        }
    }

    private Dessert Tasted(int assessors, int trials, Func<int, int, (string Liking, string Sweetness, string Right, string Terms, string Best)?> answer)
    {
        void Write(string file, string text) => File.WriteAllText(Path.Combine(_folder, file), text);
        var names = Enumerable.Range(1, trials).Select(trial => $"T{trial}").ToArray();
        Write("formula.csv", $"component,line,{string.Join(',', names)}\ncream,milk,{string.Join(',', names.Select((_, at) => $"{100 + at} g"))}\n");
        Write("trials.csv", "trial,parent,made_on\n" + string.Concat(names.Select((name, at) => $"{name},{(at == 0 ? "" : "T1")},2026-01-0{at + 1}\n")));
        Write("attributes.csv", Attributes);
        Write("tastings.csv", $"tasting,date,kind,trials,control,assessors,servings_each,seed\nS1,2026-02-01,scores,{string.Join("; ", names)},T1,{assessors},{trials},1\n");
        var plates = from assessor in Enumerable.Range(1, assessors) from trial in Enumerable.Range(0, trials) select (assessor, trial);
        Write("servings.csv", "tasting,assessor,position,code,trial,make\n" + string.Concat(plates.Select(plate => $"S1,A{plate.assessor:00},{(plate.assessor + plate.trial) % trials + 1},{101 + plate.trial},T{plate.trial + 1},1\n")));
        Write("scores.csv", "tasting,assessor,code,liking,sweetness,right,terms,best\n" + string.Concat(plates.Select(plate => answer(plate.assessor, plate.trial) is { } given ? $"S1,A{plate.assessor:00},{101 + plate.trial},{given.Liking},{given.Sweetness},{given.Right},{given.Terms},{given.Best}\n" : "")));
        return Dessert.Open(_folder);
    }

    private static string Points(double points) => FormattableString.Invariant($"{Math.Clamp(points, 0, 10):0.0}");

    [Fact]
    public void Show_Demo_SaysNothingForbidden() => SaysNothingForbidden(Dessert.Open(KitFolder.Data("desserts/damson-tart")));

    [Fact]
    public void Show_ClassTest_SaysNothingForbidden() => SaysNothingForbidden(Dessert.Open(KitFolder.Data("lessons/class-triangle")));

    [Theory]
    [InlineData(1, 3, "One assessor scored liking")]
    [InlineData(12, 1, "One trial only was scored for liking")]
    [InlineData(3, 3, "3 people scored liking and sweetness: notes, not evidence")]
    public void Show_TooLittle_SaysWhyInWords(int assessors, int trials, string why)
    {
        var random = new Random(1);
        var dessert = Tasted(assessors, trials, (_, trial) => (Points(random.NextDouble() * 10), Points(random.NextDouble() * 10), "3", "nutty", $"{trial + 1}"));

        Assert.Contains(why, TextOf(Show.EachTasting(dessert)), StringComparison.Ordinal);
        SaysNothingForbidden(dessert);
    }

    [Fact]
    public void Show_AllScoresEqual_SaysSo()
    {
        var dessert = Tasted(12, 4, (_, trial) => ("5", "5", "3", "none", $"{trial + 1}"));

        Assert.Contains("Every mark of liking and sweetness is 5", TextOf(Show.EachTasting(dessert)), StringComparison.Ordinal);
        SaysNothingForbidden(dessert);
    }

    [Fact]
    public void Show_PerfectSeparation_SaysThatNothingJudgesIt()
    {
        var dessert = Tasted(12, 3, (_, trial) => (Points(2 + 3 * trial), Points(8 - 3 * trial), $"{1 + 2 * trial}", trial == 0 ? "nutty" : "none", $"{trial + 1}"));

        Assert.Contains("cannot carry a comparison", TextOf(Show.EachTasting(dessert)), StringComparison.Ordinal);
        SaysNothingForbidden(dessert);
    }

    [Fact]
    public void Show_FortyPercentMissing_ComparesWhatIsThereAndCountsTheRest()
    {
        var random = new Random(2);
        var dessert = Tasted(14, 4, (_, trial) => random.NextDouble() < 0.4 ? null : (Points(5 + trial + random.NextDouble()), random.NextDouble() < 0.4 ? "" : Points(5 + random.NextDouble()), "3", "", ""));

        Assert.Contains("planned plates were not tasted", TextOf(Show.EachTasting(dessert)), StringComparison.Ordinal);
        SaysNothingForbidden(dessert);
    }

    [Fact]
    public void Show_AssessorsWhoDoNotDiffer_SaysThatNobodyHasAScaleOfHisOwn()
    {
        // Marks that hang on plate alone: every assessor has the same mean, so the variance between them is nil.
        double[] noise = [0.6, -0.6, 0.2, -0.2];
        var dessert = Tasted(12, 4, (assessor, trial) => (Points(5 + trial + noise[(assessor + trial) % 4]), Points(5 + noise[(assessor + 2 * trial) % 4] + noise[(assessor * 3 + trial) % 4] / 3), "3", "", ""));

        SaysNothingForbidden(dessert);
        Assert.Contains("nobody has a scale of his own", TextOf(Show.EachTasting(dessert)), StringComparison.Ordinal);
    }

    [Fact]
    public void Verdict_WithoutAnyPNumber_SaysWhatWouldSettleIt()
    {
        var text = TextOf(Show.TastingVerdict(Dessert.Open(KitFolder.Data("desserts/damson-tart")), "S1"));

        Assert.Contains("T2 is liked better than T1 by 1.4 points of 10", text, StringComparison.Ordinal);
        Assert.Contains("That stands if liking was the question.", text, StringComparison.Ordinal);
        Assert.Contains("servings of each", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\bp ?[=<]", text);
    }

    // The page of the tree and the page of tastings: one answer to one question.
    [Fact]
    public void Steps_Demo_SayOfAPairWhatItsTastingSays()
    {
        var dessert = Dessert.Open(KitFolder.Data("desserts/damson-tart"));
        var compared = dessert.Steps.SelectMany(step => step.Comparisons).Where(each => each is { Through: null, Range: not null }).ToArray();

        Assert.Equal(96, compared.Length);
        Assert.All(compared, each =>
        {
            var scale = dessert.ReportOf(each.Tastings.Single()).Scales.Single(scale => scale.Attribute == each.Attribute);
            var pair = scale.PairOf(each.Trial, each.Against)!;
            Assert.Equal((pair.Verdict, pair.Range, (bool?)scale.IsShown(Tamis.Tasting.TastingPolicy.Kit)), (each.Verdict, each.Range, each.StandsAmongAll));
        });
    }

    // Enough people for a map of preferences, in two groups that like opposite things: the map is drawn with the sizes that were put in; two words are too few for a map of words, which is said.
    [Fact]
    public void TrialMaps_ManyPeopleInTwoGroups_AreDrawn()
    {
        Random random = new(4);
        var dessert = Tasted(72, 3, (assessor, trial) => (Points((assessor <= 40 ? 7 - 2 * trial : 3 + 2 * trial) + random.NextDouble()), Points(3 + trial + random.NextDouble()), "3", trial == 0 ? "nutty" : "jammy", ""));

        var maps = Show.TrialMaps(dessert);

        Assert.Contains("fall into 2 groups: 40 like T1 best; 32 like T3 best", TextOf(maps), StringComparison.Ordinal);
        Assert.Contains("group 1, 40", maps.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", maps.Markup, StringComparison.Ordinal);
        Assert.Contains("No map of ticked words", TextOf(maps), StringComparison.Ordinal);
    }

    [Fact]
    public void OrderAlone_Demo_SaysTheShareOfPlatesAndHowNearTheAnswerIs()
    {
        var text = TextOf(Show.OrderAlone(Dessert.Open(KitFolder.Data("desserts/damson-tart")), "S1"));

        Assert.Contains("Taken as an order alone: the answer is nearly the same", text, StringComparison.Ordinal);
        Assert.Contains("in 90 of 100 pairs of plates the same person puts T2 above T1 (57 to 99).", text, StringComparison.Ordinal);
    }

    // Twenty-two people lift T2 by one step; two put it so far below that the means are alike.
    [Theory]
    [InlineData("S1", "The place in the order of tasting and what was tasted just before are evened out.")]
    [InlineData("S4", "what was tasted just before is not, because in this order of serving that would make the intervals wider by 52")]
    public void Differences_Demo_SayWhatIsEvenedOut(string tasting, string words) =>
        Assert.Contains(words, TextOf(Show.Differences(Dessert.Open(KitFolder.Data("desserts/damson-tart")), tasting)), StringComparison.Ordinal);

    [Fact]
    public void Means_Demo_AreThoseOfTheModelAndSayWhatIsEvenedOut()
    {
        var dessert = Dessert.Open(KitFolder.Data("desserts/damson-tart"));
        var text = TextOf(Show.Means(dessert));
        var estimate = dessert.ReportOf("S4").Scales.First(scale => scale.Attribute.Kind == AttributeKind.Liking).Means.First(mean => mean.Trial == "T11");

        Assert.Contains("S1, S2 and S3: The place in the order of tasting and what was tasted just before are evened out. S4: The place", text, StringComparison.Ordinal);
        Assert.Equal(7.6, estimate.Points, 1);
        Assert.Matches(@"Liking in S4 T11 7\W*6 6\W5 to 8\W7", text);
    }

    [Fact]
    public void OrderAlone_FewMarksFarOut_SaysWhatTheDisagreementMeans()
    {
        var dessert = Tasted(24, 2, (assessor, trial) => (Points(trial == 0 ? 7 + assessor % 2 : assessor > 22 ? 0 : 8 + assessor % 2), "5", "3", "", ""));

        var text = TextOf(Show.OrderAlone(dessert, "S1"));

        Assert.Contains("the order of the marks shows a difference, the points do not", text, StringComparison.Ordinal);
        SaysNothingForbidden(dessert);
    }

    [Fact]
    public void ScoresAgainstFormula_Demo_NamesConfoundedStepsAndTrialsMadeOnce()
    {
        var text = TextOf(Show.ScoresAgainstFormula(Dessert.Open(KitFolder.Data("desserts/damson-tart"))));

        Assert.Contains("moved together in T6; T8 takes them apart", text, StringComparison.Ordinal);
        Assert.Contains("T11 was tasted from one make. Made once", text, StringComparison.Ordinal);
        Assert.Contains("Make them again and serve the second make beside the first", text, StringComparison.Ordinal);
        Assert.Contains("dose of gelatine, worked out", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ExpectedOrders_Stated_AreAnsweredInWordsBesideAnyOrder()
    {
        string Said(string expected, Func<int, int, double> sweetness)
        {
            Tasted(8, 3, (assessor, trial) => ("5", Points(sweetness(assessor, trial)), "3", "", $"{(trial + assessor) % 3 + 1}"));
            File.WriteAllText(Path.Combine(_folder, "tastings.csv"), $"tasting,date,kind,trials,control,expected_order\nS1,2026-02-01,scores,T1; T2; T3,T1,{expected}\n");
            var text = TextOf(Show.ExpectedOrders(Dessert.Open(_folder), "S1"));
            Assert.DoesNotMatch(@"\bp ?[=<]|significant|NaN", text);
            return text;
        }

        double Rising(int assessor, int trial) => 2 + trial + 0.1 * (assessor % 3);

        // Eight people who all rise: L is as large as can be, 8 × 14 − 8 × 12 = 16 above its mean with a spread of √(8 × 2 × 2 / 2) = 4: a score of 4, less than one in 2000.
        Assert.Contains("Sweetness was expected to rise from T1 over T2 to T3, and it does: if marks came in any order they would go along it as much in fewer than one in 2000 such tests. The marks of 8 of 8 people go that way more than against it.", Said("sweetness: T1; T2; T3", Rising), StringComparison.Ordinal);
        Assert.Contains("on the whole the marks run the other way. The marks of 0 of 8 people go that way more than against it; people do agree on an order, but on another one", Said("sweetness: T3; T2; T1", Rising), StringComparison.Ordinal);
        Assert.Contains("nor do people agree on any other order", Said("sweetness: T1; T2; T3", (assessor, trial) => (assessor * 2 + trial) % 3 + 2), StringComparison.Ordinal);
        Assert.Contains("Best was expected to put T1, then T2, then T3, but that is not shown", Said("T1; T2; T3", Rising), StringComparison.Ordinal);
        Assert.Contains("the 2 expected orders of this tasting counted together", Said("sweetness: T1; T2; T3 | best: T1; T2; T3", Rising), StringComparison.Ordinal);
        Assert.Contains("from least to most: sweetness T1, T2, T3; best T1, T2, T3. Keep it from the assessors.", TextOf(Show.Expectation(Dessert.Open(_folder).Tastings!.Sessions[0])), StringComparison.Ordinal);
    }

    [Fact]
    public void ExpectedOrders_OnePerson_AreNoAnswer()
    {
        Tasted(1, 3, (_, trial) => ("5", Points(trial + 1), "3", "", ""));
        File.WriteAllText(Path.Combine(_folder, "tastings.csv"), "tasting,date,kind,trials,control,expected_order\nS1,2026-02-01,scores,T1; T2; T3,T1,sweetness: T1; T2; T3\n");

        Assert.Contains("fewer than two people marked every trial", TextOf(Show.ExpectedOrders(Dessert.Open(_folder), "S1")), StringComparison.Ordinal);
    }

    // Fifteen in fives by 21 and sixteen in sixes by 24 satisfy the counting rules; for the second a balanced plan exists elsewhere, here none is found.
    [Theory]
    [InlineData(16, 6, 16, "every two trials meet before 2 assessors")]
    [InlineData(16, 6, 24, "a balanced one may exist, but none was found")]
    [InlineData(6, 4, 12, "it cannot be even; with 15 it could")]
    public void Balance_IncompletePlan_SaysWhetherPairsAreEven(int trials, int each, int assessors, string words)
    {
        TastingSession session = new("S9") { Trials = [.. Enumerable.Range(1, trials).Select(trial => $"T{trial}")], Assessors = [.. Enumerable.Range(1, assessors).Select(person => $"A{person}")], ServingsEach = each, Seed = 5 };
        var plan = PlanMaker.Make(session, [], _ => 1, new List<CellProblem>())!;

        Assert.Contains(words, TextOf(Show.Balance(plan)), StringComparison.Ordinal);
    }

    [Fact]
    public void Assessors_Page_NamesNobody() => Assert.DoesNotMatch(@"\bA\d\d\b", TextOf(Show.Assessors(Dessert.Open(KitFolder.Data("desserts/damson-tart")))));

    [Fact]
    public void Ballots_TextFromSheets_IsEscaped()
    {
        var dessert = Tasted(6, 2, (_, trial) => ("5", "5", "3", "none", $"{trial + 1}"));
        File.WriteAllText(Path.Combine(_folder, "attributes.csv"), Attributes.Replace("liking,liking,0,10,,,,", "liking,liking,0,10,<img src=x>,<b>,<script>alert(1)</script>,", StringComparison.Ordinal));
        var pages = TastingPages.AllOf(TastingPreparation.Of(Dessert.Open(_folder), "S1"));

        Assert.All(pages, page => Assert.DoesNotContain("<img", page.Page.Main.Markup, StringComparison.Ordinal));
        Assert.All(pages, page => Assert.DoesNotContain("<script>alert", page.Page.Main.Markup, StringComparison.Ordinal));
    }
}
