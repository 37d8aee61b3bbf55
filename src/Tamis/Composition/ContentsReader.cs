using System.Globalization;
using System.Text;
using CsvHelper;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Reads the long file of contents: one row a food and nutrient.</summary>
/// <remarks>This is the one sheet that may hold hundreds of thousands of rows, so it is read from bytes to numbers with no text in between.
/// What is not as the kit writes it (other separators, encodings, wide form, units) is rewritten first by <see cref="ContentsSheet"/>.</remarks>
internal sealed class ContentsReader
{
    internal static readonly IReadOnlyList<string> Columns = ["food", "tag", "state", "value", "low", "high", "samples", "standard_deviation", "source", "method"];

    // A state follows from how a value is written; the rest may be missing as a whole.
    private static readonly string[] Needed = ["food", "tag", "value", "source"];

    internal const string Once = "each nutrient of a food once: a row above states it already";

    // A hint compares a name with every known one; a table of the wrong foods must not take minutes to say so.
    private const int MostComparisons = 200_000;

    internal static readonly IReadOnlyDictionary<string, ContentState> StateWords = new Dictionary<string, ContentState>
    {
        ["measured"] = ContentState.Measured, ["zero"] = ContentState.Zero, ["trace"] = ContentState.Trace, ["below limit"] = ContentState.BelowLimit,
        ["estimated"] = ContentState.Estimated, ["assumed zero"] = ContentState.AssumedZero, ["unknown"] = ContentState.Unknown,
    };

    /// <summary>The word by which the files state a kind of statement.</summary>
    internal static string WordOf(ContentState state) => StateWords.First(word => word.Value == state).Key;

    private readonly string _file;
    private readonly CsvReader _reader;
    private readonly int[] _at;
    private readonly IReadOnlyList<Food> _foods;
    private readonly NutrientList _nutrients;
    private readonly IReadOnlyDictionary<string, Source> _known;
    private readonly List<CellProblem> _problems;
    private readonly ContentGrid.Builder _grid;
    private readonly SourceBook _sources = new();
    private readonly KeyCache _foodKeys, _tagKeys, _stateKeys, _sourceKeys, _methodKeys;
    private readonly List<string> _methods = [];
    private readonly Dictionary<(int Column, string Text), string> _hints = [];
    private int _comparisons;

    private ContentsReader(string file, CsvReader reader, IReadOnlyList<Food> foods, NutrientList nutrients, IReadOnlyDictionary<string, Source> known, List<CellProblem> problems)
    {
        (_file, _reader, _foods, _nutrients, _known, _problems) = (file, reader, foods, nutrients, known, problems);
        _at = [.. Columns.Select(column => Array.FindIndex(reader.Headers.ToArray(), header => Names.Same(header, column)))];
        _grid = new(foods.Count, nutrients.Count);
        Dictionary<string, int> rows = new(Names.Comparer);
        for (var row = 0; row < foods.Count; row++) rows.TryAdd(FoodIndex.IdKey(foods[row].Id), row);
        string[] sourceNames = [.. known.Keys];
        // A spreadsheet takes leading zeros off; a food is found all the same.
        _foodKeys = new(text => rows.GetValueOrDefault(FoodIndex.IdKey(text), -1));
        _tagKeys = new(nutrients.IndexOf);
        _stateKeys = new(text => StateWords.Where(word => Names.Same(word.Key, text)).Select(word => (int)word.Value).DefaultIfEmpty(-1).First());
        _sourceKeys = new(text => Array.FindIndex(sourceNames, name => Names.Same(name, text)));
        SourceNames = sourceNames;
        _methodKeys = new(text =>
        {
            if (SheetLayout.IsFormulaError(text)) Note(9, "words, or a blank");
            _methods.Add(text);
            return _methods.Count - 1;
        });
    }

    private string[] SourceNames { get; }

