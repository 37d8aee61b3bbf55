using Tamis.Desserts;
using Tamis.Montage;

namespace Tamis.Views;

public static partial class Show
{
    // Between two rounds a cutter leaves about so much: common practice, no source.
    private const int CutterGapMillimetres = 2;

    /// <summary>The rounds of a trial that are cut from a sheet: how they stand on it, how many sheets, what is trimmed, and what rolling out again saves.</summary>
    public static Html SheetCuts(Dessert dessert, string trial)
    {
        var pieces = (int)Math.Ceiling(dessert.WantedPieces(trial));
        var cuts = Desserts.SheetCuts.Of(dessert, trial, pieces, CutterGapMillimetres);
        return cuts.Count == 0
            ? Notes.Small(Html.Of($"No component of {trial} is cut from a sheet that moulds.csv has the thickness of."))
            : Html.Join(cuts.Select(cut => CutsOf(cut, pieces)));
    }

    /// <summary>The room between what is filled into each lining of a piece and its rim.</summary>
    public static Html HeadroomOf(Dessert dessert, string trial, string? montageSheet = null)
    {
        if (dessert.Montage is null || dessert.PieceOf(trial, montageSheet) is not { } piece || Headroom.Of(piece) is not { Count: > 0 } rooms) return Html.Empty;
        return Notes.List(rooms.Select(room => room.Millimetres >= 0
            ? Html.Of($"What is filled into the {room.Lining} stands {Figures.Millimetres(room.Millimetres).Text} below its rim; {Figures.Number(room.Millilitres, 0, "ml").Text} more would go in.")
            : Html.Of($"<strong>What is filled into the {room.Lining} stands {Figures.Millimetres(-room.Millimetres).Text} above its rim</strong>: {Figures.Number(-room.Millilitres, 0, "ml").Text} are too much.")));
    }

    private static Html CutsOf(SheetCuts cut, int pieces)
    {
        if (cut.Sheets is not { } sheets) return Notes.LookAt(Html.Of($"A round of {cut.Component}, {Figures.Millimetres(cut.Cuts.DiameterMillimetres).Text}, is wider than the {cut.Mould.Name}."));
        var gap = cut.Cuts.UpperBound - cut.Cuts.Count;
        var proven = gap == 0 ? "no arrangement holds more" : $"no arrangement can hold more than {cut.Cuts.UpperBound}, so {(gap == 1 ? "one more" : $"{gap} more")} could be possible";
        var rolled = cut.SheetsRollingAgain(1) is { } fewer && fewer < sheets ? $" With the trim rolled out once more {fewer} {(fewer == 1 ? "is" : "are")} enough; that dough is tougher." : cut.Density is null ? " How much dough that is nobody knows without its density in components.csv." : "";
        return Notes.Paragraph(Html.Of($"{Capital(cut.Component)}: {cut.Cuts.Count} rounds of {Figures.Millimetres(cut.Cuts.DiameterMillimetres).Text} from one {cut.Mould.Name}, {CutterGapMillimetres}\u202fmm between them, {InWords(cut.Cuts.Nesting)}; {proven}. {pieces} pieces take {cut.Wanted} rounds from {sheets} {(sheets == 1 ? "sheet" : "sheets")}{(cut.DoughGrams is { } dough ? $", {Figures.Mass(dough).Text}" : "")}; {Figures.Share(cut.TrimShare).Text} is trim.{rolled}"))
            + Picture(cut);
    }

    private static Html Picture(SheetCuts cut)
    {
        const double margin = 8, wide = 240;
        var scale = wide / Math.Max(cut.Cuts.Sheet.Length, cut.Cuts.Sheet.Width);
        var svg = new Svg(cut.Cuts.Sheet.Length * scale + 2 * margin, cut.Cuts.Sheet.Width * scale + 2 * margin, $"Rounds of {cut.Component} on the {cut.Mould.Name}, to scale", $"{cut.Cuts.Count} rounds, {InWords(cut.Cuts.Nesting)}.");
        svg.Box("axis", margin, margin, margin + cut.Cuts.Sheet.Length * scale, margin + cut.Cuts.Sheet.Width * scale);
        foreach (var (x, y) in cut.Cuts.Centres) svg.Dot("dot", margin + x * scale, margin + y * scale, cut.Cuts.DiameterMillimetres / 2 * scale);
        return Html.Of($"<figure><div class=\"still\">{svg.ToHtml()}</div><figcaption>To scale; the frame is {Figures.Number(cut.Cuts.Sheet.Length, 0).Text} by {Figures.Number(cut.Cuts.Sheet.Width, 0).Text}\u202fmm.</figcaption></figure>\n");
    }

    private static string InWords(Nesting nesting) => nesting switch
    {
        Nesting.Square => "in rows and columns",
        Nesting.HexagonalAlongLength => "in shifted rows along the length",
        _ => "in shifted rows along the width",
    };
}
