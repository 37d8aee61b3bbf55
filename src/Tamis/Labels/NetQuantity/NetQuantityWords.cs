using System.Globalization;
using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A unit in which a pack states what it holds.</summary>
/// <param name="IsOfVolume">Whether it measures volume.</param>
/// <param name="Name">The unit as it is printed: <c>fl oz</c>.</param>
/// <param name="Holds">What one holds, in grams or millilitres.</param>
/// <param name="Decimals">To how many decimals the last unit of a statement is written; it is cut there and never rounded up.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record NetQuantityUnit(bool IsOfVolume, string Name, decimal Holds, int Decimals, RuleOrigin Origin);

/// <summary>How quantities of a range are stated.</summary>
/// <param name="IsOfVolume">Whether the pack is labelled by volume.</param>
/// <param name="From">From which quantity on, in grams or millilitres.</param>
/// <param name="Below">Below which quantity; null where there is no end.</param>
/// <param name="Figures">How many figures a statement has at most; null where nothing says it.</param>
/// <param name="Wording">The words by language; <c>{oz}</c> is the quantity in ounces, <c>{lb + oz}</c> in whole pounds with the rest in ounces.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record NetQuantityWording(bool IsOfVolume, decimal From, decimal? Below, int? Figures, IReadOnlyDictionary<string, string> Wording, RuleOrigin Origin);

/// <summary>How a pack of a rule set states what it holds: <c>net-quantity-units.csv</c> and <c>net-quantity-words.csv</c> of its folder. Where it has none, in grams or millilitres.</summary>
public sealed partial class NetQuantityWords
{
    private const string UnitsFile = "net-quantity-units.csv", WordsFile = "net-quantity-words.csv";

    private static readonly Dictionary<string, bool> Measures = new(Names.Comparer) { ["weight"] = false, ["volume"] = true };

    private readonly IReadOnlyList<NetQuantityUnit> _units;

    private NetQuantityWords(IReadOnlyList<NetQuantityUnit> units, IReadOnlyList<NetQuantityWording> rows) => (_units, Rows) = (units, rows);

    /// <summary>The ranges, in the order of the file.</summary>
    public IReadOnlyList<NetQuantityWording> Rows { get; }

    /// <summary>The words of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read, a range does not join the one above, or a wording names a unit that no row has; all problems at once.</exception>
    public static NetQuantityWords Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>The statement of a quantity, with the row; null where no range takes it. A quantity is never said larger than it is.</summary>
    /// <param name="quantity">Grams, or millilitres.</param>
    /// <param name="isVolume">Whether they are millilitres.</param>
    /// <param name="language">The language of the pack; a row that lacks it speaks in its first one.</param>
    public (string Text, RuleOrigin Origin)? Stated(decimal quantity, bool isVolume, string language)
    {
        if (Rows.FirstOrDefault(row => row.IsOfVolume == isVolume && quantity >= row.From && (row.Below is not { } below || quantity < below)) is not { } row) return null;
        var wording = row.Wording.GetValueOrDefault(language) ?? row.Wording.Values.First();
        return (Hole().Replace(wording, hole => In(quantity, row.Figures, [.. UnitsOf(hole).Select(name => Unit(name, isVolume)!)])), row.Origin);
    }

    private NetQuantityUnit? Unit(string name, bool isVolume) => _units.FirstOrDefault(unit => unit.IsOfVolume == isVolume && unit.Name == name);

    // Cut first, in the smallest unit: so what stands in brackets is the quantity before them.
    private static string In(decimal quantity, int? figures, NetQuantityUnit[] ladder)
    {
        var smallest = ladder[^1];
        var left = Cut(quantity / smallest.Holds, smallest.Decimals, figures) * smallest.Holds;
        List<string> said = [];
        foreach (var unit in ladder)
        {
            var count = unit == smallest ? left / unit.Holds : Math.Floor(left / unit.Holds);
            left -= count * unit.Holds;
            if (count > 0 || (unit == smallest && said.Count == 0)) said.Add(string.Create(CultureInfo.InvariantCulture, $"{count:0.####} {unit.Name}"));
        }
        return string.Join(' ', said);
    }

    private static decimal Cut(decimal count, int most, int? figures)
    {
        var whole = Math.Floor(count) is > 0 and var floor ? floor.ToString("0", CultureInfo.InvariantCulture).Length : 0;
        var decimals = figures is { } asked ? Math.Min(most, asked - whole) : most;
        // 10 to a negative power is a step of tens: four figures of which three may be said.
        var step = 1m;
        for (var each = 0; each < Math.Abs(decimals); each++) step = decimals > 0 ? step / 10 : step * 10;
        return Math.Floor(count / step) * step;
    }

    private static IEnumerable<string> UnitsOf(Match hole) => hole.Groups[1].Value.Split('+', StringSplitOptions.TrimEntries);

    private static NetQuantityWords Read(RuleFolder folder, List<CellProblem> problems)
    {
        List<NetQuantityUnit> units = [];
        foreach (var row in folder.RowsIfAny(UnitsFile, ["measure", "unit", "holds", "decimals"], problems))
        {
            NetQuantityUnit unit = new(row.Choice("measure", Measures), row.Cells.Required("unit"), row.RequiredDecimal("holds"), row.Cells.Whole("decimals", 0, 4) ?? 0, row.Origin());
            if (unit.Holds == 0) row.Cells.Note("holds", "a number above 0: grams or millilitres in one of the unit");
            units.Add(unit);
        }
        NetQuantityWords read = new(units, []);
        List<NetQuantityWording> rows = [];
        foreach (var row in folder.RowsIfAny(WordsFile, ["measure", "from", "below", "figures"], problems))
        {
            var isVolume = row.Choice("measure", Measures);
            NetQuantityWording wording = new(isVolume, read.Limit(row, "from", isVolume) ?? 0, read.Limit(row, "below", isVolume), row.Cells.Whole("figures", 1, 9), row.ByLanguage(["measure", "from", "below", "figures"]), row.Origin());
            if (wording.Wording.Count == 0) row.Cells.Note("measure", "words in one language at least");
            foreach (var (language, words) in wording.Wording)
                foreach (var name in Hole().Matches(words).SelectMany(UnitsOf).Where(name => read.Unit(name, isVolume) is null))
                    row.Cells.Note(language, $"units of {UnitsFile}; it has no '{name}' of this measure");
            var above = rows.LastOrDefault(each => each.IsOfVolume == isVolume);
            if (wording.From != (above is null ? 0 : above.Below)) row.Cells.Note("from", "where the row above of this measure ends: the ranges join, and the first begins at 0");
            rows.Add(wording);
        }
        return new(units, rows);
    }

    // A quantity with its unit: 4 lb.
    private decimal? Limit(RuleRow row, string column, bool isVolume)
    {
        if (row.Cells.Text(column) is not { } text) return null;
        var end = text.IndexOf(' ', StringComparison.Ordinal);
        if (end > 0 && decimal.TryParse(text[..end], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && Unit(text[(end + 1)..], isVolume) is { } unit) return number * unit.Holds;
        row.Cells.Note(column, $"a number and a unit of {UnitsFile}, such as {string.Join(" or ", _units.Where(each => each.IsOfVolume == isVolume).Select(each => $"4 {each.Name}"))}");
        return null;
    }

    [GeneratedRegex(@"\{([^}]+)\}")]
    private static partial Regex Hole();
}
