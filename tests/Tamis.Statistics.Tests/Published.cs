namespace Tamis.Statistics.Tests;

/// <summary>Reads the plain CSV files (no quotes in them) of the published datasets.</summary>
internal static class Published
{
    public static string Folder { get; } = Above(AppContext.BaseDirectory);

    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Rows(string file)
    {
        var lines = File.ReadAllLines(Path.Combine(Folder, file)).Select(line => line.Split(',')).ToList();
        return [.. lines.Skip(1).Select(cells => lines[0].Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second))];
    }

    private static string Above(string start)
    {
        for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
            if (Path.Combine(folder.FullName, "data", "published", "datasets") is var datasets && Directory.Exists(datasets)) return datasets;
        throw new DirectoryNotFoundException("The published datasets are not above the test's folder.");
    }
}
