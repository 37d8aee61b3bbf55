using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class RuleSetTests
{
    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var file in Directory.EnumerateFiles(from)) File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
    }

    private static void Change(string path, string from, string to)
    {
        var text = File.ReadAllText(path);
        Assert.Contains(from, text);
        File.WriteAllText(path, text.Replace(from, to));
    }

    [Fact]
    public void Load_LinesThatStandWithNoneAndBracketsWithoutAContent_AreNamed()
    {
        using RuleFolderCopy copy = new();
        copy.Change("us", "declaration.csv", "if asked,monounsaturated fat,", "if asked,monosaturated fat,");
        Assert.Equal(("stands_with", "monosaturated fat"), Assert.Single(Assert.Throws<TableException>(() => copy.Load("us")).Problems) is var problem ? (problem.Column, problem.Found) : default);

        copy.Change("us", "declaration.csv", "(# mcg folic acid),FOLAC,folic acid; folacin; pteroylmonoglutamic acid", "(folic acid),,");
        Assert.Equal(["in_brackets", "in_brackets_content", "named_by"], Assert.Throws<TableException>(() => copy.Load("us")).Problems.Select(each => each.Column).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Load_ShippedFolder_HasAllSixRuleSets()
    {
        var sets = RuleSets.Load(LabelKit.Folder);

        Assert.Equal(["au-nz", "ca", "codex", "eu", "gb", "us"], sets.Select(set => set.Name));
        Assert.True(LabelKit.Us.IsPerServing);
        Assert.Equal(6.25, LabelKit.Eu.ProteinFactor);
        Assert.Contains(LabelKit.Us.Servings, serving => serving is { Category: "brownies", Quantity: "40" });
    }

    // Regulation (EU) No 1169/2011: seven mandatory figures (Article 30(1)), 27 vitamins and minerals (Annex XIII Part A), seven reference intakes (Annex XIII Part B).
    // 21 CFR 101.9(c): fifteen mandatory figures (FDA page on Daily Value).
    [Fact]
    public void Load_Shipped_HasAsManyRowsAsTheLawsTables()
    {
        Assert.Equal(7, LabelKit.Eu.Declaration.Where(figure => figure.IsMandatory).Select(figure => figure.Key).Distinct().Count());
        Assert.Equal(27, LabelKit.Eu.ReferenceValues.Count(value => value.Shown == PercentShown.Yes));
        Assert.Equal(7, LabelKit.Eu.ReferenceValues.Where(value => value.Shown != PercentShown.Yes).Select(value => value.Key).Distinct().Count());
        Assert.Equal(15, LabelKit.Us.Declaration.Count(figure => figure.IsMandatory));
    }

    // The tables of 21 CFR 101.9(c)(8)(iv) and (c)(9) were read; of Health Canada’s table all but three figures, which say so.
    [Fact]
    public void Load_DailyValues_SayWhichWereRead()
    {
        Assert.DoesNotContain(LabelKit.Us.ReferenceValues, value => value.Origin.IsFromMemory);
        Assert.Equal(["chloride", "chromium", "molybdenum"], LabelKit.Canada.ReferenceValues.Where(value => value.Origin.IsFromMemory).Select(value => value.Key).Order(StringComparer.Ordinal));
    }

    // Health Canada's notice NOM/ADM-DVQ-2022-1: potassium from 4700 to 3400 mg, which every label must follow from 1 January 2026. Tables without a dated row are the same on every day.
    [Theory]
    [InlineData("2025-12-31", 4700)]
    [InlineData("2026-01-01", 3400)]
    [InlineData(null, 3400)]
    public void AsOf_CanadasPotassium_IsTheDailyValueOfTheDay(string? day, double value)
    {
        var rules = LabelKit.Canada.AsOf(day is null ? null : DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture));

        Assert.Equal(value, Assert.Single(rules.ReferenceValues, row => row.Key == "potassium").Value);
        Assert.Same(LabelKit.Canada.Rounding, rules.Rounding);
        Assert.Same(LabelKit.Eu, LabelKit.Eu.AsOf(new(2026, 1, 1)));
    }

    [Fact]
    public void Load_EveryRow_NamesItsAct()
    {
        var origins = RuleSets.Load(LabelKit.Folder).SelectMany(set => set.Declaration.Select(row => row.Origin)
            .Concat(set.EnergyFactors.Select(row => row.Origin)).Concat(set.Rounding.Bands.Select(row => row.Origin))
            .Concat(set.ReferenceValues.Select(row => row.Origin)).Concat(set.Servings.Select(row => row.Origin)).Concat(set.SettingOrigins.Values)).ToArray();

        Assert.True(origins.Length > 350);
        Assert.All(origins, origin => Assert.True(origin.Locator.Length > 0 || origin.Strength is not RuleStrength.Guidance));
        // Guidance of the FDA was read itself; what was read as somebody else restates it says so.
        Assert.All(origins.Where(origin => origin.Strength == RuleStrength.Guidance), origin => Assert.True(origin.IsFromMemory || origin.Act.StartsWith("FDA", StringComparison.Ordinal) || origin.Note.StartsWith("read as", StringComparison.Ordinal)));
    }

    [Fact]
    public void Load_UnknownName_NamesTheNearest()
    {
        var error = Assert.Throws<KeyNotFoundException>(() => RuleSets.Load(LabelKit.Folder, "usa"));

        Assert.Contains("us", error.Message);
    }

    [Fact]
    public void Load_BasedOnAnother_TakesItsFilesAndSettingsButForWhatItStates()
    {
        using TemporaryFolder folder = new();
        Copy(Path.Combine(LabelKit.Folder, "eu"), Path.Combine(folder.Path, "eu"));
        var second = Directory.CreateDirectory(Path.Combine(folder.Path, "second")).FullName;
        File.WriteAllText(Path.Combine(second, "rule-set.csv"), "key,value,source,locator,strength,checked,note\nbased_on,eu,an act,1,law,text,\nname,Second,an act,1,law,text,\n");
        File.Copy(Path.Combine(second, "..", "eu", "energy-factors.csv"), Path.Combine(second, "energy-factors.csv"));
        Change(Path.Combine(second, "energy-factors.csv"), "FAT,,37,9", "FAT,,38,9");

        var rules = RuleSets.Load(folder.Path, "second");

        Assert.Equal("Second", rules.Title);
        Assert.Equal("eu", rules.Folder.Base?.Name);
        Assert.Equal(LabelKit.Eu.DeclarationTitle, rules.DeclarationTitle);
        Assert.Equal(38, rules.EnergyFactors.Single(factor => factor.Key == "fat").KilojoulesPerGram);
        Assert.Equal(LabelKit.Eu.Rounding.Bands.Count, rules.Rounding.Bands.Count);
    }

    [Theory]
    [InlineData("second")]
    [InlineData("nowhere")]
    public void Load_BasedOnItselfOrNothing_NamesTheCell(string other)
    {
        using TemporaryFolder folder = new();
        var second = Directory.CreateDirectory(Path.Combine(folder.Path, "second")).FullName;
        File.WriteAllText(Path.Combine(second, "rule-set.csv"), $"key,value,source,locator,strength,checked,note\nbased_on,{other},an act,1,law,text,\n");

        var problem = Assert.Single(Assert.Throws<TableException>(() => RuleSets.Load(folder.Path, "second")).Problems);

        Assert.Equal(("second/rule-set.csv", other), (problem.File, problem.Found));
    }

    // A third rule set is a folder and nothing else: no name of one stands in the code.
    [Fact]
    public void Load_AThirdFolder_IsAThirdRuleSet()
    {
        using TemporaryFolder folder = new();
        var third = Path.Combine(folder.Path, "atlantis");
        Copy(Path.Combine(LabelKit.Folder, "eu"), third);
        Change(Path.Combine(third, "rule-set.csv"), "name,European Union", "name,Atlantis");
        Change(Path.Combine(third, "energy-factors.csv"), "FAT,,37,9", "FAT,,38,9");

        var rules = RuleSets.Load(folder.Path, "atlantis");

        Assert.Equal("Atlantis", rules.Title);
        Assert.Equal("3800 kJ", NutritionPanel.Of(LabelKit.Foods(0, ("SR28 04582", 20)), rules, PanelBasis.Per100Grams).Line("energy").Declared);
        Assert.DoesNotContain(Directory.EnumerateFiles(Repository.Path("src", "Tamis", "Labels"), "*.cs"), file => File.ReadAllText(file) is var code && (code.Contains("\"eu\"") || code.Contains("\"us\"")));
    }

    [Fact]
    public void AsOf_ARowWithDays_IsInForceOnThoseDaysOnly()
    {
        using TemporaryFolder folder = new();
        var changed = Path.Combine(folder.Path, "changed");
        Copy(Path.Combine(LabelKit.Folder, "eu"), changed);
        var path = Path.Combine(changed, "reference-values.csv");
        var lines = File.ReadAllLines(path);
        File.WriteAllLines(path, lines.SelectMany((line, index) => index == 0 ? [line + ",in_force_from,in_force_to"]
            : line.StartsWith("fat,", StringComparison.Ordinal) ? [line + ",,2026-12-31", line.Replace("fat,g,70,", "fat,g,60,") + ",2027-01-01,"] : new[] { line + ",," }));

        var rules = RuleSet.Load(changed);

        Assert.Equal(70, rules.AsOf(new(2026, 12, 31)).Reference("fat", "g")!.Value);
        Assert.Equal(60, rules.AsOf(new(2027, 1, 1)).Reference("fat", "g")!.Value);
        Assert.Equal(60, rules.AsOf(null).Reference("fat", "g")!.Value);
    }

    [Fact]
    public void Load_BadCells_AreReportedAllAtOnce()
    {
        using TemporaryFolder folder = new();
        var broken = Path.Combine(folder.Path, "broken");
        Copy(Path.Combine(LabelKit.Folder, "eu"), broken);
        Change(Path.Combine(broken, "energy-factors.csv"), "FAT,,37,9", "FAT,,lots,9");
        Change(Path.Combine(broken, "declaration.csv"), ",0.0025 NA,", ",NA divided by 400,");
        Change(Path.Combine(broken, "rule-set.csv"), "ties,half up", "ties,half even");
        File.Delete(Path.Combine(broken, "reference-values.csv"));

        var problems = Assert.Throws<TableException>(() => RuleSet.Load(broken)).Problems;

        Assert.Contains(problems, problem => problem is { File: "broken/energy-factors.csv", Row: 2, Column: "kj_per_g", Found: "lots" });
        Assert.Contains(problems, problem => problem is { File: "broken/declaration.csv", Column: "content", Found: "NA divided by 400" });
        Assert.Contains(problems, problem => problem is { File: "broken/rule-set.csv", Column: "value", Found: "half even" });
        Assert.Contains(problems, problem => problem.File == "broken/reference-values.csv");
    }

    [Theory]
    [InlineData("fat,g,0.5,0,10,0", "fat,g,0.6,0,10,0", "the bands of 'fat' in g must join from 0 upwards; none takes 0.5")]
    [InlineData("fat,g,0.5,0,10,0", "fat,g,0.5,1,10,0", "the bands of 'fat' in g must join from 0 upwards; two take 0.5")]
    [InlineData("fat,g,10,1,,0", "fat,g,10,1,90,0", "the bands of 'fat' in g must join from 0 upwards; none takes more than 90")]
    [InlineData("fibre,g,", "fiber,g,", "bands are missing for 'fibre' in g, which declaration.csv has; is it the one called 'fiber'?")]
    public void Load_BandsThatDoNotJoin_AreReported(string from, string to, string expected)
    {
        using TemporaryFolder folder = new();
        var broken = Path.Combine(folder.Path, "broken");
        Copy(Path.Combine(LabelKit.Folder, "eu"), broken);
        Change(Path.Combine(broken, "rounding.csv"), $"\n{from}", $"\n{to}");

        Assert.Contains(expected, Assert.Throws<TableException>(() => RuleSet.Load(broken)).Problems.Select(problem => problem.Expected));
    }

    [Theory]
    [InlineData("FAT", true)]
    [InlineData("0.0025 NA", true)]
    [InlineData("CHOCDF - FIBTG - OA? | CHOAVLDF", true)]
    [InlineData("CHOCDF \u2212 FIBTG", true)]
    [InlineData("", false)]
    [InlineData("fat", false)]
    [InlineData("FAT FASAT", false)]
    [InlineData("FAT -", false)]
    [InlineData("FAT |", false)]
    [InlineData("NA / 400", false)]
    public void Parse_Formula_ReadsSumsOfTagsAndRefusesTheRest(string text, bool isFormula) => Assert.Equal(isFormula, ContentFormula.Parse(text) is not null);
}
