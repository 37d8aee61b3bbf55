using Tamis.Views;

namespace Tamis.Notebooks;

/// <summary>What a notebook's cells ask of whatever runs them, the same words in the program and in Jupyter.</summary>
public static class Notebook
{
    /// <summary>The last word of the setup cell: in Jupyter the styles and the chart script, on a page nothing, because a page has its own.</summary>
    public static Html Init() => CurrentRun.Now is null ? NotebookSetup.Html() : Html.Empty;

    /// <summary>The dessert folder to read: the one that the run was given, or this one where it was given none.</summary>
    /// <param name="ownDefault">The notebook's own example, relative to the notebook: <c>../data/desserts/tart</c>.</param>
    /// <returns>The full path of the folder.</returns>
    public static string Folder(string ownDefault) => CurrentRun.Now?.Folder(ownDefault) ?? Path.GetFullPath(ownDefault);
}
