using Tamis.Composition.Import;

namespace Tamis.Tests.Composition.Import;

/// <summary>Codes of the shipped kit, and short-hands over a folder of published files.</summary>
internal static class Shelf
{
    public static ImportCodes Codes { get; } = ImportCodes.Load(KitFolder.Data("composition"));

    public static Imported Import(this TemporaryFolder folder, string layout) => Importers.All[layout](folder.Path, Codes);

    public static int Count(this Imported imported, ImportDeed deed, string why) => imported.Report.Notes.Where(note => note.Deed == deed && note.Why.Contains(why, StringComparison.Ordinal)).Sum(note => note.Count);
}
