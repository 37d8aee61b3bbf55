using Tamis.Losses;
using Tamis.Montage;
using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>How much room a component of a number of pieces takes: trays, litres, places.</summary>
internal sealed class Places(Dessert dessert, string trial, string? montageSheet, int pieces)
{
    private const string Trays = "trays", Litres = "litre", Grams = "g";
    private static readonly Lazy<(Cuboid Tray, double LooseGrams, double GapMillimetres)> Tray = new(() =>
    {
        List<CellProblem> problems = [];
        var reader = new RowReader(SheetFile.Read(Path.Combine(KitFolder.Data("production"), "trays.csv")).Rows[0], problems);
        var tray = (new Cuboid(reader.RequiredNumber("length_mm", 1), reader.RequiredNumber("width_mm", 1), 1), reader.RequiredNumber("loose_g", 1), reader.RequiredNumber("gap_mm", 0));
        return problems.Count == 0 ? tray : throw new TableException(problems);
    });

    private readonly AssembledPiece? _piece = dessert.PieceOf(trial, montageSheet);

    /// <summary>How many units of a thing's capacity one make or all pieces of a component take, at least 1.</summary>
    /// <param name="equipment">The thing.</param>
    /// <param name="component">The component; null for the whole piece.</param>
    /// <param name="grams">All of the component that is made.</param>
    public int Needed(Equipment equipment, string? component, double grams)
    {
        var layers = LayersOf(component);
        return Math.Max(1, equipment.Unit switch
        {
            Trays when layers.Length == 0 => Whole(grams / Tray.Value.LooseGrams),
            Trays => layers.Max(layer => Whole((double)pieces * layer.Count / Math.Max(1, CutOuts.Best(Tray.Value.Tray, WidthOf(layer), Tray.Value.GapMillimetres).Count))),
            Litres when layers.Length == 0 => Whole(grams / 1000),
            Litres => Whole(layers.Max(layer => pieces * layer.Count * Math.Pow(2 * layer.Outer.WidestHalfMillimetres, 2) * layer.Outer.HeightMillimetres / 1e6)),
            Grams => 1,
            // Rings, moulds, places: one for each.
            _ => layers.Length == 0 ? 1 : pieces * layers.Max(layer => layer.Count),
        });
    }

    /// <summary>The moulds that a component stands in, with how many places it needs and how many there are; none where nobody counted.</summary>
    public IEnumerable<(string Mould, int Needed, int Owned, Placing As)> MouldsOf(string component) =>
        from row in Rows
        where Names.Same(row.Component, component) && row.Mould is not null
        let mould = dessert.Moulds.FirstOrDefault(each => Names.Same(each.Name, row.Mould))
        where mould?.PlacesOwned is > 0 && !mould.Kind.HoldsRaw
        select (mould.Name, pieces * row.Count, mould.PlacesOwned!.Value, row.As!.Value);

    /// <summary>The rows of the montage whose mould was counted, and there is none.</summary>
    public IEnumerable<SheetRow> RowsWithoutMoulds =>
        from row in Rows
        where dessert.Moulds.Any(mould => Names.Same(mould.Name, row.Mould) && mould.Owned == 0)
        select row.Row;

    private IReadOnlyList<MontageRow> Rows => (montageSheet is null ? dessert.Montage : dessert.MontageNamed(montageSheet))?.RowsOf(dessert.LineOf(trial)) ?? [];

    /// <summary>What is filled into a lining of this component, in order.</summary>
    public IEnumerable<string> FillsOf(string component) =>
        _piece?.Layers.Where(layer => layer.As == Placing.Fill && Names.Same(layer.Inside, component)).Select(layer => layer.Component) ?? [];

    private PlacedLayer[] LayersOf(string? component)
    {
        if (_piece is null) return [];
        if (component is null) return [.. _piece.Layers.Where(layer => layer.As is not (Placing.Film or Placing.Piece)).OrderByDescending(layer => layer.Outer.WidestHalfMillimetres).Take(1)];
        PlacedLayer[] own = [.. _piece.Layers.Where(layer => Names.Same(layer.Component, component) && layer.Outer.HeightMillimetres > 0)];
        // What is filled into a lining stands in the lining's mould; what lies on another stands where that does.
        return [.. own.Select(layer => layer.As is Placing.Fill or Placing.Film ? _piece.Layers.FirstOrDefault(around => Names.Same(around.Component, layer.Inside)) ?? layer : layer)];
    }

    // Single pieces stand closer than a round of their length would.
    private static double WidthOf(PlacedLayer layer) => layer.As == Placing.Piece ? Math.Sqrt(4 * layer.Outer.AreaAt(0) / Math.PI) : 2 * layer.Outer.WidestHalfMillimetres;

    private static int Whole(double units) => (int)Math.Ceiling(units - 1e-9);
}
