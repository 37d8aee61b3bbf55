namespace Tamis.Tasting;

/// <summary>What an attribute asks of an assessor.</summary>
public enum AttributeKind
{
    /// <summary>How much it is liked, on a scale.</summary>
    Liking,
    /// <summary>How strong it is, on a scale.</summary>
    Intensity,
    /// <summary>Too little, just right or too much, in whole steps about the middle of the scale.</summary>
    JustRight,
    /// <summary>Which words of a list fit.</summary>
    Words,
    /// <summary>Which place it takes among all that were served: 1 is the first, no place twice.</summary>
    Ranking,
    /// <summary>Whether it was picked out of a set, in a test of same or different.</summary>
    Pick,
}

/// <summary>How a scale is put on a ballot.</summary>
public enum ScaleForm
{
    /// <summary>A line to mark anywhere.</summary>
    Line,
    /// <summary>A box for every whole point: a category scale.</summary>
    Boxes,
}
