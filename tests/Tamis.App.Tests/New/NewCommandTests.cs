using Tamis.App.Check;
using Tamis.App.New;

namespace Tamis.App.Tests.New;

public class NewCommandTests
{
    private static readonly string Example = KitFolder.Data(Path.Combine("desserts", "first"));

    [Fact]
    public void Write_NewFolder_HasNothingToMend()
    {
        using var scratch = new ScratchFolder();
        var made = NewCommand.Write(Example, scratch["deep/down/first"]);
        using var said = new StringWriter();
        Assert.Equal(0, CheckCommand.Run(made, said));
        Assert.Contains("read ingredients.csv, formula.csv, trials.csv", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Write_FolderThatHoldsSomething_IsRefusedAndUntouched()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("mine/formula.csv", "mine");
        Assert.Contains("holds something", Assert.Throws<UserProblem>(() => NewCommand.Write(Example, scratch["mine"])).Message, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(scratch["mine/formula.csv"]));
        Assert.Equal([scratch["mine"]], Directory.EnumerateFileSystemEntries(scratch.Path));
    }
}
