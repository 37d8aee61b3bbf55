using System.Globalization;
using Tamis.Tables;

namespace Tamis.Montage;

/// <summary>Puts a piece together from the rows of the montage sheet: where each layer stands, what it displaces, what it weighs.</summary>
/// <remarks>Volumes are conserved: what is inside something moulded is taken off it, what is filled into a lining lies in its hollow.</remarks>
public sealed class Assembler
{
    private const double Slack = 1e-6, Tolerance = 0.05;
    private readonly IReadOnlyList<Mould> _moulds;
    private readonly Func<string, LayerFacts?> _factsOf;
    private readonly List<CellProblem> _problems;
    private readonly IReadOnlyList<MontageRow> _rows;
    private readonly List<PlacedLayer> _placed = [];
    private readonly List<string> _remarks = [];

    private Assembler(IReadOnlyList<MontageRow> rows, IReadOnlyList<Mould> moulds, Func<string, LayerFacts?> factsOf, List<CellProblem> problems) => (_rows, _moulds, _factsOf, _problems) = (rows, moulds, factsOf, problems);

    /// <summary>Puts a piece together.</summary>
    /// <param name="rows">The rows of one trial in their order.</param>
    /// <param name="moulds">The moulds of the kitchen.</param>
    /// <param name="factsOf">Density and kept share of a component; null for one that the formula does not have.</param>
    /// <param name="problems">Receives every cell that must be mended: a mould that nobody has, an insert that does not fit, a component without a density.</param>
    /// <returns>The piece; null where a cell must be mended first.</returns>
    public static AssembledPiece? Assemble(IReadOnlyList<MontageRow> rows, IReadOnlyList<Mould> moulds, Func<string, LayerFacts?> factsOf, List<CellProblem> problems)
    {
        var before = problems.Count;
        var assembler = new Assembler(rows, moulds, factsOf, problems);
        foreach (var row in rows) assembler.Place(row);
        assembler.LookAtRims();
        assembler.CompareMasses();
        return problems.Count == before ? new(assembler._placed, assembler._remarks) : null;
    }

    private double Top => _placed.Where(layer => layer.As is not (Placing.Piece or Placing.Film or Placing.Lining)).Select(layer => layer.TopMillimetres)
        .Concat(_placed.Where(layer => layer.As is Placing.Lining).Select(layer => layer.BottomMillimetres + layer.ThicknessMillimetres)).DefaultIfEmpty().Max();

    private void Place(MontageRow row)
    {
        if (_factsOf(row.Component) is not { } facts)
        {
            _problems.Add(row.Row.Problem("component", "a component of formula.csv"));
            return;
        }
        var mould = row.Mould is null ? null : _moulds.FirstOrDefault(each => Names.Same(each.Name, row.Mould));
        if (row.Mould is { } named && mould is null)
        {
            var near = Names.Nearest(named, [.. _moulds.Select(each => each.Name)]);
            _problems.Add(row.Row.Problem("mould", near.Count == 0 ? "a mould of moulds.csv" : $"a mould of moulds.csv; near ones: {string.Join(", ", near)}"));
            return;
        }
        switch (row.As)
        {
            case Placing.Lining: Line(row, facts, mould); break;
            case Placing.Fill: Fill(row, facts); break;
            case Placing.Moulded: Mould(row, facts, mould); break;
            case Placing.Insert: Insert(row, facts, mould); break;
            case Placing.Film: Film(row, facts); break;
            default: Set(row, facts, mould); break;
        }
    }

    private void Line(MontageRow row, LayerFacts facts, Mould? mould)
    {
        if (mould is null) { Wants(row, "mould", "the mould that it lines"); return; }
        if (row.ThicknessMillimetres is null && GivenGrams(row, facts) is null) { Wants(row, "thickness_mm", "how thick the lining is, or its mass under raw_g or mass_g"); return; }
        if (row.ThicknessMillimetres is null && GivenMillilitres(row, facts) is null) { WantsDensity(row); return; }
        var thickness = row.ThicknessMillimetres ?? mould.Shape.LiningThicknessOf(GivenMillilitres(row, facts)!.Value);
        if (thickness is not { } millimetres || mould.Shape.HollowOf(millimetres) is not { } hollow)
        {
            _problems.Add(row.Row.Problem(ColumnOf(row), $"a lining that leaves a hollow in {mould.Name}; a {mould.Kind.Name} of this size has none left"));
            return;
        }
        // Of a mould whose water was weighed, the lining takes the part that geometry gives it.
        Add(row, facts, mould.Shape, Top, row.ThicknessMillimetres is null ? GivenMillilitres(row, facts)!.Value : mould.PlaceMillilitres - hollow.VolumeMillilitres);
        _placed[^1] = _placed[^1] with { Hollow = hollow, ThicknessMillimetres = millimetres };
    }

