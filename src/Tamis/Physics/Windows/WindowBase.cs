namespace Tamis.Physics;

/// <summary>What a figure is counted on. The same mixture gives other figures on other bases.</summary>
public enum BaseKind
{
    /// <summary>All that goes in, before anything leaves.</summary>
    RawMixture,
    /// <summary>What is there once the oven has taken its water.</summary>
    AfterBaking,
    /// <summary>What is eaten or used: after cooking losses where there are any, else as mixed.</summary>
    Finished,
    /// <summary>A part of the lines as weighed: the flour, the milk and cream, the chocolate.</summary>
    OfPart,
    /// <summary>All water of the mixture as used: of milk, egg and fruit too, and what gelatine soaked up.</summary>
    OfAllWater,
    /// <summary>Not a share: a temperature of the method.</summary>
    Method,
}

/// <summary>The base of a figure, as a sheet writes it.</summary>
/// <param name="Kind">What kind of base it is.</param>
/// <param name="Part">The lines that it counts on; null unless it counts on a part of them.</param>
public sealed record WindowBase(BaseKind Kind, LinePart? Part = null)
{
    private static readonly (string Word, BaseKind Kind, string InWords)[] Known =
    [
        ("raw mixture", BaseKind.RawMixture, "of the raw mixture"), ("after baking", BaseKind.AfterBaking, "after baking"), ("finished", BaseKind.Finished, "of the finished mixture"),
        ("of all water", BaseKind.OfAllWater, "of all water in it"), ("method", BaseKind.Method, "in the method"),
    ];

    /// <summary>The base in words that follow a figure: <c>of the raw mixture</c>.</summary>
    public string InWords => Part is not null ? $"of the {Part.Name}" : Known.First(known => known.Kind == Kind).InWords;

    /// <summary>The base as a sheet writes it.</summary>
    public string Word => Part is not null ? $"of {Part.Name}" : Known.First(known => known.Kind == Kind).Word;

    /// <summary>Reads a base; null where the text is none.</summary>
    public static WindowBase? Parse(string text)
    {
        foreach (var (word, kind, _) in Known)
            if (Names.Same(word, text)) return new(kind);
        return Names.Key(text).StartsWith("of ", StringComparison.Ordinal) && LinePart.Find(Names.Key(text)[3..]) is { } part ? new(BaseKind.OfPart, part) : null;
    }

    /// <summary>What may stand in a sheet.</summary>
    public static IReadOnlyList<string> Choices => [.. Known.Select(known => known.Word), .. LinePart.All.Select(part => $"of {part.Name}")];
}
