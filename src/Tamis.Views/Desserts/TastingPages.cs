using System.Globalization;
using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

/// <summary>The pages to print for one tasting: ballots for the assessors, the serving sheet for the kitchen, the plan for whoever leads it.</summary>
public static class TastingPages
{
    private const string MarkedInMillimetres = "100 mm from end to end";

    /// <summary>The pages with their file names.</summary>
    public static IReadOnlyList<(string FileName, PageModel Page)> AllOf(TastingPreparation preparation)
    {
        var name = preparation.Session.Name;
        var slug = WeighingPages.Slug(name);
        return
        [
            ($"{slug}-plan.html", new PageModel($"Plan of {name}", PlanOf(preparation)) { Running = preparation.Dessert.Name, Description = $"How {name} is served, how evenly, and what to look at first." }),
            ($"{slug}-serving.html", new PageModel($"Serving sheet of {name}", ServingSheet.Of(preparation)) { Running = preparation.Dessert.Name, IsSheet = true, Description = $"Which plate goes where in {name}." }),
            ($"{slug}-ballots.html", new PageModel($"Ballots of {name}", Ballots(preparation).ToHtml()) { Running = preparation.Dessert.Name, IsSheet = true, Foot = Html.Text("Tell the kitchen at once if anything disagrees with you."), Description = $"What the assessors of {name} are asked." }),
        ];
    }

    /// <summary>The feedback sheets of everybody who scored, each on a page of its own and for that person only; null where nobody can be set beside others.</summary>
    public static (string FileName, PageModel Page)? Feedback(Dessert dessert)
    {
        var records = dessert.Tastings is { } log ? AssessorRecord.Of(log) : [];
        return records.Count == 0 ? null : ("feedback.html", new PageModel("Feedback to assessors", Html.Of($"<h1 class=\"screen-only\">Feedback to assessors</h1>\n") + Notes.LookAt(Html.Of($"Cut apart: each sheet goes to the person it names and to nobody else."))
            + Html.Join(records.Select(Show.Feedback))) { Running = dessert.Name, IsSheet = true, Description = "How each assessor tastes, beside the others." });
    }

    /// <summary>The ballots of every assessor.</summary>
    public static BallotSheets Ballots(TastingPreparation preparation)
    {
        var session = preparation.Session;
        var groups = preparation.Plan.Servings.GroupBy(serving => serving.Assessor).ToArray();
        return new($"{preparation.Dessert.Name}: tasting {session.Name}{(session.Date is { } day ? $", {day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}" : "")}", ContainsOf(preparation.Allergens),
            [.. groups.Select((group, at) => BallotOf(preparation, group.Key, [.. group.OrderBy(serving => serving.Position ?? int.MaxValue)], at))]);
    }

    /// <summary>What it contains, said before anything is tasted.</summary>
    public static Html ContainsOf(AllergenNotice notice)
    {
        List<Html> lines = [];
        lines.Add(notice.Held.Contains.Count > 0 ? Html.Of($"<p class=\"caution\"><b>It contains</b> {string.Join(", ", notice.Held.Contains)}.{MayContain(notice)}</p>\n")
            : notice.Held.NotLookedAt.Count == 0 ? Html.Of($"<p>No allergen is in any ingredient, by the sheets of the kitchen.{MayContain(notice)}</p>\n") : Html.Empty);
        if (notice.AlsoTell.Count > 0)
            lines.Add(Html.Of($"<p>Also in it: {string.Join("; ", notice.AlsoTell.Select(told => $"{told.What} ({told.Why})"))}.</p>\n"));
        if (notice.Held.NotLookedAt.Count > 0)
            lines.Add(Notes.StopsRelease(Html.Of($"Nobody has written down the allergens of {string.Join(", ", notice.Held.NotLookedAt)}: they may hold any. Fill the column allergens of ingredients.csv before anybody tastes.")));
        return Html.Join(lines);
    }

    private static string MayContain(AllergenNotice notice) => notice.Held.MayContain.Count == 0 ? "" : $" It may contain {string.Join(", ", notice.Held.MayContain)}.";

