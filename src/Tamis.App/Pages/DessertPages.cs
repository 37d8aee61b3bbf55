using Tamis.Desserts;
using Tamis.Tables;
using Tamis.Views;

namespace Tamis.App.Pages;

/// <summary>The pages that need no notebook: the weighing sheets of a dessert, one a trial.</summary>
/// <param name="Name">The dessert's name; its folder's where the sheets cannot be read.</param>
/// <param name="Sheets">The weighing sheets by file name; none where the formula must be mended first.</param>
/// <param name="Candidate">The file name of the sheet that is wanted first; null where there is none.</param>
/// <param name="StoreFolder">The folder of its store; null where there is none or the sheets cannot be read.</param>
internal sealed record DessertPages(string Name, IReadOnlyList<(string FileName, string Trial, PageModel Page)> Sheets, string? Candidate, string? StoreFolder)
{
    /// <summary>What every weighing sheet's file name begins with.</summary>
    public const string Prefix = "weighing-";

    /// <summary>The weighing sheets of a dessert folder. Scores and tastings are not looked at: a bad score never blocks one.</summary>
    public static DessertPages Of(string folder)
    {
        try
        {
            var dessert = Dessert.Open(folder);
            var pages = WeighingPages.AllOf(dessert).Zip(dessert.Batches, (page, batch) => (page.FileName, batch.Trial, page.Page));
            return new(dessert.Name, [.. pages], WeighingPages.FileName(dessert, dessert.Candidate), dessert.StoreFolder);
        }
        catch (TableException)
        {
            // The notebooks that opened the folder have said so already, with every cell that must be mended.
            return new(Path.GetFileName(folder).Replace('-', ' ').Replace('_', ' '), [], null, null);
        }
    }

    /// <summary>The links to the sheets, the wanted one first.</summary>
    public Html Links()
    {
        if (Sheets.Count == 0) return Html.Empty;
        var first = Sheets.First(sheet => sheet.FileName == Candidate);
        var others = Sheets.Where(sheet => sheet.FileName != Candidate).Select(sheet => Html.Of($"<a href=\"{sheet.FileName}\">{sheet.Trial}</a>")).ToArray();
        var rest = others.Length == 0 ? Html.Empty : Html.Of($"<p>Of other trials: {Html.Join(others, ", ")}.</p>");
        return Html.Of($"<ul class=\"pages\">\n<li><a href=\"{first.FileName}\">{Name}: {first.Page.Title}</a>{rest}</li>\n</ul>\n");
    }
}
