namespace Tamis.Losses;

/// <summary>A line's mass against the base of its component.</summary>
/// <param name="Name">The ingredient or component.</param>
/// <param name="MassGrams">Its mass over all its rows.</param>
/// <param name="ToBaseRatio">Mass over the mass of all base lines together; 1 for a single base line. Times 100 it is a baker's percentage when the base is flour.</param>
/// <param name="Share">Its share of all that was weighed in, 0 to 1.</param>
public sealed record RatioLine(string Name, double MassGrams, double ToBaseRatio, double Share);

/// <summary>A component in ratios: every line against one base.</summary>
/// <param name="Component">The component's name.</param>
/// <param name="Base">The base lines.</param>
/// <param name="BaseGrams">Their mass together.</param>
/// <param name="Lines">The lines in the order in which they first go in.</param>
/// <remarks>A baker's percentage is 100 × a line's mass over the mass of all flours together, so that one flour of several stands below 100 (the usual definition of bakery handbooks).</remarks>
public sealed record Ratios(string Component, IReadOnlyList<string> Base, double BaseGrams, IReadOnlyList<RatioLine> Lines)
{
    /// <summary>Whether the base is made of flours only, so that the ratios are baker's percentages.</summary>
    public bool IsBakersPercentage => Base.All(name => Names.Key(name).Contains("flour", StringComparison.Ordinal));

    /// <summary>The ratio of a line, 0 where it does not go in.</summary>
    public double Of(string line) => Lines.FirstOrDefault(each => Names.Same(each.Name, line))?.ToBaseRatio ?? 0;

    /// <summary>A batch in ratios to the base lines.</summary>
    /// <exception cref="ArgumentException">No base line goes into the component.</exception>
    public static Ratios Of(ComponentBatch batch, params IReadOnlyList<string> baseLines)
    {
        var baseGrams = baseLines.Distinct(Names.Comparer).Sum(batch.LineGrams);
        if (baseGrams <= 0)
            throw new ArgumentException($"{string.Join(" and ", baseLines)} does not go into {batch.Name}; its lines are {string.Join(", ", batch.Lines.Select(line => line.Name).Distinct(Names.Comparer))}.", nameof(baseLines));
        var weighed = batch.Weighed;
        string[] present = [.. baseLines.Where(name => batch.LineGrams(name) > 0)];
        return new(batch.Name, baseLines, baseGrams, [.. batch.Lines.Select(line => line.Name).Distinct(Names.Comparer)
            .Select(name => new RatioLine(name, weighed.MassGrams(name), weighed.Ratio(name, present), batch.LineShare(name)))]);
    }

    /// <summary>The base that a component has by itself: its flours if it has any, else its heaviest line.</summary>
    public static IReadOnlyList<string> UsualBase(ComponentBatch batch)
    {
        string[] names = [.. batch.Lines.Select(line => line.Name).Distinct(Names.Comparer)];
        string[] flours = [.. names.Where(name => Names.Key(name).Contains("flour", StringComparison.Ordinal))];
        return flours.Length > 0 ? flours : [names.MaxBy(batch.LineGrams) ?? throw new ArgumentException($"Nothing goes into {batch.Name}.", nameof(batch))];
    }
}
