using System.CommandLine;
using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.App.Label;

/// <summary>The command <c>label</c>: the figures of a label as data, raw and rounded, and the record of a signed one.</summary>
internal static class LabelCommand
{
    /// <summary>The command with its arguments.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The dessert folder." };
        var trial = new Option<string?>("--trial") { Description = "The trial; the ordered or last made one where it is left out." };
        var rules = new Option<string[]>("--rules") { Description = "The rule sets; all of them where it is left out.", AllowMultipleArgumentsPerToken = true };
        var output = new Option<string?>("--out") { Description = "Write label-figures.csv and label-figures.json to this folder. Default: the dessert folder's to-print.", HelpName = "FOLDER" };
        var sign = new Option<string?>("--sign") { Description = "Sign the label by one rule set: your name. Writes a record into the folder records, once a day and never over another.", HelpName = "NAME" };
        var language = new Option<string>("--language") { Description = "The language of the label to sign.", DefaultValueFactory = _ => "en" };
        var command = new Command("label", "The figures of a label as data, and the record of what was signed.") { folder, trial, rules, output, sign, language };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), arguments.GetValue(trial), arguments.GetValue(rules) ?? [], arguments.GetValue(output), arguments.GetValue(sign), arguments.GetValue(language)!, DateOnly.FromDateTime(DateTime.Now), Console.Out)));
        return command;
    }

    /// <summary>Writes figures, or signs; 1 if anything must be mended first, and then nothing is written.</summary>
    public static int Run(string folder, string? trial, string[] rules, string? output, string? signer, string language, DateOnly today, TextWriter writer)
    {
        try
        {
            var dessert = Dessert.Open(folder);
            var name = trial ?? dessert.Candidate;
            if (signer is not null)
            {
                if (rules is not [var set]) throw new UserProblem("Sign by one rule set: --rules eu.");
                writer.WriteLine($"Signed: {LabelRecords.Sign(dessert, name, set, language, signer, today)}");
                return 0;
            }
            var figures = (rules.Length > 0 ? rules : [.. KitData.RuleSetNames]).SelectMany(set => DessertPanels.Export(dessert, name, set)).ToArray();
            var target = Path.GetFullPath(output ?? Path.Combine(dessert.Folder, "to-print"));
            var (columns, rows) = DessertPanels.ToTable(figures);
            SheetWriter.Write(Path.Combine(target, "label-figures.csv"), SheetDialect.Shipped, columns, rows);
            TextFile.WriteWhole(Path.Combine(target, "label-figures.json"), DessertPanels.ToJson(figures));
            writer.WriteLine($"{figures.Length} figures of {name} under {figures.Select(figure => figure.Rules).Distinct().Count()} rule sets: {Path.Combine(target, "label-figures.csv")} and .json");
            return 0;
        }
        catch (TableException problem)
        {
            foreach (var cell in problem.Problems) writer.WriteLine(cell);
            writer.WriteLine("Nothing was written.");
            return 1;
        }
        catch (InvalidOperationException refused)
        {
            writer.WriteLine(refused.Message);
            return 1;
        }
    }
}
