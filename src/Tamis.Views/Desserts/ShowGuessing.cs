using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Many invented groups that only guess, beside what the real one did in a test of same or different.</summary>
    /// <param name="dessert">The dessert with the test.</param>
    /// <param name="tasting">The test.</param>
    /// <param name="groups">How many groups guess.</param>
    public static Html Guessing(Dessert dessert, string tasting, int groups = 1000)
    {
        var result = dessert.TestOf(tasting);
        var guessed = GuessingClasses.Draw(result.Answered, (int)Math.Round(1 / result.Test.Guess), groups, result.Session.Seed ?? 1);
        var asGood = guessed.AtLeast(result.Right);
        // Beyond the best that any group did there is nothing to see.
        var last = Math.Max(result.Right, guessed.Counts.Select((count, right) => count > 0 ? right : 0).Max());
        return CountBars.Of($"{groups} groups of {result.Answered} that only guess", "right answers",
            [.. guessed.Counts.Take(last + 1).Select((count, right) => new CountBar(Figures.Number(right, 0).Text, count, right >= result.Right))],
            $"Most groups that guess have about {result.Answered * result.Test.Guess:0} right; {asGood} of {groups} have {result.Right} or more.",
            Html.Of($"Invented groups, drawn with a stated seed. The class had <b>{result.Right}</b> right: the dark bars are the {asGood} of {groups} guessing groups that did as well or better. Reckoned exactly it is {Times(result.ChanceOfGuessing)}.")).ToHtml();
    }

    /// <summary>What one test of same or different shows.</summary>
    /// <exception cref="KeyNotFoundException">There is no such test, or nobody answered.</exception>
    public static Html SameOrDifferent(Dessert dessert, string tasting) => SameOrDifferent(dessert.TestOf(tasting));

    /// <summary>The plates of a set in every order, as a test deals them.</summary>
    public static Html Orders(Dessert dessert, string tasting)
    {
        var (log, session) = SessionOf(dessert, tasting);
        var test = session.Test ?? throw new KeyNotFoundException($"{session.Name} is no test of same or different.");
        var sets = log.Servings.Where(serving => Names.Same(serving.Tasting, session.Name)).GroupBy(serving => serving.Assessor)
            .SelectMany(own => own.OrderBy(serving => serving.Position).Chunk(test.SetSize)).Select(set => string.Join(", ", set.Select(serving => serving.Trial))).GroupBy(set => set).OrderBy(set => set.Key, StringComparer.Ordinal);
        return new DataTable("The orders of the plates", [Column.Words("Plates from left to right"), Column.Numbers("sets")], [.. sets.Select(set => new Row(set.Key, Figures.Count(set.Count())))]) { Fits = true }.ToHtml();
    }
}
