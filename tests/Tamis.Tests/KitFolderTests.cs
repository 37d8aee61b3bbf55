namespace Tamis.Tests;

public class KitFolderTests
{
    [Fact]
    public void DataRoot_BelowAClone_FindsItsData()
    {
        using var clone = new TemporaryFolder();
        var program = Directory.CreateDirectory(Path.Combine(clone.Path, "src", "Tamis.App", "bin")).FullName;
        var data = Directory.CreateDirectory(Path.Combine(clone.Path, "data", "composition")).Parent?.FullName;

        Assert.Equal(data, KitFolder.DataRoot(null, [program]));
    }

    [Fact]
    public void DataRoot_FolderOfUsersOwnCalledData_IsNotTheKits()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "data"));

        var error = Assert.Throws<DirectoryNotFoundException>(() => KitFolder.DataRoot("", [folder.Path]));

        Assert.Contains(KitFolder.Variable, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void DataRoot_Named_WinsOverWhatIsAbove()
    {
        using var named = new TemporaryFolder();

        Assert.Equal(named.Path, KitFolder.DataRoot(named.Path, [AppContext.BaseDirectory]));
    }

    [Fact]
    public void DataRoot_NamedButMissing_SaysSo() =>
        Assert.Contains("does not exist", Assert.Throws<DirectoryNotFoundException>(() => KitFolder.DataRoot("no-such-folder", [])).Message, StringComparison.Ordinal);

    [Fact]
    public void Data_OfTheClone_HoldsTheCompositionTable() => Assert.NotEmpty(Directory.EnumerateFiles(KitFolder.Data("composition"), "*.csv"));
}
