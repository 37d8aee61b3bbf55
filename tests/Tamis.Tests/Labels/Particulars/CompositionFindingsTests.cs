using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Tests.Labels;

/// <summary>Names and additives that the composition does not bear keep a label from signature and print.</summary>
public sealed class CompositionFindingsTests : IDisposable
{
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));
    private readonly TemporaryFolder _folder = new();

    public CompositionFindingsTests()
    {
        foreach (var part in new[] { "store", "travel-loaf" })
        {
            Directory.CreateDirectory(Path.Combine(_folder.Path, part));
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{part}"), "*.csv")) File.Copy(file, Path.Combine(_folder.Path, part, Path.GetFileName(file)));
        }
        Assert.Empty(LabelRecords.Hindrances(Loaf, "V1b", "eu", "en"));
        Assert.DoesNotContain(DessertLabel.DrawnFaces(Loaf, "V1b", "IE"), face => face.IsDraft);
    }

    public void Dispose() => _folder.Dispose();

    private Dessert Loaf => Dessert.Open(Path.Combine(_folder.Path, "travel-loaf"));

    private void Change(string file, string from, string to)
    {
        var path = Path.Combine(_folder.Path, file);
        var text = File.ReadAllText(path);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(from, to, StringComparison.Ordinal));
    }

    private void BothSay(string market, string rules, params string[] words)
    {
        var (signed, drawn) = (string.Join('\n', LabelRecords.Hindrances(Loaf, "V1b", rules, "en")), string.Join('\n', DessertLabel.DrawnFaces(Loaf, "V1b", market).SelectMany(face => face.DraftReasons)));
        foreach (var word in words)
        {
            Assert.Contains(word, signed, StringComparison.Ordinal);
            Assert.Contains(word, drawn, StringComparison.Ordinal);
        }
    }

    // Directive 2001/110/EC asks 40 mg/kg of hydroxymethylfurfural at most; a food table has none, and so the supplier's document is what the name rests on.
    [Theory]
    [InlineData("honey,pack label,,2026-05-04,honey,", "honey,pack label,,2026-05-04,,")]
    [InlineData("honey,pack label,,2026-05-04,honey,", "honey,own estimate,,2026-05-04,honey,")]
    [InlineData("honey,pack label,,2026-05-04,honey,", "honey,pack label,,2026-05-04,bees' syrup; honey flavour,")]
    public void Hindrances_NameWithoutFigureOrDocument_StopBothWithWhatToSupply(string from, string to)
    {
        Change("store/specifications.csv", from, to);

        if (to.Contains("syrup", StringComparison.Ordinal)) Assert.Contains("in the name of the dessert", string.Join('\n', LabelRecords.Hindrances(Loaf, "V1b", "eu", "en")), StringComparison.Ordinal);
        else BothSay("IE", "eu", "'honey' in the label name of honey", "'honey' in the name of the dessert", "hmf_mg_kg", "under legal_name");
    }

    // Regulation (EU) No 1308/2013, Annex VII Part VII: butter has 80 % of milk fat. A figure of the kitchen's own sheet is stronger than the name on a document.
    [Fact]
    public void Hindrances_RefusedNameInTheList_StopBothWhateverTheDocumentCallsIt()
    {
        Change("store/ingredients.csv", "butter,SR28 01145,,,0.92,100,butter,milk,,,,,,,81.1,", "butter,SR28 01145,,,0.92,100,butter,milk,,,,,,,75,");

        BothSay("IE", "eu", "butter may not be called 'butter'", "75 %", "at least 80 %", "print a name that says what it is");
    }

    // Regulation (EC) No 1333/2008, Annex II, 07.2: 2,000 mg/kg of sorbic acid. 10 g in some 1,960 g are over it, if all of it is that.
    [Fact]
    public void Hindrances_OwnAdditiveThatMayBeOverItsLimit_StopsBoth()
    {
        File.AppendAllText(Path.Combine(_folder.Path, "store/ingredients.csv"), "potassium sorbate,,,,,100,potassium sorbate,none,,preservative,E 202,,,,,,,,invented\n");
        Change("travel-loaf/formula.csv", "cake,salt,,1,5,5,5,5,", "cake,salt,,1,5,5,5,5,\ncake,potassium sorbate,,1,0,10,0,0,");

        BothSay("IE", "eu", "E 202", "2000 mg/kg", "would be over the limit");
    }

    // 21 CFR parts 73 and 74 list no vegetable carbon.
    [Fact]
    public void Hindrances_AdditiveThatIsNotPermitted_StopsTheMarketThatForbidsIt()
    {
        Assert.Contains(LabelRecords.Hindrances(Tart, "T12", "us", "en"), reason => reason.Contains("E 153, vegetable carbon, of vegetable carbon is not permitted", StringComparison.Ordinal));
        Assert.DoesNotContain(LabelRecords.Hindrances(Tart, "T12", "eu", "en"), reason => reason.Contains("E 153", StringComparison.Ordinal));
    }

    // The claim is 'chocolate chips'; the chips are none. The drawing prints no claims, so only the signature hangs on it.
    [Fact]
    public void Hindrances_ClaimWithANameThatTheFoodMayNotBear_StopsTheSignature()
    {
        Assert.Contains(LabelRecords.Hindrances(Loaf, "V2", "ca", "en"), reason => reason.Contains("may not be called 'chocolate' in a claim", StringComparison.Ordinal));
        Assert.DoesNotContain(DessertLabel.DrawnFaces(Loaf, "V2", "CA").SelectMany(face => face.DraftReasons), reason => reason.Contains("chocolate", StringComparison.Ordinal));
    }

    // No supplier states how much polyglycerol polyricinoleate is in the chips: that stays open in the record and stops nothing.
    [Fact]
    public void OfAdditives_CarriedInWithoutAnAmount_IsOpenAndRecorded()
    {
        var open = Assert.Single(CompositionFindings.OfAdditives(Loaf, "V2", "eu"), each => each.Key.Contains("E 476", StringComparison.Ordinal));

        Assert.Equal(("cannot be said", false), (open.Verdict, open.Stops));
        Assert.Contains(LabelRecords.SectionsOf(Loaf, "V2", "eu", "en").Single(section => section.Title == "Names and additives").Rows, row => row.Key == open.Key && row.Text.Contains("from the supplier", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(RuleStrength.Law, true)]
    [InlineData(RuleStrength.Guidance, false)]
    [InlineData(RuleStrength.Convention, false)]
    public void Of_RuleThatIsNoLaw_StopsNothing(RuleStrength strength, bool stops)
    {
        var check = TrialParticulars.Additives(Tart, "T12", "us").Single(each => each.Use.Additive.Number == "E 153");
        var level = check.Level! with { Origin = check.Level!.Origin with { Strength = strength } };
        var name = TrialNames.Of(Loaf, "V2", "eu").First(each => each.Verdict == NameVerdict.Refused);
        var reserved = name.Checks[0] with { Conditions = [.. name.Checks[0].Conditions.Select(each => each with { Condition = each.Condition with { Origin = each.Condition.Origin with { Strength = strength } } })] };

        Assert.Equal(stops, CompositionFindings.Of(check with { Level = level }).Stops);
        Assert.Equal(stops, CompositionFindings.Of(name with { Checks = [reserved] }, null).Stops);
    }

    // A name that is another food's in one law is no name of this one: cocoa butter is neither butter nor cocoa.
    [Theory]
    [InlineData("us")]
    [InlineData("ca")]
    [InlineData("au-nz")]
    [InlineData("codex")]
    public void OfNames_CocoaButter_IsNeitherButterNorCocoa(string rules) =>
        Assert.DoesNotContain(CompositionFindings.OfNames(Tart, "T12", rules), each => each.Key.EndsWith("the label name of cocoa butter", StringComparison.Ordinal));

    [Fact]
    public void Hindrances_NameIsChangedAfterwards_StandsAsADifference()
    {
        LabelRecords.Sign(Loaf, "V1b", "eu", "en", "P1", new(2026, 6, 1));
        Change("store/specifications.csv", "honey,pack label,,2026-05-04,honey,", "honey,pack label,,2026-05-04,,");

        var loaf = Loaf;
        Assert.Contains(LabelRecords.Since(loaf, LabelRecords.Of(loaf)[0].Record), each => each.Section == "Names and additives" && each.Then.StartsWith("by the supplier’s word", StringComparison.Ordinal) && each.Now.StartsWith("cannot be said", StringComparison.Ordinal));
    }
}
