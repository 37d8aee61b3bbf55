using System.CommandLine;

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
}
