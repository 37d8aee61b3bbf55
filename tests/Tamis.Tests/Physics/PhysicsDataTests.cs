using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class PhysicsDataTests
{
    [Fact]
    public void Load_AnEquationInSeveralRows_GathersItsRanges()
    {
        using var folder = new TemporaryFolder();
        folder.Write("equations-a.csv", "equation,gives,unit,input,low,high,input_unit,source,checked\nplank,freezing time,h,thickness,1,10,cm,Plank 1913,text\nplank,,h,temperature,-40,-10,°C,Plank 1913,text\n");
        folder.Write("constants-a.csv", "constant,value,unit,low,high,source,checked\nlatent heat,333.6,kJ/kg,330,335,handbook,from memory\n");

        var data = PhysicsData.Load(folder.Path);

        Assert.Equal(2, data.Equation("Plank").Valid.Count);
        Assert.True(data.Equation("plank").Holds("temperature", -20));
        Assert.False(data.Equation("plank").Holds("temperature", 0));
        Assert.Equal((333.6, Interval.Between(330, 335), Evidence.Memory), (data.Constant("latent_heat").Value, data.Constant("latent heat").Range, data.Constant("latent heat").Source.Evidence));
    }

    [Fact]
    public void Load_BadCells_AreAllNamed()
    {
        using var folder = new TemporaryFolder();
        folder.Write("equations-a.csv", "equation,gives,unit,input,low,high,input_unit,source,checked\nplank,freezing time,h,thickness,10,1,cm,Plank 1913,text\npham,,h,,,,,Pham 1986,often\n");
        folder.Write("constants-a.csv", "constant,value,unit,low,high,source,checked\nheat,many,kJ/kg,,,handbook,text\nheat,3,kJ/kg,,,handbook,text\nheat,3,kJ/kg,,,,text\n,3,,,,handbook,text\n");

        var problems = Kitchen.ProblemsOf(() => PhysicsData.Load(folder.Path));

        Assert.Equal(
            [("equations-a.csv", 2, "high"), ("equations-a.csv", 3, "gives"), ("equations-a.csv", 3, "checked"), ("constants-a.csv", 2, "value"), ("constants-a.csv", 3, "constant"), ("constants-a.csv", 4, "source"), ("constants-a.csv", 4, "constant"), ("constants-a.csv", 5, "constant")],
            problems.Select(problem => (problem.File, problem.Row, problem.Column)));
    }

    [Fact]
    public void Equation_OfAMistypedName_NamesTheNearest()
    {
        Assert.Contains("raoult", Assert.Throws<KeyNotFoundException>(() => PhysicsData.Kit.Equation("raoul")).Message, StringComparison.Ordinal);
        Assert.Contains("absolute zero", Assert.Throws<KeyNotFoundException>(() => PhysicsData.Kit.Constant("absolut zero")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Kit_EveryEquationAndTable_NamesItsSource()
    {
        Assert.All(PhysicsData.Kit.Equations, equation => Assert.NotEqual("not given", equation.Source.Key));
        Assert.NotEmpty(Solutes.Kit.All);
        Assert.NotEmpty(Sweetener.Kit);
        Assert.NotEmpty(SugarStage.Kit);
        Assert.NotEmpty(MicrobialLimit.Kit);
    }
}
