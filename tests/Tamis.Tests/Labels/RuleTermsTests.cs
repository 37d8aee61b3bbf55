using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

/// <summary>A language is added by one file beside the rule sets.</summary>
public class RuleTermsTests
{
    private static void Write(RuleFolderCopy copy, string language, IEnumerable<IReadOnlyList<string>> rows) =>
        SheetWriter.Write(Path.Combine(copy.Root, RuleTerms.FolderName, $"{language}.csv"), SheetDialect.Shipped, RuleTerms.Columns, rows);

    private static IReadOnlyList<string> Row(RuleTerm term, string said) => [term.File, term.Row, term.English, said, .. term.Origin];

    // The terms are made up for the test: what counts is that each stands where it belongs.
    [Fact]
    public void All_SixthLanguageInOneFile_LeavesNoTextWithoutATerm()
    {
        using RuleFolderCopy copy = new();
        var missing = RuleTerms.All(copy.Root, "nl", ["gb"]);
        Assert.All(missing, term => Assert.Null(term.Term));

        Write(copy, "nl", missing.Select(term => Row(term, $"nl {term.English}")));

        Assert.All(RuleTerms.All(copy.Root, "nl", ["gb"]), term => Assert.Equal($"nl {term.English}", term.Term));
        var rules = copy.Load("eu");
        Assert.Equal("nl Fat", PanelTerms.Of(rules).In("fat", "nl"));
        Assert.Equal("nl Fat", PanelTerms.Of(copy.Load("gb")).In("fat", "nl"));
        Assert.Equal("nl acid", LabelWords.Of(rules.Folder).In("acid", "nl"));
        Assert.Contains("nl", LabelWords.Of(rules.Folder).Languages);
        Assert.Equal("nl Best before", DateRules.Of(rules).Mark("best before")!.Wording["nl"]);
        Assert.All(ParticularRules.Of(rules).All, rule => Assert.Equal($"nl {rule.Wording["en"]}", rule.Wording["nl"]));
        Assert.Equal("nl Contains negligible amounts of #.", ShortPanelRules.Of(rules).Statements["nl"]);
        Assert.All(ShortPanelRules.Of(rules).Figures, row => Assert.StartsWith("nl ", row.Words["nl"], StringComparison.Ordinal));
        Assert.Equal("nl wheat", AllergenRules.Of(rules).Words.Print("wheat", "nl"));
        Assert.Equal("Fett", PanelTerms.Of(rules).In("fat", "de"));
    }

    // A term of the rule set's own file stands; a blank one is filled.
    [Fact]
    public void Over_CellThatIsFilled_IsKept()
    {
        using RuleFolderCopy copy = new();
        var german = RuleTerms.All(copy.Root, "de", ["eu"]).Single(term => term is { File: "eu/panel-words.csv", Row: "fat" });
        var french = RuleTerms.All(copy.Root, "fr", ["au-nz"]).Single(term => term is { File: "au-nz/particulars.csv", Row: "guarana" });

        Write(copy, "de", [Row(german, "Speck")]);
        Write(copy, "fr", [Row(french, "contient de la caféine")]);

        Assert.Equal("Fett", PanelTerms.Of(copy.Load("eu")).In("fat", "de"));
        Assert.Equal("contient de la caféine", ParticularRules.Of(copy.Load("au-nz")).All.Single(rule => rule.Name == "guarana").Wording["fr"]);
    }

    [Fact]
    public void Over_BadRows_AreNamedWithTheFileOfTheLanguage()
    {
        using RuleFolderCopy copy = new();
        Write(copy, "nl", [["eu/panel-words.csv", "fatt", "Fat", "Vet", "an act", "", "law", "from memory", ""], ["eu/panel-word.csv", "salt", "Salt", "Zout", "", "", "law", "from memory", ""]]);

        var problems = Assert.Throws<TableException>(() => PanelTerms.Of(copy.Load("eu"))).Problems;

        Assert.All(problems, problem => Assert.Equal("terms/nl.csv", problem.File));
        Assert.Contains(problems, problem => problem is { Row: 2, Column: "row", Found: "fatt" } && problem.Expected.Contains("near ones: fat", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem is { Row: 3, Column: "file", Found: "eu/panel-word.csv" });
        Assert.Contains(problems, problem => problem is { Row: 3, Column: "source" });
    }

    // A file with a column a language that is not in the list would be left out when a language is added.
    [Fact]
    public void Files_EveryFileWithAColumnALanguage_IsInTheList() =>
        Assert.All(Directory.EnumerateFiles(LabelKit.Folder, "*.csv", SearchOption.AllDirectories).Select(path => SheetFile.Read(path, new(DecimalMark: '.', DateOrder: DateOrder.YearMonthDay))).Where(sheet => sheet.Has("en") || sheet.Has("fr")),
            sheet => Assert.Contains(sheet.File, RuleTerms.Files));

    // A row that could not be told from another could not have a term of its own.
    [Fact]
    public void All_EveryRow_HasANameOfItsOwn() =>
        Assert.All(RuleTerms.All(LabelKit.Folder, "en", RuleSets.NamesIn(LabelKit.Folder)).GroupBy(term => (term.File, Names.Key(term.Row))), group => Assert.Single(group));
}
