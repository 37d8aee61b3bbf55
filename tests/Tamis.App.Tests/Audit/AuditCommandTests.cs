using Tamis.App.Audit;
using Tamis.App.Import;

namespace Tamis.App.Tests.Audit;

public sealed class AuditCommandTests : IDisposable
{
    private readonly ScratchFolder _scratch = new();
    private readonly StringWriter _said = new();

    public void Dispose()
    {
        _scratch.Dispose();
        _said.Dispose();
    }

    // More saturated fatty acids than fat: the one figure to look up, until somebody has.
    [Fact]
    public void Run_ATableThatDoesNotAddUp_NamesTheFigureUntilItIsExplained()
    {
        var table = Imported("~01145~^~204~^81.11^0^^~1~^^^^^^^^^^^11/1976^\n~01145~^~606~^90^0^^~1~^^^^^^^^^^^11/1976^\n");

        Assert.Equal(1, AuditCommand.Run(table, null, _said));
        var finding = Assert.Single(Said(), line => line.StartsWith("Butter, without salt (SR28 01145)", StringComparison.Ordinal));
        Assert.Contains("90 g", finding, StringComparison.Ordinal);
        Assert.Contains("Butter, without salt", File.ReadAllText(Path.Combine(table, "audit.html")), StringComparison.Ordinal);

        File.WriteAllText(Path.Combine(table, "audit-explained.csv"), $"food,rule,tag,why\nSR28 01145,{finding.Split(", ")[2].Split(':')[0]},,A slip of this test\n");
        Assert.Equal(0, AuditCommand.Run(table, _scratch["page.html"], _said));
        Assert.Contains("no finding is open", _said.ToString(), StringComparison.Ordinal);
        Assert.Contains("A slip of this test", File.ReadAllText(_scratch["page.html"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_ATableThatCannotBeRead_NamesItsCellsAndWritesNothing()
    {
        var table = Imported("~01145~^~204~^81.11^0^^~1~^^^^^^^^^^^11/1976^\n");
        File.AppendAllText(Path.Combine(table, "contents.csv"), "SR28 01145,FASAT,measured,much,,,,,USDA SR28,\n");

        Assert.Equal(1, AuditCommand.Run(table, null, _said));
        Assert.Contains("found 'much'", _said.ToString(), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(table, "audit.html")));
    }

    [Fact]
    public void Run_NoSuchFolder_IsSaid() =>
        Assert.Contains("no folder", Assert.Throws<UserProblem>(() => AuditCommand.Run(_scratch["none"], null, _said)).Message, StringComparison.Ordinal);

    private string[] Said() => _said.ToString().Split(Environment.NewLine);

    private string Imported(string contents)
    {
        _scratch.Write("sr/FOOD_DES.txt", "~01145~^~0100~^~Butter, without salt~^~BUTTER,WITHOUT SALT~^^^~Y~^^0^^6.38^4.27^8.79^3.87\n");
        _scratch.Write("sr/NUT_DATA.txt", contents);
        Assert.Equal(0, ImportCommand.Run("sr28", _scratch["sr"], _scratch["table"], [], TextWriter.Null));
        return _scratch["table"];
    }
}
