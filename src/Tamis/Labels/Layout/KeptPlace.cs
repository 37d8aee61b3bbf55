using System.Globalization;

namespace Tamis.Labels;

/// <summary>A part of a face that print may fill.</summary>
/// <param name="LeftMillimetres">How far it begins from the left margin, in mm.</param>
/// <param name="TopMillimetres">How far it begins under the upper margin, in mm.</param>
/// <param name="WidthMillimetres">How wide it is, in mm.</param>
/// <param name="Words">Where it lies beside what is kept free; empty where nothing is.</param>
internal sealed record PrintRegion(double LeftMillimetres, double TopMillimetres, double WidthMillimetres, string Words);

/// <summary>The place of a symbol in the upper right corner of a face: in the right half and in the upper half of it, whichever a law wants.</summary>
/// <param name="figure">The law's number for the symbol.</param>
/// <param name="space">The room that it takes.</param>
/// <param name="pack">The pack, with the face to print.</param>
/// <param name="sizes">The distances of the label.</param>
internal sealed class KeptPlace(string figure, SymbolSpace space, PackShape pack, TypeSizes sizes)
{
    private const string Part = "reserve";

    private double Margin => sizes.SpaceMillimetres("margin");

    private double Gap => sizes.SpaceMillimetres("gap");

    /// <summary>The symbol without its buffer, in mm from the upper left corner of the face.</summary>
    public ReserveMark Symbol => new(pack.FaceWidthMillimetres - Margin - space.BufferMillimetres - space.WidthMillimetres, Margin + space.BufferMillimetres, space.WidthMillimetres, space.HeightMillimetres);

    /// <summary>The parts of the face that are left for print: beside the symbol, or under it.</summary>
    public IEnumerable<PrintRegion> Regions
    {
        get
        {
            var room = pack.FaceWidthMillimetres - 2 * Margin;
            if (room - space.OuterWidthMillimetres - Gap is > 0 and var beside) yield return new(0, 0, beside, "left of the symbol");
            yield return new(0, space.OuterHeightMillimetres + Gap, room, "under the symbol");
        }
    }

    /// <summary>How wide and high print in a region is with the place beside or over it, without margins, in mm.</summary>
    public (double WidthMillimetres, double HeightMillimetres) Whole(PrintRegion region, LabelBlock block) => region.TopMillimetres > 0
        ? (Math.Max(block.WidthMillimetres, space.OuterWidthMillimetres), region.TopMillimetres + block.HeightMillimetres)
        : (block.WidthMillimetres + Gap + space.OuterWidthMillimetres, Math.Max(block.HeightMillimetres, space.OuterHeightMillimetres));

    /// <summary>The edge of the place and which symbol belongs there, for a draft.</summary>
    /// <param name="setter">Sets its words.</param>
    /// <param name="beyondMillimetres">How far what stands beside it is too wide for the face: so far it is moved out, and nothing lies over anything.</param>
    public IEnumerable<LabelMark> Marks(TextSetter setter, double beyondMillimetres)
    {
        var symbol = Symbol with { XMillimetres = Symbol.XMillimetres + beyondMillimetres };
        var room = sizes.SpaceMillimetres("pad");
        yield return symbol;
        var (wide, sides) = (space.WidthMillimetres - 2 * room, string.Create(CultureInfo.InvariantCulture, $"{space.WidthMillimetres:0.#} × {space.HeightMillimetres:0.#}\u00a0mm"));
        var unbroken = sides.Replace(' ', '\u00a0');
        var words = setter.Paragraph([new($"Symbol {figure} ({space.Format}) {(setter.WidthMillimetres(unbroken, Part, false) <= wide ? unbroken : sides)}", Part, false)], wide);
        foreach (var mark in words.At(symbol.XMillimetres + room, symbol.YMillimetres + room)) yield return mark;
    }

    /// <summary>Why the place is none that the law allows; null where it is.</summary>
    public string? Problem => space.Half switch
    {
        PanelHalf.Right when Symbol.XMillimetres < pack.FaceWidthMillimetres / 2 => string.Create(CultureInfo.InvariantCulture, $"The symbol, {space.WidthMillimetres:0.#} mm wide with {space.BufferMillimetres:0.#} mm around it, does not stand in the right half of a face of {pack.FaceWidthMillimetres:0.#} mm."),
        PanelHalf.Upper when Symbol.BottomMillimetres > pack.FaceHeightMillimetres / 2 => string.Create(CultureInfo.InvariantCulture, $"The symbol, {space.HeightMillimetres:0.#} mm high with {space.BufferMillimetres:0.#} mm around it, does not stand in the upper half of a face of {pack.FaceHeightMillimetres:0.#} mm."),
        _ => null,
    };

    /// <summary>What a reader should know of the place.</summary>
    public string Remark => string.Create(CultureInfo.InvariantCulture,
        $"The place of symbol {figure} ({space.Format}) is kept free: {space.WidthMillimetres:0.#} × {space.HeightMillimetres:0.#} mm, {Symbol.XMillimetres:0.0} mm from the left and {Symbol.YMillimetres:0.0} mm from the top of the face, and {space.BufferMillimetres:0.#} mm around it ({space.Origin}; {space.Origin.Note}). Set the authority’s own artwork there; the kit draws none.");
}
