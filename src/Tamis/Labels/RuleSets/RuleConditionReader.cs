using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Reads <c>conditions.csv</c>, the conditions that bands of <c>rounding.csv</c> hang on.</summary>
internal static class RuleConditionReader
{
    public const string File = "conditions.csv";

    private static readonly Dictionary<string, ConditionTest> Tests = new(Names.Comparer)
    {
        ["below"] = ConditionTest.Below,
        ["at most"] = ConditionTest.AtMost,
        ["declared as 0"] = ConditionTest.DeclaredAsZero,
        ["meets"] = ConditionTest.Meets,
    };

    private static readonly Dictionary<string, bool> Scopes = new(Names.Comparer) { ["serving"] = false, ["serving and reference amount"] = true };

    public static IReadOnlyList<RuleCondition> Read(RuleFolder folder, IReadOnlyList<DeclaredFigure> declaration, IReadOnlyList<EnergyFactor> energy, List<CellProblem> problems)
    {
        var rows = folder.RowsIfAny(File, ["condition", "of", "test", "limit", "energy_factor", "per"], problems);
        HashSet<string> named = new(rows.Select(row => row.Cells.Text("condition") ?? ""), Names.Comparer);
        RuleCondition[] conditions = [.. rows.Select(row => Condition(row, declaration, energy, named))];
        problems.AddRange(Rings(conditions).Select(name => new CellProblem(File, 0, "of", name, "a condition that does not ask for itself")));
        return conditions;
    }

    private static RuleCondition Condition(RuleRow row, IReadOnlyList<DeclaredFigure> declaration, IReadOnlyList<EnergyFactor> energy, HashSet<string> named)
    {
        var test = row.Choice("test", Tests);
        var of = row.Cells.Words("of");
        var needsLimit = test is ConditionTest.Below or ConditionTest.AtMost;
        if (needsLimit && row.Decimal("limit") is null) row.Cells.Note("limit", "a number of 0 or more with a decimal point");
        string[] known = test == ConditionTest.Meets ? [.. named] : [.. declaration.Select(figure => figure.Key)];
        if (of.Count == 0) row.Cells.Required("of");
        foreach (var name in of.Where(name => !known.Contains(name, Names.Comparer)))
            row.Cells.Note("of", $"{(test == ConditionTest.Meets ? "conditions of this file" : "lines of declaration.csv")}; near ones: {string.Join(", ", Names.Nearest(name, known))}");
        var factor = row.Cells.Text("energy_factor");
        var energyFactor = energy.FirstOrDefault(one => Names.Same(one.Key, factor));
        if (factor is not null && energyFactor?.KilocaloriesPerGram is null) row.Cells.Note("energy_factor", "a factor of energy-factors.csv that has kilocalories, or a blank");
        return new()
        {
            Name = row.Cells.Required("condition"),
            Of = of,
            Test = test,
            Limit = (double?)row.Decimal("limit"),
            EnergyFactor = energyFactor,
            InReferenceAmountToo = needsLimit && row.Choice("per", Scopes),
            Origin = row.Origin(),
            InForce = row.InForce(),
        };
    }

    private static IEnumerable<string> Rings(IReadOnlyList<RuleCondition> conditions) =>
        conditions.Select(condition => condition.Name).Distinct(Names.Comparer).Where(name => Reaches(name, name, conditions, []));

    private static bool Reaches(string from, string name, IReadOnlyList<RuleCondition> conditions, HashSet<string> seen) =>
        conditions.Where(condition => condition.Test == ConditionTest.Meets && Names.Same(condition.Name, from)).SelectMany(condition => condition.Of)
            .Any(next => Names.Same(next, name) || seen.Add(Names.Key(next)) && Reaches(next, name, conditions, seen));
}
