using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Reads <c>attributes.csv</c>.</summary>
internal static class AttributeRows
{
    private static readonly IReadOnlyDictionary<string, AttributeKind> Kinds = new Dictionary<string, AttributeKind>(Names.Comparer)
    {
        ["liking"] = AttributeKind.Liking,
        ["intensity"] = AttributeKind.Intensity,
        ["just-right"] = AttributeKind.JustRight,
        ["just right"] = AttributeKind.JustRight,
        ["words"] = AttributeKind.Words,
        ["ranking"] = AttributeKind.Ranking,
        ["pick"] = AttributeKind.Pick,
    };

    private static readonly Dictionary<string, ScaleForm> Forms = new(Names.Comparer) { ["line"] = ScaleForm.Line, ["boxes"] = ScaleForm.Boxes };

    // Places and picks have no ends that a sheet could choose.
    private const double MostPlaces = 60;

    public static IReadOnlyList<SensoryAttribute> Read(Sheet sheet, ICollection<CellProblem> problems)
    {
        List<SensoryAttribute> attributes = [];
        if (!sheet.Require(["attribute", "kind"], problems)) return attributes;
        Dictionary<string, int> rows = new(Names.Comparer);
        foreach (var row in sheet.Rows)
        {
            var name = row["attribute"];
            if (name.Length == 0)
                problems.Add(row.Problem("attribute", "the name of what is asked, such as sweetness"));
            else if (!rows.TryAdd(name, row.Number))
                problems.Add(row.Problem("attribute", $"each attribute once; row {rows[name]} has it already"));
            else if (ScoreRows.OwnColumns.Contains(name, Names.Comparer))
                problems.Add(row.Problem("attribute", "another name; this is a column that scores.csv needs for itself"));
            else if (Kind(row, problems) is { } kind && Attribute(row, name, kind, problems) is { } attribute)
                attributes.Add(attribute);
        }
        return attributes;
    }

    private static AttributeKind? Kind(SheetRow row, ICollection<CellProblem> problems)
    {
        if (Kinds.TryGetValue(row["kind"], out var kind)) return kind;
        problems.Add(row.Problem("kind", "liking, intensity, just-right, words, ranking or pick"));
        return null;
    }

    private static SensoryAttribute? Attribute(SheetRow row, string name, AttributeKind kind, ICollection<CellProblem> problems)
    {
        SensoryAttribute attribute = new(name, kind) { LowWord = row["low_word"], HighWord = row["high_word"], Question = row["question"] };
        if (kind == AttributeKind.Ranking) return attribute with { LowPoints = 1, HighPoints = MostPlaces };
        if (kind == AttributeKind.Pick) return attribute with { HighPoints = 1 };
        List<CellProblem> own = [];
        attribute = attribute with { Form = new RowReader(row, own).Choice("scale", Forms) ?? ScaleForm.Line };
        foreach (var problem in own) problems.Add(problem);
        if (kind != AttributeKind.Words)
            return End(row, "low", kind, problems) is { } low && End(row, "high", kind, problems) is { } high && Rises(row, low, high, problems)
                && Steps(row, attribute, low, high, problems) ? attribute with { LowPoints = low, HighPoints = high }
                : null;
        string[] words = [.. row["words"].Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
        if (words is [])
        {
            problems.Add(row.Problem("words", "the list of words to tick, parted by '; '"));
            return null;
        }
        foreach (var twice in words.GroupBy(word => word, Names.Comparer).Where(same => same.Count() > 1))
            problems.Add(row.Problem("words", $"each word once; '{twice.Key}' comes {twice.Count()} times"));
        return attribute with { Words = words };
    }

    private static double? End(SheetRow row, string column, AttributeKind kind, ICollection<CellProblem> problems)
    {
        if (!NumberText.TryParse(row[column], row.Sheet.Dialect.DecimalMark, out var number, out var expected))
            problems.Add(row.Problem(column, $"{expected}: the {(column == "low" ? "lowest" : "highest")} point of the scale"));
        else if (kind == AttributeKind.JustRight && (number != Math.Floor(number) || Math.Abs(number) > 1000))
            problems.Add(row.Problem(column, "a whole number; a just-right scale has whole steps"));
        else
            return number;
        return null;
    }

    // More boxes than this nobody reads; a line serves then.
    private const double MostBoxes = 20;

    private static bool Steps(SheetRow row, SensoryAttribute attribute, double low, double high, ICollection<CellProblem> problems)
    {
        if (attribute.Form == ScaleForm.Line || low == Math.Floor(low) && high == Math.Floor(high) && high - low <= MostBoxes) return true;
        problems.Add(row.Problem("scale", "line, or whole numbers under low and high, at most 20 apart: there is a box for each"));
        return false;
    }

    private static bool Rises(SheetRow row, double low, double high, ICollection<CellProblem> problems)
    {
        if (low < high) return true;
        problems.Add(row.Problem("high", $"a number above the lowest point of the scale, {row["low"]}"));
        return false;
    }
}
