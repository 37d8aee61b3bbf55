using System.Globalization;
using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>Imports the USDA National Nutrient Database for Standard Reference as published (release 28: the relational files, the abbreviated file, or both).</summary>
/// <remarks>Taken are <c>FOOD_DES</c>, <c>FD_GROUP</c>, every <c>NUT_DATA*.txt</c>, <c>ABBREV</c>, <c>WEIGHT</c>, <c>NUTR_DEF</c>, <c>DERIV_CD</c>, and wide extracts <c>NUT_DATA*.csv</c>.
/// The value file counts before the abbreviated one, which knows no samples. Protein stays as its own factor made it, carbohydrate stays by difference,
/// energy stays the publisher's; what is worked out beside them is a named conversion.</remarks>
internal sealed class StandardReference
{
    private static readonly SourceRow Publication = new("SR28", Evidence.Published, "USDA National Nutrient Database for Standard Reference, release 28")
    {
        Publisher = "U.S. Department of Agriculture, Agricultural Research Service, Nutrient Data Laboratory", Year = "2016",
        Licence = "public domain (work of the United States government)",
        Cite = "US Department of Agriculture, Agricultural Research Service, Nutrient Data Laboratory. USDA National Nutrient Database for Standard Reference, Release 28 (revised May 2016).",
    };

