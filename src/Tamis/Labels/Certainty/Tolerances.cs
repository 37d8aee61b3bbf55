using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Whether a figure is the subject of a claim, and of which kind.</summary>
public enum ClaimSubject
{
    /// <summary>No claim is made of it.</summary>
    NoClaim,
    /// <summary>A claim that there is at least so much.</summary>
    AtLeast,
    /// <summary>A claim that there is at most so much.</summary>
    AtMost,
}

/// <summary>How far an official sample may lie from a declared figure.</summary>
/// <param name="Figure">The figure, by its key.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Subject">Whether a claim is made of it.</param>
/// <param name="Declared">The range of declared figures that the row is for.</param>
/// <param name="Minus">How far below; null where no limit is set below.</param>
/// <param name="Plus">How far above; null where no limit is set above.</param>
/// <param name="IsPercent">Whether in per cent of the declared figure; otherwise in its unit.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record Tolerance(string Figure, string Unit, ClaimSubject Subject, FigureBand Declared, double? Minus, double? Plus, bool IsPercent, RuleOrigin Origin)
{
    /// <summary>The lowest amount that is accepted; minus infinity where no limit is set below.</summary>
    public double Lowest(double declared) => Minus is { } minus ? IsPercent ? declared * (1 - minus / 100) : Math.Max(0, declared - minus) : double.NegativeInfinity;

    /// <summary>The highest amount that is accepted; infinity where no limit is set above.</summary>
    public double Highest(double declared) => Plus is { } plus ? IsPercent ? declared * (1 + plus / 100) : declared + plus : double.PositiveInfinity;
}

/// <summary>The tolerances of an authority: <c>tolerances.csv</c>.</summary>
public sealed class Tolerances
{
    private static readonly Dictionary<string, ClaimSubject> Subjects = new(Names.Comparer) { ["no claim"] = ClaimSubject.NoClaim, ["at least"] = ClaimSubject.AtLeast, ["at most"] = ClaimSubject.AtMost };

    private static readonly Dictionary<string, bool> Kinds = new(Names.Comparer) { ["percent"] = true, ["amount"] = false };

    private Tolerances(IReadOnlyList<Tolerance> all) => All = all;

    /// <summary>Every row; none where the rule set has no such file.</summary>
    public IReadOnlyList<Tolerance> All { get; }

    /// <summary>The tolerances of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static Tolerances Of(RuleSet rules) => rules.Folder.Table((folder, problems) => Read(folder, rules, problems));

    /// <summary>The tolerance of a declared figure; null where the authority lists none.</summary>
    public Tolerance? For(string figure, string unit, double declared, ClaimSubject subject = ClaimSubject.NoClaim) =>
        All.FirstOrDefault(row => Names.Same(row.Figure, figure) && row.Unit == unit && row.Subject == subject && row.Declared.Takes(RoundingTable.ToDecimal(declared)));

    private static Tolerances Read(RuleFolder folder, RuleSet rules, List<CellProblem> problems) =>
        new([.. folder.RowsIfAny("tolerances.csv", ["figure", "unit", "subject", "from", "from_inclusive", "to", "to_inclusive", "minus", "plus", "kind"], problems).Select(row =>
        {
            var (figure, unit) = (row.Cells.Required("figure"), row.Cells.Required("unit"));
            if (!rules.Declaration.Any(line => Names.Same(line.Key, figure) && line.Unit == unit)) row.Cells.Note("figure", $"a line of declaration.csv in {unit}");
            return new Tolerance(figure, unit, row.Choice("subject", Subjects), new(row.RequiredDecimal("from"), row.Flag("from_inclusive"), row.Decimal("to"), row.Flag("to_inclusive")),
                row.Cells.Number("minus", 0), row.Cells.Number("plus", 0), row.Choice("kind", Kinds), row.Origin());
        })]);
}
