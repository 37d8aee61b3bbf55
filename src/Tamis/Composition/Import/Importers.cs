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
}