    public static ContentGrid Read(string file, byte[]? bytes, IReadOnlyList<Food> foods, NutrientList nutrients, IReadOnlyDictionary<string, Source> sources, List<CellProblem> problems)
    {
        if (bytes is null)
        {
            problems.Add(new(file, 0, "", "", "there is no such file in the folder of the composition table"));
            return new ContentGrid.Builder(foods.Count, nutrients.Count).Build([]);
        }
        if (ContentsSheet.IsPlain(bytes))
        {
            List<CellProblem> doubts = [];
            var plain = Plain(file, bytes, foods, nutrients, sources, doubts, isOnTrial: true);
            if (doubts.Count == 0) return plain;
            // What does not look like the kit's own writing is read again as a spreadsheet may have meant it: "1,5" between commas, an error of a formula, a date.
        }
        List<CellProblem> inFile = [], found = [];
        var rewritten = ContentsSheet.Rewrite(file, bytes, nutrients, inFile);
        var grid = rewritten is { } sheet ? Plain(file, sheet.Bytes, foods, nutrients, sources, found) : new ContentGrid.Builder(foods.Count, nutrients.Count).Build([]);
        // What is wrong with a cell is said once, by whoever saw it first: a figure that is none leaves a blank, which is wrong in its turn.
        problems.AddRange(inFile.Concat(found.Select(problem => rewritten!.Value.Sheet.InFile(problem))).DistinctBy(problem => problem.Row > 0 && problem.Column.Length > 0 ? (object)(problem.Row, problem.Column) : problem).OrderBy(problem => problem.Row));
        return grid;
    }

    private static ContentGrid Plain(string file, byte[] bytes, IReadOnlyList<Food> foods, NutrientList nutrients, IReadOnlyDictionary<string, Source> sources, List<CellProblem> problems, bool isOnTrial = false)
    {
        using var reader = CsvReader.Create(bytes, new CsvReaderOptions { MalformedData = CsvMalformedDataHandling.Throw, TrackLineNumbers = true });
        try
        {
            reader.ReadHeader();
            ContentsReader contents = new(file, reader, foods, nutrients, sources, problems);
            return contents.HasColumns() ? contents.Rows(isOnTrial) : contents._grid.Build([]);
        }
        catch (CsvFormatException error)
        {
            problems.Add(new(file, (int)error.LineNumber, "", "\"", "a quote only around a whole cell, closed in the same row"));
            return new ContentGrid.Builder(foods.Count, nutrients.Count).Build([]);
        }
    }

    private bool HasColumns()
    {
        string[] missing = [.. Needed.Where(column => _at[Columns.ToList().IndexOf(column)] < 0)];
        _problems.AddRange(missing.Select(column => new CellProblem(_file, 0, column, "", "the sheet needs a column of this name")));
        return missing.Length == 0;
    }

    // On trial, reading ends with the first doubt, since the file is read in another way then.
    private ContentGrid Rows(bool isOnTrial)
    {
        while (_reader.Read() && !(isOnTrial && _problems.Count > 0)) OneRow();
        Derivation.Fill(_grid, _nutrients, _foods.Count);
        return _grid.Build(_sources.All);
    }

    private void OneRow()
    {
        var food = Cell(0);
        var tag = Cell(1);
        if (food.IsEmpty && tag.IsEmpty && Cell(3).IsEmpty) return;
        var row = _foodKeys.IndexOf(food);
        var column = _tagKeys.IndexOf(tag);
        var isSound = row >= 0 && column >= 0;
        if (row < 0) Note(0, food.IsEmpty ? "a food in every row: a merged cell counts for its first row only" : $"a food of foods.csv{Hint(0, _foods.Count, text => Perhaps(FoodNumbers.Near(text, _foods)))}{FoodNumbers.Mangled(Text(0))}");
        if (column < 0) Note(1, $"a tag of nutrients.csv{Hint(1, _nutrients.Count, text => Perhaps(Names.Nearest(text, _nutrients.All.Select(nutrient => nutrient.Tag))))}");
        var source = _sourceKeys.IndexOf(Cell(8));
        if (source < 0) Note(8, $"a key of sources.csv{Hint(8, SourceNames.Length, text => Perhaps(Names.Nearest(text, SourceNames)))}");
        var (state, value) = Statement();
        ContentGrid.Detail detail = new(Number(4, 0), Number(5, 0), Number(7, double.NaN), Whole(6), 0);
        if (detail.Low > detail.High) Note(5, "a high end that is not below the low one");
        if (state == ContentState.BelowLimit && double.IsNaN(value))
        {
            if (!(detail.High > 0)) Note(5, "the limit, above 0, because the content is stated as below it");
            value = detail.High / 2;
        }
        else if (state == ContentState.BelowLimit) (value, detail) = (value / 2, detail with { Low = 0, High = value });
        if (!isSound || source < 0 || state == ContentState.Unknown) return;
        if (value > _nutrients.All[column].MostPer100Grams) Note(3, "at most 100 g in 100 g");
        if (_grid.State(row, column) != ContentState.Unknown) Note(1, Once);
        _grid.Set(row, column, state, value, detail with { Source = _sources.IndexOf(row, source, _methodKeys.IndexOf(Cell(9)), ContentGrid.IsFilledIn(state), SourceOf) });
    }

