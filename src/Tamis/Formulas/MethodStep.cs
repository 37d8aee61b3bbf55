using Tamis.Tables;

namespace Tamis.Formulas;

/// <summary>What is done in one step of a component, as one trial does it.</summary>
public sealed record MethodStep
{
    /// <summary>The word under which the putting together of a dessert stands in the component column.</summary>
    public const string Assembly = "assembly";

    /// <summary>The component, or <see cref="Assembly"/>.</summary>
    public required string Component { get; init; }

    /// <summary>The step, 1 or more.</summary>
    public required int Step { get; init; }

    /// <summary>What to do.</summary>
    public required string Do { get; init; }

    /// <summary>The temperature to reach or hold, in °C.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>How long it takes.</summary>
    public Interval? Minutes { get; init; }

    /// <summary>For how many of them hands are needed, from the start; 0 for waiting. Null where the cell is blank: all of them.</summary>
    public double? HandsMinutes { get; init; }

    /// <summary>The equipment it takes; null where none was named.</summary>
    public string? Equipment { get; init; }

    /// <summary>Steps of other components that must be done before, beside those above it; empty where none was named.</summary>
    public IReadOnlyList<StepName> After { get; init; } = [];

    /// <summary>A caution to show beside the step; null where none was written.</summary>
    public string? Caution { get; init; }

    /// <summary>Where the step stands.</summary>
    public required Source Origin { get; init; }

    /// <summary>Its row in the sheet; 0 where it was not read from one.</summary>
    public int Row { get; init; }

    /// <summary>A problem with a cell of its row.</summary>
    public CellProblem Problem(string column, string found, string expected) => new(Origin.Key, Row, column, found, expected);
}

/// <summary>A step as another one names it: <c>gel 3</c>.</summary>
/// <param name="Component">The component, or <see cref="MethodStep.Assembly"/>.</param>
/// <param name="Step">The step.</param>
public sealed record StepName(string Component, int Step)
{
    /// <summary>As the sheet writes it.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Component} {Step}");

    /// <summary>Whether it is the name of a step.</summary>
    public bool IsOf(MethodStep step) => step.Step == Step && Names.Same(step.Component, Component);

    internal static StepName? Parse(string text)
    {
        var gap = text.LastIndexOf(' ');
        return gap > 0 && int.TryParse(text[(gap + 1)..], System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var step) && step >= 1 ? new(text[..gap].Trim(), step) : null;
    }
}

/// <summary>The method sheet: what is done, by component, step and trial.</summary>
public sealed class Method
{
    private readonly ILookup<string, (MethodStep Step, string? Trial, bool IsTakenAway)> _rows;

    private Method(IEnumerable<(MethodStep Step, string? Trial, bool IsTakenAway)> rows) => _rows = rows.ToLookup(row => row.Step.Component, Names.Comparer);

    /// <summary>Reads <c>steps.csv</c>.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="problems">Receives every cell that must be mended.</param>
    public static Method Read(Sheet sheet, List<CellProblem> problems)
    {
        List<(MethodStep, string?, bool)> rows = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            var component = reader.Required("component");
            var step = reader.Whole("step", 1, 999);
            var what = reader.Required("do");
            if (step is null && row["step"].Length == 0) problems.Add(row.Problem("step", "the number of the step, 1 or more"));
            var temperature = reader.Number("temperature_c", -60, 400);
            var minutes = MinutesOf(row, problems);
            var hands = reader.Number("hands_minutes", 0, 100_000);
            if (hands > minutes?.High) problems.Add(row.Problem("hands_minutes", "no more than the minutes of the step"));
            var after = AfterOf(row, problems);
            if (component is null or "" || step is null || what is null or "") continue;
            rows.Add((new()
            {
                Component = component, Step = step.Value, Do = what, TemperatureCelsius = temperature, Minutes = minutes, HandsMinutes = hands, After = after,
                Equipment = reader.Text("equipment"), Caution = reader.Text("caution"), Origin = row.Origin("do"), Row = row.Number,
            }, reader.Text("trial"), Names.Same(what, "none")));
        }
        foreach (var (step, _, _) in rows.Where(row => !row.Item3))
            foreach (var name in step.After.Where(name => !rows.Any(row => !row.Item3 && name.IsOf(row.Item1))))
                problems.Add(step.Problem("after", name.ToString(), UnknownStep(name, [.. rows.Select(each => each.Item1)])));
        return new(rows);
    }

    private static string UnknownStep(StepName name, IReadOnlyList<MethodStep> steps)
    {
        string[] known = [.. steps.Where(step => Names.Same(step.Component, name.Component)).Select(step => step.Step).Distinct().Order().Select(step => $"{step}")];
        if (known.Length > 0) return $"a step that {name.Component} has; it has {string.Join(", ", known)}, and not {name.Step}";
        var near = Names.Nearest(name.Component, [.. steps.Select(step => step.Component)]);
        return near.Count > 0 ? $"a step of this sheet; there is no {name.Component}, perhaps {near[0]} {name.Step}" : $"a step of this sheet; there is no {name.Component}";
    }

    /// <summary>The steps of a component in a trial: a row that names the trial, or one that it comes from, stands in place of the row for all.</summary>
    /// <param name="component">The component, or <see cref="MethodStep.Assembly"/>.</param>
    /// <param name="trialLine">The trial, its parent, and so on.</param>
    public IReadOnlyList<MethodStep> StepsOf(string component, IEnumerable<string> trialLine)
    {
        string?[] nearest = [.. trialLine, null];
        return [.. _rows[component].GroupBy(row => row.Step.Step).OrderBy(group => group.Key)
            .Select(group => nearest.SelectMany(trial => group.Where(row => Names.Same(row.Trial, trial))).FirstOrDefault())
            .Where(row => row is { Step: not null, IsTakenAway: false })
            .Select(row => row.Step)];
    }

    private static StepName[] AfterOf(SheetRow row, List<CellProblem> problems)
    {
        List<StepName> names = [];
        foreach (var part in row["after"].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            if (StepName.Parse(part) is { } name) names.Add(name);
            else problems.Add(row.Problem("after", "a component and the number of its step, such as gel 3; several parted by semicolons"));
        return [.. names];
    }

    private static Interval? MinutesOf(SheetRow row, List<CellProblem> problems)
    {
        var text = row["minutes"];
        if (text.Length == 0) return null;
        // The same forms as any written quantity: 12, 8 to 12, 8-12.
        if (WrittenQuantity.TryParse(text, row.Sheet.Dialect.DecimalMark, out var written, out _) && written!.Kind == QuantityKind.Mass && written.Range.Low >= 0)
            return written.Range;
        problems.Add(row.Problem("minutes", "minutes such as 12 or 8 to 12"));
        return null;
    }
}
