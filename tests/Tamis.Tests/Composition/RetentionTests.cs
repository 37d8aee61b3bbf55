using Tamis.Composition;

namespace Tamis.Tests.Composition;

public class RetentionTests
{
    private static readonly RetentionTable Table = RetentionTable.Load(KitFolder.Data("composition"));

    // USDA Table of Nutrient Retention Factors, release 6 (2007).
    [Theory]
    [InlineData("R6 0301", "THIA", 0.80)]
    [InlineData("R6 0301", "VITC", 0.80)]
    [InlineData("flour/meal, baked", "FOL", 0.70)]
    [InlineData("R6 0101", "RIBF", 0.95)]
    [InlineData("R6 2153", "VITB12", 0.30)]
    [InlineData("R6 5004", "ALC", 0.40)]
    [InlineData("R6 0151", "CA", 0.95)]
    public void KeptShare_PublishedFactor_IsRead(string key, string tag, double expected) => Assert.Equal(expected, Table.Find(key).KeptShare(tag));

    [Fact]
    public void KeptShare_BlankOfTheTable_IsUnknownNotZero() => Assert.Null(Table.Find("R6 5005").KeptShare("CA"));

    [Fact]
    public void KeptShare_NutrientThatTheTableDoesNotSpeakOf_IsAllOfIt() => Assert.Equal((1, false), (Table.Find("R6 0301").KeptShare("PROCNT")!.Value, Table.Find("R6 0301").SpeaksOf("PROCNT")));

    [Fact]
    public void KeptShare_VitaminA_GoesForItsActivityAndRetinol() => Assert.All(["VITA_RAE", "RETOL"], tag => Assert.Equal(Table.Find("R6 0301").KeptShare("VITA_RE"), Table.Find("R6 0301").KeptShare(tag)));

    [Fact]
    public void All_Codes_AreThoseOfTheRelease() => Assert.Equal(270, Table.All.Count);

    [Fact]
    public void Find_Mistyped_NamesNearOnes() => Assert.Contains("flour/meal, baked", Assert.Throws<KeyNotFoundException>(() => Table.Find("flour/meal, bakd")).Message, StringComparison.Ordinal);
}
