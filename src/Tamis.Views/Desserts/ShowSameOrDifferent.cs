using Tamis.Desserts;
using Tamis.Statistics.Discrimination;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Every test of same or different: what it shows, how sure, and what would settle it.</summary>
    public static Html SameOrDifferent(Dessert dessert)
    {
        var results = dessert.Tastings is { } log ? DifferenceResult.Of(log).Where(result => result.Answered > 0 || result.UnclearCount > 0).ToArray() : [];
        return results.Length == 0
            ? Notes.Small(Html.Of($"No test of same or different yet: a row of kind triangle, duo-trio, paired or tetrad in tastings.csv would say whether two versions can be told apart at all."))
            : Html.Join(results.Select(result => Html.Of($"<h3>{Title(result.Session)}: {result.First} and {result.Second}, {result.Test.Word}</h3>\n") + SameOrDifferent(result)));
    }

    /// <summary>What one test of same or different shows.</summary>
    public static Html SameOrDifferent(DifferenceResult result)
    {
        var policy = TastingPolicy.Kit;
        if (result.RightShare(policy) is not { } right) return Notes.Paragraph(Html.Of($"Nobody has answered yet."));
        var people = result.ByAssessor.Count;
        var fewest = Binomials.FewestRight(result.Answered, result.Test.Guess, policy.FalseAlarmShare);
        var isShown = result.ChanceOfGuessing <= policy.FalseAlarmShare;
        var few = people < policy.FewestAssessors;
        Html lead;
        if (result.Test == DifferenceTest.Paired)
            lead = Html.Of($"{Capital(result.Second)} was picked by {result.Right} of {result.Answered} ({Percents(right)}). {(isShown && !few ? $"More people find it in {(right.Share > 0.5 ? result.Second : result.First)}" : "That is no more lopsided than a coin may fall")}: fair coins would be as lopsided in {Times(result.ChanceOfGuessing)}.");
        else
            lead = Html.Of($"{(isShown && !few ? $"{Capital(result.First)} and {result.Second} can be told apart" : $"The test cannot tell {result.First} from {result.Second}")}: {result.Right} of {result.Answered} answers were right, guessing gives about {Figures.Part(Math.Round(result.Answered * result.Test.Guess, 1)).Text}. Guessing alone would do as well in {Times(result.ChanceOfGuessing)}.");
        List<Html> said = [];
        if (few) said.Add(Says.English.TooFew(people));
        if (result.Distinguishers(policy) is { } beyond)
            said.Add(Html.Of($"Beyond guessing, {Figures.WholeShare(beyond.Share).Text} of people like these tell them apart ({Figures.WholeShare(beyond.Range.Low).Figure} to {Figures.WholeShare(beyond.Range.High).Text})."));
        if (!isShown && result.Test != DifferenceTest.Paired && result.Distinguishers(policy) is { } open)
            said.Add(open.Range.High > policy.DistinguisherShare
                ? Html.Of($"That is not “the same”: up to {Figures.WholeShare(open.Range.High).Text} might. {Needed(result, policy)}")
                : Html.Of($"If some do, they are fewer than {Figures.WholeShare(open.Range.High).Text} of people like these: a kitchen may call that near enough, and should say where it drew the line."));
        if (result.Distance(policy) is { Distance: > 0 } distance)
            said.Add(Html.Of($"They lie {DistanceWords(distance)} apart in standard deviations of one person’s impression (d′); about 1 is what one notices when asked."));
        if (result.IsNearEnough(policy) is { } nearEnough && !isShown)
            said.Add(nearEnough
                ? Html.Of($"As a test of likeness it holds: had {Figures.WholeShare(policy.DistinguisherShare).Text} of people told them apart, so few right answers would come about in fewer than {Figures.WholeShare(policy.FalseAlarmShare).Text} of such tests.")
                : Html.Of($"As a test of likeness it does not hold. For that about {(result.Test.Model!.AnswersForSimilarity(policy.DistinguisherShare, policy.FalseAlarmShare, policy.WantedPowerShare) is { } many ? $"{many} answers are needed" : "more than 2000 answers are needed")}, if nobody can tell."));
        if (fewest is { } least && result.Test != DifferenceTest.Paired) said.Add(Html.Of($"With {result.Answered} answers it takes {least} right to call it, at a risk of {Figures.WholeShare(policy.FalseAlarmShare).Text}."));
        if (result.IsReplicated) said.Add(Html.Of($"Some people answered several sets. Against guessing all sets count; for how many people would notice, only {people} people were asked. {SpreadWords(result, policy)}"));
        if (result.UnclearCount > 0) said.Add(Html.Of($"{(result.UnclearCount == 1 ? "One set has" : $"{result.UnclearCount} sets have")} more or fewer picks than were asked for and {(result.UnclearCount == 1 ? "is" : "are")} left out."));
        if (isShown && !result.HasSeveralMakes) said.Add(Html.Of($"One make of each was on the plates: what was told apart may be the batch and not the formula."));
        return Notes.Lead(lead) + Notes.Paragraph(Html.Join(said, " "));
    }

    /// <summary>How many answers a test needs, by how many people really tell the two apart.</summary>
    public static Html AnswersNeeded(DifferenceTest test)
    {
        var policy = TastingPolicy.Kit;
        double[] shares = [0.5, 0.4, 0.3, 0.2, 0.1];
        return new DataTable($"Answers that a {test.Word} test needs",
            [Column.Words("People who really tell them apart"), Column.Numbers("answers needed"), Column.Numbers("right answers that call it")],
            [.. shares.Select(share => (share, needed: Binomials.AnswersNeeded(test.Guess, share, policy.FalseAlarmShare, policy.WantedPowerShare))).Select(each => new Row(
                Figures.WholeShare(each.share).Text, each.needed is { } needed ? Figures.Count(needed) : Num.Said("too many"),
                each.needed is { } answers && Binomials.FewestRight(answers, test.Guess, policy.FalseAlarmShare) is { } least ? Figures.Count(least) : Num.Said("")))])
        { Fits = true, Notes = [Html.Of($"Seen in {Figures.WholeShare(policy.WantedPowerShare).Text} of such tests, at a risk of {Figures.WholeShare(policy.FalseAlarmShare).Text} of calling what is not there. Exact, by the binomial distribution.")] }.ToHtml();
    }

    private static string DistanceWords((double Distance, double Low, double High) distance) =>
        $"{Apart(distance.Distance)} ({Apart(distance.Low)} to {Apart(distance.High)})";

    private static string Apart(double distance) => double.IsPositiveInfinity(distance) ? "no known limit" : Figures.OneDecimal(distance).Text;

    private static string SpreadWords(DifferenceResult result, TastingPolicy policy) => result.Spread is not { } spread ? ""
        : spread.ChanceOfNoSpread <= policy.FalseAlarmShare
            ? $"They differ from one another more than chance lets them ({Figures.WholeShare(spread.Overdispersion).Text} of the way from all alike to always right or always wrong): the answers count for less than as many from as many people."
            : "They do not differ from one another more than chance lets them.";

    private static Html Needed(DifferenceResult result, TastingPolicy policy) =>
        Binomials.AnswersNeeded(result.Test.Guess, policy.DistinguisherShare, policy.FalseAlarmShare, policy.WantedPowerShare) is { } needed
            ? needed > result.Answered ? Html.Of($"To find {Figures.WholeShare(policy.DistinguisherShare).Text} who do, about {needed} answers are needed, so {needed - result.Answered} more.")
            : Html.Of($"{result.Answered} answers would have found {Figures.WholeShare(policy.DistinguisherShare).Text} who do in most such tests.") : Html.Empty;

    private static string Percents((double Share, Interval Range) share) => $"{Figures.WholeShare(share.Share).Text}, {Figures.WholeShare(share.Range.Low).Figure} to {Figures.WholeShare(share.Range.High).Text}";

    // A probability said as tests: 'one in 40 such tests' can be pictured.
    private static string Times(double probability) => probability switch
    {
        < 0.0005 => "fewer than one in 2000 such tests",
        < 0.095 => $"about one in {Math.Round(1 / probability):0} such tests",
        _ => $"{Math.Round(probability * 100):0} of 100 such tests",
    };
}
