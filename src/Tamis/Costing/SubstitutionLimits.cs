using Tamis.Tables;

namespace Tamis.Costing;

/// <summary>How far a substitute may go. Data, in <c>data/costing/substitution.csv</c>.</summary>
/// <param name="FarthestGrams">How far a food may lie from the one that goes, in grams of 100 g.</param>
/// <param name="MostTimes">How many times the mass a dose may be, above 1; its inverse is the least.</param>
/// <param name="Aromatics">Words of names that give aroma by the gram, and stand in only for each other.</param>
public sealed record SubstitutionLimits(double FarthestGrams, double MostTimes, IReadOnlyList<string> Aromatics)
{
    private static readonly Lazy<SubstitutionLimits> Shipped = new(() => Read(SheetFile.Read(Path.Combine(KitFolder.Data("costing"), "substitution.csv"))));

    /// <summary>What the kit ships.</summary>
    public static SubstitutionLimits Kit => Shipped.Value;

    /// <summary>Whether a name is of something that gives aroma by the gram.</summary>
    public bool IsAromatic(string ingredient) =>
        Formulas.PieceWord.WordsOf(ingredient).Overlaps(Aromatics.Select(word => Formulas.PieceWord.Singular(Names.Key(word))));

    /// <summary>Reads the limits.</summary>
    /// <exception cref="TableException">One is missing or no number; all are named.</exception>
    public static SubstitutionLimits Read(Sheet sheet)
    {
        List<CellProblem> problems = [];
        SubstitutionLimits limits = new(Value("how far apart", 0, 100), Value("most times the mass", 1, 100), RowOf("aromatics")?.Words("words") ?? []);
        return problems.Count == 0 ? limits : throw new TableException(problems);

        double Value(string limit, double least, double most) => RowOf(limit)?.RequiredNumber("value", least, most) ?? double.NaN;

        RowReader? RowOf(string limit)
        {
            if (sheet.Rows.FirstOrDefault(row => Names.Same(row["limit"], limit)) is { } row) return new(row, problems);
            problems.Add(new(sheet.File, 0, "limit", "", $"a row '{limit}'"));
            return null;
        }
    }
}
