using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A text of the rules that stands in several languages, and its term in one of them.</summary>
/// <param name="File">The file, from the folder of all rule sets on: <c>words.csv</c>, <c>eu/panel-words.csv</c>.</param>
/// <param name="Row">The row, by its first columns: as many as tell it from the others.</param>
/// <param name="English">What it says in English.</param>
/// <param name="Term">The term; null where there is none.</param>
/// <param name="Origin">Where the English text comes from: act, locator, strength, as the file has them.</param>
public sealed record RuleTerm(string File, string Row, string English, string? Term, IReadOnlyList<string> Origin);

/// <summary>The terms of further languages: a file a language in the folder <c>terms</c> beside the rule sets, laid over the columns of their files.</summary>
/// <remarks>A cell that the file of a rule set fills itself is kept; what it leaves blank, or has no column for, comes from here.</remarks>
public sealed class RuleTerms
{
    /// <summary>The folder, beside the rule sets.</summary>
    public const string FolderName = "terms";

    /// <summary>The columns of a file of terms.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["file", "row", "english", "term", .. RuleRow.OriginColumns];

    /// <summary>The files that have a column a language, by their names; those that serve all rule sets stand beside them.</summary>
    public static IReadOnlyList<string> Files { get; } = ["words.csv", "allergen-words.csv", "allergen-groups.csv", "panel-words.csv", "particulars.csv", "date-marking.csv", "short-panel.csv", "front-of-pack-symbol.csv", "net-quantity-words.csv", "allergen-kinds.csv", AllergenWords.ExceptionsFile];

    private readonly IReadOnlyList<(string Language, SheetRow Row)> _rows;
    private readonly IReadOnlyList<CellProblem> _problems;

    private RuleTerms(IReadOnlyList<(string, SheetRow)> rows, IReadOnlyList<CellProblem> problems) => (_rows, _problems) = (rows, problems);

    /// <summary>The languages that have a file, by their codes.</summary>
    public IReadOnlyList<string> Languages => [.. _rows.Select(row => row.Language).Distinct(Names.Comparer)];

    /// <summary>Reads the files of a folder of rule sets; none where there is no such folder.</summary>
    /// <param name="rulesFolder">The folder of all rule sets.</param>
    public static RuleTerms Read(string rulesFolder)
    {
        var folder = Path.Combine(rulesFolder, FolderName);
        if (!Directory.Exists(folder)) return new([], []);
        List<(string, SheetRow)> rows = [];
        List<CellProblem> problems = [];
        foreach (var path in Directory.EnumerateFiles(folder, "*.csv").Order(StringComparer.Ordinal))
        {
            List<CellProblem> own = [];
            var sheet = SheetFile.Read(path, new(DecimalMark: '.', DateOrder: DateOrder.YearMonthDay));
            if (sheet.Require(Columns, own))
                foreach (var row in sheet.Rows.Where(row => row["term"].Length > 0))
                {
                    RowReader cells = new(row, own);
                    if (cells.Required("file") is { Length: > 0 } file && !File.Exists(Path.Combine(rulesFolder, file))) cells.Note("file", $"a file of the rules that has a column a language, such as eu/panel-words.csv: {string.Join(", ", Files)}");
                    new RuleRow(cells).Origin();
                    rows.Add((Path.GetFileNameWithoutExtension(path), row));
                }
            problems.AddRange(own.Select(Named));
        }
        return new(rows, problems);
    }

    /// <summary>A file of a rule set with the terms that it lacks itself.</summary>
    /// <param name="sheet">The file as it is.</param>
    /// <param name="file">Its path from the folder of all rule sets on.</param>
    /// <param name="problems">Where to note terms for rows that the file does not have.</param>
    internal Sheet Over(Sheet sheet, string file, List<CellProblem> problems)
    {
        problems.AddRange(_problems);
        var own = _rows.Where(each => Names.Same(each.Row["file"].Replace('\\', '/'), file)).ToLookup(each => each.Language, each => each.Row, Names.Comparer);
        if (own.Count == 0) return sheet;
        var ids = IdsOf(sheet);
        foreach (var row in own.SelectMany(rows => rows).Where(row => !ids.Contains(row["row"], Names.Comparer)))
            problems.Add(Named(row.Problem("row", $"a row of {file}; near ones: {string.Join(", ", Names.Nearest(row["row"], ids))}")));
        foreach (var rows in own)
        {
            var terms = rows.DistinctBy(row => Names.Key(row["row"])).ToDictionary(row => row["row"], row => row["term"], Names.Comparer);
            sheet = sheet.With(rows.Key, (row, at) => row[rows.Key] is { Length: > 0 } filled ? filled : terms.GetValueOrDefault(ids[at]) ?? "");
        }
        return sheet;
    }

    /// <summary>Every text of the rules that stands in several languages, with its term in one of them.</summary>
    /// <param name="rulesFolder">The folder of all rule sets.</param>
    /// <param name="language">The language's code.</param>
    /// <param name="sets">The rule sets, by the names of their folders, each with the one that it is based on; what serves all of them is always there.</param>
    /// <exception cref="TableException">A file cannot be read; all problems at once.</exception>
    public static IReadOnlyList<RuleTerm> All(string rulesFolder, string language, IReadOnlyList<string> sets)
    {
        var terms = Read(rulesFolder);
        List<CellProblem> problems = [];
        List<RuleTerm> all = [];
        foreach (var file in new[] { "" }.Concat(sets.SelectMany(set => WithBases(RuleFolder.Open(Path.Combine(rulesFolder, set)))).Distinct(Names.Comparer)).SelectMany(set => Files.Select(file => set.Length == 0 ? file : $"{set}/{file}")).Where(file => File.Exists(Path.Combine(rulesFolder, file))))
        {
            var sheet = terms.Over(SheetFile.Read(Path.Combine(rulesFolder, file), new(DecimalMark: '.', DateOrder: DateOrder.YearMonthDay)), file, problems);
            var (ids, english) = (IdsOf(sheet), sheet.Has("en") ? "en" : sheet.Columns[0]);
            all.AddRange(sheet.Rows.Select((row, at) => new RuleTerm(file, ids[at], row[english], language == "en" ? row[english] : row[language] is { Length: > 0 } term ? term : null, [.. RuleRow.OriginColumns.Select(column => row[column])])).Where(term => term.English.Length > 0));
        }
        return problems is [] ? all : throw new TableException([.. problems.Distinct()]);
    }

    private static IEnumerable<string> WithBases(RuleFolder? folder)
    {
        for (; folder is not null; folder = folder.Base) yield return folder.Name;
    }

    // A row is called by its first column, and by the next ones where the first is blank or stands in several rows.
    private static string[] IdsOf(Sheet sheet)
    {
        string Id(SheetRow row, int columns) => string.Join(": ", sheet.Columns.Take(columns).Select(column => row[column]).Where(text => text.Length > 0));
        string[] ids = [.. sheet.Rows.Select(row => Id(row, 1))];
        for (var columns = 2; columns <= 3; columns++)
        {
            var twice = ids.GroupBy(id => id, Names.Comparer).Where(group => group.Count() > 1).Select(group => group.Key).ToHashSet(Names.Comparer);
            ids = [.. ids.Select((id, at) => id.Length == 0 || twice.Contains(id) ? Id(sheet.Rows[at], columns) : id)];
        }
        return ids;
    }

    private static CellProblem Named(CellProblem problem) => problem with { File = $"{FolderName}/{problem.File}" };
}
