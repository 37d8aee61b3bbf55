using Tamis.Tables;

namespace Tamis.Montage;

/// <summary>How a component stands in a piece.</summary>
public enum Placing
{
    /// <summary>Base and wall of a mould, of one thickness.</summary>
    Lining,
    /// <summary>What is filled into a lining, to a thickness or by its mass.</summary>
    Fill,
    /// <summary>What fills a mould, less what is put inside it, and stands on what lies below.</summary>
    Moulded,
    /// <summary>What is put inside something moulded, and displaces it.</summary>
    Insert,
    /// <summary>A coat over top and side of something.</summary>
    Film,
    /// <summary>Single pieces set on top or beside.</summary>
    Piece,
}

/// <summary>A row of <c>montage.csv</c>.</summary>
public sealed record MontageRow
{
    /// <summary>Its place in the order.</summary>
    public required int Order { get; init; }

    /// <summary>The component.</summary>
    public required string Component { get; init; }

    /// <summary>How it stands in the piece; null for a row that takes one away (<c>none</c>).</summary>
    public required Placing? As { get; init; }

    /// <summary>The component that it is in, or that a film covers; null where none was named.</summary>
    public string? Inside { get; init; }

    /// <summary>The mould; null where none was named.</summary>
    public string? Mould { get; init; }

    /// <summary>Its diameter where no mould gives it.</summary>
    public double? DiameterMillimetres { get; init; }

    /// <summary>Its thickness.</summary>
    public double? ThicknessMillimetres { get; init; }

    /// <summary>Its underside above the floor of what it is in; null for on what lies below.</summary>
    public double? AboveMillimetres { get; init; }

    /// <summary>How many of it; 1 where the cell is blank.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Its mass as weighed in raw, each; null where the volume decides.</summary>
    public double? RawGrams { get; init; }

    /// <summary>Its finished mass, each; null where the volume decides.</summary>
    public double? FinishedGrams { get; init; }

    /// <summary>The trial that it is for; null for all.</summary>
    public string? Trial { get; init; }

    /// <summary>The row in the sheet.</summary>
    public required SheetRow Row { get; init; }
}

/// <summary>How a dessert is put together.</summary>
public sealed class MontageSheet
{
    private static readonly Dictionary<string, Placing> Placings = Enum.GetValues<Placing>().ToDictionary(placing => placing.ToString().ToLowerInvariant(), Names.Comparer);
    private readonly IReadOnlyList<MontageRow> _rows;

    private MontageSheet(IReadOnlyList<MontageRow> rows) => _rows = rows;

    /// <summary>Reads the sheet.</summary>
    /// <param name="sheet"><c>montage.csv</c>.</param>
    /// <param name="problems">Receives every cell that must be mended.</param>
    public static MontageSheet Read(Sheet sheet, List<CellProblem> problems)
    {
        List<MontageRow> rows = [];
        foreach (var row in sheet.Rows)
        {
            var before = problems.Count;
            var reader = new RowReader(row, problems);
            var read = new MontageRow
            {
                Order = reader.Whole("order", 0, 1000) ?? 0,
                Component = reader.Required("component"),
                As = Names.Same(row["as"], "none") ? null : reader.Choice("as", Placings),
                Inside = reader.Text("inside"),
                Mould = reader.Text("mould"),
                DiameterMillimetres = reader.Number("diameter_mm", 0.1, 10_000),
                ThicknessMillimetres = reader.Number("thickness_mm", 0.001, 1000),
                AboveMillimetres = reader.Number("above_mm", 0, 1000),
                Count = reader.Whole("count", 1, 10_000) ?? 1,
                RawGrams = reader.Number("raw_g", 0, 1e6),
                FinishedGrams = reader.Number("mass_g", 0, 1e6),
                Trial = reader.Text("trial"),
                Row = row,
            };
            if (row["order"].Length == 0) problems.Add(row.Problem("order", "the place in the order: 1, 2, 3 …"));
            if (row["as"].Length == 0) problems.Add(row.Problem("as", $"one of {string.Join(", ", Placings.Keys)}, or none"));
            if (rows.Any(each => each.Order == read.Order && Names.Same(each.Trial, read.Trial))) problems.Add(row.Problem("order", "a place that no other row of the same trial has"));
            if (problems.Count == before) rows.Add(read);
        }
        return new(rows);
    }

    /// <summary>The rows of a trial in their order: one that names the trial, or one that it comes from, stands in place of the one for all.</summary>
    /// <param name="trialLine">The trial, its parent and so on.</param>
    public IReadOnlyList<MontageRow> RowsOf(IEnumerable<string> trialLine)
    {
        string?[] nearest = [.. trialLine, null];
        return [.. _rows.GroupBy(row => row.Order)
            .Select(place => nearest.Select(trial => place.FirstOrDefault(row => Names.Same(row.Trial, trial))).FirstOrDefault(row => row is not null))
            .OfType<MontageRow>().Where(row => row.As is not null).OrderBy(row => row.Order)];
    }
}
