using Tamis.Composition;

namespace Tamis.Labels;

/// <summary>How one figure of many panels finds its text.</summary>
/// <param name="Figure">The figure.</param>
internal sealed record ColumnPlan(DeclaredFigure Figure)
{
    /// <summary>Whether it is shown only where it is not declared as zero, or was added.</summary>
    public bool IsShownIfPresent { get; } = Figure.Shown == LineShown.IfPresent;

    /// <summary>Whether only the panel itself can say.</summary>
    public bool NeedsPanel { get; init; }

    /// <summary>Its bands, what hangs on a condition left open; null where only its percentage is printed.</summary>
    public BandSteps? Steps { get; init; }

    /// <summary>The conditions that its bands hang on, by their places in <see cref="BlockPlan.Conditions"/>.</summary>
    public int[] Conditions { get; init; } = [];

    /// <summary>Its bands for every way in which those may be met: bit n of the place says whether condition n is. Empty where none hangs on one.</summary>
    public BandSteps[] StepsByMet { get; init; } = [];

    /// <summary>The bands of its percentage; null where there is none, or it is that of the declared number.</summary>
    public BandSteps? PercentSteps { get; init; }

    /// <summary>The same where the amount is declared as zero.</summary>
    public BandSteps? PercentStepsOfZero { get; init; }

    /// <summary>What a unit of the amount is of the reference value, in per cent.</summary>
    public double PercentPerUnit { get; init; }

    /// <summary>Whether the percentage is that of the declared number.</summary>
    public bool PercentIsOfDeclared { get; init; }

    /// <summary>The lines that it is the sum of, where only its percentage is printed: declared as zero where all of them are.</summary>
    public int[] Parts { get; init; } = [];
}

/// <summary>One requirement of a condition, over columns.</summary>
/// <param name="Row">The requirement.</param>
/// <param name="Columns">The figures that it sums or holds against zero; those that no panel shows are left out where they need only not be shown.</param>
/// <param name="Conditions">The conditions that it asks to be met.</param>
internal sealed record RequirementPlan(RuleCondition Row, int[] Columns, int[] Conditions);

/// <summary>What the panels of a rule set look at: its figures, and the further ones that conditions of its bands ask for.</summary>
internal sealed class BlockPlan
{
    // Bands of one figure that hang on more conditions than this are left to the panel itself.
    private const int MostConditions = 4;

    private readonly RuleSet _rules;
    private readonly List<DeclaredFigure> _figures;
    private readonly List<RequirementPlan[]> _conditions = [];
    private readonly Dictionary<string, int> _places = new(Names.Comparer);

    /// <summary>Looks through a rule set.</summary>
    /// <param name="rules">The rules, those in force.</param>
    /// <param name="figures">The figures that are shown; they come first.</param>
    public BlockPlan(RuleSet rules, IEnumerable<DeclaredFigure> figures)
    {
        (_rules, _figures) = (rules, [.. figures]);
        Shown = _figures.Count;
        EnergyColumn = rules.Conditions.Any(condition => condition.EnergyFactor is not null) && rules.Declaration.FirstOrDefault(figure => figure is { IsEnergy: true, Unit: not "kJ" }) is { } energy ? PlaceOf(energy) : null;
        List<ColumnPlan> columns = [];
        // A column may ask for conditions, and these for more columns.
        while (columns.Count < _figures.Count) columns.Add(PlanOf(_figures[columns.Count], isShown: columns.Count < Shown));
        Columns = [.. columns];
    }

    /// <summary>The figures that are shown, and behind them those that only conditions look at.</summary>
    public ColumnPlan[] Columns { get; }

    /// <summary>How many of them are shown.</summary>
    public int Shown { get; }

    /// <summary>The conditions that bands hang on, with their requirements: all must hold, and one without any is not met.</summary>
    public IReadOnlyList<RequirementPlan[]> Conditions => _conditions;

    /// <summary>The column of the energy in kilocalories, by which a condition may take a share; null where there is none.</summary>
    public int? EnergyColumn { get; }

