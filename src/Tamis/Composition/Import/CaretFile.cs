using System.Globalization;
using System.Text;
using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>A file of the Standard Reference: fields parted by <c>^</c>, texts between <c>~</c>, ISO-8859-1, no header, nothing escaped.</summary>
internal sealed class CaretFile(string file, IReadOnlyList<string> fields, List<CellProblem> problems)
{
    private readonly Range[] _places = new Range[fields.Count + 1];
    private string _line = "";
    private int _row;

    /// <summary>The row as a text editor counts it.</summary>
    public int Row => _row;

    /// <summary>A field's text without its marks; empty where it is missing.</summary>
    public ReadOnlySpan<char> this[int field] => _line.AsSpan(_places[field]).Trim('~');

    /// <summary>Goes through the rows; one that has another number of fields is a problem and is passed over.</summary>
    /// <param name="path">The file.</param>
    /// <param name="fields">The names of its fields.</param>
    /// <param name="problems">Receives what cannot be read.</param>
    /// <param name="each">Sees each row.</param>
    /// <returns>How many rows the file has.</returns>
    public static int Read(string path, IReadOnlyList<string> fields, List<CellProblem> problems, Action<CaretFile> each)
    {
        CaretFile reader = new(Path.GetFileName(path), fields, problems);
        var rows = 0;
        foreach (var line in File.ReadLines(path, Encoding.Latin1))
        {
            reader._row++;
            // Some rows of the release end in CR CR LF, which reads as a blank row between.
            if (line.Length == 0) continue;
            rows++;
            if (reader.Part(line)) each(reader);
        }
        return rows;
    }

    /// <summary>A number, zero or more; NaN where the field is missing, or cannot be read and is a problem.</summary>
    public double Number(int field)
    {
        var text = this[field];
        if (text.IsEmpty) return double.NaN;
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number)) return number;
        Note(field, "a number of 0 or more, or nothing");
        return double.NaN;
    }

    /// <summary>A whole number; 0 where the field is missing or cannot be read.</summary>
    public int Whole(int field)
    {
        var number = Number(field);
        if (double.IsNaN(number)) return 0;
        if (number == Math.Floor(number) && number <= int.MaxValue) return (int)number;
        Note(field, "a whole number, or nothing");
        return 0;
    }

    public void Note(int field, string expected) => problems.Add(new(file, _row, fields[field], this[field].ToString(), expected));

    private bool Part(string line)
    {
        _line = line;
        // One place more than there are fields: a row with too many is found out.
        var found = line.AsSpan().Split(_places, '^');
        if (found == fields.Count) return true;
        problems.Add(new(file, _row, "", line.Length <= 60 ? line : string.Concat(line.AsSpan(0, 57), "..."), string.Create(CultureInfo.InvariantCulture, $"{fields.Count} fields parted by ^, not {found}")));
        return false;
    }
}
