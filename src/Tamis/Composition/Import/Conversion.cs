using System.Globalization;
using Tamis.Tables;

namespace Tamis.Composition.Import;

/// <summary>When a conversion may be made.</summary>
public enum ConversionUse
{
    /// <summary>Only where somebody asks for it, because it holds for some foods only or says the same in another way.</summary>
    OnRequest,
    /// <summary>On every import, where the food does not state the nutrient itself.</summary>
    OnImport,
    /// <summary>The same, but the result leaves something out and is a lower bound.</summary>
    LowerBound,
}

/// <summary>A named step from what a table states to what it does not: another unit, another definition.</summary>
/// <param name="Name">What it is called where a figure says how it came about.</param>
/// <param name="Tag">The nutrient that comes out.</param>
/// <param name="Formula">Sums of products of tags and numbers, <c>RETOL + CARTB / 12</c>; <c>XN</c> is the nitrogen factor of the food.</param>
/// <param name="Use">When it may be made.</param>
/// <param name="Source">Where the factors come from.</param>
/// <param name="Meaning">What it says, and for which foods it holds.</param>
public sealed record Conversion(string Name, string Tag, string Formula, ConversionUse Use, Source Source, string Meaning)
{
    private const string NitrogenFactor = "XN";

    private static readonly Dictionary<string, ConversionUse> Uses = new()
    {
        ["import"] = ConversionUse.OnImport, ["import, lower bound"] = ConversionUse.LowerBound, ["request"] = ConversionUse.OnRequest,
    };

    private readonly IReadOnlyList<(double Factor, IReadOnlyList<(string Tag, bool IsDivisor)> Tags)> _terms =
        Parse(Formula) ?? throw new ArgumentException($"'{Formula}' is no sum of tags and numbers such as RETOL + CARTB / 12.", nameof(Formula));

    /// <summary>The nutrients that must be known for it.</summary>
    public IReadOnlyList<string> From => [.. _terms.SelectMany(term => term.Tags).Select(tag => tag.Tag).Where(tag => tag != NitrogenFactor).Distinct()];

    /// <summary>Reads <c>conversions.csv</c> from the folder of a composition table.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static IReadOnlyList<Conversion> ReadAll(string folder)
    {
        List<CellProblem> problems = [];
        List<Conversion> all = [];
        var sheet = SheetFile.Read(Path.Combine(folder, "conversions.csv"));
        foreach (var row in sheet.Require(["conversion", "tag", "formula", "applies", "evidence", "source"], problems) ? sheet.Rows.Select(row => new RowReader(row, problems)) : [])
        {
            var formula = row.Required("formula");
            var (use, evidence, source) = (row.Choice("applies", Uses), row.Choice("evidence", CompositionFiles.EvidenceWords), row.Required("source"));
            if (Parse(formula) is null) row.Note("formula", "a sum of tags and numbers such as RETOL + CARTB / 12");
            else if (use is { } when && evidence is { } weight && source.Length > 0)
                all.Add(new(row.Required("conversion"), row.Required("tag"), formula, when, new(source, weight), row.Row["meaning"]));
        }
        return problems is [] ? all : throw new TableException(problems);
    }

    /// <summary>The result in 100 g from the contents in 100 g; NaN as soon as one of them is.</summary>
    /// <param name="per100Grams">The content of a tag in 100 g, in its own unit; NaN where unknown.</param>
    /// <param name="nitrogenFactor">Grams of protein to a gram of nitrogen; null where the record does not say.</param>
    public double Of(Func<string, double> per100Grams, double? nitrogenFactor = null)
    {
        var sum = 0.0;
        foreach (var (factor, tags) in _terms)
        {
            var product = factor;
            foreach (var (tag, isDivisor) in tags)
            {
                var content = tag == NitrogenFactor ? nitrogenFactor ?? double.NaN : per100Grams(tag);
                product = isDivisor ? product / content : product * content;
            }
            sum += product;
        }
        return double.IsFinite(sum) ? Derivation.Rounded(sum) : double.NaN;
    }

    /// <summary>The nutrient that comes out for a food; unknown as soon as what it needs is.</summary>
    public Content Of(NutrientProfile profile)
    {
        var value = Of(tag => profile[tag].Per100Grams, profile.NitrogenFactor);
        if (double.IsNaN(value)) return Content.Unknown;
        var isFilledIn = Use == ConversionUse.LowerBound || From.Any(tag => !profile[tag].IsOfRecord);
        var from = string.Join("; ", From.Select(tag => $"{profile.Nutrients[tag].Word} from {profile[tag].Source}"));
        return new(Derivation.StateOf(value, isFilledIn), value, null, new($"{Name}: {Formula} ({Source})", Evidence.Computed, from));
    }

    /// <summary>The row that comes out for a food, its bounds with it; null where a content that it needs is not known.</summary>
    internal ContentRow? Of(IReadOnlyDictionary<int, ContentRow> contents, NutrientList nutrients, double? nitrogenFactor, string source)
    {
        if (!From.All(tag => nutrients.IndexOf(tag) is var column and >= 0 && contents.ContainsKey(column))) return null;
        // What is below a limit has no figure to work with: its bounds go through instead.
        var (low, middle, high) = (Bound(bounds => bounds.Low), Bound(bounds => (bounds.Low + bounds.High) / 2), Bound(bounds => bounds.High));
        if (double.IsNaN(middle)) return null;
        var isFilledIn = Use == ConversionUse.LowerBound || high > low
            || From.Any(tag => contents[nutrients.IndexOf(tag)].State is ContentState.Estimated or ContentState.AssumedZero or ContentState.Trace);
        return new(Derivation.StateOf(middle, isFilledIn), middle, source, $"{Name}: {Formula}") { Low = high > low ? low : double.NaN, High = high > low ? high : double.NaN };

        double Bound(Func<(double Low, double High), double> side) => Of(tag => side(contents[nutrients.IndexOf(tag)].Bounds), nitrogenFactor);
    }

    // Terms parted by blanked plus and minus signs, factors by * and /; the first factor may be a number or a tag.
    private static List<(double, IReadOnlyList<(string, bool)>)>? Parse(string formula)
    {
        List<(double, IReadOnlyList<(string, bool)>)> terms = [];
        var words = formula.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length % 2 == 0) return null;
        var (factor, tags) = (1.0, new List<(string, bool)>());
        for (var i = 0; i < words.Length; i += 2)
        {
            var sign = i == 0 ? "" : words[i - 1];
            if (sign is "+" or "-")
            {
                terms.Add((factor, tags));
                (factor, tags) = (sign == "-" ? -1 : 1, []);
            }
            else if (sign is not ("" or "*" or "/")) return null;
            if (double.TryParse(words[i], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)) factor = sign == "/" ? factor / number : factor * number;
            else if (char.IsAsciiLetter(words[i][0])) tags.Add((words[i], sign == "/"));
            else return null;
        }
        terms.Add((factor, tags));
        return terms;
    }
}
