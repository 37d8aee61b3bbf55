using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public sealed class LabelRecordTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 6, 1);
    private readonly TemporaryFolder _folder = new();
    private readonly string _loaf;

    public LabelRecordTests()
    {
        Copy(Repository.Path("data", "desserts", "store"), Path.Combine(_folder.Path, "store"));
        Copy(Repository.Path("data", "desserts", "travel-loaf"), _loaf = Path.Combine(_folder.Path, "travel-loaf"));
        // V1b is the version whose claim holds.
        Assert.Empty(LabelRecords.Hindrances(Dessert.Open(_loaf), "V1b", "eu", "en"));
    }

    public void Dispose() => _folder.Dispose();

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var file in Directory.EnumerateFiles(from, "*.csv")) File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
    }

    private void Change(string file, string from, string to)
    {
        var path = Path.Combine(_folder.Path, file);
        var text = File.ReadAllText(path);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(from, to, StringComparison.Ordinal));
    }

    [Fact]
    public void Sign_Whole_IsReadAgainUnchangedAndWithoutDifferences()
    {
        LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);

        var (file, record) = Assert.Single(LabelRecords.Of(Dessert.Open(_loaf)));

        Assert.Equal("V1b-eu-en-2026-06-01.json", file);
        Assert.True(record.IsUnchanged);
        Assert.Empty(LabelRecords.Since(Dessert.Open(_loaf), record));
    }

    [Theory]
    [InlineData("business", "Missing: name and address of the business")]
    [InlineData("name", "Missing: name of the food")]
    [InlineData("net_g", "Missing: net quantity")]
    [InlineData("lot", "Missing: lot")]
    [InlineData("date_kind", "Missing: date")]
    [InlineData("form_of_sale", "How it is sold is not known")]
    public void Sign_WithoutWhatTheFormOfSaleAsksFor_IsRefused(string key, string expected)
    {
        var path = Path.Combine(_loaf, "dessert.csv");
        File.WriteAllLines(path, File.ReadAllLines(path).Where(line => !line.StartsWith($"{key},", StringComparison.Ordinal)));

        Assert.StartsWith(expected, Assert.Single(LabelRecords.Hindrances(Dessert.Open(_loaf), "V1b", "eu", "en")), StringComparison.Ordinal);
    }

    [Fact]
    public void Since_LaterEdits_NameTheCellAndWhatIsPrintedOtherwise()
    {
        LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        Change("travel-loaf/formula.csv", "cake,salt,,1,5,5,5,5", "cake,salt,,1,5,9,5,5");
        Change("store/ingredients.csv", "caster sugar,SR28 19335,,,0.85,100,sugar,none", "caster sugar,SR28 19335,,,0.85,100,cane sugar,none");

        var differences = LabelRecords.Since(Dessert.Open(_loaf), LabelRecords.Of(Dessert.Open(_loaf))[0].Record);

        Assert.Contains(differences, difference => difference is { Section: "Formula", Then: "5", Now: "9" } && difference.Source.Contains("formula.csv", StringComparison.Ordinal));
        Assert.Contains(differences, difference => difference is { Section: "Nutrition panel", IsPrinted: true } && difference.Key.StartsWith("salt", StringComparison.Ordinal));
        Assert.Contains(differences, difference => difference.Section == "List of ingredients" && difference.Now.Contains("cane sugar", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("net_g,320", "net_g,310", "net quantity", "320 g", "310 g")]
    [InlineData("Rye, honey and citrus travel loaf", "Rye and honey travel loaf", "name of the food", "Rye, honey and citrus travel loaf", "Rye and honey travel loaf")]
    [InlineData("date_kind,best before", "date_kind,use by", "date mark", "Best before", "use by")]
    [InlineData("cool and dry, below 22 °C", "cool and dry, below 18 °C", "storage", "cool and dry, below 22 °C", "cool and dry, below 18 °C")]
    [InlineData("4 Mill Lane", "5 Mill Lane", "name and address", "Peel and Rye, 4 Mill Lane, Nowhere", "Peel and Rye, 5 Mill Lane, Nowhere")]
    [InlineData("L 0412", "L 0413", "lot", "L 0412", "L 0413")]
    public void Since_ParticularIsEdited_NamesItsCellAndThatThePackIsAnother(string from, string to, string key, string then, string now)
    {
        LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        Change("travel-loaf/dessert.csv", from, to);

        var difference = Assert.Single(Since(), each => each.Section == "Particulars");

        Assert.Equal((key, then, now, true), (difference.Key, difference.Then, difference.Now, difference.IsPrinted));
        Assert.StartsWith("dessert.csv, row ", difference.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Since_StatementIsTriggeredAfterwards_NamesItsWordsAndItsRule()
    {
        LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        File.AppendAllText(Path.Combine(_loaf, "dessert.csv"), "thawed,yes,,\n");

        var difference = Assert.Single(Since(), each => each.Section == "Statements");

        Assert.Equal(("", true), (difference.Then, difference.IsPrinted));
        Assert.StartsWith("defrosted", difference.Now, StringComparison.Ordinal);
        Assert.Contains("1169/2011", difference.Source, StringComparison.Ordinal);
    }

    // Salt in 100 g goes from 0.46 g over 1.5 g: amber becomes red.
    [Fact]
    public void Since_ColourOfTheFrontIsAnother_NamesBothWithTheRule()
    {
        LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "gb", "en", "P1", Day);
        Change("travel-loaf/formula.csv", "cake,salt,,1,5,5,5,5", "cake,salt,,1,5,30,5,5");

        var difference = Assert.Single(Since(), each => each.Section == "Front of pack");

        Assert.Equal(("amber", "red", true), (difference.Then, difference.Now, difference.IsPrinted));
        Assert.Contains("front of pack", difference.Source, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("form_of_sale,prepacked", "form_of_sale,loose", "form_of_sale")]
    [InlineData("shelf_days,60", "shelf_days,120", "shelf_days")]
    [InlineData("shelf_days,60", "shelf_days,120", "how the date is written")]
    public void Since_WhatAParticularRestsOnIsEdited_IsNamed(string from, string to, string key)
    {
        LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        Change("travel-loaf/dessert.csv", from, to);

        Assert.Contains(Since(), each => each.Section == "What the particulars rest on" && each.Key == key && !each.IsPrinted);
    }

    private IReadOnlyList<RecordDifference> Since() => LabelRecords.Since(Dessert.Open(_loaf), LabelRecords.Of(Dessert.Open(_loaf))[0].Record);

    [Theory]
    [InlineData("net_g,320", "net_g,400", "the pack says 400 g")]
    [InlineData("date_kind,best before", "date_kind,eat soon", "'eat soon' is no date mark")]
    public void Hindrances_ParticularThatStopsRelease_KeepsTheLabelFromBeingSigned(string from, string to, string why)
    {
        Change("travel-loaf/dessert.csv", from, to);

        Assert.Contains(LabelRecords.Hindrances(Dessert.Open(_loaf), "V1b", "eu", "en"), hindrance => hindrance.Contains(why, StringComparison.Ordinal));
    }

    [Fact]
    public void Hindrances_StorageWithoutATerm_AsksForTheTerm()
    {
        Change("travel-loaf/dessert.csv", "cool and dry, below 22 °C", "in a tin");

        Assert.Contains("there is no term for 'in a tin' in the language 'fr'", string.Join('\n', LabelRecords.Hindrances(Dessert.Open(_loaf), "V1b", "eu", "fr")), StringComparison.Ordinal);
    }

    [Fact]
    public void Sealed_ALineTwice_IsRefusedBecauseItCouldNotBeReadAgain()
    {
        LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        var record = LabelRecords.Of(Dessert.Open(_loaf))[0].Record;

        Assert.Throws<InvalidOperationException>(() => (record with { Sections = [.. record.Sections, record.Sections[0]] }).Sealed());
    }

    [Fact]
    public void Of_FileChangedByHand_IsFoundOut()
    {
        var path = LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        File.WriteAllText(path, File.ReadAllText(path).Replace("\"P1\"", "\"P2\"", StringComparison.Ordinal));

        Assert.False(LabelRecords.Of(Dessert.Open(_loaf))[0].Record.IsUnchanged);
    }

    [Fact]
    public void Of_FileThatIsNoRecord_IsNamed()
    {
        Directory.CreateDirectory(Path.Combine(_loaf, "records"));
        File.WriteAllText(Path.Combine(_loaf, "records", "notes.json"), "{ \"product\": 3 }");

        Assert.Equal("notes.json", Assert.Single(Assert.Throws<TableException>(() => LabelRecords.Of(Dessert.Open(_loaf))).Problems).File);
    }

    [Fact]
    public void Sign_Twice_IsRefusedAndTheFirstStands()
    {
        var path = LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        var first = File.ReadAllText(path);

        Assert.Throws<InvalidOperationException>(() => LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P2", Day));

        Assert.Equal(first, File.ReadAllText(path));
    }

    // V1 asks for a claim that fails; the American panel lacks added sugars; French lacks words for V3.
    [Theory]
    [InlineData("V1", "eu", "en", "source of fibre")]
    [InlineData("V3", "eu", "fr", "apricot puree")]
    public void Sign_Draft_IsRefusedWithEveryReasonAndWritesNothing(string trial, string rules, string language, string reason)
    {
        var error = Assert.Throws<InvalidOperationException>(() => LabelRecords.Sign(Dessert.Open(_loaf), trial, rules, language, "P1", Day));

        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_loaf, "records")));
    }

    [Fact]
    public void Sign_WithoutAName_IsRefused() => Assert.Throws<InvalidOperationException>(() => LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", " ", Day));

    // A line that the kit does not know, or one that stands twice, could hide what was signed.
    [Theory]
    [InlineData("\"signer\": \"P1\",", "\"signer\": \"P1\",\n  \"approved\": true,")]
    [InlineData("\"signer\": \"P1\",", "\"signer\": \"P1\",\n  \"signer\": \"P2\",")]
    [InlineData("\"trial\": \"V1b\",", "\"trial\": null,")]
    [InlineData("\"title\": \"Documents\"", "\"title\": \"Formula\"")]
    public void Of_FileWithMoreOrLessThanARecord_IsNoRecord(string from, string to)
    {
        var path = LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        Change(Path.Combine("travel-loaf", "records", Path.GetFileName(path)), from, to);

        Assert.Equal(Path.GetFileName(path), Assert.Single(Assert.Throws<TableException>(() => LabelRecords.Of(Dessert.Open(_loaf))).Problems).File);
    }

    // The demo's own record, invented as the loaf is: it stays readable and sealed, whatever sheets and rules become.
    [Fact]
    public void Of_ShippedRecord_IsAsItWasSigned()
    {
        var loaf = Dessert.Open(Repository.Path("data", "desserts", "travel-loaf"));

        var (_, record) = Assert.Single(LabelRecords.Of(loaf));

        Assert.True(record.IsUnchanged);
        Assert.Contains("candied orange peel 12\u00a0%", record.Sections.Single(section => section.Title == "List of ingredients").Rows[0].Text, StringComparison.Ordinal);
        Assert.DoesNotContain(LabelRecords.Since(loaf, record), difference => difference.IsNotInRecord);
        Assert.All(LabelRecords.Since(loaf, record), difference => Assert.NotEqual(difference.Then, difference.Now));
    }

    // 21 CFR 101.9(b)(8)(i): what the panel says of servings is signed and exported as it is printed. 320 g hold 5.82 servings of 55 g.
    [Fact]
    public void Sections_CountOfServings_IsAsItIsPrinted()
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        folder.Write("store/ingredients.csv", "ingredient,food,allergens,label_name\nflour,SR28 20080,wheat,whole wheat flour\n");
        folder.Write("formula.csv", "component,line,T1\nwafer,flour,100\n");
        folder.Write("dessert.csv", "key,value\nname,Flour wafer\nnet_g,320\nportion_g,55\nportion_word,wafer\n");
        var wafer = Dessert.Open(folder.Path);

        var rows = LabelRecords.SectionsOf(wafer, "T1", "us", "en").Single(section => section.Title == "Serving on the nutrition panel");

        Assert.True(rows.IsPrinted);
        string[] printed = ["About 6 servings per container", "Serving size 1 wafer (55 g)"];
        Assert.Equal(printed, rows.Rows.Select(row => row.Text.Replace('\u00a0', ' ')));
        Assert.All(PanelExport.Figures(wafer, "T1", "us"), figure => Assert.Equal(printed, figure.Serving));
    }

    // As if it was signed before particulars and front of pack were written down: nobody can say from it whether those have changed.
    [Fact]
    public void Since_RecordWithoutLaterSections_SaysThatTheyAreNotInIt()
    {
        var loaf = Dessert.Open(Repository.Path("data", "desserts", "travel-loaf"));

        var record = Assert.Single(LabelRecords.Of(loaf)).Record;
        var missing = LabelRecords.Since(loaf, record with { Sections = [.. record.Sections.TakeWhile(section => section.Title != "Particulars")] }).Where(difference => difference.IsNotInRecord).ToArray();

        Assert.Equal(
            ["Particulars", "Statements", "Front of pack", "What the particulars rest on", "Figures of the front of pack", "Names and additives", "Further columns of the nutrition panel", "What the nutrition panel leaves off", "List of ingredients by other means", "Serving on the nutrition panel"],
            missing.Select(difference => difference.Section));
        Assert.All(missing, difference => Assert.False(difference.IsPrinted));
    }

    // Every column that is printed is frozen: the portion beside 100 g, and for a short panel what stands in place of its figures.
    [Fact]
    public void Sign_ShortPanelOfTwoColumns_FreezesBothAndWhatIsLeftOff()
    {
        foreach (var (name, text) in new[] { ("dessert.csv", "key,value\nname,Sweet\nportion_g,8\nportion_word,sweet\npanel_form,short\nform_of_sale,prepacked\n"), ("formula.csv", "component,line,T1\nsweet,sugar,100\n"), ("store/ingredients.csv", "ingredient,food,allergens,label_name\nsugar,SR28 19335,none,sugar\n") })
        {
            var path = Path.Combine(_folder.Path, "sweet", name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }
        var sections = LabelRecords.SectionsOf(Dessert.Open(Path.Combine(_folder.Path, "sweet")), "T1", "eu", "en").ToDictionary(section => section.Title);

        Assert.All(sections["Further columns of the nutrition panel"].Rows, row => Assert.EndsWith("per portion (1 sweet, 8 g)", row.Key, StringComparison.Ordinal));
        Assert.DoesNotContain(sections["Nutrition panel"].Rows.Concat(sections["Further columns of the nutrition panel"].Rows), row => row.Key.StartsWith("fat,", StringComparison.Ordinal));
        Assert.Equal("Contains negligible amounts of fat, saturates, protein and salt.", sections["What the nutrition panel leaves off"].Rows.Single(row => row.Key == "in its place").Text);
        Assert.Contains(sections["What the nutrition panel leaves off"].Rows, row => row is { Key: "fat", Text: "left off: fat declared as 0" });
        Assert.True(sections["What the nutrition panel leaves off"].IsPrinted);
    }

    // A figure that is left off later is gone from the pack, and what stands in its place is new.
    [Fact]
    public void Since_PanelBecomesShortLater_SaysWhatIsPrintedOtherwise()
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "sweet", "store"));
        string Sweet(string name) => Path.Combine(_folder.Path, "sweet", name);
        File.WriteAllText(Sweet("store/ingredients.csv"), "ingredient,food,allergens,label_name\nsugar,SR28 19335,none,sugar\n");
        File.WriteAllText(Sweet("formula.csv"), "component,line,T1\nsweet,sugar,100\n");
        File.WriteAllText(Sweet("dessert.csv"), "key,value\nname,Sweet\nform_of_sale,prepacked\n");
        var then = LabelRecords.SectionsOf(Dessert.Open(Sweet("")), "T1", "eu", "en");
        File.AppendAllText(Sweet("dessert.csv"), "panel_form,short\n");

        var differences = RecordDifference.Between(then, LabelRecords.SectionsOf(Dessert.Open(Sweet("")), "T1", "eu", "en"));

        Assert.Contains(differences, difference => difference is { Section: "Nutrition panel", IsPrinted: true, Key: "fat, g, per 100 g", Now: "" });
        Assert.Contains(differences, difference => difference is { Section: "What the nutrition panel leaves off", IsPrinted: true, Key: "in its place", Then: "" });
        Assert.DoesNotContain(differences, difference => difference.IsNotInRecord);
    }

    [Fact]
    public void Sign_PanelFormIsNeither_NamesTheCell()
    {
        File.AppendAllLines(Path.Combine(_loaf, "dessert.csv"), ["panel_form,shrt,,"]);
        Assert.Contains("expected one of: full, short", Assert.Throws<TableException>(() => LabelRecords.Hindrances(Dessert.Open(_loaf), "V1b", "eu", "en")).Message, StringComparison.Ordinal);
    }

    // Regulation (EU) No 1169/2011, Article 16(2): under 10 cm2 the pack tells of allergens, and the list is given by other means. The record has both, and both are held against what is there now.
    [Fact]
    public void Sign_PackTooSmallForAList_FreezesWhatIsPrintedAndTheListByOtherMeans()
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "sweet", "store"));
        string Sweet(string name) => Path.Combine(_folder.Path, "sweet", name);
        File.WriteAllText(Sweet("store/ingredients.csv"), "ingredient,food,allergens,label_name\nsugar,SR28 19335,none,sugar\nbutter,SR28 01145,milk,butter\n");
        File.WriteAllText(Sweet("formula.csv"), "component,line,T1\nsweet,sugar,60\nsweet,butter,40\n");
        void Pack(string surface) => File.WriteAllText(Sweet("dessert.csv"), $"key,value\nname,Sweet\nnet_g,8\nform_of_sale,prepacked\nsurface_cm2,{surface}\n");
        IReadOnlyList<RecordSection> Now() => LabelRecords.SectionsOf(Dessert.Open(Sweet("")), "T1", "eu", "en");
        RecordRow[] RowsOf(IReadOnlyList<RecordSection> sections, string title) => [.. sections.Single(section => section.Title == title).Rows];

        Pack("10");
        var large = Now();
        Pack("9.9");
        var small = Now();
        File.WriteAllText(Sweet("formula.csv"), "component,line,T1\nsweet,sugar,40\nsweet,butter,60\n");
        var otherOrder = RecordDifference.Between(small, Now());
        File.WriteAllText(Sweet("store/ingredients.csv"), "ingredient,food,allergens,label_name\nsugar,SR28 19335,none,sugar\nbutter,SR28 01145,none,butter\n");
        var otherAllergens = RecordDifference.Between(small, Now());

        Assert.Equal("list", RowsOf(large, "List of ingredients")[0].Key);
        Assert.Empty(RowsOf(large, "List of ingredients by other means"));
        Assert.Equal(("in place of the list", "Contains: milk."), (RowsOf(small, "List of ingredients")[0].Key, RowsOf(small, "List of ingredients")[0].Text));
        Assert.Contains("Article 16(2)", RowsOf(small, "List of ingredients")[0].Source, StringComparison.Ordinal);
        Assert.DoesNotContain(RowsOf(small, "List of ingredients"), row => row.Key == "list");
        Assert.Equal(RowsOf(large, "List of ingredients")[0].Text, Assert.Single(RowsOf(small, "List of ingredients by other means")).Text);
        Assert.Contains(otherOrder, difference => difference is { Section: "List of ingredients by other means", IsPrinted: false, Key: "list" } && difference.Now.StartsWith("Ingredients: butter", StringComparison.Ordinal));
        Assert.DoesNotContain(otherOrder, difference => difference.Section == "List of ingredients");
        Assert.Contains(otherAllergens, difference => difference is { Section: "List of ingredients", IsPrinted: true, Key: "in place of the list", Then: "Contains: milk." });
    }

    // A record by the rules of a day that was asked for is held against the rules of that day; a sheet that names another day later makes no difference to it.
    [Fact]
    public void Since_SignedByTheRulesOfADay_IsHeldAgainstThatDay()
    {
        LabelRecords.Sign(Dessert.Open(_loaf).ByRulesOf(new(2026, 6, 13)), "V1b", "eu", "en", "P1", Day);
        var record = LabelRecords.Of(Dessert.Open(_loaf))[0].Record;

        Assert.Contains(record.Sections.Single(section => section.Title == "What the particulars rest on").Rows, row => row == new RecordRow("rules_day", "2026-06-13", "asked for when it was signed"));
        Assert.Empty(LabelRecords.Since(Dessert.Open(_loaf), record));
        File.AppendAllLines(Path.Combine(_loaf, "dessert.csv"), ["rules_day,2026-07-01,,"]);
        Assert.Empty(LabelRecords.Since(Dessert.Open(_loaf), record));
        Assert.Contains(LabelRecords.Since(Dessert.Open(_loaf), record with { Sections = LabelRecords.SectionsOf(Dessert.Open(_loaf).ByRulesOf(null), "V1b", "eu", "en") is var now ? [.. now.Select(section => section with { Rows = [.. section.Rows.Select(row => row.Key == "rules_day" ? row with { Text = "2026-06-30" } : row)] })] : [] }),
            difference => difference is { Key: "rules_day", Then: "2026-06-30", Now: "2026-07-01" });
    }

    [Fact]
    public void Since_TrialOrRulesAreGone_SaysSo()
    {
        LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        var record = LabelRecords.Of(Dessert.Open(_loaf))[0].Record;

        Assert.Equal(("trial", "V9", ""), Assert.Single(LabelRecords.Since(Dessert.Open(_loaf), record with { Trial = "V9" })) is var trial ? (trial.Key, trial.Then, trial.Now) : default);
        Assert.Equal(("rule set", "atlantis", ""), Assert.Single(LabelRecords.Since(Dessert.Open(_loaf), record with { Rules = "atlantis" })) is var rules ? (rules.Key, rules.Then, rules.Now) : default);
    }

    // Blanks and line ends are no content.
    [Fact]
    public void Of_FileWithOtherLineEnds_IsUnchanged()
    {
        var path = LabelRecords.Sign(Dessert.Open(_loaf), "V1b", "eu", "en", "P1", Day);
        File.WriteAllText(path, File.ReadAllText(path).Replace("\n", "\r\n", StringComparison.Ordinal));

        Assert.True(LabelRecords.Of(Dessert.Open(_loaf))[0].Record.IsUnchanged);
    }

    [Fact]
    public void WriteNew_FileIsThere_LeavesItAsItIs()
    {
        var path = Path.Combine(_folder.Path, "once.json");
        TextFile.WriteNew(path, "first");

        Assert.Throws<IOException>(() => TextFile.WriteNew(path, "second"));

        Assert.Equal("first", File.ReadAllText(path));
        Assert.DoesNotContain(Directory.EnumerateFiles(_folder.Path), file => file.EndsWith(".part", StringComparison.Ordinal));
    }
}
