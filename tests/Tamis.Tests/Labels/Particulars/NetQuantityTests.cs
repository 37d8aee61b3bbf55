using CsCheck;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class NetQuantityTests
{
    // The shortfall never falls as the pack grows, and is never a greater share of a larger pack but for what rounding up to 0.1 g adds.
    [Fact]
    public void Shortfall_Union_GrowsWithThePackAndShrinksAsAShare()
    {
        var rules = NetQuantityRules.Of(LabelKit.Eu);
        Gen.Int[5, 9999].Sample(grams =>
        {
            var (less, more) = (rules.Shortfall(grams)!.Value.Grams, rules.Shortfall(grams + 1)!.Value.Grams);
            return less <= more && more / (grams + 1) <= less / grams + 0.1m / grams;
        });
    }

    [Fact]
    public void Shortfall_OutsideTheTable_IsNone() => Assert.Null(NetQuantityRules.Of(LabelKit.Eu).Shortfall(4));

    [Fact]
    public void Of_Loaf_ComparesTheWeighedPieceWithThePack()
    {
        var net = NetQuantity.Of(Dessert.Open(KitFolder.Data("desserts/travel-loaf")), "V1", "eu");

        Assert.Equal(9.6m, net.ShortfallGrams);
        Assert.Equal(1952 / 6.0, net.PieceGrams!.Value, 9);
        Assert.Empty(net.Problems);
    }

    [Theory]
    [InlineData("net_g,90,,\nportion_g,100,,\n", "more than the 90 g of the pack")]
    [InlineData("net_g,90,,\nportion_g,40,,\nportions,3,,\n", "3 portions of 40 g are 120 g")]
    [InlineData("net_g,120,,\npieces,1,,\n", "the mean must not be less")]
    public void Of_SheetsThatDoNotAgree_SayWhatToMend(string facts, string expected)
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "cake"));
        File.WriteAllText(Path.Combine(folder.Path, "cake", "formula.csv"), "component,line,way,step,T1\ncake,flour,,1,100\n");
        File.WriteAllText(Path.Combine(folder.Path, "cake", "dessert.csv"), "key,value,trial,notes\n" + facts);

        Assert.Contains(expected, Assert.Single(NetQuantity.Of(Dessert.Open(Path.Combine(folder.Path, "cake")), "T1", "eu").Problems), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_BandsThatDoNotJoin_AreNamed()
    {
        using RuleFolderCopy copy = new();
        copy.Change("eu", "net-quantity-errors.csv", "\n50,100,,4.5", "\n60,100,3,4.5");

        Assert.Equal(["from_g", "percent"], Assert.Throws<TableException>(() => NetQuantityRules.Of(copy.Load("eu"))).Problems.Select(problem => problem.Column).Order(StringComparer.Ordinal));
    }

    // 21 CFR 101.7(j)(1), (m): what stands in brackets is the quantity before them, and neither is said larger than it is.
    [Fact]
    public void Stated_UnitedStates_BracketsHoldTheOuncesBeforeThem()
    {
        var words = NetQuantityWords.Of(LabelKit.Us);
        Gen.Int[4540, 18140].Sample(tenths =>
        {
            var text = words.Stated(tenths / 10m, isVolume: false, "en")!.Value.Text;
            var said = System.Text.RegularExpressions.Regex.Match(text, @"^Net Wt ([\d.]+) oz \((\d) lb(?: ([\d.]+) oz)?\) ");
            decimal Said(int group) => said.Groups[group].Length == 0 ? 0 : decimal.Parse(said.Groups[group].Value, System.Globalization.CultureInfo.InvariantCulture);
            return said.Success && Said(1) == (16 * Said(2)) + Said(3) && Said(1) * 28.349523125m <= tenths / 10m && (Said(1) + 0.1m) * 28.349523125m > tenths / 10m;
        });
    }

    [Fact]
    public void Stated_ByVolume_HoldsThePackByItsDensityAgainstThePiece()
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "drink"));
        File.WriteAllText(Path.Combine(folder.Path, "drink", "formula.csv"), "component,line,way,step,T1\ndrink,whole milk,,1,1000\n");
        File.WriteAllText(Path.Combine(folder.Path, "drink", "dessert.csv"), "key,value,trial,notes\nnet_ml,1000,,\ndensity_g_ml,1.03,,\npieces,1,,\n");
        var net = NetQuantity.Of(Dessert.Open(Path.Combine(folder.Path, "drink")), "T1", "us");

        Assert.Equal("33.8 fl oz (1 qt 1.8 fl oz) 1000 mL", net.Stated("en")!.Value.Text);
        Assert.Equal(1030, net.NominalGrams!.Value, 9);
        Assert.Contains("A piece comes to 1000 g, by the formula, and the pack says 1030 g", Assert.Single(net.Problems), StringComparison.Ordinal);
    }

    // The mark of the language, where the rule set has one; Canada's table in both languages has one mark, and so has its quantity.
    [Fact]
    public void Stated_InFrench_HasAComma()
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "cake"));
        File.WriteAllText(Path.Combine(folder.Path, "cake", "formula.csv"), "component,line,way,step,T1\ncake,flour,,1,1300\n");
        File.WriteAllText(Path.Combine(folder.Path, "cake", "dessert.csv"), "key,value,trial,notes\nnet_g,1234.5,,\n");
        NetQuantity Of(string rules) => NetQuantity.Of(Dessert.Open(Path.Combine(folder.Path, "cake")), "T1", rules);

        Assert.Equal(("1234.5 g", "1234,5 g"), (Of("eu").Stated("en")!.Value.Text, Of("eu").Stated("fr")!.Value.Text));
        Assert.Equal(("1.23 kg", "1.23 kg"), (Of("ca").Stated("en")!.Value.Text, Of("ca").Stated("fr")!.Value.Text));
    }

    // Regulation (EU) No 1169/2011, Article 23(1)(a), and the like: a liquid by volume, also where the sheet weighs it; what is no liquid by mass.
    [Theory]
    [InlineData("eu", "250 ml", "fr")]
    [InlineData("gb", "250 ml", "en")]
    [InlineData("au-nz", "250 mL", "en")]
    [InlineData("codex", "250 ml", "en")]
    [InlineData("ca", "250 mL", "fr")]
    [InlineData("us", "8.4 fl oz (250 mL)", "en")]
    public void Stated_Liquid_IsInMillilitres(string rules, string expected, string language)
    {
        using TemporaryFolder folder = new();

        Assert.Equal(expected, Of(folder, rules, "net_g,275,,\nstate,liquid,,\ndensity_g_ml,1.1,,\n").Stated(language)!.Value.Text);
        Assert.Equal(expected, Of(folder, rules, "net_ml,250,,\n").Stated(language)!.Value.Text);
        Assert.NotNull(Of(folder, rules, "net_ml,250,,\n").Stated(language)!.Value.Origin);
        Assert.Null(Of(folder, rules, "net_g,275,,\ndensity_g_ml,1.1,,\n").NominalMillilitres);
    }

    [Theory]
    [InlineData("eu"), InlineData("gb"), InlineData("au-nz"), InlineData("codex"), InlineData("ca"), InlineData("us")]
    public void Of_LiquidOfUnknownDensity_SaysWhatToSupply(string rules)
    {
        using TemporaryFolder folder = new();

        Assert.Contains("write net_ml, the quantity in millilitres, or density_g_ml", Assert.Single(Of(folder, rules, "net_g,275,,\nstate,liquid,,\n").Problems), StringComparison.Ordinal);
        Assert.Empty(Of(folder, rules, "net_ml,250,,\nstate,liquid,,\n").Problems);
    }

    private static NetQuantity Of(TemporaryFolder folder, string rules, string facts)
    {
        var sauce = Directory.CreateDirectory(Path.Combine(folder.Path, Guid.NewGuid().ToString("N"), "sauce")).FullName;
        File.WriteAllText(Path.Combine(sauce, "formula.csv"), "component,line,way,step,T1\nsauce,whole milk,,1,1000\n");
        File.WriteAllText(Path.Combine(sauce, "dessert.csv"), "key,value,trial,notes\n" + facts);
        return NetQuantity.Of(Dessert.Open(sauce), "T1", rules);
    }

    [Fact]
    public void Stated_TravelLoaf_SaysGramsByTheRuleOfTheUnion()
    {
        var stated = NetQuantity.Of(Dessert.Open(KitFolder.Data("desserts/travel-loaf")), "V1", "eu").Stated("fr")!.Value;

        Assert.Equal("320 g", stated.Text);
        Assert.Contains("Article 23(1)", stated.Origin!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_WordsOfUnknownUnitsAndRangesThatDoNotJoin_AreNamed()
    {
        using RuleFolderCopy copy = new();
        copy.Change("us", "net-quantity-words.csv", "weight,1 lb,4 lb,,Net Wt {oz} ({lb + oz})", "weight,2 lb,4 stone,,Net Wt {oz} ({lb + dram})");

        Assert.Equal(["below", "en", "from", "from"], Assert.Throws<TableException>(() => NetQuantityWords.Of(copy.Load("us"))).Problems.Select(problem => problem.Column).Order(StringComparer.Ordinal));
    }
}
