using Tamis.Composition;

namespace Tamis.Tests.Composition;

public class CompositionTableTests
{
    private static CompositionTable Table => ShippedTable.Table;

    [Fact]
    public void Load_ShippedTable_HasTheFoodsAndNutrientsOfAPastryKitchen()
    {
        Assert.True(Table.Foods.Count >= 280);
        Assert.True(Table.Nutrients.Count >= 45);
    }

    // USDA National Nutrient Database for Standard Reference, release 28 (2016): ABBREV.txt.
    [Theory]
    [InlineData("SR28 01145", "FAT", 81.11)]
    [InlineData("SR28 01123", "PROCNT", 12.56)]
    [InlineData("SR28 19335", "CHOCDF", 99.98)]
    [InlineData("SR28 19177", "PROCNT", 85.60)]
    [InlineData("SR28 02047", "NA", 38758)]
    public void Content_OfAKnownFood_IsTheFigureOfTheRecord(string food, string tag, double expected) =>
        Assert.Equal(expected, Table.Content(food, tag).Per100Grams);

    [Fact]
    public void Content_BlankInTheRecord_IsUnknownNotZero()
    {
        var sucrose = Table.Content("SR28 02025", "SUCS");

        Assert.False(sucrose.IsKnown);
        Assert.True(double.IsNaN(sucrose.Per100Grams));
        Assert.True(double.IsNaN(Table.Profile("SR28 02025").Per100Grams[Table.Nutrients.IndexOf("SUCS")]));
    }

    [Fact]
    public void Content_AvailableCarbohydrate_IsDerivedOrUnknown()
    {
        var flour = Table.Content("SR28 20629", "CHOAVLDF");

        Assert.Equal(Table.Content("SR28 20629", "CHOCDF").Per100Grams - Table.Content("SR28 20629", "FIBTG").Per100Grams, flour.Per100Grams, 9);
        Assert.Equal(Evidence.Computed, flour.Source!.Evidence);
        Assert.StartsWith("total carbohydrate \u2212 fibre", flour.Source.ToString(), StringComparison.Ordinal);
        // The record of blackcurrants has no fibre.
        Assert.False(Table.Content("SR28 09083", "CHOAVLDF").IsKnown);
    }

    [Fact]
    public void Content_WithSamples_HasTheRangeOfASingleLot()
    {
        var protein = Table.Content("SR28 01123", "PROCNT");

        // The record: 12 samples, standard error 0.102. t(11) at 97.5 % is 2.201 (any table of the t distribution).
        Assert.Equal(12, protein.Samples);
        Assert.Equal(0.102 * Math.Sqrt(12), protein.StandardDeviation!.Value, 3);
        Assert.Equal(12.56 + 2.201 * 0.102 * Math.Sqrt(12) * Math.Sqrt(1 + 1.0 / 12), protein.Range!.Value.High, 3);
    }

    [Fact]
    public void Content_AssumedZero_SaysSo()
    {
        var alcohol = Table.Content("SR28 20078", "ALC");

        Assert.Equal(ContentState.AssumedZero, alcohol.State);
        Assert.Equal(Evidence.Practice, alcohol.Source!.Evidence);
        Assert.False(alcohol.IsOfRecord);
    }

    // Carbohydrate is by difference, so the proximates make 100 g. Three records do not, and the publisher says why for two:
    // piperine was taken off the fat of pepper (FOOTNOTE), the carbon dioxide of baking soda is in no column.
    // Ammonium bicarbonate leaves whole as gas and is no nutrient at all.
    [Fact]
    public void Contents_Proximates_MakeAHundredGrams()
    {
        string[] tags = ["WATER", "PROCNT", "FAT", "CHOCDF", "ASH", "ALC"];
        var odd = Table.Foods.Where(food => tags.All(tag => Table.Content(food.Id, tag).IsKnown)
            && Math.Abs(tags.Sum(tag => Table.Content(food.Id, tag).Per100Grams) - 100) > 1);

        Assert.Equal(["SR28 01159", "SR28 02030", "SR28 18372", "TAMIS 46"], odd.Select(food => food.Id).Order());
    }

