namespace Tamis.App.Pages;

/// <summary>Which pages to make, from what, and where to.</summary>
/// <param name="NotebooksFolder">The folder whose notebooks are run.</param>
/// <param name="Out">The folder that the pages are written to.</param>
internal sealed record PagesRequest(string NotebooksFolder, string Out)
{
    /// <summary>The names of the notebooks to run, or the beginnings of names; all of them where empty.</summary>
    public IReadOnlyList<string> Notebooks { get; init; } = [];

    /// <summary>The dessert folder to read; null leaves each notebook its own.</summary>
    public string? Dessert { get; init; }
}

/// <summary>How a run ended.</summary>
/// <param name="Index">The page to open.</param>
/// <param name="Failed">The notebooks that could not be run to their end, with the reason.</param>
/// <param name="Changes">What changed since the last run; null on a first run.</param>
internal sealed record PagesResult(string Index, IReadOnlyList<NotebookProblem> Failed, RunChanges? Changes);

/// <summary>A notebook that could not be run to its end.</summary>
/// <param name="Notebook">Its file name.</param>
/// <param name="Title">The title of its page.</param>
/// <param name="Failure">Where and why.</param>
internal sealed record NotebookProblem(string Notebook, string Title, Tamis.Notebooks.CellFailure Failure);
