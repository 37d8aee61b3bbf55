using CsCheck;
using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class ManyPanelsTests
{
    private static readonly NutrientList Nutrients = new(
    [
        .. LabelKit.Nutrients.All,
        new("FATRN", "trans fat", "g"), new("CHOLE", "cholesterol", "mg"), new("SUGAD", "added sugars", "g"), new("K", "potassium", "mg"), new("CA", "calcium", "mg"), new("FE", "iron", "mg"), new("VITD", "vitamin D", "µg"),
    ]);

    public static TheoryData<string> RuleSetNames => [.. RuleSets.NamesIn(LabelKit.Folder)];

    // Contents with two figures make ties and ends of bands common; zeros and unknown contents are common too.
    private static readonly Gen<Content> GenContent = Gen.Int[0, 9].SelectMany(kind => kind switch
    {
        0 => Gen.Const(Content.Unknown),
        <= 3 => Gen.Const(Measured(0)),
        <= 6 => Gen.Int[0, 400].Select(tenths => Measured(tenths / 10.0)),
        _ => Gen.Double[0, 100].Select(Measured),
    });

    private static readonly Gen<ManyFormulas> GenFormulas =
        from foods in Gen.Select(Gen.Bool, GenContent.Array[19]).Array[4]
        from rows in Gen.Int[0, 3].Array[12]
        from masses in Gen.Int[1, 400].Array[12]
        from water in Gen.Int[0, 2].Array[6]
        select new ManyFormulas([.. foods.Select((food, at) => Food(at, food.Item1 ? food.Item2 : [.. food.Item2.Select(content => content.IsKnown ? content : Measured(0.04))]))],
            [0, 2, 4, 6, 8, 10, 12], rows, [.. masses.Select(mass => (double)mass)], [.. water.Select(grams => (double)grams / 4)]);

    private static readonly Gen<ManyFormulas> GenSmall =
        from foods in Gen.Int[0, 24].Select(tenths => Measured(tenths / 10.0)).Array[19].Array[3]
        from zeros in Gen.Bool.Array[19]
        from rows in Gen.Int[0, 2].Array[8]
        from masses in Gen.Int[1, 40].Array[8]
        select new ManyFormulas([.. foods.Select((food, at) => Food(at + 1, [.. food.Select((content, column) => zeros[column] ? Measured(0) : content)]))],
            [0, 1, 3, 5, 8], rows, [.. masses.Select(mass => (double)mass)], [0, 0, 0.25, 0]);

    private static Content Measured(double per100Grams) => new(ContentState.Measured, per100Grams, null, new("written for a test", Evidence.Computed));

    // One of them says by its name that a sugar alcohol was added.
    private static Ingredient Food(int number, Content[] contents) => new() { Name = number == 2 ? "sorbitol 2" : $"food {number}", Profile = new($"food {number}", Nutrients, contents, number == 0 ? 5.7 : null) };

    [Theory]
    [MemberData(nameof(RuleSetNames))]
    public void Draw_AnyFormulas_PrintsWhatEachPanelPrints(string name)
    {
        var rules = RuleSets.Load(LabelKit.Folder, name);
        GenFormulas.Sample(formulas => PrintWhatEachPanelPrints(rules, formulas, rules.IsPerServing ? PanelBasis.Serving(40) : PanelBasis.Per100Grams));
    }

    // Amounts about the limits of the laws' zeros, some of which are held in the reference amount too.
    [Theory]
    [MemberData(nameof(RuleSetNames))]
    public void Draw_FormulasOfNextToNothing_PrintsWhatEachPanelPrints(string name)
    {
        var rules = RuleSets.Load(LabelKit.Folder, name);
        var basis = PanelBasis.Serving(40) with { ReferenceGrams = 55 };
        GenSmall.Sample(formulas => PrintWhatEachPanelPrints(rules, formulas, basis));
    }

    private static void PrintWhatEachPanelPrints(RuleSet rules, ManyFormulas formulas, PanelBasis basis)
    {
        ManyPanels many = new(rules, formulas, basis);
        var room = many.Room(formulas.Count);
        many.Draw(0, formulas.Count, room);
        for (var formula = 0; formula < formulas.Count; formula++)
        {
            var panel = many.Panel(formula);
            for (var figure = 0; figure < many.Figures.Count; figure++)
            {
                var line = panel.Lines.FirstOrDefault(line => line.Key == many.Figures[figure].Key && line.Unit == many.Figures[figure].Unit);
                var at = formula * many.Stride + figure;
                Assert.Equal((many.Figures[figure].Key, line is { IsKnownWell: true } ? line.Declared : null, line is { IsKnownWell: true } ? line.Percent?.Text : null), (many.Figures[figure].Key, room.Declared(at), room.Percent(at)));
                if (line is not null) Assert.Equal(line.Amount.Known, room.Amounts[at], 1e-9 * Math.Max(1, line.Amount.Known));
            }
        }
    }

    // Free of fat asks for less than 0.5 g in 40 g and in 55 g: 0.8 g in 100 g is 0.32 and 0.44 g, 1 g is 0.4 and 0.55 g.
    [Theory]
    [InlineData(0.8, "0 g", "0%")]
    [InlineData(1.0, "0.4 g", "1%")]
    public void Draw_ZeroOnACondition_IsPrintedFromTheSums(double fat, string printed, string percent)
    {
        var contents = Nutrients.All.Select(nutrient => Measured(nutrient.Tag switch { "FAT" => fat, "FASAT" => 0.1, "FATRN" or "CHOLE" => 0, _ => 30.13 })).ToArray();
        ManyPanels many = new(RuleSets.Load(LabelKit.Folder, "ca"), new([Food(1, contents)], [0, 1], [0], [100], [0]), PanelBasis.Serving(40) with { ReferenceGrams = 55 });
        var room = many.Room(1);

        many.Draw(0, 1, room);

        var at = many.Figures.ToList().FindIndex(figure => figure.Key == "fat");
        Assert.False(room.IsExact[0]);
        Assert.Equal((printed, percent), (room.Declared(at), room.Percent(at)));
    }

    // Sodium 12.5 mg in 100 g is 5 mg in 40 g, the end of the band of zero and the limit of its condition.
    [Fact]
    public void Draw_AtTheLimitOfACondition_IsLeftToThePanelItself()
    {
        var contents = Nutrients.All.Select(nutrient => Measured(nutrient.Tag switch { "NA" => 12.5, "FAT" or "FASAT" or "FATRN" or "CHOLE" => 0, _ => 30.13 })).ToArray();
        ManyPanels many = new(RuleSets.Load(LabelKit.Folder, "ca"), new([Food(1, contents)], [0, 1], [0], [100], [0]), PanelBasis.Serving(40));
        var room = many.Room(1);

        many.Draw(0, 1, room);

        Assert.True(room.IsExact[0]);
    }

    // Sodium 0.246 g makes salt 0.615 g: a tie that binary fractions can break the wrong way is left to decimal arithmetic.
    [Fact]
    public void Draw_Tie_IsLeftToThePanelItself()
    {
        var contents = Nutrients.All.Select(nutrient => Measured(nutrient.Tag == "NA" ? 246 : 0)).ToArray();
        ManyPanels many = new(LabelKit.Eu, new([Food(1, contents)], [0, 1], [0], [100], [0]), PanelBasis.Per100Grams);
        var room = many.Room(1);

        many.Draw(0, 1, room);

        Assert.True(room.IsExact[0]);
        Assert.Equal("0.62 g", room.Declared(many.Figures.ToList().FindIndex(figure => figure.Key == "salt")));
    }

    // 21 CFR 101.9(c)(8)(vii): 100 g of enriched flour 20581 hold 154 mcg of folic acid. Where a rule set shows folate always, the bracket stands in a block of panels as in one.
    [Fact]
    public void Draw_FigureWithWhatWasAdded_HasItInBrackets()
    {
        using RuleFolderCopy copy = new();
        copy.Change("us", "declaration.csv", "mcg DFE,FOLDFE | FOL + 0.66667 FOLAC,,voluntary,if asked,", "mcg DFE,FOLDFE | FOL + 0.66667 FOLAC,,voluntary,if known,");
        var flours = LabelKit.Foods(0, ("SR28 20581", 100), ("SR28 20481", 100)).Parts.Select(part => part.Ingredient).ToArray();
        ManyPanels many = new(copy.Load("us"), new(flours, [0, 1, 2], [0, 1], [100, 100], [0, 0]), PanelBasis.Serving(100));
        var room = many.Room(2);

        many.Draw(0, 2, room);

        var at = many.Figures.ToList().FindIndex(figure => figure.Key == "folate");
        Assert.Equal(("290 mcg DFE (150 mcg folic acid)", "30 mcg DFE"), (room.Declared(at), room.Declared(many.Stride + at)));
        Assert.Equal(many.Panel(0).Line("folate").Printed, room.Declared(at));
    }

    [Fact]
    public void Panel_AnyFormula_SaysHowAFigureWasWorkedOut()
    {
        ManyPanels many = new(LabelKit.Eu, new([Food(1, [.. Nutrients.All.Select(_ => Measured(4))])], [0, 1, 3], [0, 0, 0], [100, 20, 30], [0, 5]), PanelBasis.Per100Grams);

        Assert.Contains(many.Panel(1).Line("fat").Explain().Walk(), step => step.Step.Source.ToString().Contains("formula 2, line 2", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_NothingFinished_IsRefused()
    {
        ManyPanels many = new(LabelKit.Eu, new([Food(1, [.. Nutrients.All.Select(_ => Measured(4))])], [0, 1], [0], [100], [100]), PanelBasis.Per100Grams);

        Assert.Throws<ArgumentException>(() => many.Draw(0, 1, many.Room(1)));
    }
}
