using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The label of a trial for a market at its real size, with the layouts that were tried, and the sizes that the rules ask for.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="market">A country of the rows <c>market</c> in dessert.csv, or the folder name of a rule set: then all its languages stand on the pack; several are parted by semicolons.</param>
    public static Html LabelDrawing(Dessert dessert, string trial, string market) => Guarded(trial, $"label for {market}", () =>
    {
        // What holds for the whole pack is said with its first face.
        HashSet<string> said = [];
        return Html.Join(DessertLabel.DrawnFaces(dessert, trial, market).Select(drawing => Face(drawing, said)));
    });

    private static Html Face(Labels.LabelDrawing drawing, HashSet<string> said)
    {
        var head = drawing.Content.Face is null ? Html.Empty : Html.Of($"<h3>{Capital(drawing.FaceInWords)}</h3>\n");
        var lead = drawing.IsDraft
            ? Notes.Lead(Html.Of($"<strong>A draft, not for print.</strong> {(drawing.DraftReasons.Count == 1 ? "One thing stands" : $"{drawing.DraftReasons.Count} things stand")} in the way."))
            : Notes.Lead(Html.Of($"<strong>It fits:</strong> {drawing.Layout.InWords}, on a face of {drawing.Content.Pack.ToString()}. Nobody has signed it yet: that is for the person who answers for the pack; local rules come first."));
        List<(string, Html)> open = [.. drawing.DraftReasons.Where(said.Add).Select(reason => ("Stops print", Html.Text(reason))), .. drawing.Remarks.Where(said.Add).Select(remark => ("Look at", Html.Text(remark)))];
        var picture = Html.Of($"<div class=\"label-face wide\" tabindex=\"0\" role=\"group\" aria-label=\"Label drawn at real size{(drawing.Content.Face is { } face ? $", face {face}" : "")}\">{LabelSvg.WithScale(drawing)}</div>\n");
        return head + lead + picture
            + Notes.Small(Html.Of($"Drawn at its real size where the screen is set to its own: hold a ruler to the bar. Print is {(drawing.Content.Colours == LabelColours.BlackOnWhite ? "black on white" : $"{drawing.Content.Colours.Ink} on {drawing.Content.Colours.Ground}")}, contrast {Millimetres(drawing.Content.Colours.ContrastRatio)} to 1{(drawing.ContrastRule is { } rule ? $"; asked for: {rule.Value} to 1, {rule.Origin.Act}" : "")}."))
            + (open.Count > 0 ? Notes.Verdict(open) : Html.Empty) + Tried(drawing) + SizesAsked(drawing);
    }

    private static Html Tried(Labels.LabelDrawing drawing) => new DataTable($"Layouts in the order of the law, to the first that fits{FaceOf(drawing)}",
        [Column.Words("Layout"), Column.Numbers("needs", "mm"), Column.Words("On this pack"), Column.Words("Why it is allowed")],
        [.. drawing.Attempts.Select(attempt => new Row([attempt.InWords, Num.Said($"{Millimetres(attempt.WidthMillimetres)} × {Millimetres(attempt.HeightMillimetres)}"), OnThisPack(attempt), WhyOf(attempt)])
            { Kind = ReferenceEquals(attempt, drawing.Layout) ? RowKind.Line : RowKind.Part })])
    { IsWide = true }.ToHtml();

    private static string OnThisPack(LayoutAttempt attempt) => attempt.Fits ? "fits"
        : string.Join(", ", ((string?[])[attempt.OverWidthMillimetres > 0 ? $"{Millimetres(attempt.OverWidthMillimetres)}\u202fmm too wide" : null, attempt.OverHeightMillimetres > 0 ? $"{Millimetres(attempt.OverHeightMillimetres)}\u202fmm too high" : null]).OfType<string>());

    private static string WhyOf(LayoutAttempt attempt) =>
        $"{(attempt.Form is { Conditions: { Count: > 0 } conditions } ? $"{string.Join("; ", conditions)}: " : "")}{attempt.Why}{(attempt.Why.Note.Length > 0 ? $"; {attempt.Why.Note}" : "")}";

    private static Html SizesAsked(Labels.LabelDrawing drawing) => new DataTable($"Sizes of print{FaceOf(drawing)}",
        [Column.Words("Parts of the label"), Column.Words("Asked for"), Column.Numbers("type size", "mm"), Column.Numbers("small x", "mm"), Column.Numbers("figures", "mm"), Column.Words("Rule")],
        [.. drawing.Sizes.GroupBy(size => (size.Rule, size.SizeMillimetres)).Select(same => (Parts: string.Join(", ", same.Select(size => size.Part)), Size: same.First())).Select(each => new Row([each.Parts, $"{each.Size.Rule.Value} {each.Size.Rule.Unit}",
            Num.Said(Millimetres(each.Size.SizeMillimetres)), Num.Said(Millimetres(each.Size.XHeightMillimetres)), Num.Said(Millimetres(each.Size.CapitalMillimetres)),
            $"{(each.Size.Rule.Conditions.Count > 0 ? $"{string.Join("; ", each.Size.Rule.Conditions)}: " : "")}{each.Size.Rule.Origin}"]))])
    { IsWide = true, LeastRem = 34 }.ToHtml();

    private static string FaceOf(Labels.LabelDrawing drawing) => drawing.Content.Face is { } face ? $", face {face}" : "";

    private static string Millimetres(double number) => number.ToString("0.00", CultureInfo.InvariantCulture).TrimEnd('0').TrimEnd('.');
}
