using System.Globalization;
using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>What an import did with something that it found.</summary>
public enum ImportDeed
{
    /// <summary>Took it over as it stands.</summary>
    Took,
    /// <summary>Put together what the publication states in several places.</summary>
    Merged,
    /// <summary>Worked out by a named conversion what the publication states otherwise.</summary>
    Converted,
    /// <summary>Left it out.</summary>
    Left,
}

/// <summary>One line of the report: the same deed, for the same reason.</summary>
/// <param name="Deed">What was done.</param>
/// <param name="What">With what, <c>values</c>.</param>
/// <param name="Count">How many.</param>
/// <param name="Why">Why, or by which rule.</param>
/// <param name="Examples">The first few of them.</param>
public sealed record ImportNote(ImportDeed Deed, string What, int Count, string Why, IReadOnlyList<string> Examples)
{
    /// <summary>The line as a sentence.</summary>
    public override string ToString()
    {
        var examples = Examples.Count == 0 ? "" : $" ({string.Join("; ", Examples)}{(Count > Examples.Count ? "; …" : "")})";
        var what = Count == 1 && What.EndsWith('s') ? What[..^1] : What;
        return string.Create(CultureInfo.InvariantCulture, $"{Deed.ToString().ToLowerInvariant()} {Count:N0} {what}: {Why}{examples}");
    }
}

/// <summary>A file that an import read.</summary>
/// <param name="File">Its name.</param>
/// <param name="Rows">How many rows it has, without a header.</param>
public sealed record ImportedFile(string File, int Rows)
{
    /// <summary>What to know of how it was read, such as letters that are not UTF-8; empty where there is nothing.</summary>
    public string Remark { get; init; } = "";

    /// <summary>The file in words: <c>table.csv: 3,186 rows</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}: {Rows:N0} rows{(Remark.Length > 0 ? ", " : "")}{Remark}");
}

/// <summary>What an import took, merged, converted and left, and why.</summary>
/// <param name="Layout">The layout that was read.</param>
/// <param name="Files">The files that were read.</param>
/// <param name="Notes">What was done, deed by deed.</param>
public sealed record ImportReport(string Layout, IReadOnlyList<ImportedFile> Files, IReadOnlyList<ImportNote> Notes)
{
    /// <summary>The name of the report beside the imported table.</summary>
    public const string FileName = "import-report.csv";

    /// <summary>How many of something were dealt with in a way.</summary>
    public int Count(ImportDeed deed, string what) => Notes.Where(note => note.Deed == deed && note.What == what).Sum(note => note.Count);

    /// <summary>The report as sentences.</summary>
    public IEnumerable<string> Sentences() =>
        Files.Select(file => $"read {file}").Concat(Notes.Select(note => note.ToString()));

    /// <summary>The report as a file.</summary>
    internal byte[] ToFile() => SheetWriter.Bytes(SheetDialect.Shipped, ["deed", "what", "count", "why", "examples"],
        Files.Select(file => (string[])["read", "rows", Number(file.Rows), file.File, file.Remark])
            .Concat(Notes.Select(note => (string[])[note.Deed.ToString().ToLowerInvariant(), note.What, Number(note.Count), note.Why, string.Join("; ", note.Examples)])));

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
