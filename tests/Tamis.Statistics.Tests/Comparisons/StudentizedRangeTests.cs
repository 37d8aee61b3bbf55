using CsCheck;
using Tamis.Statistics.Comparisons;

namespace Tamis.Statistics.Tests.Comparisons;

public class StudentizedRangeTests
{
    // Harter (1960), Annals of Mathematical Statistics 31, from memory; the same to the printed digits in most handbooks.
    [Theory]
    [InlineData(0.95, 3, 10, 3.877)]
    [InlineData(0.95, 4, 20, 3.958)]
    [InlineData(0.99, 5, 12, 5.836)]
    public void Quantile_TabledCase_HasThePrintedDigits(double probability, int groups, double degrees, double printed) =>
        Assert.Equal(printed, StudentizedRange.Quantile(probability, groups, degrees), 3);

    [Fact]
    public void Above_TwoGroups_IsStudentsT() =>
        Gen.Double[0.05, 8].Select(Gen.Double[0.7, 80]).Sample((q, degrees) =>
            Assert.Equal(Tails.StudentBeyond(q / Math.Sqrt(2), degrees), StudentizedRange.Above(q, 2, degrees), 12));

    // Boole's inequality: some pair is apart at least as often as one, at most as often as all pairs' chances together.
    [Fact]
    public void Above_AnyCase_LiesBetweenOnePairAndAllPairsApart() =>
        Gen.Select(Gen.Double[0.1, 9], Gen.Int[3, 30], Gen.Double[1, 60]).Sample((q, groups, degrees) =>
        {
            var one = StudentizedRange.Above(q, 2, degrees);
            Assert.InRange(StudentizedRange.Above(q, groups, degrees), one, Math.Min(1, groups * (groups - 1) / 2.0 * one));
        });

    [Fact]
    public void Quantile_OfItsOwnTail_ComesBack() =>
        Gen.Select(Gen.Double[0.05, 0.999], Gen.Int[2, 20], Gen.Double[1, 100]).Sample((probability, groups, degrees) =>
            Assert.Equal(1 - probability, StudentizedRange.Above(StudentizedRange.Quantile(probability, groups, degrees), groups, degrees), 10), iter: 20);

    [Fact]
    public void Above_FarOut_KeepsItsDigits()
    {
        // With a known spread the first pair of Bonferroni's sum is all that counts far out: 3 pairs of erfc(q/2).
        var tail = StudentizedRange.Above(10, 3, double.PositiveInfinity);

        Assert.Equal(1, tail / (3 * MathNet.Numerics.SpecialFunctions.Erfc(5)), 3);
    }

    [Theory]
    [InlineData(1, 10)]
    [InlineData(3, 0)]
    [InlineData(3, double.NaN)]
    public void Above_NoSuchRange_IsRefused(int groups, double degrees) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Above(3, groups, degrees));
}
