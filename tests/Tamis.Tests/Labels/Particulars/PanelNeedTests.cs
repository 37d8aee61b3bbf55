using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Tests.Labels;

/// <summary>A pack that need bear no nutrition panel is drawn and signed without one, where the panel is a draft.</summary>
public class PanelNeedTests
{
    private const string Pack = "name,Cake,,\nbox_mm,100 x 100 x 50,,\nmarket,GB; GB; en,,\n";

    // The flour has neither food nor document, so that every panel is a draft.
    private static Dessert Cake(TemporaryFolder folder, string facts)
    {
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        Directory.CreateDirectory(Path.Combine(folder.Path, "cake"));
        File.WriteAllText(Path.Combine(folder.Path, "store", "ingredients.csv"), "ingredient,allergens,label_name\nflour,wheat,wheat flour\n");
        File.WriteAllText(Path.Combine(folder.Path, "cake", "formula.csv"), "component,line,way,step,T1\ncake,flour,,1,100\n");
        File.WriteAllText(Path.Combine(folder.Path, "cake", "dessert.csv"), "key,value,trial,notes\n" + Pack + facts);
        return Dessert.Open(Path.Combine(folder.Path, "cake"));
    }

    [Theory]
    [InlineData("form_of_sale,loose,,\n", "sold loose")]
    [InlineData("form_of_sale,packed on the premises for direct sale,,\n", "direct sale")]
    [InlineData("form_of_sale,prepacked,,\nexemption,small quantities sold direct or to local shops,,\n", "a competent person says")]
    public void Drawn_PanelNeedNotStand_IsDrawnAndSignedWithout(string facts, string expected)
    {
        using TemporaryFolder folder = new();
        var cake = Cake(folder, facts);

        var drawing = DessertLabel.Drawn(cake, "T1", "GB");

        Assert.Null(drawing.Content.Panel);
        Assert.Contains(drawing.Remarks, remark => remark.Contains("left off", StringComparison.Ordinal) && remark.Contains(expected, StringComparison.Ordinal));
        Assert.DoesNotContain(drawing.DraftReasons, reason => reason.StartsWith("energy", StringComparison.Ordinal));
        Assert.DoesNotContain(LabelRecords.Hindrances(cake, "T1", "gb", "en"), hindrance => hindrance.StartsWith("energy", StringComparison.Ordinal));
        Assert.Equal("none on the pack", LabelRecords.SectionsOf(cake, "T1", "gb", "en").Single(section => section.Title == "Nutrition panel").Rows.Single().Text);
    }

    // A nutrition claim makes the declaration mandatory: Regulation (EC) No 1924/2006, Article 7.
    [Theory]
    [InlineData("form_of_sale,prepacked,,\n")]
    [InlineData("form_of_sale,loose,,\nclaim,source of fibre,,\n")]
    public void Drawn_PanelMustStand_IsADraft(string facts)
    {
        using TemporaryFolder folder = new();
        var cake = Cake(folder, facts);

        Assert.NotNull(DessertLabel.Drawn(cake, "T1", "GB").Content.Panel);
        Assert.Contains(LabelRecords.Hindrances(cake, "T1", "gb", "en"), hindrance => hindrance.StartsWith("energy", StringComparison.Ordinal));
    }
}
