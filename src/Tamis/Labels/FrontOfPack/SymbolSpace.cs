namespace Tamis.Labels;

/// <summary>The half of a panel on which something must stand.</summary>
public enum PanelHalf
{
    /// <summary>The right half.</summary>
    Right,
    /// <summary>The upper half.</summary>
    Upper,
}

/// <summary>The room that a law wants kept for a symbol.</summary>
/// <param name="Format">The format, as the law names it.</param>
/// <param name="WidthMillimetres">The width of the symbol, in mm.</param>
/// <param name="HeightMillimetres">Its height, in mm.</param>
/// <param name="BufferMillimetres">How far around it nothing stands, in mm.</param>
/// <param name="Half">The half of the panel.</param>
/// <param name="Origin">The rule of the size.</param>
public sealed record SymbolSpace(string Format, double WidthMillimetres, double HeightMillimetres, double BufferMillimetres, PanelHalf Half, RuleOrigin Origin)
{
    /// <summary>The width with the buffer, in mm.</summary>
    public double OuterWidthMillimetres => WidthMillimetres + 2 * BufferMillimetres;

    /// <summary>The height with the buffer, in mm.</summary>
    public double OuterHeightMillimetres => HeightMillimetres + 2 * BufferMillimetres;
}

/// <summary>A symbol that the front of a pack must carry.</summary>
/// <param name="Named">The figures that it names, in words: <c>sugars</c>.</param>
/// <param name="HasArtwork">Whether the kitchen has the authority's artwork.</param>
public sealed record LabelSymbol(IReadOnlyList<string> Named, bool HasArtwork);
