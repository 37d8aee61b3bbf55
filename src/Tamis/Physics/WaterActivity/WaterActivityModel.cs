using System.Globalization;

namespace Tamis.Physics;

/// <summary>One way to predict the water activity of a solution: its equation, and what a solution must be for it to hold.</summary>
/// <param name="Name">The model's name.</param>
/// <param name="EquationKey">Its equation in <c>equations-water-activity.csv</c>.</param>
/// <param name="Compute">The water activity of a solution.</param>
/// <param name="Misfits">Sentences for what the model is not made for; none where the solution suits it.</param>
public sealed record WaterActivityModel(string Name, Func<Solution, string> EquationKey, Func<Solution, double> Compute, Func<Solution, double, IEnumerable<string>> Misfits)
{
    /// <summary>The models, in the order in which one that holds is chosen: what is made for exactly this solution first, then the most general, then what serves below the range of the others.</summary>
    public static IReadOnlyList<WaterActivityModel> All { get; } =
    [
        new("Pitzer", _ => "pitzer", PitzerAlone, (solution, _) => [.. SaltAlone(solution), .. SaltRange(solution)]),
        new("Norrish", NorrishKey, solution => Norrish.SquareRoot(solution.WaterMoles, solution.Moles, solution.NorrishConstants) * Salt(solution), NorrishMisfits),
        new("Norrish with a mean constant", _ => "norrish mean constant", solution => Norrish.MeanConstant(solution.WaterMoles, solution.Moles, solution.NorrishConstants) * Salt(solution), NorrishMisfits),
        new("Ross", _ => "ross", RossOfBinaries, NorrishMisfits),
        new("Chen", _ => "chen", ChenOfBinaries, ChenMisfits),
        new("Money and Born", _ => "money and born", solution => SimpleModels.MoneyAndBorn(solution.ParticleMoles / solution.WaterGrams * 100, Constant(solution, "money and born factor")), MoneyAndBornMisfits),
        new("Grover", _ => "grover", solution => SimpleModels.Grover(GroverEquivalent(solution), Constant(solution, "grover constant term"), Constant(solution, "grover linear term"), Constant(solution, "grover quadratic term")), (solution, _) =>
            Sentences(solution.Table.Data.Equation("grover").Valid[0].Outside(GroverEquivalent(solution)))),
        new("Raoult", _ => "raoult", solution => SimpleModels.Raoult(solution.WaterMoles, solution.ParticleMoles), (solution, value) => Range(solution, "raoult", value)),
    ];

    /// <summary>What this model says of a solution, with what it is not made for in <see cref="Predicted.Outside"/>.</summary>
    public Predicted Of(Solution solution)
    {
        var equation = solution.Table.Data.Equation(EquationKey(solution));
        if (solution.Lacks.Count > 0) return Predicted.Unknown(equation, solution.Lacks);
        var value = Compute(solution);
        return Predicted.Computed(equation, value, () => [new("water", solution.WaterGrams, "g", Sum), .. solution.Solutes.Select(each => new Working($"{each.Solute.Name}, dissolved", each.Grams, "g", each.Solute.Source))])
            with { Outside = [.. Misfits(solution, value)] };
    }

    /// <summary>How much water the solutes of a solution hold at a water activity, by this model, in grams: the same solutes, more or less water.</summary>
    /// <param name="solution">The solutes; its own water does not count.</param>
    /// <param name="waterActivityRatio">Above 0 and under 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">It does not lie between 0 and 1.</exception>
    public double WaterGramsAt(Solution solution, double waterActivityRatio)
    {
        if (!(waterActivityRatio > 0 && waterActivityRatio < 1)) throw new ArgumentOutOfRangeException(nameof(waterActivityRatio), waterActivityRatio, "A water activity lies between 0 and 1.");
        if (solution.SoluteGrams <= 0) return 0;
        return Math.Exp(Roots.Bisect(logWater => Compute(solution.WithWater(Math.Exp(logWater))) - waterActivityRatio, Math.Log(solution.SoluteGrams * 1e-4), Math.Log(solution.SoluteGrams * 1e6)));
    }

