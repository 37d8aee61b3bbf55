using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>What a law takes the measures of a kitchen to hold, in millilitres: <c>measures.csv</c> of a rule set.</summary>
public sealed class VolumeMeasures
{
    private readonly IReadOnlyDictionary<string, (double Millilitres, RuleOrigin Origin)> _measures;

    private VolumeMeasures(IReadOnlyDictionary<string, (double, RuleOrigin)> measures) => _measures = measures;

    /// <summary>The measures that have a row.</summary>
    public IEnumerable<string> Known => _measures.Keys;

    /// <summary>The measures of a rule set; none where its folder has no such file.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static VolumeMeasures Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>What a measure holds, in millilitres, and where that stands; null where the law names no such measure.</summary>
    public (double Millilitres, RuleOrigin Origin)? Find(string measure) => _measures.TryGetValue(measure, out var found) ? found : null;

    private static VolumeMeasures Read(RuleFolder folder, List<CellProblem> problems)
    {
        Dictionary<string, (double, RuleOrigin)> measures = new(Names.Comparer);
        foreach (var row in folder.RowsIfAny("measures.csv", ["measure", "millilitres"], problems))
        {
            var held = row.RequiredDecimal("millilitres");
            if (held == 0) row.Cells.Note("millilitres", "a number above 0");
            if (!measures.TryAdd(row.Cells.Required("measure"), ((double)held, row.Origin()))) row.Cells.Note("measure", "each measure once");
        }
        return new(measures);
    }
}
