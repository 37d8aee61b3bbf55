using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Physics;
using Plan = Tamis.Production.WeighingPlan;

namespace Tamis.Views;

/// <summary>The weighing sheets of a dessert, a page a trial.</summary>
public static class WeighingPages
{
    /// <summary>The file name of a trial's sheet, beside the other pages.</summary>
    public static string FileName(Dessert dessert, string trial) => $"weighing-{Slug(dessert.FolderName)}-{Slug(trial)}.html";

    /// <summary>The sheet of a trial for a number of pieces.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many.</param>
    /// <param name="withCautions">Whether the usual cautions of the trade stand beside the steps that call for them, with the kitchen's own.</param>
    public static WeighingSheet Of(Dessert dessert, string trial, double pieces, bool withCautions = false)
    {
        var cautions = withCautions ? CautionsOf(dessert, trial) : null;
        var limits = withCautions ? CriticalStep.Of(dessert, trial).Where(each => each.Step is not null).ToLookup(each => each.Step!) : null;
        var figures = Figures.English;
        var plan = dessert.Weighing(trial, pieces);
        var batch = dessert.Trial(trial);
        var count = figures.Number(pieces, 0).Text;
        var what = plan.FormulaPieces is null ? pieces == 1 ? "one formula" : $"{count} formulas" : pieces == 1 ? "one piece" : $"{count} pieces";
        List<WeighingComponent> components = [.. plan.Components.Select(component => ComponentOf(component, figures, cautions, limits))];
        if (plan.Assembly.Count > 0)
            components.Add(new("Putting together", [.. plan.Assembly.Select(step => StepOf([], step, figures, cautions, limits))]) { IsWeighed = false, Header = what });
        var (allergens, _, unseen) = AllergensHeld.By(batch.Components.SelectMany(component => component.Out.Parts).Select(part => part.Ingredient));
        return new($"Weighing sheet: {what}, trial {batch.Trial}", [.. components, .. batch.Gaps.Count == 0 ? [] : new[] { Unweighed(dessert, batch) }])
        {
            Facts = [dessert.Name, .. FactsOf(plan, figures)],
            Contains = allergens.Count == 0 && unseen.Count == 0 && cautions is null ? Html.Empty
                : Html.Of($"<b>Caution</b> {(allergens.Count == 0 ? "" : $"contains {string.Join(", ", allergens)}.")}{(unseen.Count == 0 ? "" : $" Nobody has looked at {string.Join(", ", unseen)} for allergens.")}{(cautions is null ? Html.Empty : Html.Of($" {CautionRule.Deferral}"))}"),
        };
    }

    /// <summary>Whole pages: every trial's sheet for the pieces that are wanted of it, with its file name.</summary>
    public static IEnumerable<(string FileName, PageModel Page)> AllOf(Dessert dessert) => dessert.Batches.Select(batch =>
    {
        var sheet = Of(dessert, batch.Trial, dessert.WantedPieces(batch.Trial));
        return (FileName(dessert, batch.Trial), new PageModel(sheet.Title, sheet.ToHtml())
        {
            Running = dessert.Name, IsSheet = true, Description = $"Masses, steps, temperatures and cautions, trial {batch.Trial} of {dessert.Name}.",
        });
    });

    private static IEnumerable<string> FactsOf(Plan plan, Figures figures)
    {
        var usual = plan.Pieces / (plan.FormulaPieces ?? 1);
        yield return $"Formula × {figures.Part(usual).Text}";
        foreach (var other in plan.Components.Where(component => Math.Abs(component.Factor - usual) > 1e-9))
            yield return $"{other.Name} × {figures.Part(other.Factor).Text}";
    }

    private static WeighingComponent ComponentOf(Production.WeighingComponent component, Figures figures, ILookup<(string, int), string>? cautions, ILookup<MethodStep, CriticalStep>? limits) =>
        new(Show.Capital(component.Name), [.. component.Steps.Select(step => StepOf(step.Lines, step.Method, figures, cautions, limits))])
        {
            Header = component.TakenInGrams > 0 ? $"{figures.Mass(component.TakenInGrams).Text} go into other components" : "",
            Expected = figures.Mass(component.ExpectedYieldGrams),
        };

    private static WeighingStep StepOf(IReadOnlyList<Production.WeighingLine> lines, MethodStep? method, Figures figures, ILookup<(string, int), string>? cautions, ILookup<MethodStep, CriticalStep>? limits) =>
        new([.. lines.Select(line => LineOf(line, figures))], Html.Text(Typeset.Text(method?.Do ?? "")))
        {
            Temperature = method?.TemperatureCelsius is { } celsius ? figures.Celsius(celsius).Text : "",
            Limits = method is null || limits is null ? [] : [.. limits[method].Select(limit => Typeset.Text($"{limit.Kind}, {limit.What}: {(limit.LacksCoolingRule ? "by your code" : limit.Limit)}"))],
            Minutes = method?.Minutes is { } minutes ? figures.Minutes(minutes) : "",
            Caution = Typeset.Text(string.Join("; ", ((string?[])[method?.Caution, .. method is null || cautions is null ? [] : cautions[(Names.Key(method.Component), method.Step)]]).Where(words => !string.IsNullOrEmpty(words)))),
        };

    // What is usually done about each hazard of a step; the deferral stands at the head of the sheet.
    internal static ILookup<(string, int), string> CautionsOf(Dessert dessert, string trial, bool inFull = true)
    {
        var physics = dessert.Physics(trial);
        return physics.Components.SelectMany(each => Cautions.Of(each.Looked)).Concat(Cautions.Of(MethodStep.Assembly, physics.Assembly))
            .Where(caution => caution is { Step: not null, Rule.Of: CautionOf.People }).DistinctBy(caution => (Names.Key(caution.Component), caution.Step!.Step, caution.Rule))
            .ToLookup(caution => (Names.Key(caution.Component), caution.Step!.Step), caution => inFull ? $"{caution.Rule.Hazard}: {caution.Rule.Practice}" : caution.Rule.Hazard);
    }

    private static WeighingLine LineOf(Production.WeighingLine line, Figures figures)
    {
        var pieces = line.Count is { } count ? $"{figures.Part(count).Text} {(count > 1 ? PieceWord.Plural(line.Piece ?? "") : line.Piece)}" : "";
        return new(WeighingSheet.OnScale(line.MassGrams), line.Name, string.Join("; ", new[] { pieces, Typeset.Text(line.Notes) }.Where(part => part.Trim().Length > 0)));
    }

    // A component whose masses are not all known stands as it was written, so that it is not forgotten.
    private static WeighingComponent Unweighed(Dessert dessert, Losses.Batch batch) => new("Not all masses known",
        [.. batch.Formula.Components.Where(component => batch.Find(component.Name) is null).Select(component => new WeighingStep(
            [.. component.Lines.Select(line => new WeighingLine(Num.Said(line.Quantity.Text), line.Name, component.Name))], Html.Text(string.Join("; ", batch.Gaps))))])
    { IsWeighed = false, Header = $"as written for one formula of {dessert.Name}" };

    internal static string Slug(string name)
    {
        var kept = new string([.. name.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-')]);
        return string.Join('-', kept.Split('-', StringSplitOptions.RemoveEmptyEntries));
    }
}
