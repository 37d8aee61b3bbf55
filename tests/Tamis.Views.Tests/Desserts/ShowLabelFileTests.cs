using Tamis.Desserts;

namespace Tamis.Views.Tests;

public sealed class ShowLabelFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-label-").FullName;
    private readonly string _loaf;

    public ShowLabelFileTests()
    {
        foreach (var name in (string[])["store", "travel-loaf"])
        {
            Directory.CreateDirectory(Path.Combine(_folder, name));
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{name}"), "*.csv")) File.Copy(file, Path.Combine(_folder, name, Path.GetFileName(file)));
        }
        _loaf = Path.Combine(_folder, "travel-loaf");
    }

    private Dessert Loaf => Dessert.Open(_loaf);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Change(string file, string from, string to)
    {
        var path = Path.Combine(_folder, file);
        var text = File.ReadAllText(path);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(from, to, StringComparison.Ordinal));
    }

    // An auditor prints it: what is folded away is not on paper.
    [Fact]
    public void PanelWorking_EveryFigure_StandsOpenWithCellsFoodsRuleAndPrintedText()
    {
        var page = Show.PanelWorking(Loaf, "V1b", "eu");

        Assert.DoesNotContain("<details><summary>", page.Markup, StringComparison.Ordinal);
        Assert.Contains("What salt is summed from", page.Markup, StringComparison.Ordinal);
        Assert.All(["formula.csv, row 6, column V1b", "SR28, food 02047", "100 /", "Annex XV", "nearest 0.01 g", "0.46 g"], words => Assert.Contains(words, page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public void PanelCertainty_NoSpread_OffersNoChance()
    {
        var page = Show.PanelCertainty(Loaf, "V1b", "eu").ToPlainText();

        Assert.Contains("not known", page, StringComparison.Ordinal);
        Assert.Contains("Nobody stated how weighing, drying and trimming vary", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Official sample", page, StringComparison.Ordinal);
    }

    [Fact]
    public void PanelCertainty_CompositeSample_HasAColumnOfItsOwn() => Assert.Contains("puts 12 packs of one make together", Show.PanelCertainty(Loaf, "V1b", "us").ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void PanelCertainty_BadFigureOfTheKitchen_NamesTheCell()
    {
        File.AppendAllText(Path.Combine(_loaf, "dessert.csv"), "weighing_g,two,,\n");

        Assert.Contains("found 'two', expected a number of 0 or more", Show.PanelCertainty(Loaf, "V1b", "eu").ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void PanelOverTrials_AllTrials_ShowsPrintedTextOverTheAmount()
    {
        var page = Show.PanelOverTrials(Loaf, "eu").Markup;

        Assert.All(["V1", "V1b", "V2", "V3", "salt 0.46 g"], words => Assert.Contains(words, page, StringComparison.Ordinal));
        Assert.Contains("0.4611 g", page, StringComparison.Ordinal);
    }

    [Fact]
    public void PackChanges_Reformulation_NamesWhatIsPrintedOtherwise()
    {
        var page = Show.PackChanges(Loaf, "V1", "V1b", "eu").ToPlainText();

        Assert.Contains("fibre, g, per 100 g", page, StringComparison.Ordinal);
        Assert.Contains("Claims: source of fibre", page, StringComparison.Ordinal);
    }

    [Fact]
    public void RecordDifferences_EditAfterwards_ShowsTheCellThenAndNow()
    {
        LabelRecords.Sign(Loaf, "V1b", "eu", "en", "P1", new(2026, 6, 12));
        Assert.Contains("Nothing that it rests on has changed since", Show.RecordDifferences(Loaf, "V1b-eu-en-2026-06-12").ToPlainText(), StringComparison.Ordinal);
        Change("travel-loaf/formula.csv", "cake,salt,,1,5,5,5,5", "cake,salt,,1,5,9,5,5");

        var page = Show.RecordDifferences(Loaf, "V1b-eu-en-2026-06-12.json").ToPlainText();

        Assert.Contains("the file is as it was signed", page, StringComparison.Ordinal);
        Assert.Contains("formula.csv, row 6, column V1b", page, StringComparison.Ordinal);
        Assert.Contains("printed texts are another", page, StringComparison.Ordinal);
    }

    [Fact]
    public void RecordDifferences_FileChangedByHand_IsNamed()
    {
        LabelRecords.Sign(Loaf, "V1b", "eu", "en", "P1", new(2026, 6, 12));
        Change("travel-loaf/records/V1b-eu-en-2026-06-12.json", "\"0.46 g", "\"0.40 g");

        Assert.Contains("V1b-eu-en-2026-06-12.json: the file was changed after it was signed", Show.LabelRecords(Loaf).ToPlainText(), StringComparison.Ordinal);
    }

    // Regulation (EU) No 1169/2011, Article 16(2): a face under 10 cm2 tells of allergens and has no list.
    [Fact]
    public void IngredientList_PackTooSmallForIt_SaysWhatStandsInItsPlace()
    {
        Assert.DoesNotContain("too small", Show.IngredientList(Loaf, "V1b", "eu").ToPlainText(), StringComparison.Ordinal);
        Change("travel-loaf/dessert.csv", "box_mm,185 x 75 x 65", "box_mm,40 x 24 x 20");

        var page = Show.IngredientList(Loaf, "V1b", "eu").ToPlainText();

        Assert.Contains("The pack is too small for the list", page, StringComparison.Ordinal);
        Assert.Contains("In its place the pack says: Contains: ", page, StringComparison.Ordinal);
        Assert.Contains("Article 16(2)", page, StringComparison.Ordinal);
    }

    [Fact]
    public void PanelsCompared_RulesOfADay_SayWhichDay()
    {
        Assert.DoesNotContain("rules of", Show.PanelsCompared(Loaf, "V1b", "eu", "ca").ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("31 December 2025", Show.PanelsCompared(Loaf.ByRulesOf(new(2025, 12, 31)), "V1b", "eu", "ca").ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void RecordDifferences_NoSuchRecord_NamesThoseThatAreThere()
    {
        LabelRecords.Sign(Loaf, "V1b", "eu", "en", "P1", new(2026, 6, 12));

        Assert.Contains("V1b-eu-en-2026-06-12.json", Show.RecordDifferences(Loaf, "V2-eu-en").ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void RecordDifferences_RecordFromBeforeParticulars_SaysThatTheyAreNotInIt()
    {
        Directory.CreateDirectory(Path.Combine(_loaf, "records"));
        var shipped = Assert.Single(Directory.EnumerateFiles(KitFolder.Data("desserts/travel-loaf/records")));
        var old = Tamis.Labels.LabelRecord.FromJson(File.ReadAllText(shipped));
        File.WriteAllText(Path.Combine(_loaf, "records", Path.GetFileName(shipped)), (old with { Sections = [.. old.Sections.TakeWhile(section => section.Title != "Particulars")] }).Sealed().ToJson());

        var page = Show.LabelRecords(Loaf).ToPlainText();

        Assert.Contains("Not in this record, which was signed before the kit wrote it down: particulars, statements, front of pack", page, StringComparison.Ordinal);
    }

    [Fact]
    public void RecordDifferences_AddressIsEdited_NamesItsCellAndCountsItAsPrinted()
    {
        LabelRecords.Sign(Loaf, "V1b", "eu", "en", "P1", new(2026, 6, 12));
        Change("travel-loaf/dessert.csv", "4 Mill Lane", "5 Mill Lane");
        var row = Loaf.Facts.RowsOf("business", "V1b").Single().Row.Number;

        var page = Show.RecordDifferences(Loaf, "V1b-eu-en-2026-06-12").ToPlainText();

        Assert.Contains("Particulars: name and address", page, StringComparison.Ordinal);
        Assert.Contains($"on the pack; dessert.csv, row {row}", page, StringComparison.Ordinal);
        Assert.Contains("1 printed text is another", page, StringComparison.Ordinal);
    }
}
