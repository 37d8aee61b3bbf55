using System.Globalization;

namespace Tamis.Tasting;

/// <summary>Three digits that hide a trial.</summary>
internal static class BlindCodes
{
    /// <summary>So many codes from 100 to 999, no two alike; those that other tastings had are given again only when no others are left.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More are wanted than there are.</exception>
    public static IReadOnlyList<string> Of(int count, IEnumerable<string> taken, SeededOrder random)
    {
        const int all = PlanRows.HighestCode - PlanRows.LowestCode + 1;
        if (count > all) throw new ArgumentOutOfRangeException(nameof(count), count, $"There are {all} codes of three digits.");
        var before = taken.ToHashSet(StringComparer.Ordinal);
        var codes = random.Shuffled([.. Enumerable.Range(PlanRows.LowestCode, all).Select(code => code.ToString(CultureInfo.InvariantCulture))]);
        return [.. codes.OrderBy(before.Contains).Take(count)];
    }
}
