using Tamis.Desserts;
using Tamis.Losses;

namespace Tamis.Views;

/// <summary>What a notebook's cells show of a dessert: each a view of data, made of the page's own parts.</summary>
public static partial class Show
{
    private static readonly Figures Figures = Figures.English;

    /// <summary>What one trial has otherwise than another: the lines that changed, what leaves otherwise, what is done otherwise.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="from">The trial that is compared with.</param>
    /// <param name="to">The trial that is looked at.</param>
    public static Html Difference(Dessert dessert, string from, string to)
    {
        var step = TrialStep.Between(dessert, from, to);
        List<Html> parts = [];
        if (step.Difference.Lines.Count > 0)
            parts.Add(new DataTable($"Changes of {to} against {from}",
                [Column.Words("Line"), Column.Numbers(from, "g"), Column.Numbers(to, "g"), Column.Numbers("change", "g"), Column.Numbers(from, "% of component"), Column.Numbers(to, "% of component")],
                [.. step.Difference.Lines.Select(line => Line(line, to))]) { Fits = true }.ToHtml());
        else parts.Add(Notes.Paragraph(Html.Of($"{to} is weighed from the masses of {from}.")));
        parts.AddRange(step.Difference.ScaledComponents.Select(scaled => Notes.Paragraph(Html.Of($"{Capital(scaled.Component)} was made {Figures.Part(scaled.Factor).InText} times as large: its shares stay."))));
        if (step.Difference.SharesOnly.Count > 0) parts.Add(Notes.Folded("Lines whose mass stayed while their share moved", SharesOnly(step.Difference)));
        if (step.Difference.Losses.Count > 0)
            parts.Add(new DataTable("What leaves otherwise", [Column.Words("What leaves"), Column.Words(from), Column.Words(to)],
                [.. step.Difference.Losses.Select(loss => new Row($"{loss.Component}, {loss.Loss}", loss.From ?? "nothing", loss.To ?? "nothing"))]) { Fits = true }.ToHtml());
        foreach (var moved in step.Difference.Steps)
            parts.Add(Notes.Small(Html.Of($"{Capital(moved.Line)} goes into the {moved.Component} at step {string.Join(" and ", moved.ToSteps)}, before at step {string.Join(" and ", moved.FromSteps)}.")));
        if (step.Method.Count > 0)
            parts.Add(new DataTable("What is done otherwise", [Column.Words("Step"), Column.Words(from), Column.Words(to)],
                [.. step.Method.Select(each => new Row($"{each.Component}, step {each.Step}", each.From?.Do ?? "no such step", each.To?.Do ?? "no such step"))]).ToHtml());
        if (step.To.Notes.Length > 0) parts.Add(Notes.Small(Html.Of($"From the log: {step.To.Notes}")));
        return Html.Join(parts);
    }

    /// <summary>The ratios of every component of a trial, each against its own base.</summary>
    public static Html Ratios(Dessert dessert, string trial) => Html.Join(dessert.Trial(trial).Components.Where(component => component.MassInGrams > 0).Select(component =>
    {
        var ratios = dessert.RatiosOf(trial, component.Name);
        return Notes.Folded($"{Capital(component.Name)}: {RatioInWords(ratios)}", RatioTable(dessert, trial, component, ratios));
    }));

