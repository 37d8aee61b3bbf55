using System.Globalization;
using System.Text.RegularExpressions;
using Tamis.Formulas;
using Tamis.Physics;
using Tamis.Production;

namespace Tamis.Desserts;

/// <summary>How what was recorded stands to a limit.</summary>
public enum CriticalOutcome
{
    /// <summary>Nothing was recorded.</summary>
    NotRecorded,
    /// <summary>What was recorded is too little to tell.</summary>
    TooLittle,
    /// <summary>Within the limit.</summary>
    Within,
    /// <summary>Outside the limit.</summary>
    Outside,
}

/// <summary>A step, or the keeping of a component, where time and temperature decide safety.</summary>
public sealed partial record CriticalStep
{
    /// <summary>The component, or the word for the putting together.</summary>
    public required string Component { get; init; }

    /// <summary>The step; null for keeping.</summary>
    public MethodStep? Step { get; init; }

    /// <summary>Cook, chill, freeze, thaw or hold.</summary>
    public required string Kind { get; init; }

    /// <summary>What is measured.</summary>
    public required string What { get; init; }

    /// <summary>The limit from below, °C; null where there is none.</summary>
    public double? AtLeastCelsius { get; init; }

    /// <summary>The limit from above, °C; null where there is none.</summary>
    public double? AtMostCelsius { get; init; }

    /// <summary>How long at most, in hours; null where there is no such limit.</summary>
    public double? MostHours { get; init; }

    /// <summary>The stages of cooling that a log is held against; empty where none was chosen or it does not cool.</summary>
    public IReadOnlyList<CoolingRule> Cooling { get; init; } = [];

    /// <summary>What is written down.</summary>
    public required string Record { get; init; }

    /// <summary>Who says so.</summary>
    public required Source Source { get; init; }

    /// <summary>Where the step or the keeping stands.</summary>
    public required Source Origin { get; init; }

    /// <summary>The limit in words.</summary>
    public string Limit => string.Join("; ", new[]
    {
        AtLeastCelsius is { } low ? FormattableString.Invariant($"at least {low:0.#} °C") : null,
        AtMostCelsius is { } high ? FormattableString.Invariant($"at most {high:0.#} °C") : null,
        MostHours is { } hours ? FormattableString.Invariant($"at most {hours:0.##} h") : null,
        Cooling.Count > 0 ? string.Join(", ", Cooling.Select(rule => FormattableString.Invariant($"{rule.FromCelsius:0.#} to {rule.ToCelsius:0.#} °C in {rule.MostHours:0.#} h ({rule.Rule})"))) : null,
    }.OfType<string>()) is { Length: > 0 } limit ? limit : Names.Same(Kind, Chill) ? $"by the cooling rule of your code: name it as {CoolingRuleKey} in dessert.csv" : "as the local code says";

    /// <summary>Whether it cools by a rule that nobody has chosen in <c>dessert.csv</c>.</summary>
    public bool LacksCoolingRule => Names.Same(Kind, Chill) && Cooling.Count == 0;

    /// <summary>The kind of a step that cools what was hot.</summary>
    public const string Chill = "chill";

    /// <summary>The key of <c>dessert.csv</c> that chooses a cooling rule by its name.</summary>
    public const string CoolingRuleKey = "cooling_rule";

    /// <summary>The critical steps of a trial, in the order of the method, then what is kept cold.</summary>
    /// <exception cref="Tables.TableException">A sheet must be mended first, or <c>dessert.csv</c> names a cooling rule that there is not.</exception>
    public static IReadOnlyList<CriticalStep> Of(Dessert dessert, string trial)
    {
        var line = dessert.LineOf(trial).ToArray();
        var batch = dessert.Trial(trial);
        var cooling = CoolingOf(dessert, trial);
        List<CriticalStep> critical = [];
        foreach (var component in batch.Components.Select(component => component.Name).Append(MethodStep.Assembly))
        {
            string[] allergens = [.. (batch.Find(component)?.Out.Parts ?? batch.Components.SelectMany(each => each.Out.Parts)).SelectMany(part => part.Ingredient.Allergens ?? []).Distinct(Names.Comparer)];
            foreach (var step in dessert.Method?.StepsOf(component, line) ?? [])
                if (step.TemperatureCelsius is { } celsius && CriticalRule.All.FirstOrDefault(rule => rule.Marks(celsius, step.Do, allergens)) is { } rule
                    && (!Names.Same(rule.Kind, Chill) || critical.Any(hot => Names.Same(hot.Kind, "cook") && Names.Same(hot.Component, component))))
                    critical.Add(Marked(step, celsius, rule, dessert, cooling));
            if (dessert.Components.Of(component, line) is { HoldHours: { } hours, HoldCelsius: <= 8 and var cold } note)
                critical.Add(new() { Component = component, Kind = "hold", What = "warmest while kept", AtMostCelsius = cold, MostHours = hours, Record = "temperature of the place twice a day, and when it went in", Source = new("components.csv", Evidence.Sheet, "hold_hours, hold_c"), Origin = note.Origin! });
        }
        return critical;
    }

