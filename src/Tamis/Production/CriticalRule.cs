using Tamis.Tables;

namespace Tamis.Production;

/// <summary>What marks a step where time and temperature decide safety. Data, in <c>data/production/critical-steps.csv</c>.</summary>
/// <param name="Kind">Cook, chill, freeze, thaw, hold.</param>
/// <param name="LeastCelsius">The step's written temperature is at least this.</param>
/// <param name="MostCelsius">And at most this.</param>
/// <param name="Words">Of which words one begins a word of what is done; empty for any.</param>
/// <param name="Allergens">Of which allergens the component holds one, for those are of animals; empty for any.</param>
/// <param name="AtLeastCelsius">The limit from below where step and caution write none.</param>
/// <param name="AtMostCelsius">The limit from above where step and caution write none.</param>
/// <param name="What">What is measured.</param>
/// <param name="Record">What is written down.</param>
/// <param name="Source">Who says so.</param>
public sealed record CriticalRule(string Kind, double LeastCelsius, double MostCelsius, IReadOnlyList<string> Words, IReadOnlyList<string> Allergens, double? AtLeastCelsius, double? AtMostCelsius, string What, string Record, Source Source)
{
    private static readonly Lazy<IReadOnlyList<CriticalRule>> Shipped = new(() => ReadAll(SheetFile.Read(Path.Combine(KitFolder.Data("production"), "critical-steps.csv"))));

    /// <summary>The rules that the kit ships, in their order: the first that fits counts.</summary>
    public static IReadOnlyList<CriticalRule> All => Shipped.Value;

    /// <summary>Whether it marks a step.</summary>
    /// <param name="celsius">The step's written temperature.</param>
    /// <param name="what">What is done.</param>
    /// <param name="allergens">What the component holds.</param>
    public bool Marks(double celsius, string what, IReadOnlyCollection<string> allergens) => celsius >= LeastCelsius && celsius <= MostCelsius
        && (Words.Count == 0 || Words.Any(word => Names.HoldsBeginning(what, word)))
        && (Allergens.Count == 0 || Allergens.Any(allergen => allergens.Contains(allergen, Names.Comparer)));

    /// <summary>Reads rules.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static IReadOnlyList<CriticalRule> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        CriticalRule[] rules = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(reader => new CriticalRule(
            reader.Required("kind"), reader.RequiredNumber("least_c", -100, 1000), reader.RequiredNumber("most_c", -100, 1000), reader.Words("words"), reader.Words("allergens"),
            reader.Number("at_least_c", -100, 1000), reader.Number("at_most_c", -100, 1000), reader.Required("what"), reader.Required("record"), new(reader.Required("source"), Evidence.Guidance)))];
        return problems.Count == 0 ? rules : throw new TableException(problems);
    }
}
