using System.Diagnostics;
using System.Text.Json;

namespace Tamis.App.Jupyter;

/// <summary>The .NET Interactive tool, whose version the clone's tool manifest pins; only Jupyter needs it.</summary>
internal static class JupyterTool
{
    /// <summary>The tool's program.</summary>
    public const string Program = "Microsoft.DotNet.Interactive.App.dll";

    private const string Package = "microsoft.dotnet-interactive";

    /// <summary>Fetches the tool if it is not on this machine yet, and returns the folder of its assemblies.</summary>
    /// <param name="clone">The clone's folder.</param>
    /// <exception cref="UserProblem">It could not be fetched.</exception>
    public static string Restore(string clone)
    {
        var version = Version(Path.Combine(clone, ".config", "dotnet-tools.json"));
        Run(clone, "tool", "restore");
        var packages = Run(clone, "nuget", "locals", "global-packages", "--list").Split(": ", 2)[^1].Trim();
        var tools = Path.Combine(packages, Package, version, "tools");
        return Directory.Exists(tools) && Directory.EnumerateFiles(tools, Program, SearchOption.AllDirectories).FirstOrDefault() is { } program
            ? Path.GetDirectoryName(program)!
            : throw new UserProblem($"The package {Package} {version} was restored, but its program was not found.");
    }

    private static string Version(string manifest)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(manifest));
        return json.RootElement.GetProperty("tools").GetProperty(Package).GetProperty("version").GetString()
            ?? throw new FormatException($"{Path.GetFileName(manifest)} gives no version of {Package}.");
    }

    private static string Run(string folder, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true })
            ?? throw new UserProblem("The dotnet command was not found.");
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? output : throw new UserProblem($"dotnet {string.Join(' ', arguments)} failed: {(errors.Result.Length > 0 ? errors.Result : output).Trim()}");
    }
}
