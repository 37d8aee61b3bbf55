using System.Text.RegularExpressions;
using Tamis.Desserts;

namespace Tamis.Tests.Desserts;

public partial class DessertKeysTests
{
    [Fact]
    public void All_KeysThatTheLibraryReads_AreListed()
    {
        var read = Directory.EnumerateFiles(Repository.Path("src"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(path => Reads().Matches(File.ReadAllText(path))).Select(match => match.Groups[1].Value).Distinct().ToArray();

        Assert.Contains("portion_g", read);
        Assert.Empty(read.Except(DessertKeys.All));
    }

    [Fact]
    public void All_KeysOfTheRules_AreListed() => Assert.Empty(new[] { "thawed", "business", "sorbitol_50_g_a_day", "weighing_g", "region", "reserve_percent", "cooling_rule" }.Except(DessertKeys.All));

    [GeneratedRegex("[Ff]acts\\.(?:Text|Number|All|RowsOf|WordsOf|OriginOf|Problem)\\(\"([a-z_0-9]+)\"")]
    private static partial Regex Reads();
}
