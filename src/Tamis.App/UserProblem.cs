using System.CommandLine;
using Tamis.Tables;

namespace Tamis.App;

/// <summary>Something that whoever runs the program can mend; its message is a sentence that says how.</summary>
internal sealed class UserProblem(string sentence) : Exception(sentence);

/// <summary>How commands end.</summary>
internal static class CommandEnding
{
    /// <summary>Gives a command what it does; a problem that its user can mend is said as a sentence, with exit code 1.</summary>
    public static void SetDeed(this Command command, Func<ParseResult, Task<int>> deed) => command.SetAction(async (arguments, _) =>
    {
        try
        {
            return await deed(arguments).ConfigureAwait(false);
        }
        catch (Exception problem) when (problem is UserProblem or IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync(problem.Message).ConfigureAwait(false);
            return 1;
        }
    });

    /// <summary>Does a deed; what its user must mend first is said cell by cell or as a sentence, with exit code 1.</summary>
    /// <param name="writer">Where to say it.</param>
    /// <param name="deed">The deed; its exit code is passed on.</param>
    /// <param name="ending">What did not come of it.</param>
    public static int Guarded(TextWriter writer, Func<int> deed, string ending = "Nothing was written.")
    {
        try
        {
            return deed();
        }
        catch (TableException problem)
        {
            foreach (var cell in problem.Problems) writer.WriteLine(cell);
        }
        catch (Exception refused) when (refused is InvalidOperationException or KeyNotFoundException or ArgumentException)
        {
            writer.WriteLine(refused.Message);
        }
        writer.WriteLine(ending);
        return 1;
    }
}
