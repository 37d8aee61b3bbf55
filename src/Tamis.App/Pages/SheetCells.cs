using Tamis.Tables;

namespace Tamis.App.Pages;

/// <summary>The cells of one sheet as a run found them.</summary>
/// <param name="Folder">The name of the folder that it stands in: the dessert's, or the store's.</param>
/// <param name="File">The file's name.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, each under the words that say which row it is.</param>
internal sealed record SheetCells(string Folder, string File, IReadOnlyList<string> Columns, IReadOnlyList<RowCells> Rows)
{
    // What tells a row of a sheet from the next: the words that stay when its quantities change.
    private static readonly Dictionary<string, string[]> RowWords = new(Names.Comparer)
    {
        ["formula.csv"] = ["component", "line", "way", "step"],
        ["trials.csv"] = ["trial"],
        ["steps.csv"] = ["component", "step", "trial"],
        ["components.csv"] = ["component", "trial"],
        ["montage.csv"] = ["order", "component", "trial"],
        ["measured.csv"] = ["trial", "make", "component", "what", "at"],
        ["tastings.csv"] = ["tasting"],
        ["attributes.csv"] = ["attribute"],
        ["servings.csv"] = ["tasting", "assessor", "position"],
        ["scores.csv"] = ["tasting", "assessor", "code"],
        ["dessert.csv"] = ["key", "trial"],
        ["ingredients.csv"] = ["ingredient"],
        ["prices.csv"] = ["ingredient", "supplier", "pack", "date"],
        ["specifications.csv"] = ["ingredient", "document", "supplier", "date"],
        ["words.csv"] = ["word"],
        ["moulds.csv"] = ["mould"],
        ["equipment.csv"] = ["name", "from"],
    };

    /// <summary>The sheets of a folder that can be read; one that cannot is left to the pages that need it.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="name">The name by which the pages call it.</param>
    public static IEnumerable<SheetCells> Of(string folder, string name) =>
        from path in Directory.EnumerateFiles(folder, "*.csv").Order(StringComparer.Ordinal)
        let sheet = Readable(path)
        where sheet is not null
        select Of(name, sheet);

    /// <summary>The cells of a sheet.</summary>
    public static SheetCells Of(string folder, Sheet sheet)
    {
        var words = RowWords.GetValueOrDefault(sheet.File) ?? [.. sheet.Columns.Take(1)];
        Dictionary<string, int> seen = new(Names.Comparer);
        return new(folder, sheet.File, sheet.Columns, [.. sheet.Rows.Select(row =>
        {
            var said = string.Join(", ", words.Select(column => row[column]).Where(text => text.Length > 0));
            var times = seen[said] = seen.GetValueOrDefault(said) + 1;
            var cells = sheet.Columns.Where(column => !words.Contains(column, Names.Comparer) && row[column].Length > 0);
            return new RowCells(times == 1 ? said : $"{said} ({times})", cells.Distinct(Names.Comparer).ToDictionary(column => column, column => row[column]));
        })]);
    }

    private static Sheet? Readable(string path)
    {
        try
        {
            return SheetFile.Read(path);
        }
        catch (TableException)
        {
            // The notebooks that read it have said so already, with every cell that must be mended.
            return null;
        }
    }
}

/// <summary>The cells of one row.</summary>
/// <param name="Words">The words that say which row it is.</param>
/// <param name="Cells">The text of each filled cell by its column.</param>
internal sealed record RowCells(string Words, IReadOnlyDictionary<string, string> Cells);
