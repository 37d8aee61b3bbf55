using System.CommandLine;

namespace Tamis.App.New;

/// <summary>The command <c>new</c>: writes a small worked example to start from.</summary>
internal static class NewCommand
{
    /// <summary>The command with its argument.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The folder to make; it must not hold anything yet." };
        var command = new Command("new", "Write a small worked example of a dessert folder to start from.") { folder };
        command.SetDeed(arguments =>
        {
            var made = Write(KitFolder.Data(Path.Combine("desserts", "first")), arguments.GetRequiredValue(folder));
            Console.WriteLine($"{made} holds a first dessert and its store; its rows are invented. Change them in a spreadsheet, then run");
            Console.WriteLine($"  dotnet run --project src/Tamis.App -- pages --dessert \"{made}\"");
            return Task.FromResult(0);
        });
        return command;
    }

    /// <summary>Copies the worked example to a new or empty folder, whole or not at all.</summary>
    /// <param name="example">The folder of the example.</param>
    /// <param name="folder">The folder to make.</param>
    /// <returns>Its full path.</returns>
    /// <exception cref="UserProblem">It holds something already.</exception>
    public static string Write(string example, string folder)
    {
        var target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (File.Exists(target)) throw new UserProblem($"{target} is a file; name a folder that is not there yet.");
        if (Directory.Exists(target) && Directory.EnumerateFileSystemEntries(target).Any())
            throw new UserProblem($"{target} holds something already, and nothing in it is written over; name a folder that is new or empty.");
        var part = target + ".part";
        if (Directory.Exists(part)) Directory.Delete(part, recursive: true);
        foreach (var file in Directory.EnumerateFiles(example, "*.csv", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(part, Path.GetRelativePath(example, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
        if (Directory.Exists(target)) Directory.Delete(target);
        Directory.Move(part, target);
        return target;
    }
}
