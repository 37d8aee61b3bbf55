using System.Globalization;

namespace Tamis.Labels;

/// <summary>A colour on a screen, in the sRGB colour space.</summary>
/// <param name="Red">Red, 0 to 255.</param>
/// <param name="Green">Green, 0 to 255.</param>
/// <param name="Blue">Blue, 0 to 255.</param>
public readonly record struct LabelColour(byte Red, byte Green, byte Blue)
{
    /// <summary>How light it is: 0 for black, 1 for white.</summary>
    /// <remarks>Web Content Accessibility Guidelines 2.1, definition of relative luminance; its constants are those of sRGB (IEC 61966-2-1).</remarks>
    public double RelativeLuminanceRatio => 0.2126 * Linear(Red) + 0.7152 * Linear(Green) + 0.0722 * Linear(Blue);

    /// <summary>How much of a tint it is, in per cent: 0 for white; by how much its darkest channel lies below white.</summary>
    public double TintPercent => 100 * (1 - Math.Min(Red, Math.Min(Green, Blue)) / 255.0);

    /// <summary>A colour as it is written on the web: <c>#1a2b3c</c>; null where the text is no such thing.</summary>
    public static LabelColour? Parse(string text) => text is ['#', .. { Length: 6 } hex] && int.TryParse(hex, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var number)
        ? new((byte)(number >> 16), (byte)(number >> 8), (byte)number)
        : null;

    /// <summary>The colour as it is written on the web.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");

    private static double Linear(byte channel) => channel / 255.0 is var share && share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
}
