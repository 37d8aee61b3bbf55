using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>What an authority says where it lists no tolerance.</summary>
/// <param name="Figure">The figure, by its key; <c>all</c> for every figure.</param>
/// <param name="Unit">Its unit; <c>any</c> for every unit.</param>
/// <param name="Origin">Where it says so, with its words in the note.</param>
public sealed record NoTolerance(string Figure, string Unit, RuleOrigin Origin);

/// <summary>The tolerances of an authority: <c>tolerances.csv</c>.</summary>
public sealed class Tolerances
{
    private static readonly Dictionary<string, ClaimSubject> Subjects = new(Names.Comparer) { ["no claim"] = ClaimSubject.NoClaim, ["at least"] = ClaimSubject.AtLeast, ["at most"] = ClaimSubject.AtMost, ["added"] = ClaimSubject.Added };

    private static readonly Dictionary<string, Kind> Kinds = new(Names.Comparer) { ["percent"] = Kind.Percent, ["amount"] = Kind.Amount, ["none"] = Kind.None };

    private static readonly Dictionary<string, MeasurementAllowance> Measurements = new(Names.Comparer)
    {
        ["included"] = MeasurementAllowance.Included,
        ["added"] = MeasurementAllowance.Added,
        ["added above"] = MeasurementAllowance.AddedAbove,
    };

    private Tolerances(IReadOnlyList<Tolerance> all, IReadOnlyList<NoTolerance> none) => (All, None) = (all, none);

    private enum Kind
    {
        Percent,
        Amount,
        None,
    }

    /// <summary>Every tolerance; none where the rule set has no such file.</summary>
    public IReadOnlyList<Tolerance> All { get; }

    /// <summary>What the authority says of figures for which it lists none.</summary>
    public IReadOnlyList<NoTolerance> None { get; }

    /// <summary>The tolerances of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static Tolerances Of(RuleSet rules) => rules.Folder.Table((folder, problems) => Read(folder, rules, problems));

    /// <summary>The tolerance of a declared figure: of the kind of claim, or of what was added, where the authority has one for it, otherwise without a claim; null where it lists none.</summary>
    public Tolerance? For(string figure, string unit, double declared, ClaimSubject subject = ClaimSubject.NoClaim) =>
        Find(figure, unit, declared, subject) ?? (subject == ClaimSubject.NoClaim ? null : Find(figure, unit, declared, ClaimSubject.NoClaim));

    private Tolerance? Find(string figure, string unit, double declared, ClaimSubject subject) =>
        All.FirstOrDefault(row => Names.Same(row.Figure, figure) && row.Unit == unit && row.Subject == subject && row.Declared.Takes(RoundingTable.ToDecimal(declared)));

    private static Tolerances Read(RuleFolder folder, RuleSet rules, List<CellProblem> problems)
    {
        List<Tolerance> all = [];
        List<NoTolerance> none = [];
        foreach (var row in folder.RowsIfAny("tolerances.csv", ["figure", "unit", "subject", "from", "from_inclusive", "to", "to_inclusive", "minus", "plus", "kind", "measurement", "units", "analyses"], problems))
        {
            var (figure, unit, kind) = (row.Cells.Required("figure"), row.Cells.Required("unit"), row.Choice("kind", Kinds));
            if (!(kind == Kind.None && figure == "all") && !rules.Declaration.Any(line => Names.Same(line.Key, figure) && line.Unit == unit)) row.Cells.Note("figure", $"a line of declaration.csv in {unit}");
            if (kind == Kind.None)
            {
                none.Add(new(figure, unit, row.Origin()));
                continue;
            }
            var (minus, plus) = (row.Cells.Number("minus", 0), row.Cells.Number("plus", 0));
            if (minus is null && plus is null) row.Cells.Note("minus", "a number in minus, in plus or in both; a kind of none where the authority lists no tolerance");
            all.Add(new(figure, unit, row.Choice("subject", Subjects), row.Band(),
                minus, plus, kind == Kind.Percent, row.Choice("measurement", Measurements), new(row.Cells.Whole("units", 1) ?? 1, row.Cells.Whole("analyses", 1) ?? 1), row.Origin()));
        }
        return new(all, none);
    }
}
