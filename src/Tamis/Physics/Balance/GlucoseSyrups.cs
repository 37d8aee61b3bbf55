using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>What the dry matter of a glucose syrup is made of by its dextrose equivalent, between the rows of <c>glucose-syrups.csv</c>.</summary>
internal sealed class GlucoseSyrups
{
    /// <summary>Molar mass of glucose times 100: dry matter of dextrose equivalent DE has 18016/DE g/mol on average, by the definition of DE.</summary>
    public const double HundredGlucoseGramsPerMole = 18016;

    private readonly IReadOnlyList<(double De, double Glucose, double Maltose, Source Source)> _rows;

    private GlucoseSyrups(IReadOnlyList<(double, double, double, Source)> rows) => _rows = rows;

    public static GlucoseSyrups Read(Sheet sheet, List<CellProblem> problems)
    {
        List<(double De, double Glucose, double Maltose, Source Source)> rows = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            var (de, glucose, maltose) = (reader.RequiredNumber("dextrose_equivalent", 0, 100), reader.RequiredNumber("glucose_percent", 0, 100), reader.RequiredNumber("maltose_percent", 0, 100));
            if (rows.Count > 0 && de <= rows[^1].De) problems.Add(row.Problem("dextrose_equivalent", "a number above that of the row before"));
            rows.Add((de, glucose, maltose, PhysicsData.SourceOf(row, problems)));
        }
        if (rows.Count < 2) problems.Add(new(sheet.File, 0, "", "", "two rows or more"));
        return new(rows);
    }

    /// <summary>Glucose and maltose in 100 g of dry matter, between the two nearest rows.</summary>
    public (double GlucosePercent, double MaltosePercent, Source Source) At(double dextroseEquivalent)
    {
        var above = 1;
        while (above < _rows.Count - 1 && _rows[above].De < dextroseEquivalent) above++;
        var (low, high) = (_rows[above - 1], _rows[above]);
        var t = Math.Clamp((dextroseEquivalent - low.De) / (high.De - low.De), 0, 1);
        return (low.Glucose + t * (high.Glucose - low.Glucose), low.Maltose + t * (high.Maltose - low.Maltose), high.Source);
    }

    /// <summary>Moles of higher saccharides in dry matter of a dextrose equivalent, from its glucose and maltose; NaN where those alone have the whole reducing power.</summary>
    public static double HigherSaccharidesMoles(double dextroseEquivalentPercent, double glucoseGrams, double maltoseGrams, double higherGrams)
    {
        if (higherGrams <= 0) return 0;
        var moles = (glucoseGrams + maltoseGrams + higherGrams) * dextroseEquivalentPercent / HundredGlucoseGramsPerMole
            - glucoseGrams / Molar.MonosaccharideGramsPerMole - maltoseGrams / Molar.DisaccharideGramsPerMole;
        // Three glucose units are the fewest: more moles than that contradict the name.
        return moles > 0 ? Math.Min(moles, higherGrams / Molar.TrisaccharideGramsPerMole) : double.NaN;
    }
}
