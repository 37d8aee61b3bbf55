using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using Tamis.Tables;
using Tamis.Verification;

namespace Tamis.App.Verify;

/// <summary>The command <c>verify</c>: recomputes published figures and prints them beside the kit's own.</summary>
internal static class VerifyCommand
{
    /// <summary>The command with its argument.</summary>
    public static Command Create()
    {
        var file = new Argument<string?>("FILE.csv") { Description = "A file of published figures; without one, all that the kit ships.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("verify", "Look at the kit: recompute published figures and print both. Into a file or a pipe the table goes as CSV.") { file };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetValue(file))));
        return command;
    }

    private static int Run(string? file)
    {
        var outcomes = Outcomes(file);
        if (Console.IsOutputRedirected) Console.Out.Write(VerifyTable.Csv(outcomes));
        else AnsiConsole.Write(VerifyTable.Table(outcomes));
        var misses = outcomes.Count(outcome => outcome.Verdict != CheckVerdict.Agrees);
        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{outcomes.Count - misses} agree, {misses} {(misses == 1 ? "misses" : "miss")}."));
        return misses == 0 ? 0 : 1;
    }

    private static IReadOnlyList<CheckOutcome> Outcomes(string? file)
    {
        try
        {
            return Verifier.Run(file is null ? CheckFile.Published() : CheckFile.Read(file), Quantities.All);
        }
        catch (TableException problem)
        {
            throw new UserProblem(problem.Message);
        }
    }
}