    private void Fill(MontageRow row, LayerFacts facts)
    {
        var lining = _placed.LastOrDefault(layer => layer.Hollow is not null && (row.Inside is null || Names.Same(layer.Component, row.Inside)));
        if (lining?.Hollow is not { } hollow) { Wants(row, "inside", "a lining that stands before it"); return; }
        var floor = lining.BottomMillimetres + lining.ThicknessMillimetres;
        var level = Math.Max(0, _placed.Where(layer => Names.Same(layer.Inside, lining.Component)).Select(layer => layer.TopMillimetres - floor).DefaultIfEmpty().Max());
        var below = hollow.VolumeBelow(level);
        var grams = GivenGrams(row, facts);
        var volume = row.ThicknessMillimetres is { } given ? Below(hollow, level + given) - below : grams / facts.DensityGramsPerMillilitre;
        if (volume is not { } millilitres)
        {
            if (grams is null) Wants(row, "thickness_mm", "how high it stands, or its mass under raw_g or mass_g");
            else WantsDensity(row);
            return;
        }
        var thickness = row.ThicknessMillimetres ?? hollow.HeightOf(below + millilitres) - level ?? hollow.HeightMillimetres - level + (below + millilitres - hollow.VolumeMillilitres) * 1000 / hollow.AreaAt(hollow.HeightMillimetres);
        Add(row, facts, new Slice(hollow, level, thickness), floor + level, millilitres);
        _placed[^1] = _placed[^1] with { Inside = lining.Component };
    }

    private void Mould(MontageRow row, LayerFacts facts, Mould? mould)
    {
        if (mould is null) { Wants(row, "mould", "the mould that it fills"); return; }
        var bottom = row.AboveMillimetres ?? Top;
        // With something inside, what it displaces is known only later; the mould is full then, and the mass is compared with what is left.
        if (_rows.Any(each => each.As == Placing.Insert && (each.Inside is null || Names.Same(each.Inside, row.Component))) || GivenGrams(row, facts) is null)
            Add(row, facts, mould.Shape, bottom, mould.PlaceMillilitres);
        else if (Filled(row, facts, mould) is var (solid, volume)) Add(row, facts, solid, bottom, volume);
    }

    /// <summary>A place that a given mass fills in part; null, with the cell noted, where nobody knows how far.</summary>
    private (Shape Solid, double Millilitres)? Filled(MontageRow row, LayerFacts facts, Mould mould)
    {
        if (GivenMillilitres(row, facts) is not { } volume) { WantsDensity(row); return null; }
        if (volume > mould.PlaceMillilitres * (1 + Tolerance))
        {
            _problems.Add(row.Row.Problem(ColumnOf(row), string.Create(CultureInfo.InvariantCulture, $"at most what {mould.Name} holds, {mould.PlaceMillilitres:0.#} ml; this is {volume:0.#} ml")));
            return null;
        }
        // A mould whose water was weighed fills in proportion.
        return (mould.Shape.FilledWith(Math.Min(1, volume / mould.PlaceMillilitres) * mould.Shape.VolumeMillilitres) ?? mould.Shape, volume);
    }

    private void Insert(MontageRow row, LayerFacts facts, Mould? mould)
    {
        if (_placed.FindLastIndex(layer => layer.As == Placing.Moulded && (row.Inside is null || Names.Same(layer.Component, row.Inside))) is var at && at < 0)
        {
            Wants(row, "inside", "something moulded that stands before it");
            return;
        }
        if (SolidOf(row, facts, mould) is not var (solid, each)) return;
        var around = _placed[at];
        var others = _placed.Where(layer => layer.As == Placing.Insert && Names.Same(layer.Inside, around.Component)).ToArray();
        var bottom = around.BottomMillimetres + (row.AboveMillimetres ?? others.Select(layer => layer.TopMillimetres - around.BottomMillimetres).DefaultIfEmpty().Max());
        if (!FitsIn(solid, bottom, around))
        {
            _problems.Add(row.Row.Problem(row.Mould is null ? "diameter_mm" : "mould", string.Create(CultureInfo.InvariantCulture,
                $"an insert that fits in {around.Component}: {around.Outer.WidestHalfMillimetres * 2:0.#} mm wide and {around.Outer.HeightMillimetres:0.#} mm high; this one is {solid.WidestHalfMillimetres * 2:0.#} mm wide and reaches {bottom - around.BottomMillimetres + solid.HeightMillimetres:0.#} mm")));
            return;
        }
        if (others.FirstOrDefault(layer => bottom < layer.TopMillimetres - Slack && bottom + solid.HeightMillimetres > layer.BottomMillimetres + Slack) is { } hit)
        {
            _problems.Add(row.Row.Problem("above_mm", string.Create(CultureInfo.InvariantCulture,
                $"a place clear of {hit.Component}, which stands from {hit.BottomMillimetres - around.BottomMillimetres:0.#} to {hit.TopMillimetres - around.BottomMillimetres:0.#} mm")));
            return;
        }
        var volume = each * row.Count;
        Add(row, facts, solid, bottom, volume);
        _placed[^1] = _placed[^1] with { Inside = around.Component };
        var left = around.VolumeMillilitres - volume;
        var own = _rows.First(each => each.As == Placing.Moulded && each.Row.Origin("component") == around.Origin);
        _placed[at] = around with { VolumeMillilitres = left, MassGrams = GivenGrams(own, _factsOf(around.Component)!) ?? _factsOf(around.Component)!.DensityGramsPerMillilitre * left };
    }

