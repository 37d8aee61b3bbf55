using Tamis.Physics;

namespace Tamis.Views;

/// <summary>A component on the ladder of water activity.</summary>
/// <param name="Name">Its name.</param>
/// <param name="WaterActivity">The water activity that is shown for it; null where no model can speak, and then it is named under the picture.</param>
/// <param name="Spread">How far the models that hold differ; null where fewer than two do.</param>
public sealed record LadderRow(string Name, double? WaterActivity, Interval? Spread)
{
    /// <summary>What was measured of it; empty where nobody measured.</summary>
    public IReadOnlyList<double> Measured { get; init; } = [];

    /// <summary>Whether its figure lies outside what its model was tested for, so that it is a guess.</summary>
    public bool IsGuess { get; init; }

    /// <summary>The row of an estimate.</summary>
    /// <param name="name">The component.</param>
    /// <param name="estimate">What the models say.</param>
    /// <param name="measured">What was measured of it.</param>
    public static LadderRow Of(string name, WaterActivityEstimate estimate, params IReadOnlyList<double> measured) =>
        new(name, estimate.Predicted.IsKnown ? estimate.Predicted.Value : null, estimate.Spread) { IsGuess = !estimate.Predicted.IsSound, Measured = measured };
}

/// <summary>A rung of the ladder.</summary>
/// <param name="Name">What grows above it; a few words.</param>
/// <param name="WaterActivity">Where it stands.</param>
public sealed record LadderRung(string Name, double WaterActivity)
{
    /// <summary>The limits of growth of the kit.</summary>
    public static IReadOnlyList<LadderRung> Kit => [.. MicrobialLimit.Kit.Where(limit => limit.IsGrowth).Select(limit => new LadderRung(limit.Short, limit.WaterActivityRatio))];
}

/// <summary>Components on a ladder of water activity, beside the limits under which groups of microbes do not grow.</summary>
public static class WaterActivityLadder
{
    /// <summary>The chart, with the figures in a table.</summary>
    /// <param name="rows">The components.</param>
    /// <param name="rungs">The limits; the kit's own where null.</param>
    /// <param name="caption">What is drawn; the caution that must stand beside every prediction is said behind it.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Of(IReadOnlyList<LadderRow> rows, IReadOnlyList<LadderRung>? rungs = null, Html caption = default, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var frame = new LadderFrame(rows, rungs ?? LadderRung.Kit, numbers);
        var words = numbers.Language.Words.Chart;
        string[] silent = [.. rows.Where(row => row.WaterActivity is null).Select(row => row.Name)];
        ChartPanel panel = new(words.LadderTitle, Still(frame, numbers), LadderLive.Json(frame, numbers), (int)frame.Height)
        { Below = silent.Length == 0 ? Html.Empty : Html.Of($"{words.NoModel} {string.Join(", ", silent)}.") };
        return new([panel], Html.Join([.. ((Html[])[caption, Html.Text(MicrobialLimit.Caution)]).Where(part => !part.IsEmpty)], " ")) { Figures = Table(rows, numbers), Language = numbers.Language };
    }

    private static Html Still(LadderFrame frame, Figures figures)
    {
        var words = figures.Language.Words.Chart;
        var svg = new Svg(frame.WidthUnits, frame.Height, words.LadderTitle, words.LadderDescription);
        svg.Text("t2 ts end", frame.Left - LadderFrame.RungGap, 14, words.NoGrowthUnder).Text("t2 ts", frame.Right + 6, 14, words.WaterActivity);
        svg.Line("axis", frame.Left, LadderFrame.Top, frame.Left, frame.Bottom);
        for (var at = 0; at < frame.Rungs.Count; at++)
        {
            var y = frame.Up.At(frame.Rungs[at].WaterActivity);
            svg.Path("axis", [(frame.Left - LadderFrame.RungGap + 4, frame.RungLabels[at]), (frame.Left - 6, y), (frame.Left, y)]).Line("limit", frame.Left, y, frame.Right, y)
                .Text("ts end", frame.Left - LadderFrame.RungGap, frame.RungLabels[at] + 4, frame.Rungs[at].Name);
        }
        for (var at = 0; at < frame.Rows.Count; at++)
        {
            var row = frame.Rows[at];
            var (x, y) = (frame.PlaceOf(at), frame.Up.Within(row.WaterActivity!.Value));
            if (row.Spread is { } spread) svg.Line("line", x, frame.Up.Within(spread.Low), x, frame.Up.Within(spread.High));
            foreach (var measured in row.Measured) svg.Line("line c-up", x - 7, frame.Up.Within(measured), x + 7, frame.Up.Within(measured));
            svg.Line("grid", x, y, frame.Right + 2, frame.RowLabels[at]).Dot(row.IsGuess ? "dot guess" : "dot c-chosen", x, y, 4.5)
                .Text("ts", frame.Right + 6, frame.RowLabels[at] + 4, frame.NameOf(row));
        }
        return svg.ToHtml();
    }

    private static DataTable Table(IReadOnlyList<LadderRow> rows, Figures figures)
    {
        var words = figures.Language.Words.Chart;
        return new(words.LadderTitle, [Column.Words(words.Component), Column.Numbers(words.Predicted), Column.Numbers(words.ModelSpread), Column.Numbers(words.Measured)],
            [.. rows.OrderByDescending(row => row.WaterActivity ?? -1).Select(row => new Row(row.Name, figures.WaterActivity(row.WaterActivity),
                Num.Said(row.Spread is { } spread ? figures.Between(spread, 2, "") : ""), Num.Said(string.Join(", ", row.Measured.Select(value => figures.WaterActivity(value).Text)))))]);
    }
}
