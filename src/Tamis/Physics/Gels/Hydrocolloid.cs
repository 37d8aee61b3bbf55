using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A condition that a gel needs, beside what the mixture has.</summary>
/// <param name="What">What is asked for: dose, soluble solids, pH, calcium.</param>
/// <param name="Found">What the mixture has; null where nobody knows.</param>
/// <param name="Wanted">What the gel needs.</param>
/// <param name="Unit">The unit of both, empty for a pure number.</param>
public sealed record GelCondition(string What, double? Found, Interval Wanted, string Unit)
{
    /// <summary>Whether it is met; null where nobody knows.</summary>
    public bool? IsMet => Found is { } found ? Wanted.Contains(found) : null;
}

/// <summary>What a mixture offers to a gelling agent; null for what nobody knows.</summary>
/// <param name="DosePercent">The agent, in per cent of the base that its dose is stated on.</param>
/// <param name="SolubleSolidsPercent">Soluble solids, in per cent of the mixture.</param>
/// <param name="Ph">The pH.</param>
/// <param name="CalciumMilligramsPerGram">Calcium to a gram of the agent, in mg.</param>
public sealed record GelMedium(double? DosePercent = null, double? SolubleSolidsPercent = null, double? Ph = null, double? CalciumMilligramsPerGram = null);

/// <summary>A gelling or thickening agent: its dose, the temperatures at which it dissolves, sets and melts, and what it needs.</summary>
public sealed record Hydrocolloid
{
    /// <summary>Its name in the trade.</summary>
    public required string Name { get; init; }

    /// <summary>The usual dose, in per cent of <see cref="DoseOf"/>.</summary>
    public required Interval DosePercent { get; init; }

    /// <summary>What the dose is counted on: the whole, or the water phase.</summary>
    public required string DoseOf { get; init; }

    /// <summary>The temperature from which it dissolves, in °C; null where it dissolves cold.</summary>
    public double? DissolvesAtCelsius { get; init; }

    /// <summary>Where it sets on cooling, in °C; null where it does not set by cold.</summary>
    public Interval? SetsAtCelsius { get; init; }

    /// <summary>Where the gel melts again, in °C; null where it does not melt or does not gel.</summary>
    public Interval? MeltsAtCelsius { get; init; }

    /// <summary>How many degrees above its setting temperature the gel melts; null where <see cref="MeltsAtCelsius"/> or nothing is known.</summary>
    public Interval? MeltsAboveSettingKelvin { get; init; }

    /// <summary>The soluble solids that the gel needs, in per cent; null where it needs none.</summary>
    public Interval? SolubleSolidsPercent { get; init; }

    /// <summary>The pH that the gel needs; null where it does not matter or nobody says.</summary>
    public Interval? Ph { get; init; }

    /// <summary>The calcium that the gel needs, in mg to a gram of agent; null where it needs none.</summary>
    public Interval? CalciumMilligramsPerGram { get; init; }

    /// <summary>What it needs, in words.</summary>
    public string Needs { get; init; } = "";

    /// <summary>What harms it, in words.</summary>
    public string Avoid { get; init; } = "";

    /// <summary>Where the figures come from.</summary>
    public required Source Source { get; init; }

    /// <summary>The agents of the kit.</summary>
    public static IReadOnlyList<Hydrocolloid> All { get; } = ReadAll(PhysicsData.Kit.Table("hydrocolloids.csv"));

    /// <summary>The agent of a name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static Hydrocolloid Named(string name) => All.FirstOrDefault(agent => Names.Same(agent.Name, name))
        ?? throw new KeyNotFoundException($"No gelling agent is called '{name}'; known are {string.Join(", ", All.Select(agent => agent.Name))}.");

    /// <summary>Every condition of the gel beside what a mixture has.</summary>
    public IReadOnlyList<GelCondition> Conditions(GelMedium medium)
    {
        List<GelCondition> conditions = [new($"dose, of the {DoseOf}", medium.DosePercent, DosePercent, "%")];
        if (SolubleSolidsPercent is { } solids) conditions.Add(new("soluble solids", medium.SolubleSolidsPercent, solids, "%"));
        if (Ph is { } ph) conditions.Add(new("pH", medium.Ph, ph, ""));
        if (CalciumMilligramsPerGram is { } calcium) conditions.Add(new("calcium to the agent", medium.CalciumMilligramsPerGram, calcium, "mg/g"));
        return conditions;
    }

    private static IReadOnlyList<Hydrocolloid> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Hydrocolloid[] agents = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new Hydrocolloid
        {
            Name = row.Required("agent"),
            DosePercent = row.RequiredRange("dose_low_percent", "dose_high_percent", 0, 100),
            DoseOf = row.Required("dose_of"),
            DissolvesAtCelsius = row.Number("dissolves_c", 0, 130),
            SetsAtCelsius = row.Range("sets_low_c", "sets_high_c", -20, 130),
            MeltsAtCelsius = row.Range("melts_low_c", "melts_high_c", -20, 130),
            MeltsAboveSettingKelvin = row.Range("melts_above_setting_low_k", "melts_above_setting_high_k", 0, 60),
            SolubleSolidsPercent = row.Range("solids_low_percent", "solids_high_percent", 0, 100),
            Ph = row.Range("ph_low", "ph_high", 0, 14),
            CalciumMilligramsPerGram = row.Range("calcium_low_mg_g", "calcium_high_mg_g", 0, 1000),
            Needs = row.Row["needs"],
            Avoid = row.Row["avoid"],
            Source = PhysicsData.SourceOf(row.Row, problems),
        })];
        return problems is [] ? agents : throw new TableException(problems);
    }
}
