using CsCheck;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Tests.Physics;

public class MendingTests
{
    private static readonly RatioIngredients Ingredients = RatioIngredients.Read(KitData.Composition);
    private static readonly IReadOnlyList<Window> Tart = FamilyWindows.Kit.For("ganache", "tart").Windows;
    private static readonly Source Here = new("a test", Evidence.Estimate);

    private static Examined Ganache(params (string Name, double Grams)[] lines)
    {
        List<CellProblem> problems = [];
        Component component = new()
        {
            Name = "ganache", WrittenIn = "T1",
            Lines = [.. lines.Select((line, i) => new Line { Name = line.Name, Way = LineWay.In, Step = i + 1, Quantity = WrittenQuantity.OfGrams(line.Grams), Row = i + 2, Origin = Here })],
            Leaving = [new Line { Name = "water", Way = LineWay.Out, Step = 1, Quantity = WrittenQuantity.OfGrams(3), Row = 20, Origin = Here }],
        };
        var batch = Batch.Of(new Formula("T1", [component]), Ingredients.List, problems);
        Assert.Empty(problems);
        return Examined.Of(batch, "ganache");
    }

    private static (string, double)[] With((string Name, double Grams)[] lines, Mend mend) =>
        [.. lines.Select((line, i) => (line.Name, mend.Lines.FirstOrDefault(each => each.Line == line.Name && each.Step == i + 1)?.ToGrams ?? line.Grams))];

    private static double Worst(Examined examined) => Tart.Max(window => CheckUpLine.Of(window, examined).OutsideBy);

    [Fact]
    public void Of_EverythingInside_NothingToChange()
    {
        var mending = Mending.Of(Ganache(("dark chocolate", 300), ("cream", 300)), Tart);

        Assert.False(mending.IsNeeded);
        Assert.Null(mending.Smallest);
    }

    // Chocolate 2 : 1 to cream in a tart: too little water, too much cocoa butter, fat to water near splitting.
    [Fact]
    public void Of_TruffleRatioInATart_BringsEveryFigureInside()
    {
        (string, double)[] lines = [("dark chocolate", 400), ("cream", 200)];
        var mending = Mending.Of(Ganache(lines), Tart);

        Assert.True(mending.IsNeeded);
        Assert.True(Worst(Ganache(lines)) > 1);
        Assert.All(mending.Ways, way => Assert.Equal(0, Worst(Ganache(With(lines, way))), 6));
        Assert.Equal("cream", Assert.Single(mending.SmallestOfOneLine!.Lines).Line);
        Assert.Contains("cream 200 g", mending.InWords, StringComparison.Ordinal);
    }

    // Whatever the ganache: each way ends inside all windows, and no change on a fine grid of two lines moves less.
    [Fact]
    public void Of_AnyGanache_NoSmallerChangeOnAGrid() =>
        Gen.Select(Gen.Double[150, 500], Gen.Double[80, 500], Gen.Double[0, 120], Gen.Double[0, 60]).Sample((chocolate, cream, milk, butter) =>
        {
            (string Name, double Grams)[] lines = [("dark chocolate", chocolate), ("cream", cream), ("milk", milk + 1), ("butter", butter + 1)];
            var mending = Mending.Of(Ganache(lines), Tart, new MendingChoices { InsideShare = 0 });
            if (!mending.IsNeeded) return;
            Assert.All(mending.Ways.Take(4), way => Assert.InRange(Worst(Ganache(With(lines, way))), 0, 1e-6));
            var total = lines.Sum(line => line.Grams);
            var least = mending.Smallest?.MovedPercent ?? double.PositiveInfinity;
            for (var x = -6; x <= 6; x++)
                for (var y = -6; y <= 6; y++)
                {
                    var (toX, toY) = (chocolate * (1 + x * 0.08), cream * (1 + y * 0.08));
                    var moved = 100 * (Math.Abs(toX - chocolate) + Math.Abs(toY - cream)) / total;
                    if (moved < least - 1e-6) Assert.True(Worst(Ganache([("dark chocolate", toX), ("cream", toY), lines[2], lines[3]])) > 1e-9);
                }
        }, iter: 25, threads: 1);

    [Fact]
    public void Of_MayAdd_UsesWhatIsNotInYet()
    {
        (string, double)[] lines = [("milk chocolate", 400), ("cream", 100)];
        var windows = FamilyWindows.Kit.For("ganache", "tart").Windows.Where(window => window.Figure is "cocoa butter" or "water").ToArray();
        var mending = Mending.Of(Ganache(lines), windows, new MendingChoices { MayAdd = [Ingredients.List.Find("water")!], Keep = ["milk chocolate", "cream"] });

        Assert.Equal("water", Assert.Single(mending.Smallest!.Lines).Line);
        Assert.Equal(0, mending.Smallest.Lines[0].FromGrams);
    }

    [Fact]
    public void Of_NothingCanHelp_SaysSo()
    {
        var mending = Mending.Of(Ganache(("dark chocolate", 400), ("butter", 100)), Tart);

        Assert.True(mending.IsNeeded);
        Assert.Empty(mending.Ways);
        Assert.StartsWith("No change", mending.InWords, StringComparison.Ordinal);
    }

    // The demo's T9: a weaker chocolate brings too much sugar; its own lines suffice, through bowl, boiling and a paste made beside.
    [Fact]
    public void Of_DemoGanacheWithSweeterChocolate_IsMendedByALine()
    {
        var tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));
        var check = tart.CheckUp("T9", "ganache");
        var mending = Mending.Of(tart.Examine("T9", "ganache"), [.. check.Lines.Select(line => line.Window)]);

        Assert.Equal(["sugars"], check.Outside.Select(line => line.Window.Figure));
        Assert.NotNull(mending.Smallest);
        Assert.InRange(mending.Smallest.MovedPercent, 0.1, 5);
    }
}
