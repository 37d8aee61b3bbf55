using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>The choices behind a plan or a verdict that are not arithmetic; the kit's own stand in <c>data/tasting/practice.csv</c> with their sources.</summary>
public sealed record TastingPolicy
{
    private static readonly Lazy<TastingPolicy> Shipped = new(() => Read(SheetFile.Read(Path.Combine(KitFolder.Data("tasting"), "practice.csv"))));

    /// <summary>The kit's own choices.</summary>
    public static TastingPolicy Kit => Shipped.Value;

    /// <summary>With fewer assessors of either trial there are notes, not evidence.</summary>
    public required int FewestAssessors { get; init; }

    /// <summary>Above so many servings in a session an assessor's tongue tires.</summary>
    public required int MostServingsEach { get; init; }

    /// <summary>The share of intervals that hold the true figure, 0 to 1.</summary>
    public required double ConfidenceShare { get; init; }

    /// <summary>The step in which points are printed; an interval is judged as printed.</summary>
    public required double PrintedStepPoints { get; init; }

    /// <summary>The difference that a kitchen would act on, as a share of the scale, 0 to 1.</summary>
    public required double GapWorthSeeingShare { get; init; }

    /// <summary>The risk of calling a difference that is not there, 0 to 1.</summary>
    public required double FalseAlarmShare { get; init; }

    /// <summary>The chance of seeing a difference that is there, 0 to 1.</summary>
    public required double WantedPowerShare { get; init; }

    /// <summary>The share of people who really tell two trials apart that a test is planned to find, 0 to 1.</summary>
    public required double DistinguisherShare { get; init; }

    /// <summary>A too little or too much that fewer people tick is not weighed against liking, 0 to 1.</summary>
    public required double PenaltyShare { get; init; }

    /// <summary>With fewer assessors no preference map is drawn.</summary>
    public required int FewestForMap { get; init; }

    /// <summary>The spread of an assessor from plate to plate where no tasting tells it, as a share of the scale, 0 to 1.</summary>
    public required double AssumedSpreadShare { get; init; }

    /// <summary>What came just before is evened out where intervals grow by no more than this part for it, 0 to 1.</summary>
    public required double WiderForCarryOverShare { get; init; }

    /// <summary>Reads the choices.</summary>
    /// <exception cref="TableException">A choice is missing or cannot be read.</exception>
    public static TastingPolicy Read(Sheet sheet)
    {
        List<CellProblem> problems = [];
        TastingPolicy policy = new()
        {
            FewestAssessors = (int)Number("fewest assessors", 2),
            MostServingsEach = (int)Number("most servings each", 1),
            ConfidenceShare = Number("confidence", 50, 99.9) / 100,
            PrintedStepPoints = Number("printed step", 1e-6),
            GapWorthSeeingShare = Number("gap worth seeing", 0.1, 10) / 10,
            FalseAlarmShare = Number("false alarm", 0.01, 50) / 100,
            WantedPowerShare = Number("wanted power", 50, 99.9) / 100,
            DistinguisherShare = Number("share of distinguishers", 1, 99) / 100,
            PenaltyShare = Number("penalty share", 0, 100) / 100,
            AssumedSpreadShare = Number("assumed spread", 0.01, 10) / 10,
            WiderForCarryOverShare = Number("wider for carry-over", 0, 100) / 100,
            FewestForMap = (int)Number("assessors for a map", 3),
        };
        return problems.Count == 0 ? policy : throw new TableException(problems);

        double Number(string practice, double least, double most = 1e6)
        {
            if (sheet.Rows.FirstOrDefault(row => Names.Same(row["practice"], practice)) is { } row) return new RowReader(row, problems).RequiredNumber("value", least, most);
            problems.Add(new(sheet.File, 0, "practice", "", $"a row '{practice}'"));
            return double.NaN;
        }
    }
}
