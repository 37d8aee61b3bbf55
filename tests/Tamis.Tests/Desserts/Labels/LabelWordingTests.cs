using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public class LabelWordingTests
{
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));

    // French sets a space that does not break before a colon, and no other language of the kit does.
    [Theory]
    [InlineData("en", false)]
    [InlineData("fr", true)]
    [InlineData("de", false)]
    [InlineData("it", false)]
    public void Colon_OfALanguage_IsTheSameInListStatementAndDate(string language, bool isSpaced)
    {
        var list = Loaf.IngredientList("V1", "eu", language);
        var date = DessertLabel.ContentOf(Loaf, "V1", language switch { "en" => "IE", "fr" => "FR", "de" => "DE", _ => "IT" }).Languages.First(each => each.Language == language)
            .Paragraphs.Select(paragraph => string.Concat(paragraph.Runs.Select(run => run.Text)));
        string[] texts = [list.Text, string.Concat(list.MayContainStatement.Select(run => run.Text)), string.Concat(list.InPlaceOfList.Select(run => run.Text)), .. date];
        char[] before = [.. texts.SelectMany(text => text.Select((letter, at) => (letter, at)).Where(each => each.letter == ':' && each.at > 0).Select(each => text[each.at - 1]))];

        Assert.True(before.Length > 5);
        Assert.True(list.Text.Count(letter => letter == ':') > 1);
        Assert.All(before, letter => Assert.Equal(isSpaced, letter == '\u00a0'));
    }

    [Fact]
    public void Colon_InFrenchWordsOfTheRules_HasItsSpace()
    {
        var cells = Directory.EnumerateFiles(Repository.Path("data", "rules"), "*.csv", SearchOption.AllDirectories)
            .Select(path => SheetFile.Read(path, new(DecimalMark: '.', DateOrder: DateOrder.YearMonthDay))).Where(sheet => sheet.Has("fr")).SelectMany(sheet => sheet.Rows.Select(row => row["fr"])).Where(cell => cell.Contains(':', StringComparison.Ordinal)).ToArray();

        Assert.NotEmpty(cells);
        Assert.All(cells, cell => Assert.DoesNotMatch("[^\u00a0]:", cell));
    }

    // The name of a country alone says nothing; what says by itself that it is the origin is left as it is.
    [Theory]
    [InlineData("eu", "en", "Ireland", "Origin: Ireland")]
    [InlineData("gb", "en", "Ireland", "Origin: Ireland")]
    [InlineData("eu", "fr", "Irlande", "Origine\u00a0: Irlande")]
    [InlineData("eu", "de", "Australien", "Ursprung: Australien")]
    [InlineData("eu", "de", "aus Irland", "Aus Irland")]
    [InlineData("eu", "fr", "Produit d’Irlande", "Produit d’Irlande")]
    [InlineData("us", "en", "Ireland", "Product of Ireland")]
    [InlineData("us", "en", "Made in Ireland", "Made in Ireland")]
    [InlineData("ca", "fr", "Irlande", "Origine\u00a0: Irlande")]
    [InlineData("codex", "en", "Ireland", "Country of origin: Ireland")]
    [InlineData("au-nz", "en", "Product of Ireland", "Product of Ireland")]
    public void Origin_IsPrintedAndRecordedWithItsWords(string rules, string language, string origin, string expected)
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        File.WriteAllText(Path.Combine(folder.Path, "store", "ingredients.csv"), "ingredient,food,allergens,label_name\nsugar,SR28 19335,none,sugar\n");
        File.WriteAllText(Path.Combine(folder.Path, "store", "words.csv"), $"word,fr,de\nsugar,sucre,Zucker\nSugar work,travail de sucre,Zuckerarbeit\n{origin},{origin},{origin}\n");
        File.WriteAllText(Path.Combine(folder.Path, "trials.csv"), "trial,parent,made_on\nT1,,2026-11-01\n");
        File.WriteAllText(Path.Combine(folder.Path, "formula.csv"), "component,line,T1\nsugar work,sugar,200\n");
        File.WriteAllText(Path.Combine(folder.Path, "dessert.csv"), $"key,value\nname,Sugar work\nmarket,XX; {rules}; {language}\nform_of_sale,loose\nportion_g,40\nnet_g,200\nbox_mm,100 x 60 x 40\norigin,{origin}\n");
        var dessert = Dessert.Open(folder.Path);

        var printed = DessertLabel.ContentOf(dessert, "T1", "XX").Languages.SelectMany(each => each.Paragraphs).Select(paragraph => string.Concat(paragraph.Runs.Select(run => run.Text)));
        var recorded = LabelRecords.SectionsOf(dessert, "T1", rules, language).SelectMany(section => section.Rows).Single(row => row.Key == "origin");

        Assert.Single(printed, text => text == expected);
        Assert.Equal(expected, recorded.Text);
    }
}
