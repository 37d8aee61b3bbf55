using System.Text.Json;
using Tamis.App.Jupyter;

namespace Tamis.App.Tests.Jupyter;

public class JupyterCommandTests
{
    // jupyter-client.readthedocs.io, "Making kernels for Jupyter": argv, display_name and language must be there.
    [Fact]
    public void Specification_AnyFolders_StartsTheLauncherWithItsOwnDependencies()
    {
        var specification = JupyterCommand.Specification(AppContext.BaseDirectory, "tool");
        var argv = specification["argv"]!.AsArray().Select(part => (string)part!).ToArray();
        Assert.Equal(["dotnet", "exec"], argv[..2]);
        Assert.Equal(["kernel", "tool", "{connection_file}"], argv[^3..]);
        Assert.Equal("C#", (string?)specification["language"]);
        Assert.All(argv.Where(part => part.StartsWith(AppContext.BaseDirectory, StringComparison.Ordinal)), path => Assert.True(File.Exists(path), path));
    }

    // The launcher's own list of assemblies names the FSharp.Core that the charts were built with.
    [Fact]
    public void KernelDependencies_FSharpCore_IsTheVersionThatRunsHere()
    {
        static string[] Versions(string file)
        {
            using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file)));
            return [.. json.RootElement.GetProperty("libraries").EnumerateObject().Select(library => library.Name).Where(name => name.StartsWith("FSharp.Core/", StringComparison.Ordinal))];
        }

        Assert.NotEmpty(Versions("kernel.deps.json"));
        Assert.Equal(Versions("Tamis.App.Tests.deps.json"), Versions("kernel.deps.json"));
    }
}
