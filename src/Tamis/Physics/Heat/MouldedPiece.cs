using System.Globalization;

namespace Tamis.Physics;

/// <summary>A disc inside a round piece: a gel insert, a crumble base, or the mousse all round.</summary>
/// <param name="Material">What it is; null for a hollow that is open to the air.</param>
/// <param name="DiameterMillimetres">Its diameter.</param>
/// <param name="HeightMillimetres">Its height.</param>
/// <param name="AboveMillimetres">Its underside above the bottom of the piece.</param>
/// <param name="StartCelsius">Its temperature at the start.</param>
public sealed record HeatDisc(ThermalCurve? Material, double DiameterMillimetres, double HeightMillimetres, double AboveMillimetres, double StartCelsius);

/// <summary>What a thermometer would read in the places of a disc.</summary>
/// <param name="Name">What the disc is of.</param>
/// <param name="WarmestCelsius">Its warmest cell.</param>
/// <param name="ColdestCelsius">Its coldest cell.</param>
/// <param name="MeanCelsius">The mean over its volume.</param>
public sealed record DiscTemperature(string Name, double WarmestCelsius, double ColdestCelsius, double MeanCelsius);

/// <summary>A round piece of discs, cut into rings and floors: what a moulded dessert is to heat.</summary>
/// <remarks>Each disc takes the place of what an earlier one put there; where there is none stands air. The cells of a disc's border follow its edge, so that its volume is exact.</remarks>
public sealed class MouldedPiece
{
    /// <summary>The owner of a cell that nothing fills.</summary>
    public const int Air = -1;

    private const double SameMillimetres = 1e-6;

    private MouldedPiece(IReadOnlyList<HeatDisc> discs, double[] radii, double[] heights, int[] discOfCell) =>
        (Discs, Axes, DiscOfCell) = (discs, new(radii, heights), discOfCell);

    /// <summary>The discs, in the order in which they take each other's place.</summary>
    public IReadOnlyList<HeatDisc> Discs { get; }

    /// <summary>Where the cells lie.</summary>
    public FieldAxes Axes { get; }

    /// <summary>Which disc each cell belongs to, ring after ring on each floor; <see cref="Air"/> where nothing stands.</summary>
    public IReadOnlyList<int> DiscOfCell { get; }

    /// <summary>How many cells there are.</summary>
    public int Cells => DiscOfCell.Count;

    /// <summary>Builds a piece of one mould: a whole, and what is inside it.</summary>
    /// <param name="discs">The whole piece first, then what is inside it.</param>
    /// <param name="cellMillimetres">About how large a cell is, above 0.</param>
    /// <exception cref="ArgumentException">There is no disc, a measure is not above 0, or a disc reaches out of the piece; every one is named.</exception>
    public static MouldedPiece Of(IReadOnlyList<HeatDisc> discs, double cellMillimetres = 1.5)
    {
        string[] problems = [.. Problems(discs), .. Reaching(discs)];
        return problems.Length > 0 ? throw new ArgumentException(string.Join(" ", problems), nameof(discs)) : Cut(discs, cellMillimetres);
    }

    /// <summary>Builds a piece of discs that stand on and in one another, narrower ones on wider ones.</summary>
    /// <param name="discs">In the order in which they take each other's place.</param>
    /// <param name="cellMillimetres">About how large a cell is, above 0.</param>
    /// <exception cref="ArgumentException">There is no disc, or a measure is not above 0; every one is named.</exception>
    public static MouldedPiece Standing(IReadOnlyList<HeatDisc> discs, double cellMillimetres = 1.5)
    {
        string[] problems = [.. Problems(discs)];
        return problems.Length > 0 ? throw new ArgumentException(string.Join(" ", problems), nameof(discs)) : Cut(discs, cellMillimetres);
    }

    private static MouldedPiece Cut(IReadOnlyList<HeatDisc> discs, double cellMillimetres)
    {
        if (!(cellMillimetres > 0)) throw new ArgumentOutOfRangeException(nameof(cellMillimetres), cellMillimetres, "A cell is more than 0 mm wide.");
        var radii = Edges(discs.Select(disc => disc.DiameterMillimetres / 2), cellMillimetres);
        var heights = Edges(discs.SelectMany(disc => (double[])[disc.AboveMillimetres, disc.AboveMillimetres + disc.HeightMillimetres]), cellMillimetres);
        var owner = new int[(radii.Length - 1) * (heights.Length - 1)];
        for (var floor = 0; floor + 1 < heights.Length; floor++)
            for (var ring = 0; ring + 1 < radii.Length; ring++)
            {
                owner[floor * (radii.Length - 1) + ring] = Air;
                var (radius, height) = ((radii[ring] + radii[ring + 1]) / 2, (heights[floor] + heights[floor + 1]) / 2);
                for (var disc = 0; disc < discs.Count; disc++)
                    if (radius < discs[disc].DiameterMillimetres / 2 && height > discs[disc].AboveMillimetres && height < discs[disc].AboveMillimetres + discs[disc].HeightMillimetres)
                        owner[floor * (radii.Length - 1) + ring] = discs[disc].Material is null ? Air : disc;
            }
        return new(discs, radii, heights, owner);
    }

