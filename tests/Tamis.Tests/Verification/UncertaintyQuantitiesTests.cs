using Tamis.Verification;

namespace Tamis.Tests.Verification;

public class UncertaintyQuantitiesTests
{
    private static readonly IReadOnlyList<CheckRow> Rows = CheckFile.Read(Repository.Path("data", "published", "uncertainty.csv"));

    // JCGM 100:2008 H.1 and G.2b; JCGM 101:2008 9.2, 9.3, 9.4; each row names its own.
    [Fact]
    public void All_EveryPublishedRow_Agrees() => Assert.Empty(Verifier.Run(Rows, UncertaintyQuantities.All)
        .Where(outcome => outcome.Verdict != CheckVerdict.Agrees).Select(outcome => $"row {outcome.Row.RowNumber}: {outcome.Computed}, expected {outcome.Row.Expected}; {outcome.Reason}"));

    [Fact]
    public void All_EveryQuantity_HasAPublishedRow() => Assert.Empty(UncertaintyQuantities.All.Keys.Except(Rows.Select(row => row.Quantity)));
}
