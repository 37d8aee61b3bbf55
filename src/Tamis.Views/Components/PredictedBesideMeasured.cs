using Tamis.Desserts;
using Tamis.Physics;

namespace Tamis.Views;

/// <summary>Something that was both predicted and measured.</summary>
/// <param name="Component">The component; the piece where it is the whole.</param>
/// <param name="What">What was measured: yield, Brix, pH, density, core temperature.</param>
/// <param name="Predicted">What the model says.</param>
/// <param name="Measured">What the sheet says, make by make, in the same unit.</param>
public sealed record PredictedRow(string Component, string What, Predicted Predicted, IReadOnlyList<Measurement> Measured)
{
    /// <summary>The decimals of the figures; null for one or two significant digits of the range.</summary>
    public int? Decimals { get; init; }
}

/// <summary>What was predicted beside what was measured: the miss is data too.</summary>
public static class PredictedBesideMeasured
{
    /// <summary>The table: a row a measurement, the miss with its sign, whether the measured figure lies in the predicted range.</summary>
    /// <param name="rows">The figures.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static Html Of(IReadOnlyList<PredictedRow> rows, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics;
        if (rows.Count == 0) return Notes.Small(Html.Of($"{words.NothingMeasured}"));
        var table = new DataTable(words.PredictedAndMeasured,
            [Column.Words(words.Component), Column.Words(words.Figure), Column.Numbers(words.Predicted), Column.Numbers(words.Between), Column.Numbers(words.Measured), Column.Numbers(words.Miss), Column.Words(words.InRange)],
            [.. rows.SelectMany(row => row.Measured.Select((measured, at) => Line(row, measured, at == 0, numbers)))])
        { IsWide = true, LeastRem = 40, IsLong = true };
        return Sentence(rows, numbers) + table.ToHtml();
    }

    private static Row Line(PredictedRow row, Measurement measured, bool isFirst, Figures figures)
    {
        var words = figures.Language.Words.Physics;
        var unit = row.Predicted.Unit;
        var places = row.Decimals ?? (row.Predicted.Range is { IsPoint: false } range ? Math.Max(0, Figures.PlacesOf(range)) : 2);
        var miss = measured.Value - row.Predicted.Value;
        var finding = !row.Predicted.IsKnown ? PredictionTable.Doubt(row.Predicted, figures)
            : row.Predicted.Range is { IsPoint: false } known ? Html.Text(known.Contains(measured.Value) ? words.Inside : miss > 0 ? words.Above : words.Below)
            : Html.Empty;
        return new(isFirst ? row.Component : "", isFirst ? row.What : "",
            figures.Number(row.Predicted.IsKnown ? row.Predicted.Value : null, places, unit),
            Num.Said(row.Predicted is { IsKnown: true, Range: { IsPoint: false } between } ? figures.Between(between, places, "") : ""),
            ((Cell)figures.Number(measured.Value, places, unit)) with { From = $"{measured.Trial}, {words.Make} {measured.Make}" },
            row.Predicted.IsKnown ? figures.Difference(miss, places, unit) : Num.Said(""), finding);
    }

    private static Html Sentence(IReadOnlyList<PredictedRow> rows, Figures figures)
    {
        var words = figures.Language.Words.Physics;
        var judged = rows.Where(row => row.Predicted is { IsKnown: true, Range: { IsPoint: false } }).SelectMany(row => row.Measured.Select(measured => row.Predicted.Range!.Value.Contains(measured.Value))).ToArray();
        return judged.Length == 0 ? Html.Empty
            : Notes.Paragraph(words.InsideOfAll.Fill(("inside", figures.Count(judged.Count(inside => inside)).InText), ("all", figures.Count(judged.Length).InText)));
    }
}
