using Tamis.Losses;

namespace Tamis.Physics;

/// <summary>A window as two straight limits on the masses of the lines: part and base both grow with each line.</summary>
/// <remarks>Low·base ≤ part ≤ high·base, with part = p₀ + Σ pᵢ·mᵢ and base = b₀ + Σ bᵢ·mᵢ. The water that leaves stays what it is, in grams.</remarks>
internal sealed class LinearWindow
{
    private readonly (double Part, double Base)[] _perGram;
    private readonly (double Part, double Base) _fixed;

    private LinearWindow(Window window, double low, double high, (double, double)[] perGram, (double, double) fixedGrams) =>
        (Window, Low, High, _perGram, _fixed) = (window, low, high, perGram, fixedGrams);

    public Window Window { get; }

    public double Low { get; }

    public double High { get; }

    /// <summary>A window over lines, or null where its figure is no share of masses or is not known for them.</summary>
    /// <param name="window">The window.</param>
    /// <param name="figure">Its figure.</param>
    /// <param name="examined">The component.</param>
    /// <param name="lines">The lines, those of the component first, in their order.</param>
    /// <param name="insideShare">How far inside its ends to aim, in widths of the window.</param>
    public static LinearWindow? Of(Window window, IFigure figure, Examined examined, IReadOnlyList<LineContent> lines, double insideShare)
    {
        if (figure is OtherFigure || !figure.Of(examined, window.On).IsKnown) return null;
        var isRaw = window.On.Kind is BaseKind.RawMixture or BaseKind.OfPart;
        var all = examined.Contents;
        double[] keptNow = [.. all.Select(line => isRaw ? 1 : LineFigure.KeptShare(examined, line.Line.Name))];
        // A line that is not in yet would leave as much in the bowl as the others.
        double[] kept = [.. lines.Select((_, i) => i < keptNow.Length ? keptNow[i] : keptNow.Max())];
        (double, double)[] perGram = new (double, double)[lines.Count];
        for (var i = 0; i < lines.Count; i++)
        {
            var content = ForOneGram(lines[i]);
            perGram[i] = (kept[i] * PartOf(content, lines[i]), kept[i] * BaseOf(content));
        }
        // What left as water, as it would stand in the finished mass.
        var waterGrams = isRaw ? 0 : all.Select((line, i) => kept[i] * line.Line.MassGrams).Sum() - examined.Made.Out.FinishedGrams;
        Mixture gone = new() { EvaporatedGrams = waterGrams };
        var margin = insideShare * window.Range.Width;
        var factor = figure.Unit == "%" ? 100 : 1;
        return new(window, (window.Range.Low + (window.Range.Low > 0 ? margin : 0)) / factor, (window.Range.High - margin) / factor, perGram,
            (figure is MixtureFigure mixture ? mixture.Part(gone).Known : 0, BaseOf(gone)));

        double PartOf(Mixture content, LineContent line) => figure switch
        {
            MixtureFigure share => share.Part(content).Known,
            LineFigure named => named.Holds(line, all) ? 1 : 0,
            _ => 0,
        };

        double BaseOf(Mixture content) => figure is MixtureFigure { Against: { } against } ? against(content).Known : window.On.Kind switch
        {
            BaseKind.OfPart => window.On.Part!.In(content).Known,
            BaseKind.OfAllWater => content.Amount("WATER").Known,
            _ => content.FinishedGrams,
        };
    }

    /// <summary>What the limits leave for two lines when all others stay: each limit as a·x + b·y ≥ c.</summary>
    public IEnumerable<(double A, double B, double C)> Limits(double[] masses, int x, int y)
    {
        var (part, whole) = _fixed;
        for (var i = 0; i < masses.Length; i++)
            if (i != x && i != y) (part, whole) = (part + masses[i] * _perGram[i].Part, whole + masses[i] * _perGram[i].Base);
        var (px, bx) = _perGram[x];
        var (py, by) = x == y ? (0, 0) : _perGram[y];
        yield return (px - Low * bx, py - Low * by, Low * whole - part);
        yield return (High * bx - px, High * by - py, part - High * whole);
        yield return (bx, by, 1e-9 - whole);
    }

    private static Mixture ForOneGram(LineContent line) => line.Line.MassGrams > 0 ? line.Content.Scaled(1 / line.Line.MassGrams) : line.Content;
}
