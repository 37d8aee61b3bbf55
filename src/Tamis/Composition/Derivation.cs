namespace Tamis.Composition;

/// <summary>How one nutrient follows from others of the same food: a sum of tags, each taken once, added or taken away.</summary>
/// <param name="Terms">The tags in the order of writing; a term that is taken away is marked so.</param>
public sealed record Derivation(IReadOnlyList<(string Tag, bool IsTakenAway)> Terms)
{
    /// <summary>Reads <c>CHOCDF - FIBTG</c>; null where the text is no such sum.</summary>
    public static Derivation? Parse(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length % 2 == 0) return null;
        List<(string, bool)> terms = [(words[0], false)];
        for (var i = 1; i < words.Length; i += 2)
        {
            if (words[i] is not ("+" or "-" or "\u2212")) return null;
            terms.Add((words[i + 1], words[i] != "+"));
        }
        return new(terms);
    }

    /// <summary>The derived content: unknown as soon as one term is, never cut off at zero.</summary>
    /// <param name="content">The content of a tag in the food.</param>
    /// <param name="nutrients">The nutrients, for the words of the source.</param>
    /// <returns>A calculated content; its standard deviation is that of independent terms where every term has one or is certain.</returns>
    public Content Of(Func<string, Content> content, NutrientList nutrients)
    {
        var value = 0.0;
        var variance = 0.0;
        var samples = int.MaxValue;
        var isEstimate = false;
        List<string> from = [];
        foreach (var (tag, isTakenAway) in Terms)
        {
            var term = content(tag);
            if (!term.IsKnown) return Content.Unknown;
            value += isTakenAway ? -term.Per100Grams : term.Per100Grams;
            isEstimate |= ContentGrid.IsFilledIn(term.State);
            if (term is { StandardDeviation: { } spread, Samples: { } number }) (variance, samples) = (variance + spread * spread, Math.Min(samples, number));
            else if (term.Per100Grams != 0) variance = double.NaN;
            from.Add($"{nutrients[tag].Word} from {term.Source}");
        }
        return Content.Spread(StateOf(Rounded(value), isEstimate), Rounded(value), new(InWords(nutrients), Evidence.Computed, string.Join("; ", from)), samples, Math.Sqrt(variance), canBeNegative: true);
    }

    /// <summary>Works out the columns that follow from others, where a food does not state them.</summary>
    internal static void Fill(ContentGrid.Builder grid, NutrientList nutrients, int rows)
    {
        for (var column = 0; column < nutrients.Count; column++)
        {
            if (nutrients.All[column].Derived is not { } derivation) continue;
            (int Column, bool IsTakenAway)[] terms = [.. derivation.Terms.Select(term => (nutrients.IndexOf(term.Tag), term.IsTakenAway))];
            for (var row = 0; row < rows; row++)
            {
                if (grid.State(row, column) != ContentState.Unknown || terms.Any(term => grid.State(row, term.Column) == ContentState.Unknown)) continue;
                var value = terms.Sum(term => term.IsTakenAway ? -grid.Per100Grams(row, term.Column) : grid.Per100Grams(row, term.Column));
                var isFilledIn = terms.Any(term => ContentGrid.IsFilledIn(grid.State(row, term.Column)));
                grid.Set(row, column, StateOf(value, isFilledIn), Rounded(value), new(0, 0, double.NaN, 0, ContentGrid.Detail.Derived));
            }
        }
    }

    /// <summary>The same relation read the other way: how the first term follows from the derived nutrient and the other terms.</summary>
    public Derivation ForFirst(string derivedTag) => new([(derivedTag, false), .. Terms.Skip(1).Select(term => (term.Tag, !term.IsTakenAway))]);

    /// <summary>A sum without the dust of binary fractions: figures of a table have few decimals, and their sum keeps no more.</summary>
    internal static double Rounded(double value) => Math.Round(value, 9);

    internal static ContentState StateOf(double value, bool isFilledIn) =>
        isFilledIn ? ContentState.Estimated : Rounded(value) == 0 ? ContentState.Zero : ContentState.Measured;

    /// <summary>The sum as a file writes it, <c>CHOCDF - FIBTG</c>.</summary>
    public override string ToString() => string.Concat(Terms.Select((term, index) => $"{(index == 0 ? "" : term.IsTakenAway ? " - " : " + ")}{term.Tag}"));

    /// <summary>The sum in the words of its nutrients, <c>total carbohydrate − fibre</c>.</summary>
    public string InWords(NutrientList nutrients) =>
        string.Concat(Terms.Select((term, index) => $"{(index == 0 ? "" : term.IsTakenAway ? " \u2212 " : " + ")}{nutrients[term.Tag].Word}"));
}
