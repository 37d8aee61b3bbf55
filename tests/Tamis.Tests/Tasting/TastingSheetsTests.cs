using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class TastingSheetsTests
{
    [Fact]
    public void Read_WholeSheets_GivesEveryMarkWithItsCell()
    {
        var log = new TastingTexts().Read();

        Assert.Equal(4, log.Tasted.Count);
        var score = log.Scores.Single(one => one.Serving is { Assessor: "A01", Code: "454" } && one.Attribute.Name == "sweetness");
        Assert.Equal(7.2, score.Points);
        Assert.Equal("T1", score.Serving.Trial);
        Assert.Equal(2, score.Serving.Make);
        Assert.Equal("scores.csv, row 2, column sweetness", score.Origin.ToString());
        Assert.Equal("set like a jelly; too firm", Assert.Single(log.Remarks).Text);
        Assert.Equal([1], log.MakesOf("t2"));
    }

    [Fact]
    public void Read_BlankAndZero_AreApart()
    {
        var log = new TastingTexts().Read();

        Assert.Equal([7.2, 6.4, 0], log.Scores.Where(score => score.Attribute.Name == "sweetness").Select(score => score.Points));
    }

    [Fact]
    public void Read_NoneAndBlankWords_AreApart()
    {
        var log = new TastingTexts().Read();

        Assert.Equal([["nutty", "bread crust"], [], ["jammy"]], log.Ticks.Select(ticks => ticks.Words));
    }

    [Fact]
    public void Read_AttributeBlankForAWholeTasting_WasNotAsked()
    {
        var log = new TastingTexts
        {
            Scores = "tasting,assessor,code,sweetness,liking,sweetness right,terms\nS1,A01,454,7,,,\nS1,A01,717,6,,,\n",
        }.Read();

        Assert.True(log.Asked("S1", log.Attribute("sweetness")!));
        Assert.False(log.Asked("S1", log.Attribute("liking")!));
        Assert.False(log.Asked("S1", log.Attribute("terms")!));
    }

    [Fact]
    public void Read_ServingWithoutARow_WasNotTasted()
    {
        var log = new TastingTexts { Scores = "tasting,assessor,code,sweetness,liking,sweetness right,terms\nS1,A01,454,7,,,\nS1,A02,454,,,,\n" }.Read();

        Assert.Equal([("A01", "717"), ("A02", "717")], log.NotTasted.Select(serving => (serving.Assessor, serving.Code)));
        Assert.Equal(2, log.Tasted.Count);
    }

    [Fact]
    public void Read_SemicolonsAndDecimalComma_MeansTheSame()
    {
        var texts = new TastingTexts();
        var german = texts with
        {
            Scores = "tasting;assessor;code;sweetness;liking;sweetness right;terms;remark\nS1;A01;454;7,2;6;4;\"nutty; bread crust\";x\nS1;A01;717;6,4;5,5;3;none;\nS1;A02;717;;4;2;;\nS1;A02;454;0;3;3;jammy;\n",
        };

        Assert.Equal(texts.Read().Scores.Select(score => score.Points), german.Read().Scores.Select(score => score.Points));
    }

    [Fact]
    public void Read_OtherSpellings_AreOneName()
    {
        var log = new TastingTexts
        {
            Trials = ["T1", "T2"],
            Servings = "Tasting,Assessor,Position,Code,Trial\nS1,A01,1,454,t1\ns1,a01,2,717,T2\n",
            Scores = "tasting,assessor,code,Sweetness,LIKING,sweetness_right,terms\nS1,a01,454,7,,,\ns1,A01,717,6,,,\n",
        }.Read();

        Assert.Equal([("S1", "A01", "T1"), ("S1", "A01", "T2")], log.Tasted.Select(serving => (serving.Tasting, serving.Assessor, serving.Trial)));
        Assert.Equal(2, log.Scores.Count);
    }

    [Fact]
    public void Read_UnknownColumn_IsKeptAndNamed()
    {
        var log = new TastingTexts { Scores = new TastingTexts().Scores.Replace("remark", "weather", StringComparison.Ordinal) }.Read();

        Assert.Equal(["weather"], log.UnknownColumns);
    }

    [Fact]
    public void Read_ColumnNearlyAnAttribute_IsRefused()
    {
        new TastingTexts { Scores = new TastingTexts().Scores.Replace("liking", "likeing", StringComparison.Ordinal) }.Read(out var problems);

        Assert.Equal("scores.csv, column 'likeing': no attribute is called so; 'liking' of attributes.csv has no column here, so write the name the same way in both.", Assert.Single(problems));
    }

    [Theory]
    [InlineData("S1,A01,454,11,,,", "scores.csv, row 2, column 'sweetness': found '11', expected a number from 0 to 10, the scale of attributes.csv.")]
    [InlineData("S1,A01,454,NA,,,", "scores.csv, row 2, column 'sweetness': found 'NA', expected a number from 0 to 10, or a blank where it was not scored.")]
    [InlineData("S1,A01,454,,,2.5,", "scores.csv, row 2, column 'sweetness right': found '2.5', expected a whole number from 1 to 5, the scale of attributes.csv.")]
    [InlineData("S1,A01,500,7,,,", "scores.csv, row 2, column 'code': found '500', expected a code that A01 was served in S1: 454, 717.")]
    [InlineData("S1,A09,454,7,,,", "scores.csv, row 2, column 'assessor': found 'A09', expected an assessor of this tasting in servings.csv; the nearest is 'A01' or 'A02'.")]
    [InlineData("S9,A01,454,7,,,", "scores.csv, row 2, column 'tasting': found 'S9', expected a tasting of servings.csv: S1.")]
    [InlineData("S1,A01,454,7,,,nuty", "scores.csv, row 2, column 'terms': found 'nuty', expected words of attributes.csv parted by '; ', or none where nothing fitted; the nearest is 'nutty'.")]
    [InlineData("S1,A01,454,7,,,\nS1,A01,454,6,,,", "scores.csv, row 3, column 'code': found '454', expected each code once for an assessor in a tasting; A01 has it in row 2 already; 717 has no row yet.")]
    public void Read_BadScore_SaysWhatToMend(string rows, string sentence)
    {
        new TastingTexts { Scores = $"tasting,assessor,code,sweetness,liking,sweetness right,terms\n{rows}\n" }.Read(out var problems);

        Assert.Equal(sentence, Assert.Single(problems));
    }

    [Theory]
    [InlineData("S1,A01,1,99,T1,1", "column 'code': found '99', expected three digits from 100 to 999.")]
    [InlineData("S1,A01,1,045,T1,1", "column 'code': found '045', expected three digits from 100 to 999.")]
    [InlineData("S1,A01,first,454,T1,1", "column 'position': found 'first', expected the place in the assessor’s order: 1, 2, 3 …, or a blank where it is not known.")]
    [InlineData("S1,A01,1,454,T1,0", "column 'make': found '0', expected which make of the trial it was: 1, 2, 3 …, or a blank where it is not known.")]
    [InlineData("S1,A01,1,454,T8,1", "column 'trial': found 'T8', expected a trial of this dessert: T1, T2.")]
    [InlineData("S1,,1,454,T1,1", "column 'assessor': found '', expected the assessor’s id, such as A01.")]
    [InlineData("S1,A01,1,454,T1,1\nS1,A01,2,454,T2,1", "row 3, column 'code': found '454', expected each code once for an assessor in a tasting; row 2 has it already.")]
    [InlineData("S1,A01,1,454,T1,1\nS1,A01,1,717,T2,1", "row 3, column 'position': found '1', expected each place once for an assessor in a tasting; row 2 has it already.")]
    public void Read_BadPlan_SaysWhatToMend(string rows, string sentence)
    {
        new TastingTexts { Trials = ["T1", "T2"], Servings = $"tasting,assessor,position,code,trial,make\n{rows}\n", Scores = "tasting,assessor,code,sweetness,liking,sweetness right,terms\n" }.Read(out var problems);

        Assert.EndsWith(sentence, Assert.Single(problems), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("liking,hedonic,0,10,,,,", "column 'kind': found 'hedonic', expected liking, intensity, just-right, words, ranking or pick.")]
    [InlineData("liking,liking,ten,0,,,,", "column 'low': found 'ten', expected a number: the lowest point of the scale.")]
    [InlineData("liking,liking,10,0,,,,", "column 'high': found '0', expected a number above the lowest point of the scale, 10.")]
    [InlineData("right,just-right,1,5.5,,,,", "column 'high': found '5.5', expected a whole number; a just-right scale has whole steps.")]
    [InlineData("terms,words,,,,,,", "column 'words': found '', expected the list of words to tick, parted by '; '.")]
    [InlineData("terms,words,,,,,,nutty; Nutty", "column 'words': found 'nutty; Nutty', expected each word once; 'nutty' comes 2 times.")]
    [InlineData("code,liking,0,10,,,,", "column 'attribute': found 'code', expected another name; this is a column that scores.csv needs for itself.")]
    [InlineData("a,liking,0,10,,,,\nA,liking,0,10,,,,", "row 3, column 'attribute': found 'A', expected each attribute once; row 2 has it already.")]
    public void Read_BadAttribute_SaysWhatToMend(string rows, string sentence)
    {
        new TastingTexts { Attributes = $"attribute,kind,low,high,low_word,high_word,question,words\n{rows}\n", Scores = "tasting,assessor,code\n" }.Read(out var problems);

        Assert.EndsWith(sentence, Assert.Single(problems), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("scores", "sweetness: T1; T8; T3", "found 'T8', expected a trial that S1 serves: T1, T2, T3.|found 'T1; T8; T3', expected every trial that S1 serves, from least to most; T2 is missing.")]
    [InlineData("scores", "sweetness: T1; T2", "found 'T1; T2', expected every trial that S1 serves, from least to most; T3 is missing.")]
    [InlineData("scores", "sweetness: T1; T2; T3; t2", "found 'T2', expected each trial once in an expected order.")]
    [InlineData("scores", "sweetnes: T1; T2; T3", "found 'sweetnes', expected a question of attributes.csv that is answered with marks or places; the nearest is 'sweetness' or 'sweetness right'.")]
    [InlineData("scores", "terms: T1; T2; T3", "found 'terms', expected a question of attributes.csv that is answered with marks or places: sweetness, liking, sweetness right.")]
    [InlineData("scores", "T1; T2; T3", "found 'T1; T2; T3', expected the question before the trials, such as 'sweetness: T1; T2; T3'.")]
    [InlineData("scores", "liking: T1; T2; T3 | liking: T3; T2; T1", "found 'liking: T3; T2; T1', expected each question once; liking has an order already.")]
    [InlineData("bench", "liking: T1; T2; T3", "found 'liking: T1; T2; T3', expected a blank: at the bench there are words only, so nothing can be put in order.")]
    [InlineData("triangle", "liking: T1; T2; T3", "found 'liking: T1; T2; T3', expected a blank: a triangle test has picks and no marks, so nothing can be put in order.")]
    public void Read_BadExpectedOrder_SaysWhatToMend(string kind, string cell, string sentences)
    {
        new TastingTexts { Tastings = $"tasting,kind,trials,expected_order\nS1,{kind},T1; T2; T3,{cell}\n" }.Read(out var problems);

        Assert.Equal(sentences.Split('|').Select(sentence => $"tastings.csv, row 2, column 'expected_order': {sentence}"), problems);
    }

    [Fact]
    public void Read_ExpectedOrders_AreKeptAsTheTrialsAreSpelt()
    {
        var session = new TastingTexts { Tastings = "tasting,trials,expected_order\nS1,T1; T2,Sweetness: t2; t1 | liking: T1; T2\n" }.Read().Sessions[0];

        Assert.Equal(["sweetness T2 T1", "liking T1 T2"], session.ExpectedOrders.Select(order => $"{order.Attribute} {string.Join(' ', order.Trials)}"));
        Assert.Equal("best", new TastingTexts { Attributes = new TastingTexts().Attributes + "best,ranking,,,,,,\n", Tastings = "tasting,trials,expected_order\nS1,T1; T2,T2; T1\n" }.Read().Sessions[0].ExpectedOrders[0].Attribute);
    }

    [Fact]
    public void Read_ManyFaults_AreReportedAtOnce()
    {
        new TastingTexts
        {
            Trials = ["T1"],
            Servings = "tasting,assessor,position,code,trial\nS1,A01,1,454,T1\nS1,A01,2,717,X\nS2,A01,1,454,T1\n",
            Scores = "tasting,assessor,code,sweetness,liking,sweetness right,terms\nS1,A01,454,12,x,9,\nS1,A01,717,5,,,\nS1,A02,717,5,,,\n",
            Tastings = "tasting,date,control\nS1,2026-13-45,T1\n",
        }.Read(out var problems);

        // Date, trial X, tasting S2, three marks of row 2, assessor A02. The row of the plate with the unknown trial is not reported twice.
        Assert.Equal(7, problems.Count);
    }

    [Fact]
    public void Read_SheetWithoutItsColumns_IsOneSentenceEach()
    {
        new TastingTexts { Scores = "tasting,taster,code\nS1,A01,454\n" }.Read(out var problems);

        Assert.Contains("scores.csv, column 'assessor': the sheet needs a column of this name", Assert.Single(problems), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_WithoutTastings_TakesThemFromThePlan()
    {
        var log = new TastingTexts().Read();

        Assert.Equal(new TastingSession("S1"), Assert.Single(log.Sessions));
    }

    [Fact]
    public void Read_Tastings_GiveDayControlAndKind()
    {
        var log = new TastingTexts { Tastings = "tasting,date,kind,trials,control,notes\nS1,2026-09-18,scores,T1; T2,t1,day room\nB1,2026-10-01,bench,T3,,\n" }.Read();

        Assert.Equal((new DateOnly(2026, 9, 18), "day room", false), (log.Sessions[0].Date, log.Sessions[0].Notes, log.Sessions[0].IsBench));
        Assert.True(Names.Same("T1", log.Sessions[0].Control));
        Assert.True(log.Sessions[1].IsBench);
    }
}
