using System.Globalization;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>A row of <c>sources.csv</c>.</summary>
/// <param name="Key">The key by which contents name it.</param>
/// <param name="Evidence">What weight it can bear.</param>
/// <param name="Title">Its title.</param>
public sealed record SourceRow(string Key, Evidence Evidence, string Title)
{
    /// <summary>Who published it.</summary>
    public string Publisher { get; init; } = "";

    /// <summary>The year of the release.</summary>
    public string Year { get; init; } = "";

    /// <summary>The licence that it stands under.</summary>
    public string Licence { get; init; } = "";

    /// <summary>How its publisher wants it cited.</summary>
    public string Cite { get; init; } = "";
}

/// <summary>The rows of a composition table as its files hold them: what an importer builds.</summary>
public sealed class CompositionRows
{
    /// <summary>The foods in the order of the table.</summary>
    public required IReadOnlyList<Food> Foods { get; init; }

    /// <summary>The nutrients in the order of its columns.</summary>
    public required NutrientList Nutrients { get; init; }

    /// <summary>What is stated of each food, by the column of the nutrient.</summary>
    public required IReadOnlyList<IReadOnlyDictionary<int, ContentRow>> Contents { get; init; }

    /// <summary>Pieces, spoons and cups.</summary>
    public required IReadOnlyList<FoodMeasure> Measures { get; init; }

    /// <summary>The publications.</summary>
    public required IReadOnlyList<SourceRow> Sources { get; init; }

    /// <summary>The files of the table by name, in the layout and dialect that the kit ships.</summary>
    public IReadOnlyDictionary<string, byte[]> ToFiles() => new Dictionary<string, byte[]>(StringComparer.Ordinal)
    {
        ["foods.csv"] = File(
            ["food", "name", "group", "published_name", "nitrogen_factor", "protein_kcal_g", "fat_kcal_g", "carbohydrate_kcal_g", "edible_percent", "source", "notes"],
            Foods.Select(FoodCells)),
        ["nutrients.csv"] = File(["tag", "word", "unit", "kind", "derived", "meaning"], Nutrients.All.Select(nutrient =>
            (string[])[nutrient.Tag, nutrient.Word, nutrient.Unit, nutrient.Kind, nutrient.Derived?.ToString() ?? "", nutrient.Meaning])),
        ["contents.csv"] = File(ContentsReader.Columns, Contents.SelectMany((row, food) =>
            row.OrderBy(pair => pair.Key).Select(pair => ContentCells(Foods[food].Id, Nutrients.All[pair.Key].Tag, pair.Value)))),
        ["measures.csv"] = File(["food", "amount", "measure", "grams", "millilitres", "samples", "standard_deviation", "source", "notes"], Measures.Select(measure =>
            (string[])[measure.Food, Text(measure.Count), measure.Measure, Text(measure.MassGrams), Text(measure.VolumeMillilitres), Text(measure.Samples), Text(measure.StandardDeviationGrams), measure.Source.Key, ""])),
        ["sources.csv"] = File(["key", "evidence", "title", "publisher", "year", "licence", "cite"], Sources.Select(source =>
            (string[])[source.Key, CompositionFiles.EvidenceWords.First(word => word.Value == source.Evidence).Key, source.Title, source.Publisher, source.Year, source.Licence, source.Cite])),
    };

    /// <summary>The table that these rows are, read by the very reader that reads the files.</summary>
    /// <exception cref="TableException">A row is none that a table may hold.</exception>
    public CompositionTable ToTable()
    {
        var files = ToFiles();
        return CompositionFiles.Load(file => files.GetValueOrDefault(file));
    }

    private static string[] FoodCells(Food food) =>
    [
        food.Id, food.Name, food.Group, food.PublishedName, Text(food.NitrogenFactor), Text(food.EnergyFactors?.ProteinKilocaloriesPerGram),
        Text(food.EnergyFactors?.FatKilocaloriesPerGram), Text(food.EnergyFactors?.CarbohydrateKilocaloriesPerGram), Text(food.EdiblePercent), food.Source.Key, food.Notes,
    ];

    private static string[] ContentCells(string food, string tag, in ContentRow row) =>
    [
        food, tag, ContentsReader.WordOf(row.State), Text(row.Value), Text(row.Low), Text(row.High),
        row.Samples > 0 ? row.Samples.ToString(CultureInfo.InvariantCulture) : "", Text(row.StandardDeviation), row.Source, row.Method,
    ];

    private static byte[] File(IReadOnlyList<string> columns, IEnumerable<string[]> rows) => SheetWriter.Bytes(SheetDialect.Shipped, columns, rows);

    private static string Text(double? value) => SheetCell.Write(value, SheetDialect.Shipped);
}
