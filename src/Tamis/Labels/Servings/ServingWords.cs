using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>The lines about the serving that a rule set's panel prints, and when a second column for the whole package or for one unit of it is asked for: <c>serving-words.csv</c>.</summary>
public sealed class ServingWords
{
    private const string Size = "serving size metric", Count = "servings per container";
    private const string OfPackage = "second column", OfUnit = "second column of a unit", OfAmount = "column of another amount";

    // What a column of another amount shows; whether that is energy and percentages alone.
    private static readonly Dictionary<string, bool> Shown = new(Names.Comparer) { ["energy and percentages"] = true, ["all"] = false };

    private readonly string? _size;
    private readonly IReadOnlyList<(string Line, double From, double To, RuleOrigin Origin)> _second;

    private ServingWords(string? size, IReadOnlyList<(string, double, double, RuleOrigin)> second, bool? other) => (_size, _second, IsOtherAmountBrief) = (size, second, other);

    /// <summary>Whether the column of another amount of the food shows energy and percentages alone; null where the law lets no such column stand beside that of the serving.</summary>
    public bool? IsOtherAmountBrief { get; }

    /// <summary>The words of a rule set; none where it has none.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static ServingWords Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>The metric size of a serving as the label prints it: rounded where the rule set has bands for it.</summary>
    /// <param name="rules">The rule set.</param>
    /// <param name="amount">The amount, in <paramref name="unit"/>.</param>
    /// <param name="unit">g, or ml of what is sold by volume.</param>
    public string MetricSize(RuleSet rules, double amount, string unit) =>
        rules.Rounding.For(Size, unit).Any() ? rules.Rounding.Round(Size, unit, RoundingTable.ToDecimal(amount)).Text : $"{amount.ToString("0.#", CultureInfo.InvariantCulture)} {unit}";

    /// <summary>The row that asks for a second column, where the package is so many per cent of the reference amount; null where none does.</summary>
    public RuleOrigin? SecondColumn(double packagePercent) => Asked(OfPackage, packagePercent);

    /// <summary>The row that asks for a second column for one unit, where each of several in a package is so many per cent of the reference amount; null where none does.</summary>
    public RuleOrigin? UnitColumn(double unitPercent) => Asked(OfUnit, unitPercent);

    private RuleOrigin? Asked(string line, double percent) => _second.Where(row => row.Line == line && percent >= row.From && percent <= row.To).Select(row => row.Origin).FirstOrDefault();

    /// <summary>The lines of a page, in the words that the drawing has for the count: how many servings the pack holds, where the law asks for that, and how large one is.</summary>
    public IEnumerable<string> Lines(RuleSet rules, string household, string size, double? perContainer)
    {
        if (perContainer is { } count && Counted(rules, count) is var said && PanelTerms.Of(rules).In(said.IsAbout ? "servings about" : "servings", "en") is { } words) yield return words.Replace("#", said.Number);
        if (_size is { } text) yield return text.Replace("#", household.Length > 0 ? $"{household} ({size})" : size);
    }

    /// <summary>How many servings a pack holds as a label says it: rounded by the bands of the rule set, or else to a whole number; and whether rounding moved it, so that a word such as <c>about</c> goes before it.</summary>
    /// <param name="rules">The rule set.</param>
    /// <param name="count">The servings in the pack, above 0.</param>
    public static (string Number, bool IsAbout) Counted(RuleSet rules, double count)
    {
        // A net quantity that was weighed differs from the sum of its servings by the last digit: that is no rounding.
        var (said, text) = rules.Rounding.For(Count, "servings").Any() && rules.Rounding.Round(Count, "servings", RoundingTable.ToDecimal(Math.Round(count, 6))) is var rounded
            ? ((double?)rounded.ShownNumber, rounded.Text)
            : (Math.Round(count, MidpointRounding.AwayFromZero), Math.Round(count, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture));
        return (text, said is not { } shown || Math.Abs(shown - count) >= 0.005);
    }

    private static ServingWords Read(RuleFolder folder, List<CellProblem> problems)
    {
        string? size = null;
        List<(string, double, double, RuleOrigin)> second = [];
        bool? other = null;
        foreach (var row in folder.RowsIfAny("serving-words.csv", ["line", "text", "from_percent", "to_percent"], problems))
        {
            var line = row.Cells.Required("line");
            if (line is "size")
            {
                size = row.Cells.Required("text");
                if (!size.Contains('#')) row.Cells.Note("text", "words with # for the figure");
                row.Origin();
            }
            else if (line is OfPackage or OfUnit) second.Add((line, (double)row.RequiredDecimal("from_percent"), (double)row.RequiredDecimal("to_percent"), row.Origin()));
            else if (line is OfAmount)
            {
                other = row.Choice("text", Shown);
                row.Origin();
            }
            else row.Cells.Note("line", $"one of: size, {OfPackage}, {OfUnit}, {OfAmount}");
        }
        return new(size, second, other);
    }
}
