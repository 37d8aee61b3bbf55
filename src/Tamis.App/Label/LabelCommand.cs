using System.CommandLine;
using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.App.Label;

/// <summary>The command <c>label</c>: the figures of a label as data, raw and rounded, with their working.</summary>
internal static class LabelCommand
{
    /// <summary>The command with its arguments.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The dessert folder." };
        var trial = new Argument<string?>("TRIAL") { Description = "The trial; the ordered or last made one where it is left out.", Arity = ArgumentArity.ZeroOrOne };
        var rules = new Option<string[]>("--rules") { Description = "The rule sets; all of them where it is left out.", AllowMultipleArgumentsPerToken = true, HelpName = "SET" };
        var output = new Option<string?>("--out") { Description = "Write the files to this folder. Default: to-print, in the dessert folder.", HelpName = "FOLDER" };
        var day = RulesDay.Create();
        var command = new Command("label", "The figures of a label and how they were worked out, for a spreadsheet and as JSON.") { folder, trial, rules, output, day };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), arguments.GetValue(trial), arguments.GetValue(rules) ?? [], arguments.GetValue(output), Console.Out, RulesDay.Of(arguments.GetValue(day)))));
        return command;
    }

    /// <summary>Writes the figures; 1 if anything must be mended first, and then nothing is written.</summary>
    /// <param name="folder">The dessert folder.</param>
    /// <param name="trial">The trial; null for the ordered or last made one.</param>
    /// <param name="rules">The rule sets; none for all of them.</param>
    /// <param name="output">The folder for the files; null for one in the dessert folder.</param>
    /// <param name="writer">Where to say what was done.</param>
    /// <param name="day">The day whose rules count; null lets the sheet decide.</param>
    public static int Run(string folder, string? trial, string[] rules, string? output, TextWriter writer, DateOnly? day = null) => CommandEnding.Guarded(writer, () =>
    {
        var dessert = Dessert.Open(folder).ByRulesOf(day);
        var (name, sets) = (dessert.Trial(trial ?? dessert.Candidate).Trial, rules.Length > 0 ? rules : [.. KitData.RuleSetNames]);
        List<ExportedFigure> figures = [];
        List<ExportedWorking> working = [];
        List<string> remarks = [];
        Action[] reads = [.. sets.SelectMany(set => (Action[])[() => figures.AddRange(PanelExport.Figures(dessert, name, set)), () => working.AddRange(PanelExport.Working(dessert, name, set)), () => remarks.AddRange(LabelRemarks.OfRules(dessert, name, set))])];
        // A rule set stops at the first cell that it misses: where one does, all cells of a label are looked at, and said at once.
        if (LabelCells.Tried(reads).Count > 0) throw new TableException(LabelCells.Problems(dessert, name, sets, reads));
        var target = Path.GetFullPath(output ?? Path.Combine(dessert.Folder, "to-print"));
        Write("label-figures", figures);
        Write("label-working", working);
        writer.WriteLine($"{figures.Count} figures of {name} under {sets.Distinct(Names.Comparer).Count()} rule sets{RulesDay.InWords(day)}, with {working.Count} lines of working:");
        foreach (var file in (string[])["label-figures", "label-working"]) writer.WriteLine($"  {Path.Combine(target, file)}.csv and .json");
        foreach (var remark in remarks.Distinct()) writer.WriteLine($"Look at: {remark}");
        return 0;

        void Write<T>(string file, IReadOnlyList<T> all)
        {
            var (columns, rows) = PanelExport.ToTable(all);
            SheetWriter.Write(Path.Combine(target, $"{file}.csv"), SheetDialect.Shipped, columns, rows);
            TextFile.WriteWhole(Path.Combine(target, $"{file}.json"), PanelExport.ToJson(all));
        }
    });
}
