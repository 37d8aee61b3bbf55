namespace Tamis.Physics;

/// <summary>What a food is made of, as far as heat is concerned.</summary>
public enum ThermalComponent
{
    /// <summary>Liquid water.</summary>
    Water,
    /// <summary>Protein of any kind.</summary>
    Protein,
    /// <summary>Fat of any kind, as if liquid: its melting heat is apart.</summary>
    Fat,
    /// <summary>Sugars, starch and other available carbohydrate.</summary>
    Carbohydrate,
    /// <summary>Dietary fibre.</summary>
    Fibre,
    /// <summary>Minerals.</summary>
    Ash,
    /// <summary>Frozen water.</summary>
    Ice,
}

/// <summary>A property that follows temperature as <c>constant + perDegree·T + perDegreeSquared·T²</c>, T in °C.</summary>
/// <param name="Constant">The value at 0 °C.</param>
/// <param name="PerDegree">The linear coefficient.</param>
/// <param name="PerDegreeSquared">The quadratic coefficient.</param>
public readonly record struct Quadratic(double Constant, double PerDegree, double PerDegreeSquared)
{
    /// <summary>The value at a temperature.</summary>
    public double At(double celsius) => Constant + celsius * (PerDegree + celsius * PerDegreeSquared);

    /// <summary>The integral from 0 °C to a temperature, in the unit of the value times °C.</summary>
    public double Integral(double celsius) => celsius * (Constant + celsius * (PerDegree / 2 + celsius * PerDegreeSquared / 3));
}
