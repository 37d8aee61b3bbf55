using CsCheck;
using Tamis.Composition;

namespace Tamis.Tests.Composition;

public class MixtureSumsTests
{
    private const int Nutrients = 11;      // no whole number of vectors

    private static readonly Gen<double> GenContent = Gen.OneOf(Gen.Const(double.NaN), Gen.Const(0.0), Gen.Double[0, 100]);

    private static readonly Gen<double[][]> GenFoods = GenContent.Array[Nutrients].Array[1, 8];

    private static readonly Gen<(double[][] Foods, (int Row, double Grams)[] Lines)> GenMixture =
        from foods in GenFoods
        from lines in Gen.Select(Gen.Int[0, foods.Length - 1], Gen.Double[0.1, 500]).Array[1, 12]
        select (foods, lines);

    [Fact]
    public void Sum_AnyMixture_AgreesWithTheSumOfOneNutrient() => GenMixture.Sample(mixture =>
    {
        var (amounts, _) = Sum(mixture.Foods, mixture.Lines);
        double[] masses = [.. mixture.Lines.Select(line => line.Grams)];
        for (var nutrient = 0; nutrient < Nutrients; nutrient++)
        {
            var expected = Amount.Sum(masses, [.. mixture.Lines.Select(line => mixture.Foods[line.Row][nutrient])]);
            Near(expected, amounts[nutrient]);
        }
    });

    [Fact]
    public void Sum_UnknownContent_NeverBecomesZero() => GenMixture.Sample(mixture =>
    {
        var (amounts, _) = Sum(mixture.Foods, mixture.Lines);
        for (var nutrient = 0; nutrient < Nutrients; nutrient++)
        {
            var isUnknownSomewhere = mixture.Lines.Any(line => double.IsNaN(mixture.Foods[line.Row][nutrient]));
            Assert.Equal(isUnknownSomewhere, amounts[nutrient].Whole is null);
        }
    });

    [Fact]
    public void Sum_LinesInAnotherOrder_ChangesNothing() => Gen.Select(GenMixture, Gen.Int).Sample((mixture, seed) =>
    {
        var shuffled = mixture.Lines.ToArray();
        new Random(seed).Shuffle(shuffled);
        Same(Sum(mixture.Foods, mixture.Lines).Amounts, Sum(mixture.Foods, shuffled).Amounts);
    });

    [Fact]
    public void Sum_ALineSplitInTwo_ChangesNothing() => Gen.Select(GenMixture, Gen.Double[0, 1]).Sample((mixture, share) =>
    {
        var (row, grams) = mixture.Lines[0];
        (int, double)[] split = [(row, grams * share), (row, grams * (1 - share)), .. mixture.Lines.Skip(1)];
        Same(Sum(mixture.Foods, mixture.Lines).Amounts, Sum(mixture.Foods, split).Amounts);
    });

    [Fact]
    public void Sum_CoveredMass_IsThatOfTheKnownLinesAndNeverMoreThanAll() => GenMixture.Sample(mixture =>
    {
        var (amounts, total) = Sum(mixture.Foods, mixture.Lines);
        for (var nutrient = 0; nutrient < Nutrients; nutrient++)
        {
            Assert.Equal(mixture.Lines.Where(line => !double.IsNaN(mixture.Foods[line.Row][nutrient])).Sum(line => line.Grams), amounts[nutrient].CoveredMassGrams, 6);
            Assert.InRange(amounts[nutrient].CoveredShare, 0, 1);
            Assert.InRange(amounts[nutrient].CoveredMassGrams, 0, total + 1e-9);
        }
    });

    [Fact]
    public void SumMany_SeveralMixtures_EqualsEachAlone()
    {
        var matrix = Matrix([[1, double.NaN], [10, 20]]);
        var known = new double[2 * matrix.Stride];
        var covered = new double[2 * matrix.Stride];
        var totals = new double[2];

        MixtureSums.SumMany(matrix, [0, 1, 3], [1, 0, 1], [50, 100, 200], known, covered, totals);

        Assert.Equal([50, 300], totals);
        Assert.Equal([5, 10], known[..2]);
        Assert.Equal([21, 40], known[matrix.Stride..(matrix.Stride + 2)]);
        Assert.Equal([300, 200], covered[matrix.Stride..(matrix.Stride + 2)]);
    }

    [Fact]
    public void SumMany_TheLoop_AllocatesNothing()
    {
        var matrix = Matrix([[1, double.NaN], [10, 20]]);
        var room = new double[2 * matrix.Stride];
        var totals = new double[2];
        int[] starts = [0, 1, 3], rows = [1, 0, 1];
        double[] masses = [50, 100, 200];
        MixtureSums.SumMany(matrix, starts, rows, masses, room, room, totals);

        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++) MixtureSums.SumMany(matrix, starts, rows, masses, room, room, totals);

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    [Fact]
    public void Sum_RowThatIsNotThere_IsRefused()
    {
        var matrix = Matrix([[1, 2]]);
        var room = new double[matrix.Stride];

        Assert.Throws<ArgumentOutOfRangeException>(() => MixtureSums.Sum(matrix, [1], [10], room, room));
        Assert.Throws<ArgumentException>(() => MixtureSums.Sum(matrix, [0], [10, 20], room, room));
        Assert.Throws<ArgumentException>(() => MixtureSums.Sum(matrix, [0], [10], room, room.AsSpan(1)));
    }

    private static (Amount[] Amounts, double TotalGrams) Sum(double[][] foods, (int Row, double Grams)[] lines)
    {
        var matrix = Matrix(foods);
        var known = new double[matrix.Stride];
        var covered = new double[matrix.Stride];
        var total = MixtureSums.Sum(matrix, [.. lines.Select(line => line.Row)], [.. lines.Select(line => line.Grams)], known, covered);
        return ([.. known.Zip(covered, (sum, grams) => new Amount(sum, grams, total)).Take(matrix.Columns)], total);
    }

    private static ContentMatrix Matrix(double[][] foods) => ContentMatrix.FromRows(foods.Length, foods[0].Length, row => foods[row]);

    private static void Same(Amount[] expected, Amount[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (var i = 0; i < expected.Length; i++) Near(expected[i], actual[i]);
    }

    private static void Near(Amount expected, Amount actual)
    {
        Assert.Equal(expected.Known, actual.Known, 1e-9 * Math.Max(1, Math.Abs(expected.Known)));
        Assert.Equal(expected.CoveredMassGrams, actual.CoveredMassGrams, 1e-9 * Math.Max(1, expected.TotalMassGrams));
        Assert.Equal(expected.TotalMassGrams, actual.TotalMassGrams, 1e-9 * Math.Max(1, expected.TotalMassGrams));
    }
}
