using System.Globalization;
using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Reads <c>scores.csv</c> against the attributes and the plan.</summary>
internal sealed class ScoreRows
{
    /// <summary>The columns that the sheet needs for itself, so that no attribute may be called so.</summary>
    public static readonly IReadOnlyList<string> OwnColumns = ["tasting", "assessor", "code", "remark", "position", AttributeColumn, AnswerColumn];

    // A sheet with these two columns has a row an answer instead of a row a serving.
    private const string AttributeColumn = "attribute", AnswerColumn = "answer";

    private readonly Dictionary<(string, string, string, string), int> _rows = [];
    private readonly HashSet<Serving> _met = [], _answered = [];
    private readonly HashSet<string> _begun = [];
    private readonly List<Serving> _tasted = [];
    private readonly List<Score> _scores = [];
    private readonly List<(Score Score, SheetRow Row, string Column)> _places = [];
    private readonly List<Ticks> _ticks = [];
    private readonly List<Remark> _remarks = [];
    private readonly ScoreProblems _problems = new();
    private readonly List<(Serving Serving, SheetRow Row)> _order = [];
    private readonly Dictionary<string, ILookup<string, Serving>> _plan;
    private readonly Spellings _tastings;
    private readonly Dictionary<SensoryAttribute, Spellings> _words = [];

    private ScoreRows(IReadOnlyList<Serving> servings)
    {
        _plan = servings.GroupBy(serving => serving.Tasting).ToDictionary(plan => plan.Key, plan => plan.ToLookup(serving => serving.Assessor, Names.Comparer), Names.Comparer);
        _tastings = new(servings.Select(serving => serving.Tasting));
    }

