using Tamis.Verification;

namespace Tamis.Tests.Verification;

public class TastingStatisticsTests
{
    private static readonly string Folder = Repository.Path("data", "published");

    // Each row names its source.
    [Fact]
    public void Quantities_EveryPublishedRow_Agrees()
    {
        var outcomes = Verifier.Run(CheckFile.Read(Path.Combine(Folder, "tasting-statistics.csv")), Quantities.All);

        Assert.True(outcomes.Count >= 880);
        Assert.Empty(outcomes.Where(outcome => outcome.Verdict != CheckVerdict.Agrees).Select(outcome => $"row {outcome.Row.RowNumber}: {outcome.Computed}, expected {outcome.Row.Expected}; {outcome.Reason}"));
    }
}
