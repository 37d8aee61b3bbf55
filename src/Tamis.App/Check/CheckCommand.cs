using System.CommandLine;
using System.Globalization;
using Tamis.Composition;
using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.App.Check;

/// <summary>The command <c>check</c>: says everything in a dessert folder and its store that must be mended.</summary>
internal static class CheckCommand
{
    /// <summary>The command with its argument.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The dessert folder; its store is the folder store in it or beside it." };
        var command = new Command("check", "Look at my files: say every cell of a dessert folder and its store that must be mended.") { folder };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), Console.Out)));
        return command;
    }

    /// <summary>Checks a folder; 1 if anything must be mended, 0 if not.</summary>
    /// <param name="folder">The dessert folder.</param>
    /// <param name="writer">Where to say it: a sentence a line.</param>
    public static int Run(string folder, TextWriter writer)
    {
        IReadOnlyList<CellProblem> problems;
        try
        {
            var dessert = Dessert.Open(folder);
            problems = [.. dessert.Problems.Concat(OrderProblems.Of(dessert)).Distinct()];
            // What a label asks is looked at once the sheets themselves can be read.
            if (problems is []) problems = [.. AllergenCells.Problems(dessert), .. LabelCells.Problems(dessert)];
            if (problems is []) problems = UnlistedCompounds.Problems(dessert);
            writer.WriteLine($"{dessert.Name}: read {string.Join(", ", dessert.SheetsFound)}.");
            if (!dessert.Problems.Any(problem => problem.File.StartsWith($"{Store.TableFolder}/", StringComparison.Ordinal))) SayFoods(dessert.Table, writer);
            foreach (var sheet in dessert.Sheets) SayHow(sheet, writer);
            foreach (var (file, wouldAdd) in dessert.SheetsMissing) writer.WriteLine($"{file} is not there; it would add: {wouldAdd}.");
            if (!dessert.Problems.Any() && dessert.Tastings is { } log)
            {
                if (log.UnknownColumns is { Count: > 0 } unknown) writer.WriteLine($"scores.csv: kept and not read: {string.Join(", ", unknown)}.");
                foreach (var doubt in log.Doubts) writer.WriteLine($"To look at: {doubt}");
            }
            if (problems is [])
                foreach (var (key, near) in DessertKeys.Unread(dessert.Facts)) writer.WriteLine($"dessert.csv, key '{key}': kept and not read{(near is null ? "" : $"; is it {near}?")}");
            foreach (var column in dessert.UnreadTrialColumns) writer.WriteLine($"formula.csv, column '{column}': kept and not read; trials.csv names no such trial.");
        }
        catch (TableException problem)
        {
            problems = problem.Problems;
        }
        foreach (var problem in problems) writer.WriteLine(problem);
        writer.WriteLine(problems.Count switch { 0 => "Nothing to mend.", 1 => "1 cell to mend.", var count => $"{count} cells to mend." });
        return problems.Count == 0 ? 0 : 1;
    }

    // The foods of the store's own table, and what to know of how it was read.
    private static void SayFoods(CompositionTable table, TextWriter writer)
    {
        if (table.Foods.Count - KitData.Composition.Foods.Count is > 0 and var own)
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Store.TableFolder}: {own:N0} {(own == 1 ? "food" : "foods")} beside those of the kit."));
        foreach (var remark in table.Remarks) writer.WriteLine($"{Store.TableFolder}/{remark}.");
    }

    // How a file was read, and what of it may be missed: what the spreadsheet has not saved yet, columns that nobody reads.
    private static void SayHow(Sheet sheet, TextWriter writer)
    {
        writer.WriteLine($"{sheet.File}: {sheet.Dialect.InWords()}.");
        if (sheet.IsOpenElsewhere) writer.WriteLine($"{sheet.File} is open in a spreadsheet: what was not saved there is not in it.");
        if (SheetColumns.Besides(sheet) is { Count: > 0 } besides) writer.WriteLine($"{sheet.File}: kept and not read: {string.Join(", ", besides)}.");
    }
}
