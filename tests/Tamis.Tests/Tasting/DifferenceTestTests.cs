using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class DifferenceTestTests
{
    // Orders of plates in a set: ISO 4120 names six for the triangle, ISO 10399 four for the duo-trio (from memory); the tetrad has 4!/(2!·2!).
    [Theory]
    [InlineData("triangle", 6), InlineData("duo-trio", 4), InlineData("paired", 2), InlineData("two alternatives", 2), InlineData("three alternatives", 3), InlineData("tetrad", 6)]
    public void Orders_OfATest_AreAllThereAre(string word, int count)
    {
        var orders = DifferenceTest.Of(word)!.Orders();

        Assert.Equal(count, orders.Count);
        Assert.Equal(count, orders.Select(order => string.Concat(order.Select(plate => plate ? 'B' : 'A'))).Distinct().Count());
    }

    [Theory]
    [InlineData("triangle"), InlineData("duo-trio"), InlineData("two alternatives"), InlineData("three alternatives"), InlineData("tetrad")]
    public void IsRight_GuessingOverAllOrders_IsRightAsOftenAsChance(string word)
    {
        var test = DifferenceTest.Of(word)!;
        // The reference of a duo-trio is no choice.
        var places = Enumerable.Range(0, test.SetSize).Where(place => test != DifferenceTest.DuoTrio || place > 0).ToArray();
        int[][] answers = test.PicksEach == 1 ? [.. places.Select(place => new[] { place })] : [.. from one in places from two in places where one < two select new[] { one, two }];
        var results = (from order in test.Orders() from answer in answers select test.IsRight(order, answer)).ToArray();

        Assert.Equal(test.Guess, results.Count(right => right) / (double)results.Length, 12);
    }

    [Fact]
    public void IsRight_MorePicksThanAsked_IsNot() => Assert.False(DifferenceTest.Triangle.IsRight([true, false, false], [0, 1]));

    [Fact]
    public void Of_AnyOtherWord_IsNone() => Assert.Null(DifferenceTest.Of("scores"));
}
