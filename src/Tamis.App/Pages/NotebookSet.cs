using Tamis.Notebooks;

namespace Tamis.App.Pages;

/// <summary>The notebooks of a folder, in the order of their numbers.</summary>
internal sealed record NotebookSet(IReadOnlyList<NotebookFile> Notebooks)
{
    /// <summary>All notebooks of a folder; none is listed anywhere else.</summary>
    /// <exception cref="UserProblem">There is none, or one is no notebook.</exception>
    public static NotebookSet In(string folder)
    {
        string[] paths = Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, "*.ipynb").Order(StringComparer.Ordinal)] : [];
        if (paths is []) throw new UserProblem($"There are no notebooks in {folder}.");
        try
        {
            return new([.. paths.Select(NotebookFormat.Load)]);
        }
        catch (FormatException problem)
        {
            throw new UserProblem(problem.Message);
        }
    }

    /// <summary>Those that any dessert folder can be given to: not the ones that speak of their own by name.</summary>
    public NotebookSet ForAnyDessert => new([.. Notebooks.Where(notebook => !notebook.IsOfItsOwnDessert)]);

    /// <summary>The notebooks of these names, or whose names begin so; all of them where none is asked for.</summary>
    /// <exception cref="UserProblem">A name fits none of them.</exception>
    public IReadOnlyList<NotebookFile> Choose(IReadOnlyList<string> names)
    {
        foreach (var name in names.Where(name => !Notebooks.Any(notebook => Fits(notebook, name))))
        {
            var near = Names.Nearest(name, Notebooks.Select(notebook => notebook.Name));
            throw new UserProblem($"No notebook is called '{name}'; {(near is [] ? "there are" : "near ones")}: {string.Join(", ", near is [] ? Notebooks.Select(notebook => notebook.Name) : near)}.");
        }
        return names is [] ? Notebooks : [.. Notebooks.Where(notebook => names.Any(name => Fits(notebook, name)))];
    }

    private static bool Fits(NotebookFile notebook, string name) =>
        notebook.Name.StartsWith(Path.GetFileNameWithoutExtension(name), StringComparison.OrdinalIgnoreCase);
}
