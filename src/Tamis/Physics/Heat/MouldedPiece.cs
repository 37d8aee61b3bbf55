using System.Globalization;

namespace Tamis.Physics;

/// <summary>A disc inside a round piece: a gel insert, a crumble base, or the mousse all round.</summary>
/// <param name="Material">What it is.</param>
/// <param name="DiameterMillimetres">Its diameter.</param>
/// <param name="HeightMillimetres">Its height.</param>
/// <param name="AboveMillimetres">Its underside above the bottom of the piece.</param>
/// <param name="StartCelsius">Its temperature at the start.</param>
public sealed record HeatDisc(ThermalCurve Material, double DiameterMillimetres, double HeightMillimetres, double AboveMillimetres, double StartCelsius);

/// <summary>A round piece of discs, cut into rings and floors: what a moulded dessert is to heat.</summary>
/// <remarks>The first disc is the whole piece; each later one takes the place of what was there. A disc may not reach out of the piece.
/// The cells of a disc's border follow its edge, so that its volume is exact.</remarks>
public sealed class MouldedPiece
{
    private const double SameMillimetres = 1e-6;

    private MouldedPiece(IReadOnlyList<HeatDisc> discs, double[] radii, double[] heights, int[] discOfCell) =>
        (Discs, Axes, DiscOfCell) = (discs, new(radii, heights), discOfCell);

    /// <summary>The discs, the whole piece first.</summary>
    public IReadOnlyList<HeatDisc> Discs { get; }

    /// <summary>Where the cells lie.</summary>
    public FieldAxes Axes { get; }

    /// <summary>Which disc each cell belongs to, ring after ring on each floor.</summary>
    public IReadOnlyList<int> DiscOfCell { get; }

    /// <summary>How many cells there are.</summary>
    public int Cells => DiscOfCell.Count;

    /// <summary>Builds a piece.</summary>
    /// <param name="discs">The whole piece first, then what is inside it.</param>
    /// <param name="cellMillimetres">About how large a cell is, above 0.</param>
    /// <exception cref="ArgumentException">There is no disc, a measure is not above 0, or a disc reaches out of the piece; every one is named.</exception>
    public static MouldedPiece Of(IReadOnlyList<HeatDisc> discs, double cellMillimetres = 1.5)
    {
        string[] problems = [.. Problems(discs)];
        if (problems.Length > 0) throw new ArgumentException(string.Join(" ", problems), nameof(discs));
        if (!(cellMillimetres > 0)) throw new ArgumentOutOfRangeException(nameof(cellMillimetres), cellMillimetres, "A cell is more than 0 mm wide.");
        var radii = Edges(discs.Select(disc => disc.DiameterMillimetres / 2), discs[0].DiameterMillimetres / 2, cellMillimetres);
        var heights = Edges(discs.SelectMany(disc => (double[])[disc.AboveMillimetres, disc.AboveMillimetres + disc.HeightMillimetres]), discs[0].HeightMillimetres, cellMillimetres);
        var owner = new int[(radii.Length - 1) * (heights.Length - 1)];
        for (var floor = 0; floor + 1 < heights.Length; floor++)
            for (var ring = 0; ring + 1 < radii.Length; ring++)
            {
                var (radius, height) = ((radii[ring] + radii[ring + 1]) / 2, (heights[floor] + heights[floor + 1]) / 2);
                for (var disc = 0; disc < discs.Count; disc++)
                    if (radius < discs[disc].DiameterMillimetres / 2 && height > discs[disc].AboveMillimetres && height < discs[disc].AboveMillimetres + discs[disc].HeightMillimetres)
                        owner[floor * (radii.Length - 1) + ring] = disc;
            }
        return new(discs, radii, heights, owner);
    }

    /// <summary>Marches heat through the piece.</summary>
    /// <param name="stages">The surroundings, one after another.</param>
    /// <param name="settings">The step (10 s unless it says otherwise) and which instants to keep.</param>
    public TemperatureHistory March(IReadOnlyList<HeatStage> stages, MarchSettings? settings = null) =>
        HeatMarch.Run(new PieceStepper(this), Axes, stages, settings ?? new(), PieceStepper.UsualStepSeconds) with
        {
            Steps = () => MarchSteps.Of(ToString(), Discs.Select(disc => disc.Material), stages),
        };

    /// <summary>The piece in words, for a working.</summary>
    public override string ToString() => string.Join(", ", Discs.Select(disc => string.Create(CultureInfo.InvariantCulture,
        $"{disc.Material.Name} {disc.DiameterMillimetres:0.#} mm × {disc.HeightMillimetres:0.#} mm")));

    private static IEnumerable<string> Problems(IReadOnlyList<HeatDisc> discs)
    {
        if (discs.Count == 0) yield return "A piece has at least one disc, the whole piece.";
        foreach (var disc in discs)
        {
            if (!(disc.DiameterMillimetres > 0 && disc.HeightMillimetres > 0 && disc.AboveMillimetres >= 0 && double.IsFinite(disc.DiameterMillimetres + disc.HeightMillimetres + disc.AboveMillimetres)))
                yield return Told(disc, "a diameter and a height lie above 0 mm, and nothing lies below the bottom");
            else if (disc.DiameterMillimetres > discs[0].DiameterMillimetres + SameMillimetres || disc.AboveMillimetres + disc.HeightMillimetres > discs[0].HeightMillimetres + SameMillimetres)
                yield return Told(disc, string.Create(CultureInfo.InvariantCulture, $"it reaches out of the piece of {discs[0].DiameterMillimetres:0.#} mm × {discs[0].HeightMillimetres:0.#} mm"));
        }
        if (discs.Count > 0 && discs[0].AboveMillimetres != 0) yield return Told(discs[0], "the whole piece stands on the bottom, 0 mm above it");

        static string Told(HeatDisc disc, string why) => string.Create(CultureInfo.InvariantCulture,
            $"{disc.Material.Name}, {disc.DiameterMillimetres} mm × {disc.HeightMillimetres} mm at {disc.AboveMillimetres} mm: {why}.");
    }

    // Every border of a disc is an edge; what lies between two borders is cut evenly.
    private static double[] Edges(IEnumerable<double> borders, double end, double cell)
    {
        List<double> edges = [0];
        foreach (var border in borders.Append(end).Order())
        {
            var from = edges[^1];
            if (border - from <= SameMillimetres) continue;
            var count = Math.Max(2, (int)Math.Round((border - from) / cell));
            for (var i = 1; i <= count; i++) edges.Add(from + (border - from) * i / count);
        }
        return [.. edges];
    }
}
