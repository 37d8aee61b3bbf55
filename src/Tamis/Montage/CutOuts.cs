namespace Tamis.Montage;

/// <summary>How rounds stand on a sheet.</summary>
public enum Nesting
{
    /// <summary>In rows and columns.</summary>
    Square,
    /// <summary>In rows along the length, each shifted by half a round against the last.</summary>
    HexagonalAlongLength,
    /// <summary>In rows along the width, each shifted by half a round against the last.</summary>
    HexagonalAlongWidth,
}

/// <summary>Rounds cut from a sheet.</summary>
public sealed record CutOuts
{
    private const double Slack = 1e-9;

    private CutOuts(Cuboid sheet, double diameter, double gap, Nesting nesting, IReadOnlyList<(double X, double Y)> centres) =>
        (Sheet, DiameterMillimetres, GapMillimetres, Nesting, Centres) = (sheet, diameter, gap, nesting, centres);

    /// <summary>The sheet.</summary>
    public Cuboid Sheet { get; }

    /// <summary>The diameter of a round, in millimetres.</summary>
    public double DiameterMillimetres { get; }

    /// <summary>What is left between two rounds for the cutter, in millimetres.</summary>
    public double GapMillimetres { get; }

    /// <summary>How they stand.</summary>
    public Nesting Nesting { get; }

    /// <summary>The middle of each round from a corner of the sheet, in millimetres.</summary>
    public IReadOnlyList<(double X, double Y)> Centres { get; }

    /// <summary>How many.</summary>
    public int Count => Centres.Count;

    /// <summary>More than this no arrangement can hold.</summary>
    /// <remarks>Oler's inequality: at most 2/√3 · A + P/2 + 1 points stand one apart in a convex shape of area A and perimeter P. N. Oler, An inequality in the geometry of numbers, Acta Mathematica 105 (1961); from memory.</remarks>
    public int UpperBound => Bound(Sheet.Length, Sheet.Width, DiameterMillimetres, GapMillimetres);

    /// <summary>What is not cut out, 0 to 1 of the sheet.</summary>
    public double TrimShare => 1 - Count * Math.PI * DiameterMillimetres * DiameterMillimetres / 4 / (Sheet.Length * Sheet.Width);

    /// <summary>The better of square and hexagonal nesting, along the length or the width.</summary>
    /// <param name="sheet">The sheet; its height is its thickness.</param>
    /// <param name="diameterMillimetres">The diameter of a round, above 0.</param>
    /// <param name="gapMillimetres">What the cutter leaves between two rounds, 0 or more; the sheet's edge needs none.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above zero, or the gap is below it.</exception>
    public static CutOuts Best(Cuboid sheet, double diameterMillimetres, double gapMillimetres = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(diameterMillimetres);
        ArgumentOutOfRangeException.ThrowIfNegative(gapMillimetres);
        (Nesting Nesting, IReadOnlyList<(double, double)> Centres)[] ways =
        [
            (Nesting.Square, Square(sheet.Length, sheet.Width, diameterMillimetres, gapMillimetres)),
            (Nesting.HexagonalAlongLength, Hexagonal(sheet.Length, sheet.Width, diameterMillimetres, gapMillimetres)),
            (Nesting.HexagonalAlongWidth, [.. Hexagonal(sheet.Width, sheet.Length, diameterMillimetres, gapMillimetres).Select(centre => (centre.Y, centre.X))]),
        ];
        var (nesting, centres) = ways.MaxBy(way => way.Centres.Count);
        return new(sheet, diameterMillimetres, gapMillimetres, nesting, centres);
    }

    /// <summary>How many rounds come out of a mass of dough when the trim is rolled out again.</summary>
    /// <param name="doughGrams">The dough.</param>
    /// <param name="densityGramsPerMillilitre">Its density.</param>
    /// <param name="timesRolledAgain">How often trim is rolled out again, 0 or more; dough toughens with each.</param>
    /// <returns>The rounds of each rolling, the first first, and the trim that is left in grams.</returns>
    public (IReadOnlyList<int> Rounds, double TrimGrams) From(double doughGrams, double densityGramsPerMillilitre, int timesRolledAgain)
    {
        var each = Math.PI * DiameterMillimetres * DiameterMillimetres / 4 * Sheet.Height / 1000 * densityGramsPerMillilitre;
        List<int> rounds = [];
        for (var left = doughGrams; ; )
        {
            // A sheet that is only part of the frame gives its share of the rounds.
            var cut = rounds.Count > timesRolledAgain ? 0 : (int)Math.Floor(left * (1 - TrimShare) / each + 1e-9);
            if (cut == 0) return (rounds, left);
            rounds.Add(cut);
            left -= cut * each;
        }
    }

    private static IReadOnlyList<(double X, double Y)> Square(double length, double width, double diameter, double gap) =>
        Rows(length, width, diameter, diameter + gap, shift: 0, step: diameter + gap);

    // Rounds pulled apart along a row until it fills the length let the next row come closer, which may make room for one more.
    private static IReadOnlyList<(double X, double Y)> Hexagonal(double length, double width, double diameter, double gap)
    {
        var (pitch, room) = (diameter + gap, length - diameter);
        var most = room < 0 ? 0 : (int)Math.Floor(room / pitch + Slack) + 1;
        double[] pitches = [pitch, .. new[] { most - 1, most - 0.5, most - 1.5, most - 2 }.Where(rounds => rounds > 0).Select(rounds => room / rounds)];
        return pitches.Where(each => each >= pitch - Slack && each <= pitch * Math.Sqrt(3))
            .Select(each => Rows(length, width, diameter, each, shift: each / 2, step: Math.Sqrt(pitch * pitch - each * each / 4)))
            .MaxBy(centres => centres.Count) ?? [];
    }

    private static IReadOnlyList<(double X, double Y)> Rows(double length, double width, double diameter, double pitch, double shift, double step)
    {
        if (diameter > length + Slack || diameter > width + Slack) return [];
        List<(double, double)> centres = [];
        for (var row = 0; diameter + row * step <= width + Slack; row++)
            for (var x = diameter / 2 + row % 2 * shift; x + diameter / 2 <= length + Slack; x += pitch)
                centres.Add((x, diameter / 2 + row * step));
        return centres;
    }

    private static int Bound(double length, double width, double diameter, double gap)
    {
        if (diameter > length || diameter > width) return 0;
        var (a, b) = ((length - diameter) / (diameter + gap), (width - diameter) / (diameter + gap));
        return (int)Math.Floor(2 / Math.Sqrt(3) * a * b + a + b + 1 + Slack);
    }
}
