using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Reads the folder of a composition table: <c>foods.csv</c>, <c>nutrients.csv</c>, <c>contents.csv</c>, <c>sources.csv</c>, and <c>measures.csv</c>, <c>compound-foods.csv</c> and <c>compound-words.csv</c> where they are there.</summary>
internal static class CompositionFiles
{
    private static readonly string[] NutrientColumns = ["tag", "word", "unit"];

    /// <summary>How the files spell the weight that a source can bear.</summary>
    public static readonly IReadOnlyDictionary<string, Evidence> EvidenceWords = new Dictionary<string, Evidence>
    {
        ["law"] = Evidence.Law, ["certified"] = Evidence.Certified, ["published"] = Evidence.Published, ["guidance"] = Evidence.Guidance,
        ["supplier"] = Evidence.Supplier, ["computed"] = Evidence.Computed, ["estimate"] = Evidence.Estimate, ["practice"] = Evidence.Practice, ["memory"] = Evidence.Memory,
    };

    /// <summary>Gives the bytes of a file of the table by its name; null where it is not there.</summary>
    public delegate byte[]? FileOf(string file);

    public static CompositionTable Load(string folder) => Load(file =>
        Path.Combine(folder, file) is var path && File.Exists(path) ? SheetFile.Bytes(path) : null);

    public static CompositionTable Load(FileOf files)
    {
        List<CellProblem> problems = [];
        SortedSet<string> old = new(StringComparer.Ordinal);
        FileOf folder = file =>
        {
            var bytes = files(file);
            if (SheetText.IsWindows1252(bytes)) old.Add(file);
            return bytes;
        };
        var sources = Sources(folder, problems);
        var nutrients = Nutrients(Rows(folder, "nutrients.csv", NutrientColumns, problems));
        var foods = Foods(folder, sources, problems);
        var contents = ContentsReader.Read("contents.csv", folder("contents.csv"), foods, nutrients, sources, problems);
        var measures = Measures(folder, foods, sources, problems);
        var stated = CompoundFoods.Over(foods, RowsIfAny(folder, CompoundFoods.File, CompoundFoods.Columns, problems));
        var words = CompoundWords.Read(RowsIfAny(folder, CompoundWords.File, ["kind", "compound", "source"], problems));
        return problems is [] ? new(stated, nutrients, contents, measures) { CompoundWords = words, Remarks = [.. old.Select(file => $"{file}: {SheetText.OldLetters}")] } : throw new TableException(Causes(problems));
    }

    // While a sheet of names has to be mended, nobody can tell which names are wrong elsewhere.
    private static List<CellProblem> Causes(List<CellProblem> problems)
    {
        var unsound = new[] { ("foods.csv", "food"), ("nutrients.csv", "tag"), ("sources.csv", "source") }.Where(names => problems.Any(problem => problem.File == names.Item1)).ToArray();
        return [.. problems.Distinct().Where(problem => problem.Found.Length == 0 || !unsound.Any(names => problem.File != names.Item1 && Names.Same(problem.Column, names.Item2)))];
    }

    /// <summary>Reads a file of nutrients: tag, word, unit and what else is said of each.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static NutrientList Nutrients(string path)
    {
        List<CellProblem> problems = [];
        var sheet = SheetFile.Read(path);
        var nutrients = Nutrients(sheet.Require(NutrientColumns, problems) ? sheet.Rows.Select(row => new RowReader(row, problems)) : []);
        return problems is [] ? nutrients : throw new TableException(problems);
    }

    private static Dictionary<string, Source> Sources(FileOf folder, List<CellProblem> problems)
    {
        Dictionary<string, Source> sources = new(Names.Comparer);
        foreach (var row in Rows(folder, "sources.csv", ["key", "evidence", "title"], problems))
        {
            var key = row.Required("key");
            var evidence = row.Choice("evidence", EvidenceWords) ?? Evidence.Memory;
            var title = row.Required("title");
            // Common practice and memory have no publication to point to: their title is the whole of it.
            if (key.Length > 0 && !sources.TryAdd(key, new(evidence is Evidence.Practice or Evidence.Memory ? title : key, evidence)))
                row.Note("key", "each source once");
        }
        return sources;
    }

