namespace Tamis.Tasting;

/// <summary>One question of a ballot.</summary>
/// <param name="Name">The attribute as the sheets name it.</param>
/// <param name="Kind">What it asks.</param>
public sealed record SensoryAttribute(string Name, AttributeKind Kind)
{
    /// <summary>The lowest point of the scale; 0 for words.</summary>
    public double LowPoints { get; init; }

    /// <summary>The highest point of the scale; 0 for words.</summary>
    public double HighPoints { get; init; }

    /// <summary>The points from one end of the scale to the other; 0 for words.</summary>
    public double LengthPoints => HighPoints - LowPoints;

    /// <summary>What the lowest point means, empty where the sheet does not say.</summary>
    public string LowWord { get; init; } = "";

    /// <summary>What the highest point means, empty where the sheet does not say.</summary>
    public string HighWord { get; init; } = "";

    /// <summary>The question as the assessor reads it, empty where the sheet has none.</summary>
    public string Question { get; init; } = "";

    /// <summary>The list to tick, in the order of the sheet; empty for a scale.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>How a scale of liking or intensity is put on a ballot; a line unless the sheet says boxes.</summary>
    public ScaleForm Form { get; init; }

    /// <summary>Whether a ballot of a tasting asks it: picks in a test of same or different, all else in any other tasting but one at the bench.</summary>
    public bool IsAskedIn(TastingSession session) => !session.IsBench && (Kind == AttributeKind.Pick) == (session.Test is not null);

    /// <summary>Whether only whole points are answers.</summary>
    public bool IsWhole => Kind is AttributeKind.JustRight or AttributeKind.Ranking or AttributeKind.Pick || IsScale && Form == ScaleForm.Boxes;

    /// <summary>Whether its points can be averaged and compared: liking and intensity.</summary>
    public bool IsScale => Kind is AttributeKind.Liking or AttributeKind.Intensity;
}
