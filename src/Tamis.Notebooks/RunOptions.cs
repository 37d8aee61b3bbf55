namespace Tamis.Notebooks;

/// <summary>How notebooks are run.</summary>
public sealed record RunOptions
{
    /// <summary>The dessert folder that every notebook reads instead of its own default; null leaves each its default.</summary>
    public string? DessertFolder { get; init; }

    /// <summary>How long one cell may take; two minutes unless said otherwise.</summary>
    public TimeSpan CellLimit { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>Told before each code cell: its number and how many there are.</summary>
    public Action<int, int> OnCell { get; init; } = static (_, _) => { };
}

/// <summary>A notebook after its run.</summary>
/// <param name="Notebook">The notebook with what its cells showed, up to the one that failed.</param>
/// <param name="Failure">What stopped it; null where all cells ran.</param>
/// <param name="DessertFolders">The dessert folders that its cells asked for, as full paths, in the order of asking.</param>
public sealed record NotebookRun(NotebookFile Notebook, CellFailure? Failure, IReadOnlyList<string> DessertFolders);
