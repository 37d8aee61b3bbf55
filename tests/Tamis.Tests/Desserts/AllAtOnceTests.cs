using Tamis.Desserts;

namespace Tamis.Tests.Desserts;

/// <summary>What is wrong in the sheets of a dessert and its store is named whole, in one go.</summary>
public sealed class AllAtOnceTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Problems_AnErrorOfTheSpreadsheetAmongOthers_AreAllNamedOnce()
    {
        _folder.Write("formula.csv", "component,line,way,step,T1,T2\ncake,rye flour,,1,#DIV/0!,lots\ncake,butter,sideways,1,100,90\ncake,egg,,1,50,50\ncake,salt,,1,2,2\ncake,honey,,1,10 g,1,extra\n");

        Assert.Equal([(2, "T1"), (2, "T2"), (3, "way"), (6, "")], Dessert.Open(_folder.Path).Problems.Select(problem => (problem.Row, problem.Column)).Order());
    }

    [Fact]
    public void Problems_AnErrorOfTheSpreadsheet_IsSaidOnceWhateverReadersMakeOfIt()
    {
        _folder.Write("formula.csv", "component,line,way,step,T1\ncake,rye flour,,1,100\n");
        _folder.Write("attributes.csv", "attribute,kind,low,high\nsweetness,intensity,0,10\n");
        _folder.Write("servings.csv", "tasting,assessor,position,code,trial\nS1,A,1,717,T1\nS1,A,2,718,T1\n");
        _folder.Write("scores.csv", "tasting,assessor,code,sweetness\nS1,A,#DIV/0!,5\nS1,A,718,6\n");

        Assert.Single(Dessert.Open(_folder.Path).Problems, problem => (problem.File, problem.Row, problem.Column) == ("scores.csv", 2, "code"));
    }

    [Fact]
    public void Problems_AFaultInTheTrials_HidesNoneInTheFormula()
    {
        _folder.Write("formula.csv", "component,line,way,step,T1\ncake,rye flour,,1,100\ncake,butter,,1,lots\ncake,egg,,1,50\n");
        _folder.Write("trials.csv", "trial,parent,made_on\nT1,,yesterday\n");

        Assert.Equal([("formula.csv", 3), ("trials.csv", 2)], Dessert.Open(_folder.Path).Problems.Select(problem => (problem.File, problem.Row)).Order());
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("date_order,day-month-year\n", 0)]
    [InlineData("date_order,month-day-year\n", 0)]
    public void Problems_DatesOfTheStoreThatCanBeReadBothWays_AreDecidedByTheSetting(string setting, int count)
    {
        _folder.Write("formula.csv", "component,line,way,step,T1\ncake,honey,,1,100\n");
        _folder.Write("dessert.csv", $"key,value\nname,Cake\n{setting}");
        Directory.CreateDirectory(Path.Combine(_folder.Path, "store"));
        _folder.Write("store/ingredients.csv", "ingredient,food\nhoney,SR28 19296\n");
        _folder.Write("store/specifications.csv", "ingredient,document,supplier,date,fat_g\nhoney,H1,S1,05/06/2026,0\n");

        Assert.Equal(count, Dessert.Open(_folder.Path).Problems.Count);
    }

    [Fact]
    public void Problems_DocumentsThatDoNotCount_AreReadAllTheSame()
    {
        _folder.Write("formula.csv", "component,line,way,step,T1\ncake,honey,,1,100\n");
        _folder.Write("trials.csv", "trial,parent,made_on\nT1,,2026-03-01\n");
        Directory.CreateDirectory(Path.Combine(_folder.Path, "store"));
        _folder.Write("store/ingredients.csv", "ingredient,food\nhoney,SR28 19296\n");
        _folder.Write("store/specifications.csv", "ingredient,document,supplier,date,fat_g,carbohydrate_g,sugars_g,brix,tolerance\n"
            + "honey,H1,S1,2025-01-01,lots,82,80,,\nhoney,H2,S1,2026-02-01,0,82,80,,\nhoney,H3,S1,2026-06-01,0,8200,80 g,101,uk\nhony,H4,S1,13/14/2026,x,82,80,,\n");

        Assert.Equal([(2, "fat_g"), (4, "brix"), (4, "carbohydrate_g"), (4, "sugars_g"), (4, "tolerance"), (5, "date"), (5, "fat_g"), (5, "ingredient")],
            Dessert.Open(_folder.Path).Problems.Select(problem => (problem.Row, problem.Column)).Order());
    }
}