    private ColumnPlan PlanOf(DeclaredFigure figure, bool isShown)
    {
        string[] hanging = [.. ConditionsOf(figure.Key, figure.Unit)];
        var reference = isShown && _rules.Reference(figure.Key, figure.Unit) is { Shown: not PercentShown.No } shown ? shown : null;
        var isOfDeclared = reference is { PercentFrom: PercentFrom.Declared };
        string? PercentOf(RoundedAmount rounded) => isOfDeclared && rounded.ShownNumber is { } number ? _rules.Percent(reference!, (double)number, rounded).Text : null;
        BandSteps StepsFor(IReadOnlySet<string>? met) => new(_rules.Rounding, figure.Key, figure.Unit, PercentOf, met);
        BandSteps PercentsFor(bool isZero) => new(_rules.Rounding, reference!.PercentRounding, "%", _ => null, isZero ? Set([RuleSetChecks.DeclaredAsZero]) : Set([]));
        // What was added of a figure stands behind it in brackets, a text of two amounts.
        // A percentage alone that is left off where it is zero is looked at as it is printed.
        var needsPanel = isShown && (figure.Added is not null || figure is { IsPercentOnly: true, Shown: LineShown.IfPresent }) || hanging.Length > MostConditions || hanging.Contains(RuleSetChecks.DeclaredAsZero)
            || reference is not null && ConditionsOf(reference.PercentRounding, "%").Any(condition => condition != RuleSetChecks.DeclaredAsZero)
            || figure.IsPercentOnly && (reference is null || isOfDeclared || _rules.Rounding.For(figure.Key, figure.Unit).Any());
        if (needsPanel) return new(figure) { NeedsPanel = true };
        return new(figure)
        {
            Steps = figure.IsPercentOnly ? null : StepsFor(null),
            Conditions = [.. hanging.Select(ConditionAt)],
            StepsByMet = hanging.Length == 0 ? [] : [.. Enumerable.Range(0, 1 << hanging.Length).Select(met => StepsFor(Set(hanging.Where((_, at) => (met >> at & 1) == 1))))],
            PercentSteps = reference is null || isOfDeclared ? null : PercentsFor(isZero: false),
            PercentStepsOfZero = reference is null || isOfDeclared ? null : PercentsFor(isZero: true),
            PercentPerUnit = reference is null ? 0 : 100 / reference.Value,
            PercentIsOfDeclared = isOfDeclared,
            Parts = figure.IsPercentOnly ? [.. figure.Parts.Select(part => PlaceOf(_rules.Figure(part)))] : [],
        };
    }

    private static IReadOnlySet<string> Set(IEnumerable<string> names) => new HashSet<string>(names, Names.Comparer);

    private IEnumerable<string> ConditionsOf(string key, string unit) => _rules.Rounding.For(key, unit).Select(band => band.If).Where(condition => condition.Length > 0).Distinct(Names.Comparer);

    private int PlaceOf(DeclaredFigure figure)
    {
        if (_figures.FindIndex(each => ReferenceEquals(each, figure)) is var place and >= 0) return place;
        _figures.Add(figure);
        return _figures.Count - 1;
    }

    private int ConditionAt(string name)
    {
        if (_places.TryGetValue(name, out var known)) return known;
        var place = _places[name] = _conditions.Count;
        _conditions.Add([]);
        _conditions[place] = [.. _rules.Conditions.Where(condition => Names.Same(condition.Name, name)).Select(row => row.Test == ConditionTest.Meets
            ? new RequirementPlan(row, [], [.. row.Of.Select(ConditionAt)])
            : new(row, [.. row.Of.Select(key => _rules.Figure(key)).Where(figure => row.Test != ConditionTest.DeclaredAsZero || IsShown(figure)).Select(PlaceOf)], []))];
        return place;
    }

    private bool IsShown(DeclaredFigure figure) => _figures.Take(Shown).Any(each => each.Key == figure.Key);
}
