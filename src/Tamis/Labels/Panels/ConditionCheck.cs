namespace Tamis.Labels;

/// <summary>Whether the conditions of a rule set are met by what a nutrition panel speaks of; each is worked out once, when a band asks for it.</summary>
/// <remarks>A condition that hangs on an amount that is not known is not met: a law's favour is never taken on a guess.</remarks>
internal sealed class ConditionCheck(NutritionPanel panel, IReadOnlyCollection<string> shown)
{
    private readonly Dictionary<string, bool> _met = new(Names.Comparer);

    /// <summary>Whether a condition is met; one that no row is in force for is not.</summary>
    public bool IsMet(string name)
    {
        if (_met.TryGetValue(name, out var known)) return known;
        RuleCondition[] rows = [.. panel.Rules.Conditions.Where(condition => Names.Same(condition.Name, name))];
        return _met[name] = rows.Length > 0 && Array.TrueForAll(rows, Holds);
    }

    /// <summary>The conditions that were asked for, each with whether it is met.</summary>
    public IReadOnlyDictionary<string, bool> Asked => _met;

    private bool Holds(RuleCondition condition) => condition.Test switch
    {
        ConditionTest.Meets => condition.Of.All(IsMet),
        ConditionTest.DeclaredAsZero => condition.Of.All(IsZeroOrOmitted),
        _ => Masses(condition).All(massGrams => IsWithin(condition, massGrams)),
    };

    private IEnumerable<double> Masses(RuleCondition condition) =>
        condition.InReferenceAmountToo && panel.Basis.ReferenceGrams is { } reference ? [panel.BasisGrams, reference] : [panel.BasisGrams];

    private bool IsWithin(RuleCondition condition, double massGrams)
    {
        var sum = 0.0;
        foreach (var key in condition.Of)
        {
            if (panel.InWhole(panel.Rules.Figure(key)) is not { } amount) return false;
            sum += amount * massGrams / panel.Mixture.FinishedGrams;
        }
        if (condition.EnergyFactor is { } factor)
        {
            if (EnergyKilocalories(massGrams) is not { } energy) return false;
            sum = energy > 0 ? sum * factor.KilocaloriesPerGram!.Value / energy * 100 : 0;
        }
        return condition.Test == ConditionTest.Below ? sum < condition.Limit : sum <= condition.Limit;
    }

    private double? EnergyKilocalories(double massGrams)
    {
        var line = panel.Rules.Declaration.FirstOrDefault(figure => figure is { IsEnergy: true, Unit: not "kJ" });
        return line is not null && panel.InWhole(line) is { } amount ? amount * massGrams / panel.Mixture.FinishedGrams : null;
    }

    private bool IsZeroOrOmitted(string key)
    {
        var figure = panel.Rules.Figure(key);
        if (!shown.Contains(figure.Key)) return true;
        return panel.InWhole(figure) is { } amount
            && panel.Rules.Rounding.Round(figure.Key, figure.Unit, RoundingTable.ToDecimal(amount * panel.BasisGrams / panel.Mixture.FinishedGrams), IsMet).IsZero;
    }
}
