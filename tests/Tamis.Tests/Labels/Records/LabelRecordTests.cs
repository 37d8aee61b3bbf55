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
        Assert.All(LabelRecords.Since(loaf, record), difference => Assert.NotEqual(difference.Then, difference.Now));
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