    /// <summary>One component in ratios over the trials that were written anew, so that the drift of a formula can be read.</summary>
    public static Html RatiosAcross(Dessert dessert, string component)
    {
        (Batch Batch, Ratios Ratios)[] written = [.. dessert.Batches
            .Where(batch => batch.Find(component) is { MassInGrams: > 0 } made && Names.Same(made.WrittenIn, batch.Trial))
            .Select(batch => (batch, dessert.RatiosOf(batch.Trial, component)))];
        string[] lines = [.. written.SelectMany(each => each.Ratios.Lines).Select(line => line.Name).Distinct(Names.Comparer)];
        var isBakers = written.All(each => each.Ratios.IsBakersPercentage);
        return new DataTable($"{component} in ratios",
            [Column.Words(isBakers ? "% of the flours" : "parts, base 100"), .. written.Select(each => Column.Numbers(each.Batch.Trial))],
            [.. lines.Select(line => new Row([line, .. written.Select(each => (Cell)Zero(each.Ratios.Of(line), ratio => Figures.Number(ratio * 100, 1)))]))])
        {
            Caption = Html.Of($"{Capital(component)}: parts of each line to 100 parts of {string.Join(" and ", written.SelectMany(each => each.Ratios.Base).Distinct(Names.Comparer))}; only trials that wrote it anew."),
            Fits = true, IsWide = written.Length > 5,
        }.ToHtml();
    }

    /// <summary>What was computed beside what was weighed, make by make.</summary>
    public static Html Yields(Dessert dessert)
    {
        var rows = dessert.Measured.Where(measured => measured.Component is not null && Names.Same(measured.What, "yield"))
            .Select(measured => (measured, batch: dessert.Batches.FirstOrDefault(batch => Names.Same(batch.Trial, measured.Trial))?.Find(measured.Component!)))
            .Where(each => each.batch is not null)
            .Select(each => (each.measured.Trial, Make: $", make {each.measured.Make}", Component: each.measured.Component!, Computed: each.batch!.YieldGrams, Weighed: each.measured.Value, each.measured.Origin))
            .Concat(dessert.Batches.SelectMany(batch => batch.Components).Where(component => component.WeighedYieldGrams is not null && component.WeighedYieldOrigin is not null)
                .Select(component => (Trial: TrialOf(component.WeighedYieldOrigin!), Make: "", Component: component.Name, Computed: component.YieldGrams, Weighed: component.WeighedYieldGrams!.Value, Origin: component.WeighedYieldOrigin!)))
            .ToArray();
        if (rows.Length == 0) return Notes.Small(Html.Of($"No yield was weighed: a yield row in formula.csv, or measured.csv, would show what the written losses leave unexplained."));
        var table = new DataTable("Yields computed and weighed",
            [Column.Words("Component"), Column.Words("Trial"), Column.Numbers("computed", "g"), Column.Numbers("weighed", "g"), Column.Numbers("weighed less computed", "%")],
            [.. rows.Select(row => new Row((Cell)row.Component with { From = Sources.InWords(row.Origin) }, row.Trial + row.Make, Figures.Mass(row.Computed).WithoutUnit(), Figures.Mass(row.Weighed).WithoutUnit(),
                Figures.Difference((row.Weighed / row.Computed - 1) * 100, 1)))]) { IsLong = true };
        var misses = rows.Select(row => row.Weighed / row.Computed - 1).ToArray();
        return Notes.Paragraph(Html.Of($"In {rows.Length} weighings the finished mass was {Figures.Difference(misses.Average() * 100, 1, "%").InText} from what the written losses say, on average; the widest miss was {Figures.Difference(misses.MaxBy(Math.Abs) * 100, 1, "%").InText}."))
            + Notes.Folded("Every weighing", table.ToHtml());
    }

    private static string TrialOf(Source origin) => origin.Locator.Split("column ")[^1];

    private static Row Line(LineDifference line, string to) => new(
        $"{line.Component}, {line.Line}",
        Grams(line.FromGrams),
        ((Cell)Grams(line.ToGrams)).Tracked($"{to}, {line.Component}, {line.Line}, g"),
        Figures.Difference(line.ChangeGrams, Math.Abs(line.ChangeGrams) < 10 ? 1 : 0),
        Zero(line.FromShare, share => Figures.Dose(share).WithoutUnit()),
        ((Cell)Zero(line.ToShare, share => Figures.Dose(share).WithoutUnit())).Tracked($"{to}, {line.Component}, {line.Line}, % of component"));

