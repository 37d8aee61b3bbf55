using System.CommandLine;
using System.Text;
using Tamis.Desserts;
using Tamis.Tables;
using Tamis.Views;

namespace Tamis.App.Tasting;

/// <summary>The command <c>tasting</c>: plans a tasting, writes the sheets to fill and the pages to print.</summary>
internal static class TastingCommand
{
    /// <summary>The command with its arguments.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The dessert folder." };
        var tasting = new Argument<string>("TASTING") { Description = "The name of its row in tastings.csv: trials, control, assessors, servings_each, seed." };
        var output = new Option<string?>("--out") { Description = "Write the pages to this folder. Default: to-print, in the dessert folder.", HelpName = "FOLDER" };
        var feedback = new Option<bool>("--feedback") { Description = "Print a feedback sheet for every assessor too, from all tastings with scores." };
        var command = new Command("tasting", "Plan a tasting: who gets what in which order, the sheets to fill, ballots and serving sheets to print.") { folder, tasting, output, feedback };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), arguments.GetRequiredValue(tasting), arguments.GetValue(output), Console.Out, arguments.GetValue(feedback))));
        return command;
    }

    /// <summary>Plans a tasting; 1 if anything must be mended first, and then nothing is written.</summary>
    /// <param name="folder">The dessert folder.</param>
    /// <param name="tasting">The name of the tasting.</param>
    /// <param name="output">The folder for the pages; null for one in the dessert folder.</param>
    /// <param name="writer">Where to say what was done.</param>
    /// <param name="feedback">Whether feedback sheets are wanted.</param>
    public static int Run(string folder, string tasting, string? output, TextWriter writer, bool feedback = false) => CommandEnding.Guarded(writer, () =>
    {
        var preparation = TastingPreparation.Of(Dessert.Open(folder), tasting);
        (string FileName, PageModel Page)[] pages = [.. TastingPages.AllOf(preparation), .. feedback && TastingPages.Feedback(preparation.Dessert) is { } sheets ? [sheets] : Array.Empty<(string, PageModel)>()];
        var (servings, scores) = preparation.Write();
        var target = Path.GetFullPath(output ?? Path.Combine(preparation.Dessert.Folder, "to-print"));
        foreach (var (name, page) in pages) TextFile.WriteWhole(Path.Combine(target, name), PageShell.Render(page));
        Say(preparation, servings, scores, writer);
        writer.WriteLine("The pages are ready to print. Open");
        foreach (var (name, _) in pages) writer.WriteLine($"  {Path.Combine(target, name)}");
        return 0;
    });

    private static void Say(TastingPreparation preparation, int servings, int scores, TextWriter writer)
    {
        StringBuilder codes = new();
        foreach (var (trial, own) in preparation.Plan.Codes) codes.Append(codes.Length == 0 ? "" : "; ").Append(trial).Append(' ').AppendJoin(" and ", own);
        writer.WriteLine(preparation.WasPlanned
            ? $"{preparation.Session.Name} was planned already: servings.csv is taken as it stands. To plan it anew, delete its rows there and in scores.csv."
            : $"{preparation.Session.Name} is planned with the seed {preparation.Session.Seed}: {servings} rows in servings.csv.");
        writer.WriteLine(scores == 0 ? "scores.csv has every row already." : $"{scores} rows to fill in scores.csv.");
        writer.WriteLine($"Codes, for the kitchen only: {codes}.");
        foreach (var remark in preparation.Remarks) writer.WriteLine($"Look at: {remark.Text} ({remark.Source})");
        if (preparation.Allergens.Held.NotLookedAt.Count > 0) writer.WriteLine($"Stops the tasting: nobody has written down the allergens of {string.Join(", ", preparation.Allergens.Held.NotLookedAt)}.");
    }
}
