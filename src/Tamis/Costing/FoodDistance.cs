using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Physics;

namespace Tamis.Costing;

/// <summary>How far two ingredients lie apart by what they are made of.</summary>
/// <param name="ApartGrams">The grams in 100 g of one that would have to be something else to make it the other, 0 to 100.</param>
/// <param name="KnownGrams">The grams in 100 g for which both say what they are; the rest was compared as one lump.</param>
/// <remarks>Half the sum of the absolute differences of the parts of two balances: the total variation distance of two compositions
/// (D. A. Levin, Y. Peres, E. L. Wilmer, Markov Chains and Mixing Times, 2009, proposition 4.2; from memory).
/// Where one of the two gives only the total of its sugars, polyols or fats, those are compared as totals. It says nothing of taste, colour or grain.</remarks>
public sealed record FoodDistance(double ApartGrams, double KnownGrams)
{
    private const double LeastGrams = 1e-9;
    private static readonly Source Compared = new("comparison of two balances", Evidence.Computed);

    /// <summary>The distance of two ingredients; null where one of them has no figures at all.</summary>
    public static FoodDistance? Of(Ingredient left, Ingredient right)
    {
        if (left.Profile is null || right.Profile is null) return null;
        return Of(BalanceOf(left), BalanceOf(right));
    }

    /// <summary>The distance of two balances, each taken to 100 g.</summary>
    /// <exception cref="ArgumentException">A balance is of no mass.</exception>
    public static FoodDistance Of(Balance left, Balance right)
    {
        if (left.FinishedGrams <= 0 || right.FinishedGrams <= 0) throw new ArgumentException("Two compositions are compared to 100 g of each; one of them is of no mass.", nameof(left));
        double apart = 0, lefts = 0, rights = 0;
        foreach (var group in Groups(left, right))
        {
            var (one, other) = (Percent(left, group), Percent(right, group));
            apart += Math.Abs(one - other);
            (lefts, rights) = (lefts + one, rights + other);
        }
        // What neither accounts for is one more part; published analyses may add up to a little more than 100 g.
        apart += Math.Abs(Math.Max(0, 100 - lefts) - Math.Max(0, 100 - rights));
        return new(Math.Min(100, apart / 2), Math.Min(100, Math.Min(lefts, rights)));
    }

    /// <summary>What 100 g of an ingredient are made of by function.</summary>
    internal static Balance BalanceOf(Ingredient ingredient) => Balance.Of(new Mixture { Parts = [new(ingredient, 100, 0, ingredient.Origin ?? Compared)] });

    private static IEnumerable<IReadOnlyList<BalancePart>> Groups(Balance left, Balance right)
    {
        IReadOnlyList<BalancePart>[] kinds = [BalanceParts.Sugars, BalanceParts.Polyols, BalanceParts.Fats];
        IReadOnlyList<BalancePart>[] lumped = [.. kinds.Where(parts => IsLump(left, parts) || IsLump(right, parts))];
        var inLump = lumped.SelectMany(parts => parts).ToHashSet();
        return [.. lumped, .. BalanceParts.Known.Where(part => !inLump.Contains(part)).Select(part => (IReadOnlyList<BalancePart>)[part])];
    }

    // The last part of each kind is what is known by its total alone.
    private static bool IsLump(Balance balance, IReadOnlyList<BalancePart> parts) => balance[parts[^1]].Known > LeastGrams;

    private static double Percent(Balance balance, IReadOnlyList<BalancePart> parts) => parts.Sum(part => balance[part].Known) / balance.FinishedGrams * 100;
}
