using System.Runtime.CompilerServices;

namespace Tamis.Statistics.MixedModels;

/// <summary>
/// The sums of products of all columns of a mixed model: random effects, fixed effects, response. The intercepts of the term with most levels
/// are no part of the matrix: they meet no other of their own term, so that they are taken out one by one (their block is a diagonal).
/// </summary>
internal sealed class CrossProducts
{
    // Each number of rows that a level can have costs a matrix of sums; a design of practice has about as many as it has sessions.
    private const int MostRowCounts = 100;

    public CrossProducts(RandomLevels[] random, FixedColumns design, int[] keptColumns, double[] response)
    {
        Random = random;
        var largest = random.Select((term, i) => (term, i)).MaxBy(pair => pair.term.Count).i;
        // Slopes stand in blocks of several columns; a model that has any is kept whole.
        Taken = random.All(term => term.IsPlain) && random[largest].Level.CountBy(level => level).DistinctBy(pair => pair.Value).Count() <= MostRowCounts ? largest : -1;
        var rowOfGroup = Groups(out var groupStart);
        FixedCount = keptColumns.Length;
        var offsets = new int[random.Length];
        var vertexCount = 0;
        for (var i = 0; i < random.Length; i++)
        {
            offsets[i] = vertexCount;
            if (i != Taken) vertexCount += random[i].Count;
        }
        BlockTerm = new int[vertexCount];
        for (var i = 0; i < random.Length; i++)
            if (i != Taken) Array.Fill(BlockTerm, i, offsets[i], random[i].Count);

        var neighbours = Neighbours(rowOfGroup, groupStart, offsets, vertexCount);
        int[] weights = [.. BlockTerm.Select(term => random[term].EffectCount)];
        var order = ProfileOrder.Of(neighbours, weights, BlockTerm);
        BlockStart = new int[vertexCount];
        var column = 0;
        foreach (var vertex in order)
        {
            BlockStart[vertex] = column;
            column += weights[vertex];
        }
        RandomCount = column;
        var first = new int[RandomCount + FixedCount + 1];
        for (var vertex = 0; vertex < vertexCount; vertex++)
            first.AsSpan(BlockStart[vertex], weights[vertex]).Fill(neighbours[vertex].Select(other => BlockStart[other]).Append(BlockStart[vertex]).Min());
        Matrix = new(first);
        LevelBlock = [.. random.Select((term, i) => i == Taken ? [] : BlockStart.AsSpan(offsets[i], term.Count).ToArray())];
        Fill(design, keptColumns, response, rowOfGroup, groupStart);
    }

    public RandomLevels[] Random { get; }

    /// <summary>The term whose levels are taken out one by one; −1 for none.</summary>
    public int Taken { get; }

    /// <summary>For each block of the matrix its random term, in no particular order, beside <see cref="BlockStart"/>.</summary>
    public int[] BlockTerm { get; }

    public int[] BlockStart { get; }

    /// <summary>For each term the first column of each level's block.</summary>
    public int[][] LevelBlock { get; }

    public int RandomCount { get; }

    public int FixedCount { get; }

    public SkylineMatrix Matrix { get; }

    /// <summary>How many rows each level of the term that is taken out has.</summary>
    public double[] TakenRows { get; private set; } = [];

    /// <summary>Where the columns that each of those levels meets begin.</summary>
    public int[] TakenStart { get; private set; } = [0];

    public int[] TakenColumns { get; private set; } = [];

    public double[] TakenSums { get; private set; } = [];

    /// <summary>
    /// The levels that are taken out by how many rows they have: for each number of rows how many levels have it, and the sum of the products of
    /// their <see cref="TakenSums"/>, laid out as <see cref="Matrix"/>. What a level takes from the matrix depends on nothing else.
    /// </summary>
    public IReadOnlyList<(double Rows, int Levels, double[] Products)> TakenByRows { get; private set; } = [];

    // The rows sorted by the level that is taken out; every row alone where none is.
    private int[] Groups(out int[] start)
    {
        var rowCount = Random[0].Level.Length;
        if (Taken < 0)
        {
            start = [.. Enumerable.Range(0, rowCount + 1)];
            return [.. Enumerable.Range(0, rowCount)];
        }
        var level = Random[Taken].Level;
        start = new int[Random[Taken].Count + 1];
        foreach (var one in level) start[one + 1]++;
        for (var i = 0; i + 1 < start.Length; i++) start[i + 1] += start[i];
        var next = start.AsSpan().ToArray();
        var rows = new int[rowCount];
        for (var row = 0; row < rowCount; row++) rows[next[level[row]]++] = row;
        return rows;
    }

