using Tamis.App;
using Tamis.App.Jupyter;

// Only the launcher's own types may be met before it has taken over: as a kernel this program runs without its libraries.
return args is [KernelLauncher.Word, var toolFolder, var connectionFile]
    ? KernelLauncher.Run(toolFolder, connectionFile)
    : await CommandLine.RunAsync(args).ConfigureAwait(false);
