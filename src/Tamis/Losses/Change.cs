namespace Tamis.Losses;

/// <summary>How the lines of one change moved.</summary>
public enum ChangeKind
{
    /// <summary>One line, more or less of it.</summary>
    Moved,
    /// <summary>A line that was not in before.</summary>
    Added,
    /// <summary>A line that is not in any more.</summary>
    Removed,
    /// <summary>As much more of one as there is less of another.</summary>
    Swapped,
    /// <summary>One line gone and another in its place, in another amount.</summary>
    Replaced,
    /// <summary>Several lines by one factor: leaves and the water that they took up.</summary>
    Together,
}

/// <summary>One thing that a cook changed between two trials, which may move several lines.</summary>
/// <param name="Component">The component.</param>
/// <param name="Kind">How its lines moved.</param>
/// <param name="Lines">The lines that moved, the leading one first: the one that a cook would name.</param>
public sealed record Change(string Component, ChangeKind Kind, IReadOnlyList<LineDifference> Lines)
{
    /// <summary>The line that a cook would name.</summary>
    public LineDifference Leading => Lines[0];

    private const double Close = 1e-6;

    /// <summary>The things that changed between two batches: lines that moved by one factor, swaps and replacements count once.</summary>
    /// <remarks>A component made to another size is no change of its lines; where only most of its lines grew by one factor, those count as size and the others as changes.</remarks>
    public static IReadOnlyList<Change> Of(BatchDifference difference)
    {
        var scaled = difference.ScaledComponents.Select(each => each.Component).ToHashSet(Names.Comparer);
        return [.. difference.Lines.Where(line => !scaled.Contains(line.Component)).GroupBy(line => line.Component, Names.Comparer)
            .SelectMany(group => OfComponent(group.Key, [.. group], difference.SharesOnly.Count(line => Names.Same(line.Component, group.Key))))];
    }

    /// <summary>The factor by which most of a component's lines grew, where it was made to another size and changed besides; else null.</summary>
    public static double? SizeFactor(IReadOnlyList<LineDifference> lines, int unmovedLines)
    {
        var largest = lines.Where(line => line.FromGrams > 0 && line.ToGrams > 0)
            .GroupBy(line => Math.Round(line.ToGrams / line.FromGrams, 6)).MaxBy(group => group.Count());
        // Two lines may keep step by chance or belong together (leaf and water); three or more that outnumber what stayed are the batch.
        return largest is not null && largest.Count() >= 3 && unmovedLines == 0 ? largest.Key : null;
    }

    private static IEnumerable<Change> OfComponent(string component, List<LineDifference> lines, int unmovedLines)
    {
        if (SizeFactor(lines, unmovedLines) is { } factor)
            lines = [.. lines.Where(line => line.FromGrams <= 0 || Math.Abs(line.ToGrams / line.FromGrams - factor) > Close)];

        LineDifference[] added = [.. lines.Where(line => line.FromGrams <= 0)], removed = [.. lines.Where(line => line.ToGrams <= 0)];
        if (added.Length > 0 && removed.Length > 0)
        {
            var isSwap = Math.Abs(added.Sum(line => line.ToGrams) - removed.Sum(line => line.FromGrams)) < Close;
            yield return new(component, isSwap ? ChangeKind.Swapped : ChangeKind.Replaced, [.. added, .. removed]);
            lines = [.. lines.Except(added).Except(removed)];
        }
        while (lines.Count > 0)
        {
            var change = Next(component, lines);
            yield return change;
            lines = [.. lines.Except(change.Lines)];
        }
    }

    private static Change Next(string component, List<LineDifference> lines)
    {
        var first = lines[0];
        if (lines.Find(other => other != first && Math.Abs(other.ChangeGrams + first.ChangeGrams) < Close) is { } opposite)
            return new(component, ChangeKind.Swapped, first.ChangeGrams > 0 ? [first, opposite] : [opposite, first]);
        if (first.FromGrams <= 0) return new(component, ChangeKind.Added, [first]);
        if (first.ToGrams <= 0) return new(component, ChangeKind.Removed, [first]);
        LineDifference[] together = [.. lines.Where(line => line.FromGrams > 0 && Math.Abs(line.ToGrams / line.FromGrams - first.ToGrams / first.FromGrams) < Close)];
        // Water follows what it soaks; nobody would name the change after it.
        return together.Length == 1
            ? new(component, ChangeKind.Moved, together)
            : new(component, ChangeKind.Together, [.. together.OrderBy(line => Names.Same(line.Line, "water"))]);
    }
}
