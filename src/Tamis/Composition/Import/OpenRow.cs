using System.Globalization;
using CsvHelper;
using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>A row of a CSV of millions, by the names of its columns: read as it streams, with no sheet of texts in between.</summary>
internal sealed class OpenRow
{
    private readonly string _file;
    private readonly CsvReader _reader;
    private readonly List<CellProblem> _problems;
    private readonly Dictionary<string, int> _places = new(StringComparer.OrdinalIgnoreCase);

    private OpenRow(string file, CsvReader reader, List<CellProblem> problems)
    {
        (_file, _reader, _problems) = (file, reader, problems);
        for (var i = 0; i < reader.Headers.Count; i++) _places.TryAdd(reader.Headers[i], i);
    }

    /// <summary>Goes through the rows of a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="needed">The columns that it must have.</param>
    /// <param name="problems">Receives what cannot be read.</param>
    /// <param name="each">Sees each row.</param>
    /// <returns>How many rows there are.</returns>
    public static int Read(string path, IReadOnlyList<string> needed, List<CellProblem> problems, Action<OpenRow> each)
    {
        var file = Path.GetFileName(path);
        var rows = 0;
        using var stream = File.OpenRead(path);
        using var reader = CsvReader.Create(stream, new CsvReaderOptions { MalformedData = CsvMalformedDataHandling.Throw, TrackLineNumbers = true });
        try
        {
            reader.ReadHeader();
            OpenRow row = new(file, reader, problems);
            string[] missing = [.. needed.Where(column => !row._places.ContainsKey(column))];
            problems.AddRange(missing.Select(column => new CellProblem(file, 0, column, "", "the layout needs a column of this name")));
            for (; missing.Length == 0 && reader.Read(); rows++) each(row);
        }
        catch (CsvFormatException error)
        {
            problems.Add(new(file, (int)error.LineNumber, "", "\"", "a quote only around a whole cell, closed in the same row"));
        }
        return rows;
    }

    /// <summary>The text of a cell; empty where it is blank or the file has no such column.</summary>
    public string Text(string column) => _places.TryGetValue(column, out var place) && place < _reader.FieldCount ? _reader.GetString(place).Trim() : "";

    /// <summary>A number; NaN where the cell is blank, or cannot be read and is a problem.</summary>
    public double Number(string column)
    {
        if (!_places.TryGetValue(column, out var place) || place >= _reader.FieldCount || _reader.GetSpan(place) is var text && text.IsEmpty) return double.NaN;
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)) return number;
        Note(column, "a number, or nothing");
        return double.NaN;
    }

    /// <summary>A whole number of samples, 1 or more; 0 where the cell is blank or zero, or cannot be read and is a problem.</summary>
    public int Samples(string column)
    {
        var number = Number(column);
        if (!(number > 0)) return 0;
        if (number == Math.Floor(number) && number <= int.MaxValue) return (int)number;
        Note(column, "a whole number, or nothing");
        return 0;
    }

    /// <summary>Notes a problem with a cell of this row.</summary>
    public void Note(string column, string expected) => _problems.Add(new(_file, (int)_reader.LineNumber, column, Text(column), expected));
}
