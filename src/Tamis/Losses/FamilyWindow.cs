using Tamis.Tables;

namespace Tamis.Losses;

/// <summary>Where a share of a family of the trade usually lies, of all that is weighed in.</summary>
/// <param name="Family">The family.</param>
/// <param name="Use">What it is used for within the family.</param>
/// <param name="Part">What is looked at: <c>water</c> is the water of all lines together, anything else the lines whose names hold a word.</param>
/// <param name="Percent">The usual range, in per cent of the raw mixture.</param>
/// <param name="TooLittle">What is seen under it.</param>
/// <param name="TooMuch">What is seen over it.</param>
/// <param name="Move">What to move, and by how much.</param>
/// <param name="Source">Where the range comes from.</param>
public sealed record FamilyWindow(string Family, string Use, string Part, Interval Percent, string TooLittle, string TooMuch, string Move, Source Source)
{
    private const string Water = "water";

    /// <summary>The word that the names of its lines hold; empty for water.</summary>
    public string NamesWith { get; init; } = "";

    /// <summary>A word that excludes a name, such as <c>cocoa</c> for butter; empty where none does.</summary>
    public string NamesWithout { get; init; } = "";

    /// <summary>The share of a component, in per cent of what was weighed in; null where it is not known.</summary>
    public double? PercentOf(ComponentBatch batch)
    {
        if (batch.MassInGrams <= 0) return null;
        if (Names.Same(Part, Water)) return batch.In.Amount("WATER").Whole / batch.MassInGrams * 100;
        return batch.Lines.Where(line => Holds(line.Name, NamesWith) && !(NamesWithout.Length > 0 && Holds(line.Name, NamesWithout))).Sum(line => line.MassGrams) / batch.MassInGrams * 100;
    }

    /// <summary>Reads <c>windows.csv</c>.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static IReadOnlyList<FamilyWindow> ReadAll(string path)
    {
        List<CellProblem> problems = [];
        List<FamilyWindow> windows = [];
        foreach (var row in SheetFile.Read(path).Rows)
        {
            var reader = new RowReader(row, problems);
            var (low, high) = (reader.RequiredNumber("low_percent", 0, 100), reader.RequiredNumber("high_percent", 0, 100));
            if (low > high) problems.Add(row.Problem("high_percent", "at least the number under low_percent"));
            else windows.Add(new(reader.Required("family"), reader.Required("use"), reader.Required("part"), Interval.Between(low, high),
                row["too_little"], row["too_much"], row["move"], SourceOf(reader.Required("source")))
            { NamesWith = row["names_with"], NamesWithout = row["names_without"] });
        }
        return problems.Count == 0 ? windows : throw new TableException(problems);
    }

    /// <summary>The windows of a family and use; the first words of the use are enough, and without one the family's first use is taken.</summary>
    public static IReadOnlyList<FamilyWindow> For(IReadOnlyList<FamilyWindow> all, string family, string? use)
    {
        FamilyWindow[] own = [.. all.Where(window => Names.Same(window.Family, family))];
        var chosen = own.Select(window => window.Use).FirstOrDefault(each => use is null || Names.Key(each).StartsWith(Names.Key(use), StringComparison.Ordinal));
        return [.. own.Where(window => window.Use == chosen)];
    }

    private static bool Holds(string name, string word) => Names.Key(name).Split(' ').Contains(Names.Key(word));

    private static Source SourceOf(string text) => new(text, text.StartsWith("common practice", StringComparison.Ordinal) ? Evidence.Practice : Evidence.Published);
}
