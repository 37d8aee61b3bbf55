namespace Tamis.Montage;

/// <summary>What must be known of a component to place it.</summary>
/// <param name="DensityGramsPerMillilitre">As it stands in the piece; null where nobody knows.</param>
/// <param name="RawDensityGramsPerMillilitre">Before it is baked; null where nobody knows.</param>
/// <param name="KeptShare">The part of a raw mass that is there when it is finished, by the water that leaves, above 0 to 1.</param>
public sealed record LayerFacts(double? DensityGramsPerMillilitre, double? RawDensityGramsPerMillilitre, double KeptShare);

/// <summary>A component as it stands in the piece.</summary>
public sealed record PlacedLayer
{
    /// <summary>The component.</summary>
    public required string Component { get; init; }

    /// <summary>How it stands.</summary>
    public required Placing As { get; init; }

    /// <summary>Its outer solid, its base at <see cref="BottomMillimetres"/>.</summary>
    public required Shape Outer { get; init; }

    /// <summary>What the lining leaves free; null for anything but a lining.</summary>
    public Shape? Hollow { get; init; }

    /// <summary>Its underside above the underside of the piece.</summary>
    public required double BottomMillimetres { get; init; }

    /// <summary>Its top above the underside of the piece.</summary>
    public double TopMillimetres => BottomMillimetres + Outer.HeightMillimetres;

    /// <summary>How thick it is: of the wall of a lining, of a film, else from underside to top.</summary>
    public required double ThicknessMillimetres { get; init; }

    /// <summary>How many of it.</summary>
    public int Count { get; init; } = 1;

    /// <summary>What it fills, less what is inside it, all of them together.</summary>
    public required double VolumeMillilitres { get; init; }

    /// <summary>What it weighs, all of them together; null where neither a mass nor a density is known.</summary>
    public required double? MassGrams { get; init; }

    /// <summary>The density used or, where a mass was given, the one that follows; null where unknown.</summary>
    public double? DensityGramsPerMillilitre => MassGrams / VolumeMillilitres;

    /// <summary>The layer that it is in, or that it covers; null where it stands on its own.</summary>
    public string? Inside { get; init; }

    /// <summary>The row of the sheet.</summary>
    public required Source Origin { get; init; }
}
