using Tamis.Desserts;

namespace Tamis.Views.Tests.Desserts;

/// <summary>Which of several documents a figure stands on. Invented.</summary>
public sealed class ShowSpecificationsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-specifications-").FullName;

    public ShowSpecificationsTests()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "store"));
        Write("formula.csv", "component,line,way,step,T1\ncake,nut paste,,1,100\n");
        Write("trials.csv", "trial,parent,made_on\nT1,,2026-03-01\n");
        Write("store/ingredients.csv", "ingredient,food\nnut paste,\n");
        Write("store/specifications.csv", "ingredient,document,supplier,date,fat_g,energy_kj,allergens\nnut paste,N-1,S1,2025-04-01,40,2274,hazelnut\nnut paste,N-2,S1,2026-02-01,41,2274,hazelnut\nnut paste,N-3,S1,2026-05-01,45,2274,hazelnut; milk\n");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void WhereFrom_OfThreeDocuments_NamesTheOneThatCounts()
    {
        var text = Show.WhereFrom(Dessert.Open(_folder), "nut paste", "FAT", "ENERC_KJ").ToPlainText();

        Assert.Contains("and on N-2 of S1, 2026-02-01.", text, StringComparison.Ordinal);
        Assert.Contains("Superseded, or later than the last make: N-1 of S1, 2025-04-01; N-3 of S1, 2026-05-01.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void WhereFrom_ADeclaredFigure_HasTheBoundsOfItsRounding() =>
        Assert.Contains("2\u202f273.5 to 2\u202f274.5\u202fkJ", Show.WhereFrom(Dessert.Open(_folder), "nut paste", "ENERC_KJ").ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void SpecificationChanges_ADocumentLaterThanTheLastMake_SaysWhatThePanelStandsOn()
    {
        var text = Show.SpecificationChanges(Dessert.Open(_folder)).ToPlainText();

        Assert.Contains("N-3 of S1, 2026-05-01 supersedes N-2", text, StringComparison.Ordinal);
        Assert.Contains("its panel stands on N-2 of S1, 2026-02-01 until there is a later make", text, StringComparison.Ordinal);
        Assert.Contains("N-3 of 1 May 2026 is later than 1 March 2026", Assert.Single(Dessert.Open(_folder).Store.Remarks).Text, StringComparison.Ordinal);
    }

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(_folder, file), text);
}
