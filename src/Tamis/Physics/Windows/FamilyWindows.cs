using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>Which windows hold for a component: those of one use, or why there are none.</summary>
/// <param name="Family">The family as the sheet of windows spells it; null where none was found.</param>
/// <param name="Use">The use as that sheet spells it; null where none was found.</param>
/// <param name="Windows">The windows; none where no use was found.</param>
/// <param name="Reason">Why there are none, as a sentence that says what to write; empty where there are some.</param>
public sealed record ChosenWindows(string? Family, string? Use, IReadOnlyList<Window> Windows, string Reason);

/// <summary>The target windows of families and uses: those of the kit, and what a kitchen's own sheet adds or replaces.</summary>
public sealed class FamilyWindows
{
    private static readonly Lazy<FamilyWindows> Shipped = new(() => Read(SheetFile.Read(Path.Combine(KitFolder.Data("windows"), "windows.csv")), FigureList.Kit));

    private FamilyWindows(IReadOnlyList<Window> all) => All = all;

    /// <summary>What the kit ships: <c>data/windows/windows.csv</c>.</summary>
    public static FamilyWindows Kit => Shipped.Value;

    /// <summary>Every window, in the order of the sheets.</summary>
    public IReadOnlyList<Window> All { get; }

    /// <summary>The families with their uses, in the order of the sheets.</summary>
    public IReadOnlyList<(string Family, string Use)> Uses => [.. All.Select(window => (window.Family, window.Use)).Distinct()];

    /// <summary>Reads a sheet of windows: family, use, base, figure, low, high, unit, why_low, why_high, try_low, try_high, source, checked.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="figures">The figures that a window may be about.</param>
    /// <exception cref="TableException">Something in it must be mended; every bad cell is named.</exception>
    public static FamilyWindows Read(Sheet sheet, FigureList figures)
    {
        List<CellProblem> problems = [];
        var windows = Read(sheet, figures, problems);
        return problems.Count == 0 ? windows : throw new TableException(problems);
    }

    /// <summary>Reads a sheet of windows, gathering what must be mended.</summary>
    public static FamilyWindows Read(Sheet sheet, FigureList figures, List<CellProblem> problems)
    {
        List<Window> windows = [];
        if (!sheet.Require(["family", "use", "base", "figure", "low", "high"], problems)) return new(windows);
        foreach (var row in sheet.Rows)
            if (WindowOf(row, figures, problems) is { } window)
            {
                if (windows.Any(window.IsOfSameFigure)) problems.Add(row.Problem("figure", "each figure of a use on one base once"));
                else windows.Add(window);
            }
        return new(windows);
    }

    /// <summary>These windows with a kitchen's own: one of the same figure, use and base stands in place of the kit's, others are added.</summary>
    public FamilyWindows With(FamilyWindows own) => new([.. All.Where(window => !own.All.Any(window.IsOfSameFigure)), .. own.All]);

    /// <summary>The windows of a family and use. The first words of the use are enough; a family of a single use needs none.</summary>
    /// <remarks>No family, no verdict: where the use is not clear there are no windows, and a sentence says which words to write.</remarks>
    public ChosenWindows For(string? family, string? use)
    {
        if (family is null) return new(null, null, [], "no family is named in components.csv, and without one there is no verdict");
        Window[] own = [.. All.Where(window => NameWords.Same(window.Family, family))];
        if (own.Length == 0)
        {
            var near = Names.Nearest(family, All.Select(window => window.Family).Distinct());
            return new(null, null, [], $"no windows are known for the family '{family}'{(near.Count > 0 ? $"; near ones: {string.Join(", ", near)}" : "")}");
        }
        string[] uses = [.. own.Select(window => window.Use).Distinct()];
        string[] chosen = use is null ? uses : [.. uses.Where(each => NameWords.Same(each, use)).DefaultIfEmpty().OfType<string>()];
        if (use is not null && chosen.Length == 0) chosen = [.. uses.Where(each => NameWords.BeginsWith(each, use))];
        return chosen is [var only]
            ? new(own[0].Family, only, [.. own.Where(window => window.Use == only)], "")
            : new(own[0].Family, null, [], $"the use of the {own[0].Family} is not clear{(use is null ? "" : $" from '{use}'")}; write the first words of one of: {string.Join(" | ", chosen.Length > 1 ? chosen : uses)}");
    }

    private static Window? WindowOf(SheetRow row, FigureList figures, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        var before = problems.Count;
        var (family, use, on, name) = (reader.Required("family"), reader.Required("use"), reader.Required("base"), reader.Required("figure"));
        var figure = name.Length > 0 ? figures.Find(name) : null;
        if (name.Length > 0 && figure is null)
            problems.Add(row.Problem("figure", $"a figure that can be worked out, or 'line' and the name of a line; near ones: {string.Join(", ", figures.Nearest(name))}"));
        var parsed = on.Length > 0 ? WindowBase.Parse(on) : null;
        if (on.Length > 0 && parsed is null) problems.Add(row.Problem("base", $"one of: {string.Join(", ", WindowBase.Choices)}"));
        if (figure is not null && row.Sheet.Has("unit") && !Names.Same(row["unit"], figure.Unit))
            problems.Add(row.Problem("unit", figure.Unit.Length > 0 ? $"the unit of {figure.Name}, {figure.Unit}" : $"a blank: {figure.Name} is a pure number"));
        var range = reader.RequiredRange("low", "high");
        // A kitchen's own sheet need not say where its windows come from.
        var source = row["source"].Length > 0 && row["checked"].Length > 0 ? PhysicsData.SourceOf(row, problems) : row["source"].Length > 0 ? new Source(row["source"], Evidence.Practice) : row.Origin("low");
        return problems.Count > before || figure is null || parsed is null ? null : new(family, use, parsed, figure.Name, range, figure.Unit, source)
        {
            WhyLow = row["why_low"], WhyHigh = row["why_high"], TryLow = row["try_low"], TryHigh = row["try_high"],
        };
    }
}
