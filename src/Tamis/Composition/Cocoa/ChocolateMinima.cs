using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>The least that a kind of chocolate must hold to be called so, in per cent: bounds where a sheet is silent, never its figures.</summary>
/// <param name="Product">The kind, <c>milk chocolate</c>.</param>
/// <param name="CocoaButter">Cocoa butter; 0 where the text asks for none.</param>
/// <param name="FatFreeCocoa">Fat-free dry cocoa; 0 where the text asks for none.</param>
/// <param name="MilkFat">Milk fat; 0 where the text asks for none.</param>
/// <param name="Source">The text.</param>
public sealed record ChocolateMinima(string Product, double CocoaButter, double FatFreeCocoa, double MilkFat, Source Source)
{
    /// <summary>Whether the kind has milk in it.</summary>
    public bool HasMilk => MilkFat > 0;

    /// <summary>Reads <c>chocolate-minima.csv</c> from the folder of a composition table.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static IReadOnlyList<ChocolateMinima> ReadAll(string folder)
    {
        List<CellProblem> problems = [];
        List<(string Product, string Property, double Percent, Source Source)> rows = [];
        var sheet = SheetFile.Read(Path.Combine(folder, "chocolate-minima.csv"));
        foreach (var row in sheet.Require(["product", "property", "minimum_percent", "evidence", "source"], problems) ? sheet.Rows.Select(row => new RowReader(row, problems)) : [])
            if (row.Choice("evidence", CompositionFiles.EvidenceWords) is { } evidence && row.Required("source") is { Length: > 0 } source)
                rows.Add((row.Required("product"), row.Required("property"), row.RequiredNumber("minimum_percent", 0, 100), new(source, evidence, row.Row["notes"])));
        return problems is []
            ? [.. rows.GroupBy(row => row.Product, Names.Comparer).Select(product => new ChocolateMinima(product.Key, Of(product, "cocoa_butter_percent"), Of(product, "fat_free_cocoa_percent"), Of(product, "milk_fat_percent"), product.First().Source))]
            : throw new TableException(problems);

        static double Of(IEnumerable<(string Product, string Property, double Percent, Source Source)> rows, string property) =>
            rows.Where(row => row.Property == property).Select(row => row.Percent).FirstOrDefault();
    }
}
