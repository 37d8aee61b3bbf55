using System.Globalization;
using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Formulas;

/// <summary>How quantities are written: <c>[about] number [to number] [unit] [% [of line]]</c>, or <c>rest</c>.</summary>
internal static partial class QuantityGrammar
{
    private const string Example = "a quantity such as 250 g, 2 eggs, 20 to 25 g, 1/2 tbsp, a pinch or rest";

    private static readonly Dictionary<string, double> NumberWords = new(StringComparer.OrdinalIgnoreCase)
    {
        ["a"] = 1, ["an"] = 1, ["one"] = 1, ["two"] = 2, ["three"] = 3, ["four"] = 4, ["five"] = 5, ["six"] = 6, ["half a"] = 0.5, ["half an"] = 0.5, ["half"] = 0.5,
    };

    private static readonly Dictionary<char, double> Signs = new()
    {
        ['¼'] = 0.25, ['½'] = 0.5, ['¾'] = 0.75, ['⅓'] = 1d / 3, ['⅔'] = 2d / 3, ['⅛'] = 0.125, ['⅜'] = 0.375, ['⅝'] = 0.625, ['⅞'] = 0.875,
    };

    /// <summary>Reads a quantity, or says what was expected.</summary>
    public static WrittenQuantity? Read(string text, char decimalMark, KitchenMeasures measures, out string? expected)
    {
        var plain = Plain(text);
        expected = Refusal(plain);
        if (expected is not null) return null;
        var isAbout = About().Match(plain) is { Success: true };
        plain = TrimAbout(plain);
        if (plain.Equals("rest", StringComparison.OrdinalIgnoreCase) || plain.Equals("the rest", StringComparison.OrdinalIgnoreCase))
            return new() { Text = text, Kind = QuantityKind.Rest, Range = Interval.At(0) };

        expected = Example;
        if (Number(plain, decimalMark, out var low, ref expected) is not { } behindLow) return null;
        var (unitLow, next) = UpToRange(behindLow);
        var high = low;
        var unit = unitLow;
        if (next is not null)
        {
            if (Number(next, decimalMark, out high, ref expected) is not { } behindHigh) return null;
            unit = behindHigh.Trim();
            if (unitLow.Length > 0 && !Names.Same(unitLow, unit))
            {
                expected = $"one unit for both ends of the range, behind the second: {Example}";
                return null;
            }
            if (high.Value < low.Value)
            {
                expected = "a range from its lower to its higher end";
                return null;
            }
        }
        return WithUnit(text, isAbout, Interval.Between(low.Value, high.Value), unit, low.IsFraction || high.IsFraction, measures, out expected);
    }

    /// <summary>The text without the words that make an estimate of it.</summary>
    public static string TrimAbout(string text) => About().Replace(text, "", 1);

    private static string Plain(string text) => Blanks().Replace(text.Replace('\u2212', '-').Replace('\u2044', '/'), " ").Trim();

    private static string? Refusal(string plain) =>
        plain.Length == 0 ? Example
        : plain[0] == '-' ? "a quantity of 0 or more: what leaves is written in a row with 'out' under way"
        : plain[0] == '#' ? $"{Example}; this is an error of the spreadsheet: mend the formula there"
        : DateText.LooksLikeDate(plain) ? "a quantity; the spreadsheet made a date of what was a range: format the cell as text and write the range as 8 to 12 g"
        : null;

    private static WrittenQuantity? WithUnit(string text, bool isAbout, Interval range, string unit, bool isFraction, KitchenMeasures measures, out string? expected)
    {
        expected = null;
        if (unit.StartsWith('%')) return Share(text, isAbout, range, unit[1..].Trim(), out expected);
        // Nobody weighs half a gram as `1/2`: a bare fraction is of whatever the ingredient is counted in.
        if (unit.Length == 0) return Quantity(isFraction ? QuantityKind.Pieces : QuantityKind.Mass, range, "");
        if (WrittenUnit.Find(unit, measures, out expected) is { } known) return Quantity(known.Kind, range * known.Factor, PieceWord.Singular(Names.Key(unit)));
        if (expected is not null) return null;
        if (Piece().IsMatch(unit)) return Quantity(QuantityKind.Pieces, range, PieceWord.Singular(Names.Key(unit)));
        expected = Example;
        return null;

        WrittenQuantity Quantity(QuantityKind kind, Interval amount, string one) => new() { Text = text, Kind = kind, Range = amount, Unit = one, IsAbout = isAbout };
    }

