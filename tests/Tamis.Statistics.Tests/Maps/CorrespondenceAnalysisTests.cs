using CsCheck;
using Tamis.Statistics.Maps;

namespace Tamis.Statistics.Tests.Maps;

public class CorrespondenceAnalysisTests
{
    // Figures of R 4.2.2: svd() of the standardised residuals; MASS 7.3-58.2, corresp(), gives the same canonical correlations 0.405700525013 and 0.340534571163; chisq.test() the χ².
    [Fact]
    public void Of_SmallTable_IsThatOfR()
    {
        var found = CorrespondenceAnalysis.Of([[5, 18, 19, 12, 3], [28, 46, 6, 14, 2], [15, 39, 8, 4, 25]])!;

        Assert.Equal(0.164592915996, found.Inertias[0], 11);
        Assert.Equal(0.115963794157, found.Inertias[1], 11);
        Assert.Equal(0.405700525013, Math.Sqrt(found.Inertias[0]), 11);
        Assert.Equal(68.4558372772, found.ChiSquare, 8);
        // The row of largest size is turned to be positive: the first on the first dimension, where R has it below zero, and the second on the second.
        Assert.Equal([0.5802283290, 0.0999993975, -0.4689335925], found.Rows.Select(row => Math.Round(row[0], 10)));
        Assert.Equal([-0.3784780762, 0.4144057308, -0.2001065913], found.Rows.Select(row => Math.Round(row[1], 10)));
        Assert.Equal(0.58804876780, found.Columns[2][0], 9);
        Assert.Equal(0.41046806615, found.Columns[0][1], 9);
    }

    [Fact]
    public void Of_NothingGoesTogether_IsNone()
    {
        Assert.Null(CorrespondenceAnalysis.Of([[2, 4], [3, 6]]));
        Assert.Null(CorrespondenceAnalysis.Of([[0, 0], [0, 0]]));
        Assert.Null(CorrespondenceAnalysis.Of([[1, 2, 3]]));
    }

    [Fact]
    public void Of_NumberThatIsNoCount_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => CorrespondenceAnalysis.Of([[1, double.NaN], [1, 2]]));
        Assert.Throws<ArgumentException>(() => CorrespondenceAnalysis.Of([[1, -1], [1, 2]]));
    }

    // Inertia is χ² over the counts, whatever the table; weighted by its margin every dimension has its middle at zero.
    [Fact]
    public void Of_AnyTable_HasTheInertiaOfChiSquare() => Gen.Int[0, 30].Array[4].Array[2, 6].Sample(table =>
    {
        double[][] counts = [.. table.Select(row => row.Select(count => (double)count).ToArray())];
        if (CorrespondenceAnalysis.Of(counts) is not { } found) return;
        double total = counts.Sum(row => row.Sum()), chiSquare = 0;
        for (var i = 0; i < counts.Length; i++)
            for (var j = 0; j < 4; j++)
                if (counts[i].Sum() * counts.Sum(row => row[j]) / total is var expected and > 0) chiSquare += Math.Pow(counts[i][j] - expected, 2) / expected;

        Assert.Equal(chiSquare, found.ChiSquare, 6);
        for (var k = 0; k < found.Inertias.Count; k++) Assert.Equal(0, counts.Select((row, i) => row.Sum() * found.Rows[i][k]).Sum() / total, 9);
    });
}
