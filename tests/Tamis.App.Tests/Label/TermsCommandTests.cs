using System.Diagnostics;
using Tamis.App.Terms;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.App.Tests.Label;

public class TermsCommandTests
{
    // A few terms in Dutch, from memory, and for all others the English text: what counts is that none is missing.
    private static readonly Dictionary<string, string> Dutch = new()
    {
        ["Nutrition declaration"] = "Voedingswaardevermelding", ["Energy"] = "Energie", ["Fat"] = "Vetten", ["of which saturates"] = "waarvan verzadigde vetzuren", ["Carbohydrate"] = "Koolhydraten",
        ["of which sugars"] = "waarvan suikers", ["Protein"] = "Eiwitten", ["Salt"] = "Zout", ["ingredients"] = "ingrediënten", ["."] = ",", ["wheat"] = "tarwe", ["rye"] = "rogge", ["milk"] = "melk",
    };

    private static SheetSettings Plain => new(DecimalMark: '.', DateOrder: DateOrder.YearMonthDay);

    private static void Change(string path, Func<Sheet, IReadOnlyList<string>> columns, Func<SheetRow, IReadOnlyList<string>> cells)
    {
        var sheet = SheetFile.Read(path, Plain);
        SheetWriter.Write(path, SheetDialect.Shipped, columns(sheet), sheet.Rows.Select(cells));
    }

    // As DEVELOPERS.md says: the command writes the file, a translator fills it in, and it goes into the folder of terms.
    [Fact]
    public void Run_SixthLanguage_DrawsALabelWithoutAMissingTerm()
    {
        using ScratchFolder scratch = new();
        foreach (var file in Directory.EnumerateFiles(KitFolder.DataRoot(), "*", SearchOption.AllDirectories).Where(file => !file.Contains($"{Path.DirectorySeparatorChar}records{Path.DirectorySeparatorChar}", StringComparison.Ordinal)))
        {
            var to = scratch[Path.Combine("data", Path.GetRelativePath(KitFolder.DataRoot(), file))];
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
        var loaf = scratch[Path.Combine("data", "desserts", "travel-loaf")];
        File.AppendAllLines(Path.Combine(loaf, "dessert.csv"), ["market,NL; EU; nl,,"]);
        Change(scratch[Path.Combine("data", "desserts", "store", "words.csv")], sheet => [.. sheet.Columns, "nl"], row => [.. row.Sheet.Columns.Select(column => row[column]), row["word"]]);

        Assert.Contains("a language that the rules have words for", Printed(scratch, loaf), StringComparison.Ordinal);
        using StringWriter said = new();
        var terms = scratch[Path.Combine("data", "rules", RuleTerms.FolderName, "nl.csv")];
        Assert.Equal(0, TermsCommand.Run("nl", ["eu"], terms, said));
        Change(terms, sheet => sheet.Columns, row => [.. row.Sheet.Columns.Select(column => column == "term" ? Dutch.GetValueOrDefault(row["english"], row["english"]) : row[column])]);

        var printed = Printed(scratch, loaf);

        Assert.DoesNotContain("Stops print", printed, StringComparison.Ordinal);
        Assert.Contains("Written:", printed, StringComparison.Ordinal);
        var drawing = string.Concat(Directory.EnumerateFiles(scratch["out"], "*.svg").Select(File.ReadAllText));
        Assert.All(["Voedingswaardevermelding", "Vetten", "Ingrediënten", "8,1"], words => Assert.Contains(words, drawing, StringComparison.Ordinal));
    }

    // The kit's data are found by a variable of the process, so it is a process of its own. No page is saved as PDF: what stands in for a browser knows nothing of pages.
    // It starts in a folder of this test: notebooks that other tests run move this process into folders of theirs, which may be gone before the program has started.
    private static string Printed(ScratchFolder scratch, string loaf)
    {
        ProcessStartInfo start = new("dotnet") { WorkingDirectory = scratch.Path, RedirectStandardOutput = true, RedirectStandardError = true, Environment = { [KitFolder.Variable] = scratch["data"], ["TAMIS_BROWSER"] = "dotnet" } };
        foreach (var argument in (string[])[typeof(TermsCommand).Assembly.Location, "label-drawing", loaf, "NL", "--trial", "V1b", "--out", scratch["out"]]) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var (said, failed) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        process.WaitForExit();
        return said.Result + failed.Result;
    }

    [Fact]
    public void Run_Twice_WritesNothingOver()
    {
        using ScratchFolder scratch = new();
        using StringWriter said = new();

        Assert.Equal(0, TermsCommand.Run("nl", ["gb"], scratch["nl.csv"], said));
        Assert.Equal(1, TermsCommand.Run("nl", ["gb"], scratch["nl.csv"], said));

        Assert.Contains("eu/panel-words.csv: 0 of ", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("is there already", said.ToString(), StringComparison.Ordinal);
        Assert.Equal(RuleTerms.Columns, SheetFile.Read(scratch["nl.csv"], Plain).Columns);
    }

    [Theory]
    [InlineData("Dutch", "eu", "the code of a language")]
    [InlineData("nl", "atlantis", "a rule set that the kit has: au-nz")]
    public void Run_WhatIsNone_IsSaidInWords(string language, string rules, string expected)
    {
        using ScratchFolder scratch = new();
        using StringWriter said = new();

        Assert.Equal(1, TermsCommand.Run(language, [rules], scratch["nl.csv"], said));
        Assert.Contains(expected, said.ToString(), StringComparison.Ordinal);
        Assert.False(File.Exists(scratch["nl.csv"]));
    }
}