    private static WrittenQuantity? Share(string text, bool isAbout, Interval range, string behind, out string? expected)
    {
        var isOf = behind.StartsWith("of ", StringComparison.OrdinalIgnoreCase);
        expected = range.High > 100 ? "a share of 100 % at most"
            : behind.Length > 0 && !isOf ? "a share such as 12 % or 8 % of rye flakes"
            : null;
        if (expected is not null) return null;
        return new() { Text = text, Kind = isOf ? QuantityKind.ShareOf : QuantityKind.Share, Range = range, Unit = "%", Of = isOf ? behind[3..].Trim() : null, IsAbout = isAbout };
    }

    // Reads the number at the start and returns what stands behind it; null with what was expected where there is none.
    private static string? Number(string text, char decimalMark, out (double Value, bool IsFraction) number, ref string? expected)
    {
        number = default;
        if (Word().Match(text) is { Success: true } word)
        {
            number = (NumberWords[word.Groups["word"].Value], false);
            return text[word.Length..];
        }
        if (Leading().Match(text) is not { Success: true } match) return null;
        var (whole, numerator, denominator, sign) = (match.Groups["whole"], match.Groups["numerator"], match.Groups["denominator"], match.Groups["sign"]);
        double value = 0;
        if (whole.Success && !NumberText.TryParse(whole.Value.Trim(), decimalMark, out value, out var why))
        {
            expected = why == "a number" ? Example : why;
            return null;
        }
        if (numerator.Success)
        {
            var (over, under) = (Integer(numerator), Integer(denominator));
            if (under == 0 || whole.Success && value != Math.Floor(value)) return null;
            value += over / under;
        }
        if (sign.Success)
        {
            if (value != Math.Floor(value)) return null;
            value += Signs[sign.Value[0]];
        }
        number = (value, numerator.Success || sign.Success);
        return text[match.Length..];

        static double Integer(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);
    }

    // Parts `g to 25 g`, `-25 g`, ` to 25 g` behind the first number into its unit and what follows the range's sign.
    private static (string Unit, string? Next) UpToRange(string text) => RangeSign().Match(text) is { Success: true } match
        ? (match.Groups["unit"].Value.Trim(), match.Groups["next"].Value)
        : (text.Trim(), null);

    [GeneratedRegex(@"^(~|≈|ca?\.? ?(?=[\d~½¼¾])|circa |about |around |approx\.? |approximately )\s*", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex About();

    [GeneratedRegex(@"[\s\u00a0\u202f]+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();

    [GeneratedRegex(@"^(?<word>half an?|half|an?|one|two|three|four|five|six)(?= )", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Word();

    [GeneratedRegex(@"^(?:(?<numerator>\d{1,3})/(?<denominator>\d{1,3})|(?:(?<whole>\d[\d.,'’]*(?: \d{3})*(?:[.,]\d+)?)\s?)?(?<sign>[¼½¾⅓⅔⅛⅜⅝⅞])|(?<whole>\d+) (?<numerator>\d{1,3})/(?<denominator>\d{1,3})|(?<whole>[.,]?\d[\d.,'’]*(?: \d{3}(?!\d))*(?:[.,]\d+)?))(?![\d/])", RegexOptions.CultureInvariant)]
    private static partial Regex Leading();

    [GeneratedRegex(@"^\s*(?<unit>%|[\p{L}.]*(?: [\p{L}.]+)?)(?:\s*[-–—]\s*|\s+to\s+)(?<next>[\d.,½¼¾⅓⅔⅛⅜⅝⅞].*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex RangeSign();

    [GeneratedRegex(@"^\p{L}[\p{L}'’-]*( \p{L}[\p{L}'’-]*){0,2}$", RegexOptions.CultureInvariant)]
    private static partial Regex Piece();
}
