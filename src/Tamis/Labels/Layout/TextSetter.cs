using System.Text.RegularExpressions;

namespace Tamis.Labels;

/// <summary>A stretch of text with the part of the label whose size and weight it has.</summary>
/// <param name="Text">The words.</param>
/// <param name="Part">The part.</param>
/// <param name="IsBold">Whether it stands in bold type.</param>
/// <param name="Language">The code of its language; empty where it is of none or of several.</param>
internal sealed record SetRun(string Text, string Part, bool IsBold, string Language = "");

/// <summary>Sets text in lines of a given width.</summary>
/// <param name="sizes">The sizes of the parts.</param>
internal sealed partial class TextSetter(TypeSizes sizes)
{
    // A line that is as wide as its widest word must hold that word, whatever the last digits of the sum.
    private const double SumOfRoundingMillimetres = 1e-9;

    /// <summary>The sizes of the parts.</summary>
    public TypeSizes Sizes => sizes;

    /// <summary>How wide a text is in the size of its part, in mm.</summary>
    public double WidthMillimetres(string text, string part, bool isBold) => Typeface.Kit.WidthMillimetres(Plain(text), sizes.Size(part).SizeMillimetres, isBold);

    /// <summary>From base line to base line of a part, in mm.</summary>
    public double LeadMillimetres(string part) => sizes.LeadMillimetres(part, sizes.Size(part).SizeMillimetres);

    /// <summary>A text on one line, in a size of its own where one is given.</summary>
    public LabelBlock Line(string text, string part, bool isBold, double? sizeMillimetres = null, string language = "")
    {
        var size = sizeMillimetres ?? sizes.Size(part).SizeMillimetres;
        var lead = sizes.LeadMillimetres(part, size);
        TextMark mark = new() { Text = Plain(text), XMillimetres = 0, BaseLineMillimetres = BaseLine(lead, size), SizeMillimetres = size, IsBold = isBold, Part = part, Language = language };
        return new(mark.WidthMillimetres, lead, [mark]);
    }

    /// <summary>Running text, broken between words; a word that is wider than the lines stands out of them.</summary>
    /// <param name="runs">The text.</param>
    /// <param name="widthMillimetres">How wide the lines may be.</param>
    /// <param name="isRight">Whether the lines end at the right edge.</param>
    public LabelBlock Paragraph(IEnumerable<SetRun> runs, double widthMillimetres, bool isRight = false)
    {
        List<LabelMark> marks = [];
        double width = 0, top = 0;
        foreach (var line in LinesOf([.. WordsOf(runs)], widthMillimetres))
        {
            var size = line.Max(piece => sizes.Size(piece.Part).SizeMillimetres);
            var lead = line.Max(piece => LeadMillimetres(piece.Part));
            var x = isRight ? widthMillimetres - line.Sum(WidthOf) : 0;
            foreach (var piece in line)
            {
                TextMark mark = new() { Text = piece.Text, XMillimetres = x, BaseLineMillimetres = top + BaseLine(lead, size), SizeMillimetres = sizes.Size(piece.Part).SizeMillimetres, IsBold = piece.IsBold, Part = piece.Part, Language = piece.Language };
                marks.Add(mark);
                x += mark.WidthMillimetres;
            }
            (width, top) = (Math.Max(width, x), top + lead);
        }
        return new(width, top, marks);
    }

    /// <summary>Text as it is measured: narrow spaces that do not break become plain ones that do not, and a number does not part from its unit.</summary>
    public static string Plain(string text) => BeforeUnit().Replace(text, "\u00a0").Replace('\u202f', '\u00a0').Replace('\u2009', '\u00a0').Replace('\u2011', '-');

    [GeneratedRegex(@"(?<=\d) (?=(?:%|°[CF]|[kmµ]?g|[mc]?l|kJ|kcal|[cm]m|oz)(?![\p{L}\d]))")]
    private static partial Regex BeforeUnit();

    // Letters and what hangs below them stand in the middle of their line.
    private static double BaseLine(double lead, double size) =>
        (lead - size * (Typeface.Kit.AscenderRatio + Typeface.Kit.DescenderRatio)) / 2 + size * Typeface.Kit.AscenderRatio;

    // A word may change its weight within; what parts words is a space of its own.
    private static IEnumerable<IReadOnlyList<SetRun>> WordsOf(IEnumerable<SetRun> runs)
    {
        List<SetRun> word = [];
        foreach (var run in runs)
        {
            var parts = Plain(run.Text).Split(' ');
            for (var at = 0; at < parts.Length; at++)
            {
                if (at > 0)
                {
                    if (word.Count > 0) yield return word;
                    word = [];
                }
                if (parts[at].Length > 0) word.Add(run with { Text = parts[at] });
            }
        }
        if (word.Count > 0) yield return word;
    }

    private List<List<SetRun>> LinesOf(IReadOnlyList<IReadOnlyList<SetRun>> words, double widthMillimetres)
    {
        List<List<SetRun>> lines = [];
        List<SetRun> line = [];
        var filled = 0.0;
        foreach (var word in words)
        {
            var wide = word.Sum(WidthOf);
            // A space has the weight of the word before it.
            var space = line.Count == 0 ? 0 : WidthOf(line[^1] with { Text = " " });
            if (line.Count > 0 && filled + space + wide > widthMillimetres + SumOfRoundingMillimetres)
            {
                lines.Add(line);
                (line, filled, space) = ([], 0, 0);
            }
            foreach (var (piece, at) in word.Select((piece, at) => (piece, at)))
            {
                if (line.Count > 0 && at == 0) line[^1] = line[^1] with { Text = line[^1].Text + " " };
                if (line.Count > 0 && IsAlike(line[^1], piece)) line[^1] = line[^1] with { Text = line[^1].Text + piece.Text };
                else line.Add(piece);
            }
            filled += space + wide;
        }
        if (line.Count > 0) lines.Add(line);
        return lines;
    }

    private static bool IsAlike(SetRun one, SetRun other) => one.IsBold == other.IsBold && one.Part == other.Part && one.Language == other.Language;

    private double WidthOf(SetRun run) => WidthMillimetres(run.Text, run.Part, run.IsBold);
}
