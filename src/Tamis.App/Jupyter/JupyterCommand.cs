using System.CommandLine;
using System.Text.Json.Nodes;

namespace Tamis.App.Jupyter;

/// <summary>The command <c>jupyter</c>: registers the kernel that runs the notebooks inside Jupyter.</summary>
internal static class JupyterCommand
{
    /// <summary>The kernel's name, as the notebooks' metadata have it; one of its own, so that no other kernel is replaced.</summary>
    public const string KernelName = "tamis-csharp";

    /// <summary>The command.</summary>
    public static Command Create()
    {
        var command = new Command("jupyter", "Register the kernel with which the notebooks run inside Jupyter.");
        command.SetDeed(_ =>
        {
            var tool = JupyterTool.Restore(CloneFolder.Find());
            var folder = Path.Combine(JupyterDataFolder(), "kernels", KernelName);
            Directory.CreateDirectory(folder);
            File.WriteAllText(Path.Combine(folder, "kernel.json"), Specification(AppContext.BaseDirectory, tool).ToJsonString(new() { WriteIndented = true }) + "\n");
            Console.WriteLine("Jupyter knows the kernel \"C# for Tamis\" now; open a notebook of the folder notebooks with it.");
            return Task.FromResult(0);
        });
        return command;
    }

    /// <summary>What Jupyter reads to start the kernel: jupyter-client.readthedocs.io, "Making kernels for Jupyter", kernel specs.</summary>
    /// <param name="program">The folder of this program.</param>
    /// <param name="tool">The folder of the tool's assemblies.</param>
    public static JsonObject Specification(string program, string tool) => new()
    {
        ["argv"] = new JsonArray(
            "dotnet", "exec",
            "--depsfile", Path.Combine(program, "kernel.deps.json"),
            "--runtimeconfig", Path.Combine(program, "kernel.runtimeconfig.json"),
            Path.Combine(program, "Tamis.App.dll"), KernelLauncher.Word, tool, "{connection_file}"),
        ["display_name"] = "C# for Tamis",
        ["language"] = "C#",
        // Nothing that happens here is anybody else's business.
        ["env"] = new JsonObject { ["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1", ["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1" },
    };

    // jupyter_core's own rule for the folder of a user's data.
    private static string JupyterDataFolder()
    {
        if (Environment.GetEnvironmentVariable("JUPYTER_DATA_DIR") is { Length: > 0 } said) return said;
        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        if (OperatingSystem.IsWindows()) return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData), "jupyter");
        if (OperatingSystem.IsMacOS()) return Path.Combine(home, "Library", "Jupyter");
        return Path.Combine(Environment.GetEnvironmentVariable("XDG_DATA_HOME") is { Length: > 0 } data ? data : Path.Combine(home, ".local", "share"), "jupyter");
    }
}
