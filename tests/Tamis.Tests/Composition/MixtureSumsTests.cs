using CsCheck;
using Tamis.Composition;
using Tamis.Desserts;

namespace Tamis.Tests.Composition;

public class MixtureSumsTests
{
    private const int Nutrients = 19;      // no whole number of vectors, and an odd number of them

    // Decimals are summed as whole numbers, all else as it is.
    private static readonly Gen<double> GenDecimal = Gen.OneOf(Gen.Const(double.NaN), Gen.Const(0.0), Gen.Int[1, 100_000].Select(thousandths => thousandths / 1000.0));
    private static readonly Gen<double> GenContent = Gen.OneOf(Gen.Const(double.NaN), Gen.Const(0.0), Gen.Double[0, 100]);

    private static readonly Gen<double[][]> GenFoods = Gen.OneOf(GenDecimal.Array[Nutrients].Array[1, 8], GenContent.Array[Nutrients].Array[1, 8]);

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

    // Rows known from end to end are summed without counting what is known; wide tables in passes of several widths.
    [Fact]
    public void SumMany_AnyWidthAndAnyRowsKnown_AgreesWithTheSumOfOneNutrient() =>
        Gen.Select(Gen.Int[1, 150], Gen.Bool, Gen.Double[0, 1], Gen.Int).Sample((nutrients, isDecimal, shareOfKnownRows, seed) =>
        {
            var random = new Random(seed);
            double Content(bool isKnown) => !isKnown && random.Next(5) == 0 ? double.NaN : isDecimal ? random.Next(100_000) / 1000.0 : random.NextDouble() * 100;
            double[][] foods = [.. Enumerable.Range(0, 9).Select(_ => random.NextDouble() < shareOfKnownRows).Select(isKnown => Enumerable.Range(0, nutrients).Select(_ => Content(isKnown)).ToArray())];
            int[] rows = [.. Enumerable.Range(0, 30).Select(_ => random.Next(foods.Length))];
            double[] masses = [.. rows.Select(_ => random.NextDouble() * 500)];
            int[] starts = [0, .. Enumerable.Range(0, 5).Select(_ => random.Next(rows.Length + 1)).Order(), rows.Length];
            var matrix = Matrix(foods);
            double[] known = new double[6 * matrix.Stride], covered = new double[6 * matrix.Stride], totals = new double[6];

            MixtureSums.SumMany(matrix, starts, rows, masses, known, covered, totals);

            Assert.True(matrix.IsInWholeUnits || !isDecimal);
            for (var mixture = 0; mixture < 6; mixture++)
                for (var nutrient = 0; nutrient < nutrients; nutrient++)
                {
                    var lines = starts[mixture]..starts[mixture + 1];
                    var at = mixture * matrix.Stride + nutrient;
                    Near(Amount.Sum(masses[lines], [.. rows[lines].Select(row => foods[row][nutrient])]), new(known[at], covered[at], totals[mixture]));
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

    [Theory]
    [InlineData(true, 1.25, 0.0004, 100_000)]                     // a finer content in a later row
    [InlineData(true, 0, 0, 0)]
    [InlineData(false, -0.5, 1, 2)]                               // below zero
    [InlineData(false, 1.0 / 3, 1, 2)]                            // no decimal
    [InlineData(false, 4_294_967_295.0, 1, 2)]                    // more units than fit
    [InlineData(false, 0.000001, 5000, 2)]                        // the coarsest and the finest need more digits than fit
    [InlineData(false, 0.1234567890123456, 1, 2)]
    public void Sum_ContentsOfAnyDigits_AreThoseThatWereGiven(bool isInWholeUnits, double first, double second, double third)
    {
        var matrix = Matrix([[first, 7], [second, double.NaN], [third, 0]]);
        double[] known = new double[matrix.Stride], covered = new double[matrix.Stride];

        Assert.Equal(isInWholeUnits, matrix.IsInWholeUnits);
        for (var row = 0; row < 3; row++)
        {
            MixtureSums.Sum(matrix, [row], [100], known, covered);
            Assert.Equal(matrix.Row(row)[0], known[0], 4e-16 * Math.Abs(matrix.Row(row)[0]));
            Assert.Equal(row == 1 ? 0 : 100, covered[1]);
        }
    }

    [Fact]
    public void Sum_OfZeros_IsZeroAndNotNearlyZero()
    {
        var matrix = Matrix([[0, 0.01], [0, 0.03], [double.NaN, 0]]);
        double[] known = new double[matrix.Stride], covered = new double[matrix.Stride];

        MixtureSums.Sum(matrix, [0, 1, 2, 1, 0], [0.1, 1.0 / 3, 7, 123.456, 0.7], known, covered);

        Assert.True(matrix.IsInWholeUnits);
        Assert.Equal(0, known[0]);
    }

    [Fact]
    public void ToMatrix_TheShippedTable_IsInWholeUnits() => Assert.True(KitData.Composition.ToMatrix().IsInWholeUnits);

    [Theory]
    [InlineData(1)]
    [InlineData(1.0 / 3)]
    public void SumMany_TheLoop_AllocatesNothing(double content)
    {
        var matrix = Matrix([[content, double.NaN], [10, 20]]);
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

    // Nothing is read before all is looked at: neither a row that is not there nor lines that belong to no mixture.
    [Theory]
    [InlineData(new[] { 0, 2, 3 }, new[] { 0, 0, 1 })]
    [InlineData(new[] { 0, 2, 3 }, new[] { -1, 0, 0 })]
    [InlineData(new[] { 0, 3, 1 }, new[] { 0, 0, 9 })]
    [InlineData(new[] { 0, 2, 4 }, new[] { 0, 0, 0 })]
    [InlineData(new[] { -1, 2, 3 }, new[] { 0, 0, 0 })]
    public void SumMany_LinesThatDoNotFit_AreRefusedAndNothingIsWritten(int[] starts, int[] rows)
    {
        var matrix = Matrix([[1, 2]]);
        double[] known = new double[2 * matrix.Stride], totals = [-1, -1];

        Assert.ThrowsAny<ArgumentException>(() => MixtureSums.SumMany(matrix, starts, rows, [10, 20, 30], known, new double[2 * matrix.Stride], totals));

        Assert.All(known, sum => Assert.Equal(0, sum));
        Assert.Equal([-1, -1], totals);
    }

    [Fact]
    public void Sum_WithoutNutrients_IsTheMassOfAllLines() => Assert.Equal(30, MixtureSums.Sum(Matrix([[], []]), [0, 1], [10, 20], [], []));

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
