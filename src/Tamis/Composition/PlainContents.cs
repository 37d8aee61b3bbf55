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
        var cores = Math.Max(1, threads ?? Environment.ProcessorCount);
        var chunks = PlainRows.Read(path, ["food", "nutrient", "value"], inRuns: false, cores);
        List<string> foods = [], nutrients = [];
        List<int> foodCounts = [];
        var (foodOf, nutrientOf) = (Joined(chunks, chunk => chunk.FirstNames, foods, foodCounts), Joined(chunks, chunk => chunk.SecondNames, nutrients, []));
        var stride = ContentGrid.StrideOf(nutrients.Count);
        var values = GC.AllocateUninitializedArray<double>(foods.Count * stride);
        var late = new List<PlainRow>[chunks.Count];
        // Each chunk writes down the foods that it is the first to have.
        Cores.Each(chunks.Count, cores, chunk =>
        {
            var first = chunk == 0 ? 0 : foodCounts[chunk - 1];
            values.AsSpan(first * stride, (foodCounts[chunk] - first) * stride).Fill(double.NaN);
            var (food, nutrient) = (foodOf[chunk], nutrientOf[chunk]);
            late[chunk] = [];
            foreach (var row in chunks[chunk].Rows)
                if (food[row.First] is var place && place >= first) values[place * stride + nutrient[row.Second]] = row.Number;
                else late[chunk].Add(row);
        });
        // Then what it has of foods before it, in the order of the file: where a food's nutrient comes again the later row counts.
        for (var chunk = 1; chunk < chunks.Count; chunk++)
            foreach (var row in late[chunk]) values[foodOf[chunk][row.First] * stride + nutrientOf[chunk][row.Second]] = row.Number;
        foreach (var chunk in chunks) chunk.Dispose();
        return new(foods, nutrients, new(foods.Count, nutrients.Count, stride, values, cores));
    }

    /// <summary>Reads the lines of many formulas: a file with the columns <c>formula</c>, <c>food</c> and <c>mass_g</c>, the lines of a formula one after another.</summary>
    /// <param name="path">The file.</param>
    /// <param name="threads">On how many cores; all where null. The lines do not depend on it.</param>
    /// <exception cref="TableException">The file has not these columns, a cell is no number, or a food is not in the table; every one is named.</exception>
    public FormulaLines ReadLines(string path, int? threads = null)
    {
        var cores = Math.Max(1, threads ?? Environment.ProcessorCount);
        var chunks = PlainRows.Read(path, ["formula", "food", "mass_g"], inRuns: true, cores);
        var known = Foods.Select((food, index) => (food, index)).ToDictionary(pair => pair.food, pair => pair.index, StringComparer.Ordinal);
        CellProblem[] unknown = [.. chunks.SelectMany(chunk => chunk.SecondNames).Distinct().Where(food => !known.ContainsKey(food))
            .Select(food => new CellProblem(Path.GetFileName(path), 0, "food", "", $"foods of the table; it has none called '{food}'"))];
        if (unknown.Length > 0) throw new TableException(unknown);
        // Where the lines and the formulas of each chunk start; the first formula of a chunk may run on from the chunk before.
        var (firstLine, firstFormula, runsOn, last) = (new int[chunks.Count + 1], new int[chunks.Count + 1], new bool[chunks.Count], "");
        for (var chunk = 0; chunk < chunks.Count; chunk++)
        {
            var runs = chunks[chunk].Runs;
            runsOn[chunk] = firstLine[chunk] > 0 && runs.First == last;
            firstLine[chunk + 1] = firstLine[chunk] + chunks[chunk].Rows.Length;
            firstFormula[chunk + 1] = firstFormula[chunk] + runs.Count - (runsOn[chunk] ? 1 : 0);
            if (runs.Count > 0) last = runs.Last;
        }
        var (rows, masses, starts) = (GC.AllocateUninitializedArray<int>(firstLine[^1]), GC.AllocateUninitializedArray<double>(firstLine[^1]), new int[firstFormula[^1] + 1]);
        starts[^1] = firstLine[^1];
        Cores.Each(chunks.Count, cores, chunk =>
        {
            int[] rowOf = [.. chunks[chunk].SecondNames.Select(food => known[food])];
            var (at, formula, before) = (firstLine[chunk], firstFormula[chunk], runsOn[chunk] ? 0 : -1);
            foreach (var row in chunks[chunk].Rows)
            {
                if (row.First != before) starts[formula++] = at;
                (before, rows[at], masses[at]) = (row.First, rowOf[row.Second], row.Number);
                at++;
            }
            chunks[chunk].Dispose();
        });
        return new(starts, rows, masses);
    }

    // The names of all chunks, each once in the order of the file, each chunk's own places in them, and how many there are up to the end of each chunk.
    private static List<int[]> Joined(IReadOnlyList<PlainRows> chunks, Func<PlainRows, IReadOnlyList<string>> namesOf, List<string> all, List<int> counts)
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
            counts.Add(all.Count);
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
