namespace Tamis.App;

/// <summary>Where the clone is that this program was built in.</summary>
internal static class CloneFolder
{
    /// <summary>The clone's folder: the nearest folder above the program, or else above the working directory, that holds the solution.</summary>
    /// <exception cref="UserProblem">There is none.</exception>
    public static string Find() => Above(AppContext.BaseDirectory) ?? Above(Directory.GetCurrentDirectory())
        ?? throw new UserProblem("The notebooks and their tools were not found; run this from inside the clone.");

    private static string? Above(string start)
    {
        for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Dev.sln"))) return folder.FullName;
        return null;
    }
}