    // Two levels are neighbours where they share a row, or rows of one level that is taken out.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private List<int[]> Neighbours(int[] rows, int[] groupStart, int[] offsets, int vertexCount)
    {
        var groupCount = groupStart.Length - 1;
        var met = new int[vertexCount];
        var cliques = new List<int>[vertexCount];
        var members = new List<int>[groupCount];
        for (var group = 0; group < groupCount; group++)
        {
            members[group] = [];
            for (var at = groupStart[group]; at < groupStart[group + 1]; at++)
                for (var i = 0; i < Random.Length; i++)
                {
                    if (i == Taken) continue;
                    var vertex = offsets[i] + Random[i].Level[rows[at]];
                    if (met[vertex] == group + 1) continue;
                    met[vertex] = group + 1;
                    members[group].Add(vertex);
                    (cliques[vertex] ??= []).Add(group);
                }
        }
        Array.Clear(met);
        List<int[]> neighbours = [];
        for (var vertex = 0; vertex < vertexCount; vertex++)
        {
            List<int> list = [];
            met[vertex] = vertex + 1;
            foreach (var group in cliques[vertex])
                foreach (var other in members[group])
                    if (met[other] != vertex + 1)
                    {
                        met[other] = vertex + 1;
                        list.Add(other);
                    }
            neighbours.Add([.. list]);
        }
        return neighbours;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Fill(FixedColumns design, int[] keptColumns, double[] response, int[] rows, int[] groupStart)
    {
        var place = new int[design.Columns.Count];
        Array.Fill(place, -1);
        for (var i = 0; i < keptColumns.Length; i++) place[keptColumns[i]] = RandomCount + i;
        int[] origins = [.. Enumerable.Range(0, Matrix.Size).Select(Matrix.Origin)];
        var (columns, values) = (new int[Matrix.Size], new double[Matrix.Size]);
        var (fixedColumns, fixedValues) = (new int[design.WidthOfRow], new double[design.WidthOfRow]);
        var taken = new TakenLevels(Matrix.Size, Taken < 0 ? 0 : groupStart.Length - 1);
        for (var group = 0; group + 1 < groupStart.Length; group++)
        {
            for (var at = groupStart[group]; at < groupStart[group + 1]; at++)
            {
                var row = rows[at];
                var count = 0;
                for (var i = 0; i < Random.Length; i++)
                {
                    if (i == Taken) continue;
                    var block = LevelBlock[i][Random[i].Level[row]];
                    for (var effect = 0; effect < Random[i].EffectCount; effect++)
                        (columns[count], values[count++]) = (block + effect, Random[i].IsPlain ? 1 : Random[i].Multipliers[effect][row]);
                }
                var fixedCount = design.Row(row, fixedColumns, fixedValues);
                for (var k = 0; k < fixedCount; k++)
                    if (place[fixedColumns[k]] is var column and >= 0) (columns[count], values[count++]) = (column, fixedValues[k]);
                (columns[count], values[count++]) = (Matrix.Size - 1, response[row]);
                AddProducts(Matrix.Values, origins, columns, values, count);
                if (Taken >= 0) taken.Add(columns, values, count);
            }
            if (Taken >= 0) taken.Close(group, groupStart[group + 1] - groupStart[group]);
        }
        (TakenRows, TakenStart, TakenColumns, TakenSums) = taken.Whole();
        TakenByRows = [.. TakenRows.Index().GroupBy(level => level.Item).OrderBy(group => group.Key).Select(group => (group.Key, group.Count(), ProductsOf(group, origins)))];
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double[] ProductsOf(IEnumerable<(int Index, double Item)> levels, int[] origins)
    {
        var products = new double[Matrix.Values.Length];
        foreach (var (level, _) in levels)
        {
            var columns = TakenColumns.AsSpan(TakenStart[level]..TakenStart[level + 1]);
            var sums = TakenSums.AsSpan(TakenStart[level]..TakenStart[level + 1]);
            for (var a = 0; a < columns.Length; a++)
            {
                var (origin, value) = (origins[columns[a]], sums[a]);
                for (var b = 0; b <= a; b++) products[origin + columns[b]] += value * sums[b];
            }
        }
        return products;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddProducts(double[] matrix, int[] origins, int[] columns, double[] values, int count)
    {
        for (var a = 0; a < count; a++)
        {
            var (row, value) = (columns[a], values[a]);
            var origin = origins[row];
            matrix[origin + row] += value * value;
            for (var b = 0; b < a; b++)
            {
                var column = columns[b];
                matrix[column < row ? origin + column : origins[column] + row] += value * values[b];
            }
        }
    }
}
