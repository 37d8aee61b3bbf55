namespace Tamis.Tests;

/// <summary>The clone that the tests were built from.</summary>
internal static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Folder { get; } = Up(new(AppContext.BaseDirectory));

    /// <summary>A path inside the clone.</summary>
    public static string Path(params string[] parts) => System.IO.Path.Combine([Folder, .. parts]);

    private static string Up(DirectoryInfo folder) => File.Exists(System.IO.Path.Combine(folder.FullName, "Dev.sln"))
        ? folder.FullName
        : Up(folder.Parent ?? throw new InvalidOperationException("The tests run inside a clone, below the folder of Dev.sln."));
}
