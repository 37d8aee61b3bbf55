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
        var chunks = PlainRows.Read(path, ["food", "nutrient", "value"], inRuns: false, threads ?? Environment.ProcessorCount);
        List<string> foods = [], nutrients = [];
        var (foodOf, nutrientOf) = (Joined(chunks, chunk => chunk.FirstNames, foods), Joined(chunks, chunk => chunk.SecondNames, nutrients));
        var stride = ContentGrid.StrideOf(nutrients.Count);
        var values = new double[foods.Count * stride];
        Array.Fill(values, double.NaN);
        // In the order of the file: where a food's nutrient comes again the later row counts.
        for (var chunk = 0; chunk < chunks.Count; chunk++)
        {
            foreach (var row in chunks[chunk].Rows) values[foodOf[chunk][row.First] * stride + nutrientOf[chunk][row.Second]] = row.Number;
            chunks[chunk].Dispose();
        }
        return new(foods, nutrients, new(foods.Count, nutrients.Count, stride, values));
    }

    /// <summary>Reads the lines of many formulas: a file with the columns <c>formula</c>, <c>food</c> and <c>mass_g</c>, the lines of a formula one after another.</summary>
    /// <param name="path">The file.</param>
    /// <param name="threads">On how many cores; all where null. The lines do not depend on it.</param>
    /// <exception cref="TableException">The file has not these columns, a cell is no number, or a food is not in the table; every one is named.</exception>
    public FormulaLines ReadLines(string path, int? threads = null)
    {
        var chunks = PlainRows.Read(path, ["formula", "food", "mass_g"], inRuns: true, threads ?? Environment.ProcessorCount);
        var known = Foods.Select((food, index) => (food, index)).ToDictionary(pair => pair.food, pair => pair.index, StringComparer.Ordinal);
        CellProblem[] unknown = [.. chunks.SelectMany(chunk => chunk.SecondNames).Distinct().Where(food => !known.ContainsKey(food))
            .Select(food => new CellProblem(Path.GetFileName(path), 0, "food", "", $"foods of the table; it has none called '{food}'"))];
        if (unknown.Length > 0) throw new TableException(unknown);
        var count = chunks.Sum(chunk => chunk.Rows.Length);
        List<int> starts = new(chunks.Sum(chunk => chunk.Runs.Count) + 1);
        var (rows, masses, at, last) = (new int[count], new double[count], 0, "");
        foreach (var chunk in chunks)
        {
            int[] rowOf = [.. chunk.SecondNames.Select(food => known[food])];
            // A formula may run on from the chunk before.
            var before = at > 0 && chunk.Runs.First == last ? 0 : -1;
            foreach (var row in chunk.Rows)
            {
                if (row.First != before) starts.Add(at);
                (before, rows[at], masses[at]) = (row.First, rowOf[row.Second], row.Number);
                at++;
            }
            if (chunk.Runs.Count > 0) last = chunk.Runs.Last;
            chunk.Dispose();
        }
        starts.Add(count);
        return new([.. starts], rows, masses);
    }

    // The names of all chunks, each once in the order of the file, and each chunk's own places in them.
    private static List<int[]> Joined(IReadOnlyList<PlainRows> chunks, Func<PlainRows, IReadOnlyList<string>> namesOf, List<string> all)
    {
        Dictionary<string, int> places = new(StringComparer.Ordinal);
        List<int[]> placesOf = [];
        foreach (var names in chunks.Select(namesOf))
        {
            var own = new int[names.Count];
            for (var name = 0; name < own.Length; name++)
            {
                if (places.TryAdd(names[name], all.Count)) all.Add(names[name]);
                own[name] = places[names[name]];
            }
            placesOf.Add(own);
        }
        return placesOf;
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
