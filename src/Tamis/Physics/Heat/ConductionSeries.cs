namespace Tamis.Physics;

/// <summary>How the temperature of a slab, roll or ball of steady properties nears the temperature of the air: the whole series.</summary>
/// <remarks><c>Y = (T − T_air)/(T_start − T_air)</c> at a Fourier number <c>Fo = α·t/L²</c>, L half thickness or radius. A slab is cooled on both faces; for one insulated face take the whole thickness as L. Nothing freezes, melts or evaporates.</remarks>
public sealed class ConductionSeries
{
    private const int MostTerms = 200;
    private const double Negligible = 36; // e⁻³⁶ is below the last digit of a double.
    private readonly double[] _zeta, _coefficient;

    private ConductionSeries(ConductionShape shape, double biot, int terms)
    {
        (Shape, Biot) = (shape, biot);
        _zeta = [.. Enumerable.Range(1, terms).Select(number => ConductionRoots.Zeta(shape, biot, number))];
        _coefficient = [.. _zeta.Select(zeta => ConductionRoots.Coefficient(shape, zeta))];
    }

    /// <summary>The shape.</summary>
    public ConductionShape Shape { get; }

    /// <summary>The Biot number.</summary>
    public double Biot { get; }

    /// <summary>The whole series, or its first term alone, which is good from a Fourier number of 0.2 on.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="biot">The Biot number, above 0.</param>
    /// <param name="firstTermOnly">Whether the first term is enough.</param>
    public static ConductionSeries Of(ConductionShape shape, double biot, bool firstTermOnly = false) => new(shape, biot, firstTermOnly ? 1 : MostTerms);

    /// <summary>The temperature difference that is left, 1 at the start.</summary>
    /// <param name="fourier">The Fourier number, 0 or more.</param>
    /// <param name="relativePosition">0 at the centre, 1 at the face.</param>
    public double Ratio(double fourier, double relativePosition = 0) => Sum(fourier, (series, i) => ConductionRoots.Profile(series.Shape, series._zeta[i] * relativePosition));

    /// <summary>The mean over the piece.</summary>
    public double MeanRatio(double fourier) => Sum(fourier, (series, i) => ConductionRoots.MeanProfile(series.Shape, series._zeta[i]));

    /// <summary>Minutes until a tenth of the temperature difference is left of each tenfold (the f value): from the first root.</summary>
    /// <param name="lengthMetres">Half thickness or radius.</param>
    /// <param name="diffusivityM2PerS">Thermal diffusivity, m²/s.</param>
    public double FValueMinutes(double lengthMetres, double diffusivityM2PerS) =>
        Math.Log(10) * lengthMetres * lengthMetres / (_zeta[0] * _zeta[0] * diffusivityM2PerS) / 60;

    /// <summary>The Fourier number at which the centre's difference has fallen to a ratio, of one body or of the product of several.</summary>
    /// <param name="ratio">The ratio, above 0 and below 1.</param>
    /// <param name="product">The bodies whose ratios multiply, each with its Fourier number for one of the first body: a short roll is a slab times a roll.</param>
    public static double FourierFor(double ratio, params IReadOnlyList<(ConductionSeries Series, double FourierShare)> product)
    {
        if (!(ratio is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(ratio), ratio, "A temperature on the way lies between the start and the air.");
        double Left(double fourier) => product.Aggregate(1.0, (left, each) => left * each.Series.Ratio(fourier * each.FourierShare));
        var high = 1.0;
        while (Left(high) > ratio) high *= 2;
        var low = 0.0;
        // Halving: the first term alone begins above 1 and falls steadily, as the whole series does.
        for (var round = 0; round < 80; round++)
        {
            var middle = (low + high) / 2;
            if (Left(middle) > ratio) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    private double Sum(double fourier, Func<ConductionSeries, int, double> profile)
    {
        if (!(fourier >= 0)) throw new ArgumentOutOfRangeException(nameof(fourier), fourier, "A Fourier number is 0 or more.");
        if (fourier == 0 && _zeta.Length > 1) return 1;
        var sum = 0.0;
        for (var i = 0; i < _zeta.Length && (i == 0 || _zeta[i] * _zeta[i] * fourier < Negligible); i++)
            sum += _coefficient[i] * Math.Exp(-_zeta[i] * _zeta[i] * fourier) * profile(this, i);
        return sum;
    }
}