    /// <summary>Marches heat through the piece.</summary>
    /// <param name="stages">The surroundings, one after another.</param>
    /// <param name="settings">The step (10 s unless it says otherwise) and which instants to keep.</param>
    public TemperatureHistory March(IReadOnlyList<HeatStage> stages, MarchSettings? settings = null) =>
        HeatMarch.Run(new PieceStepper(this), Axes, stages, settings ?? new(), PieceStepper.UsualStepSeconds) with
        {
            Steps = () => MarchSteps.Of(ToString(), Discs.Select(disc => disc.Material).OfType<ThermalCurve>(), stages),
        };

    /// <summary>What a field says of each disc that has a cell: its warmest, coldest and mean temperature.</summary>
    /// <param name="field">A field of this piece.</param>
    public IReadOnlyList<DiscTemperature> ByDisc(TemperatureField field) =>
    [
        .. from cell in Enumerable.Range(0, Cells)
           where DiscOfCell[cell] != Air
           group cell by DiscOfCell[cell] into cells
           orderby cells.Key
           let volume = cells.Sum(Volume)
           select new DiscTemperature(Discs[cells.Key].Material?.Name ?? "", cells.Max(cell => field.Celsius[cell]), cells.Min(cell => field.Celsius[cell]), cells.Sum(cell => field.Celsius[cell] * Volume(cell)) / volume),
    ];

    /// <summary>The piece in words, for a working.</summary>
    public override string ToString() => string.Join(", ", Discs.Where(disc => disc.Material is not null).Select(disc => string.Create(CultureInfo.InvariantCulture,
        $"{disc.Material?.Name} {disc.DiameterMillimetres:0.#} mm × {disc.HeightMillimetres:0.#} mm")));

    private static IEnumerable<string> Problems(IReadOnlyList<HeatDisc> discs)
    {
        if (discs.Count == 0) yield return "A piece has at least one disc, the whole piece.";
        foreach (var disc in discs)
        {
            if (!(disc.DiameterMillimetres > 0 && disc.HeightMillimetres > 0 && disc.AboveMillimetres >= 0 && double.IsFinite(disc.DiameterMillimetres + disc.HeightMillimetres + disc.AboveMillimetres)))
                yield return Told(disc, "a diameter and a height lie above 0 mm, and nothing lies below the bottom");
        }
    }

    private static IEnumerable<string> Reaching(IReadOnlyList<HeatDisc> discs)
    {
        foreach (var disc in discs)
            if (disc.DiameterMillimetres > discs[0].DiameterMillimetres + SameMillimetres || disc.AboveMillimetres + disc.HeightMillimetres > discs[0].HeightMillimetres + SameMillimetres)
                yield return Told(disc, string.Create(CultureInfo.InvariantCulture, $"it reaches out of the piece of {discs[0].DiameterMillimetres:0.#} mm × {discs[0].HeightMillimetres:0.#} mm"));
        if (discs.Count > 0 && discs[0].AboveMillimetres != 0) yield return Told(discs[0], "the whole piece stands on the bottom, 0 mm above it");
    }

    private static string Told(HeatDisc disc, string why) => string.Create(CultureInfo.InvariantCulture,
        $"{disc.Material?.Name ?? "hollow"}, {disc.DiameterMillimetres} mm × {disc.HeightMillimetres} mm at {disc.AboveMillimetres} mm: {why}.");

    private double Volume(int cell)
    {
        var (ring, floor) = (cell % Axes.Rings, cell / Axes.Rings);
        var (inner, outer) = (Axes.RadiusMillimetres[ring], Axes.RadiusMillimetres[ring + 1]);
        return Math.PI * (outer * outer - inner * inner) * (Axes.HeightMillimetres[floor + 1] - Axes.HeightMillimetres[floor]);
    }

    // Every border of a disc is an edge; what lies between two borders is cut evenly.
    private static double[] Edges(IEnumerable<double> borders, double cell)
    {
        List<double> edges = [0];
        foreach (var border in borders.Order())
        {
            var from = edges[^1];
            if (border - from <= SameMillimetres) continue;
            var count = Math.Max(1, (int)Math.Round((border - from) / cell));
            for (var i = 1; i <= count; i++) edges.Add(from + (border - from) * i / count);
        }
        return [.. edges];
    }
}