    /// <summary>State and figure of the row; a blank state follows from how the value is written (<c>0</c>, <c>tr</c>, <c>&lt;0.1</c>).</summary>
    private (ContentState, double) Statement()
    {
        var text = Cell(3);
        var word = Cell(2);
        var stated = word.IsEmpty ? -1 : _stateKeys.IndexOf(word);
        if (stated < 0 && !word.IsEmpty) Note(2, $"one of: {string.Join(", ", StateWords.Keys)}");
        if (text.IsEmpty)
        {
            switch ((ContentState)stated)
            {
                case ContentState.Zero or ContentState.AssumedZero or ContentState.Trace: return ((ContentState)stated, 0);
                case ContentState.BelowLimit: return (ContentState.BelowLimit, double.NaN);
                case ContentState.Measured or ContentState.Estimated: Note(3, "a figure, because the state says that there is one"); break;
            }
            return (ContentState.Unknown, double.NaN);
        }
        var (written, value) = text[0] == (byte)'<' ? (ContentState.BelowLimit, Parse(text[1..]))
            : text.SequenceEqual("tr"u8) ? (ContentState.Trace, 0)
            : Parse(text) is var number && number == 0 ? (ContentState.Zero, 0) : (ContentState.Measured, number);
        if (double.IsNaN(value))
        {
            Note(3, "a number of 0 or more such as 1.5, or tr, or <0.1; leave the cell blank if nobody knows");
            return (ContentState.Unknown, double.NaN);
        }
        if (stated < 0) return (written, value);
        var state = (ContentState)stated;
        if (written is ContentState.Trace or ContentState.BelowLimit && state is not ContentState.Unknown && state != written) Note(2, $"{WordOf(written)}, because the value is written so");
        if (state == ContentState.Unknown) Note(3, "a blank, because the state says that nobody knows");
        if (state is ContentState.Zero or ContentState.AssumedZero or ContentState.Trace && value != 0) Note(3, $"0, because the state is '{Text(2)}'");
        if (state == ContentState.Measured && written == ContentState.Zero) Note(2, "zero, because the value is 0");
        return (state, value);
    }

    private Source SourceOf(int row, int source, int method, bool isFilledIn)
    {
        // A published figure of another food that stands in for this one is an estimate here.
        var (named, how) = (_known[SourceNames[source]], _methods[method]);
        var isOwn = named.Key == _foods[row].Source.Key;
        var locator = string.Join(", ", new[] { isOwn ? _foods[row].Source.Locator : "", how }.Where(part => part.Length > 0));
        return new(named.Key, isFilledIn && named.Evidence == Evidence.Published ? Evidence.Estimate : named.Evidence, locator);
    }

    private ReadOnlySpan<byte> Cell(int column) => _at[column] is var at and >= 0 && at < _reader.FieldCount ? _reader.GetSpan(at) : default;

    private string Text(int column) => Encoding.UTF8.GetString(Cell(column));

    private double Number(int column, double blank)
    {
        var text = Cell(column);
        if (text.IsEmpty) return blank;
        var value = Parse(text);
        if (!double.IsNaN(value)) return value;
        Note(column, "a number of 0 or more such as 1.5, or a blank");
        return blank;
    }

    private int Whole(int column)
    {
        var value = Number(column, 0);
        if (value == Math.Floor(value) && value <= int.MaxValue) return (int)value;
        Note(column, "a whole number, or a blank");
        return 0;
    }

    private static double Parse(ReadOnlySpan<byte> text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var value)
            && double.IsFinite(value) ? value : double.NaN;

    private void Note(int column, string expected) => _problems.Add(new(_file, (int)_reader.LineNumber, Columns[column], Text(column), expected));

    // What a cell may have meant: looked for once for each text, as long as that takes no time to speak of.
    private string Hint(int column, int known, Func<string, string> near)
    {
        var text = Text(column);
        if (_hints.TryGetValue((column, text), out var hint)) return hint;
        _comparisons += known;
        return _hints[(column, text)] = _comparisons > MostComparisons ? "" : near(text);
    }

    private static string Perhaps(IReadOnlyList<string> near) => near.Count == 0 ? "" : $", perhaps {string.Join(" or ", near)}";
}
