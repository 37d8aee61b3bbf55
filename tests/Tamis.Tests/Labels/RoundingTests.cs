using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class RoundingTests
{
    public static TheoryData<string> RuleSetNames => [.. RuleSets.NamesIn(LabelKit.Folder)];

    private static RuleSet Rules(string name) => RuleSets.Load(LabelKit.Folder, name);

    // Smaller than any decimal place: it rounds to nothing, and divides nothing by zero.
    [Theory]
    [MemberData(nameof(RuleSetNames))]
    public void Round_TinyAmount_IsNotRefused(string name) =>
        Assert.All(Rules(name).Declaration.Where(figure => !figure.IsPercentOnly), figure => Assert.NotEmpty(Rules(name).Rounding.Round(figure.Key, figure.Unit, 1e-27m).Text));

    // The bands themselves are the law's table; at, just below and just above each threshold exactly one of them must answer, and it must be the one that the table names.
    [Theory, MemberData(nameof(RuleSetNames))]
    public void Round_AtAndBesideEveryThreshold_IsTheBandThatTheTableNames(string name)
    {
        var table = Rules(name).Rounding;
        const decimal beside = 0.000001m;
        var asked = 0;
        // A band that hangs on a condition is not taken while nothing is said to be met.
        foreach (var figure in table.Bands.Where(band => band.If.Length == 0).GroupBy(band => (band.Key, band.Unit)))
        {
            var bands = figure.ToArray();
            foreach (var threshold in bands.SelectMany(band => band.To is { } to ? new[] { band.From, to } : [band.From]).Distinct())
            {
                var below = bands.SingleOrDefault(band => band.From < threshold && (band.To is not { } to || to >= threshold));
                var above = bands.Single(band => band.From <= threshold && (band.To is not { } to || to > threshold));
                var at = bands.Single(band => band.From == threshold && band.IncludesFrom || band.To == threshold && band.IncludesTo);
                if (below is not null) Assert.Same(below, table.Round(figure.Key.Key, figure.Key.Unit, threshold - beside).Band);
                Assert.Same(at, table.Round(figure.Key.Key, figure.Key.Unit, threshold).Band);
                Assert.Same(above, table.Round(figure.Key.Key, figure.Key.Unit, threshold + beside).Band);
                asked++;
            }
        }
        Assert.True(asked >= table.Bands.Select(band => (band.Key, band.Unit)).Distinct().Count());
    }

    // The tables themselves are not idempotent where the lowest band takes its own threshold: 0.51 g of fat is 0.5 g, and 0.5 g may read 0 g.
    // These are all such places; everywhere else a rounded number stays as it is.
    [Theory]
    [InlineData("eu", "carbohydrate 0.5 g", "fat 0.5 g", "fibre 0.5 g", "mono-unsaturates 0.1 g", "polyols 0.5 g", "polyunsaturates 0.1 g", "protein 0.5 g", "salt 0.01 g", "saturates 0.1 g", "starch 0.5 g", "sugars 0.5 g")]
    [InlineData("us", "cholesterol 5 mg")]
    public void Round_ARoundedNumber_ChangesNothingButWhereTheTableSaysSo(string name, params string[] expected)
    {
        var table = Rules(name).Rounding;
        SortedSet<string> changed = new(StringComparer.Ordinal);
        foreach (var figure in table.Bands.GroupBy(band => (band.Key, band.Unit)))
        {
            foreach (var amount in Amounts(figure))
            {
                if (table.Round(figure.Key.Key, figure.Key.Unit, amount) is { Number: { } number } once && table.Round(figure.Key.Key, figure.Key.Unit, number).Number != number)
                    changed.Add($"{figure.Key.Key} {once.Text}");
            }
        }
        Assert.Equal(expected, changed);
    }

    [Theory, MemberData(nameof(RuleSetNames))]
    public void Round_MoreOfIt_NeverPrintsLess(string name)
    {
        var table = Rules(name).Rounding;
        foreach (var figure in table.Bands.GroupBy(band => (band.Key, band.Unit)))
        {
            var numbers = Amounts(figure).Order().Select(amount => table.Round(figure.Key.Key, figure.Key.Unit, amount).Number).OfType<decimal>().ToArray();
            Assert.Equal(numbers.Order(), numbers);
            Assert.True(numbers.Length > 3);
        }
    }

    // Commission guidance of December 2012, rounding table (read as restated), and 21 CFR 101.9(c), FDA Food Labeling Guide Appendix H: the printed texts at the thresholds.
    [Theory]
    [InlineData("eu", "fat", "g", "0.5", "0 g")]
    [InlineData("eu", "fat", "g", "0.5001", "0.5 g")]
    [InlineData("eu", "fat", "g", "9.94", "9.9 g")]
    [InlineData("eu", "fat", "g", "9.95", "10.0 g")]
    [InlineData("eu", "fat", "g", "10", "10 g")]
    [InlineData("eu", "fat", "g", "10.5", "11 g")]
    [InlineData("eu", "saturates", "g", "0.1", "0 g")]
    [InlineData("eu", "saturates", "g", "0.15", "0.2 g")]
    [InlineData("eu", "salt", "g", "0.0125", "0 g")]
    [InlineData("eu", "salt", "g", "0.0126", "0.01 g")]
    [InlineData("eu", "salt", "g", "0.615", "0.62 g")]
    [InlineData("eu", "salt", "g", "0.995", "1.00 g")]
    [InlineData("eu", "salt", "g", "1", "1.0 g")]
    [InlineData("eu", "energy", "kJ", "1320.5", "1321 kJ")]
    [InlineData("eu", "vitamin C", "mg", "9.96", "10 mg")]
    [InlineData("eu", "calcium", "mg", "0", "0 mg")]
    [InlineData("us", "calories", "Cal", "4.99", "0")]
    [InlineData("us", "calories", "Cal", "5", "5")]
    [InlineData("us", "calories", "Cal", "50", "50")]
    [InlineData("us", "calories", "Cal", "54.9", "50")]
    [InlineData("us", "calories", "Cal", "55", "60")]
    [InlineData("us", "total fat", "g", "0.499", "0 g")]
    [InlineData("us", "total fat", "g", "0.5", "0.5 g")]
    [InlineData("us", "total fat", "g", "4.75", "5 g")]
    [InlineData("us", "total fat", "g", "5.4", "5 g")]
    [InlineData("us", "cholesterol", "mg", "1.99", "0 mg")]
    [InlineData("us", "cholesterol", "mg", "2", "less than 5 mg")]
    [InlineData("us", "cholesterol", "mg", "5.01", "5 mg")]
    [InlineData("us", "sodium", "mg", "140", "140 mg")]
    [InlineData("us", "sodium", "mg", "144.9", "140 mg")]
    [InlineData("us", "sodium", "mg", "145", "150 mg")]
    [InlineData("us", "dietary fiber", "g", "0.5", "less than 1 g")]
    [InlineData("us", "protein", "g", "1", "1 g")]
    [InlineData("us", "iron", "mg", "2.25", "2.3 mg")]
    [InlineData("us", "percent of daily value, vitamins and minerals", "%", "10.01", "10%")]
    [InlineData("us", "percent of daily value, vitamins and minerals", "%", "12.5", "15%")]
    public void Round_AtAThreshold_PrintsTheLawsText(string name, string key, string unit, string amount, string expected) =>
        Assert.Equal(expected, Rules(name).Rounding.Round(key, unit, decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture)).Text);

    [Fact]
    public void Round_SodiumThatMakesATie_BreaksItUpwards() =>
        Assert.Equal("0.62 g", LabelKit.Eu.Rounding.Round("salt", "g", RoundingTable.ToDecimal(0.246 * 2.5)).Text);

    [Fact]
    public void Round_BelowZero_PrintsAsZero() => Assert.Equal("0 g", LabelKit.Eu.Rounding.Round("carbohydrate", "g", -0.3m).Text);

    [Fact]
    public void Round_ClosingZero_IsKeptInOneAndDroppedInTheOther()
    {
        var european = LabelKit.Eu.Rounding.Round("salt", "g", 0.1m);
        var american = LabelKit.Us.Rounding.Round("total fat", "g", 2.1m);

        Assert.Equal(("0.10 g", "0.1 g"), (european.Text, Assert.Single(european.Alternatives)));
        Assert.Equal(("2 g", "2.0 g"), (american.Text, Assert.Single(american.Alternatives)));
    }

    [Fact]
    public void Round_UnknownFigure_NamesTheNearest()
    {
        var error = Assert.Throws<KeyNotFoundException>(() => LabelKit.Eu.Rounding.Round("saturate", "g", 1));

        Assert.Contains("saturates", error.Message);
    }

    [Fact]
    public void RoundDown_APartialSum_NeverClaimsMoreThanIsKnown()
    {
        Assert.Equal("11 g", LabelKit.Eu.Rounding.RoundDown("fat", "g", 11.9m));
        Assert.Null(LabelKit.Eu.Rounding.RoundDown("fat", "g", 0.4m));
        Assert.Null(LabelKit.Eu.Rounding.RoundDown("fat", "g", 0));
    }

    // Every band's own ends, and a grid that crosses all of them.
    private static IEnumerable<decimal> Amounts(IEnumerable<RoundingBand> bands) =>
        bands.SelectMany(band => new[] { band.From, band.From + 0.0001m, band.From + 0.01m, band.To ?? band.From + 100 }).Concat(Enumerable.Range(0, 400).Select(step => step * 0.037m)).Concat(Enumerable.Range(0, 200).Select(step => step * 3.3m));
}
