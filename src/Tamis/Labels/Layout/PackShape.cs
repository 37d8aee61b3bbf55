using System.Globalization;

namespace Tamis.Labels;

/// <summary>What a layout rule asks of a pack.</summary>
public enum PackMeasure
{
    /// <summary>The area of its largest face, in cm².</summary>
    LargestSurface,
    /// <summary>The area of all its faces together, in cm².</summary>
    TotalSurface,
    /// <summary>The area of the face that a buyer sees first, in cm²; taken to be the largest.</summary>
    DisplaySurface,
    /// <summary>The height of the face that is printed, in mm.</summary>
    VerticalSpace,
    /// <summary>The longest side of the face that is printed, in mm.</summary>
    LongestSide,
    /// <summary>What it holds, in grams.</summary>
    NetQuantity,
}

/// <summary>The outside of a pack as its label sees it.</summary>
public sealed record PackShape
{
    // Longest first; the shortest is 0 where only the area of the largest face is known.
    private readonly (double Longest, double Middle, double Shortest) _sides;

    private PackShape(double longestMillimetres, double middleMillimetres, double shortestMillimetres, double largestSquareCentimetres, double totalSquareCentimetres)
    {
        _sides = (longestMillimetres, middleMillimetres, shortestMillimetres);
        (FaceWidthMillimetres, FaceHeightMillimetres) = (longestMillimetres, middleMillimetres);
        (LargestSquareCentimetres, TotalSquareCentimetres) = (largestSquareCentimetres, totalSquareCentimetres);
    }

    /// <summary>The width of the face that is printed, in mm: of the largest, its longer side.</summary>
    public double FaceWidthMillimetres { get; private init; }

    /// <summary>The height of the face that is printed, in mm.</summary>
    public double FaceHeightMillimetres { get; private init; }

    /// <summary>The area of all faces, in cm².</summary>
    public double TotalSquareCentimetres { get; }

    /// <summary>Whether the sides are known; otherwise only the area of the largest face is, and a square stands for it.</summary>
    public bool IsBox => _sides.Shortest > 0;

    /// <summary>The area of the largest face, in cm², whichever is printed.</summary>
    public double LargestSquareCentimetres { get; }

    /// <summary>The faces of a box by their sides, in words: <c>185 x 75, 185 x 65, 75 x 65</c>; the largest first; empty where the sides are not known.</summary>
    public string FacesInWords => IsBox ? string.Join(", ", Faces.Select(face => string.Create(CultureInfo.InvariantCulture, $"{face.Width:0.#} x {face.Height:0.#}"))) : "";

    /// <summary>The pack with another of its faces to print; null where the box has no such face.</summary>
    /// <param name="widthMillimetres">The width, in mm: the side that lies level when the print is read.</param>
    /// <param name="heightMillimetres">The height, in mm.</param>
    public PackShape? OnFace(double widthMillimetres, double heightMillimetres) =>
        IsBox && Faces.Any(face => face == (widthMillimetres, heightMillimetres) || face == (heightMillimetres, widthMillimetres))
            ? this with { FaceWidthMillimetres = widthMillimetres, FaceHeightMillimetres = heightMillimetres } : null;

    private (double Width, double Height)[] Faces => [(_sides.Longest, _sides.Middle), (_sides.Longest, _sides.Shortest), (_sides.Middle, _sides.Shortest)];

    /// <summary>A box of three sides, in mm, in any order.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A side is not above 0 mm.</exception>
    public static PackShape Box(double firstMillimetres, double secondMillimetres, double thirdMillimetres)
    {
        double[] sides = [Side(firstMillimetres), Side(secondMillimetres), Side(thirdMillimetres)];
        Array.Sort(sides);
        return new(sides[2], sides[1], sides[0], sides[2] * sides[1] / 100, 2 * (sides[0] * sides[1] + sides[0] * sides[2] + sides[1] * sides[2]) / 100);
    }

    /// <summary>A pack of which the area of the largest face is known, in cm²: a square of that area, and no other face.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The area is not above 0 cm².</exception>
    public static PackShape Surface(double squareCentimetres) => double.IsFinite(squareCentimetres) && squareCentimetres > 0
        // The area as it is written: a limit of the law may be met exactly, and the square of a root is off by a last digit.
        ? new(Math.Sqrt(squareCentimetres * 100), Math.Sqrt(squareCentimetres * 100), 0, squareCentimetres, squareCentimetres)
        : throw new ArgumentOutOfRangeException(nameof(squareCentimetres), squareCentimetres, "A face has an area above 0 cm².");

    /// <summary>A box as it is written, length, width and height in mm: <c>185 x 75 x 65</c>; null where the text is no such thing.</summary>
    public static PackShape? Parse(string text)
    {
        var sides = text.Replace('×', 'x').Replace('X', 'x').Split('x', StringSplitOptions.TrimEntries)
            .Select(part => double.TryParse(part, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var side) && side > 0 ? side : (double?)null).ToArray();
        return sides is [{ } length, { } width, { } height] ? Box(length, width, height) : null;
    }

    /// <summary>A measure of the pack, in its unit.</summary>
    /// <param name="measure">What is measured.</param>
    /// <param name="netGrams">What it holds, in grams; null where it is not known.</param>
    /// <returns>Null for the quantity where it is not known.</returns>
    public double? Measure(PackMeasure measure, double? netGrams) => measure switch
    {
        PackMeasure.TotalSurface => TotalSquareCentimetres,
        PackMeasure.VerticalSpace => FaceHeightMillimetres,
        PackMeasure.LongestSide => Math.Max(FaceWidthMillimetres, FaceHeightMillimetres),
        PackMeasure.NetQuantity => netGrams,
        _ => LargestSquareCentimetres,
    };

    /// <summary>The face in words: <c>185 × 75 mm, 139 cm²</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{FaceWidthMillimetres:0.#} × {FaceHeightMillimetres:0.#}\u202fmm, {FaceWidthMillimetres * FaceHeightMillimetres / 100:0.#}\u202fcm²{(IsBox ? "" : " (its sides are not known: a square stands for it)")}");

    private static double Side(double millimetres) => double.IsFinite(millimetres) && millimetres > 0
        ? millimetres
        : throw new ArgumentOutOfRangeException(nameof(millimetres), millimetres, "A side of a box is longer than 0 mm.");
}
