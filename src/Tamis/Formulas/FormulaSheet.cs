using Tamis.Tables;

namespace Tamis.Formulas;

/// <summary>Reads the chef's own sheet: components and lines down, trials across, quantities as written.</summary>
public static class FormulaSheet
{
    private static readonly string[] OwnColumns = ["component", "line", "way", "step", "notes"];

    private static readonly Dictionary<string, LineWay> Ways = new(Names.Comparer)
    {
        [""] = LineWay.In, ["in"] = LineWay.In, ["out"] = LineWay.Out, ["yield"] = LineWay.Yield,
    };

    /// <summary>Every trial's formula, in the order of <paramref name="lineage"/>, or of the columns where there is none.</summary>
    /// <param name="sheet">The formula sheet.</param>
    /// <param name="lineage">The trials and their parents; null without a trials sheet, when the columns that read as quantities are the trials.</param>
    /// <param name="problems">Receives every cell that must be mended. With any of them the result is not to be used.</param>
    public static IReadOnlyList<Formula> Read(Sheet sheet, TrialLineage? lineage, List<CellProblem> problems)
    {
        foreach (var column in new[] { "component", "line" }.Where(column => !sheet.Has(column)))
            problems.Add(new(sheet.File, 1, column, string.Join(", ", sheet.Columns), $"a column called {column}"));
        if (problems.Count > 0) return [];

        var trials = lineage?.Trials ?? [.. sheet.Columns.Where(column => IsTrial(sheet, column))];
        if (trials.Count == 0)
            problems.Add(new(sheet.File, 1, "", string.Join(", ", sheet.Columns), "at least one column of quantities, headed by a trial’s name such as T1"));
        foreach (var trial in trials.Where(trial => !sheet.Has(trial)))
            problems.Add(new(sheet.File, 1, trial, "no such column", $"a column for trial {trial}, as trials.csv names it; its cells may stay blank where nothing changed"));

        Row[] rows = [.. sheet.Rows.Select(row => RowOf(row, problems)).OfType<Row>()];
        FindDoubles(rows, problems);

        var written = new Dictionary<(string Trial, string Component), Component?>();
        var components = rows.Select(row => row.Component).Distinct(Names.Comparer).ToList();
        foreach (var trial in trials)
            foreach (var component in components)
                written[(Names.Key(trial), component)] = ComponentOf(component, trial, [.. rows.Where(row => Names.Same(row.Component, component))], problems);

        Formula[] formulas = [.. trials.Select(trial => new Formula(trial, [.. components
            .Select(component => Inherited(trial, component, lineage, written))
            .OfType<Component>()]))];
        foreach (var formula in formulas) FindCycles(formula, problems);
        return formulas;
    }

    /// <summary>The columns of the sheet that are neither the kit's own nor a trial.</summary>
    public static IReadOnlyList<string> UnreadColumns(Sheet sheet, TrialLineage? lineage) =>
        [.. sheet.Columns.Where(column => !OwnColumns.Contains(column, Names.Comparer)
            && !(lineage?.Trials.Contains(column, Names.Comparer) ?? IsTrial(sheet, column)))];

    private static bool IsTrial(Sheet sheet, string column)
    {
        if (OwnColumns.Contains(column, Names.Comparer) || string.IsNullOrWhiteSpace(column)) return false;
        string[] filled = [.. sheet.Rows.Select(row => row[column]).Where(text => text.Length > 0)];
        // One mistyped cell must not make a whole trial vanish: most cells decide, and the mistyped one is reported.
        return filled.Length > 0 && filled.Count(text => WrittenQuantity.TryParse(text, sheet.Dialect.DecimalMark, out _, out _)) * 2 > filled.Length;
    }

    private sealed record Row(SheetRow Cells, string Component, string Line, LineWay Way, int Step);

    private static Row? RowOf(SheetRow row, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        var component = reader.Required("component");
        if (reader.Text("way") is { } way && !Ways.ContainsKey(way))
        {
            problems.Add(row.Problem("way", "blank for what goes in, out for what leaves, or yield for what was weighed at the end"));
            return null;
        }
        var direction = Ways[row["way"]];
        var line = direction == LineWay.Yield ? reader.Text("line") ?? "yield" : reader.Required("line");
        var step = reader.Whole("step", 1, 999) ?? 1;
        return component is { Length: > 0 } && line is { Length: > 0 } ? new(row, component, line, direction, step) : null;
    }

    private static void FindDoubles(IEnumerable<Row> rows, List<CellProblem> problems)
    {
        foreach (var twice in rows.Where(row => row.Way == LineWay.Yield).GroupBy(row => row.Component, Names.Comparer).Where(group => group.Count() > 1))
            problems.Add(twice.Last().Cells.Problem("way", $"one yield row for {twice.Key}; it has {twice.Count()}"));
    }

