using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Text.Unicode;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Contents as a spreadsheet may have saved them: any separator, decimal mark and encoding, long or wide, with units in headers or cells.</summary>
/// <remarks>They are rewritten as the kit has them (long, commas, points, UTF-8) and read by the one reader of contents; what it finds wrong is said in the rows and columns of the file as it is.</remarks>
internal sealed partial class ContentsSheet
{
    private static readonly string[] NumberColumns = ["value", "low", "high", "standard_deviation"];

    private static readonly string[] BesideNutrients = ["food", "name", "group", "source", "method", "notes"];

    private readonly List<(SheetRow Row, string? Column)> _lines = [];
    private readonly StringBuilder _text = new(string.Join(',', ContentsReader.Columns) + "\n");
    private readonly Sheet _sheet;
    private readonly NutrientList _nutrients;
    private readonly List<CellProblem> _problems;

    private ContentsSheet(Sheet sheet, NutrientList nutrients, List<CellProblem> problems) => (_sheet, _nutrients, _problems) = (sheet, nutrients, problems);

    /// <summary>Whether the bytes are as the kit writes them, so that they can be read as they are.</summary>
    public static bool IsPlain(ReadOnlySpan<byte> bytes)
    {
        if (!Utf8.IsValid(bytes)) return false;
        var start = bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[3..] : bytes;
        var end = start.IndexOfAny((byte)'\r', (byte)'\n');
        string[] names = Encoding.UTF8.GetString(end < 0 ? start : start[..end]).Split(',');
        return names.Contains("food", Names.Comparer) && names.Contains("tag", Names.Comparer) && !names.Contains("unit", Names.Comparer) && !names.Any(name => name.Contains('"') || name.Contains(';') || name.Contains('\t'));
    }

    /// <summary>Rewrites the bytes of a file; null with problems where it is no sheet.</summary>
    public static (byte[] Bytes, ContentsSheet Sheet)? Rewrite(string file, byte[] bytes, NutrientList nutrients, List<CellProblem> problems)
    {
        if (SheetFile.ReadOn(() => SheetFile.Parse(file, bytes), problems) is not { } sheet) return null;
        ContentsSheet contents = new(sheet, nutrients, problems);
        var isLong = sheet.Has("tag");
        if (isLong && !sheet.Require(["food", "value", "source"], problems)) return null;
        if (isLong) contents.Long();
        else contents.Wide();
        return (Encoding.UTF8.GetBytes(contents._text.ToString()), contents);
    }

    /// <summary>A problem of the rewritten text in the rows and columns of the file.</summary>
    public CellProblem InFile(CellProblem problem)
    {
        if (problem.Row < 2 || problem.Row - 2 >= _lines.Count) return problem;
        var (row, column) = _lines[problem.Row - 2];
        return row.Problem(column is not null && problem.Column is "value" or "state" or "tag" ? column : problem.Column, problem.Expected);
    }

    private void Long()
    {
        foreach (var row in _sheet.Rows)
        {
            var column = _nutrients.IndexOf(row["tag"]);
            var unit = column < 0 ? null : _nutrients.All[column].Unit;
            var factor = 1.0;
            if (unit is not null && row["unit"] is { Length: > 0 } stated && (factor = Factor(stated, unit)) == 0)
            {
                _problems.Add(row.Problem("unit", $"{unit}, the unit of this nutrient, or one that converts to it"));
                factor = 1;
            }
            Line(row, null, ContentsReader.Columns.Select(name =>
                NumberColumns.Contains(name) ? Figure(row, name, unit, factor) : name == "samples" ? Figure(row, name, null, 1) : row[name]));
        }
    }

    private void Wide()
    {
        (string Column, Nutrient Nutrient, double Factor)[] columns = [.. _sheet.Columns.Where(column => column.Length > 0 && !BesideNutrients.Contains(column, Names.Comparer)).Select(Nutrient).OfType<(string, Nutrient, double)>()];
        foreach (var twice in columns.GroupBy(column => column.Nutrient.Tag).Where(group => group.Count() > 1))
            _problems.Add(new(_sheet.File, 1, twice.Last().Column, string.Join("; ", twice.Select(column => column.Column)), $"each nutrient in one column: these are all {twice.First().Nutrient.Word}"));
        if (!_sheet.Require(["food", "source"], _problems)) return;
        columns = [.. columns.DistinctBy(column => column.Nutrient.Tag)];
        foreach (var row in _sheet.Rows)
            foreach (var (column, nutrient, factor) in columns)
                if (row[column].Length > 0)
                    Line(row, column, [row["food"], nutrient.Tag, "", Figure(row, column, nutrient.Unit, factor), "", "", "", "", row["source"], row["method"]]);
    }

