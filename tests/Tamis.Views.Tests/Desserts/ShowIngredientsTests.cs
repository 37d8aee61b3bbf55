using Tamis.Desserts;

namespace Tamis.Views.Tests;

public sealed class ShowIngredientsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private Dessert Filling(string praline)
    {
        Write("store/ingredients.csv", $"ingredient,food,label_name,allergens,ingredient_list,additives\npraline 50,TAMIS 24,praline paste,hazelnut,{praline}\nalmonds,SR28 12062,almonds,almond,,\n");
        Write("trials.csv", "trial\nT1\n");
        Write("formula.csv", "component,line,T1\nfilling,praline 50,60 g\nfilling,almonds,40 g\n");
        return Dessert.Open(_folder);
    }

    private void Write(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    [Theory]
    [InlineData("eu")]
    [InlineData("gb")]
    [InlineData("us")]
    [InlineData("ca")]
    [InlineData("au-nz")]
    [InlineData("codex")]
    public void IngredientList_CompoundWithoutItsList_IsADraftThatSaysWhatToSupply(string rules)
    {
        var page = Show.IngredientList(Filling(","), "T1", rules).ToPlainText();

        Assert.Contains("A draft, not for print: one thing stands in the way.", page, StringComparison.Ordinal);
        Assert.Contains("praline 50 is a compound (praline paste: hazelnuts, sugar; common practice, no source) and has no list of its own", page, StringComparison.Ordinal);
        Assert.Contains("ingredient_list of the supplier’s specification", page, StringComparison.Ordinal);
        Assert.Contains("ingredients.csv, row 2", page, StringComparison.Ordinal);
        Assert.Contains("praline paste ([its own list])", page, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void IngredientList_CompoundWithItsList_IsWhole()
    {
        var page = Show.IngredientList(Filling("\"hazelnuts, sugar\","), "T1", "eu").ToPlainText();

        Assert.Contains("praline paste (hazelnuts, sugar), almonds.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("A draft", page, StringComparison.Ordinal);
    }
}
