using System.Globalization;
using Tamis.Composition;

namespace Tamis.Benchmarks;

/// <summary>A table and formulas of a size that no kitchen has, from a fixed seed: 8,000 foods × 80 nutrients, a tenth of them unknown; 100,000 formulas × 12 lines.</summary>
internal sealed class PanelInputs
{
    public const int Foods = 8_000, Nutrients = 80, Formulas = 100_000, LinesEach = 12;

    private PanelInputs(ContentMatrix matrix, int[] starts, int[] rows, double[] massGrams) =>
        (Matrix, Starts, Rows, MassGrams) = (matrix, starts, rows, massGrams);

    public ContentMatrix Matrix { get; }

    public int[] Starts { get; }

    public int[] Rows { get; }

    public double[] MassGrams { get; }

    public static PanelInputs Make()
    {
        var random = new Random(20260925);
        var row = new double[Nutrients];
        var matrix = ContentMatrix.FromRows(Foods, Nutrients, _ =>
        {
            for (var i = 0; i < row.Length; i++) row[i] = random.NextDouble() < 0.1 ? double.NaN : random.NextDouble() * 100;
            return row;
        });
        return new(matrix,
            [.. Enumerable.Range(0, Formulas + 1).Select(i => i * LinesEach)],
            [.. Enumerable.Range(0, Formulas * LinesEach).Select(_ => random.Next(Foods))],
            [.. Enumerable.Range(0, Formulas * LinesEach).Select(_ => 1 + random.NextDouble() * 400)]);
    }
}

/// <summary>A composition table in the kit's own files with as many contents as asked for, in a folder of its own.</summary>
internal sealed class LargeTableFolder : IDisposable
{
    public LargeTableFolder(int foods, int nutrients)
    {
        Path = Directory.CreateTempSubdirectory("tamis-table-").FullName;
        var random = new Random(7);
        Write("sources.csv", "key,evidence,title", [["bench,published,a made-up table"]]);
        Write("nutrients.csv", "tag,word,unit", Enumerable.Range(0, nutrients).Select(i => (string[])[Text($"N{i}"), Text($"nutrient {i}"), "mg"]));
        Write("foods.csv", "food,name,source", Enumerable.Range(0, foods).Select(i => (string[])[Text($"BENCH {i}"), Text($"food {i}"), "bench"]));
        Write("contents.csv", "food,tag,state,value,low,high,samples,standard_deviation,source,method",
            from food in Enumerable.Range(0, foods)
            from nutrient in Enumerable.Range(0, nutrients)
            select (string[])[Text($"BENCH {food}"), Text($"N{nutrient}"), "measured", Text($"{random.NextDouble() * 100 + 0.001:0.###}"), "", "", "", "", "bench", ""]);
    }

    public string Path { get; }

    public void Dispose() => Directory.Delete(Path, recursive: true);

    private void Write(string name, string header, IEnumerable<string[]> rows) =>
        File.WriteAllLines(System.IO.Path.Combine(Path, name), rows.Select(cells => string.Join(',', cells)).Prepend(header));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
