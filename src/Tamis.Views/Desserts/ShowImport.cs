using Tamis.Composition.Import;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What an import took, merged, converted and left, and why.</summary>
    public static Html Import(Imported imported)
    {
        var report = imported.Report;
        var lead = Notes.Lead(Html.Of($"<strong>{Figures.English.Count(imported.Rows.Foods.Count).Text} foods</strong> of {imported.Rows.Sources[0].Title}, in {Figures.English.Count(imported.Rows.Nutrients.Count).Text} nutrients. {imported.Rows.Sources[0].Cite} {imported.Rows.Sources[0].Licence}."));
        var table = new DataTable("What the import did",
            [Column.Words("Deed"), Column.Numbers("How many"), Column.Words("Of what"), Column.Words("Why"), Column.Words("Such as")],
            [.. report.Notes.Select(note => new Row(InWords(note.Deed), Figures.English.Count(note.Count), note.What, note.Why, note.Examples.Count == 0 ? "" : string.Join("; ", note.Examples)))])
        { IsWide = true, LeastRem = 44, Caption = Html.Of($"Read: {string.Join(", ", report.Files.Select(file => $"{file.File} ({Figures.English.Count(file.Rows).Text} rows{(file.Remark.Length > 0 ? ", " : "")}{file.Remark})"))}.") };
        return lead + table.ToHtml();
    }

    private static string InWords(ImportDeed deed) => deed switch { ImportDeed.Took => "took", ImportDeed.Merged => "put together", ImportDeed.Converted => "converted", _ => "left" };
}