    private (string, Nutrient, double)? Nutrient(string column)
    {
        var match = NameAndUnit().Match(column);
        var (name, stated) = match.Success ? (match.Groups["name"].Value, match.Groups["unit"].Value) : (column, "");
        // A tag may end in what looks like a unit (ENERC_KCAL), so the whole name is tried first.
        var nutrient = Known(column) ?? Known(name);
        if (Known(column) is not null) stated = "";
        var factor = nutrient is null ? 0 : stated.Length == 0 ? 1 : Factor(stated, nutrient.Unit);
        if (nutrient is not null && factor > 0) return (column, nutrient, factor);
        _problems.Add(new(_sheet.File, 1, column, column, nutrient is not null ? $"a unit that converts to {nutrient.Unit}"
            : Names.Nearest(name, _nutrients.All.Select(known => known.Tag).Concat(_nutrients.All.Select(known => known.Word))) is { Count: > 0 } near ? $"a tag or word of nutrients.csv, perhaps {string.Join(" or ", near)}" : $"a tag or word of nutrients.csv, or one of: {string.Join(", ", BesideNutrients)}"));
        return null;
    }

    private Nutrient? Known(string name) => _nutrients.All.FirstOrDefault(nutrient => Names.Same(nutrient.Tag, name) || Names.Same(nutrient.Word, name));

    // The figure as the reader of contents takes it; a cell that is none is a problem here, with the mark that the file has.
    private string Figure(SheetRow row, string column, string? unit, double factor)
    {
        var text = row[column];
        if (text.Length == 0) return "";
        if (text.ToUpperInvariant() is "TR" or "TR." or "TRACE" or "TRACES") return "tr";
        var below = text[0] == '<' ? "<" : "";
        var number = text[below.Length..].Trim();
        if (unit is not null && NumberAndUnit().Match(number) is { Success: true } match)
        {
            factor = Factor(match.Groups["unit"].Value, unit);
            number = match.Groups["number"].Value;
        }
        if (factor > 0 && NumberText.TryParse(number, _sheet.Dialect.DecimalMark, out var value, out _))
            return below + (factor == 1 ? value : double.Parse((value * factor).ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)).ToString("R", CultureInfo.InvariantCulture);
        NumberText.TryParse(number, _sheet.Dialect.DecimalMark, out _, out var expected);
        _problems.Add(row.Problem(column, factor == 0 ? $"a unit that converts to {unit}"
            : (expected is "" or "a number" ? $"a number of 0 or more such as {Written(1.5)}" : expected) + (unit is null ? "" : $", or tr, or <{Written(0.1)}; leave the cell blank if nobody knows")
                + (DateText.LooksLikeDate(text) ? "; the spreadsheet made a date of it: format the cell as text and write it again" : "")));
        return "";
    }

    private string Written(double value) => NumberText.Write(value, _sheet.Dialect.DecimalMark);

    private void Line(SheetRow row, string? column, IEnumerable<string> cells)
    {
        _lines.Add((row, column));
        _text.AppendJoin(',', cells.Select(cell => $"\"{cell.ReplaceLineEndings(" ").Replace("\"", "\"\"", StringComparison.Ordinal)}\"")).Append('\n');
    }

    // From one unit to another; 0 where there is no way.
    private static double Factor(string from, string to)
    {
        var (left, right) = (Grams(from), Grams(to));
        return left > 0 && right > 0 ? left / right : from.Equals(to, StringComparison.OrdinalIgnoreCase) ? 1 : 0;
    }

    private static double Grams(string unit) => unit.ToUpperInvariant() switch { "G" => 1, "MG" => 1e-3, "UG" or "MCG" or "\u039cG" or "\u00b5G" => 1e-6, _ => 0 };

    [GeneratedRegex(@"^(?<name>.+?)[ _]*[\(\[ _](?<unit>g|mg|ug|mcg|µg|μg|kj|kcal)(/100 ?g)?[\)\]]?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NameAndUnit();

    [GeneratedRegex(@"^(?<number>.*[0-9])[ \u00a0\u202f]*(?<unit>g|mg|ug|mcg|µg|μg|kj|kcal)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NumberAndUnit();
}
