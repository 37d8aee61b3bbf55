using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>The layouts of published composition tables that can be imported.</summary>
public static class Importers
{
    /// <summary>Reads a folder of published files into a table of the kit's layout.</summary>
    /// <param name="folder">The folder with the publisher's files.</param>
    /// <param name="codes">What the codes of the layouts stand for.</param>
    /// <exception cref="TableException">A file that must be there is not, or something in the files cannot be read; every problem is named.</exception>
    public delegate Imported Importer(string folder, ImportCodes codes);

    /// <summary>The importers by the name of their layout.</summary>
    public static IReadOnlyDictionary<string, Importer> All { get; } = new Dictionary<string, Importer>(StringComparer.OrdinalIgnoreCase)
    {
        ["sr28"] = StandardReference.Import,
        ["ciqual"] = Ciqual.Import,
        ["fdc"] = FoodDataCentral.Import,
    };

    /// <summary>Imports a folder by the codes that the kit ships.</summary>
    /// <param name="layout">The layout's name, <c>ciqual</c>.</param>
    /// <param name="folder">The folder with the publisher's files.</param>
    /// <exception cref="KeyNotFoundException">There is no such layout.</exception>
    /// <exception cref="TableException">A file that must be there is not, or something in the files cannot be read.</exception>
    public static Imported Import(string layout, string folder) => All.TryGetValue(layout, out var importer)
        ? importer(folder, ImportCodes.Load(KitFolder.Data("composition")))
        : throw new KeyNotFoundException($"No layout is called '{layout}'; known are {string.Join(", ", All.Keys)}.");
}
