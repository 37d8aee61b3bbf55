using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class ReservedNameTests
{
    private static readonly Source Sheet = new("ingredients.csv", Evidence.Supplier);
    private static readonly Source Record = new("USDA SR28", Evidence.Published);
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));

    private static NamedFood Food(string? list, Source source, params (string Term, double Value)[] stated) =>
        new("a food", term => stated.Where(each => each.Term == term).Select(each => (StatedFigure?)new StatedFigure((decimal)each.Value, source)).FirstOrDefault(), list);

    private static NameCheck Check(string name, string? list, Source source, params (string, double)[] stated) => ReservedNames.Of(LabelKit.Eu)[name].Check(Food(list, source, stated));

    // Directive 2000/36/EC, Annex I A.3(a): 35 % cocoa solids, 18 % cocoa butter, 14 % fat-free cocoa solids.
    [Theory]
    [InlineData(35, 18, NameVerdict.Allowed)]
    [InlineData(34.9, 18, NameVerdict.Refused)]
    [InlineData(35, 17.9, NameVerdict.Refused)]
    [InlineData(52.1, 38.1, NameVerdict.Allowed)]
    [InlineData(52.1, 38.2, NameVerdict.Refused)]
    public void Check_Chocolate_HangsOnAllThreeMinima(double cocoa, double butter, NameVerdict expected) =>
        Assert.Equal(expected, Check("dark chocolate", "cocoa mass, sugar", Sheet, ("cocoa_percent", cocoa), ("cocoa_butter_percent", butter)).Verdict);

    [Fact]
    public void Check_UnknownFigure_CannotBeSaidAndNamesTheColumn()
    {
        var check = Check("chocolate", "cocoa mass", Sheet, ("cocoa_percent", 60));

        Assert.Equal(NameVerdict.CannotBeSaid, check.Verdict);
        Assert.Contains(check.Supply, each => each.Contains("cocoa_butter_percent", StringComparison.Ordinal));
    }

    [Fact]
    public void Check_OtherFatInItsList_IsRefused() =>
        Assert.Equal(["palm kernel"], Assert.Single(Check("chocolate", "sugar, cocoa mass, palm kernel fat", Sheet, ("cocoa_percent", 60), ("cocoa_butter_percent", 30)).Conditions, each => each.Holds == false).Listed);

    // A food table's butter has 16.2 % water: it is another butter than the one that was bought.
    [Fact]
    public void Check_FailingFigureOfARecord_AsksForItsOwnFigure()
    {
        var check = Check("butter", null, Record, ("milk_fat_percent", 81.1), ("WATER", 16.2), ("milk_solids_not_fat_percent", 1.5));

        Assert.Equal(NameVerdict.CannotBeSaid, check.Verdict);
        Assert.Contains("water_g", Assert.Single(check.Supply), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("chocolate chips", "chocolate")]
    [InlineData("White chocolate and honey bar", "white chocolate; honey")]
    [InlineData("cocoa-flavoured chips", "")]
    [InlineData("peanut butter", "")]
    [InlineData("cocoa butter", "cocoa butter")]
    [InlineData("Butternut cake", "")]
    [InlineData("chocolates", "chocolate")]
    public void In_Text_FindsTheLongestNameAndNothingThatMeansSomethingElse(string text, string expected) =>
        Assert.Equal(expected, string.Join("; ", ReservedNames.Of(LabelKit.Eu).In(text).Select(each => each.Name.Name)));

    // Regulation (EU) No 1308/2013, Annex VII Part III, 5: the word is kept for milk products, whatever stands before it, unless the food has it by traditional usage.
    [Theory]
    [InlineData("vegetable cream", "cream")]
    [InlineData("plant cream", "cream")]
    [InlineData("whipped vegetable cream", "cream")]
    [InlineData("coconut cream", "")]
    [InlineData("cream of tartar", "")]
    public void In_CreamOfPlants_IsTheReservedName(string text, string expected) =>
        Assert.All((RuleSet[])[LabelKit.Eu, LabelKit.Gb], rules => Assert.Equal(expected, string.Join("; ", ReservedNames.Of(rules).In(text).Select(each => each.Name.Name))));

    // Directive 2001/113/EC as amended by Directive (EU) 2024/1438: 350 g until 13 June 2026, 450 g from then on.
    [Theory]
    [InlineData("2026-06-13", 400, NameVerdict.Allowed)]
    [InlineData("2026-06-14", 400, NameVerdict.Refused)]
    [InlineData("2026-06-14", 450, NameVerdict.Allowed)]
    public void Of_Day_DecidesWhichMinimumOfJamCounts(string day, double fruit, NameVerdict expected) =>
        Assert.Equal(expected, ReservedNames.Of(LabelKit.Eu, DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture))["jam"].Check(Food(null, Sheet, ("fruit_g_kg", fruit), ("brix", 60))).Verdict);

    [Fact]
    public void Check_JamInBakeryWares_IsNotBound() =>
        Assert.Equal(NameVerdict.DoesNotBind, ReservedNames.Of(LabelKit.Eu)["jam"].Check(Food(null, Sheet, ("fruit_g_kg", 200)) with { UsedIn = "fine bakery wares" }).Verdict);

    [Fact]
    public void Of_ChocolateChipsInTheName_AreRefusedForTheCompoundChip()
    {
        var printed = Assert.Single(TrialNames.Of(Loaf, "V2", "eu"), each => each.Text == "chocolate chips");

        Assert.Equal(NameVerdict.Refused, printed.Verdict);
        Assert.Equal("cocoa-flavoured chips", printed.Checks[0].Food);
        Assert.Contains("specifications.csv", printed.Checks[0].Conditions[0].From[0].Figure.Source.Key, StringComparison.Ordinal);
        Assert.Equal((14m, -21m), (printed.Checks[0].Conditions[0].Value, printed.Checks[0].Conditions[0].Margin));
    }

    [Fact]
    public void Of_Tart_AllowsItsDarkChocolate()
    {
        var printed = TrialNames.Of(Tart, "T10", "eu");

        Assert.Equal(NameVerdict.Allowed, Assert.Single(printed, each => each.Text == "dark chocolate").Verdict);
        Assert.DoesNotContain(printed, each => each.Verdict == NameVerdict.Refused);
    }

    [Fact]
    public void Of_EveryRuleSet_ReadsItsNames() => Assert.All(RuleSets.Load(LabelKit.Folder), set => Assert.NotEmpty(ReservedNames.Of(set).All));

    [Fact]
    public void Of_BadCells_AreNamedAllAtOnce()
    {
        using TemporaryFolder folder = new();
        foreach (var file in Directory.EnumerateFiles(LabelKit.Folder)) File.Copy(file, Path.Combine(folder.Path, Path.GetFileName(file)));
        var own = Directory.CreateDirectory(Path.Combine(folder.Path, "own")).FullName;
        foreach (var file in Directory.EnumerateFiles(Path.Combine(LabelKit.Folder, "eu"))) File.Copy(file, Path.Combine(own, Path.GetFileName(file)));
        var path = Path.Combine(own, ReservedNames.File);
        File.WriteAllText(path, File.ReadAllText(path).Replace(",cocoa_solids_percent,at least,35,", ",cocoa_solid_percent,about,lots,", StringComparison.Ordinal));
        File.AppendAllText(Path.Combine(folder.Path, "name-figures.csv"), "bad,bad,35 % of it,nothing,an act,1,law,text,\n");

        var problems = Assert.Throws<TableException>(() => ReservedNames.Of(RuleSet.Load(own))).Problems;

        Assert.Contains(problems, problem => problem is { Column: "figure", Found: "cocoa_solid_percent" } && problem.Expected.Contains("cocoa_solids_percent", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem is { Column: "test", Found: "about" });
        Assert.Contains(problems, problem => problem is { Column: "limit", Found: "lots" });
        Assert.Contains(problems, problem => problem is { Column: "from", Found: "35 % of it" });
    }

    [Fact]
    public void Indexer_UnknownName_NamesTheNearest() => Assert.Contains("chocolate", Assert.Throws<KeyNotFoundException>(() => ReservedNames.Of(LabelKit.Eu)["chocolat"]).Message, StringComparison.Ordinal);
}
