using Tamis.Desserts;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

/// <summary>The demo's components beside the windows of their families.</summary>
public class CheckUpTests
{
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));

    // Figures and verdicts of a second program, written apart from the kit, from the same sheets. Where it counts otherwise the tolerance says so:
    // gelatine, pectin and whipped cream on the mass in (here on the finished mass), the solids of a gel with fibre and protein (here without),
    // the sugars of the shell with those of the flour (here the lines of sugar), a density from folding (here the mean of the weighed rings).
    [Theory]
    [InlineData("T1", "shell", "butter", "raw mixture", 26.83, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "shell", "added sugar", "raw mixture", 16.6, 0.75, WindowVerdict.Inside)]
    [InlineData("T1", "shell", "water", "raw mixture", 13.67, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "shell", "water", "after baking", 4.08, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "almond cream", "butter", "raw mixture", 23.37, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "almond cream", "added sugar", "raw mixture", 20.86, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "almond cream", "nut", "raw mixture", 23.37, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "almond cream", "egg", "raw mixture", 25.56, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "almond cream", "fat", "raw mixture", 33.73, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "almond cream", "water", "after baking", 19.79, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "rye paste", "nut", "finished", 51.92, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "crumble", "flour", "raw mixture", 34.68, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "crumble", "butter", "raw mixture", 25.43, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "crumble", "added sugar", "raw mixture", 23.89, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "crumble", "water", "after baking", 2.88, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "bound crumble", "cocoa butter", "finished", 8.96, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "bound crumble", "fat", "finished", 37.19, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "bound crumble", "crumble", "finished", 67.16, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "gel", "soluble solids", "finished", 30.89, 4, WindowVerdict.Inside)]
    [InlineData("T1", "gel", "gelatine", "finished", 1.4, 0.06, WindowVerdict.Inside)]
    [InlineData("T1", "mousse", "gelatine", "finished", 1.13, 0.04, WindowVerdict.Inside)]
    [InlineData("T1", "mousse", "whipped cream", "finished", 47.21, 1.5, WindowVerdict.Inside)]
    [InlineData("T1", "mousse", "density", "finished", 0.7, 0.021, WindowVerdict.Inside)]
    [InlineData("T1", "ganache", "water", "finished", 18.99, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "ganache", "fat", "finished", 34.19, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "ganache", "cocoa butter", "finished", 18.24, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "ganache", "sugars", "finished", 28.56, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "ganache", "fat to water", "finished", 1.801, 0.011, WindowVerdict.Inside)]
    [InlineData("T1", "wafer", "sugars", "raw mixture", 39.72, 0.02, WindowVerdict.Inside)]
    [InlineData("T1", "wafer", "fat", "raw mixture", 18.04, 0.02, WindowVerdict.Inside)]
    [InlineData("T1", "wafer", "water", "after baking", 2.79, 0.03, WindowVerdict.Inside)]
    [InlineData("T1", "coat", "fat", "finished", 69.16, 0.011, WindowVerdict.Inside)]
    [InlineData("T2", "mousse", "gelatine", "finished", 0.92, 0.04, WindowVerdict.TooLow)]
    [InlineData("T2", "mousse", "whipped cream", "finished", 47.85, 1.5, WindowVerdict.Inside)]
    [InlineData("T2", "mousse", "density", "finished", 0.7, 0.021, WindowVerdict.Inside)]
    [InlineData("T3", "shell", "butter", "raw mixture", 26.83, 0.011, WindowVerdict.Inside)]
    [InlineData("T3", "shell", "added sugar", "raw mixture", 16.67, 0.75, WindowVerdict.Inside)]
    [InlineData("T3", "shell", "water", "raw mixture", 13.55, 0.011, WindowVerdict.Inside)]
    [InlineData("T3", "shell", "water", "after baking", 3.95, 0.011, WindowVerdict.Inside)]
    [InlineData("T4", "gel", "soluble solids", "finished", 26.17, 4, WindowVerdict.Inside)]
    [InlineData("T4", "gel", "gelatine", "finished", 1.5, 0.06, WindowVerdict.Inside)]
    [InlineData("T5", "rye paste", "nut", "finished", 39.94, 0.011, WindowVerdict.TooLow)]
    [InlineData("T5", "bound crumble", "cocoa butter", "finished", 8.96, 0.011, WindowVerdict.Inside)]
    [InlineData("T5", "bound crumble", "fat", "finished", 36.2, 0.011, WindowVerdict.Inside)]
    [InlineData("T5", "bound crumble", "crumble", "finished", 67.16, 0.011, WindowVerdict.Inside)]
    [InlineData("T5", "ganache", "water", "finished", 19, 0.011, WindowVerdict.Inside)]
    [InlineData("T5", "ganache", "fat", "finished", 33.53, 0.011, WindowVerdict.Inside)]
    [InlineData("T5", "ganache", "cocoa butter", "finished", 18.24, 0.011, WindowVerdict.Inside)]
    [InlineData("T5", "ganache", "sugars", "finished", 28.45, 0.011, WindowVerdict.Inside)]
    [InlineData("T5", "ganache", "fat to water", "finished", 1.765, 0.011, WindowVerdict.Inside)]
    [InlineData("T6", "mousse", "gelatine", "finished", 1.15, 0.04, WindowVerdict.Inside)]
    [InlineData("T6", "mousse", "whipped cream", "finished", 47.67, 1.5, WindowVerdict.Inside)]
    [InlineData("T6", "mousse", "density", "finished", 0.7, 0.021, WindowVerdict.Inside)]
    [InlineData("T7", "gel", "soluble solids", "finished", 26.86, 4, WindowVerdict.Inside)]
    [InlineData("T7", "gel", "pectin", "finished", 1.19, 0.09, WindowVerdict.Inside)]
    [InlineData("T8", "mousse", "gelatine", "finished", 1.13, 0.04, WindowVerdict.Inside)]
    [InlineData("T8", "mousse", "whipped cream", "finished", 47.03, 1.5, WindowVerdict.Inside)]
    [InlineData("T8", "mousse", "density", "finished", 0.7, 0.021, WindowVerdict.Inside)]
    [InlineData("T9", "ganache", "water", "finished", 18.86, 0.011, WindowVerdict.Inside)]
    [InlineData("T9", "ganache", "fat", "finished", 30.19, 0.011, WindowVerdict.Inside)]
    [InlineData("T9", "ganache", "cocoa butter", "finished", 14.9, 0.011, WindowVerdict.Inside)]
    [InlineData("T9", "ganache", "sugars", "finished", 33.78, 0.011, WindowVerdict.TooHigh)]
    [InlineData("T9", "ganache", "fat to water", "finished", 1.6, 0.011, WindowVerdict.Inside)]
    [InlineData("T10", "shell", "butter", "raw mixture", 26.83, 0.011, WindowVerdict.Inside)]
    [InlineData("T10", "shell", "added sugar", "raw mixture", 16.67, 0.75, WindowVerdict.Inside)]
    [InlineData("T10", "shell", "water", "raw mixture", 13.55, 0.011, WindowVerdict.Inside)]
    [InlineData("T10", "shell", "water", "after baking", 3.95, 0.011, WindowVerdict.Inside)]
    [InlineData("T10", "mousse", "gelatine", "finished", 0.92, 0.04, WindowVerdict.TooLow)]
    [InlineData("T10", "mousse", "whipped cream", "finished", 47.67, 1.5, WindowVerdict.Inside)]
    [InlineData("T10", "mousse", "density", "finished", 0.7, 0.021, WindowVerdict.Inside)]
    [InlineData("T11", "gel", "soluble solids", "finished", 27.54, 4, WindowVerdict.Inside)]
    [InlineData("T11", "gel", "gelatine", "finished", 1.5, 0.06, WindowVerdict.Inside)]
    [InlineData("T12", "shell", "butter", "raw mixture", 25.72, 0.011, WindowVerdict.Inside)]
    [InlineData("T12", "shell", "added sugar", "raw mixture", 15.98, 0.75, WindowVerdict.Inside)]
    [InlineData("T12", "shell", "water", "raw mixture", 12.99, 0.011, WindowVerdict.Inside)]
    [InlineData("T12", "shell", "water", "after baking", 3.74, 0.011, WindowVerdict.Inside)]
    public void CheckUp_Demo_AgreesWithASecondProgram(string trial, string component, string figure, string on, double value, double tolerance, WindowVerdict verdict)
    {
        var line = Tart.CheckUp(trial, component).Line(figure, on)!;

        Assert.Equal(value, line.Found.Value, tolerance);
        Assert.Equal(verdict, line.Verdict);
    }

    // T2 and T10 with a leaf less, T5 with less almond, T9 with a sweeter chocolate; later trials keep what they took over.
    [Fact]
    public void CheckUps_WholeDemo_OnlyWhatWasMeantLiesOutside()
    {
        var outside = from batch in Tart.Batches
                      from check in Tart.CheckUps(batch.Trial)
                      where Names.Same(batch.Trial, batch.Find(check.Component)!.WrittenIn)
                      from line in check.Outside
                      select $"{batch.Trial} {check.Component}: {line.Window.Figure}";

        Assert.Equal(["T2 mousse: gelatine", "T5 rye paste: nut", "T9 ganache: sugars", "T10 mousse: gelatine"], outside);
    }

    [Fact]
    public void CheckUps_WholeDemo_NamesWhatIsLackingAndNothingElse() =>
        Assert.All(Tart.Batches.SelectMany(batch => Tart.CheckUps(batch.Trial)).SelectMany(check => check.NotKnown), line => Assert.Contains("measured.csv", Assert.Single(line.Found.Lacks), StringComparison.Ordinal));

    [Fact]
    public void InWords_TooLittleGelatine_SaysHowMuchWhyAndWhatToTry() => Assert.Equal(
        "Gelatine of the finished mixture: 0.93 %, usually 1 to 1.5 %; 0.07 points too little (slumps). Try: 0.1 % more gelatine.",
        Tart.CheckUp("T10", "mousse").Outside[0].InWords);

    // The colour of the wafer has no figure for water: its 0.7 % of the mass could carry the wafer out of its window, and the line says so.
    [Fact]
    public void IsSure_WaterOfTheWafer_IsInsideButNotSure()
    {
        var line = Tart.CheckUp("T1", "wafer").Line("water", "after baking")!;

        Assert.Equal(WindowVerdict.Inside, line.Verdict);
        Assert.False(line.IsSure);
        Assert.Contains("could change this", line.InWords, StringComparison.Ordinal);
        Assert.Contains(line.Found.Working.From, step => step.Step.Contains("vegetable carbon", StringComparison.Ordinal));
    }

    [Fact]
    public void CheckUp_ComponentThatChangedFamily_TakesTheWindowsOfItsTrial() => Assert.Equal("pectin gel", Tart.CheckUp("T7", "gel").Family);

    [Fact]
    public void CheckUp_NoFamily_NoVerdict()
    {
        var check = Dessert.Open(KitFolder.Data("desserts/travel-loaf")).CheckUp("V1", "cake");

        Assert.Empty(check.Lines);
        Assert.Contains("no family is named", check.NoVerdict, StringComparison.Ordinal);
    }

    // A kitchen adds a family of its own and moves a window of the kit's, in its own spreadsheet's dialect.
    [Fact]
    public void Windows_SheetInTheStore_AddsAndReplaces()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        folder.Write("formula.csv", "component,line,way,step,T1\nloaf,flour,,1,60 g\nloaf,water,,1,40 g\n");
        folder.Write("components.csv", "component,family,use\nloaf,rye loaf,\n");
        folder.Write("store/ingredients.csv", "ingredient,food\nflour,SR28 20064\nwater,SR28 14411\n");
        folder.Write("store/windows.csv", "family;use;base;figure;low;high;unit\nrye loaf;in a tin;raw mixture;line flour;40,5;55,5;%\nbrioche;rich dough;of flour;butter;50;60;%\n");
        var dessert = Dessert.Open(folder.Path);

        var check = dessert.CheckUp("T1", "loaf");

        Assert.Empty(dessert.Problems);
        Assert.Equal("in a tin", check.Use);
        Assert.Equal(4.5, Assert.Single(check.Outside).OutsideBy, 1e-9);
        Assert.Equal(50, dessert.Windows.For("brioche", null).Windows.Single(window => window.Figure == "butter").Range.Low);
    }

    [Fact]
    public void Windows_BadSheetInTheStore_NamesEveryBadCellAndStopsNothingElse()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        folder.Write("formula.csv", "component,line,way,step,T1\nloaf,flour,,1,60 g\n");
        folder.Write("store/ingredients.csv", "ingredient,food\nflour,SR28 20064\n");
        folder.Write("store/windows.csv", "family,use,base,figure,low,high,unit\nrye loaf,in a tin,of stones,watter,60,40,%\n");
        var dessert = Dessert.Open(folder.Path);

        var problems = dessert.Problems.Where(problem => problem.File == "windows.csv").ToArray();

        Assert.Equal(["figure", "base", "high"], problems.Select(problem => problem.Column));
        Assert.Contains("water", problems[0].Expected, StringComparison.Ordinal);
        Assert.Single(dessert.Batches);
        Assert.Throws<TableException>(() => dessert.CheckUp("T1", "loaf"));
    }
}
