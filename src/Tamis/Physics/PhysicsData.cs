using System.Collections.Concurrent;
using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>The equations and constants of the kitchen, from the sheets under <c>data/physics</c>.</summary>
/// <remarks><c>equations-….csv</c>: equation, gives, unit, input, low, high, input_unit, source, checked; an equation with several tested inputs stands in several rows. <c>constants-….csv</c>: constant, value, unit, low, high, source, checked.</remarks>
public sealed class PhysicsData
{
    private static readonly Lazy<PhysicsData> Shipped = new(() => Load(KitFolder.Data("physics")));
    private readonly Dictionary<string, Equation> _equations;
    private readonly Dictionary<string, Given> _constants;
    private readonly ConcurrentDictionary<string, Sheet> _sheets = new(StringComparer.Ordinal);

    private PhysicsData(string folder, Dictionary<string, Equation> equations, Dictionary<string, Given> constants) =>
        (Folder, _equations, _constants) = (folder, equations, constants);

    /// <summary>What the kit ships.</summary>
    public static PhysicsData Kit => Shipped.Value;

    /// <summary>The folder that it was read from.</summary>
    public string Folder { get; }

    /// <summary>All equations.</summary>
    public IReadOnlyCollection<Equation> Equations => _equations.Values;

    /// <summary>An equation by its key.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this key.</exception>
    public Equation Equation(string key) => _equations.TryGetValue(key, out var equation) ? equation
        : throw new KeyNotFoundException($"No sheet equations-….csv has the equation '{key}'{Near(key, _equations.Keys)}.");

    /// <summary>A constant by its name, with its unit, range and source.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public Given Constant(string name) => _constants.TryGetValue(name, out var constant) ? constant
        : throw new KeyNotFoundException($"No sheet constants-….csv has the constant '{name}'{Near(name, _constants.Keys)}.");

    /// <summary>A sheet of the folder, read once.</summary>
    public Sheet Table(string file) => _sheets.GetOrAdd(file, name => SheetFile.Read(Path.Combine(Folder, name)));

    /// <summary>Reads a folder of equations and constants.</summary>
    /// <exception cref="TableException">Something in it must be mended; every bad cell is named.</exception>
    public static PhysicsData Load(string folder)
    {
        List<CellProblem> problems = [];
        Dictionary<string, Equation> equations = new(Names.Comparer);
        foreach (var row in Rows(folder, "equations*.csv")) AddEquation(row, equations, problems);
        Dictionary<string, Given> constants = new(Names.Comparer);
        foreach (var row in Rows(folder, "constants*.csv")) AddConstant(row, constants, problems);
        return problems.Count == 0 ? new(folder, equations, constants) : throw new TableException(problems);
    }

    /// <summary>Where a row came from: its publication, weighed by its <c>checked</c> column (<c>text</c>, <c>computed</c>, <c>from memory</c>, <c>common practice</c>, <c>estimate</c>).</summary>
    public static Source SourceOf(SheetRow row, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        var key = reader.Required("source");
        return new(key is { Length: > 0 } ? key : "not given", reader.Required("checked") is { Length: > 0 } found ? EvidenceOf(found, row, problems) : Evidence.Memory);
    }

    private static void AddEquation(SheetRow row, Dictionary<string, Equation> equations, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        if (reader.Required("equation") is not { Length: > 0 } key) return;
        var gives = reader.Text("gives");
        if (!equations.TryGetValue(key, out var equation))
            equation = new(key, gives ?? reader.Required("gives") ?? key, row["unit"], SourceOf(row, problems));
        equations[key] = reader.Text("input") is { } input
            ? equation with { Valid = [.. equation.Valid, new(input, Ends(row, reader, problems) ?? Interval.At(0), row["input_unit"])] }
            : equation;
    }

    private static void AddConstant(SheetRow row, Dictionary<string, Given> constants, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        if (reader.Required("constant") is not { Length: > 0 } name) return;
        var constant = new Given(name, reader.RequiredNumber("value"), row["unit"], SourceOf(row, problems))
        { Range = row["low"].Length > 0 || row["high"].Length > 0 ? Ends(row, reader, problems) : null };
        if (!constants.TryAdd(name, constant)) problems.Add(row.Problem("constant", "a name that no other row has"));
    }

    private static Interval? Ends(SheetRow row, RowReader reader, List<CellProblem> problems)
    {
        var (low, high) = (reader.RequiredNumber("low"), reader.RequiredNumber("high"));
        if (low <= high) return Interval.Between(low, high);
        problems.Add(row.Problem("high", "at least the number under low"));
        return null;
    }

    private static Evidence EvidenceOf(string found, SheetRow row, List<CellProblem> problems)
    {
        switch (Names.Key(found))
        {
            case "text": return Evidence.Published;
            case "computed": return Evidence.Computed;
            case "estimate": return Evidence.Estimate;
            case "common practice": return Evidence.Practice;
            case "from memory": return Evidence.Memory;
            default:
                problems.Add(row.Problem("checked", "text, computed, estimate, common practice or from memory"));
                return Evidence.Memory;
        }
    }

    private static IEnumerable<SheetRow> Rows(string folder, string pattern) =>
        Directory.EnumerateFiles(folder, pattern).Order(StringComparer.Ordinal).SelectMany(path => SheetFile.Read(path).Rows);

    private static string Near(string name, IEnumerable<string> known) =>
        Names.Nearest(name, [.. known]) is { Count: > 0 } near ? $"; near ones: {string.Join(", ", near)}" : "";
}