    [Fact]
    public void Contents_FilledInByTheKit_LeaveRoomForTheSugarsOfTheRecord()
    {
        Assert.Empty(Table.Foods.Where(food => Figure(food, "CHOAVLDF") is { } carbohydrate
            && Estimate(food, "POLYL") + Estimate(food, "OA") is > 0.05 and var filledIn
            && filledIn + (Figure(food, "SUGAR") ?? 0) > carbohydrate + 0.56).Select(food => food.Name));

        double? Figure(Food food, string tag) => Table.Content(food.Id, tag) is { IsKnown: true } content ? content.Per100Grams : null;
        double Estimate(Food food, string tag) => Table.Content(food.Id, tag) is { State: ContentState.Estimated } content ? content.Per100Grams : 0;
    }

    [Theory]
    [InlineData("SR28 01145")]
    [InlineData("sr28_1145")]
    [InlineData("SR28 1145")]
    [InlineData("butter, unsalted,  82 % fat")]
    [InlineData("Butter, without salt")]
    public void Find_EverySpelling_IsTheSameFood(string text) => Assert.Equal("SR28 01145", Table.Find(text).Id);

    [Theory]
    [InlineData("buter, unsalted, 82 % fat")]
    [InlineData("butter unsalted")]
    [InlineData("buter")]
    [InlineData("unsalted buttr")]
    public void Find_Mistyped_NamesWhatIsNear(string text)
    {
        var error = Assert.Throws<FoodNotFoundException>(() => Table.Find(text));

        Assert.Contains("Butter, unsalted, 82 % fat", error.Nearest);
        Assert.Contains("Butter, unsalted, 82 % fat", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nearest_ANumberThatIsNotThere_IsIds() => Assert.All(Table.Nearest("SR28 1146"), near => Assert.StartsWith("SR28 ", near, StringComparison.Ordinal));

    [Theory]
    [InlineData("buttr", "Butter")]
    [InlineData("cocoa pouder", "Cocoa powder")]
    [InlineData("egg yolks", "Egg yolk")]
    [InlineData("choc", "Chocolate")]
    public void Nearest_AMistypedName_IsTheFoodThatWasMeant(string text, string beginning) => Assert.StartsWith(beginning, Table.Nearest(text)[0], StringComparison.OrdinalIgnoreCase);

    [Theory]
    [InlineData("1145")]
    [InlineData("01145")]
    public void Nearest_ANumberWithoutItsDataset_IsTheFoodOfThisNumber(string text) => Assert.Equal(["SR28 01145"], Table.Nearest(text));

    [Fact]
    public void Nearest_NothingAlike_IsEmpty() => Assert.Empty(Table.Nearest("xylophone"));

    [Fact]
    public void Seek_UnknownFood_IsNull() => Assert.Null(Table.Seek("moon dust"));

    [Fact]
    public void MeasuresOf_AnEgg_HasAmericanAndEuropeanPieces()
    {
        var measures = Table.MeasuresOf("SR28 01123").ToList();

        Assert.Contains(measures, measure => measure is { Measure: "large", MassGrams: 50 });
        Assert.Contains(measures, measure => measure.Measure.StartsWith("egg in its shell, size M", StringComparison.Ordinal) && measure.EachGrams == 58);
    }

    [Fact]
    public void MeasuresOf_Honey_GiveItsDensity() =>
        // SR28 WEIGHT: a US cup (236.59 ml) of honey is 339 g.
        Assert.Equal(339 / 236.588, Table.MeasuresOf("Honey").First(measure => measure.Measure == "cup").DensityGramsPerMillilitre!.Value, 3);

    [Fact]
    public void Contents_FlatView_HasARowForEachKnownContentAndASourceInEach()
    {
        Assert.Equal(Table.Contents.Count, Table.Foods.Sum(food => Table.Nutrients.All.Count(nutrient => Table.Content(food.Id, nutrient.Tag).IsKnown)));
        Assert.All(Table.Contents, content => Assert.False(string.IsNullOrWhiteSpace(content.Source)));
        Assert.All(Table.Contents, content => Assert.True(double.IsFinite(content.Per100Grams)));
    }
}
