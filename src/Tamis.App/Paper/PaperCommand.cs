using System.CommandLine;
using Tamis.Desserts;
using Tamis.Tables;
using Tamis.Views;

namespace Tamis.App.Paper;

/// <summary>The command <c>paper</c>: the sheets of an order to print.</summary>
internal static class PaperCommand
{
    /// <summary>The command with its arguments.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The dessert folder; its store is the folder store in it or beside it." };
        var trial = new Option<string?>("--trial") { Description = "The trial; the ordered one where it is left out." };
        var pieces = new Option<int?>("--pieces") { Description = "How many; as many as are ordered where it is left out." };
        var output = new Option<string?>("--out") { Description = "Write the pages to this folder. Default: to-print, in the dessert folder.", HelpName = "FOLDER" };
        var command = new Command("paper", "Sheets to print for an order: shopping list, what to have ready, batch sheet, labels for boxes, a specification on one page.") { folder, trial, pieces, output };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), arguments.GetValue(trial), arguments.GetValue(pieces), arguments.GetValue(output), Console.Out)));
        return command;
    }

    /// <summary>Writes the pages; 1 if anything must be mended first, and then nothing is written.</summary>
    public static int Run(string folder, string? trial, int? pieces, string? output, TextWriter writer) => CommandEnding.Guarded(writer, () =>
    {
        var dessert = Dessert.Open(folder);
        var name = trial ?? dessert.Candidate;
        if (pieces is < 1) throw new UserProblem("A number of pieces is 1 or more.");
        var pages = KitchenPaper.AllOf(dessert, name, pieces ?? (int)Math.Ceiling(dessert.WantedPieces(name)));
        var target = Path.GetFullPath(output ?? Path.Combine(dessert.Folder, "to-print"));
        foreach (var (file, page) in pages) TextFile.WriteWhole(Path.Combine(target, file), PageShell.Render(page));
        writer.WriteLine("The pages are ready to print. Open");
        foreach (var (file, _) in pages) writer.WriteLine($"  {Path.Combine(target, file)}");
        return 0;
    });
}
