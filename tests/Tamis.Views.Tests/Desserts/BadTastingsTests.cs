using System.Globalization;
using Tamis.Desserts;

namespace Tamis.Views.Tests.Desserts;

/// <summary>The demo with its scores spoilt in every way that a kitchen spoils them: an answer in words on every page of tastings, and never what is no number.</summary>
public sealed class BadTastingsTests : IDisposable
{
    private static readonly string[] Scales = ["sweetness", "bay aroma", "damson acidity", "shell crispness", "mousse firmness", "mousse melt", "bitterness", "liking"];
    private static readonly string[] Steps = ["sweetness right", "bay right", "firmness right"];

    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-bad-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>The demo with each row of scores (but those at the bench) as <paramref name="spoilt"/> leaves it; null takes the row away.</summary>
    private Dessert Spoilt(Func<Dictionary<string, string>, int, Dictionary<string, string>?> spoilt)
    {
        foreach (var part in (string[])["store", "damson-tart"])
        {
            Directory.CreateDirectory(Path.Combine(_folder, part));
            foreach (var file in Directory.EnumerateFiles(Path.Combine(KitFolder.Data("desserts"), part))) File.Copy(file, Path.Combine(_folder, part, Path.GetFileName(file)));
        }
        var path = Path.Combine(_folder, "damson-tart", "scores.csv");
        var trials = File.ReadLines(Path.Combine(_folder, "damson-tart", "servings.csv")).Skip(1).Select(line => line.Split(',')).ToDictionary(cells => (cells[0], cells[1], cells[3]), cells => int.Parse(cells[4][1..], CultureInfo.InvariantCulture));
        var lines = File.ReadAllLines(path);
        var columns = lines[0].TrimStart('\ufeff').Split(',');
        // Remarks, the last column, may hold commas.
        var rows = lines.Skip(1).Select(line => line.Split(',', columns.Length)).Select(cells =>
        {
            if (cells[0] == "B1") return string.Join(',', cells);
            var row = columns.Zip(cells).ToDictionary(cell => cell.First, cell => cell.Second);
            return spoilt(row, trials[(row["tasting"], row["assessor"], row["code"])]) is { } left ? string.Join(',', columns.Select(column => left[column])) : null;
        }).OfType<string>();
        File.WriteAllLines(path, [string.Join(',', columns), .. rows]);
        return Dessert.Open(Path.Combine(_folder, "damson-tart"));
    }

    private static void SaysWhat(Dessert dessert, string words)
    {
        TastingShowTests.SaysNothingForbidden(dessert);
        Assert.All(TastingShowTests.AllOf(dessert), html => Assert.DoesNotContain("NaN", html.Markup, StringComparison.Ordinal));
        Assert.Contains(words, TastingShowTests.TextOf(Show.EachTasting(dessert)), StringComparison.Ordinal);
    }

    private static Dictionary<string, string> With(Dictionary<string, string> row, IEnumerable<string> columns, Func<string, string> cell)
    {
        foreach (var column in columns.Where(column => row[column].Length > 0)) row[column] = cell(column);
        return row;
    }

    private static string Points(double points) => FormattableString.Invariant($"{Math.Clamp(points, 0, 10):0.0}");

    [Fact]
    public void Pages_OneAssessor_SayThatItIsANoteOfOnePerson() => SaysWhat(Spoilt((row, _) => row["assessor"] == "A01" ? row : null), "bitterness and liking: that is a note of one person");

    [Fact]
    public void Pages_TwoAssessors_SayNotesNotEvidence() => SaysWhat(Spoilt((row, _) => row["assessor"] is "A01" or "A02" ? row : null), "bitterness and liking: notes, not evidence.");

    [Fact]
    public void Pages_OneTrialATasting_SayThatThereIsNothingToCompare() => SaysWhat(Spoilt((row, trial) => trial == (row["tasting"] == "S4" ? 1 : 4) ? row : null), "One trial only was scored for sweetness, bay aroma");

    [Fact]
    public void Pages_AllScoresEqual_AskForTheDefaultOfAForm() => SaysWhat(Spoilt((row, _) => With(With(row, Scales, _ => "5"), Steps, _ => "3")), "bitterness and liking is 5");

    [Fact]
    public void Pages_ScoresThatFollowTheTrialToTheDigit_SayThatNothingJudgesThem() =>
        SaysWhat(Spoilt((row, trial) => With(With(row, Scales, _ => Points(trial * 0.8)), Steps, _ => $"{1 + trial % 5}")), "all assessors give the same, trial by trial, so nothing says how sure a difference is");

    [Fact]
    public void Pages_WordsThatFollowTheTrialToTheTick_AreSaid() =>
        SaysWhat(Spoilt((row, trial) => { row["terms"] = trial % 2 == 0 ? "none" : "sharp"; return row; }), "and for T1 than for T2 and T4.");

    // Assessors differ no more than plates: their variance is nil.
    [Fact]
    public void Pages_VarianceOfNil_CompareAllTheSame() =>
        SaysWhat(Spoilt((row, trial) => With(row, Scales, column => Points(5 + (int.Parse(row["assessor"][1..], CultureInfo.InvariantCulture) * 3 + trial * 5 + column.Length) % 4 * 0.3))), "nobody has a scale of his own there");

    [Fact]
    public void Pages_FortyPercentOfTheAnswersMissing_CompareWhatIsThere()
    {
        Random random = new(4);
        SaysWhat(Spoilt((row, _) => With(row, [.. Scales, .. Steps, "terms"], column => random.NextDouble() < 0.4 ? "" : row[column])), "To see a gap of 1 point of liking");
    }

    [Fact]
    public void Pages_FortyPercentOfThePlatesMissing_CountThem()
    {
        Random random = new(5);
        SaysWhat(Spoilt((row, _) => random.NextDouble() < 0.4 ? null : row), "planned plates were not tasted");
    }
}
