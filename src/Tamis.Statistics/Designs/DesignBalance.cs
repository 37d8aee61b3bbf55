namespace Tamis.Statistics.Designs;

/// <summary>Whether a design is as even as its name promises, counted in the design itself.</summary>
public static class DesignBalance
{
    /// <summary>Whether every row holds every treatment once, each stands in each place equally often, and each follows each other directly equally often.</summary>
    /// <remarks>Williams (1949, Australian Journal of Scientific Research A2).</remarks>
    public static bool IsWilliams(IReadOnlyList<IReadOnlyList<string>> rows)
    {
        string[] treatments = [.. rows.SelectMany(row => row).Distinct(StringComparer.Ordinal)];
        if (rows.Any(row => row.Count != treatments.Length || row.Distinct(StringComparer.Ordinal).Count() != treatments.Length)) return false;
        var places = rows.SelectMany(row => row.Select((treatment, place) => (treatment, place))).CountBy(one => one).ToList();
        var followers = rows.SelectMany(row => row.Zip(row.Skip(1))).CountBy(one => one).ToList();
        return places.Count == treatments.Length * treatments.Length && places.DistinctBy(one => one.Value).Count() == 1
            && followers.Count == treatments.Length * (treatments.Length - 1) && followers.DistinctBy(one => one.Value).Count() <= 1;
    }

    /// <summary>How many blocks each pair of treatments shares; null where block sizes, repeats or pairs are not all equal (Yates 1936, Annals of Eugenics 7).</summary>
    public static int? PairsTogether(IReadOnlyList<IReadOnlyList<string>> blocks)
    {
        string[] treatments = [.. blocks.SelectMany(block => block).Distinct(StringComparer.Ordinal)];
        if (blocks.DistinctBy(block => block.Count).Count() != 1 || blocks.Any(block => block.Distinct(StringComparer.Ordinal).Count() != block.Count)) return null;
        if (blocks.SelectMany(block => block).CountBy(one => one).DistinctBy(one => one.Value).Count() != 1) return null;
        int[] together = [.. from i in Enumerable.Range(0, treatments.Length)
                             from j in Enumerable.Range(i + 1, treatments.Length - i - 1)
                             select blocks.Count(block => block.Contains(treatments[i]) && block.Contains(treatments[j]))];
        return together.Length > 0 && together.Distinct().Count() == 1 ? together[0] : null;
    }
}
