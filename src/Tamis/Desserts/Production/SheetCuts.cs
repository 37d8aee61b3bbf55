using Tamis.Montage;

namespace Tamis.Desserts;

/// <summary>Rounds of a component that are cut from a sheet of its thickness.</summary>
/// <param name="Component">The component.</param>
/// <param name="Mould">The sheet that it is rolled in.</param>
/// <param name="Cuts">How they stand on it.</param>
/// <param name="Wanted">How many are wanted.</param>
/// <param name="Density">Its density before it is baked or set, in grams a millilitre; null where nobody knows.</param>
public sealed record SheetCuts(string Component, Mould Mould, CutOuts Cuts, int Wanted, double? Density)
{
    /// <summary>How many sheets that takes, without rolling trim out again; null where not one round fits on a sheet.</summary>
    public int? Sheets => Cuts.Count == 0 ? null : (Wanted + Cuts.Count - 1) / Cuts.Count;

    /// <summary>What is trimmed off all sheets together, as a share of them, 0 to 1; null where there are none.</summary>
    public double? TrimShare => Sheets is { } sheets ? 1 - Wanted * Math.PI * Cuts.DiameterMillimetres * Cuts.DiameterMillimetres / 4 / (sheets * Cuts.Sheet.Length * Cuts.Sheet.Width) : null;

    /// <summary>How much dough fills the sheets, in grams; null where the density is not known.</summary>
    public double? DoughGrams => Sheets * Cuts.Sheet.VolumeMillilitres * Density;

    /// <summary>How many sheets it takes when trim is rolled out so often again; null where nobody knows.</summary>
    /// <param name="timesRolledAgain">How often, 0 or more; dough toughens with each.</param>
    public int? SheetsRollingAgain(int timesRolledAgain)
    {
        if (Density is not { } density || Cuts.Count == 0) return null;
        for (var sheets = 1; sheets <= Sheets; sheets++)
            if (Cuts.From(sheets * Cuts.Sheet.VolumeMillilitres * density, density, timesRolledAgain).Rounds.Sum() >= Wanted) return sheets;
        return Sheets;
    }

    /// <summary>The rounds of a trial that a sheet of the kitchen has the thickness of.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many pieces.</param>
    /// <param name="gapMillimetres">What the cutter leaves between two rounds.</param>
    /// <exception cref="Tables.TableException">A cell of the montage must be mended.</exception>
    public static IReadOnlyList<SheetCuts> Of(Dessert dessert, string trial, int pieces, double gapMillimetres = 0)
    {
        if (dessert.Montage is not { } montage) return [];
        var line = dessert.LineOf(trial).ToArray();
        return [.. from row in montage.RowsOf(line)
                   where row is { Mould: null, DiameterMillimetres: not null }
                   let thickness = row.ThicknessMillimetres ?? double.NaN
                   from mould in dessert.Moulds
                   where ReferenceEquals(mould.Kind, Cuboid.Sheet) && mould.Shape is Cuboid sheet && Math.Abs(sheet.Height - thickness) < 0.05
                   let note = dessert.Components.Of(row.Component, line)
                   select new SheetCuts(row.Component, mould, CutOuts.Best((Cuboid)mould.Shape, row.DiameterMillimetres!.Value, gapMillimetres), pieces * row.Count, note?.RawDensityGramsPerMillilitre ?? note?.DensityGramsPerMillilitre)];
    }
}
