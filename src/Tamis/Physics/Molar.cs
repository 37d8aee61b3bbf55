namespace Tamis.Physics;

/// <summary>Molar masses that equations of the room have in their definition; every other substance's stands in a sheet.</summary>
internal static class Molar
{
    public const double WaterGramsPerMole = 18.015;
    public const double MonosaccharideGramsPerMole = 180.16;
    public const double DisaccharideGramsPerMole = 342.30;
    public const double TrisaccharideGramsPerMole = 504.44;
    public const double SodiumChlorideGramsPerMole = 58.44;
    public const double SodiumGramsPerMole = 22.990;
}
