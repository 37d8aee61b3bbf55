using Tamis.Desserts;

namespace Tamis.Tests.Desserts;

public class LabelCellsTests
{
    [Theory]
    [InlineData("damson-tart")]
    [InlineData("travel-loaf")]
    public void Problems_Demo_None(string dessert) => Assert.Empty(LabelCells.Problems(Dessert.Open(KitFolder.Data($"desserts/{dessert}"))));

    // A kitchen calls the peel as ingredients.csv does, not as the pack does; grams may have their unit.
    [Theory]
    [InlineData("citrus: candied orange peel;", "citrus: candied peel;")]
    [InlineData("currency,EUR", "other_amount,2 slices; 80 g,V2")]
    [InlineData("currency,EUR", "claim,reduced fat; V1,V3")]
    public void Problems_WordsOfTheKitchen_None(string right, string written)
    {
        using TemporaryFolder folder = new();

        Assert.Empty(LabelCells.Problems(Dessert.Open(Rewritten(folder, right, written))));
    }

    // What a tired person writes, one cell at a time; the cell is named, with something that helps.
    [Theory]
    [InlineData("portion_g,40", "portion_g,400", "net_g")]
    [InlineData("FR; EU; fr", "FR; EUU; fr", "eu")]
    [InlineData("FR; EU; fr", "FR, EU, fr", "IE; EU; en")]
    [InlineData("FR; EU; fr", "FI; EU; fi", "data/rules/terms")]
    [InlineData("claim,no added sugars", "claim,no addd sugars", "no added sugars")]
    [InlineData("claim,source of fibre,V1,", "claim,reduced fat; V9,V1,", "V1, V1b, V2, V3")]
    [InlineData("date_kind,best before", "date_kind,best befor", "best before")]
    [InlineData("form_of_sale,prepacked", "form_of_sale,prepackd", "prepacked")]
    [InlineData("food_category,fine bakery wares", "food_category,fine bakery", "fine bakery wares")]
    [InlineData("185 x 75 x 65", "185 x 75", "185 x 75 x 65")]
    [InlineData("decimal_mark,point,,", "decimal_mark,point,,\nface,185 x 70: rest,,", "185 x 65")]
    [InlineData("decimal_mark,point,,", "decimal_mark,point,,\nswap_by,weight,,", "dry matter")]
    [InlineData("cakes, mediumweight", "cakes, mediumwieght", "cakes, mediumweight")]
    [InlineData("currency,EUR", "declare,vitamin Z", "vitamin")]
    [InlineData("currency,EUR", "other_amount,2 slices: 80,V2", "2 slices; 80")]
    [InlineData("currency,EUR", "other_amount,2 slices; 400,V2", "320 g")]
    [InlineData("currency,EUR", "other_amount,2 slices: 80,V1b", "2 slices; 80")]
    [InlineData("currency,EUR", "other_amount,2 slices; 400,V1b", "320 g")]
    [InlineData("currency,EUR", "symbol_artwork,6BH.eps,V1b", "beside the dessert or in its store")]
    [InlineData("currency,EUR", "emphasis,nuts: walnuts,V1", "an ingredient of V1")]
    [InlineData("currency,EUR", "additives,number,", "numbers")]
    [InlineData("currency,EUR", "compounds,shrt,", "short")]
    [InlineData("currency,EUR", "retention,cake; honey; honey bakked", "retention.csv")]
    public void Problems_WrongCell_IsNamedWithWhatWouldDo(string right, string wrong, string helps)
    {
        using TemporaryFolder folder = new();

        var problem = Assert.Single(LabelCells.Problems(Dessert.Open(Rewritten(folder, right, wrong))));

        Assert.Equal(("dessert.csv", "value"), (problem.File, problem.Column));
        Assert.True(problem.Row > 1);
        Assert.Contains(helps, problem.Expected, StringComparison.OrdinalIgnoreCase);
    }

    // A column that the law does not know, or that has no serving beside it, is left off in words.
    [Theory]
    [InlineData("currency,EUR", "other_amount,2 slices; 80,V2", "eu", "the rules eu have no column for another amount")]
    [InlineData("currency,EUR", "other_amount,2 slices; 80,V2", "ca", null)]
    [InlineData("portion_g,40,,", "other_amount,2 slices; 80,V2,", "ca", "none is stated (portion_g)")]
    public void OfRules_OtherAmountWithoutAColumn_IsSaid(string right, string written, string rules, string? expected)
    {
        using TemporaryFolder folder = new();
        string[] left = [.. LabelRemarks.OfRules(Dessert.Open(Rewritten(folder, right, written)), "V2", rules).Where(remark => remark.Contains("2 slices; 80", StringComparison.Ordinal))];

        if (expected is null) Assert.Empty(left);
        else Assert.Contains(expected, Assert.Single(left), StringComparison.Ordinal);
    }

    private static string Rewritten(TemporaryFolder folder, string right, string wrong)
    {
        foreach (var part in new[] { "store", "travel-loaf" })
        {
            Directory.CreateDirectory(Path.Combine(folder.Path, part));
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{part}"), "*.csv")) File.Copy(file, Path.Combine(folder.Path, part, Path.GetFileName(file)));
        }
        var sheet = Path.Combine(folder.Path, "travel-loaf", "dessert.csv");
        var text = File.ReadAllText(sheet);
        Assert.Contains(right, text, StringComparison.Ordinal);
        if (wrong.Contains("FR,", StringComparison.Ordinal)) wrong = $"\"{wrong}\"";
        File.WriteAllText(sheet, text.Replace(right, wrong, StringComparison.Ordinal));
        return Path.Combine(folder.Path, "travel-loaf");
    }
}