    private void Film(MontageRow row, LayerFacts facts)
    {
        var covered = _placed.LastOrDefault(layer => row.Inside is null ? layer.As == Placing.Moulded : Names.Same(layer.Component, row.Inside));
        if (covered is null) { Wants(row, "inside", "what it covers; a component that stands before it"); return; }
        if (row.ThicknessMillimetres is null && GivenGrams(row, facts) is null) { Wants(row, "thickness_mm", "how thick the film is, or its mass under raw_g or mass_g"); return; }
        var area = covered.Outer.CoatedSquareCentimetres;
        if ((row.ThicknessMillimetres ?? GivenMillilitres(row, facts) / area * 10) is not { } millimetres) { WantsDensity(row); return; }
        Add(row, facts, covered.Outer, covered.BottomMillimetres, area * millimetres / 10);
        _placed[^1] = _placed[^1] with { Inside = covered.Component, ThicknessMillimetres = millimetres };
    }

    private void Set(MontageRow row, LayerFacts facts, Mould? mould)
    {
        if (mould is null && row.DiameterMillimetres is null && GivenGrams(row, facts) is { } grams)
        {
            if (facts.DensityGramsPerMillilitre is not { } density) { _placed.Add(Bare(row, grams)); return; }
            var volume = grams / density;
            // Without a shape it is drawn as a cube of its volume.
            var side = Math.Cbrt(volume * 1000);
            Add(row, facts, new Cuboid(side, side, side), Top, volume * row.Count);
            return;
        }
        if (SolidOf(row, facts, mould) is var (solid, each)) Add(row, facts, solid, Top, each * row.Count, holdsRaw: mould?.Kind.HoldsRaw == true);
    }

    private static PlacedLayer Bare(MontageRow row, double grams) => new()
    {
        Component = row.Component, As = row.As!.Value, Outer = new Cuboid(0, 0, 0), BottomMillimetres = 0, ThicknessMillimetres = 0, Count = row.Count,
        VolumeMillilitres = 0, MassGrams = grams * row.Count, Origin = row.Row.Origin("component"),
    };

    /// <summary>One of the pieces of a row and its volume: a place of a mould, or a round. Of diameter, thickness and mass two are enough.</summary>
    private (Shape Solid, double Millilitres)? SolidOf(MontageRow row, LayerFacts facts, Mould? mould)
    {
        // What is spread raw through a stencil fills it whatever it weighs in the end.
        if (mould is not null) return GivenGrams(row, facts) is null || mould.Kind.HoldsRaw ? (mould.Shape, mould.PlaceMillilitres) : Filled(row, facts, mould);
        if (row.DiameterMillimetres is null && row.ThicknessMillimetres is null) { Wants(row, "diameter_mm", "a mould, or two of diameter, thickness and mass"); return null; }
        if (row is { DiameterMillimetres: { } diameter, ThicknessMillimetres: { } thickness }) return Round(diameter, thickness);
        if (GivenGrams(row, facts) is null) { Wants(row, row.DiameterMillimetres is null ? "diameter_mm" : "thickness_mm", "a mould, or two of diameter, thickness and mass"); return null; }
        if (GivenMillilitres(row, facts) is not { } volume) { WantsDensity(row); return null; }
        return row.DiameterMillimetres is { } across ? Round(across, volume * 4000 / (Math.PI * across * across))
            : Round(Math.Sqrt(volume * 4000 / (Math.PI * row.ThicknessMillimetres!.Value)), row.ThicknessMillimetres.Value);

        static (Shape, double) Round(double diameter, double thickness) => new Cylinder(diameter, thickness) is var round ? (round, round.VolumeMillilitres) : default;
    }

