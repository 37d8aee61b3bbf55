using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The list of ingredients of a trial as it would stand on a pack, with what stops it, and why each ingredient stands where it stands.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="language">The language's code: <c>fr</c>.</param>
    /// <param name="why">Whether a table says why each ingredient stands where it stands.</param>
    public static Html IngredientList(Dessert dessert, string trial, string rules, string language = "en", bool why = true) => Guarded(trial, "list of ingredients", () =>
    {
        var list = dessert.IngredientList(trial, rules, language);
        List<(string, Html)> open = [.. list.Problems.Select(problem => ("Supply", Html.Text(problem.ToString()))), .. list.Remarks.Select(remark => ("Look at", ReasonOf(remark)))];
        var lead = list.IsDraft
            ? Notes.Lead(Html.Of($"<strong>A draft, not for print:</strong> {(list.Problems.Count == 1 ? "one thing stands" : $"{list.Problems.Count} things stand")} in the way."))
            : Html.Empty;
        if (DessertLabel.ListExemption(dessert, trial, KitData.Rules(rules)) is { } small)
        {
            open.AddRange(list.InPlaceOfListProblems.Except(list.Problems).Select(problem => ("Supply", Html.Text(problem.ToString()))));
            lead += Notes.LookAt(Html.Of($"The pack is too small for the list: it is given by other means. {(list.InPlaceOfList.Count > 0 ? Html.Of($"In its place the pack says: <strong lang='{language}'>{string.Concat(list.InPlaceOfList.Select(run => run.Text))}</strong>") : Html.Empty)} <small>{small.Origin.ToString()}</small>"));
        }
        return lead + Printed(list) + Notes.Verdict(open) + (why ? WhyTable(list, KitData.Rules(rules)) : Html.Empty);
    });

    /// <summary>The list, and the statements that go with it, as they are printed.</summary>
    private static Html Printed(IngredientDeclaration list) =>
        Html.Of($"<div class='printed' lang='{list.Language}'><p>{Runs(list.Runs)}</p>{Paragraph(list.ContainsStatement)}{Paragraph(list.MayContainStatement)}</div>");

    private static Html Paragraph(IReadOnlyList<TextRun> runs) => runs.Count == 0 ? Html.Empty : Html.Of($"<p>{Runs(runs)}</p>");

    private static Html Runs(IReadOnlyList<TextRun> runs) => Html.Join(runs.Select(run => run.IsEmphasised ? Html.Of($"<strong>{run.Text}</strong>") : Html.Text(run.Text)));

    private static Html WhyTable(IngredientDeclaration list, RuleSet rules) => new DataTable($"Why each ingredient stands where it stands, {rules.Title}",
        [Column.Words("Ingredient"), Column.Numbers("Used for 100 g"), Column.Words("Why")],
        [.. list.Items.Select(item => new Row([
            item.Name,
            Num.Said($"{(item.MassGrams!.Value / list.FinishedGrams * 100).ToString("0.0", CultureInfo.InvariantCulture)}\u202fg"),
            Html.Join(item.Reasons.Select((reason, index) => index == 0 ? ReasonOf(reason) : Html.Of($"; {ReasonOf(reason)}")))]))])
    { IsWide = true }.ToHtml();

    private static Html ReasonOf(ListReason reason) => reason.Origin is { } origin ? Html.Of($"{reason.Words} <small>{origin.ToString()}</small>") : Html.Text(reason.Words);
}