    private static Component? ComponentOf(string component, string trial, Row[] rows, List<CellProblem> problems)
    {
        Row[] written = [.. rows.Where(row => row.Way != LineWay.Yield)];
        var weighed = rows.FirstOrDefault(row => row.Way == LineWay.Yield);
        var yield = weighed is null || weighed.Cells[trial].Length == 0 ? null : LineOf(weighed, trial, problems);
        if (yield is { Quantity.Kind: not QuantityKind.Mass })
            problems.Add(weighed!.Cells.Problem(trial, "the mass that was weighed, such as 412 g"));
        if (written.All(row => row.Cells[trial].Length == 0))
            return yield is null ? null : new Component { Name = component, Lines = [], WeighedYield = yield, WrittenIn = "" };

        foreach (var blank in written.Where(row => row.Cells[trial].Length == 0))
            problems.Add(new(blank.Cells.Sheet.File, blank.Cells.Number, trial, "a blank beside filled cells",
                $"write 0 or a quantity ({blank.Line} of {component}; only a component left wholly blank is as in its parent trial)"));
        Line[] lines = [.. written.Where(row => row.Cells[trial].Length > 0).Select(row => LineOf(row, trial, problems)).OfType<Line>()];
        return new()
        {
            Name = component,
            Lines = [.. lines.Where(line => line.Way == LineWay.In)],
            Leaving = [.. lines.Where(line => line.Way == LineWay.Out)],
            WeighedYield = yield,
            WrittenIn = trial,
        };
    }

    private static Line? LineOf(Row row, string trial, List<CellProblem> problems)
    {
        if (!WrittenQuantity.TryParse(row.Cells[trial], row.Cells.Sheet.Dialect.DecimalMark, out var quantity, out var expected))
        {
            problems.Add(row.Cells.Problem(trial, expected ?? "a quantity such as 250 g, 2 eggs or 12 %"));
            return null;
        }
        if (row.Way == LineWay.In && quantity!.Kind is QuantityKind.Share or QuantityKind.ShareOf)
        {
            problems.Add(row.Cells.Problem(trial, "a mass, a number of pieces or a measure for what goes in; a percentage belongs in an out row"));
            return null;
        }
        if (row.Way == LineWay.Out && quantity!.Kind is not (QuantityKind.Share or QuantityKind.ShareOf or QuantityKind.Mass))
        {
            problems.Add(row.Cells.Problem(trial, "a percentage, a percentage of a line, or a mass for what leaves, such as 12 %, 8 % of rye flakes or 20 g"));
            return null;
        }
        if (quantity!.Kind is QuantityKind.Share or QuantityKind.ShareOf && quantity.Range.High > 100)
        {
            problems.Add(row.Cells.Problem(trial, "at most 100 %: no more can leave than is there"));
            return null;
        }
        return new() { Name = row.Line, Way = row.Way, Step = row.Step, Quantity = quantity, Origin = row.Cells.Origin(trial), Row = row.Cells.Number, Notes = row.Cells["notes"] };
    }

    private static Component? Inherited(string trial, string component, TrialLineage? lineage, Dictionary<(string, string), Component?> written)
    {
        var own = written[(Names.Key(trial), component)];
        if (own is { WrittenIn.Length: > 0 }) return own;
        var ancestor = lineage?.LineOf(trial).Skip(1)
            .Select(each => written[(Names.Key(each), component)])
            .FirstOrDefault(found => found is { WrittenIn.Length: > 0 });
        return ancestor is null ? null : ancestor with { WeighedYield = own?.WeighedYield };
    }

    private static void FindCycles(Formula formula, List<CellProblem> problems)
    {
        var done = new HashSet<string>(Names.Comparer);
        foreach (var component in formula.Components) Visit(component, []);

        void Visit(Component component, IReadOnlyList<string> path)
        {
            if (done.Contains(component.Name)) return;
            foreach (var line in component.Lines)
            {
                if (formula.Find(line.Name) is not { } inner) continue;
                if (path.Append(component.Name).Contains(inner.Name, Names.Comparer))
                {
                    var problem = new CellProblem(line.Origin.Key, line.Row, "line", line.Name,
                        $"no component that is made with itself ({string.Join(" takes ", [.. path, component.Name, inner.Name])})");
                    if (!problems.Contains(problem)) problems.Add(problem);
                    continue;
                }
                Visit(inner, [.. path, component.Name]);
            }
            done.Add(component.Name);
        }
    }
}
