using Tamis.App.Check;

namespace Tamis.App.Tests.Check;

public class CheckCommandTests
{
    [Fact]
    public void Run_BadCells_SaysEachWithItsPlaceAndFails()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("mine/trials.csv", "trial\nT1\n");
        scratch.Write("mine/formula.csv", "component,line,T1\nshell,flour,lots\nshell,butter,100 g\nshell,salt,-3 g\n");
        using var said = new StringWriter();
        Assert.Equal(1, CheckCommand.Run(scratch["mine"], said));
        Assert.Contains("formula.csv, row 2, column 'T1': found 'lots'", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("formula.csv, row 4, column 'T1'", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_NoFormula_SaysSoAndFails()
    {
        using var scratch = new ScratchFolder();
        using var said = new StringWriter();
        Assert.Equal(1, CheckCommand.Run(scratch.Path, said));
        Assert.Contains("formula.csv", said.ToString(), StringComparison.Ordinal);
    }
}