    private static Ballot BallotOf(TastingPreparation preparation, string assessor, IReadOnlyList<Serving> servings, int at)
    {
        var words = Language.English.Words.Ballot;
        List<BallotPart> parts = [];
        if (preparation.Session.Test is { } test)
        {
            var sets = servings.Chunk(test.SetSize).ToArray();
            parts.AddRange(sets.Select((set, place) => SetPart(preparation, test, set, words.SetOf.Fill(("place", place + 1), ("count", sets.Length)).ToPlainText())));
        }
        else
        {
            parts.AddRange(servings.Select((serving, place) => new BallotPart(serving.Code, words.PlateOf.Fill(("place", place + 1), ("count", servings.Count)).ToPlainText(),
                [.. preparation.Asked.Where(attribute => attribute.Kind != AttributeKind.Ranking).Select(attribute => QuestionOf(attribute, at)), new FreeQuestion("remark", words.InYourWords)])));
            CodesQuestion[] rankings = [.. preparation.Asked.Where(attribute => attribute.Kind == AttributeKind.Ranking).Select(attribute => new CodesQuestion(attribute.Name,
                attribute.Question.Length > 0 ? attribute.Question : words.RankBy.Fill(("attribute", attribute.Name)).ToPlainText(), [.. servings.Select(serving => serving.Code)], IsRanking: true))];
            if (rankings.Length > 0) parts.Add(new(words.AllTogether, "", rankings));
        }
        return new(assessor, [.. servings.Select(serving => serving.Code)], parts);
    }

    private static BallotPart SetPart(TastingPreparation preparation, DifferenceTest test, IReadOnlyList<Serving> set, string place)
    {
        var words = Language.English.Words.Ballot;
        var asked = preparation.Asked.FirstOrDefault(attribute => attribute.Kind == AttributeKind.Pick);
        return new(string.Join(" \u00b7 ", set.Select(serving => serving.Code)), place,
            [new CodesQuestion(asked?.Name ?? "", asked is { Question.Length: > 0 } ? asked.Question : test.Question, [.. set.Select(serving => serving.Code)], IsRanking: false), new FreeQuestion("remark", words.InYourWords, 1)]);
    }

    // The list of words begins at another word for each assessor: what stands first is ticked more often.
    private static BallotQuestion QuestionOf(SensoryAttribute attribute, int assessor)
    {
        var question = attribute.Question.Length > 0 ? attribute.Question : Show.Capital(attribute.Name);
        return attribute.Kind switch
        {
            AttributeKind.Words => new WordsQuestion(attribute.Name, question, [.. attribute.Words.Skip(assessor % attribute.Words.Count), .. attribute.Words.Take(assessor % attribute.Words.Count)]),
            AttributeKind.JustRight => new StepsQuestion(attribute.Name, question, Steps(attribute, Language.English.Words.Ballot.JustRight)),
            _ when attribute.Form == ScaleForm.Boxes => new StepsQuestion(attribute.Name, question, Steps(attribute, "")),
            _ => new LineQuestion(attribute.Name, question, attribute.LowWord, attribute.HighWord),
        };
    }

    private static (string, string)[] Steps(SensoryAttribute attribute, string middle)
    {
        var (low, high) = ((int)attribute.LowPoints, (int)attribute.HighPoints);
        return [.. Enumerable.Range(low, high - low + 1).Select(step => (step.ToString(CultureInfo.InvariantCulture),
            step == low ? attribute.LowWord : step == high ? attribute.HighWord : step * 2 == low + high ? middle : ""))];
    }

    private static Html PlanOf(TastingPreparation preparation)
    {
        var session = preparation.Session;
        var lines = preparation.Asked.Where(attribute => attribute is { IsScale: true, Form: ScaleForm.Line }).ToArray();
        var marks = lines.Length == 0 ? Html.Empty
            : Notes.Small(Html.Of($"Line scales are {MarkedInMillimetres} on paper: lay a ruler at the left end; {string.Join("; ", lines.GroupBy(line => (line.LowPoints, line.HighPoints)).Select(group => $"{Figures.English.Part(100 / (group.Key.HighPoints - group.Key.LowPoints)).Text} mm is one point, the left end is {Figures.English.Part(group.Key.LowPoints).Text}"))}. Print without fitting to the page."));
        var enough = Show.Enough(preparation) is { IsEmpty: false } needed ? Html.Of($"<section>\n<h2>How many are enough</h2>\n{needed}</section>\n") : Html.Empty;
        return Html.Of($"""
            <h1>Plan of {session.Name}</h1>
            {Notes.Lead(Html.Of($"{Show.PlanInWords(preparation)}"))}{Show.Expectation(preparation.Session)}{Html.Join(preparation.Remarks.Select(remark => Notes.LookAt(Html.Of($"{remark.Text} <span class=\"from\">{remark.Source}</span>"))))}
            {ContainsOf(preparation.Allergens)}<section>
            <h2>How evenly it is served</h2>
            {Show.Balance(preparation.Plan)}</section>
            {enough}<section>
            <h2>Filling in</h2>
            <p>scores.csv has a row for every plate, by assessor and code. {(session.Test is null ? "A plate that was not tasted: delete its row. A question that was not answered: leave the cell blank. “None of these”: write none." : "Write x in the row of each plate that was picked, and leave the others blank.")}</p>
            {marks}</section>

            """);
    }
}
