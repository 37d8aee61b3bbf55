using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class FamilyWindowsTests
{
    [Fact]
    public void Kit_EveryWindow_SaysWhereItComesFrom()
    {
        Assert.True(FamilyWindows.Kit.All.Count > 250);
        Assert.DoesNotContain(FamilyWindows.Kit.All, window => window.Source.Key.Length < 6);
        Assert.DoesNotContain(FamilyWindows.Kit.All, window => window.Range.IsPoint);
    }

    [Theory]
    [InlineData("tart shell, lined", "sweet", "sweet (pâte sucrée)")]
    [InlineData("Creme Anglaise", "sauce", "sauce, poured")]
    [InlineData("crémeux", "fruit curd", "fruit curd with butter, gelatine")]
    [InlineData("scone", null, "biscuit, rubbed in")]
    public void For_FirstWordsOfAUse_FindIt(string family, string? use, string found) => Assert.Equal(found, FamilyWindows.Kit.For(family, use).Use);

    [Theory]
    [InlineData(null, null, "no family is named")]
    [InlineData("ganash", "tart", "near ones: ganache")]
    [InlineData("glaze", "mirror", "mirror, with cocoa and cream")]
    [InlineData("ganache", null, "write the first words of one of")]
    [InlineData("ganache", "soup", "is not clear from 'soup'")]
    public void For_NotClear_NoWindowsAndASentence(string? family, string? use, string reason)
    {
        var chosen = FamilyWindows.Kit.For(family, use);

        Assert.Empty(chosen.Windows);
        Assert.Contains(reason, chosen.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_KitsOwnFigures_AreAllKnown()
    {
        Assert.All(FamilyWindows.Kit.All, window => Assert.NotNull(FigureList.Kit.Find(window.Figure)));
        Assert.Null(FigureList.Kit.Find("moonlight"));
        Assert.NotNull(FigureList.Kit.Find("line rye flour"));
    }

    // A new figure is one entry.
    [Fact]
    public void With_OneMoreFigure_AWindowCanBeAboutIt()
    {
        var figures = FigureList.Kit.With(new MixtureFigure("fibre", "%", mixture => mixture.Amount("FIBTG")));
        var windows = FamilyWindows.Read(Kitchen.Sheet("windows.csv", "family,use,base,figure,low,high,unit\nloaf,tin,raw mixture,fibre,3,8,%\n"), figures);

        Assert.Equal("fibre", Assert.Single(windows.All).Figure);
    }

    [Theory]
    [InlineData("butter", "salted butter", true)]
    [InlineData("butter", "buttermilk", false)]
    [InlineData("butter", "cocoa butter", false)]
    [InlineData("flour", "rye flour", true)]
    [InlineData("flour", "rye flakes", false)]
    [InlineData("flour", "almond flour", false)]
    [InlineData("nut", "almond flour", true)]
    [InlineData("nut", "hazelnut oil", false)]
    [InlineData("chocolate", "dark chocolate 64 %", true)]
    [InlineData("chocolate", "cocoa butter", false)]
    [InlineData("cream", "cream 35 %", true)]
    [InlineData("cream", "cream cheese", false)]
    [InlineData("milk and cream", "whole milk", true)]
    [InlineData("egg", "egg yolk", true)]
    [InlineData("egg yolk", "egg", false)]
    [InlineData("water poured", "water", true)]
    public void Holds_ByKindAndWord(string part, string ingredient, bool holds) => Assert.Equal(holds, LinePart.Named(part).Holds(new() { Name = ingredient }));
}
