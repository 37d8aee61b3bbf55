using Google.OrTools.LinearSolver;
using Tamis.Losses;

namespace Tamis.Production;

/// <summary>The whole numbers behind amounts: pieces and makes, by mixed integer programming.</summary>
/// <remarks>
/// For each component a factor of its formula and a whole number of makes. What is made covers what pieces and other components take; each make
/// holds at least what its equipment needs and at most what that holds. Least left over by mass, then fewest makes; in the reverse, most pieces first.
/// </remarks>
internal static class AmountsModel
{
    private const int MostMakes = 1000, MostPieces = 1_000_000;
    private const double OfAMake = 1e-3, Tolerance = 1e-7;

    /// <summary>How many pieces, and how many makes of each component.</summary>
    /// <exception cref="ArgumentException">There is nothing to count pieces by.</exception>
    /// <exception cref="OrderException">No amounts meet all limits.</exception>
    public static (int Pieces, IReadOnlyDictionary<string, int> Makes) Solve(AmountsRequest request, IReadOnlyList<ComponentBatch> order, IReadOnlyDictionary<string, double> pieceGrams)
    {
        foreach (var had in request.Have)
            if (!order.Any(component => Names.Same(component.Name, had.Key)))
                throw new ArgumentException($"The trial has no component '{had.Key}'; it has {string.Join(", ", order.Select(component => component.Name))}.");
        if (request.Pieces is null && !order.Any(component => request.Have.Keys.Contains(component.Name, Names.Comparer) && Reaches(order, component.Name, pieceGrams, [])))
            throw new ArgumentException("How many pieces can be made is asked of something that goes into them.");

        using var solver = Solver.CreateSolver("SCIP") ?? throw new InvalidOperationException("The solver for whole numbers (SCIP of Google.OrTools) could not be loaded.");
        var pieces = solver.MakeIntVar(request.Pieces ?? 0, request.Pieces ?? MostPieces, "pieces");
        var factors = order.ToDictionary(each => each.Name, each => solver.MakeNumVar(0, IsAllThereIs(request, each.Name) ? 0 : double.PositiveInfinity, each.Name), Names.Comparer);
        var makes = order.ToDictionary(each => each.Name, each => solver.MakeIntVar(0, MostMakes, each.Name + " makes"), Names.Comparer);
        var left = new LinearExpr();
        foreach (var component in order)
        {
            var made = factors[component.Name] * component.YieldGrams + Had(request, component.Name);
            var used = pieces * (pieceGrams[component.Name] * (IsAllThereIs(request, component.Name) ? 1 : 1 + request.ReserveShare)) + Taken(order, component.Name, factors);
            solver.Add(made >= used);
            left += made - used;
            AddLimits(solver, request, component, factors[component.Name], makes[component.Name]);
        }
        var work = makes.Values.Aggregate(new LinearExpr(), (sum, each) => sum + each) * OfAMake;
        // A piece more is worth more than all that can be left over.
        solver.Minimize(request.Pieces is null ? left + work - pieces * (1e4 * (1 + order.Sum(each => pieceGrams[each.Name]))) : left + work);
        if (solver.Solve() is not Solver.ResultStatus.OPTIMAL)
            throw new OrderException($"No number of makes fits all equipment: {string.Join("; ", order.SelectMany(each => Impossible(request, each)))}.");
        return ((int)Math.Round(pieces.SolutionValue()), order.ToDictionary(each => each.Name, each => (int)Math.Round(makes[each.Name].SolutionValue()), Names.Comparer));
    }

    private static void AddLimits(Solver solver, AmountsRequest request, ComponentBatch component, Variable factor, Variable makes)
    {
        // No make, nothing made; the bound is beyond any kitchen.
        solver.Add(factor <= makes * 1e5);
        if (request.LeastMakesOf(component.Name) is { Makes: > 1 and var rounds })
        {
            var isMade = solver.MakeBoolVar(component.Name + " is made");
            solver.Add(factor <= isMade * 1e5);
            solver.Add(makes >= isMade * rounds);
        }
        foreach (var limit in request.LimitsOf(component.Name))
        {
            var pot = Amounts.InPotGrams(component, limit.Step);
            if (pot <= 0) continue;
            if (limit.LeastGrams is { } least) solver.Add(factor * pot >= makes * least);
            if (limit.MostGrams is { } most) solver.Add(factor * pot <= makes * (most * (1 + Tolerance)));
        }
        foreach (var (_, count) in Amounts.Whole(request, component)) solver.Add(factor * count >= makes);
    }

    private static IEnumerable<string> Impossible(AmountsRequest request, ComponentBatch component)
    {
        var limits = request.LimitsOf(component.Name).Where(limit => Amounts.InPotGrams(component, limit.Step) > 0).ToArray();
        foreach (var small in limits.Where(limit => limit.LeastGrams is not null))
            foreach (var large in limits.Where(limit => limit.MostGrams is not null))
                if (small.LeastGrams / Amounts.InPotGrams(component, small.Step) > large.MostGrams / Amounts.InPotGrams(component, large.Step))
                    yield return FormattableString.Invariant($"{component.Name}: the {small.Equipment} needs {small.LeastGrams:0} g, which is more than the {large.Equipment} holds ({large.MostGrams:0} g)");
        foreach (var (line, count) in Amounts.Whole(request, component))
            foreach (var large in limits.Where(limit => limit.MostGrams is not null))
                if (1 / count > large.MostGrams / Amounts.InPotGrams(component, large.Step))
                    yield return FormattableString.Invariant($"{component.Name}: one whole {line.Quantity.Unit} makes more than the {large.Equipment} holds ({large.MostGrams:0} g)");
    }

    private static LinearExpr Taken(IReadOnlyList<ComponentBatch> order, string name, IReadOnlyDictionary<string, Variable> factors) =>
        order.Select(each => factors[each.Name] * each.Lines.Where(line => line.IsComponent && Names.Same(line.Name, name)).Sum(line => line.MassGrams))
            .Aggregate(new LinearExpr(), (sum, each) => sum + each);

    private static bool Reaches(IReadOnlyList<ComponentBatch> order, string name, IReadOnlyDictionary<string, double> pieceGrams, HashSet<string> seen) =>
        seen.Add(name) && (pieceGrams[name] > 0 || order.Any(each => each.LineGrams(name) > 0 && Reaches(order, each.Name, pieceGrams, seen)));

    // Asked how far something goes, nobody makes more of it.
    internal static bool IsAllThereIs(AmountsRequest request, string component) => request.Pieces is null && request.Have.Keys.Contains(component, Names.Comparer);

    internal static double Had(AmountsRequest request, string component) => request.Have.Where(pair => Names.Same(pair.Key, component)).Sum(pair => pair.Value);
}
