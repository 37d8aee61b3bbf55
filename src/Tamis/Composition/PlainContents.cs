using System.Buffers.Text;
using System.Text;
using CsvHelper;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Contents without states and sources, read straight into a matrix for sums over many mixtures: a large table of plain numbers.</summary>
/// <param name="Foods">The foods in the order of their first row: row i of the matrix is food i.</param>
/// <param name="Nutrients">The nutrients in the order of their first row.</param>
/// <param name="Matrix">What is in 100 g; NaN where the file has no row or a blank.</param>
public sealed record PlainContents(IReadOnlyList<string> Foods, IReadOnlyList<string> Nutrients, ContentMatrix Matrix)
{
    /// <summary>Reads a long file with the columns <c>food</c>, <c>nutrient</c> and <c>value</c>; commas and decimal points.</summary>
    /// <exception cref="TableException">The file has not these columns, or a cell is no number; every one is named.</exception>
    public static PlainContents Read(string path)
    {
        List<CellProblem> problems = [];
        List<string> foods = [], nutrients = [];
        List<double[]> rows = [];
        var width = 64;
        KeyCache foodKeys = new(text => Added(foods, text)), nutrientKeys = new(text => Added(nutrients, text));
        EachRow(path, ["food", "nutrient", "value"], problems, (food, nutrient, value) =>
        {
            var (row, column) = (foodKeys.IndexOf(food), nutrientKeys.IndexOf(nutrient));
            if (column >= width)
            {
                width *= 2;
                for (var i = 0; i < rows.Count; i++) rows[i] = Wider(rows[i], width);
            }
            if (row == rows.Count) rows.Add(Wider([], width));
            rows[row][column] = value;
        });
        if (problems.Count > 0) throw new TableException(problems);
        return new(foods, nutrients, ContentMatrix.FromRows(foods.Count, nutrients.Count, row => rows[row].AsSpan(0, nutrients.Count)));
    }

    /// <summary>Reads the lines of many formulas: a file with the columns <c>formula</c>, <c>food</c> and <c>mass_g</c>, the lines of a formula one after another.</summary>
    /// <exception cref="TableException">The file has not these columns, a cell is no number, or a food is not in the table; every one is named.</exception>
    public FormulaLines ReadLines(string path)
    {
        List<CellProblem> problems = [];
        var known = Foods.Select((food, index) => (food, index)).ToDictionary(pair => pair.food, pair => pair.index, StringComparer.Ordinal);
        List<int> starts = [], rows = [];
        List<double> masses = [];
        HashSet<string> unknown = [];
        byte[] last = [];
        KeyCache foodKeys = new(text => known.GetValueOrDefault(text, -1));
        EachRow(path, ["formula", "food", "mass_g"], problems, (formula, food, mass) =>
        {
            if (starts.Count == 0 || !formula.SequenceEqual(last))
            {
                starts.Add(rows.Count);
                last = formula.ToArray();
            }
            var row = foodKeys.IndexOf(food);
            if (row < 0 && unknown.Add(Encoding.UTF8.GetString(food)))
                problems.Add(new(Path.GetFileName(path), 0, "food", "", $"foods of the table; it has none called '{Encoding.UTF8.GetString(food)}'"));
            rows.Add(row);
            masses.Add(mass);
        });
        starts.Add(rows.Count);
        return problems.Count == 0 ? new([.. starts], [.. rows], [.. masses]) : throw new TableException(problems);
    }

    private delegate void OneRow(ReadOnlySpan<byte> first, ReadOnlySpan<byte> second, double number);

    private static void EachRow(string path, string[] columns, List<CellProblem> problems, OneRow row)
    {
        var file = Path.GetFileName(path);
        using var reader = CsvReader.Create(File.ReadAllBytes(path), new CsvReaderOptions { MalformedData = CsvMalformedDataHandling.Throw, TrackLineNumbers = true });
        try
        {
            reader.ReadHeader();
            int[] at = [.. columns.Select(column => Array.FindIndex(reader.Headers.ToArray(), header => Names.Same(header, column)))];
            if (at.Contains(-1))
            {
                problems.AddRange(columns.Where((_, index) => at[index] < 0).Select(column => new CellProblem(file, 0, column, "", "the sheet needs a column of this name")));
                return;
            }
            while (reader.Read())
            {
                if (reader.FieldCount <= at.Max() || Number(reader.GetSpan(at[2])) is not { } value)
                {
                    problems.Add(new(file, (int)reader.LineNumber, columns[2], reader.FieldCount > at[2] ? reader.GetString(at[2]) : "", "a number such as 1.5"));
                    continue;
                }
                row(reader.GetSpan(at[0]), reader.GetSpan(at[1]), value);
            }
        }
        catch (CsvFormatException error)
        {
            problems.Add(new(file, (int)error.LineNumber, "", "\"", "a quote only around a whole cell, closed in the same row"));
        }
    }

    // A blank is unknown. Most numbers are few digits and a point: those are exact as a whole number over a power of ten (Clinger 1990).
    private static double? Number(ReadOnlySpan<byte> text)
    {
        if (text.IsEmpty) return double.NaN;
        var (digits, behind, isPlain) = (0L, -1, text.Length <= 16);
        for (var i = 0; isPlain && i < text.Length; i++)
        {
            if (text[i] is >= (byte)'0' and <= (byte)'9') digits = digits * 10 + text[i] - '0';
            else if (text[i] == '.' && behind < 0 && text.Length > 1) behind = text.Length - 1 - i;
            else isPlain = false;
        }
        if (isPlain && digits < 1L << 53) return behind <= 0 ? digits : digits / Tens[behind];
        return Utf8Parser.TryParse(text, out double value, out var read) && read == text.Length && double.IsFinite(value) ? value : null;
    }

    private static readonly double[] Tens = [.. Enumerable.Range(0, 17).Select(power => Math.Pow(10, power))];

    private static int Added(List<string> names, string name)
    {
        names.Add(name);
        return names.Count - 1;
    }

    private static double[] Wider(double[] row, int width)
    {
        var wider = new double[width];
        row.CopyTo(wider, 0);
        wider.AsSpan(row.Length).Fill(double.NaN);
        return wider;
    }
}

/// <summary>The lines of many formulas one after another, as <see cref="MixtureSums.SumMany"/> takes them.</summary>
/// <param name="Starts">Where the lines of each formula start; one more entry closes the last.</param>
/// <param name="Rows">The food of each line, as a row of the matrix.</param>
/// <param name="MassGrams">The mass of each line, in grams.</param>
public sealed record FormulaLines(int[] Starts, int[] Rows, double[] MassGrams)
{
    /// <summary>How many formulas there are.</summary>
    public int Count => Starts.Length - 1;
}
