using System.Text;
using Tamis.Desserts;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Tests.Physics.Cautions;

public class CautionsTests
{
    private const string Header = "hazard,of,step_words,step_without,from_c,to_c,kinds,ingredient_words,hottest_below_c,ph_below,alcohol_percent_above,caution,practice,source,checked\n";
    private static readonly Dessert Tart = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));

    // The steps of the demo that its own sheet marks with a caution: hot sugar in the paste, the spray, raw egg in the wafer's dough, the cold of the blast chiller.
    [Theory]
    [InlineData("rye paste", 2, "hot sugar")]
    [InlineData("rye paste", 4, "blade")]
    [InlineData("coat", 2, "cold burn", false)]
    [InlineData("coat", 1, "hot fat under pressure")]
    [InlineData("mousse", 2, "custard")]
    [InlineData("mousse", 7, "cold burn")]
    [InlineData("mousse", 4, "cooling")]
    [InlineData("gel", 2, "hot sugar", false)]
    public void Of_DemoStep_HasTheCautionsOfWhatIsDone(string component, int step, string hazard, bool expected = true)
    {
        var found = Tamis.Physics.Cautions.Of(Tart.Examine("T10", component)).Where(caution => caution.Step?.Step == step).Select(caution => caution.Rule.Hazard);
        if (expected) Assert.Contains(hazard, found);
        else Assert.DoesNotContain(hazard, found);
    }

    [Fact]
    public void Of_EggThatIsCooked_IsNoRawEgg()
    {
        Assert.DoesNotContain(Tamis.Physics.Cautions.Of(Tart.Examine("T10", "mousse")), caution => caution.Rule.Hazard == "raw egg");
        var unbaked = Tart.Examine("T10", "mousse") with { Steps = [] };
        Assert.Contains(Tamis.Physics.Cautions.Of(unbaked with { Steps = [.. Tart.Examine("T10", "mousse").Steps.Where(step => step.TemperatureCelsius < 70)] }), caution => caution.Rule.Hazard == "raw egg");
    }

    [Fact]
    public void Of_AcidGel_SaysThatGelatineIsWeakened()
    {
        var acid = Tart.Examine("T10", "gel") with { Measured = [new("pH", 3.0, "", new("a meter", Evidence.Sheet))] };
        Assert.Contains(Tamis.Physics.Cautions.Of(acid), caution => caution.Rule.Hazard == "acid and gelatine");
        Assert.DoesNotContain(Tamis.Physics.Cautions.Of(acid with { Measured = [] }), caution => caution.Rule.Hazard == "acid and gelatine");
    }

    [Theory]
    [InlineData("hot,people,sugar,,,,,,,,,burns,gloves,,text", "source")]
    [InlineData("hot,everybody,sugar,,,,,,,,,burns,gloves,a book,text", "of")]
    [InlineData("hot,,sugar,,,,,,,,,burns,gloves,a book,text", "of")]
    [InlineData("hot,people,,,,,,,,,,burns,gloves,a book,text", "step_words")]
    [InlineData("hot,people,sugar,,-300,,,,,,,burns,gloves,a book,text", "from_c")]
    [InlineData("hot,people,sugar,,,,,,,17,,burns,gloves,a book,text", "ph_below")]
    [InlineData("hot,people,sugar,,,,,,,,,,gloves,a book,text", "caution")]
    public void ReadAll_BadCell_IsNamed(string row, string column) =>
        Assert.Equal(column, Assert.Single(Assert.Throws<TableException>(() => CautionRule.ReadAll(SheetFile.Parse("cautions.csv", Encoding.UTF8.GetBytes(Header + row)))).Problems).Column);

    // Texts: bromelain, papain, actinidin and ficin take gelatine apart, not pectin, and heat stops them (82 °C is quoted for pineapple).
    [Theory]
    [InlineData("pineapple", "gelatine leaf", 60, true)]
    [InlineData("pineapple", "gelatine leaf", 85, false)]
    [InlineData("pineapple", "pectin", 60, false)]
    [InlineData("raspberry puree", "gelatine leaf", 60, false)]
    public void Of_FruitThatDigestsGelatine_OnlyBesideGelatineAndUnheated(string fruit, string agent, double celsius, bool warns)
    {
        var gel = Examined.Of(Kitchen.Batch($"component,line,way,step,T1\ngel,{fruit},,1,100 g\ngel,{agent},,1,2 g\n"), "gel") with
        {
            Steps = [new() { Component = "gel", Step = 1, Do = "Warm", TemperatureCelsius = celsius, Origin = new("a test", Evidence.Estimate) }],
        };

        Assert.Equal(warns, Tamis.Physics.Cautions.Of(gel).Any(caution => caution.Rule.Hazard.StartsWith("enzyme", StringComparison.Ordinal)));
    }

    [Fact]
    public void Kit_EveryKind_IsAKindOfIngredient()
    {
        var known = IngredientKinds.Kit.All.Select(kind => kind.Name).ToHashSet(Names.Comparer);
        Assert.DoesNotContain(CautionRule.Kit.SelectMany(rule => rule.Kinds), kind => !known.Contains(kind));
    }
}
