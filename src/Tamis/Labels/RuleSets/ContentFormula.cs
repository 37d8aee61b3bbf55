using System.Globalization;
using System.Text.RegularExpressions;
using Tamis.Composition;

namespace Tamis.Labels;

/// <summary>One content in a formula.</summary>
/// <param name="Coefficient">What the content is multiplied by; negative where it is taken away.</param>
/// <param name="Tag">The INFOODS tagname of the content.</param>
/// <param name="CountsAsNone">Whether a content that nobody states counts as none.</param>
public readonly record struct FormulaTerm(double Coefficient, string Tag, bool CountsAsNone);

/// <summary>How a figure of a rule set follows from the contents of a food: <c>0.0025 NA</c>, <c>CHOCDF - FIBTG - OA?</c>.</summary>
/// <remarks>Terms are added or taken away, each with a factor before it if need be. A question mark says that the content counts as
/// none where nobody states it. Ways parted by a bar are tried in turn: the first whose other contents are all known is taken.</remarks>
public sealed partial class ContentFormula
{
    private ContentFormula(string text, IReadOnlyList<IReadOnlyList<FormulaTerm>> ways) => (Text, Ways) = (text, ways);

    /// <summary>The formula as the rule file has it.</summary>
    public string Text { get; }

    /// <summary>The ways to the figure, in the order in which they are tried; at least one, none of them empty.</summary>
    public IReadOnlyList<IReadOnlyList<FormulaTerm>> Ways { get; }

    /// <summary>Reads a formula; null where the text is none.</summary>
    public static ContentFormula? Parse(string text)
    {
        var ways = text.Split('|').Select(ParseWay).ToArray();
        return Array.TrueForAll(ways, way => way is not null) ? new(text, ways!) : null;
    }

    /// <summary>The first way whose needed contents the profile all has, or null where it has none.</summary>
    public IReadOnlyList<FormulaTerm>? WayFor(NutrientProfile profile)
    {
        foreach (var way in Ways)
        {
            var known = true;
            foreach (var term in way) known &= term.CountsAsNone || profile[term.Tag].IsKnown;
            if (known) return way;
        }
        return null;
    }

    /// <inheritdoc/>
    public override string ToString() => Text;

    private static List<FormulaTerm>? ParseWay(string text)
    {
        var match = Way().Match(text);
        if (!match.Success) return null;
        List<FormulaTerm> terms = [];
        for (var i = 0; i < match.Groups["term"].Captures.Count; i++)
        {
            var term = Term().Match(match.Groups["term"].Captures[i].Value);
            var factor = term.Groups["factor"] is { Success: true } written ? double.Parse(written.Value, CultureInfo.InvariantCulture) : 1;
            var sign = i > 0 && match.Groups["sign"].Captures[i - 1].Value != "+" ? -1 : 1;
            terms.Add(new(sign * factor, term.Groups["tag"].Value, term.Groups["none"].Success));
        }
        return terms;
    }

    [GeneratedRegex(@"^\s*(?<term>(?:\d+(?:\.\d+)?\s+)?[A-Z][A-Z0-9_]*\??)(?:\s+(?<sign>[-+\u2212])\s+(?<term>(?:\d+(?:\.\d+)?\s+)?[A-Z][A-Z0-9_]*\??))*\s*$", RegexOptions.ExplicitCapture)]
    private static partial Regex Way();

    [GeneratedRegex(@"^((?<factor>\d+(\.\d+)?)\s+)?(?<tag>[A-Z][A-Z0-9_]*)(?<none>\?)?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Term();
}
