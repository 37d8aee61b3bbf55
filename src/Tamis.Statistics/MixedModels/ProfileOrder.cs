namespace Tamis.Statistics.MixedModels;

/// <summary>An order of the vertices of a graph in which a Cholesky factor has a small skyline.</summary>
/// <remarks>
/// Reverse Cuthill–McKee (George and Liu 1981, chapter 4) after the vertices of some classes, the most connected first, are set aside for the
/// end: few levels that meet all others (a session, a product) would widen every row between them. Of all these orders the cheapest is taken.
/// </remarks>
internal static class ProfileOrder
{
    /// <summary>The vertices in their order.</summary>
    /// <param name="neighbours">For each vertex the others that it shares a term with.</param>
    /// <param name="weights">How many rows of the matrix a vertex stands for.</param>
    /// <param name="classes">The class of each vertex.</param>
    public static int[] Of(IReadOnlyList<int[]> neighbours, int[] weights, int[] classes)
    {
        int[] byDegree = [.. Enumerable.Range(0, neighbours.Count).GroupBy(vertex => classes[vertex])
            .OrderByDescending(group => group.Average(vertex => neighbours[vertex].Length)).ThenBy(group => group.Key).Select(group => group.Key)];
        return Enumerable.Range(0, Math.Max(1, byDegree.Length)).Select(count => Order(neighbours, classes, byDegree[..count]))
            .MinBy(order => Cost(neighbours, weights, order))!;
    }

    private static int[] Order(IReadOnlyList<int[]> neighbours, int[] classes, int[] last)
    {
        var done = new bool[neighbours.Count];
        List<int> ending = [];
        foreach (var name in last.Reverse())
            for (var vertex = 0; vertex < done.Length; vertex++)
                if (classes[vertex] == name) { done[vertex] = true; ending.Add(vertex); }
        List<int> order = [];
        foreach (var start in Enumerable.Range(0, done.Length).Where(vertex => !done[vertex]).OrderBy(vertex => neighbours[vertex].Length).ToList())
        {
            if (done[start]) continue;
            done[start] = true;
            order.Add(start);
            for (var at = order.Count - 1; at < order.Count; at++)
                foreach (var next in neighbours[order[at]].Where(vertex => !done[vertex]).OrderBy(vertex => neighbours[vertex].Length).ToList())
                {
                    done[next] = true;
                    order.Add(next);
                }
        }
        order.Reverse();
        return [.. order, .. ending];
    }

    // About the multiplications of a factorisation: the squared lengths of the rows.
    private static double Cost(IReadOnlyList<int[]> neighbours, int[] weights, int[] order)
    {
        var place = new int[order.Length];
        var start = new int[order.Length];
        for (var i = 0; i < order.Length; i++)
        {
            place[order[i]] = i;
            start[i] = i == 0 ? 0 : start[i - 1] + weights[order[i - 1]];
        }
        return order.Sum(vertex =>
        {
            var first = neighbours[vertex].Select(other => place[other]).Append(place[vertex]).Min();
            double length = start[place[vertex]] - start[first] + weights[vertex];
            return weights[vertex] * length * length;
        });
    }
}
