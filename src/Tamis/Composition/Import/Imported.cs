using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>What came out of an import: the rows of a table, and the report on how they came about.</summary>
/// <param name="Rows">The rows, in the kit's layout.</param>
/// <param name="Report">What was taken, merged, converted and left.</param>
public sealed record Imported(CompositionRows Rows, ImportReport Report)
{
    /// <summary>The table that the rows are.</summary>
    /// <exception cref="TableException">A row is none that a table may hold.</exception>
    public CompositionTable ToTable() => Rows.ToTable();

    /// <summary>Writes the table and its report into a folder that is not there yet or is empty: all files or none.</summary>
    /// <exception cref="IOException">The folder holds something already, or cannot be written; then nothing was written.</exception>
    public void WriteTo(string folder)
    {
        var files = Rows.ToFiles().Append(new(ImportReport.FileName, Report.ToFile()));
        FolderFile.WriteWhole(folder, files);
    }
}
