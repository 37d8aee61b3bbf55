namespace Tamis.Notebooks;

/// <summary>What the cells of the notebook that runs just now may ask of their run; there is none inside Jupyter.</summary>
/// <remarks>Cells reach their host only through static members, and one notebook runs at a time, so one place is enough.</remarks>
internal sealed class CurrentRun(string? dessertFolder)
{
    private readonly List<string> _dessertFolders = [];

    /// <summary>The run that is going on; null inside Jupyter and between runs.</summary>
    public static CurrentRun? Now { get; set; }

    /// <summary>The dessert folders that cells asked for, as full paths.</summary>
    public IReadOnlyList<string> DessertFolders => _dessertFolders;

    /// <summary>The dessert folder of this run, or the notebook's own where the run chose none.</summary>
    public string Folder(string ownDefault)
    {
        var folder = Path.GetFullPath(dessertFolder ?? ownDefault);
        if (!_dessertFolders.Contains(folder)) _dessertFolders.Add(folder);
        return folder;
    }
}
