using Tamis.App.Import;

namespace Tamis.App.Tests.Import;

public class ImportCommandTests
{
    // A line of the publisher's own (USDA, Standard Reference 28, public domain).
    private const string Butter = "~01145~^~0100~^~Butter, without salt~^~BUTTER,WITHOUT SALT~^^^~Y~^^0^^6.38^4.27^8.79^3.87\n";

    [Fact]
    public void Run_PublishedFiles_WritesTheTableAndSaysWhatItTook()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("sr/FOOD_DES.txt", Butter);
        scratch.Write("sr/NUT_DATA.txt", "~01145~^~204~^81.11^0^^~1~^^^^^^^^^^^11/1976^\n");
        using var said = new StringWriter();

        Assert.Equal(0, ImportCommand.Run("sr28", scratch["sr"], scratch["out"], [], said));

        Assert.Contains("took 1 value: measured", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("SR28 01145,FAT,measured,81.11", File.ReadAllText(Path.Combine(scratch["out"], "contents.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_WithAConversion_MakesIt()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("sr/FOOD_DES.txt", Butter);
        scratch.Write("sr/NUT_DATA.txt", "~01145~^~307~^11^0^^~1~^^^^^^^^^^^11/1976^\n");
        using var said = new StringWriter();

        Assert.Equal(0, ImportCommand.Run("sr28", scratch["sr"], scratch["out"], ["salt from sodium"], said));

        Assert.Contains("SR28 01145,NACL,measured,27.5", File.ReadAllText(Path.Combine(scratch["out"], "contents.csv")), StringComparison.Ordinal);
        Assert.Contains("salt from sodium", Assert.Throws<UserProblem>(() => ImportCommand.Run("sr28", scratch["sr"], scratch["again"], ["salt from sodum"], said)).Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch["again"]));
    }

    [Fact]
    public void Run_BadFile_SaysEachCellAndWritesNothing()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("sr/FOOD_DES.txt", Butter);
        scratch.Write("sr/NUT_DATA.txt", "~01145~^~204~^much^0^^~1~^^^^^^^^^^^11/1976^\n");
        using var said = new StringWriter();

        Assert.Equal(1, ImportCommand.Run("sr28", scratch["sr"], scratch["out"], [], said));

        Assert.Contains("NUT_DATA.txt, row 1, column 'Nutr_Val': found 'much'", said.ToString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch["out"]));
    }

    [Fact]
    public void Run_NoFolder_IsSaid()
    {
        using var scratch = new ScratchFolder();
        using var said = new StringWriter();
        Assert.Throws<UserProblem>(() => ImportCommand.Run("sr28", scratch["nowhere"], scratch["out"], [], said));
    }
}
