using System.CommandLine;
using Tamis.Desserts;

namespace Tamis.App.Label;

/// <summary>The command <c>sign</c>: freezes a label with all that it rests on in a record of the dessert folder.</summary>
internal static class SignCommand
{
    /// <summary>The command with its arguments.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The dessert folder." };
        var trial = new Argument<string?>("TRIAL") { Description = "The trial; the ordered or last made one where it is left out.", Arity = ArgumentArity.ZeroOrOne };
        var rules = new Option<string>("--rules") { Description = "The rule set.", Required = true, HelpName = "SET" };
        var signer = new Option<string>("--signer") { Description = "Who answers for the pack: an id or a role, as it shall stand in the record.", Required = true, HelpName = "WHO" };
        var language = new Option<string>("--language") { Description = "The language of the label.", DefaultValueFactory = _ => "en" };
        var day = RulesDay.Create();
        var command = new Command("sign", "Freeze a label with formula, documents, contents, rules and printed texts. A draft is refused; a record is never written over.") { folder, trial, rules, signer, language, day };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), arguments.GetValue(trial), arguments.GetRequiredValue(rules), arguments.GetRequiredValue(signer), arguments.GetValue(language)!, DateOnly.FromDateTime(DateTime.Now), Console.Out, RulesDay.Of(arguments.GetValue(day)))));
        return command;
    }

    /// <summary>Signs; 1 if anything must be mended first, and then nothing is written.</summary>
    /// <param name="folder">The dessert folder.</param>
    /// <param name="trial">The trial; null for the ordered or last made one.</param>
    /// <param name="rules">The rule set.</param>
    /// <param name="signer">Who signs.</param>
    /// <param name="language">The language of the label.</param>
    /// <param name="today">The day.</param>
    /// <param name="writer">Where to say what was done.</param>
    /// <param name="day">The day whose rules count; null lets the sheet decide.</param>
    public static int Run(string folder, string? trial, string rules, string signer, string language, DateOnly today, TextWriter writer, DateOnly? day = null) => CommandEnding.Guarded(writer, () =>
    {
        var dessert = Dessert.Open(folder).ByRulesOf(day);
        writer.WriteLine($"Signed: {LabelRecords.Sign(dessert, trial ?? dessert.Candidate, rules, language, signer, today)}{RulesDay.InWords(day)}");
        return 0;
    });
}