    private static Html SharesOnly(BatchDifference difference) => new DataTable("Shares that moved by themselves",
        [Column.Words("Line"), Column.Numbers("mass", "g"), Column.Numbers(difference.From, "%"), Column.Numbers(difference.To, "%")],
        [.. difference.SharesOnly.Select(line => new Row($"{line.Component}, {line.Line}", Figures.Mass(line.ToGrams).WithoutUnit(), Figures.Dose(line.FromShare).WithoutUnit(), Figures.Dose(line.ToShare).WithoutUnit()))]) { Fits = true }.ToHtml();

    private static Html RatioTable(Dessert dessert, string trial, ComponentBatch component, Ratios ratios) => new DataTable($"Ratios of the {component.Name}",
        [Column.Words("Line"), Column.Words("written"), Column.Numbers("mass", "g"), Column.Numbers(ratios.IsBakersPercentage ? "of the flours" : "to the base", "%"), Column.Numbers("of all", "%")],
        [.. ratios.Lines.Select(line => new Row(
            (Cell)line.Name with { From = string.Join("; ", component.Lines.Where(each => Names.Same(each.Name, line.Name)).Select(each => Sources.InWords(each.Origin))) },
            Written(component, line.Name), Figures.Mass(line.MassGrams).WithoutUnit(),
            ((Cell)Figures.Number(line.ToBaseRatio * 100, 1)).Tracked($"{trial}, {component.Name}, {line.Name}, % of base"),
            Figures.Share(line.Share).WithoutUnit())),
         new Row("all that goes in", "", Figures.Mass(component.MassInGrams).WithoutUnit(), Figures.Number(component.MassInGrams / ratios.BaseGrams * 100, 1), Figures.Share(1).WithoutUnit()) { Kind = RowKind.Total },
         .. component.Losses.Select(loss => new Row((Cell)$"leaves: {loss.Name}{(loss.Of is { } of ? " of " + of : "")}" with { From = Sources.InWords(loss.Origin) }, loss.Written, Figures.Number(-loss.MassGrams, loss.MassGrams < 10 ? 1 : 0), "", "")),
         new Row("is there in the end", "", ((Cell)Figures.Mass(component.YieldGrams).WithoutUnit()).Tracked($"{trial}, {component.Name}, finished, g"), "", "") { Kind = RowKind.Total }])
    {
        Caption = Html.Of($"Base: {string.Join(" and ", ratios.Base)}, {Figures.Mass(ratios.BaseGrams).InText} together{(Names.Same(component.WrittenIn, trial) ? "" : $"; as written in {component.WrittenIn}")}."),
    }.ToHtml();

    // A written quantity that needed an assumption shows it.
    private static string Written(ComponentBatch component, string line) => string.Join(" and ", component.Lines.Where(each => Names.Same(each.Name, line))
        .Select(each => each.Assumption.Length > 0 ? $"{each.Quantity.Text} ({each.Assumption}{Range(each)})" : each.Quantity.Text + Range(each)));

    private static string Range(BatchLine line) => line.RangeGrams.IsPoint ? "" : $", {Figures.Between(line.RangeGrams, line.RangeGrams.High < 10 ? 1 : 0, "g")}";

    private static string RatioInWords(Ratios ratios)
    {
        var main = ratios.Lines.Where(line => !ratios.Base.Contains(line.Name, Names.Comparer)).OrderByDescending(line => line.MassGrams).Take(4)
            .Select(line => $"{line.Name} {Figures.Number(line.ToBaseRatio * 100, line.ToBaseRatio < 0.1 ? 1 : 0).Text}").ToArray();
        return main.Length == 0 ? string.Join(" and ", ratios.Base) : $"to 100 of {string.Join(" and ", ratios.Base)}, {string.Join(", ", main)}";
    }

    // A line that is not in is a plain zero: nobody weighed 0.0 g.
    private static Num Zero(double value, Func<double, Num> shown) => value == 0 ? Num.Said("0") : shown(value);

    private static Num Grams(double grams) => Zero(grams, value => Figures.Mass(value).WithoutUnit());

    internal static string Capital(string word) => Names.Capital(word);
}
