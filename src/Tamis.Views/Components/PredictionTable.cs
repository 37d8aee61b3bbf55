using Tamis.Physics;

namespace Tamis.Views;

/// <summary>A figure that a model gives, under the name that a cook has for it.</summary>
/// <param name="Name">What it is; the equation's own words where empty.</param>
/// <param name="Predicted">The figure.</param>
public sealed record PredictionRow(string Name, Predicted Predicted)
{
    /// <summary>The decimals to show; null for what its range can carry, else three significant digits.</summary>
    public int? Decimals { get; init; }

    /// <summary>What it means for the work, in words; may be empty.</summary>
    public Html Means { get; init; }

    /// <summary>The name under which the figure is followed from run to run; null where it is not.</summary>
    public string? Tracked { get; init; }
}

/// <summary>Figures that models give: each with its unit and range, what it means, why it may not be trusted, and how it was worked out.</summary>
public static class PredictionTable
{
    /// <summary>The table, with the workings folded under it.</summary>
    /// <param name="name">What it is a table of.</param>
    /// <param name="rows">The figures.</param>
    /// <param name="caption">What stands above it; may be empty.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static Html Of(string name, IReadOnlyList<PredictionRow> rows, Html caption = default, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics;
        var speaks = rows.Any(row => !row.Means.IsEmpty || !Doubt(row.Predicted, numbers).IsEmpty);
        DataTable table = new(name,
            [Column.Words(words.Figure), Column.Numbers(words.Predicted), Column.Numbers(words.Between), .. speaks ? (Column[])[Column.Words(words.WhatItMeans)] : []],
            [.. rows.Select(row => new Row([Word(row), Shown(row, numbers), Num.Said(Range(row, numbers)), .. speaks ? (Cell[])[Html.Join([.. ((Html[])[row.Means, Doubt(row.Predicted, numbers)]).Where(part => !part.IsEmpty)], " ")] : []]))])
        { Caption = caption, Fits = true };
        var workings = Html.Join(rows.Where(row => row.Predicted.IsKnown).Select(row => WorkingView.Of(row.Predicted.Working with { Step = Word(row) }, numbers)));
        return table.ToHtml() + (workings.IsEmpty ? workings : Notes.Folded(words.HowWorkedOut, workings));
    }

    /// <summary>A predicted figure with its range, in a sentence.</summary>
    public static Html InText(Predicted predicted, int? decimals = null, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        return predicted.IsKnown ? numbers.Estimate(predicted.Value, predicted.Range, predicted.Unit, decimals).InText : numbers.NotKnown.InText;
    }

    /// <summary>Why a figure is missing, or may not be trusted; empty where its equation holds.</summary>
    public static Html Doubt(Predicted predicted, Figures? figures = null)
    {
        var words = (figures ?? Figures.English).Language.Words.Physics;
        return predicted.Lacks.Count > 0 ? Html.Of($"{words.NotWithout} {string.Join(", ", predicted.Lacks.Select(Typeset.Text))}.")
            : predicted.Outside.Count > 0 ? Html.Of($"<span class=\"doubt\">{words.OutsideTested}</span> {string.Join("; ", predicted.Outside.Select(Typeset.Text))}.")
            : Html.Empty;
    }

    private static string Word(PredictionRow row) => row.Name.Length > 0 ? row.Name : row.Predicted.Equation.Name;

    private static Cell Shown(PredictionRow row, Figures figures)
    {
        Cell cell = row.Predicted.IsKnown ? figures.Estimate(row.Predicted.Value, row.Predicted.Range, row.Predicted.Unit, row.Decimals).Value : figures.NotKnown;
        return row.Tracked is { } tracked ? cell.Tracked(tracked) : cell;
    }

    private static string Range(PredictionRow row, Figures figures) =>
        row.Predicted is { IsKnown: true, Range: { IsPoint: false } range } ? figures.Estimate(row.Predicted.Value, range, row.Predicted.Unit, row.Decimals).Range : "";
}
