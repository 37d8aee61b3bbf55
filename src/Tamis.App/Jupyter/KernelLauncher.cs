using System.Reflection;
using System.Runtime.Loader;

namespace Tamis.App.Jupyter;

/// <summary>Runs the .NET Interactive tool as a Jupyter kernel inside this process, with the chart library's FSharp.Core instead of its own.</summary>
/// <remarks>The tool brings an FSharp.Core that is older than the one Plotly.NET was built against, and charts fail with it.
/// Jupyter starts this program with <c>kernel.deps.json</c>, which lists FSharp.Core and nothing else of ours, so that all else comes
/// from the tool.</remarks>
internal static class KernelLauncher
{
    /// <summary>The first argument by which the program is asked to be a kernel.</summary>
    public const string Word = "kernel";

    /// <summary>Runs the kernel until Jupyter ends it.</summary>
    /// <param name="toolFolder">The folder of the tool's assemblies.</param>
    /// <param name="connectionFile">The connection file that Jupyter wrote.</param>
    /// <returns>The tool's exit code.</returns>
    public static int Run(string toolFolder, string connectionFile)
    {
        var program = Path.Combine(toolFolder, JupyterTool.Program);
        var tool = new AssemblyDependencyResolver(program);
        AssemblyLoadContext.Default.Resolving += (context, name) => tool.ResolveAssemblyToPath(name) is { } path ? context.LoadFromAssemblyPath(path) : null;
        AssemblyLoadContext.Default.ResolvingUnmanagedDll += (_, name) => tool.ResolveUnmanagedDllToPath(name) is { } path ? System.Runtime.InteropServices.NativeLibrary.Load(path) : 0;
        var main = AssemblyLoadContext.Default.LoadFromAssemblyPath(program).EntryPoint ?? throw new EntryPointNotFoundException($"{JupyterTool.Program} has no entry point.");
        // Left to itself the tool would listen on every interface.
        string[] arguments = ["jupyter", "--default-kernel", "csharp", "--http-local-only", connectionFile];
        return main.Invoke(null, [arguments]) is int code ? code : 0;
    }
}
