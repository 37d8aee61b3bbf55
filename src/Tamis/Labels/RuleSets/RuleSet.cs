namespace Tamis.Labels;

/// <summary>One jurisdiction's rules for nutrition panels, as its folder of CSV files has them.</summary>
public sealed record RuleSet
{
    /// <summary>The folder's name: <c>eu</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The folder, for the tables that other parts of a label read.</summary>
    public required RuleFolder Folder { get; init; }

    /// <summary>The jurisdiction as a page says it.</summary>
    public required string Title { get; init; }

    /// <summary>The act.</summary>
    public required string Act { get; init; }

    /// <summary>What the panel is called on a pack.</summary>
    public required string DeclarationTitle { get; init; }

    /// <summary>Whether the law wants the panel per serving; otherwise it wants it per 100 g.</summary>
    public required bool IsPerServing { get; init; }

    /// <summary>The columns that the law asks for side by side, in order; one of them in most laws.</summary>
    public required IReadOnlyList<PanelColumn> Columns { get; init; }

    /// <summary>The languages of the words in the folder.</summary>
    public required IReadOnlyList<string> Languages { get; init; }

    /// <summary>Grams of protein to a gram of nitrogen that the law asks for; null where a protein is taken as its table publishes it.</summary>
    public required double? ProteinFactor { get; init; }

    /// <summary>The share of the mass, in per cent, for which a figure must be known to be printed.</summary>
    public required double KnownSharePercent { get; init; }

    /// <summary>The share of an amount, in per cent, whose spread must be known for its range to be shown.</summary>
    public required double KnownSpreadPercent { get; init; }

    /// <summary>The sentence that goes with percentages of reference values.</summary>
    public required string ReferenceStatement { get; init; }

    /// <summary>The settings of the rule set by their key, with where each came from.</summary>
    public required IReadOnlyDictionary<string, RuleOrigin> SettingOrigins { get; init; }

    /// <summary>When the rule set is in force.</summary>
    public required InForce InForce { get; init; }

    /// <summary>The lines in lawful order.</summary>
    public required IReadOnlyList<DeclaredFigure> Declaration { get; init; }

    /// <summary>The energy factors.</summary>
    public required IReadOnlyList<EnergyFactor> EnergyFactors { get; init; }

    /// <summary>The rounding rules.</summary>
    public required RoundingTable Rounding { get; init; }

    /// <summary>The conditions that some of the rounding rules hang on; none in most laws.</summary>
    public required IReadOnlyList<RuleCondition> Conditions { get; init; }

    /// <summary>Reference intakes or daily values.</summary>
    public required IReadOnlyList<ReferenceValue> ReferenceValues { get; init; }

    /// <summary>Reference amounts for servings; empty where the law has none.</summary>
    public required IReadOnlyList<ServingSize> Servings { get; init; }

    /// <summary>Reads a rule set from its folder.</summary>
    /// <exception cref="Tables.TableException">A file is missing or a cell cannot be read; all problems at once.</exception>
    public static RuleSet Load(string folder) => RuleSetReader.Read(folder);

    /// <summary>The rules that are in force on a day; with no day, those that have no end.</summary>
    /// <remarks>A table without a dated row is kept as it is, so that a panel of each day costs no more than its few dated rows.</remarks>
    public RuleSet AsOf(DateOnly? day)
    {
        var declaration = Declaration.All(row => row.InForce == Labels.InForce.Always && row.Summands.All(summand => summand.InForce == Labels.InForce.Always)) ? Declaration
            : [.. Declaration.Where(row => row.InForce.On(day)).Select(row => row with { Summands = [.. row.Summands.Where(summand => summand.InForce.On(day))] })];
        var (energy, bands) = (On(EnergyFactors, row => row.InForce), On(Rounding.Bands, row => row.InForce));
        var (references, conditions) = (On(ReferenceValues, row => row.InForce), On(Conditions, row => row.InForce));
        if (declaration == Declaration && energy == EnergyFactors && bands == Rounding.Bands && references == ReferenceValues && conditions == Conditions) return this;
        return this with
        {
            Declaration = declaration,
            EnergyFactors = energy,
            Rounding = bands == Rounding.Bands ? Rounding : new(bands, Rounding.KeepsClosingZeros),
            ReferenceValues = references,
            Conditions = conditions,
        };

        IReadOnlyList<T> On<T>(IReadOnlyList<T> rows, Func<T, InForce> inForce) => rows.All(row => inForce(row) == Labels.InForce.Always) ? rows : [.. rows.Where(row => inForce(row).On(day))];
    }

    /// <summary>The jurisdiction and its act.</summary>
    public override string ToString() => $"{Title}: {Act}";

    /// <summary>The line of this key, in this unit where one is given.</summary>
    /// <exception cref="KeyNotFoundException">The declaration has no such line.</exception>
    public DeclaredFigure Figure(string key, string? unit = null) =>
        Declaration.FirstOrDefault(figure => Names.Same(figure.Key, key) && (unit is null || figure.Unit == unit))
        ?? throw new KeyNotFoundException($"The rule set '{Name}' has no line '{key}'{(unit is null ? "" : $" in {unit}")}; near ones: {string.Join(", ", Names.Nearest(key, Declaration.Select(figure => figure.Key)))}.");

    /// <summary>The reference value of a figure in a unit, or null where there is none.</summary>
    public ReferenceValue? Reference(string key, string unit) => ReferenceValues.FirstOrDefault(row => Names.Same(row.Key, key) && row.Unit == unit);

    /// <summary>An amount as a percentage of its reference value, rounded for print.</summary>
    /// <param name="reference">The reference value.</param>
    /// <param name="amount">The amount, not rounded, in the unit of the reference value.</param>
    /// <param name="declared">The amount as the label declares it; without it, as the bands of the figure round it when no condition is met.</param>
    /// <remarks>Where the law takes the declared amount and the label shows words in its place (<c>less than 5 mg</c>), the amount before rounding counts.</remarks>
    public RoundedAmount Percent(ReferenceValue reference, double amount, RoundedAmount? declared = null)
    {
        if (declared is null && Rounding.For(reference.Key, reference.Unit).Any()) declared = Rounding.Round(reference.Key, reference.Unit, RoundingTable.ToDecimal(amount));
        var exact = RoundingTable.ToDecimal(amount);
        if (reference.PercentFrom == PercentFrom.Unrounded || declared?.ShownNumber is not { } shown) return PercentOf(exact);
        if (reference.PercentFrom == PercentFrom.Declared) return PercentOf(shown);
        var (first, other) = (PercentOf(exact), PercentOf(shown));
        return first with { Alternatives = [.. first.Alternatives.Append(other.Text).Concat(other.Alternatives).Where(text => text != first.Text).Distinct()] };

        RoundedAmount PercentOf(decimal from) => Rounding.Round(reference.PercentRounding, "%", from / RoundingTable.ToDecimal(reference.Value) * 100,
            condition => condition == RuleSetChecks.DeclaredAsZero && declared is { IsZero: true });
    }
}
