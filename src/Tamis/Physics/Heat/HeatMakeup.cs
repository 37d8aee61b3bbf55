using Tamis.Losses;
using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>What a mixture is to heat, as far as its data tell.</summary>
/// <param name="Shares">Water, protein, fat, carbohydrate, fibre and ash; null where too little is known.</param>
/// <param name="AssumedPercent">The part of the mass whose nature is not known and that counts as carbohydrate, %.</param>
/// <param name="Lacks">What would have to be known; empty where <paramref name="Shares"/> are there.</param>
public sealed record HeatMakeup(Proximates? Shares, double AssumedPercent, IReadOnlyList<string> Lacks)
{
    private const string File = "balance-proximates.csv";
    private static readonly double MostAssumedPercent = PhysicsData.Kit.Constant("most unknown mass for thermal properties").Value;
    private static readonly Lazy<IReadOnlyDictionary<BalancePart, Proximates>> Shipped = new(() => ReadParts(PhysicsData.Kit.Table(File)));

    /// <summary>From a balance: each part counts as what it consists of; the rest, if small, as carbohydrate.</summary>
    /// <remarks>What the data do not know lies in the rest. Water must be known for all of it, and the rest may be a tenth of the mass at most.</remarks>
    public static HeatMakeup Of(Balance balance)
    {
        if (!(balance.FinishedGrams > 0)) return new(null, 0, ["a mass above 0 g"]);
        if (!balance[BalancePart.Water].IsWhole) return new(null, 0, ["the water of every ingredient"]);
        var grams = new double[(int)ThermalComponent.Ice];
        var known = 0.0;
        foreach (var (part, makeup) in Shipped.Value)
        {
            // Published analyses may leave a part a hair below zero.
            var mass = Math.Max(0, balance[part].Known);
            known += mass;
            for (var c = ThermalComponent.Water; c < ThermalComponent.Ice; c++) grams[(int)c] += mass * makeup.Share(c);
        }
        var rest = Math.Max(0, balance.FinishedGrams - known);
        var percent = rest / balance.FinishedGrams * 100;
        if (percent > MostAssumedPercent) return new(null, percent, [$"more of the composition: the nature of {NumberText.Write(Math.Round(percent), '.')} % of the mass is not known"]);
        grams[(int)ThermalComponent.Carbohydrate] += rest;
        return new(Proximates.FromGrams(grams[0], grams[1], grams[2], grams[3], grams[4], grams[5]), percent, []);
    }

    /// <summary>From what was weighed in, less what left.</summary>
    public static HeatMakeup Of(Mixture mixture) => Of(Balance.Of(mixture));

    /// <summary>Reads what each part of a balance consists of.</summary>
    /// <exception cref="TableException">A cell cannot be read, a part stands twice or is missing; all are named.</exception>
    public static IReadOnlyDictionary<BalancePart, Proximates> ReadParts(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Dictionary<BalancePart, Proximates> parts = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            reader.Required("part");
            double Share(string column) => reader.RequiredNumber(column, 0, 100);
            double[] shares = [Share("water"), Share("protein"), Share("fat"), Share("carbohydrate"), Share("fibre"), Share("ash")];
            if (reader.Choice("part", BalanceParts.ByWord) is not { } part || shares.Any(double.IsNaN)) continue;
            if (Math.Abs(shares.Sum() - 100) > 1e-6) problems.Add(row.Problem("carbohydrate", "six percentages that sum to 100"));
            else if (!parts.TryAdd(part, Proximates.FromGrams(shares[0], shares[1], shares[2], shares[3], shares[4], shares[5]))) problems.Add(row.Problem("part", "a part that no other row has"));
        }
        problems.AddRange(BalanceParts.Known.Where(part => problems.Count == 0 && !parts.ContainsKey(part)).Select(part => new CellProblem(sheet.File, 0, "part", "", $"a row for {BalanceParts.Word(part)} is wanted")));
        return problems.Count == 0 ? parts : throw new TableException(problems);
    }
}
