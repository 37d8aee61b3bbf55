using System.Globalization;

namespace Tamis.Notebooks;

/// <summary>Quiet assertions for figures that stand in a notebook's plain prose: nothing is shown while they hold.</summary>
public static class Expect
{
    /// <summary>Expects a figure to be as near to the one in the prose as stated.</summary>
    /// <param name="expected">The figure that the prose states.</param>
    /// <param name="found">The figure that was worked out, in the same unit.</param>
    /// <param name="within">How far apart they may be, in the same unit.</param>
    /// <exception cref="ExpectationException">They are further apart, or nothing was worked out.</exception>
    public static void Near(double expected, double found, double within)
    {
        // Written so that NaN, which is near nothing, fails.
        if (!(Math.Abs(expected - found) <= within))
            throw new ExpectationException(string.Create(CultureInfo.InvariantCulture, $"The text says {expected}, the sheets give {found:0.######}; they may differ by {within}. Mend the text or the sheet."));
    }

    /// <summary>Expects two values to be the same.</summary>
    /// <exception cref="ExpectationException">They differ.</exception>
    public static void Equal<T>(T expected, T found)
    {
        if (!EqualityComparer<T>.Default.Equals(expected, found))
            throw new ExpectationException(string.Create(CultureInfo.InvariantCulture, $"The text says '{expected}', the sheets give '{found}'. Mend the text or the sheet."));
    }

    /// <summary>Expects a statement of the prose to hold.</summary>
    /// <param name="holds">Whether it does.</param>
    /// <param name="statement">The statement, as a sentence without its full stop.</param>
    /// <exception cref="ExpectationException">It does not hold.</exception>
    public static void True(bool holds, string statement)
    {
        if (!holds) throw new ExpectationException($"The text says that {statement}; by the sheets it does not hold. Mend the text or the sheet.");
    }
}

/// <summary>A notebook's prose states what its sheets do not bear out.</summary>
public sealed class ExpectationException(string message) : Exception(message);