    /// <summary>Holds readings against the limit.</summary>
    public CriticalOutcome Judge(IReadOnlyList<Measurement> readings)
    {
        if (readings.Count == 0) return CriticalOutcome.NotRecorded;
        if (Cooling.Count > 0)
        {
            var log = TemperatureLogs.In(readings).FirstOrDefault()?.Log;
            var outcomes = log is null ? [] : Cooling.Select(rule => rule.Check(log).Outcome).ToArray();
            return outcomes.Contains(CoolingOutcome.TooSlow) ? CriticalOutcome.Outside : outcomes.Length > 0 && outcomes.All(outcome => outcome == CoolingOutcome.InTime) ? CriticalOutcome.Within : CriticalOutcome.TooLittle;
        }
        if (AtLeastCelsius is null && AtMostCelsius is null) return CriticalOutcome.TooLittle;
        // Frozen is what became cold enough at last; kept and thawed is what never became too warm.
        var upper = Names.Same(Kind, "freeze") ? readings.Min(reading => reading.Value) : readings.Max(reading => reading.Value);
        var isWithin = !(readings.Max(reading => reading.Value) < AtLeastCelsius) && !(upper > AtMostCelsius);
        var hours = readings.Where(reading => reading.At is not null).Select(reading => reading.At!.Value).ToArray();
        return isWithin && !(hours.Length > 1 && (hours.Max() - hours.Min()).TotalHours > MostHours) ? CriticalOutcome.Within : CriticalOutcome.Outside;
    }

    private static CriticalStep Marked(MethodStep step, double celsius, CriticalRule rule, Dessert dessert, IReadOnlyList<CoolingRule> cooling)
    {
        // An oven's own temperature is not that of the middle; a pan's is.
        var isAir = step.Equipment is { } named && dessert.Equipment.Find(named) is { } equipment && EquipmentKind.Of(equipment.Kind).IsByPlaces;
        var written = Core().Match(step.Caution ?? "") is { Success: true } core ? double.Parse(core.Groups["c"].Value.Replace('−', '-'), CultureInfo.InvariantCulture) : isAir ? (double?)null : celsius;
        var isThaw = Names.Same(rule.Kind, "thaw");
        return new()
        {
            Component = step.Component, Step = step, Kind = rule.Kind, What = rule.What, Record = rule.Record, Origin = step.Origin,
            AtLeastCelsius = rule.AtLeastCelsius is { } least ? written ?? least : null,
            AtMostCelsius = rule.AtMostCelsius is { } most ? isAir && written is null ? most : written ?? most : isThaw ? celsius : null,
            Cooling = Names.Same(rule.Kind, Chill) ? cooling : [],
            Source = written is not null && (rule.AtLeastCelsius ?? rule.AtMostCelsius) is not null ? new(step.Origin.Key, Evidence.Sheet, $"row {step.Row}") : rule.Source,
        };
    }

    private static IReadOnlyList<CoolingRule> CoolingOf(Dessert dessert, string trial)
    {
        if (dessert.Facts.Text(CoolingRuleKey, trial) is not { } chosen) return [];
        return CoolingRule.Names.Contains(chosen, Names.Comparer) ? CoolingRule.Named(chosen)
            : throw new Tables.TableException([dessert.Facts.Problem(CoolingRuleKey, trial, $"one of: {string.Join(", ", CoolingRule.Names)}")]);
    }

    [GeneratedRegex(@"core (at least|at most|at|above|below) (?<c>[-−]?\d+(\.\d+)?) ?°C", RegexOptions.IgnoreCase)]
    private static partial Regex Core();
}
