namespace Tamis;

/// <summary>What is known of an amount in a mixture, and for how much of the mixture it is known.</summary>
/// <param name="Known">The sum over the parts whose content is known, in the unit of the content: a lower bound while parts are unknown.</param>
/// <param name="CoveredMassGrams">The mass of the parts whose content is known, as weighed in.</param>
/// <param name="TotalMassGrams">The mass of all parts, as weighed in.</param>
/// <remarks><c>default</c> is a mixture of nothing: nothing known, nothing covered.</remarks>
public readonly record struct Amount(double Known, double CoveredMassGrams, double TotalMassGrams)
{
    // Sums of the same masses in another order differ in the last digits; a share this close to one is all.
    private const double WholeShare = 1 - 1e-9;

    /// <summary>The part of the mass for which the content is known, 0 to 1; 0 for a mixture of nothing.</summary>
    public double CoveredShare => TotalMassGrams > 0 ? Math.Min(1, CoveredMassGrams / TotalMassGrams) : 0;

    /// <summary>Whether every part is known.</summary>
    public bool IsWhole => TotalMassGrams > 0 && CoveredShare >= WholeShare;

    /// <summary>The amount if every part is known, otherwise <see langword="null"/>: never a partial sum in disguise.</summary>
    public double? Whole => IsWhole ? Known : null;

    /// <summary>Both amounts together, of the mixture of both.</summary>
    public static Amount operator +(Amount left, Amount right) =>
        new(left.Known + right.Known, left.CoveredMassGrams + right.CoveredMassGrams, left.TotalMassGrams + right.TotalMassGrams);

    /// <summary>The same mixture, more or less of it.</summary>
    public static Amount operator *(Amount amount, double factor) =>
        new(amount.Known * factor, amount.CoveredMassGrams * factor, amount.TotalMassGrams * factor);

    /// <summary>Sums one content over the parts of a mixture. NaN marks an unknown content.</summary>
    /// <param name="massGrams">The mass of each part, as weighed in.</param>
    /// <param name="per100Grams">The content of each part in 100 g of it, NaN where unknown.</param>
    /// <exception cref="ArgumentException">The two lists are of different length.</exception>
    public static Amount Sum(ReadOnlySpan<double> massGrams, ReadOnlySpan<double> per100Grams)
    {
        if (massGrams.Length != per100Grams.Length)
            throw new ArgumentException($"{massGrams.Length} masses but {per100Grams.Length} contents; give one content a part.", nameof(per100Grams));
        double known = 0, covered = 0, total = 0;
        for (var i = 0; i < massGrams.Length; i++)
        {
            total += massGrams[i];
            if (double.IsNaN(per100Grams[i])) continue;
            covered += massGrams[i];
            known += massGrams[i] * per100Grams[i] / 100;
        }
        return new(known, covered, total);
    }
}
