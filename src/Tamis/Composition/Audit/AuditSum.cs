using System.Globalization;

namespace Tamis.Composition;

/// <summary>A weighted sum of nutrients as an audit rule writes it: <c>WATER + PROCNT + [ALC]</c>, <c>4 PROCNT + 9 FAT</c>.</summary>
/// <remarks>Nutrients by mass count in grams, energies in their own unit. A tag in brackets counts as nothing where nobody knows it
/// (most tables leave out the alcohol of a flour); any other unknown leaves the sum unknown.</remarks>
public sealed class AuditSum
{
    private AuditSum(IReadOnlyList<AuditTerm> terms) => Terms = terms;

    /// <summary>The terms in the order of writing.</summary>
    public IReadOnlyList<AuditTerm> Terms { get; }

    /// <summary>The tag where the sum is one nutrient; empty otherwise.</summary>
    public string Tag => Terms is [{ Weight: 1 } only] ? only.Tag : "";

    /// <summary>Reads a sum; null where the text is none.</summary>
    public static AuditSum? Parse(string text)
    {
        List<AuditTerm> terms = [];
        var (weight, isWeighted, expectsTerm) = (1.0, false, true);
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (word is "+" or "-")
            {
                if (expectsTerm) return null;
                (weight, isWeighted, expectsTerm) = (word == "-" ? -1 : 1, false, true);
            }
            else if (!expectsTerm) return null;
            else if (double.TryParse(word, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
            {
                if (isWeighted) return null;
                (weight, isWeighted) = (weight * number, true);
            }
            else
            {
                terms.Add(new(word.Trim('[', ']'), weight, word.StartsWith('[')));
                expectsTerm = false;
            }
        }
        return expectsTerm ? null : new(terms);
    }

    /// <summary>The sum in words: <c>water + protein + alcohol</c>.</summary>
    /// <remarks>A nutrient that the list does not have is left out.</remarks>
    public string InWords(NutrientList nutrients) => string.Concat(Terms.Where(term => nutrients.IndexOf(term.Tag) >= 0).Select((term, index) => string.Create(CultureInfo.InvariantCulture,
        $"{(term.Weight < 0 ? index == 0 ? "\u2212" : " \u2212 " : index == 0 ? "" : " + ")}{(Math.Abs(term.Weight) == 1 ? "" : $"{Math.Abs(term.Weight):0.####} \u00d7 ")}{nutrients[term.Tag].Word}")));
}

/// <summary>One term of a sum.</summary>
/// <param name="Tag">The nutrient's tagname.</param>
/// <param name="Weight">How often it counts; below zero where it is taken away.</param>
/// <param name="MayBeUnknown">Whether an unknown content counts as nothing here.</param>
public sealed record AuditTerm(string Tag, double Weight, bool MayBeUnknown);

/// <summary>A sum made ready for the columns of one table.</summary>
internal sealed class AuditColumns
{
    private readonly (int Column, double Weight, bool MayBeUnknown)[] _terms;

    private AuditColumns((int, double, bool)[] terms, string unit, double perUnit) => (_terms, Unit, PerUnit) = (terms, unit, perUnit);

    /// <summary>The unit in which the sum is shown: that of its first nutrient.</summary>
    public string Unit { get; }

    /// <summary>What one of <see cref="Unit"/> counts in the sum: grams, or 1 for an energy.</summary>
    public double PerUnit { get; }

    /// <summary>The sum for a table; null where the table lacks a column that it must have.</summary>
    public static AuditColumns? For(AuditSum sum, NutrientList nutrients)
    {
        List<(int, double, bool)> terms = [];
        var (unit, perUnit) = ("g", 1.0);
        foreach (var term in sum.Terms)
        {
            var column = nutrients.IndexOf(term.Tag);
            if (column < 0 && !term.MayBeUnknown) return null;
            if (column < 0) continue;
            var counts = Grams(nutrients.All[column].Unit);
            if (terms.Count == 0) (unit, perUnit) = (nutrients.All[column].Unit, counts);
            terms.Add((column, term.Weight * counts, term.MayBeUnknown));
        }
        return terms.Count == 0 ? null : new([.. terms], unit, perUnit);
    }

    /// <summary>The sum for a row of contents as the table shows them; NaN where none is known.</summary>
    public double Of(ReadOnlySpan<double> contents) => Sum(contents, contents, onlyKnown: true);

    /// <summary>The least and the most that the sum can be, since a content below a limit may lie anywhere up to it; NaN where a term is unknown.</summary>
    public (double Least, double Most) Between(ReadOnlySpan<double> least, ReadOnlySpan<double> most) =>
        (Sum(least, most, onlyKnown: false), Sum(most, least, onlyKnown: false));

    /// <summary>The least that the terms that are known add up to: what the whole sum is at least. NaN where none is.</summary>
    public double AtLeast(ReadOnlySpan<double> least, ReadOnlySpan<double> most) => Sum(least, most, onlyKnown: true);

    private double Sum(ReadOnlySpan<double> added, ReadOnlySpan<double> takenAway, bool onlyKnown)
    {
        var (sum, known) = (0.0, 0);
        foreach (var (column, weight, mayBeUnknown) in _terms)
        {
            var content = weight > 0 ? added[column] : takenAway[column];
            if (!double.IsNaN(content)) (sum, known) = (sum + weight * content, known + 1);
            else if (!(mayBeUnknown || onlyKnown && weight > 0)) return double.NaN;
        }
        return known == 0 ? double.NaN : sum;
    }

    private static double Grams(string unit) => unit switch { "mg" => 1e-3, "ug" => 1e-6, _ => 1 };
}
