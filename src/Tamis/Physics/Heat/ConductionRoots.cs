using MathNet.Numerics;
using MathNet.Numerics.RootFinding;

namespace Tamis.Physics;

/// <summary>Roots and coefficients of the series that describe conduction in a slab, roll or ball whose faces give heat to air.</summary>
/// <remarks>Slab <c>ζ tan ζ = Bi</c>, roll <c>ζ J₁/J₀ = Bi</c>, ball <c>1 − ζ cot ζ = Bi</c>; Bi is the heat transfer coefficient times half thickness or radius over the conductivity, above 0. Carslaw and Jaeger 1959.</remarks>
public static class ConductionRoots
{
    private const double Accuracy = 1e-13;
    private const int Rounds = 200;

    /// <summary>A root, in radians.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="biot">The Biot number, above 0.</param>
    /// <param name="number">Which root, 1 first.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Biot number is not above 0, or the count is below 1.</exception>
    public static double Zeta(ConductionShape shape, double biot, int number = 1)
    {
        if (!(biot > 0 && double.IsFinite(biot))) throw new ArgumentOutOfRangeException(nameof(biot), biot, "A Biot number is above 0.");
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        return shape switch
        {
            ConductionShape.Slab => Brent.FindRoot(z => z * Math.Sin(z) - biot * Math.Cos(z), (number - 1) * Math.PI, (number - 0.5) * Math.PI, Accuracy, Rounds),
            ConductionShape.Sphere => Brent.FindRoot(z => (1 - biot) * Math.Sin(z) - z * Math.Cos(z), Math.Max((number - 1) * Math.PI, 1e-9), number * Math.PI, Accuracy, Rounds),
            _ => Brent.FindRoot(z => z * J1(z) - biot * J0(z), number == 1 ? 0 : ZeroOfJ1(number - 1), ZeroOfJ0(number), Accuracy, Rounds),
        };
    }

    /// <summary>The coefficient that belongs to a root, for the temperature at the centre.</summary>
    public static double Coefficient(ConductionShape shape, double zeta) => shape switch
    {
        ConductionShape.Slab => 4 * Math.Sin(zeta) / (2 * zeta + Math.Sin(2 * zeta)),
        ConductionShape.Sphere => 4 * (Math.Sin(zeta) - zeta * Math.Cos(zeta)) / (2 * zeta - Math.Sin(2 * zeta)),
        _ => 2 * J1(zeta) / (zeta * (J0(zeta) * J0(zeta) + J1(zeta) * J1(zeta))),
    };

    /// <summary>How the term of a root falls from the centre outwards.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="zetaTimesPosition">The root times the relative position, 0 at the centre and the root itself at the face.</param>
    public static double Profile(ConductionShape shape, double zetaTimesPosition) => shape switch
    {
        ConductionShape.Slab => Math.Cos(zetaTimesPosition),
        ConductionShape.Sphere => zetaTimesPosition == 0 ? 1 : Math.Sin(zetaTimesPosition) / zetaTimesPosition,
        _ => J0(zetaTimesPosition),
    };

    /// <summary>The mean of a term over the piece, against its value at the centre.</summary>
    public static double MeanProfile(ConductionShape shape, double zeta) => shape switch
    {
        ConductionShape.Slab => Math.Sin(zeta) / zeta,
        ConductionShape.Sphere => 3 * (Math.Sin(zeta) - zeta * Math.Cos(zeta)) / (zeta * zeta * zeta),
        _ => 2 * J1(zeta) / zeta,
    };

    private static double J0(double x) => SpecialFunctions.BesselJ(0, x);

    private static double J1(double x) => SpecialFunctions.BesselJ(1, x);

    // First terms of McMahon's expansion, made exact by Newton's rule.
    private static double ZeroOfJ0(int number)
    {
        var x = (number - 0.25) * Math.PI;
        x += 1 / (8 * x);
        for (var round = 0; round < 6; round++) x += J0(x) / J1(x);
        return x;
    }

    private static double ZeroOfJ1(int number)
    {
        var x = (number + 0.25) * Math.PI;
        x -= 3 / (8 * x);
        for (var round = 0; round < 6; round++) x -= J1(x) / (J0(x) - J1(x) / x);
        return x;
    }
}
