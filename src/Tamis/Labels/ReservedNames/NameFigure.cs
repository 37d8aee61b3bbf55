using System.Globalization;
using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A figure of a food as a sheet, a document or a record states it.</summary>
/// <param name="Value">The figure, in the unit of its column.</param>
/// <param name="Source">Where it stands.</param>
public readonly record struct StatedFigure(decimal Value, Source Source)
{
    /// <summary>Whether it is of another sample of the food (a composition table) and not of what the kitchen bought.</summary>
    public bool IsOfRecord => Source.Evidence is not (Evidence.Sheet or Evidence.Supplier or Evidence.Estimate);
}

/// <summary>A figure that a reserved name hangs on, and how it follows from what is stated of a food: a row of <c>name-figures.csv</c>.</summary>
/// <remarks>Ways parted by a bar are tried in turn: the first whose terms are all stated is taken. A term is a column of a document
/// (<c>cocoa_percent</c>), a content by its tagname (<c>WATER</c>) or a number, each with a factor before it if need be.</remarks>
public sealed partial class NameFigure
{
    private readonly IReadOnlyList<IReadOnlyList<(decimal Factor, string Term)>> _ways;

    private NameFigure(string key, string word, string supply, IReadOnlyList<IReadOnlyList<(decimal, string)>> ways) => (Key, Word, Supply, _ways) = (key, word, supply, ways);

    /// <summary>The name by which rows of reserved names call it: <c>fat_free_cocoa_percent</c>.</summary>
    public string Key { get; }

    /// <summary>The figure in words.</summary>
    public string Word { get; }

    /// <summary>What to supply where it cannot be worked out.</summary>
    public string Supply { get; }

    /// <summary>The figure, and what it was worked out from; null where no way has all it needs.</summary>
    /// <param name="stated">What is stated of the food, by the name of a column or a tag; null where nobody states it.</param>
    public (decimal Value, IReadOnlyList<(string Term, StatedFigure Figure)> From)? Of(Func<string, StatedFigure?> stated)
    {
        if (stated(Key) is { } own) return (own.Value, [(Key, own)]);
        foreach (var way in _ways)
        {
            List<(string, StatedFigure)> from = [];
            decimal sum = 0;
            foreach (var (factor, term) in way)
            {
                if (term.Length == 0) sum += factor;
                else if (stated(term) is { } figure)
                {
                    sum += factor * figure.Value;
                    from.Add((term, figure));
                }
                else goto next;
            }
            return (sum, from);
        next:;
        }
        return null;
    }

    internal static NameFigure? Read(RuleRow row)
    {
        var ways = row.Cells.Required("from").Split('|').Select(WayOf).ToArray();
        if (Array.TrueForAll(ways, way => way is not null)) return new(row.Cells.Required("figure"), row.Cells.Required("word"), row.Cells.Required("supply"), ways!);
        row.Cells.Note("from", "columns, tags or numbers with + or - between them, such as cocoa_percent - cocoa_butter_percent or 100 - WATER");
        return null;
    }

    private static List<(decimal, string)>? WayOf(string text)
    {
        if (Way().Match(text) is not { Success: true } match) return null;
        List<(decimal, string)> terms = [];
        for (var i = 0; i < match.Groups["term"].Captures.Count; i++)
        {
            var parts = match.Groups["term"].Captures[i].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            var sign = i > 0 && match.Groups["sign"].Captures[i - 1].Value != "+" ? -1 : 1;
            var isNumber = decimal.TryParse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number);
            terms.Add((sign * (isNumber ? number : 1), isNumber ? parts.ElementAtOrDefault(1) ?? "" : parts[0]));
        }
        return terms;
    }

    [GeneratedRegex(@"^\s*(?<term>(?:\d+(?:\.\d+)?|(?:\d+(?:\.\d+)?\s+)?[A-Za-z]\w*))(?:\s+(?<sign>[-+])\s+(?<term>(?:\d+(?:\.\d+)?\s+)?[A-Za-z]\w*))*\s*$", RegexOptions.ExplicitCapture)]
    private static partial Regex Way();
}
