using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>One stage of a rule: from one temperature to another within a time.</summary>
/// <param name="Rule">The rule's name, as somebody chooses it.</param>
/// <param name="Stage">What this stage asks, in words.</param>
/// <param name="FromCelsius">Where its clock starts.</param>
/// <param name="ToCelsius">Where its clock stops; above <paramref name="FromCelsius"/> for reheating.</param>
/// <param name="MostHours">How long it may take.</param>
/// <param name="Unless">The exception that the rule grants; empty where none.</param>
/// <param name="Jurisdiction">Where it applies.</param>
/// <param name="Source">The text behind it.</param>
public sealed record CoolingRule(string Rule, string Stage, double FromCelsius, double ToCelsius, double MostHours, string Unless, string Jurisdiction, Source Source)
{
    private static readonly Lazy<IReadOnlyList<CoolingRule>> Shipped = new(() => ReadAll(PhysicsData.Kit.Table("cooling-rules.csv")));

    /// <summary>What every verdict is printed with.</summary>
    public const string Deferral = "A help for reading a log, no proof of safety: the local code in force, and who is licensed to judge by it, decide.";

    /// <summary>The rules that the kit ships.</summary>
    public static IReadOnlyList<CoolingRule> All => Shipped.Value;

    /// <summary>The names of the rules, to choose one.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Select(rule => rule.Rule).Distinct()];

    /// <summary>The stages of a rule.</summary>
    /// <exception cref="KeyNotFoundException">There is no rule of this name; the known ones are named.</exception>
    public static IReadOnlyList<CoolingRule> Named(string rule) => All.Where(each => Tamis.Names.Same(each.Rule, rule)).ToArray() is { Length: > 0 } stages ? stages
        : throw new KeyNotFoundException($"There is no cooling rule '{rule}'; there are: {string.Join(", ", Names)}.");

    /// <summary>Holds a log against the stage.</summary>
    public CoolingVerdict Check(TemperatureLog log)
    {
        var (falls, first, last) = (ToCelsius < FromCelsius, log.Readings[0], log.Readings[^1]);
        // A log that begins between the two temperatures began too late: what it shows is the least that it took.
        var isInside = falls ? first.Celsius <= FromCelsius && first.Celsius > ToCelsius : first.Celsius >= FromCelsius && first.Celsius < ToCelsius;
        var start = isInside ? first.Minutes : falls ? log.FallsTo(FromCelsius) : log.RisesTo(FromCelsius);
        if (start is not { } from) return new(this, CoolingOutcome.NotPassed, null, log);
        var end = falls ? log.FallsTo(ToCelsius, from) : log.RisesTo(ToCelsius, from);
        var minutes = (end ?? last.Minutes) - from;
        var outcome = minutes > MostHours * 60 ? CoolingOutcome.TooSlow
            : end is null || isInside && first.Celsius != FromCelsius ? CoolingOutcome.LogTooShort : CoolingOutcome.InTime;
        return new(this, outcome, minutes, log);
    }

    /// <summary>Reads rules.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static IReadOnlyList<CoolingRule> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        CoolingRule[] rules = [.. sheet.Rows.Select(row => (row, reader: new RowReader(row, problems))).Select(each => new CoolingRule(
            each.reader.Required("rule"), each.reader.Required("stage"), each.reader.RequiredNumber("from_c", -50, 150), each.reader.RequiredNumber("to_c", -50, 150),
            each.reader.RequiredNumber("max_hours", 0, 100), each.row["unless"], each.reader.Required("jurisdiction"), PhysicsData.SourceOf(each.row, problems)))];
        return problems.Count == 0 ? rules : throw new TableException(problems);
    }
}

/// <summary>How a log stands to a stage of a rule.</summary>
public enum CoolingOutcome
{
    /// <summary>The log never enters the range of the stage.</summary>
    NotPassed,
    /// <summary>The log begins inside the range or ends before its end: nothing can be said.</summary>
    LogTooShort,
    /// <summary>It took no longer than the rule grants.</summary>
    InTime,
    /// <summary>It took longer.</summary>
    TooSlow,
}

/// <summary>A log held against a stage of a rule.</summary>
/// <param name="Rule">The stage.</param>
/// <param name="Outcome">How it stands.</param>
/// <param name="Minutes">How long it took, or had taken when the log ended; null where the log never enters the range.</param>
/// <param name="Log">The log.</param>
public sealed record CoolingVerdict(CoolingRule Rule, CoolingOutcome Outcome, double? Minutes, TemperatureLog Log)
{
    /// <summary>How it was worked out.</summary>
    public Working Working => new($"time from {Text(Rule.FromCelsius)} to {Text(Rule.ToCelsius)} °C", Minutes ?? double.NaN, "min", Log.Source)
    { From = [new($"{Rule.Rule}, {Rule.Stage}: at most", Rule.MostHours * 60, "min", Rule.Source)] };

    private static string Text(double celsius) => Tables.NumberText.Write(celsius, '.');
}
