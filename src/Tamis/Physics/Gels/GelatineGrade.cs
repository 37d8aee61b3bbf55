using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A grade of gelatine as it is sold.</summary>
/// <param name="Name">Its name in the trade: bronze, silver, gold, platinum, powder.</param>
/// <param name="BloomGrams">The strengths that are sold under the name, in grams Bloom.</param>
/// <param name="WorkingBloomGrams">The strength to reckon with where the pack gives none, in grams Bloom.</param>
/// <param name="LeafGrams">The mass of a leaf; null for powder. Strong leaves are lighter: a leaf of any grade sets about the same volume.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record GelatineGrade(string Name, Interval BloomGrams, double WorkingBloomGrams, Interval? LeafGrams, Source Source)
{
    /// <summary>The grades of the kit.</summary>
    public static IReadOnlyList<GelatineGrade> All { get; } = ReadAll(PhysicsData.Kit.Table("gelatine-grades.csv"));

    /// <summary>The grade of a name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static GelatineGrade Named(string name) => All.FirstOrDefault(grade => Names.Same(grade.Name, name))
        ?? throw new KeyNotFoundException($"No grade of gelatine is called '{name}'; known are {string.Join(", ", All.Select(grade => grade.Name))}.");

    /// <summary>The mass of a number of leaves in grams, with the range of what a leaf weighs.</summary>
    /// <exception cref="InvalidOperationException">The grade is not sold in leaves.</exception>
    public Given Leaves(double count) => LeafGrams is { } leaf
        ? new($"{Name} leaves", count * leaf.Middle, "g", Source) { Range = leaf * count }
        : throw new InvalidOperationException($"Gelatine {Name} is not sold in leaves; weigh it.");

    /// <summary>The strength to reckon with, with the range that is sold under the name.</summary>
    public Given Strength => new($"strength of {Name} gelatine", WorkingBloomGrams, "g Bloom", Source) { Range = BloomGrams };

    private static IReadOnlyList<GelatineGrade> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        GelatineGrade[] grades = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new GelatineGrade(
            row.Required("grade"), row.RequiredRange("bloom_low", "bloom_high", 10, 400), row.RequiredNumber("working_bloom", 10, 400),
            row.Range("leaf_low_g", "leaf_high_g", 0.1, 50), PhysicsData.SourceOf(row.Row, problems)))];
        return problems is [] ? grades : throw new TableException(problems);
    }
}