    private readonly string _folder;
    private readonly ImportDraft _draft;
    private readonly Dictionary<string, string> _origins;
    private readonly Dictionary<string, string> _derivations = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Origin, string Derivation, string From), string> _methods = [];

    private StandardReference(string folder, ImportCodes codes)
    {
        (_folder, _draft) = (folder, new("SR28", Publication, codes));
        _origins = codes.Of("sr28 origin").ToDictionary(code => code.Key, code => code.Value.Step, StringComparer.Ordinal);
    }

    /// <summary>Imports a folder.</summary>
    /// <exception cref="TableException">A file that must be there is not, or something in the files cannot be read.</exception>
    public static Imported Import(string folder, ImportCodes codes) => new StandardReference(folder, codes).Run();

    private Imported Run()
    {
        Dictionary<string, string> groups = new(StringComparer.Ordinal);
        ForEach("FD_GROUP.txt", StandardReferenceFields.Pair, row => groups[row[0].ToString()] = row[1].ToString());
        ForEach("DERIV_CD.txt", StandardReferenceFields.Pair, row => _derivations[row[0].ToString()] = row[1].ToString());
        if (!ForEach("FOOD_DES.txt", StandardReferenceFields.Foods, row => Food(row, groups)))
            _draft.Problems.Add(new("FOOD_DES.txt", 0, "", "", "there is no such file, and it names the foods"));
        ForEach("NUTR_DEF.txt", StandardReferenceFields.Definitions, Definition);
        string[] values = [.. Files("NUT_DATA*.txt")];
        foreach (var file in values) ForEach(file, StandardReferenceFields.Values, Value);
        var isAbbreviated = ForEach("ABBREV.txt", StandardReferenceFields.Abbreviated, Abbreviated);
        foreach (var file in Files("NUT_DATA*.csv")) Wide(file);
        if (values.Length == 0 && !isAbbreviated) _draft.Problems.Add(new("NUT_DATA.txt", 0, "", "", "neither this file nor ABBREV.txt is there, and one of them holds the values"));
        ForEach("WEIGHT.txt", StandardReferenceFields.Weights, Weight);
        return _draft.Build();
    }

    private IEnumerable<string> Files(string pattern) => Directory.EnumerateFiles(_folder, pattern).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal);

    private bool ForEach(string file, IReadOnlyList<string> fields, Action<CaretFile> each)
    {
        var path = Path.Combine(_folder, file);
        if (!File.Exists(path)) return false;
        _draft.Read(file, CaretFile.Read(path, fields, _draft.Problems, each));
        return true;
    }

    private static string Id(ReadOnlySpan<char> number) => $"SR28 {number}";

    private void Food(CaretFile row, Dictionary<string, string> groups)
    {
        var id = Id(row[0]);
        var (protein, fat, carbohydrate) = (row.Number(11), row.Number(12), row.Number(13));
        _draft.Add(new Food(id, row[2].ToString(), groups.GetValueOrDefault(row[1].ToString(), row[1].ToString()), _draft.Source with { Locator = $"food {row[0]}" })
        {
            // A factor of 0 says that there is no protein to convert.
            NitrogenFactor = row.Number(10) is > 0 and var factor ? factor : null,
            EnergyFactors = double.IsNaN(protein + fat + carbohydrate) ? null : new(protein, fat, carbohydrate),
            EdiblePercent = 100 - (row.Number(8) is >= 0 and <= 100 and var refuse ? refuse : 0),
        });
        if (row[10].IsEmpty) _draft.Note(ImportDeed.Left, "nitrogen factors", "the record states none, so its protein cannot be converted", id);
    }

    // The units of the codes are those of the documentation; a release that changes one must not pass in silence.
    private void Definition(CaretFile row)
    {
        var unit = row[1].ToString().Replace('\u00b5', 'u');
        if (!_draft.Codes.Of("sr28").TryGetValue(row[0].ToString(), out var code)) _draft.Note(ImportDeed.Left, "nutrients", "the publisher gives it no tagname", $"{row[0]} {row[3]}");
        else if (code.Unit != unit) row.Note(1, $"{code.Unit}, the unit of nutrient {row[0]} in import-codes.csv");
    }

    private void Value(CaretFile row)
    {
        var food = _draft.Row(Id(row[0]));
        if (food < 0) _draft.Note(ImportDeed.Left, "values", "of a food that FOOD_DES does not name", Id(row[0]));
        else if (!_draft.Codes.Of("sr28").TryGetValue(row[1].ToString(), out var code)) _draft.Note(ImportDeed.Left, "values", "of a nutrient without a tagname", row[1].ToString());
        else if (row.Number(2) is var value && double.IsNaN(value)) _draft.Note(ImportDeed.Left, "values", "blank in the file: unknown, not zero", $"{Id(row[0])} {code.Name}");
        else
        {
            var samples = row.Whole(3);
            var (low, high, error) = (row.Number(10), row.Number(11), row.Number(4));
            _draft.Take(food, code, new(value == 0 ? ContentState.Zero : ContentState.Measured, value, Publication.Key, Method(row[5].ToString(), row[6].ToString(), row[7].ToString()))
            {
                Low = low, High = high, Samples = samples,
                // The release states the standard error of the mean; the spread of the samples is √n times as much.
                StandardDeviation = samples > 1 && error > 0 ? error * Math.Sqrt(samples) : double.NaN,
            });
        }
    }

    private string Method(string origin, string derivation, string from)
    {
        if (_methods.TryGetValue((origin, derivation, from), out var known)) return known;
        var method = _origins.GetValueOrDefault(origin, $"source code {origin}");
        if (derivation.Length > 0) method += $"; {derivation}{(_derivations.TryGetValue(derivation, out var words) ? $", {string.Join(' ', words.Split(' ', StringSplitOptions.RemoveEmptyEntries))}" : "")}";
        if (from.Length > 0) method += $"; from food {from}";
        return _methods[(origin, derivation, from)] = method;
    }

    private void Abbreviated(CaretFile row)
    {
        var id = Id(row[0]);
        if (_draft.Row(id) < 0)
        {
            _draft.Note(ImportDeed.Merged, "foods", "in ABBREV alone: taken under its short name, without group and factors", id);
            _draft.Add(new Food(id, row[1].ToString(), "", _draft.Source with { Locator = $"food {row[0]}" }) { EdiblePercent = 100 - (row.Number(52) is >= 0 and <= 100 and var refuse ? refuse : 0) });
        }
        var food = _draft.Row(id);
        foreach (var (place, code) in _draft.Codes.Of("sr28 abbreviated"))
            if (row.Number(int.Parse(place, CultureInfo.InvariantCulture) - 1) is var value && double.IsNaN(value)) _draft.Note(ImportDeed.Left, "values", "blank in ABBREV: unknown, not zero");
            else
                _draft.Take(food, code, new(value == 0 ? ContentState.Zero : ContentState.Measured, value, Publication.Key, "abbreviated file, without numbers of samples"));
    }

    // An extract of the value file with a column a nutrient, its header as Starch_g.
    private void Wide(string file)
    {
        if (_draft.Sheet(Path.Combine(_folder, file), '.', "NDB_No") is not { } sheet) return;
        var codes = sheet.Columns.Where(column => _draft.Codes.Of("sr28 wide").ContainsKey(column)).Select(column => (Column: column, Code: _draft.Codes.Of("sr28 wide")[column])).ToArray();
        foreach (var column in sheet.Columns.Skip(1).Except(codes.Select(code => code.Column))) _draft.Note(ImportDeed.Left, "nutrients", $"{file} has a column that is no nutrient of import-codes.csv", column);
        foreach (var row in sheet.Rows)
        {
            var food = _draft.Row(Id(row["NDB_No"]));
            if (food < 0) _draft.Note(ImportDeed.Left, "values", "of a food that FOOD_DES does not name", row["NDB_No"]);
            RowReader reader = new(row, _draft.Problems);
            foreach (var (column, code) in food < 0 ? [] : codes)
                if (reader.Number(column, 0) is { } value)
                    _draft.Take(food, code, new(value == 0 ? ContentState.Zero : ContentState.Measured, value, Publication.Key, "extract of the value file, without numbers of samples"));
        }
    }

    private void Weight(CaretFile row)
    {
        var (food, amount, grams, words) = (_draft.Row(Id(row[0])), row.Number(2), row.Number(4), row[3].ToString());
        if (food < 0) _draft.Note(ImportDeed.Left, "measures", "of a food that FOOD_DES does not name", Id(row[0]));
        else if (!(amount > 0 && grams > 0)) _draft.Note(ImportDeed.Left, "measures", "without an amount or a mass", $"{Id(row[0])} {words}");
        else _draft.Add(new FoodMeasure(_draft.FoodAt(food).Id, words, amount, grams, _draft.Source with { Locator = $"food {row[0]}" })
        {
            VolumeMillilitres = _draft.Codes.Millilitres(words) * amount,
            Samples = row.Whole(5) is > 0 and var samples ? samples : null,
            StandardDeviationGrams = row.Number(6) is > 0 and var spread ? spread : null,
        });
    }
}
