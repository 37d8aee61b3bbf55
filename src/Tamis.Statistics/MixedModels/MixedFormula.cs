using Tamis.Statistics.Models;

namespace Tamis.Statistics.MixedModels;

/// <summary>A model with fixed and random terms: <c>y ~ a * b + (1 | judge) + (1 | judge:a)</c>.</summary>
/// <remarks>
/// The fixed part is a <see cref="ModelFormula"/>. <c>(1 | g)</c> is an intercept for each level of g, <c>(1 | a/b)</c> is
/// <c>(1 | a) + (1 | a:b)</c>, <c>(1 + x | g)</c> or <c>(x | g)</c> an intercept and a slope, correlated, and <c>(0 + x | g)</c> a slope alone.
/// </remarks>
public sealed class MixedFormula
{
    private MixedFormula(ModelFormula fixedPart, IReadOnlyList<RandomTerm> random) => (Fixed, Random) = (fixedPart, random);

    /// <summary>What the model explains, and the terms of fixed effects.</summary>
    public ModelFormula Fixed { get; }

    /// <summary>The random terms, in the order of the text.</summary>
    public IReadOnlyList<RandomTerm> Random { get; }

    /// <summary>All columns that the model names, the response first.</summary>
    public IEnumerable<string> Columns =>
        Fixed.Columns.Concat(Random.SelectMany(term => term.Slopes.Select(slope => slope.Column).Concat(term.Grouping))).Distinct();

    /// <summary>Reads a model.</summary>
    /// <exception cref="FormatException">The text is no mixed model; the message says why.</exception>
    public static MixedFormula Parse(string text)
    {
        var rest = text;
        List<RandomTerm> random = [];
        for (var bar = rest.IndexOf('|', StringComparison.Ordinal); bar >= 0; bar = rest.IndexOf('|', StringComparison.Ordinal))
        {
            var (open, close) = (rest.LastIndexOf('(', bar), rest.IndexOf(')', bar));
            if (open < 0 || close < 0) throw new FormatException($"The model '{text}' cannot be read: a random term stands in brackets, (1 | judge).");
            random.AddRange(Terms(text, rest[(open + 1)..bar], rest[(bar + 1)..close]));
            rest = WithoutPart(text, rest, open, close);
        }
        if (random.Count == 0) throw new FormatException($"The model '{text}' has no random term such as (1 | judge).");
        if (random.GroupBy(term => term.ToString(), StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1) is { } twice)
            throw new FormatException($"The model '{text}' has the random term {twice.Key} twice.");
        return new(ModelFormula.Parse(rest), random);
    }

    /// <summary>The same model without one of its random terms; <see langword="null"/> if it was the only one.</summary>
    /// <exception cref="ArgumentException">The model has no such term.</exception>
    public MixedFormula? Without(RandomTerm term) => Random.Contains(term)
        ? Random.Count > 1 ? new(Fixed, [.. Random.Where(other => other != term)]) : null
        : throw new ArgumentException($"The model has no random term {term}; it has {string.Join(", ", Random)}.", nameof(term));

    /// <summary>The expanded model.</summary>
    public override string ToString() => $"{Fixed} + {string.Join(" + ", Random)}";

    private static IEnumerable<RandomTerm> Terms(string text, string effects, string grouping)
    {
        var inner = ModelFormula.Parse($"y ~ {effects}");
        if (inner.Terms.FirstOrDefault(term => term.Variables.Count > 1) is { } product)
            throw new FormatException($"The model '{text}' cannot be read: '{product}' varies by group; name one column a slope.");
        List<string> factors = [];
        foreach (var nested in grouping.Split('/'))
        {
            var names = ModelFormula.Parse($"y ~ {nested}").Terms;
            if (names is not [var only] || only.Variables.Any(variable => variable.Power != 1))
                throw new FormatException($"The model '{text}' cannot be read: behind | stands a factor, or several parted by ':' or '/'.");
            factors.AddRange(only.Variables.Select(variable => variable.Column).Where(name => !factors.Contains(name)));
            yield return new(inner.HasIntercept, [.. inner.Terms.Select(term => term.Variables[0])], [.. factors]);
        }
    }

    // The bracket and the sign before it; a model of random terms alone keeps its intercept.
    private static string WithoutPart(string text, string rest, int open, int close)
    {
        var before = rest[..open].TrimEnd();
        var after = rest[(close + 1)..];
        if (before.EndsWith('+')) return before[..^1] + after;
        if (!before.EndsWith('~')) throw new FormatException($"The model '{text}' cannot be read: before '{rest[open..]}' expected + or ~.");
        return before + (after.TrimStart() is ['+', ..] ? " 1" + after : " 1");
    }
}