    private static readonly Source Sum = new("balance of the mixture", Evidence.Computed);

    private static double Constant(Solution solution, string name) => solution.Table.Data.Constant(name).Value;

    private static double Salt(Solution solution) => solution.SaltMoles > 0 ? PitzerAlone(solution) : 1;

    private static double PitzerAlone(Solution solution) => Salts.PitzerWaterActivity(solution.SaltMolality,
        Constant(solution, "pitzer beta0 of sodium chloride"), Constant(solution, "pitzer beta1 of sodium chloride"), Constant(solution, "pitzer c of sodium chloride"));

    private static double RossOfBinaries(Solution solution)
    {
        Span<double> alone = stackalloc double[solution.Moles.Length + 1];
        for (var i = 0; i < solution.Moles.Length; i++) alone[i] = Norrish.WaterActivity(solution.WaterMoles, solution.Moles[i], solution.NorrishConstants[i]);
        alone[^1] = Salt(solution);
        return SimpleModels.Ross(alone);
    }

    private static double ChenOfBinaries(Solution solution)
    {
        var product = 1.0;
        foreach (var each in solution.Solutes)
            product *= each.Solute.Chen is { } chen ? SimpleModels.Chen(each.Moles / solution.WaterGrams * 1000, chen.Beta, chen.B, chen.N) : 1;
        return product;
    }

    private static double GroverEquivalent(Solution solution) =>
        (solution.SwellingEquivalentGrams + solution.Solutes.Sum(each => each.Solute.Part is { } part ? each.Grams * solution.Table.GroverFactors.GetValueOrDefault(part) : 0)) / solution.WaterGrams;

    // Polyols were tested further down than sugars.
    private static string NorrishKey(Solution solution) => solution.Solutes.Count == 0 || solution.Solutes.Any(each => !each.Solute.IsPolyol)
        ? solution.Solutes.Count == 1 ? "norrish" : "norrish square root" : "norrish polyols";

    private static IEnumerable<string> NorrishMisfits(Solution solution, double value) => [.. Range(solution, NorrishKey(solution), value), .. SaltRange(solution)];

    private static IEnumerable<string> ChenMisfits(Solution solution, double value)
    {
        if (solution.Solutes.Where(each => each.Solute.Chen is null).Sum(each => each.Moles) is var other && other > 0.01 * solution.ParticleMoles)
            yield return string.Create(CultureInfo.InvariantCulture, $"{other / solution.ParticleMoles * 100:0} % of what is dissolved, by number, has no constants of this model");
        foreach (var each in solution.Solutes)
            if (each.Solute.Chen is { } chen && each.Moles / solution.WaterGrams * 1000 is var molality && molality > chen.MostMolality)
                yield return string.Create(CultureInfo.InvariantCulture, $"{each.Solute.Name} is {molality:0.#} mol/kg, the equation holds to {chen.MostMolality:0.#} mol/kg");
    }

    private static IEnumerable<string> MoneyAndBornMisfits(Solution solution, double value)
    {
        var other = solution.Solutes.Where(each => !each.Solute.IsSaccharide).Sum(each => each.Moles);
        if (other > 0.05 * solution.ParticleMoles) yield return string.Create(CultureInfo.InvariantCulture, $"{other / solution.ParticleMoles * 100:0} % of what is dissolved, by number, is no sugar");
        foreach (var sentence in Range(solution, "money and born", value)) yield return sentence;
    }

    private static IEnumerable<string> SaltAlone(Solution solution) =>
        solution.SaltMoles > 0 && solution.Solutes.All(each => each.Solute.IsSalt) ? [] : ["it is for salt in water alone"];

    private static IEnumerable<string> SaltRange(Solution solution) => solution.SaltMoles > 0 ? Sentences(solution.Table.Data.Equation("pitzer").Valid[0].Outside(solution.SaltMolality)) : [];

    private static IEnumerable<string> Range(Solution solution, string key, double value) => Sentences(solution.Table.Data.Equation(key).Valid[0].Outside(value));

    private static IEnumerable<string> Sentences(string? sentence) => sentence is null ? [] : [sentence];
}
