using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Contents without states and sources, read straight into a matrix for sums over many mixtures: a large table of plain numbers.</summary>
/// <param name="Foods">The foods in the order of their first row: row i of the matrix is food i.</param>
/// <param name="Nutrients">The nutrients in the order of their first row.</param>
/// <param name="Matrix">What is in 100 g; NaN where the file has no row or a blank.</param>
public sealed record PlainContents(IReadOnlyList<string> Foods, IReadOnlyList<string> Nutrients, ContentMatrix Matrix)
{
    /// <summary>Reads a long file with the columns <c>food</c>, <c>nutrient</c> and <c>value</c>; commas and decimal points.</summary>
    /// <param name="path">The file.</param>
    /// <param name="threads">On how many cores; all where null. The table does not depend on it.</param>
    /// <exception cref="TableException">The file has not these columns, or a cell is no number; every one is named.</exception>
    public static PlainContents Read(string path, int? threads = null)
    {
        var rows = PlainRows.Read(path, ["food", "nutrient", "value"], threads ?? Environment.ProcessorCount);
        var stride = ContentGrid.StrideOf(rows.SecondNames.Count);
        var values = new double[rows.FirstNames.Count * stride];
        Array.Fill(values, double.NaN);
        // Where a food's nutrient comes again the later row counts.
        var food = rows.First;
        var nutrient = rows.Second;
        var value = rows.Numbers;
        for (var i = 0; i < value.Length; i++) values[food[i] * stride + nutrient[i]] = value[i];
        return new(rows.FirstNames, rows.SecondNames, new(rows.FirstNames.Count, rows.SecondNames.Count, stride, values));
    }

    /// <summary>Reads the lines of many formulas: a file with the columns <c>formula</c>, <c>food</c> and <c>mass_g</c>, the lines of a formula one after another.</summary>
    /// <param name="path">The file.</param>
    /// <param name="threads">On how many cores; all where null. The lines do not depend on it.</param>
    /// <exception cref="TableException">The file has not these columns, a cell is no number, or a food is not in the table; every one is named.</exception>
    public FormulaLines ReadLines(string path, int? threads = null)
    {
        var lines = PlainRows.Read(path, ["formula", "food", "mass_g"], threads ?? Environment.ProcessorCount);
        var known = Foods.Select((food, index) => (food, index)).ToDictionary(pair => pair.food, pair => pair.index, StringComparer.Ordinal);
        int[] rowOf = [.. lines.SecondNames.Select(food => known.GetValueOrDefault(food, -1))];
        CellProblem[] unknown = [.. lines.SecondNames.Where((_, index) => rowOf[index] < 0).Select(food => new CellProblem(Path.GetFileName(path), 0, "food", "", $"foods of the table; it has none called '{food}'"))];
        if (unknown.Length > 0) throw new TableException(unknown);
        List<int> starts = new(lines.FirstNames.Count + 1);
        var formula = lines.First;
        var food = lines.Second;
        var rows = new int[food.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            if (i == 0 || formula[i] != formula[i - 1]) starts.Add(i);
            rows[i] = rowOf[food[i]];
        }
        starts.Add(rows.Length);
        return new([.. starts], rows, lines.Numbers.ToArray());
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
