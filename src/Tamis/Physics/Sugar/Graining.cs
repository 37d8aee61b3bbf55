using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>How far a solution is beyond what it can hold, and what that means.</summary>
/// <param name="SupersaturationRatio">Sucrose to water over that of a saturated solution at the temperature; 1 is saturated.</param>
/// <param name="Risk">None, low, middle or high.</param>
/// <param name="WhatToDo">What a cook does about it.</param>
/// <param name="Source">Who says so.</param>
public sealed record Graining(Predicted SupersaturationRatio, string Risk, string WhatToDo, Source Source)
{
    /// <summary>Sucrose to water over that of a saturated solution; 1 is saturated.</summary>
    /// <param name="sucroseGrams">Sucrose.</param>
    /// <param name="waterGrams">Water, above zero.</param>
    /// <param name="solubilityGramsPer100GramsWater">What 100 g of water hold.</param>
    public static double Supersaturation(double sucroseGrams, double waterGrams, double solubilityGramsPer100GramsWater) => sucroseGrams / waterGrams / (solubilityGramsPer100GramsWater / 100);

    /// <summary>The risk for a mass of sucrose in water at a temperature. Other sugars slow the grain and are not counted: a syrup with glucose syrup grains less than this says.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A mass is negative, there is no water, or the temperature lies below absolute zero.</exception>
    public static Graining Of(double sucroseGrams, double waterGrams, double celsius, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        ArgumentOutOfRangeException.ThrowIfNegative(sucroseGrams);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(waterGrams);
        Source asked = new("as asked", Evidence.Sheet);
        var solubility = Solubility.Sucrose(celsius, data);
        var ratio = Predicted.From(data.Equation("supersaturation"),
            [new("sucrose", sucroseGrams, "g", asked), new("water", waterGrams, "g", asked), new("solubility", Solubility.Per100GramsWater(solubility.Value), "g/100 g", solubility.Equation.Source), Temperature.Given(celsius)],
            given => Supersaturation(given[0], given[1], given[2]));
        List<CellProblem> problems = [];
        foreach (var row in data.Table("sugar-graining.csv").Rows)
        {
            var reader = new RowReader(row, problems);
            var (from, to) = (reader.RequiredNumber("from", 0), reader.RequiredNumber("to", 0));
            if (problems.Count == 0 && ratio.Value >= from && ratio.Value <= to) return new(ratio, row["risk"], row["what_to_do"], PhysicsData.SourceOf(row, problems));
        }
        throw new TableException([.. problems, new("sugar-graining.csv", 0, "to", "", FormattableString.Invariant($"rows that reach to {ratio.Value:0.##}"))]);
    }
}
