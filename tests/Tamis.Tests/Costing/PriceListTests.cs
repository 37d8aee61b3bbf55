using Tamis.Costing;
using Tamis.Tables;

namespace Tamis.Tests.Costing;

public class PriceListTests
{
    private const string Header = "ingredient,supplier,pack,pack_g,price,currency,date\n";
    private static readonly string[] Known = ["flour", "butter", "herbs"];

    [Theory]
    [InlineData("2026-05-04", 2.0, false)]
    [InlineData("2026-08-02", 2.0, false)]
    [InlineData("2026-08-03", 3.0, false)]
    [InlineData("2027-01-01", 3.0, false)]
    [InlineData("2026-01-01", 2.0, true)]
    public void On_NewestOnOrBeforeTheDay_WhoeverTheSupplier(string day, double price, bool isLater)
    {
        var inUse = Read("flour,S2,sack,1000,3,EUR,2026-08-03\nflour,S1,sack,1000,2,EUR,2026-05-04\n").On("Flour", DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture))!;

        Assert.Equal((price, isLater), (inUse.Price.PackPrice, inUse.IsLater));
    }

    [Fact]
    public void On_ZeroAndBlank_AreNotTheSame()
    {
        var prices = Read("herbs,garden,,,0,EUR,2026-05-04\nbutter,S1,pack,1000,,EUR,2026-05-04\n");

        Assert.Equal(0, prices.On("herbs", null)!.Price.PerGram);
        Assert.Null(prices.On("butter", null)!.Price.PerGram);
        Assert.Null(prices.On("flour", null));
    }

    [Fact]
    public void On_NewestWithoutPrice_NoOlderOneStandsIn() =>
        Assert.Null(Read("butter,S1,pack,1000,8,EUR,2026-05-04\nbutter,S1,pack,1000,,EUR,2026-06-04\n").On("butter", new DateOnly(2026, 7, 1))!.Price.PerGram);

    [Theory]
    [InlineData("flour,S1,sack,1000,-2,EUR,2026-05-04", "price", "-2")]
    [InlineData("flour,S1,sack,,2,EUR,2026-05-04", "pack_g", "")]
    [InlineData("flour,S1,sack,0,2,EUR,2026-05-04", "pack_g", "0")]
    [InlineData("flour,S1,sack,-5,2,EUR,2026-05-04", "pack_g", "-5")]
    [InlineData("floor,S1,sack,1000,2,EUR,2026-05-04", "ingredient", "floor")]
    [InlineData("flour,S1,sack,1000,2,,2026-05-04", "currency", "")]
    [InlineData("flour,S1,sack,1000,2,GBP,2026-05-04", "currency", "GBP")]
    [InlineData("flour,S1,sack,1000,2,euro,2026-05-04", "currency", "euro")]
    [InlineData("flour,S1,sack,1000,cheap,EUR,2026-05-04", "price", "cheap")]
    [InlineData(",S1,sack,1000,2,EUR,2026-05-04", "ingredient", "")]
    [InlineData("flour,S1,sack,1000,2,EUR,soon", "date", "soon")]
    public void Read_BadCell_IsNamed(string row, string column, string found)
    {
        List<CellProblem> problems = [];
        PriceList.Read(Kitchen.Sheet("prices.csv", Header + "butter,S1,pack,1000,8,EUR,2026-05-04\n" + row + "\n"), Known, null, problems);

        var problem = Assert.Single(problems);
        Assert.Equal(("prices.csv", 3, column, found), (problem.File, problem.Row, problem.Column, problem.Found));
    }

    [Fact]
    public void Read_SeveralBadCells_AllAreNamed()
    {
        List<CellProblem> problems = [];
        PriceList.Read(Kitchen.Sheet("prices.csv", Header + "flour,S1,sack,,2,EUR,2026-05-04\nbuter,S1,pack,1000,-8,EUR,2026-05-04\n"), Known, null, problems);

        Assert.Equal(["pack_g", "ingredient", "price"], problems.Select(problem => problem.Column));
        Assert.Contains("butter", problems[1].Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_CurrencyOfDessert_IsHeldAgainstEveryPrice()
    {
        List<CellProblem> problems = [];
        PriceList.Read(Kitchen.Sheet("prices.csv", Header + "flour,S1,sack,1000,2,EUR,2026-05-04\n"), Known, "GBP", problems);

        Assert.Contains("dessert.csv", Assert.Single(problems).Expected, StringComparison.Ordinal);
    }

    private static PriceList Read(string rows)
    {
        List<CellProblem> problems = [];
        var prices = PriceList.Read(Kitchen.Sheet("prices.csv", Header + rows), Known, null, problems);
        return problems.Count == 0 ? prices : throw new TableException(problems);
    }
}
