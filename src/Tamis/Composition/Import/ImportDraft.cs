using System.Globalization;
using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>A table in the making: takes foods and figures from an importer, keeps count of what it did with them, and converts at the end.</summary>
internal sealed class ImportDraft(string layout, SourceRow source, ImportCodes codes)
{
    private const int FewExamples = 4;

    private readonly List<Food> _foods = [];
    private readonly Dictionary<string, int> _rows = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<Dictionary<int, ContentRow>> _contents = [];
    private readonly List<FoodMeasure> _measures = [];
    private readonly List<ImportedFile> _files = [];
    private readonly Dictionary<(ImportDeed Deed, string What, string Why), (int Count, List<string> Examples)> _notes = [];

    public ImportCodes Codes => codes;

    /// <summary>What cannot be read; an import with any is refused whole.</summary>
    public List<CellProblem> Problems { get; } = [];

    public Source Source { get; } = new(source.Key, source.Evidence);

    /// <summary>The row of a food, or −1.</summary>
    public int Row(string id) => _rows.GetValueOrDefault(id, -1);

    public Food FoodAt(int row) => _foods[row];

    /// <summary>Adds a food; one that is there already keeps its row.</summary>
    public int Add(Food food)
    {
        if (!_rows.TryAdd(food.Id, _foods.Count)) return _rows[food.Id];
        _foods.Add(food);
        _contents.Add([]);
        return _foods.Count - 1;
    }

    public void Replace(int row, Func<Food, Food> change) => _foods[row] = change(_foods[row]);

    public void Add(FoodMeasure measure)
    {
        _measures.Add(measure);
        Note(ImportDeed.Took, "measures", measure.VolumeMillilitres is null ? "pieces and portions" : "spoons, cups and other volumes, so that a density follows");
    }

    public void Read(string file, int rows) => _files.Add(new(file, rows));

    /// <summary>Reads a sheet as far as it can be read; null where it has none of the columns that it needs. What is wrong with it is a problem.</summary>
    public Sheet? Sheet(string path, char decimalMark, params IReadOnlyList<string> needed)
    {
        var sheet = SheetFile.ReadOn(() => SheetFile.Read(path, new() { DecimalMark = decimalMark, DateOrder = DateOrder.YearMonthDay }), Problems);
        if (sheet is null || !sheet.Require(needed, Problems)) return null;
        _files.Add(new(sheet.File, sheet.Rows.Count) { Remark = sheet.Dialect.Encoding == SheetEncoding.Windows1252 ? SheetText.OldLetters : "" });
        return sheet;
    }

    /// <summary>Takes a figure for a food. One that stands there already stays: the same again is merged, another is left.</summary>
    /// <param name="row">The food.</param>
    /// <param name="code">What the publisher calls the nutrient.</param>
    /// <param name="content">The figure in the publisher's unit.</param>
    public void Take(int row, ImportCode code, in ContentRow content)
    {
        var column = codes.Nutrients.IndexOf(code.Tag);
        var taken = code.Factor == 1 ? content : Scaled(content, code);
        if (taken.Value > codes.Nutrients.All[column].MostPer100Grams)
        {
            Note(ImportDeed.Left, "values", "more than 100 g in 100 g", Example(row, code, taken));
            return;
        }
        if (taken.Low > taken.High)
        {
            Note(ImportDeed.Left, "lowest and highest samples", "the lowest is above the highest; the figure itself is taken", Example(row, code, taken));
            taken = taken with { Low = double.NaN, High = double.NaN };
        }
        if (_contents[row].TryGetValue(column, out var there))
        {
            var isSame = there.State == taken.State && (there.Value.Equals(taken.Value) || taken.State == ContentState.BelowLimit && there.High.Equals(taken.High));
            if (isSame) Note(ImportDeed.Merged, "values", "stated twice alike");
            else Note(ImportDeed.Left, "values", "stated twice and not alike: the first counts", $"{Example(row, code, taken)} beside {Text(there)}");
            return;
        }
        _contents[row].Add(column, taken);
        Note(ImportDeed.Took, "values", ContentsReader.WordOf(taken.State));
    }

    public void Note(ImportDeed deed, string what, string why, string? example = null, int count = 1)
    {
        if (count == 0) return;
        if (!_notes.TryGetValue((deed, what, why), out var note)) note = (0, []);
        if (example is not null && note.Examples.Count < FewExamples && !note.Examples.Contains(example)) note.Examples.Add(example);
        _notes[(deed, what, why)] = (note.Count + count, note.Examples);
    }

    /// <summary>Makes the named conversions and closes the table.</summary>
    /// <exception cref="TableException">Something in the files cannot be read.</exception>
    public Imported Build()
    {
        if (Problems.Count > 0) throw new TableException([.. Problems.Distinct()]);
        foreach (var conversion in codes.Conversions.Where(conversion => conversion.Use != ConversionUse.OnRequest)) Convert(conversion);
        // Columns that no food fills would only widen the table; what a column follows from stays with it.
        var used = _contents.SelectMany(row => row.Keys).ToHashSet();
        foreach (var nutrient in codes.Nutrients.All.Where(nutrient => nutrient.Derived is { } way && way.Terms.Any(term => used.Contains(codes.Nutrients.IndexOf(term.Tag)))))
            used.UnionWith([codes.Nutrients.IndexOf(nutrient.Tag), .. nutrient.Derived!.Terms.Select(term => codes.Nutrients.IndexOf(term.Tag))]);
        int[] columns = [.. used.Order()];
        var places = columns.Select((column, place) => (column, place)).ToDictionary(pair => pair.column, pair => pair.place);
        CompositionRows rows = new()
        {
            Foods = _foods,
            Nutrients = new(columns.Select(column => codes.Nutrients.All[column])),
            Contents = [.. _contents.Select(row => row.ToDictionary(pair => places[pair.Key], pair => pair.Value))],
            Measures = _measures,
            Sources = [source],
        };
        Note(ImportDeed.Took, "foods", $"from {source.Title}", count: _foods.Count);
        return new(rows, new(layout, _files, [.. _notes.OrderBy(note => note.Key.Deed).ThenByDescending(note => note.Value.Count)
            .Select(note => new ImportNote(note.Key.Deed, note.Key.What, note.Value.Count, note.Key.Why, note.Value.Examples))]));
    }

    private void Convert(Conversion conversion)
    {
        var to = codes.Nutrients.IndexOf(conversion.Tag);
        for (var row = 0; row < _foods.Count; row++)
        {
            if (_contents[row].ContainsKey(to) || conversion.Of(_contents[row], codes.Nutrients, _foods[row].NitrogenFactor, source.Key) is not { } converted) continue;
            _contents[row].Add(to, converted);
            Note(ImportDeed.Converted, "values", $"{conversion.Name}, {conversion.Tag} = {conversion.Formula}");
        }
    }

    private static ContentRow Scaled(in ContentRow content, ImportCode code) => content with
    {
        Value = content.Value * code.Factor, Low = content.Low * code.Factor, High = content.High * code.Factor, StandardDeviation = content.StandardDeviation * code.Factor,
        Method = content.Method.Length == 0 ? code.Step : $"{content.Method}; {code.Step}",
    };

    private string Example(int row, ImportCode code, in ContentRow content) => $"{_foods[row].Id} {code.Name} {Text(content)}";

    private static string Text(in ContentRow content) => content.State == ContentState.BelowLimit
        ? string.Create(CultureInfo.InvariantCulture, $"<{content.High}") : string.Create(CultureInfo.InvariantCulture, $"{content.Value}");
}
