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

    /// <summary>The same rows without some foods, by id.</summary>
    /// <exception cref="KeyNotFoundException">There is no food of such an id.</exception>
    public CompositionRows Without(params IReadOnlyList<string> ids)
    {
        if (ids.FirstOrDefault(id => Foods.All(food => !Names.Same(food.Id, id))) is { } unknown)
            throw new KeyNotFoundException($"No food has the number '{unknown}'; near ones: {string.Join(", ", Names.Nearest(unknown, Foods.Select(food => food.Id)))}.");
        int[] kept = [.. Enumerable.Range(0, Foods.Count).Where(row => !ids.Contains(Foods[row].Id, Names.Comparer))];
        var names = kept.Select(row => Foods[row].Id).ToHashSet(Names.Comparer);
        return new()
        {
            Foods = [.. kept.Select(row => Foods[row])], Nutrients = Nutrients, Contents = [.. kept.Select(row => Contents[row])],
            Measures = [.. Measures.Where(measure => names.Contains(measure.Food))], Sources = Sources,
        };
    }

    /// <summary>The same rows and one food more, with what a document declares: its own figures alone, none taken over from a food.</summary>
    /// <param name="id">A number for it, dataset and number: <c>SHEET 1</c>.</param>
    /// <param name="group">The group of foods that it belongs to.</param>
    /// <param name="profile">What is in 100 g of it.</param>
    /// <param name="document">The document.</param>
    /// <exception cref="ArgumentException">The rows have a food of this number.</exception>
    public CompositionRows With(string id, string group, NutrientProfile profile, string document)
    {
        if (Foods.Any(food => Names.Same(food.Id, id))) throw new ArgumentException($"There is a food {id} already; give this one another number.", nameof(id));
        NutrientList nutrients = new(Nutrients.All.Concat(profile.Nutrients.All.Where(nutrient => Nutrients.IndexOf(nutrient.Tag) < 0)));
        var declared = profile.Nutrients.All.Where(nutrient => profile[nutrient.Tag] is { State: not ContentState.Unknown, Source.Evidence: Evidence.Supplier or Evidence.Estimate })
            .ToDictionary(nutrient => nutrients.IndexOf(nutrient.Tag), nutrient => RowOf(profile[nutrient.Tag], document));
        return new()
        {
            Foods = [.. Foods, new(id, profile.Name, group, new(document, Evidence.Supplier)) { NitrogenFactor = profile.NitrogenFactor }],
            Nutrients = nutrients, Contents = [.. Contents, declared], Measures = Measures,
            Sources = Sources.Any(source => Names.Same(source.Key, document)) ? Sources : [.. Sources, new(document, Evidence.Supplier, document)],
        };
    }

    private static ContentRow RowOf(Content content, string document) => content.State == ContentState.BelowLimit
        ? new ContentRow(ContentState.BelowLimit, double.NaN, document, content.Source!.Locator) { Low = 0, High = content.Range!.Value.High }
        : new ContentRow(content.State, content.Per100Grams, document, content.Source!.Locator) { Low = content.Range?.Low ?? double.NaN, High = content.Range?.High ?? double.NaN };

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
