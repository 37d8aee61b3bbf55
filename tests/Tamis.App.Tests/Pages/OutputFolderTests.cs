using Tamis.App.Pages;

namespace Tamis.App.Tests.Pages;

public class OutputFolderTests
{
    private const string Marker = "marker";

    private static void Run(string path, string text)
    {
        using var output = OutputFolder.Begin(path, Marker);
        File.WriteAllText(Path.Combine(output.Building, Marker), text);
        output.Finish();
    }

    private static string Content(string path) => File.ReadAllText(Path.Combine(path, Marker));

    private static string[] Beside(ScratchFolder scratch) => [.. Directory.EnumerateFileSystemEntries(scratch.Path).Select(entry => Path.GetFileName(entry)!).Order(StringComparer.Ordinal)];

    [Fact]
    public void Finish_OldAndNew_LeavesTheNewAloneAndNothingBeside()
    {
        using var scratch = new ScratchFolder();
        Run(scratch["pages"], "old");
        File.WriteAllText(Path.Combine(scratch["pages"], "gone.html"), "");
        Run(scratch["pages"], "new");
        Assert.Equal("new", Content(scratch["pages"]));
        Assert.Equal([Path.Combine(scratch["pages"], Marker)], Directory.EnumerateFiles(scratch["pages"]));
        Assert.Equal(["pages"], Beside(scratch));
    }

    [Fact]
    public void Begin_NotFinished_LeavesTheOldWhole()
    {
        using var scratch = new ScratchFolder();
        Run(scratch["pages"], "old");
        using (var output = OutputFolder.Begin(scratch["pages"], Marker)) File.WriteAllText(Path.Combine(output.Building, Marker), "half");
        Assert.Equal("old", Content(scratch["pages"]));
        Assert.Equal(["pages"], Beside(scratch));
    }

    // What a power cut between the two moves of Finish leaves behind.
    [Fact]
    public void Begin_AfterACutBetweenTheMoves_BringsTheOldBack()
    {
        using var scratch = new ScratchFolder();
        scratch.Write(".pages.before/" + Marker, "old");
        scratch.Write(".pages.next/" + Marker, "whole but never moved");
        using (OutputFolder.Begin(scratch["pages"], Marker)) Assert.Equal("old", Content(scratch["pages"]));
        Assert.Equal(["pages"], Beside(scratch));
    }

    [Fact]
    public void Begin_FolderOfSomethingElse_IsRefusedAndUntouched()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("photos/tart.jpg", "x");
        var problem = Assert.Throws<UserProblem>(() => OutputFolder.Begin(scratch["photos"], Marker));
        Assert.Contains("did not write", problem.Message, StringComparison.Ordinal);
        Assert.Equal("x", File.ReadAllText(scratch["photos/tart.jpg"]));
        Assert.Equal(["photos"], Beside(scratch));
    }

    [Fact]
    public void Begin_EmptyFolderOrNewOneDeepDown_IsTaken()
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["empty"]);
        Run(scratch["empty"], "a");
        Run(scratch["not/yet/there"], "b");
        Assert.Equal(("a", "b"), (Content(scratch["empty"]), Content(scratch["not/yet/there"])));
    }

    [Fact]
    public void Begin_WhileAnotherRunWrites_IsRefused()
    {
        using var scratch = new ScratchFolder();
        using var first = OutputFolder.Begin(scratch["pages"], Marker);
        var problem = Assert.Throws<UserProblem>(() => OutputFolder.Begin(scratch["pages"], Marker));
        Assert.Contains("Another run", problem.Message, StringComparison.Ordinal);
        Assert.True(Directory.Exists(first.Building));
    }

    [Fact]
    public void Begin_File_IsRefused()
    {
        using var scratch = new ScratchFolder();
        Assert.Contains("is a file", Assert.Throws<UserProblem>(() => OutputFolder.Begin(scratch.Write("pages", "x"), Marker)).Message, StringComparison.Ordinal);
    }
}
