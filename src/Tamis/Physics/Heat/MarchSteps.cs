namespace Tamis.Physics;

/// <summary>What a march was given, as the steps of a working.</summary>
internal static class MarchSteps
{
    private static readonly Source Asked = new("what was asked for", Evidence.Computed);
    private static readonly Source Properties = new("properties of the material", Evidence.Computed);

    public static IReadOnlyList<Working> Of(string piece, IEnumerable<ThermalCurve> materials, IReadOnlyList<HeatStage> stages) =>
    [
        new(piece, double.NaN, "", Asked) { From = [.. materials.Distinct().Select(Material)] },
        .. stages.Select((stage, i) => new Working($"surroundings {i + 1}, for", stage.Minutes, "min", Asked) { From = [.. Faces(stage)] }),
    ];

    private static Working Material(ThermalCurve curve) => new(curve.Name + ", density", curve.DensityKgPerM3, "kg/m³", Properties);

    private static IEnumerable<Working> Faces(HeatStage stage)
    {
        foreach (var (face, air) in ((string, Surroundings)[])[("above", stage.Top), ("below", stage.Bottom), ("at the side", stage.Side)])
            yield return new Working("air or plate " + face, air.AirCelsius, "°C", Asked) { From = [new("heat transfer with what wraps the face", air.OverallWPerM2K, "W/(m²·K)", Asked)] };
    }
}
