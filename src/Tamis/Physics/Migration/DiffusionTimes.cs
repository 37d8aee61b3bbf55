namespace Tamis.Physics;

/// <summary>How long water takes through a layer, without any stack: for a first look, and what the numerical march is checked against.</summary>
public static class DiffusionTimes
{
    private const double SecondsPerDay = 86400, SquareMetresPerSquareMillimetre = 1e-6;

    /// <summary>Thickness squared over diffusivity, s: the time in which a layer answers to what touches it.</summary>
    public static double Seconds(double thicknessMillimetres, double diffusivitySquareMetresPerSecond) =>
        thicknessMillimetres * thicknessMillimetres * SquareMetresPerSquareMillimetre / diffusivitySquareMetresPerSecond;

    /// <summary>The time after which a layer that gives or takes on one face has done half of it, s.</summary>
    public static double HalfTimeSeconds(double thicknessMillimetres, double diffusivitySquareMetresPerSecond) =>
        HalfTimeFourier * Seconds(thicknessMillimetres, diffusivitySquareMetresPerSecond);

    /// <summary>The share of the final exchange that a layer has done through one face held at a fixed water content, the other face closed.</summary>
    /// <param name="fourier">Diffusivity × time over thickness squared, a pure number of 0 or more.</param>
    /// <remarks>The series for long times, summed until its terms no longer count: good to 9 decimals from a <paramref name="fourier"/> of 1e-5 on.</remarks>
    public static double DoneShare(double fourier)
    {
        if (fourier <= 0) return 0;
        double left = 0;
        for (var n = 0; n < MostTerms; n++)
        {
            var odd = 2 * n + 1;
            var term = 8 / (odd * odd * Math.PI * Math.PI) * Math.Exp(-odd * odd * Math.PI * Math.PI * fourier / 4);
            left += term;
            if (term < 1e-17) break;
        }
        return 1 - left;
    }

    /// <summary>A layer's water activity on its way to equilibrium, to first order: one exponential with the slowest time of the layer.</summary>
    public static double FirstOrderWaterActivity(double startWaterActivity, double equilibriumWaterActivity, double seconds, double thicknessMillimetres, double diffusivitySquareMetresPerSecond)
    {
        var slowest = 4 * Seconds(thicknessMillimetres, diffusivitySquareMetresPerSecond) / (Math.PI * Math.PI);
        return equilibriumWaterActivity + (startWaterActivity - equilibriumWaterActivity) * Math.Exp(-seconds / slowest);
    }

    /// <summary>Thickness squared over diffusivity in days, with its range and source.</summary>
    public static Predicted Days(Given thicknessMillimetres, Given diffusivity) => Predicted.From(PhysicsData.Kit.Equation("diffusion time"),
        [thicknessMillimetres, diffusivity], given => Seconds(given[0], given[1]) / SecondsPerDay);

    /// <summary>The half-time in days, with its range and source.</summary>
    public static Predicted HalfTimeDays(Given thicknessMillimetres, Given diffusivity) => Predicted.From(PhysicsData.Kit.Equation("diffusion half-time"),
        [thicknessMillimetres, diffusivity], given => HalfTimeSeconds(given[0], given[1]) / SecondsPerDay);

    // Where DoneShare is one half; Crank 1975 gives 0.196.
    private const double HalfTimeFourier = 0.19673;

    private const int MostTerms = 1000;
}
