namespace Tamis.Labels;

/// <summary>Holds the sums of one formula after another against what a panel asks: which figures are known well enough, which conditions are met, what is printed.</summary>
/// <remarks>The same answers as <see cref="ConditionCheck"/> and the rounding table, or none: null where the sums lie so near a limit that the panel itself has to say.</remarks>
internal sealed class FormulaCheck(BlockPlan plan, PanelRoom room, RuleSet rules, PanelBasis basis)
{
    /// <summary>By what share sums of the same masses in another order may differ in their last digits, with room to spare.</summary>
    public const double Hair = 1e-9;

    private readonly double _askedShare = rules.KnownSharePercent / 100;
    private readonly (bool IsAsked, bool? IsMet)[] _conditions = new (bool, bool?)[plan.Conditions.Count];
    private int _first;
    private double _total;
    private double? _referenceTimes;

    /// <summary>Goes on to a formula of the block, whose amounts stand in the room.</summary>
    /// <param name="formula">Its place in the block.</param>
    /// <param name="basisGrams">The mass that its panel speaks of, in grams.</param>
    public void Start(int formula, double basisGrams)
    {
        (_first, _total) = (formula * room.Stride, room.TotalGrams[formula]);
        _referenceTimes = basis.ReferenceGrams / basisGrams;
        Array.Clear(_conditions);
    }

    /// <summary>What is printed for a figure that is known.</summary>
    public PrintedStep? StepOf(int column)
    {
        var (own, amount) = (plan.Columns[column], room.Amounts[_first + column]);
        if (own.Steps?.For(amount) is { } printed) return printed;
        if (own.StepsByMet.Length == 0) return null;
        var met = 0;
        for (var at = 0; at < own.Conditions.Length; at++)
        {
            if (IsMet(own.Conditions[at]) is not { } isMet) return null;
            if (isMet) met |= 1 << at;
        }
        return own.StepsByMet[met].For(amount);
    }

    /// <summary>Whether the parts that a figure is the sum of are all known and declared as zero.</summary>
    /// <returns>Not where there are none, which is a sum of nothing.</returns>
    public bool? AreDeclaredAsZero(int[] columns) => columns.Length == 0 ? false : AllAreZero(columns);

    private bool? AllAreZero(int[] columns)
    {
        foreach (var column in columns)
        {
            if (IsKnown(column) is not true and var known) return known;
            if (StepOf(column) is not { } printed) return null;
            if (!printed.IsZero) return false;
        }
        return true;
    }

    private bool? IsKnown(int column)
    {
        var (covered, least, hair) = (room.CoveredGrams[_first + column], _total * _askedShare, _total * Hair);
        if (covered < least - hair) return false;
        // A share that is all by a hair is all; any other that is asked for is decided by the panel's own sum.
        return covered < least + hair && _askedShare < 1 ? null : true;
    }

    private bool? IsMet(int condition)
    {
        if (_conditions[condition] is { IsAsked: true } known) return known.IsMet;
        bool? isMet = plan.Conditions[condition].Length > 0;
        foreach (var requirement in plan.Conditions[condition])
            if ((isMet = Holds(requirement)) != true) break;
        _conditions[condition] = (true, isMet);
        return isMet;
    }

    private bool? Holds(RequirementPlan requirement)
    {
        switch (requirement.Row.Test)
        {
            case ConditionTest.Meets:
                foreach (var condition in requirement.Conditions)
                    if (IsMet(condition) is not true and var isMet) return isMet;
                return true;
            case ConditionTest.DeclaredAsZero: return AllAreZero(requirement.Columns);
            default: return IsWithin(requirement);
        }
    }

    private bool? IsWithin(RequirementPlan requirement)
    {
        var sum = 0.0;
        foreach (var column in requirement.Columns)
        {
            if (IsKnown(column) is not true and var known) return known;
            sum += room.Amounts[_first + column];
        }
        if (IsWithin(requirement.Row, sum, 1) is not true and var isWithin) return isWithin;
        return requirement.Row.InReferenceAmountToo && _referenceTimes is { } times ? IsWithin(requirement.Row, sum, times) : true;
    }

    private bool? IsWithin(RuleCondition row, double sum, double times)
    {
        var amount = sum * times;
        if (row.EnergyFactor is { } factor)
        {
            if (plan.EnergyColumn is not { } column) return false;
            if (IsKnown(column) is not true and var known) return known;
            var energy = room.Amounts[_first + column] * times;
            if (energy != 0 && Math.Abs(energy) < Hair) return null;
            amount = energy > 0 ? amount * factor.KilocaloriesPerGram!.Value / energy * 100 : 0;
        }
        var limit = row.Limit!.Value;
        return Math.Abs(amount - limit) <= Hair * Math.Max(1, limit) ? null : amount < limit;
    }
}
