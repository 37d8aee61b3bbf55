using Tamis.Tables;
using Tamis.Verification;

namespace Tamis.Tests.Verification;

public class StatisticsQuantitiesTests
{
    private static readonly string Folder = Repository.Path("data", "published");

    // Each row names its source: NIST Statistical Reference Datasets; published data with sums of squares from a second program.
    [Fact]
    public void All_EveryPublishedRow_Agrees()
    {
        var outcomes = Verifier.Run(CheckFile.Read(Path.Combine(Folder, "statistics.csv")), StatisticsQuantities.All);

        Assert.True(outcomes.Count >= 160);
        Assert.Empty(outcomes.Where(outcome => outcome.Verdict != CheckVerdict.Agrees).Select(outcome => $"row {outcome.Row.RowNumber}: {outcome.Computed}, expected {outcome.Row.Expected}; {outcome.Reason}"));
    }

    [Fact]
    public void All_EveryQuantity_HasAPublishedRow() =>
        Assert.Empty(StatisticsQuantities.All.Keys.Except(CheckFile.Read(Path.Combine(Folder, "statistics.csv")).Select(row => row.Quantity)));

    [Fact]
    public void Datasets_EveryFile_HasItsSourceWithTitleAndTerms()
    {
        var sources = SheetFile.Read(Path.Combine(Folder, "datasets", "sources.csv")).Rows;

        Assert.Equal(
            Directory.EnumerateFiles(Path.Combine(Folder, "datasets"), "*.csv").Select(Path.GetFileName).Where(file => file != "sources.csv").Order(StringComparer.Ordinal),
            sources.Select(row => row["data"]).Order(StringComparer.Ordinal));
        Assert.All(sources, row => Assert.All(new[] { "title", "publisher", "terms", "evidence" }, column => Assert.NotEqual("", row[column])));
    }

    [Theory]
    [InlineData("data=datasets/npk.csv;model=yield ~ block;factors=block;term=blok", "no term 'blok'")]
    [InlineData("data=datasets/npk.csv;model=yield ~ blok;term=blok", "no column 'blok'")]
    [InlineData("data=datasets/none.csv;model=y ~ x;term=x", "none.csv")]
    public void Run_WrongInputs_MissWithTheReason(string inputs, string reason)
    {
        CheckRow row = new("x.csv", 2, "", "anova_f", inputs, "1", "1", 0.1, "", "", Folder);

        var outcome = Assert.Single(Verifier.Run([row], StatisticsQuantities.All));

        Assert.Equal(CheckVerdict.Misses, outcome.Verdict);
        Assert.Contains(reason, outcome.Reason, StringComparison.Ordinal);
    }
}
