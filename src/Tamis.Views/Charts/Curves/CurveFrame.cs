namespace Tamis.Views;

/// <summary>Where everything of a picture of curves stands; the still and the live picture share it.</summary>
internal sealed class CurveFrame
{
    public const double WidthUnits = 440, HeightUnits = 290, Top = 30, Bottom = 244;
    private const double LabelGap = 14, MostLabelUnits = 140;
    // A name at the edge of the picture would be cut where the reader's letters are wider than is taken; these are those of a wide face.
    private const double LabelWidth = 1.12, BoldWidth = 1.25;
    private const int MostPoints = 160, Hues = 4, LongName = 17;

    private readonly CurvePanel _panel;
    private readonly Figures _figures;

    public CurveFrame(CurvePanel panel, Figures figures)
    {
        (_panel, _figures) = (panel, figures);
        var points = panel.Curves.SelectMany(curve => curve.Points).Where(point => double.IsFinite(point.X) && double.IsFinite(point.Y)).ToArray();
        var across = panel.Across.Ends ?? Ends(points.Select(point => point.X).Concat(panel.Events.Select(each => each.X)), room: 0);
        var up = panel.Up.Ends ?? Ends(points.Select(point => point.Y).Concat(panel.Limits.Select(limit => limit.Y))
            .Concat(panel.Curves.SelectMany(curve => curve.Between.SelectMany(each => (double[])[each.Low, each.High]))), room: 0.06);
        Up = new(up.Low, up.High, Bottom, Top);
        Left = Math.Max(24, Up.Ticks().Max(tick => Svg.WidthOf(UpTick(tick))) + 10);
        var longest = panel.Curves.Where(curve => curve.Points.Count > 0).SelectMany(curve => LinesOf(curve.Name).Select(line => Svg.WidthOf(line) * (curve.IsChosen ? BoldWidth : LabelWidth))).DefaultIfEmpty(0).Max();
        Right = WidthUnits - 10 - Math.Min(MostLabelUnits, longest) - (longest > 0 ? 8 : 0);
        Across = new(across.Low, across.High, Left, Right);
        Labels = Svg.Apart([.. panel.Curves.Select(curve => Up.Within(LastOf(curve).Y) + 4)], panel.Curves.Any(curve => LinesOf(curve.Name).Count > 1) ? 2 * LabelGap - 1 : LabelGap, Top + 4, Bottom - 2);
    }

    public Scale Across { get; }

    public Scale Up { get; }

    public double Left { get; }

    public double Right { get; }

    /// <summary>The height of each curve's name beside its end.</summary>
    public IReadOnlyList<double> Labels { get; }

    /// <summary>A name in one line, or a long one in two, parted at the blank nearest to its middle.</summary>
    public static IReadOnlyList<string> LinesOf(string name)
    {
        var blanks = Enumerable.Range(0, name.Length).Where(at => name[at] == ' ').ToArray();
        if (name.Length <= LongName || blanks.Length == 0) return [name];
        var middle = blanks.MinBy(at => Math.Abs(at - name.Length / 2));
        return [name[..middle], name[(middle + 1)..]];
    }

    /// <summary>The points of a curve that a picture can show, thinned; a gap is a point that is not finite.</summary>
    public IReadOnlyList<(double X, double Y)> Thinned(Curve curve)
    {
        var points = curve.Points;
        if (points.Count <= MostPoints) return points;
        // Points of a march lie close together at its start: what counts is where they stand in the picture.
        var step = (Right - Left) / MostPoints;
        List<(double X, double Y)> kept = [points[0]];
        for (var at = 1; at < points.Count - 1; at++)
            if (!double.IsFinite(points[at].Y) || Math.Abs(Across.At(points[at].X) - Across.At(kept[^1].X)) >= step || Math.Abs(Up.At(points[at].Y) - Up.At(kept[^1].Y)) >= step) kept.Add(points[at]);
        kept.Add(points[^1]);
        return kept;
    }