    private void Add(MontageRow row, LayerFacts facts, Shape outer, double bottom, double volume, bool holdsRaw = false)
    {
        var grams = GivenGrams(row, facts) * row.Count ?? (holdsRaw ? facts.RawDensityGramsPerMillilitre * volume * facts.KeptShare : facts.DensityGramsPerMillilitre * volume);
        if (grams is null)
            _problems.Add(row.Row.Problem("component", $"a density of {row.Component} under {(holdsRaw ? "raw_density_g_ml" : "density_g_ml")} in components.csv, or a mass in this row"));
        _placed.Add(new()
        {
            Component = row.Component, As = row.As!.Value, Outer = outer, BottomMillimetres = bottom, ThicknessMillimetres = outer.HeightMillimetres,
            Count = row.Count, VolumeMillilitres = volume, MassGrams = grams, Origin = row.Row.Origin("component"),
        });
    }

    private static double? GivenGrams(MontageRow row, LayerFacts facts) => row.FinishedGrams ?? row.RawGrams * facts.KeptShare;

    // What one of them fills by its given mass; null without a mass or a density.
    private static double? GivenMillilitres(MontageRow row, LayerFacts facts) => GivenGrams(row, facts) / facts.DensityGramsPerMillilitre;

    private static string ColumnOf(MontageRow row) => row.ThicknessMillimetres is not null ? "thickness_mm" : row.FinishedGrams is not null ? "mass_g" : "raw_g";

    private void WantsDensity(MontageRow row) => Wants(row, "component", $"the density of {row.Component} under density_g_ml in components.csv: without it a mass has no volume");

    // A mass that was given beside all dimensions must be what they hold.
    private void CompareMasses()
    {
        foreach (var layer in _placed)
        {
            var row = _rows.First(each => each.Row.Origin("component") == layer.Origin);
            var facts = _factsOf(row.Component)!;
            if (GivenMillilitres(row, facts) * row.Count is { } given && layer.VolumeMillilitres > 0 && Math.Abs(given / layer.VolumeMillilitres - 1) > Tolerance)
                Remark($"{row.Component}: {GivenGrams(row, facts) * row.Count:0} g fill {given:0} ml, but there {(layer.VolumeMillilitres < 1.5 ? "is" : "are")} {layer.VolumeMillilitres:0} ml for it");
        }
    }

    // Above the rim a fill keeps the width of the rim.
    private static double Below(Shape hollow, double height) =>
        hollow.VolumeBelow(height) + Math.Max(0, height - hollow.HeightMillimetres) * hollow.AreaAt(hollow.HeightMillimetres) / 1000;

    private static bool FitsIn(Shape solid, double bottom, PlacedLayer around)
    {
        const int levels = 16;
        for (var i = 0; i <= levels; i++)
        {
            var own = solid.HeightMillimetres * i / levels;
            var there = bottom - around.BottomMillimetres + own;
            if (there < -Slack || there > around.Outer.HeightMillimetres + Slack) return false;
            if (solid.HalfWidthAt(own) > around.Outer.HalfWidthAt(Math.Clamp(there, 0, around.Outer.HeightMillimetres)) + Slack) return false;
        }
        return true;
    }

    private void LookAtRims()
    {
        foreach (var lining in _placed.Where(layer => layer.Hollow is not null))
        {
            foreach (var fill in _placed.Where(layer => layer.As == Placing.Fill && Names.Same(layer.Inside, lining.Component) && layer.TopMillimetres > lining.TopMillimetres + Slack))
                Remark($"{fill.Component} stands {fill.TopMillimetres - lining.TopMillimetres:0.#} mm above the rim of {lining.Component}");
            foreach (var set in _placed.Where(layer => layer.As == Placing.Moulded && layer.BottomMillimetres < lining.TopMillimetres - Slack && layer.BottomMillimetres > lining.BottomMillimetres))
                if (set.Outer.HalfWidthAt(0) > lining.Hollow!.HalfWidthAt(Math.Clamp(set.BottomMillimetres - lining.BottomMillimetres - lining.ThicknessMillimetres, 0, lining.Hollow.HeightMillimetres)) + Slack)
                    Remark($"{set.Component} is wider than {lining.Component} is inside: {set.Outer.HalfWidthAt(0) * 2:0.#} mm");
        }
    }

    private void Wants(MontageRow row, string column, string expected) => _problems.Add(row.Row.Problem(column, expected));

    private void Remark(FormattableString text) => _remarks.Add(text.ToString(CultureInfo.InvariantCulture));
}
