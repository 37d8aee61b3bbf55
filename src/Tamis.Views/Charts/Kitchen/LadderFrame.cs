namespace Tamis.Views;

/// <summary>Where everything of the ladder of water activity stands; the still and the live picture share it.</summary>
internal sealed class LadderFrame
{
    /// <summary>Between the names of the rungs and the ladder.</summary>
    public const double RungGap = 24;

    public const double Top = 30, Lowest = 0.55;
    private const double UnitsPerTenth = 80, GapUnits = 14, Ladder = 60;
    private const int Columns = 3;

    private readonly Figures _figures;

    public LadderFrame(IReadOnlyList<LadderRow> rows, IReadOnlyList<LadderRung> rungs, Figures figures)
    {
        _figures = figures;
        Rows = [.. rows.Where(row => row.WaterActivity is not null).OrderByDescending(row => row.WaterActivity)];
        Rungs = [.. rungs.OrderByDescending(rung => rung.WaterActivity).Select(rung => rung with { Name = $"{rung.Name} {figures.WaterActivity(rung.WaterActivity).Text}" })];
        Bottom = Top + Math.Max((1 - Lowest) * 10 * UnitsPerTenth, Math.Max(Rows.Count, Rungs.Count) * GapUnits);
        Up = new(Lowest, 1, Bottom, Top);
        Height = Bottom + 14;
        Left = Math.Clamp(Rungs.Select(rung => WideOf(rung.Name)).DefaultIfEmpty(0).Max(), 90, 210) + RungGap + 2;
        Right = Left + Ladder;
        WidthUnits = Right + Math.Max(90, Rows.Select(row => WideOf(NameOf(row))).DefaultIfEmpty(0).Max()) + 10;
        RungLabels = Svg.Apart([.. Rungs.Select(rung => Up.Within(rung.WaterActivity))], GapUnits, Top, Bottom);
        RowLabels = Svg.Apart([.. Rows.Select(row => Up.Within(row.WaterActivity!.Value))], GapUnits, Top, Bottom);
    }

    /// <summary>The components that have a figure, the wettest first.</summary>
    public IReadOnlyList<LadderRow> Rows { get; }

    /// <summary>The limits with their figures, the highest first.</summary>
    public IReadOnlyList<LadderRung> Rungs { get; }

    public Scale Up { get; }

    public double Bottom { get; }

    public double Height { get; }

    public double Left { get; }

    public double Right { get; }

    public double WidthUnits { get; }

    public IReadOnlyList<double> RungLabels { get; }

    public IReadOnlyList<double> RowLabels { get; }

    /// <summary>How far along the ladder's width a component stands, 0 to 1: neighbours beside each other, so that their spreads do not cover one another.</summary>
    public static double PartOf(int at) => (at % Columns + 0.7) / (Columns + 0.4);

    public double PlaceOf(int at) => Left + PartOf(at) * Ladder;

    // A name at the edge of the picture would be cut where the reader's letters are wider than is taken.
    private static double WideOf(string name) => Svg.WidthOf(name) * 1.1;

    /// <summary>The component with its figure; one under the ladder's foot has an arrow, because its dot stands at the foot.</summary>
    public string NameOf(LadderRow row) => $"{row.Name} {_figures.WaterActivity(row.WaterActivity).Text}{(row.WaterActivity < Lowest ? " \u2193" : "")}";
}
