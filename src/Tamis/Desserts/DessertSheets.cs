using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The files of a dessert folder and its store, read once each.</summary>
internal sealed class DessertSheets
{
    private static readonly (string File, bool InStore, string WouldAdd)[] Known =
    [
        ("ingredients.csv", true, "what each mixture is made of, its nutrition panel, and the grams behind pieces and spoons"),
        ("specifications.csv", true, "suppliers’ figures, ingredient lists and allergens"),
        ("prices.csv", true, "what a piece costs"),
        ("words.csv", true, "the label in other languages"),
        ("moulds.csv", true, "what fits in which mould"),
        ("equipment.csv", true, "the plan of oven, freezer and hands"),
        ("windows.csv", true, "where the figures of families of your own usually lie; the kit’s windows hold without it"),
        ("remark_words.csv", true, "your own list of words by which remarks at the bench are counted, in place of the kit’s"),
        ("formula.csv", false, ""),
        ("trials.csv", false, "which trial came from which, and the question behind each"),
        ("steps.csv", false, "what to do beside what to weigh"),
        ("components.csv", false, "the base of each ratio and how a component stands on the label"),
        ("montage.csv", false, "the mass of each component in a piece"),
        ("measured.csv", false, "what was measured beside what was computed"),
        ("attributes.csv", false, "with servings.csv and scores.csv, how tasters scored each change"),
        ("servings.csv", false, "with attributes.csv and scores.csv, how tasters scored each change"),
        ("scores.csv", false, "with attributes.csv and servings.csv, how tasters scored each change"),
        ("tastings.csv", false, "the dates of the tastings and which was only at the bench"),
        ("dessert.csv", false, "the dessert’s name, how many pieces a batch makes, and what is ordered"),
    ];

    private readonly Dictionary<string, Sheet> _read = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, TableException> _bad = new(StringComparer.OrdinalIgnoreCase);
    private readonly string _folder;
    private readonly string? _store;

    private DessertSheets(string folder, string? store)
    {
        (_folder, _store) = (folder, store);
        var settings = SettingsOf();
        foreach (var (file, inStore, _) in Known)
            if (PathOf(file, inStore) is { } path) ReadOne(file, path, inStore ? null : settings);
        // The store is shared, so that its sheets speak for themselves; where the dates of one can be read both ways, the setting of the dessert decides.
        if (settings?.DateOrder is { } order)
            foreach (var (file, _, _) in Known.Where(known => known.InStore && _read.GetValueOrDefault(known.File)?.Dialect.DateOrderDoubt is not null))
                ReadOne(file, PathOf(file, inStore: true)!, new(DateOrder: order));
    }

    public string FolderName => Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(_folder)));

    public string Folder => Path.GetFullPath(_folder);

    public string? StoreFolder => _store is null ? null : Path.GetFullPath(_store);

    /// <summary>The folder of the store that holds foods of its own, such as an imported national table; null where there is none.</summary>
    public string? CompositionFolder => StoreFolder is { } store && Path.Combine(store, Store.TableFolder) is var folder && Directory.Exists(folder) ? folder : null;

    public IReadOnlyList<string> Found => [.. Known.Select(known => known.File).Where(file => _read.ContainsKey(file) || _bad.ContainsKey(file))];

    public IReadOnlyList<(string File, string WouldAdd)> Missing =>
        [.. Known.Where(known => !_read.ContainsKey(known.File) && !_bad.ContainsKey(known.File)).Select(known => (known.File, known.WouldAdd))];

    public IReadOnlyList<Sheet> Readable => [.. Known.Where(known => _read.ContainsKey(known.File)).Select(known => _read[known.File])];

    public static DessertSheets Find(string folder)
    {
        var name = Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)));
        if (!Directory.Exists(folder))
            throw new TableException([new(name, 0, "", "", "a dessert folder of this name; there is none here")]);
        if (!File.Exists(Path.Combine(folder, "formula.csv")))
        {
            string[] inside = [.. Directory.EnumerateDirectories(folder).Where(each => File.Exists(Path.Combine(each, "formula.csv")))];
            if (inside is [var only]) return Find(only);
            var near = inside.Length > 1 ? $"; the folders {string.Join(", ", inside.Select(Path.GetFileName).Order(StringComparer.Ordinal))} in it hold one each: name one of them" : "";
            throw new TableException([new("formula.csv", 0, "", "", $"the formula sheet in the folder {name}{near}")]);
        }
        string[] stores = [Path.Combine(folder, "store"), Path.Combine(Path.GetFullPath(folder), "..", "store")];
        return new(folder, stores.FirstOrDefault(Directory.Exists));
    }

    public Sheet Required(string file) => Optional(file) ?? throw new TableException([new(file, 0, "", "", $"the file {file} in the folder {FolderName}")]);

    public Sheet? Optional(string file) => _bad.TryGetValue(file, out var bad) ? throw bad : _read.GetValueOrDefault(file);

    /// <summary>A sheet, or null where there is none; of one with cells that the spreadsheet itself could not compute, what can be read, and those cells.</summary>
    public Sheet? Optional(string file, List<CellProblem> bad)
    {
        if (!_bad.TryGetValue(file, out var error) || error.Readable is not { } readable) return Optional(file);
        bad.AddRange(error.Problems);
        return readable;
    }

    public Sheet Required(string file, List<CellProblem> bad) => Optional(file, bad) ?? Required(file);

    /// <summary>A sheet of the dessert folder under a name of its own: a second montage, a log.</summary>
    public Sheet Another(string file)
    {
        if (Path.GetFileName(file) == file && PathOf(file, inStore: false) is { } path) return SheetFile.Read(path, SettingsOf());
        var near = Names.Nearest(file, Directory.EnumerateFiles(_folder, "*.csv").Select(each => Path.GetFileName(each)));
        throw new TableException([new(file, 0, "", "", $"the file {file} in the folder {FolderName}{(near.Count > 0 ? $"; near it there is {near[0]}" : "")}")]);
    }

    private string? PathOf(string file, bool inStore) => (inStore ? _store : _folder) is { } folder && Path.Combine(folder, file) is var path && File.Exists(path) ? path : null;

    private void ReadOne(string file, string path, SheetSettings? settings)
    {
        try
        {
            _read[file] = SheetFile.Read(path, settings);
        }
        catch (TableException bad)
        {
            _bad[file] = bad;
        }
    }

    // One setting for decimal mark and date order, in dessert.csv, decides for every sheet of the folder.
    private SheetSettings? SettingsOf()
    {
        if (PathOf("dessert.csv", inStore: false) is not { } path) return null;
        try
        {
            var rows = SheetFile.Read(path).Rows;
            return new(Said("decimal_mark", Marks), Said("date_order", Orders));

            T? Said<T>(string key, Dictionary<string, T> words) where T : struct =>
                rows.FirstOrDefault(row => Names.Same(row["key"], key)) is { } row && words.TryGetValue(row["value"], out var said) ? said : null;
        }
        catch (TableException)
        {
            // The sheet is read again with the others, and what is wrong with it reported there.
            return null;
        }
    }

    private static readonly Dictionary<string, char> Marks = new(Names.Comparer) { ["point"] = '.', ["comma"] = ',' };

    private static readonly Dictionary<string, DateOrder> Orders = new(Names.Comparer)
    {
        ["year-month-day"] = DateOrder.YearMonthDay, ["day-month-year"] = DateOrder.DayMonthYear, ["month-day-year"] = DateOrder.MonthDayYear,
    };
}
