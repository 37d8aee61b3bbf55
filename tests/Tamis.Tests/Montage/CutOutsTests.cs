using CsCheck;
using Tamis.Montage;

namespace Tamis.Tests.Montage;

public class CutOutsTests
{
    // The best known side of a square, in diameters, that holds n circles: 1/(2 r) of the table of the densest packings in a unit square
    // (n, r): 1 0.5; 2 0.29289; 3 0.25433; 4 0.25; 5 0.20711; 6 0.18768; 7 0.17446; 8 0.17054; 9 0.16667; 10 0.14820; 16 0.125; 20 0.11138; 25 0.1; 30 0.09167(from memory).
    public static TheoryData<int, double> BestKnown => new()
    {
        { 1, 0.5 }, { 2, 0.29289 }, { 3, 0.25433 }, { 4, 0.25 }, { 5, 0.20711 }, { 6, 0.18768 }, { 7, 0.17446 }, { 8, 0.17054 }, { 9, 0.16667 }, { 10, 0.14820 },
        { 16, 0.125 }, { 20, 0.11138 }, { 25, 0.1 }, { 30, 0.09167 },
    };

    [Theory]
    [MemberData(nameof(BestKnown))]
    public void Best_SquareThatJustHoldsTheBestKnown_NeverCutsMore(int count, double radius)
    {
        var cut = CutOuts.Best(new Cuboid(1 / (2 * radius) * 50, 1 / (2 * radius) * 50, 4), 50 * (1 - 1e-4));
        Assert.InRange(cut.Count, 1, count);
        Assert.InRange(cut.UpperBound, count, int.MaxValue);
    }

    [Theory]
    [InlineData(4, 0.25)]
    [InlineData(9, 0.16667)]
    [InlineData(16, 0.125)]
    [InlineData(25, 0.1)]
    public void Best_WhereTheBestKnownIsANest_CutsAsMany(int count, double radius) =>
        Assert.Equal(count, CutOuts.Best(new Cuboid(1 / (2 * radius) * 50, 1 / (2 * radius) * 50, 4), 50 * (1 - 1e-4)).Count);

    [Fact]
    public void Best_AnySheet_KeepsRoundsInsideAndApart() =>
        Gen.Select(Gen.Double[100, 600], Gen.Double[100, 600], Gen.Double[20, 140], Gen.Double[0, 5]).Sample((length, width, diameter, gap) =>
        {
            var cut = CutOuts.Best(new Cuboid(length, width, 4), diameter, gap);
            Assert.InRange(cut.Count, 0, cut.UpperBound);
            Assert.All(cut.Centres, centre =>
            {
                Assert.InRange(centre.X, diameter / 2 - 1e-6, length - diameter / 2 + 1e-6);
                Assert.InRange(centre.Y, diameter / 2 - 1e-6, width - diameter / 2 + 1e-6);
            });
            for (var i = 0; i < cut.Count; i++)
                for (var j = 0; j < i; j++)
                    Assert.True(Math.Sqrt(Math.Pow(cut.Centres[i].X - cut.Centres[j].X, 2) + Math.Pow(cut.Centres[i].Y - cut.Centres[j].Y, 2)) >= diameter + gap - 1e-6);
        }, iter: 200);

    // Rows of three and two in a strip as long as five rounds: worked out by hand, 3 + 2 + 3 at steps of √3/2.
    [Fact]
    public void Best_WhereRowsNest_CutsMoreThanRowsAndColumns()
    {
        var cut = CutOuts.Best(new Cuboid(150, 137, 4), 50);
        Assert.Equal(8, cut.Count);
        Assert.NotEqual(Nesting.Square, cut.Nesting);
    }

    // The demo's frame: four rounds of 130 mm from 270 × 270 mm leave 27 % trim.
    [Fact]
    public void Best_DemoFrame_GivesFourRoundsAndItsTrim()
    {
        var cut = CutOuts.Best(new Cuboid(270, 270, 4), 130);
        Assert.Equal(4, cut.Count);
        Assert.Equal(0.272, cut.TrimShare, 0.001);
    }

    [Fact]
    public void From_DoughRolledAgain_LosesNoDough()
    {
        var cut = CutOuts.Best(new Cuboid(600, 400, 3), 80);
        var (rounds, trim) = cut.From(2000, 1.2, timesRolledAgain: 2);
        Assert.Equal(3, rounds.Count);
        Assert.True(rounds[0] > rounds[1] && rounds[1] > rounds[2]);
        Assert.Equal(2000, trim + rounds.Sum() * Math.PI * 1600 * 3 / 1000 * 1.2, 6);
    }
}
