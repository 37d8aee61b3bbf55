using System.CommandLine;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.App.Terms;

/// <summary>The command <c>terms</c>: everything that a label says in the words of the rules, for a translator to fill in.</summary>
internal static class TermsCommand
{
    /// <summary>The command with its arguments.</summary>
    public static Command Create()
    {
        var language = new Argument<string>("LANGUAGE") { Description = "The language by its code, such as nl." };
        var rules = new Option<string[]>("--rules") { Description = "The rule sets; all of them where it is left out.", AllowMultipleArgumentsPerToken = true, HelpName = "SET" };
        var output = new Option<string?>("--out") { Description = "The file to write. Default: LANGUAGE.csv here.", HelpName = "FILE" };
        var command = new Command("terms", "Write every text of the rules that a label may print, with its term in a language or a blank: filled in and put into data/rules/terms, the file adds the language.") { language, rules, output };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(language), arguments.GetValue(rules) ?? [], arguments.GetValue(output), Console.Out)));
        return command;
    }

    /// <summary>Writes the file and says what is missing.</summary>
    /// <param name="language">The language.</param>
    /// <param name="rules">The rule sets; none for all of them.</param>
    /// <param name="output">The file; null for one in this folder, called after the language.</param>
    /// <param name="writer">Where to say it.</param>
    /// <returns>1 if anything must be mended first, and then nothing is written.</returns>
    public static int Run(string language, string[] rules, string? output, TextWriter writer) => CommandEnding.Guarded(writer, () =>
    {
        if (language.Length is < 2 or > 3 || !language.All(char.IsAsciiLetterLower)) throw new InvalidOperationException($"found '{language}', expected the code of a language in small letters, such as nl.");
        var folder = KitFolder.Data("rules");
        var known = RuleSets.NamesIn(folder);
        if (rules.FirstOrDefault(set => !known.Contains(set, Names.Comparer)) is { } unknown) throw new InvalidOperationException($"found '{unknown}', expected a rule set that the kit has: {string.Join(", ", known)}.");
        var all = RuleTerms.All(folder, language, [.. known.Where(set => rules.Length == 0 || rules.Contains(set, Names.Comparer))]);
        var target = Path.GetFullPath(output ?? $"{language}.csv");
        if (File.Exists(target)) throw new InvalidOperationException($"{target} is there already, and nothing is written over it: name another file with --out.");
        SheetWriter.Write(target, SheetDialect.Shipped, RuleTerms.Columns, all.Select(term => (IReadOnlyList<string>)[term.File, term.Row, term.English, term.Term ?? "", .. term.Origin.SkipLast(2), "from memory", ""]));
        writer.WriteLine($"Written: {target}");
        foreach (var file in all.GroupBy(term => term.File))
            writer.WriteLine($"  {file.Key}: {file.Count(term => term.Term is not null)} of {file.Count()} texts have a term in {language}{(file.Where(term => term.Term is null).ToArray() is { Length: > 0 } missing ? $"; missing: {string.Join(", ", missing.Take(5).Select(term => term.Row))}{(missing.Length > 5 ? $" and {missing.Length - 5} more" : "")}" : "")}");
        writer.WriteLine($"Fill in the column term, say in checked whether the law’s own text was read, and put the file into {Path.Combine(folder, RuleTerms.FolderName)} as {language}.csv.");
        return 0;
    });
}