    public static TastingLog Read(Sheet sheet, IReadOnlyList<SensoryAttribute> attributes, IReadOnlyList<Serving> servings, ICollection<CellProblem> problems)
    {
        var reader = new ScoreRows(servings);
        var isLong = sheet.Has(AttributeColumn) && sheet.Has(AnswerColumn);
        var unknown = isLong ? sheet.Besides(OwnColumns) : UnknownColumns(sheet, attributes, problems);
        if (sheet.Require(["tasting", "assessor", "code"], problems))
            foreach (var row in sheet.Rows)
                if (isLong) reader.ReadAnswer(row, attributes);
                else reader.Read(row, attributes);
        foreach (var problem in reader._problems.Told(reader.WithoutARow)) problems.Add(problem);
        Rankings.Check(reader._places, problems);
        return new()
        {
            Attributes = attributes,
            Servings = servings,
            Tasted = [.. reader._tasted.Where(reader.HasBegun)],
            Scores = reader._scores,
            Ticks = reader._ticks,
            Remarks = reader._remarks,
            UnknownColumns = unknown,
            Doubts = ServingOrder.Doubts(reader._order),
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
        if (Served(row) is not { } serving || !IsFirst(row, serving, "")) return;
        _tasted.Add(serving);
        foreach (var attribute in attributes) Read(row, attribute.Name, serving, attribute);
        AddRemark(serving, row["remark"]);
    }

    private void AddRemark(Serving serving, string text)
    {
        if (text.Length == 0) return;
        _begun.Add(serving.Tasting);
        _remarks.Add(new(serving, text));
    }

    // Rows that wait to be filled are no tasting yet: a tasting has begun with its first answer.
    private bool HasBegun(Serving serving) => _begun.Contains(serving.Tasting);

    // A row an answer: the attribute stands in one column, what was answered in another; 'remark' is an attribute then.
    private void ReadAnswer(SheetRow row, IReadOnlyList<SensoryAttribute> attributes)
    {
        var name = row[AttributeColumn];
        var attribute = attributes.FirstOrDefault(each => Names.Same(each.Name, name));
        if (attribute is null && !Names.Same(name, "remark"))
            _problems.AddAlike(row.Problem(AttributeColumn, new Spellings(attributes.Select(each => each.Name)).Expected("an attribute of attributes.csv, or remark", name)));
        if (Served(row) is not { } serving || !IsFirst(row, serving, name)) return;
        if (_met.Add(serving)) _tasted.Add(serving);
        if (attribute is not null) Read(row, AnswerColumn, serving, attribute);
        else if (Names.Same(name, "remark")) AddRemark(serving, row[AnswerColumn]);
    }

    private void Read(SheetRow row, string column, Serving serving, SensoryAttribute attribute)
    {
        if (row[column].Length == 0) return;
        _begun.Add(serving.Tasting);
        if (attribute.Kind == AttributeKind.Words) ReadTicks(row, column, serving, attribute);
        else if (attribute.Kind == AttributeKind.Pick) ReadPick(row, column, serving, attribute);
        else ReadPoints(row, column, serving, attribute);
    }

    private bool IsFirst(SheetRow row, Serving serving, string attribute)
    {
        if (_rows.TryAdd((serving.Tasting, serving.Assessor, serving.Code, Names.Key(attribute)), row.Number))
        {
            if (_answered.Add(serving)) _order.Add((serving, row));
            return true;
        }
        _problems.AddTwice(row, serving, _rows[(serving.Tasting, serving.Assessor, serving.Code, Names.Key(attribute))], attribute);
        return false;
    }

    private Serving? Served(SheetRow row)
    {
        if (!_plan.TryGetValue(row["tasting"], out var plan))
        {
            _problems.AddAlike(row.Problem("tasting", _tastings.Expected("a tasting of servings.csv", row["tasting"])));
            return null;
        }
        Serving[] served = [.. plan[row["assessor"]]];
        if (served is [])
        {
            _problems.AddAlike(row.Problem("assessor", new Spellings(plan.Select(assessor => assessor.Key)).Expected("an assessor of this tasting in servings.csv", row["assessor"])));
            return null;
        }
        var found = Array.Find(served, serving => serving.Code == row["code"]);
        if (found is null) _problems.AddStrange(row.Problem("code", NotServed(row["code"], served, plan)), served[0], row["code"]);
        else if (row["position"].Length > 0 && found.Position is { } place && row["position"] != place.ToString(CultureInfo.InvariantCulture))
            _problems.AddAlike(row.Problem("position", $"{place}, the place of {found.Code} in the order of {found.Assessor} in servings.csv; are two codes swapped?"));
        return found;
    }

    // The servings of an assessor in a tasting that no row answers: one of them may be meant where a code comes twice.
    private IEnumerable<string> WithoutARow(Serving serving) =>
        _plan[serving.Tasting][serving.Assessor].Where(each => !_answered.Contains(each)).Select(each => each.Code).Order(StringComparer.Ordinal);

    private string NotServed(string code, Serving[] served, ILookup<string, Serving> plan)
    {
        var own = $"a code that {served[0].Assessor} was served in {served[0].Tasting}: {string.Join(", ", served.Select(serving => serving.Code).Order(StringComparer.Ordinal))}";
        string[] others = [.. plan.Where(assessor => assessor.Any(serving => serving.Code == code)).Select(assessor => assessor.First().Assessor).Order(StringComparer.Ordinal)];
        string[] elsewhere = [.. _plan.Where(other => other.Value.Any(assessor => assessor.Any(serving => serving.Code == code))).Select(other => other.Key).Order(StringComparer.Ordinal)];
        if (others.Length == 0) return elsewhere.Length == 0 ? own : $"{own}; {code} is a code of {string.Join(" and ", elsewhere)}: perhaps a ballot of that tasting";
        return $"{own}; {code} went to {string.Join(", ", others.Take(4))}{(others.Length > 4 ? " …" : "")}: perhaps the code or the assessor of another ballot";
    }

    private void ReadPoints(SheetRow row, string column, Serving serving, SensoryAttribute attribute)
    {
        var mark = row.Sheet.Dialect.DecimalMark;
        var whole = attribute.IsWhole;
        var scale = attribute.Kind == AttributeKind.Ranking ? "a place: 1, 2, 3 …" : $"a {(whole ? "whole number" : "number")} from {Text(attribute.LowPoints)} to {Text(attribute.HighPoints)}";
        if (!NumberText.TryParse(row[column], mark, out var points, out var expected))
            _problems.Add(row.Problem(column, expected == "a number" ? $"{scale}, or a blank where it was not scored" : expected));
        else if (points < attribute.LowPoints || points > attribute.HighPoints || whole && points != Math.Floor(points))
            _problems.Add(row.Problem(column, $"{scale}, the scale of attributes.csv"));
        else
        {
            Score score = new(serving, attribute, points, row.Origin(column));
            _scores.Add(score);
            if (attribute.Kind == AttributeKind.Ranking) _places.Add((score, row, column));
        }

        string Text(double number) => number.ToString("0.###", CultureInfo.InvariantCulture).Replace('.', mark);
    }

    private void ReadPick(SheetRow row, string column, Serving serving, SensoryAttribute attribute)
    {
        if (Picks.TryGetValue(row[column], out var points)) _scores.Add(new(serving, attribute, points, row.Origin(column)));
        else _problems.Add(row.Problem(column, "x where it was picked, 0 or a blank where it was not"));
    }

    private static readonly Dictionary<string, double> Picks = new(Names.Comparer) { ["x"] = 1, ["1"] = 1, ["yes"] = 1, ["0"] = 0, ["no"] = 0 };

    // 'none' is nothing ticked; a blank cell never comes here and is missing.
    private void ReadTicks(SheetRow row, string column, Serving serving, SensoryAttribute attribute)
    {
        if (!_words.TryGetValue(attribute, out var list)) _words[attribute] = list = new(attribute.Words);
        string[] ticked = Names.Same(row[column], "none") ? [] : row[column].Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        string[] strange = [.. ticked.Where(word => !list.Has(word))];
        foreach (var word in strange)
            _problems.Add(new(row.Sheet.File, row.Number, column, word, list.Expected("words of attributes.csv parted by '; ', or none where nothing fitted", word)));
        if (strange is []) _ticks.Add(new(serving, attribute, [.. ticked.Select(list.Of).Distinct()], row.Origin(column)));
    }
}
