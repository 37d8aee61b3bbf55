using System.Globalization;

namespace Tamis;

/// <summary>A mass of something on the bench, in grams; <c>default</c> is zero grams.</summary>
/// <remarks>Never negative, infinite or NaN. What leaves a mixture is a named loss, not a negative mass.</remarks>
public readonly record struct Mass : IComparable<Mass>
{
    private Mass(double grams) => Grams = grams;

    /// <summary>The mass in grams, zero or more.</summary>
    public double Grams { get; }

    /// <summary>Nothing.</summary>
    public static Mass Zero => default;

    /// <summary>Makes a mass from grams.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is negative or not finite.</exception>
    public static Mass FromGrams(double grams) => double.IsFinite(grams) && grams >= 0
        ? new(grams)
        : throw new ArgumentOutOfRangeException(nameof(grams), grams, "A mass is zero grams or more; record what leaves as a loss.");

    /// <summary>The two masses together.</summary>
    public static Mass operator +(Mass left, Mass right) => FromGrams(left.Grams + right.Grams);

    /// <summary>What is left when <paramref name="right"/> is taken from <paramref name="left"/>; refused when it is more than there is.</summary>
    public static Mass operator -(Mass left, Mass right) => FromGrams(left.Grams - right.Grams);

    /// <summary>The mass made larger or smaller by a factor.</summary>
    public static Mass operator *(Mass mass, double factor) => FromGrams(mass.Grams * factor);

    /// <summary>One mass as a part of another.</summary>
    public static double operator /(Mass part, Mass reference) => part.Grams / reference.Grams;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Grams.CompareTo(other.Grams);

    /// <summary>Whether one mass is less than another.</summary>
    public static bool operator <(Mass left, Mass right) => left.CompareTo(right) < 0;

    /// <summary>Whether one mass is more than another.</summary>
    public static bool operator >(Mass left, Mass right) => left.CompareTo(right) > 0;

    /// <summary>Whether one mass is at most another.</summary>
    public static bool operator <=(Mass left, Mass right) => left.CompareTo(right) <= 0;

    /// <summary>Whether one mass is at least another.</summary>
    public static bool operator >=(Mass left, Mass right) => left.CompareTo(right) >= 0;

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Grams:0.###} g");
}

/// <summary>Lets a notebook cell write <c>250.Grams</c>.</summary>
public static class MassLiterals
{
    extension(int grams)
    {
        /// <summary>This many grams as a mass.</summary>
        public Mass Grams => Mass.FromGrams(grams);
    }

    extension(double grams)
    {
        /// <summary>This many grams as a mass.</summary>
        public Mass Grams => Mass.FromGrams(grams);
    }
}
