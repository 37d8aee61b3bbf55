using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Costing;

/// <summary>When something is fresh in a region. Data, in <c>data/seasons/seasons.csv</c>.</summary>
/// <param name="Food">The food.</param>
/// <param name="Words">Of which words one stands in its name.</param>
/// <param name="Without">Of which words none does: what was frozen, dried or cooked down keeps.</param>
/// <param name="Region">Where.</param>
/// <param name="FromMonth">The first month, 1 to 12.</param>
/// <param name="ToMonth">The last month, 1 to 12; before the first where the season runs over the end of the year.</param>
/// <param name="Source">Who says so.</param>
public sealed record Season(string Food, IReadOnlyList<string> Words, IReadOnlyList<string> Without, string Region, int FromMonth, int ToMonth, Source Source)
{
    private static readonly Lazy<IReadOnlyList<Season>> Shipped = new(() => ReadAll(SheetFile.Read(Path.Combine(KitFolder.Data("seasons"), "seasons.csv"))));

    /// <summary>All seasons that the kit knows.</summary>
    public static IReadOnlyList<Season> All => Shipped.Value;

    /// <summary>The regions, in the order of the sheet.</summary>
    public static IReadOnlyList<string> Regions => [.. All.Select(season => season.Region).Distinct(Names.Comparer)];

    /// <summary>The season of an ingredient by the words of its name; null for what has none, or of which the kit knows none.</summary>
    public static Season? Of(string ingredient, string region)
    {
        var words = Formulas.PieceWord.WordsOf(ingredient);
        return All.FirstOrDefault(season => Names.Same(season.Region, region) && season.Words.Any(Stands) && !season.Without.Any(Stands));

        bool Stands(string word) => word.Split(' ').All(part => words.Contains(Formulas.PieceWord.Singular(Names.Key(part))));
    }

    /// <summary>Whether it is fresh in a month.</summary>
    /// <param name="month">1 to 12.</param>
    public bool Holds(int month) => FromMonth <= ToMonth ? month >= FromMonth && month <= ToMonth : month >= FromMonth || month <= ToMonth;

    /// <summary>Reads seasons.</summary>
    /// <exception cref="TableException">A cell must be mended; all are named.</exception>
    public static IReadOnlyList<Season> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Season[] seasons = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(reader => new Season(
            reader.Required("food"), reader.Words("words"), reader.Words("without"), reader.Required("region"), (int)reader.RequiredNumber("from_month", 1, 12), (int)reader.RequiredNumber("to_month", 1, 12), PhysicsData.SourceOf(reader.Row, problems)))];
        return problems.Count == 0 ? seasons : throw new TableException(problems);
    }
}
