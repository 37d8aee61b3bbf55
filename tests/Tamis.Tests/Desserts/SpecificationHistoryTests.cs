using System.Text;
using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public sealed class SpecificationHistoryTests : IDisposable
{
    private const string Header = "ingredient,document,supplier,date,legal_name,ingredient_list,allergens,may_contain,fat_g,sugars_g,fibre_g,notes\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Changes_NewerDocument_NamesFiguresListAndAllergens()
    {
        // Invented. The rows stand newest first: the dates decide.
        var change = Assert.Single(Read("""
            nut paste,N-2,S1,2026-04-01,nut paste,"hazelnuts 60 %, sugar, emulsifier: lecithins (soya, rape)",hazelnut; soya,,40,34,,new
            nut paste,N-1,S1,2025-04-01,nut paste,"hazelnuts 60 %, sugar",hazelnut,peanut,40,35,5.1,old
            """).Changes);

        Assert.Equal(("N-1", "N-2"), (change.From.Document, change.To.Document));
        Assert.Equal([new("sugars_g", "35", "34"), new("fibre_g", "5.1", "")], change.Figures);
        Assert.Equal(["soya"], change.Allergens.Added);
        Assert.Empty(change.Allergens.Removed);
        Assert.Equal(["emulsifier: lecithins (soya, rape)"], change.IngredientList.Added);
        Assert.False(change.HasOtherLegalName);
    }

    [Fact]
    public void Changes_SilentNewerDocument_IsSaidToBeSilent()
    {
        var change = Assert.Single(Read("p,A,S,2025-01-01,,,none,milk,,,,\np,B,S,2026-01-01,,,,none,,,,\n").Changes);

        Assert.True(change.Allergens is { IsAny: true, IsSilentNow: true });
        Assert.Equal(["milk"], change.MayContain.Removed);
        Assert.False(change.MayContain.IsSilentNow);
    }

    [Fact]
    public void Changes_AdditivesNamedApartFromAList_AreSaid()
    {
        var rows = Kitchen.Sheet("specifications.csv", "ingredient,document,date,additives\np,A,2025-01-01,none\np,B,2026-01-01,emulsifier: lecithins\n");
        var change = Assert.Single(SpecificationHistory.Read(rows, []).Changes);

        Assert.Equal(["emulsifier: lecithins"], change.Additives.Added);
        Assert.Empty(change.Figures);
    }

    [Fact]
    public void Changes_ThreeDocuments_GoStepByStep() =>
        Assert.Equal([("A", "B"), ("B", "C")], Read("p,B,S,2025-06-01,,,,,,,,\np,C,S,2026-01-01,,,,,,,,\np,A,S,2025-01-01,,,,,,,,\n").Changes.Select(change => (change.From.Document, change.To.Document)));

    [Fact]
    public void Figures_DecimalComma_PartsNoIngredient()
    {
        var document = Assert.Single(Read("p,A,S,2025-01-01,,\"sugar 1,5 %, fat [palm, shea], salt\",,,,,,\n").All);

        Assert.Equal(["sugar 1,5 %", "fat [palm, shea]", "salt"], document.IngredientList);
    }

    [Fact]
    public void Reach_Desserts_AreFoundWithComponentAndTrials()
    {
        Folder("store", ("ingredients.csv", "ingredient\nnut paste\nflour\n"));
        Folder("tart", ("trials.csv", "trial\nT1\nT2\n"), ("formula.csv", "component,line,T1,T2\nfill,nut paste,10 g,\nshell,flour,5 g,5 g\n"));
        Folder("bread", ("formula.csv", "component,line,T1\ndough,flour,10 g\n"));
        Folder("broken", ("formula.csv", "component,line,T1\ndough,flour,lots\n"));

        var reach = IngredientReach.Of("Nut paste", IngredientReach.Desserts(Path.Combine(_folder.Path, "store")));

        // The fill of T2 is as in its column left wholly blank: a first trial without a parent has none.
        var use = Assert.Single(reach.Uses);
        Assert.Equal(("tart", "fill"), (use.Dessert, use.Component));
        Assert.Contains("T1", use.Trials);
        Assert.Equal(["broken"], reach.Unread);
    }

    private static SpecificationHistory Read(string rows)
    {
        List<CellProblem> problems = [];
        var history = SpecificationHistory.Read(SheetFile.Parse("specifications.csv", Encoding.UTF8.GetBytes(Header + rows)), problems);
        Assert.Empty(problems);
        return history;
    }

    private void Folder(string name, params (string File, string Text)[] files)
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, name));
        foreach (var (file, text) in files) _folder.Write(Path.Combine(name, file), text);
    }
}
