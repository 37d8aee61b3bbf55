namespace Tamis.Physics;

/// <summary>How sweet a mixture is beside sucrose.</summary>
/// <remarks>A plain sum: fructose with sucrose is a little sweeter than it says, fructose is sweeter cold than hot, acid and fat dull it. For comparing, not for tasting.</remarks>
public static class Sweetness
{
    private static readonly Source Sum = new("balance of the mixture", Evidence.Computed);

    /// <summary>Grams of sucrose that are as sweet: the sum of mass times relative sweetness.</summary>
    /// <param name="massGrams">The mass of each sweetener.</param>
    /// <param name="relative">The sweetness of each over that of as much sucrose.</param>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static double SucroseEquivalentGrams(ReadOnlySpan<double> massGrams, ReadOnlySpan<double> relative)
    {
        if (massGrams.Length != relative.Length) throw new ArgumentException($"{massGrams.Length} masses but {relative.Length} sweetnesses; give one sweetness a mass.", nameof(relative));
        var sum = 0.0;
        for (var i = 0; i < massGrams.Length; i++) sum += massGrams[i] * relative[i];
        return sum;
    }

    /// <summary>The sweetness of a mixture, as grams of sucrose in 100 g; its range is from the lowest to the highest figures of the texts.</summary>
    public static Predicted Of(Balance balance, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var equation = data.Equation("sweetness");
        if (!balance.Sugars.IsWhole) return Predicted.Unknown(equation, "sugars of every ingredient");
        if (!(balance.FinishedGrams > 0)) return Predicted.Unknown(equation, "a finished mass");
        Sweetener[] present = [.. Sweetener.Kit.Where(each => balance[each.Part].Known > 0)];
        double[] grams = [.. present.Select(each => balance[each.Part].Known / balance.FinishedGrams * 100)];
        var value = SucroseEquivalentGrams(grams, [.. present.Select(each => each.Relative.Value)]);
        return Predicted.Computed(equation, value, () => [.. present.Select((each, i) => new Working($"{BalanceParts.Word(each.Part)} in 100 g", grams[i], "g", Sum) { From = [each.Relative.Working] })]) with
        {
            Range = Interval.Between(
                SucroseEquivalentGrams(grams, [.. present.Select(each => each.Relative.Range!.Value.Low)]),
                SucroseEquivalentGrams(grams, [.. present.Select(each => each.Relative.Range!.Value.High)])),
        };
    }
}