    private static NutrientList Nutrients(IEnumerable<RowReader> readers)
    {
        List<Nutrient> nutrients = [];
        List<RowReader> rows = [.. readers];
        var tags = rows.Select(row => row.Row["tag"]).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var row in rows)
        {
            var derived = row.Text("derived");
            var derivation = derived is null ? null : Derivation.Parse(derived);
            if (derived is not null && (derivation is null || derivation.Terms.Any(term => !tags.Contains(term.Tag) || term.Tag == row.Row["tag"])))
                row.Note("derived", "a sum of other tags of this file, such as CHOCDF - FIBTG");
            Nutrient nutrient = new(row.Required("tag"), row.Required("word"), row.Required("unit"))
            {
                Kind = row.Row["kind"], Meaning = row.Row["meaning"], Derived = derivation,
            };
            if (nutrients.Any(other => other.Tag.Equals(nutrient.Tag, StringComparison.OrdinalIgnoreCase))) row.Note("tag", "each tag once");
            else nutrients.Add(nutrient);
        }
        return new(nutrients);
    }

    private static List<Food> Foods(FileOf folder, Dictionary<string, Source> sources, List<CellProblem> problems)
    {
        List<Food> foods = [];
        HashSet<string> ids = new(Names.Comparer);
        foreach (var row in Rows(folder, "foods.csv", ["food", "name", "source"], problems))
        {
            var id = row.Required("food");
            // By the key by which contents find their food: two foods that differ in leading zeros only would share their figures.
            var isNew = ids.Add(FoodIndex.IdKey(id));
            if (!isNew && id.Length > 0) row.Note("food", "each food once; leading zeros of its number do not make it another");
            var source = Source(row, sources);
            var (protein, fat, carbohydrate) = (row.Number("protein_kcal_g", 0), row.Number("fat_kcal_g", 0), row.Number("carbohydrate_kcal_g", 0));
            Food food = new(id, row.Required("name"), row.Row["group"], source.Evidence == Evidence.Supplier ? source : source with { Locator = $"food {Number(id)}" })
            {
                PublishedName = row.Row["published_name"],
                // A factor of 0 says that the food has no protein to convert, which is as good as no factor.
                NitrogenFactor = row.Number("nitrogen_factor", 0) is > 0 and var factor ? factor : null,
                EnergyFactors = protein is { } p && fat is { } f && carbohydrate is { } c ? new(p, f, c) : null,
                EdiblePercent = row.Number("edible_percent", 0, 100),
                Notes = row.Row["notes"],
            };
            if (isNew) foods.Add(food);
        }
        return foods;
    }

    private static List<FoodMeasure> Measures(FileOf folder, List<Food> foods, Dictionary<string, Source> sources, List<CellProblem> problems)
    {
        if (folder("measures.csv") is null) return [];
        List<FoodMeasure> measures = [];
        var known = foods.ToDictionary(food => food.Id, Names.Comparer);
        foreach (var row in Rows(folder, "measures.csv", ["food", "amount", "measure", "grams", "source"], problems))
        {
            // Looked up by key: going through all foods for each of many rows would cost more than reading the file.
            var food = known.TryGetValue(row.Required("food"), out var found) ? found : row.Named("food", known);
            var source = Source(row, sources);
            FoodMeasure measure = new(food?.Id ?? "", row.Required("measure"), row.RequiredNumber("amount", double.Epsilon), row.RequiredNumber("grams", double.Epsilon),
                source.Evidence == Evidence.Published && food is not null ? source with { Locator = food.Source.Locator } : source)
            {
                VolumeMillilitres = row.Number("millilitres", double.Epsilon),
                Samples = row.Whole("samples", 1),
                StandardDeviationGrams = row.Number("standard_deviation", 0),
            };
            if (food is not null) measures.Add(measure);
        }
        return measures;
    }

    private static Source Source(RowReader row, Dictionary<string, Source> sources)
    {
        var key = row.Required("source");
        return sources.GetValueOrDefault(key) ?? row.Named("source", sources) ?? new("unknown source", Evidence.Memory);
    }

    private static string Number(string id) => id[(id.LastIndexOf(' ') + 1)..];

    private static RowReader[] RowsIfAny(FileOf folder, string file, IReadOnlyList<string> needed, List<CellProblem> problems) =>
        folder(file) is null ? [] : [.. Rows(folder, file, needed, problems)];

    private static IEnumerable<RowReader> Rows(FileOf folder, string file, IReadOnlyList<string> needed, List<CellProblem> problems) =>
        SheetFile.ReadOn(() => folder(file) is { } bytes
            // The files of a composition table are the kit's own layout, decimal point; a spreadsheet that saved them with commas is found out by its separator.
            ? SheetFile.Parse(file, bytes)
            : throw new TableException([new(file, 0, "", "", "there is no such file in the folder of the composition table")]), problems) is { } sheet && sheet.Require(needed, problems)
            ? sheet.Rows.Select(row => new RowReader(row, problems)) : [];
}
