using System.Text.RegularExpressions;

namespace Tamis.Views;

/// <summary>One sentence with named holes, <c>{trial} was made once.</c>; never glued from pieces, so that it can be translated.</summary>
/// <param name="Text">The sentence.</param>
public sealed partial record Template(string Text)
{
    /// <summary>The names of the holes, in the order of the text.</summary>
    public IEnumerable<string> Holes => Hole().Matches(Text).Select(match => match.Groups[1].Value);

    /// <summary>The sentence with its holes filled; a value that is not <see cref="Html"/> is escaped.</summary>
    /// <exception cref="ArgumentException">A hole has no value.</exception>
    public Html Fill(params ReadOnlySpan<(string Hole, object? Value)> values)
    {
        var filled = Html.Empty;
        var at = 0;
        foreach (Match match in Hole().Matches(Text))
        {
            filled += Html.Text(Text[at..match.Index]) + Value(values, match.Groups[1].Value);
            at = match.Index + match.Length;
        }
        return filled + Html.Text(Text[at..]);
    }

    private Html Value(ReadOnlySpan<(string Hole, object? Value)> values, string hole)
    {
        foreach (var (name, value) in values)
            if (name == hole) return Html.Of($"{value}");
        throw new ArgumentException($"The sentence '{Text}' has a hole '{hole}' for which no value was given.");
    }

    [GeneratedRegex(@"\{([a-z_]+)\}")]
    private static partial Regex Hole();
}

/// <summary>A sentence that reads differently for one and for several; both may name <c>{count}</c>.</summary>
/// <param name="One">For one.</param>
/// <param name="Several">For none or for several.</param>
public sealed record Plural(string One, string Several)
{
    /// <summary>The sentence for a count.</summary>
    public Template For(int count) => new(count == 1 ? One : Several);

    /// <summary>The sentence for a count with the count and further holes filled.</summary>
    public Html Fill(int count, params ReadOnlySpan<(string Hole, object? Value)> values) => For(count).Fill([("count", count), .. values]);
}
