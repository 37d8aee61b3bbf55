using System.Collections.Concurrent;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>The folder of a rule set, with the one that it is based on: a file that it does not have is the other's, whole.</summary>
/// <remarks>The setting <c>based_on</c> of <c>rule-set.csv</c> names a folder beside it (Great Britain stands on the European Union and states what differs).
/// Settings are laid over those of the base one by one; every other file stands in place of the base's file of the same name.</remarks>
public sealed class RuleFolder
{
    private readonly ConcurrentDictionary<Type, object> _tables = new();

    private readonly Lazy<RuleTerms> _terms;

    private RuleFolder(string path, RuleFolder? based)
    {
        (FullPath, Base) = (path, based);
        // A folder and its base stand side by side, and so they have the same terms.
        _terms = based?._terms ?? new(() => RuleTerms.Read(Root));
    }

    private string Root => Path.GetDirectoryName(FullPath)!;

    /// <summary>The folder's name: <c>eu</c>.</summary>
    public string Name => Path.GetFileName(FullPath);

    /// <summary>Where it is.</summary>
    public string FullPath { get; }

    /// <summary>The folder whose files stand in for those that this one lacks; null where it stands alone.</summary>
    public RuleFolder? Base { get; }

    /// <summary>Opens a folder, and the one that it is based on.</summary>
    /// <exception cref="TableException">There is no <c>rule-set.csv</c>, the base is not there, or rule sets are based on each other in a ring.</exception>
    public static RuleFolder Open(string path) => Open(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path)), []);

    /// <summary>Whether the folder or its base has the file.</summary>
    public bool Has(string file) => PathOf(file) is not null;

    /// <summary>A table of the folder, read once and kept.</summary>
    /// <param name="read">Reads it, noting every problem.</param>
    /// <exception cref="TableException">A file is missing or a cell cannot be read; all problems at once, each with the folder's name before the file's.</exception>
    public T Table<T>(Func<RuleFolder, List<CellProblem>, T> read) where T : class => (T)_tables.GetOrAdd(typeof(T), _ =>
    {
        List<CellProblem> problems = [];
        var table = read(this, problems);
        return problems is [] ? table : throw new TableException([.. problems.Select(Named)]);
    });

    /// <summary>A problem with the folder's name before the file's: two rule sets have files of the same names.</summary>
    internal CellProblem Named(CellProblem problem) => problem.File.StartsWith($"{RuleTerms.FolderName}/", StringComparison.Ordinal) ? problem : problem with { File = $"{(File.Exists(Path.Combine(FullPath, problem.File)) ? Name : Base?.Name ?? Name)}/{problem.File}" };

    /// <summary>The rows of a file; none where neither the folder nor its base has it.</summary>
    internal IReadOnlyList<RuleRow> RowsIfAny(string file, string[] columns, List<CellProblem> problems) => Has(file) ? Rows(file, columns, problems) : [];

    /// <summary>The rows of a file that must be there, with the columns named and those of an origin.</summary>
    internal IReadOnlyList<RuleRow> Rows(string file, string[] columns, List<CellProblem> problems) => RowsOf(PathOf(file) ?? Path.Combine(FullPath, file), columns, problems);

    private IReadOnlyList<RuleRow> RowsOf(string path, string[] columns, List<CellProblem> problems)
    {
        try
        {
            var sheet = SheetFile.Read(path, new(DecimalMark: '.', DateOrder: DateOrder.YearMonthDay));
            if (RuleTerms.Files.Contains(sheet.File, StringComparer.Ordinal)) sheet = _terms.Value.Over(sheet, Path.GetRelativePath(Root, path).Replace('\\', '/'), problems);
            return sheet.Require([.. columns, .. RuleRow.OriginColumns], problems) ? [.. sheet.Rows.Select(row => new RuleRow(new(row, problems)))] : [];
        }
        catch (TableException error)
        {
            problems.AddRange(error.Problems);
            return [];
        }
    }

    /// <summary>The rows of a file that stands beside the rule sets and serves all of them: words in several languages, additives by number.</summary>
    internal IReadOnlyList<RuleRow> SharedRows(string file, string[] columns, List<CellProblem> problems) => RowsOf(Path.Combine(Root, file), columns, problems);

    /// <summary>The rows of the settings, own ones first, then those of the base that the folder does not state itself.</summary>
    internal IReadOnlyList<RuleRow> Settings(List<CellProblem> problems)
    {
        var own = Rows(RuleSetReader.SettingsFile, ["key", "value"], problems);
        if (Base is null) return own;
        HashSet<string> stated = new(own.Select(row => row.Cells.Text("key") ?? ""), Names.Comparer);
        return [.. own, .. Base.Settings(problems).Where(row => !stated.Contains(row.Cells.Text("key") ?? ""))];
    }

    private string? PathOf(string file) => File.Exists(Path.Combine(FullPath, file)) ? Path.Combine(FullPath, file) : Base?.PathOf(file);

    private static RuleFolder Open(string path, IReadOnlyList<string> above)
    {
        var sheet = SheetFile.Read(Path.Combine(path, RuleSetReader.SettingsFile), new(DecimalMark: '.', DateOrder: DateOrder.YearMonthDay));
        var row = sheet.Rows.FirstOrDefault(row => Names.Same(row["key"], BasedOn));
        if (row is null || row["value"].Length == 0) return new(path, null);
        var based = Path.Combine(Path.GetDirectoryName(path)!, row["value"]);
        if (above.Contains(based, StringComparer.Ordinal) || based == path) throw new TableException([row.Problem("value", "a rule set that is not based on this one")]);
        return File.Exists(Path.Combine(based, RuleSetReader.SettingsFile))
            ? new(path, Open(based, [.. above, path]))
            : throw new TableException([row.Problem("value", "the name of a rule set’s folder beside this one")]);
    }

    private const string BasedOn = "based_on";
}
