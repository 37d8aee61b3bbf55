namespace Tamis;

/// <summary>Finds the data that the kit ships: composition tables, rules, published figures, demo desserts.</summary>
public static class KitFolder
{
    /// <summary>The environment variable that names the kit's data folder when it does not lie above the program.</summary>
    public const string Variable = "TAMIS_DATA";

    private const string Landmark = "composition";

    /// <summary>A folder of the kit's data, <c>KitFolder.Data("composition")</c>.</summary>
    /// <param name="name">The folder under <c>data</c>.</param>
    /// <exception cref="DirectoryNotFoundException">The kit's data are nowhere above the program or the current folder.</exception>
    public static string Data(string name) => Path.Combine(DataRoot(), name);

    /// <summary>The kit's <c>data</c> folder: the variable if set, else the nearest one above the program, else above the current folder.</summary>
    /// <exception cref="DirectoryNotFoundException">There is none.</exception>
    public static string DataRoot() => DataRoot(Environment.GetEnvironmentVariable(Variable), [AppContext.BaseDirectory, Environment.CurrentDirectory]);

    /// <summary>The folder that was named, else the nearest <c>data</c> folder of the kit above one of the starts, in their order.</summary>
    /// <param name="named">The folder that somebody named; null or empty where nobody did.</param>
    /// <param name="starts">Where to begin looking.</param>
    /// <exception cref="DirectoryNotFoundException">There is none.</exception>
    public static string DataRoot(string? named, IEnumerable<string> starts) => named is { Length: > 0 }
        ? Named(named)
        : starts.Select(Above).FirstOrDefault(folder => folder is not null)
        ?? throw new DirectoryNotFoundException($"The kit’s data folder was not found above the program or the current folder; set {Variable} to it.");

    private static string Named(string folder) => Directory.Exists(folder)
        ? folder
        : throw new DirectoryNotFoundException($"{Variable} names the folder '{folder}', which does not exist.");

    private static string? Above(string start)
    {
        for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
        {
            var data = Path.Combine(folder.FullName, "data");
            if (Directory.Exists(Path.Combine(data, Landmark))) return data;
        }
        return null;
    }
}
