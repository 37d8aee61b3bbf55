using Tamis.Desserts;
using Tamis.Montage;

namespace Tamis.Tests.Montage;

public class SheetCutsTests
{
    private static Dessert Tart { get; } = Dessert.Open(Repository.Path("data", "desserts", "damson-tart"));

    // Four rounds of 130 mm on 270 by 270 mm with 2 mm between them: 262 mm of 270 in rows and columns. Trim of a full sheet: 1 - 4 π 65² / 270² = 27.2 %, as the kitchen weighs it (27 %).
    [Fact]
    public void Of_CrumbleRoundsOfTheTart_AreFourToAFrame()
    {
        var cut = Assert.Single(SheetCuts.Of(Tart, "T10", 12, 2));

        Assert.Equal(("bound crumble", 4, 12, 3), (cut.Component, cut.Cuts.Count, cut.Wanted, cut.Sheets));
        Assert.Equal(1 - 4 * Math.PI * 65 * 65 / (270.0 * 270), cut.TrimShare!.Value, 9);
        Assert.True(cut.Cuts.Count <= cut.Cuts.UpperBound);
        // 270 · 270 · 4 mm at 1.10 g/ml, three times.
        Assert.Equal(3 * 291.6 * 1.10, cut.DoughGrams!.Value, 6);
        Assert.True(cut.SheetsRollingAgain(1) <= cut.Sheets);
    }

    // A ring of 160 by 20 mm lined 3 mm thick is 17 mm deep inside; 7.6 and 8 mm are filled in: 1.4 mm are left, π · 77² · 1.4 = 26.1 ml.
    [Fact]
    public void Headroom_OfTheTart_IsWhatTheFillsLeaveUnderTheRim()
    {
        var room = Assert.Single(Headroom.Of(Tart.PieceOf("T10")!));

        Assert.Equal(("shell", 1.4), (room.Lining, Math.Round(room.Millimetres, 6)));
        Assert.Equal(Math.PI * 77 * 77 * 1.4 / 1000, room.Millilitres, 2);
    }
}
