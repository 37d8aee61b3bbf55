using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

/// <summary>Groups that like different things, distances of a difference test, and pairs behind a ticked word.</summary>
public class MapsOfPeopleTests
{
    private static TastingLog Liking(int people, Func<int, int, double> points)
    {
        var random = new Random(5);
        return SimulatedPanel.Log([.. from person in Enumerable.Range(0, people)
                                      from trial in Enumerable.Range(0, 4)
                                      select SimulatedPanel.Score("S1", $"A{person:000}", $"T{trial}", points(person, trial) + random.NextDouble(), code: $"{trial}")], new TastingSession("S1"));
    }

    // Fifty like T0 best and thirty T3: the map must find just these.
    [Fact]
    public void PreferenceMap_TwoGroupsPutIn_AreFound()
    {
        var map = PreferenceMap.Of(Liking(80, (person, trial) => person < 50 ? 8 - 2 * trial : 2 + 2 * trial), new TastingSession("S1"))!;

        Assert.Equal([50, 30], map.Groups.Select(group => group.People));
        Assert.Equal(["T0", "T3"], map.Groups.Select(group => group.MeanLiking.MaxBy(each => each.Points).Trial));
        Assert.Equal(80, map.People);
    }

    [Fact]
    public void PreferenceMap_FewPeople_IsNotDrawn() => Assert.Null(PreferenceMap.Of(Liking(TastingPolicy.Kit.FewestForMap - 1, (_, trial) => trial), new TastingSession("S1")));

    private static DifferenceResult Triangle(params (string, int, int)[] by) => new(new TastingSession("S1"), DifferenceTest.Triangle, "T1", "T2", by, 0);

    // The limits of Clopper and Pearson for 14 of 30 (R 4.2.2, binom.test: 0.283418079184 to 0.656744761839) through the triangle's model; the lower one is below guessing.
    [Fact]
    public void Distance_OfATriangle_HasTheLimitsOfItsShare()
    {
        var result = Triangle([.. Enumerable.Range(0, 30).Select(at => ($"A{at}", at < 14 ? 1 : 0, 1))]);

        var (distance, low, high) = result.Distance(TastingPolicy.Kit)!.Value;

        Assert.Equal(0, low);
        Assert.Equal(0.656744761839, DifferenceTest.Triangle.Model!.ProportionRight(high), 8);
        Assert.Equal(14 / 30.0, DifferenceTest.Triangle.Model.ProportionRight(distance), 8);
    }

    [Fact]
    public void Distance_AllRight_HasNoUpperLimitAndNoNumberThatIsNone()
    {
        var (distance, low, high) = Triangle([.. Enumerable.Range(0, 8).Select(at => ($"A{at}", 1, 1))]).Distance(TastingPolicy.Kit)!.Value;

        Assert.True(double.IsPositiveInfinity(distance) && double.IsPositiveInfinity(high));
        Assert.True(low > 0);
    }

    [Fact]
    public void IsNearEnough_FewRightOfMany_Holds()
    {
        DifferenceResult With(int right, int people) => Triangle([.. Enumerable.Range(0, people).Select(at => ($"A{at}", at < right ? 1 : 0, 1))]);
        var most = DifferenceTest.Triangle.Model!.MostForSimilarity(120, TastingPolicy.Kit.DistinguisherShare, TastingPolicy.Kit.FalseAlarmShare);

        Assert.True(With(most, 120).IsNearEnough(TastingPolicy.Kit));
        Assert.False(With(most + 1, 120).IsNearEnough(TastingPolicy.Kit));
        Assert.False(With(4, 12).IsNearEnough(TastingPolicy.Kit));
    }

    [Fact]
    public void Spread_PeopleWhoAreAlwaysRightOrAlwaysWrong_IsSeen()
    {
        var spread = Triangle([.. Enumerable.Range(0, 12).Select(at => ($"A{at}", at % 2 == 0 ? 4 : 0, 4))]).Spread!;

        Assert.True(spread.Overdispersion > 0.9);
        Assert.True(spread.ChanceOfNoSpread < 0.001);
        Assert.Null(Triangle(("A1", 1, 1), ("A2", 0, 1)).Spread);
    }
}