    /// <summary>The curve in the pieces between its gaps, held within the picture.</summary>
    public IEnumerable<IReadOnlyList<(double X, double Y)>> Pieces(Curve curve)
    {
        List<(double X, double Y)> piece = [];
        foreach (var (x, y) in Thinned(curve))
        {
            if (double.IsFinite(x) && double.IsFinite(y) && x >= Across.Low - 1e-9 && x <= Across.High + 1e-9) piece.Add((x, y));
            else if (piece.Count > 0)
            {
                yield return piece;
                piece = [];
            }
        }
        if (piece.Count > 0) yield return piece;
    }

    public static (double X, double Y) LastOf(Curve curve) => curve.Points.LastOrDefault(point => double.IsFinite(point.Y));

    /// <summary>The hue of a curve and whether it is dashed: four hues, then the same four dashed; the chosen one has its own.</summary>
    public (string Hue, bool IsDashed) Look(int at)
    {
        if (_panel.Curves[at].IsChosen) return ("chosen", false);
        var number = _panel.Curves.Take(at).Count(curve => !curve.IsChosen);
        return ($"curve-{number % Hues + 1}", number / Hues % 2 == 1);
    }

    public string UpTick(double tick) => _figures.Number(tick, Up.TickDecimals()).Text;

    public string AcrossTick(double tick) => _figures.Number(tick, Across.TickDecimals()).Text;

    public Num Write(CurveAxis axis, double value) => axis.Decimals is { } decimals ? _figures.Number(value, decimals) : _figures.Significant(value);

    /// <summary>The height of each event's name: a step lower where the name before would run into it.</summary>
    public IReadOnlyList<double> EventLabels()
    {
        List<double> placed = [];
        var free = new List<double>();
        foreach (var each in _panel.Events.OrderBy(each => each.X))
        {
            var from = Across.Within(each.X);
            var row = free.FindIndex(until => until <= from);
            if (row < 0)
            {
                row = free.Count;
                free.Add(0);
            }
            free[row] = from + Svg.WidthOf(each.Name) + 10;
            placed.Add(Top + 10 + row * 14);
        }
        return placed;
    }

    /// <summary>Whether a name across the picture reads better at its right end: where curves stand farther from it.</summary>
    /// <param name="name">The name.</param>
    /// <param name="height">The height of the middle of its letters, in units.</param>
    public bool IsBetterRight(string name, double height)
    {
        var width = Svg.WidthOf(name) + 4;
        return Clearance(Right - width, Right) > Clearance(Left, Left + width) + 2;

        double Clearance(double from, double to)
        {
            var nearest = double.PositiveInfinity;
            foreach (var curve in _panel.Curves)
                foreach (var (x, y) in Along(curve))
                    if (x >= from && x <= to) nearest = Math.Min(nearest, Math.Abs(y - height));
            return Math.Min(nearest, LabelGap * 2);
        }
    }

    // Places along a curve, at most a few units apart, so that a straight piece between far points counts too.
    private IEnumerable<(double X, double Y)> Along(Curve curve)
    {
        foreach (var piece in Pieces(curve))
            for (var at = 0; at < piece.Count; at++)
            {
                var (x, y) = (Across.At(piece[at].X), Up.Within(piece[at].Y));
                yield return (x, y);
                if (curve.IsDots || at + 1 >= piece.Count) continue;
                var (nextX, nextY) = (Across.At(piece[at + 1].X), Up.Within(piece[at + 1].Y));
                var steps = (int)(Math.Max(Math.Abs(nextX - x), Math.Abs(nextY - y)) / 4);
                for (var step = 1; step <= steps; step++) yield return (x + (nextX - x) * step / (steps + 1), y + (nextY - y) * step / (steps + 1));
            }
    }

    private static Interval Ends(IEnumerable<double> values, double room)
    {
        double[] all = [.. values.Where(double.IsFinite)];
        if (all.Length == 0) return Interval.Between(0, 1);
        var (low, high) = (all.Min(), all.Max());
        if (low == high) return Interval.Between(low - Math.Max(Math.Abs(low) * 0.1, 0.5), high + Math.Max(Math.Abs(high) * 0.1, 0.5));
        var more = (high - low) * room;
        return Interval.Between(low >= 0 ? Math.Max(0, low - more) : low - more, high + more);
    }
}
