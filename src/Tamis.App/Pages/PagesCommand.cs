using System.CommandLine;
using Spectre.Console;

namespace Tamis.App.Pages;

/// <summary>The command <c>pages</c>.</summary>
internal static class PagesCommand
{
    private const int MostChangesSaid = 20;

    /// <summary>The command with its options.</summary>
    public static Command Create()
    {
        var notebooks = new Option<string[]>("--notebook") { Description = "Run these notebooks only; a name or the beginning of one.", HelpName = "NAME", AllowMultipleArgumentsPerToken = true };
        var dessert = new Option<string?>("--dessert") { Description = "Read this dessert folder instead of the demo’s.", HelpName = "FOLDER" };
        var output = new Option<string?>("--out") { Description = "Write the pages to this folder; it is replaced whole. Default: pages, in the clone.", HelpName = "FOLDER" };
        var command = new Command("pages", "Run the notebooks and write their pages.") { notebooks, dessert, output };
        command.SetDeed(async arguments =>
        {
            var clone = CloneFolder.Find();
            var request = new PagesRequest(Path.Combine(clone, "notebooks"), arguments.GetValue(output) ?? Path.Combine(clone, "pages"))
            {
                Notebooks = arguments.GetValue(notebooks) ?? [],
                Dessert = arguments.GetValue(dessert) is { } folder ? Path.GetFullPath(folder) : null,
            };
            return Say(await RunAsync(request).ConfigureAwait(false));
        });
        return command;
    }

    private static async Task<PagesResult> RunAsync(PagesRequest request)
    {
        if (Console.IsOutputRedirected || !AnsiConsole.Profile.Capabilities.Interactive)
            return await new PagesRun(request, new PlainReport(Console.Out)).RunAsync().ConfigureAwait(false);
        return await AnsiConsole.Progress().StartAsync(context => new PagesRun(request, new LiveReport(context)).RunAsync()).ConfigureAwait(false);
    }

    private static int Say(PagesResult result)
    {
        if (result.Changes is { } changes) SayChanges(changes);
        foreach (var (notebook, _, failure) in result.Failed)
        {
            Console.Error.WriteLine($"{notebook}, {failure.Where}:");
            foreach (var sentence in failure.Message.Split('\n', StringSplitOptions.RemoveEmptyEntries)) Console.Error.WriteLine($"  {sentence}");
        }
        Console.WriteLine(result.Failed is [] ? "The pages are ready. Open" : "The other pages are ready. Open");
        Console.WriteLine($"  {result.Index}");
        return result.Failed is [] ? 0 : 1;
    }

    private static void SayChanges(RunChanges changes)
    {
        if (changes.IsNothing)
        {
            Console.WriteLine("Nothing changed since the last run.");
            return;
        }
        Console.WriteLine("Changed since the last run:");
        string[] lines =
        [
            .. changes.Cells.Select(cell => $"  {cell.Sheet}{(cell.Place.Length == 0 ? "" : ", " + cell.Place)}: {Pair(cell.Was, cell.Now)}"),
            .. changes.Figures.Select(figure => $"  page {figure.Page}, {figure.Name}: {Pair(figure.Was, figure.Now)}"),
        ];
        foreach (var line in lines.Take(MostChangesSaid)) Console.WriteLine(line);
        if (lines.Length > MostChangesSaid) Console.WriteLine($"  and {lines.Length - MostChangesSaid} more, listed on the page.");
    }

    private static string Pair(string? was, string? now) => (was, now) switch
    {
        (null, _) => $"new, {now}",
        (_, null) => $"gone, was {was}",
        _ => $"{was} -> {now}",
    };
}
