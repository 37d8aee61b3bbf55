using System.Globalization;
using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Reads <c>scores.csv</c> against the attributes and the plan.</summary>
internal sealed class ScoreRows
{
    /// <summary>The columns that the sheet needs for itself, so that no attribute may be called so.</summary>
    public static readonly IReadOnlyList<string> OwnColumns = ["tasting", "assessor", "code", "remark"];

    private readonly Dictionary<(string, string, string), int> _rows = [];
    private readonly List<Serving> _tasted = [];
    private readonly List<Score> _scores = [];
    private readonly List<Ticks> _ticks = [];
    private readonly List<Remark> _remarks = [];
    private readonly ICollection<CellProblem> _problems;
    private readonly Dictionary<string, ILookup<string, Serving>> _plan;
    private readonly Spellings _tastings;
    private readonly Dictionary<SensoryAttribute, Spellings> _words = [];

    private ScoreRows(IReadOnlyList<Serving> servings, ICollection<CellProblem> problems)
    {
        _problems = problems;
        _plan = servings.GroupBy(serving => serving.Tasting).ToDictionary(plan => plan.Key, plan => plan.ToLookup(serving => serving.Assessor, Names.Comparer), Names.Comparer);
        _tastings = new(servings.Select(serving => serving.Tasting));
    }

    public static TastingLog Read(Sheet sheet, IReadOnlyList<SensoryAttribute> attributes, IReadOnlyList<Serving> servings, ICollection<CellProblem> problems)
    {
        var reader = new ScoreRows(servings, problems);
        var unknown = UnknownColumns(sheet, attributes, problems);
        if (sheet.Require(["tasting", "assessor", "code"], problems))
            foreach (var row in sheet.Rows) reader.Read(row, attributes);
        return new()
        {
            Attributes = attributes,
            Servings = servings,
            Tasted = reader._tasted,
            Scores = reader._scores,
            Ticks = reader._ticks,
            Remarks = reader._remarks,
            UnknownColumns = unknown,
        };
    }

    // An unknown column is kept and named. If an attribute has no column and this one is nearly called like it, scores would be lost: refused.
    private static IReadOnlyList<string> UnknownColumns(Sheet sheet, IReadOnlyList<SensoryAttribute> attributes, ICollection<CellProblem> problems)
    {
        var unknown = sheet.Besides(OwnColumns.Concat(attributes.Select(attribute => attribute.Name)));
        string[] without = [.. attributes.Select(attribute => attribute.Name).Where(name => !sheet.Has(name))];
        foreach (var column in unknown)
            if (Names.Nearest(column, without) is [var near, ..])
                problems.Add(new(sheet.File, 0, column, column, $"no attribute is called so; '{near}' of attributes.csv has no column here, so write the name the same way in both"));
        return unknown;
    }

    private void Read(SheetRow row, IReadOnlyList<SensoryAttribute> attributes)
    {
        if (Served(row) is not { } serving) return;
        var key = (serving.Tasting, serving.Assessor, serving.Code);
        if (!_rows.TryAdd(key, row.Number))
        {
            _problems.Add(row.Problem("code", $"each code once for an assessor in a tasting; {serving.Assessor} has it in row {_rows[key]} already"));
            return;
        }
        _tasted.Add(serving);
        foreach (var attribute in attributes.Where(attribute => row[attribute.Name].Length > 0))
        {
            if (attribute.Kind == AttributeKind.Words) ReadTicks(row, serving, attribute);
            else ReadPoints(row, serving, attribute);
        }
        if (row["remark"].Length > 0) _remarks.Add(new(serving, row["remark"]));
    }

    private Serving? Served(SheetRow row)
    {
        if (!_plan.TryGetValue(row["tasting"], out var plan))
        {
            _problems.Add(row.Problem("tasting", _tastings.Expected("a tasting of servings.csv", row["tasting"])));
            return null;
        }
        Serving[] served = [.. plan[row["assessor"]]];
        if (served is [])
        {
            _problems.Add(row.Problem("assessor", new Spellings(plan.Select(assessor => assessor.Key)).Expected("an assessor of this tasting in servings.csv", row["assessor"])));
            return null;
        }
        var found = Array.Find(served, serving => serving.Code == row["code"]);
        if (found is null)
            _problems.Add(row.Problem("code", $"a code that {served[0].Assessor} was served in {served[0].Tasting}: {string.Join(", ", served.Select(serving => serving.Code).Order(StringComparer.Ordinal))}"));
        return found;
    }

    private void ReadPoints(SheetRow row, Serving serving, SensoryAttribute attribute)
    {
        var mark = row.Sheet.Dialect.DecimalMark;
        var whole = attribute.Kind == AttributeKind.JustRight;
        var scale = $"a {(whole ? "whole number" : "number")} from {Text(attribute.LowPoints)} to {Text(attribute.HighPoints)}";
        if (!NumberText.TryParse(row[attribute.Name], mark, out var points, out var expected))
            _problems.Add(row.Problem(attribute.Name, expected == "a number" ? $"{scale}, or a blank where it was not scored" : expected));
        else if (points < attribute.LowPoints || points > attribute.HighPoints || whole && points != Math.Floor(points))
            _problems.Add(row.Problem(attribute.Name, $"{scale}, the scale of attributes.csv"));
        else
            _scores.Add(new(serving, attribute, points, row.Origin(attribute.Name)));

        string Text(double number) => number.ToString("0.###", CultureInfo.InvariantCulture).Replace('.', mark);
    }

    // 'none' is nothing ticked; a blank cell never comes here and is missing.
    private void ReadTicks(SheetRow row, Serving serving, SensoryAttribute attribute)
    {
        if (!_words.TryGetValue(attribute, out var list)) _words[attribute] = list = new(attribute.Words);
        string[] ticked = Names.Same(row[attribute.Name], "none") ? [] : row[attribute.Name].Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        string[] strange = [.. ticked.Where(word => !list.Has(word))];
        foreach (var word in strange)
            _problems.Add(new(row.Sheet.File, row.Number, attribute.Name, word, list.Expected("words of attributes.csv parted by '; ', or none where nothing fitted", word)));
        if (strange is []) _ticks.Add(new(serving, attribute, [.. ticked.Select(list.Of).Distinct()], row.Origin(attribute.Name)));
    }
}
