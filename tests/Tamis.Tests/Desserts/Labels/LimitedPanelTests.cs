using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;
using Tamis.Tests.Labels;

namespace Tamis.Tests.Desserts.Labels;

/// <summary>Regulation (EU) No 1169/2011, Article 30(4) and (5): where no panel is asked for, one of few figures may stand.</summary>
public sealed class LimitedPanelTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // The paste has a document without salt: what is not printed need not be known.
    private Dessert Cake(params string[] rows)
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "store"));
        _folder.Write("store/ingredients.csv", "ingredient,food,allergens,label_name\nflour,SR28 20080,wheat,wheat flour\nsugar,SR28 19335,none,sugar\nbutter,SR28 01145,milk,butter\npaste,,none,paste\n");
        _folder.Write("store/specifications.csv", "ingredient,document,energy_kj,energy_kcal,fat_g,saturates_g,carbohydrate_g,sugars_g,protein_g,fibre_g,alcohol_g,polyols_g,organic_acids_g\npaste,a sheet,1000,239,1,0.5,55,50,1,2,0,0,0\n");
        _folder.Write("formula.csv", "component,line,T1\nsponge,flour,60\nsponge,sugar,40\nsponge,butter,50\nsponge,paste,50\n");
        _folder.Write("dessert.csv", string.Join('\n', ["key,value", "name,A cake", "market,IE; EU; en", "market,DE; EU; de", "surface_cm2,150", .. rows]) + "\n");
        _folder.Write("store/words.csv", "word,de\nA cake,Ein Kuchen\nwheat flour,Weizenmehl\nwheat,Weizen\nsugar,Zucker\nbutter,Butter\nmilk,Milch\npaste,Paste\n");
        return Dessert.Open(_folder.Path);
    }

    private static string[] Printed(Dessert cake, string rules = "eu")
    {
        var leftOff = DessertPanels.LeftOffOf(cake, "T1", rules);
        return [.. DessertPanels.ColumnsOf(cake, "T1", rules).Columns[0].Lines.Select(line => line.Key).Distinct().Where(key => leftOff?.IsLeftOff(key) != true)];
    }

    [Theory]
    [InlineData("eu", "loose", "energy alone", "energy")]
    [InlineData("gb", "loose", "energy alone", "energy")]
    [InlineData("eu", "packed on the premises for direct sale", "energy + 4", "energy; fat; saturates; sugars; salt")]
    [InlineData("eu", "prepacked", "energy alone", "energy; fat; saturates; carbohydrate; sugars; fibre; protein; salt")]
    [InlineData("eu", "loose", "full", "energy; fat; saturates; carbohydrate; sugars; fibre; protein; salt")]
    [InlineData("codex", "loose", "energy alone", null)]
    public void LeftOffOf_FormOfSale_DecidesWhetherFewFiguresStand(string rules, string sold, string form, string? expected)
    {
        var cake = Cake($"form_of_sale,{sold}", $"panel_form,{form}");

        if (expected is null) Assert.Contains("no such panel", TrialLimitedPanel.Asked(cake, "T1", KitData.Rules(rules))!.Because, StringComparison.Ordinal);
        else Assert.Equal(expected, string.Join("; ", Printed(cake, rules)));
    }

    [Fact]
    public void Asked_Prepacked_SaysForWhatItIs() =>
        Assert.Contains("only for what is sold loose or packed on the premises for direct sale, and it is sold prepacked (Regulation (EU) No 1169/2011", TrialLimitedPanel.Asked(Cake("form_of_sale,prepacked", "panel_form,energy + 4"), "T1", KitData.Rules("eu"))!.Because, StringComparison.Ordinal);

    // Article 16(4): a drink of more than 1.2 % by volume; exactly 1.2 % is not more.
    [Theory]
    [InlineData("beverages", "1.2", false)]
    [InlineData("beverages", "1.3", true)]
    [InlineData("desserts", "12", false)]
    public void Offered_AlcoholicDrink_HasEnergyAlone(string category, string percent, bool isOffered)
    {
        var offered = TrialLimitedPanel.Offered(Cake("form_of_sale,prepacked", $"food_category,{category}", $"alcohol_percent_vol,{percent}"), "T1", KitData.Rules("eu"));

        Assert.Equal(isOffered ? ["energy alone"] : [], offered.Select(row => row.Form));
    }

    [Fact]
    public void Offered_Claim_AsksForTheFullPanel()
    {
        var cake = Cake("form_of_sale,loose", "panel_form,energy alone", "claim,source of fibre");

        Assert.Empty(TrialLimitedPanel.Offered(cake, "T1", KitData.Rules("eu")));
        Assert.Contains("the pack makes a nutrition claim (source of fibre)", TrialLimitedPanel.Asked(cake, "T1", KitData.Rules("eu"))!.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void ColumnsOf_UnknownFigureThatIsNotPrinted_IsNoDraft()
    {
        Assert.Contains(DessertPanels.ColumnsOf(Cake("form_of_sale,loose", "panel_form,energy + 4"), "T1", "eu").DraftReasons, reason => reason.StartsWith("salt:", StringComparison.Ordinal));

        var columns = DessertPanels.ColumnsOf(Cake("form_of_sale,loose", "panel_form,energy alone"), "T1", "eu");

        Assert.Empty(columns.DraftReasons);
        Assert.Empty(columns.Missing);
        Assert.False(columns.IsDraftIn(columns.Columns[0]));
        Assert.True(columns.Columns[0].IsDraft);
    }

    // 'of which sugars' has no meaning where no carbohydrate stands above it; saturates stand under fat.
    [Fact]
    public void ContentOf_SugarsWithoutCarbohydrate_StandAlone()
    {
        var lines = DessertLabel.ContentOf(Cake("form_of_sale,loose", "panel_form,energy + 4"), "T1", "IE; DE").Panel?.Lines;

        // The panel is a draft and none is asked for, so it is left off; with a document that states salt it stands.
        Assert.Null(lines);
        File.WriteAllText(Path.Combine(_folder.Path, "store", "specifications.csv"), "ingredient,document,energy_kj,energy_kcal,fat_g,saturates_g,carbohydrate_g,sugars_g,protein_g,fibre_g,alcohol_g,polyols_g,organic_acids_g,salt_g\npaste,a sheet,1000,239,1,0.5,55,50,1,2,0,0,0,0.1\n");
        lines = DessertLabel.ContentOf(Dessert.Open(_folder.Path), "T1", "IE; DE").Panel!.Lines;

        Assert.Equal([("Energy / Energie", 0), ("Fat / Fett", 0), ("of which saturates / davon gesättigte Fettsäuren", 1), ("Sugars / Zucker", 0), ("Salt / Salz", 0)], lines.Select(line => (line.Term, line.Indent)));
    }

    [Fact]
    public void SectionsOf_FewFigures_FreezesThemAndWhichAreLeftOff()
    {
        var sections = LabelRecords.SectionsOf(Cake("form_of_sale,loose", "panel_form,energy alone"), "T1", "eu", "en").ToDictionary(section => section.Title);

        Assert.Equal(["energy, kJ, per 100 g", "energy, kcal, per 100 g"], sections["Nutrition panel"].Rows.Select(row => row.Key));
        Assert.Equal(("the panel is", "energy alone"), (sections["What the nutrition panel leaves off"].Rows[0].Key, sections["What the nutrition panel leaves off"].Rows[0].Text));
        Assert.Contains(sections["What the nutrition panel leaves off"].Rows, row => row is { Key: "protein", Text: "left off: the panel is energy alone" } && row.Source.Contains("Article 30(5)(a)", StringComparison.Ordinal));
    }

    [Fact]
    public void Figures_FewFigures_SayWhichAreNotPrintedAndWhy()
    {
        var figures = PanelExport.Figures(Cake("form_of_sale,loose", "panel_form,energy alone"), "T1", "eu");

        Assert.Equal(["energy"], figures.Where(figure => !figure.IsLeftOff).Select(figure => figure.Figure).Distinct());
        Assert.All(figures.Where(figure => figure.IsLeftOff), figure => Assert.Equal(("", true), (figure.InItsPlace, figure.LeftOffSource.Contains("Article 30(5)", StringComparison.Ordinal))));
        Assert.All(figures, figure => Assert.False(figure.IsDraft));
    }

    [Fact]
    public void PanelForm_ThatIsNone_NamesTheCellAndTheForms() => Assert.Equal("dessert.csv, row 6, column 'value': found 'energy', expected one of: full, short, energy alone, energy + 4.",
        Assert.Single(Assert.Throws<TableException>(() => DessertPanels.ColumnsOf(Cake("panel_form,energy"), "T1", "eu")).Problems).ToString());

    [Fact]
    public void Of_BadRows_AreNamedAllAtOnce()
    {
        using RuleFolderCopy copy = new();
        copy.Append("eu", "limited-panel.csv", "few,,,,strength_percent,about,ten,,some,,,an act,1,law,text,\n");

        string[] columns = [.. Assert.Throws<TableException>(() => LimitedPanels.Of(copy.Load("eu"))).Problems.Select(problem => problem.Column).Order()];

        Assert.Equal(["claims", "figures", "limit", "sold", "test", "unit"], columns);
    }
}
