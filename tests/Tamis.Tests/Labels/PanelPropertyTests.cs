using CsCheck;
using Tamis.Composition;
using Tamis.Labels;
using Tamis.Losses;

namespace Tamis.Tests.Labels;

public class PanelPropertyTests
{
    private static readonly double?[] Factors = [null, 5.55, 5.7, 6.25, 6.38];

    // Contents in 100 g, each known or not, some with a range; a few of them add to more than 100 g, which does not matter to sums.
    private static readonly Gen<NutrientProfile> GenProfile =
        from contents in Gen.Select(Gen.Double[0, 40], Gen.Int[0, 9], Gen.Double[0, 3]).Array[LabelKit.Nutrients.Count]
        from factor in Gen.Int[0, 4].Select(index => Factors[index])
        select new NutrientProfile("food", LabelKit.Nutrients, [.. contents.Select(one => one.Item2 == 0 ? Content.Unknown
            : new Content(ContentState.Measured, one.Item1, one.Item2 < 4 ? Interval.Between(Math.Max(0, one.Item1 - one.Item3), one.Item1 + one.Item3) : null, new("generated", Evidence.Computed)))], factor);

    private static readonly Gen<Mixture> GenMixture =
        from parts in Gen.Select(GenProfile, Gen.Double[0.5, 500], Gen.Bool).Array[1, 8]
        from lost in Gen.Double[0, 0.4]
        select new Mixture
        {
            Parts = [.. parts.Select((part, index) => LabelKit.Part($"food {index}", part.Item2, part.Item1, index + 2) with
            {
                MassRangeGrams = part.Item3 ? Interval.Between(part.Item2 * 0.9, part.Item2 * 1.1) : null,
            })],
            EvaporatedGrams = lost * parts.Sum(part => part.Item2),
        };

    private static readonly Gen<RuleSet> GenRules = Gen.Bool.Select(european => european ? LabelKit.Eu : LabelKit.Us);

    private static NutritionPanel Panel(Mixture mixture, RuleSet rules) => NutritionPanel.Of(mixture, rules, PanelBasis.Per100Grams);

    private static void AssertSame(NutritionPanel left, NutritionPanel right)
    {
        Assert.Equal(left.Lines.Select(line => line.Key), right.Lines.Select(line => line.Key));
        foreach (var (one, other) in left.Lines.Zip(right.Lines))
        {
            Assert.Equal(one.Amount.Known, other.Amount.Known, 1e-9 * Math.Max(1, Math.Abs(one.Amount.Known)));
            Assert.Equal(one.Amount.CoveredShare, other.Amount.CoveredShare, 1e-9);
            Assert.Equal(one.Spread is null, other.Spread is null);
            if (one.Spread?.Range is not { } range || other.Spread?.Range is not { } otherRange) continue;
            Assert.Equal(range.Low, otherRange.Low, 1e-9 * Math.Max(1, Math.Abs(range.Low)));
            Assert.Equal(range.High, otherRange.High, 1e-9 * Math.Max(1, range.High));
        }
    }

    [Fact]
    public void Of_MoreOfTheSame_ChangesNoFigurePer100Grams() =>
        Gen.Select(GenMixture, GenRules, Gen.Double[0.01, 100]).Sample((mixture, rules, factor) => AssertSame(Panel(mixture, rules), Panel(mixture.Scaled(factor), rules)), iter: 200);

    [Fact]
    public void Of_PartsInAnotherOrder_ChangesNothing() =>
        Gen.Select(GenMixture, GenRules).Sample((mixture, rules) => AssertSame(Panel(mixture, rules), Panel(mixture with { Parts = [.. mixture.Parts.Reverse()] }, rules)), iter: 200);

    [Fact]
    public void Of_APartWrittenAsTwo_ChangesNothing() =>
        Gen.Select(GenMixture, GenRules, Gen.Double[0.01, 0.99]).Sample((mixture, rules, share) =>
            AssertSame(Panel(mixture, rules), Panel(mixture with { Parts = [.. mixture.Parts.SelectMany(part => new[] { Share(part, share), Share(part, 1 - share) })] }, rules)), iter: 200);

    [Fact]
    public void Of_AContentForgotten_NeverRaisesCoverageNorTheLowerBound() =>
        Gen.Select(GenMixture, GenRules, Gen.Int[0, LabelKit.Nutrients.Count - 1]).Sample((mixture, rules, column) =>
        {
            // What counts as none where nobody states it is knowledge that can be forgotten without a gap; its own tests say that the panel says so.
            if (LabelKit.Nutrients.All[column].Tag is "POLYL" or "OA" or "ALC") return;
            var first = mixture.Parts[0];
            var forgotten = mixture with { Parts = [first with { Ingredient = first.Ingredient with { Profile = Without(first.Ingredient.Profile!, column) } }, .. mixture.Parts.Skip(1)] };
            foreach (var figure in rules.Declaration)
            {
                var (before, after) = (FigureOf(mixture, rules, figure), FigureOf(forgotten, rules, figure));
                Assert.True(after.CoveredShare <= before.CoveredShare + 1e-12);
                if (after.CoveredMassGrams < before.CoveredMassGrams) Assert.Null(after.Whole);
            }
        }, iter: 200);

    [Fact]
    public void Of_AnIngredientWithoutFigures_IsNeverTakenAsZero() =>
        Gen.Select(GenMixture, GenRules, Gen.Double[5, 500]).Sample((mixture, rules, massGrams) =>
        {
            var panel = Panel(mixture with { Parts = [.. mixture.Parts, LabelKit.Part("unknown", massGrams, null)] }, rules);
            if (massGrams / panel.Mixture.WeighedInGrams < 0.002) return;
            Assert.All(panel.Lines, line => Assert.Null(line.Value));
            Assert.True(panel.IsDraft);
        }, iter: 200);

    [Fact]
    public void Explain_OfEveryLine_AgreesWithThePanel() =>
        Gen.Select(GenMixture, GenRules).Sample((mixture, rules) =>
        {
            var panel = Panel(mixture, rules);
            foreach (var line in panel.Lines)
            {
                var notRounded = line.Explain().From[0];
                var whole = notRounded.From[0];
                Assert.Equal(line.Amount.Known, notRounded.Value);
                Assert.Equal(line.Amount.Known, whole.Value / notRounded.From[1].Value * 100, 1e-9 * Math.Max(1, Math.Abs(line.Amount.Known)));
                Assert.Equal(mixture.FinishedGrams, notRounded.From[1].Value, 1e-9);
                Assert.Equal(mixture.Parts.Count, whole.From.Count);
                foreach (var part in whole.From.Where(part => line.IsEnergy && !double.IsNaN(part.Value)))
                    Assert.Equal(part.Value, part.From.Skip(1).Where(summand => !double.IsNaN(summand.Value)).Sum(summand => summand.Value), 1e-9 * Math.Max(1, Math.Abs(part.Value)));
            }
        }, iter: 200);

    private static Amount FigureOf(Mixture mixture, RuleSet rules, DeclaredFigure figure)
    {
        var panel = NutritionPanel.Of(mixture, rules with { KnownSharePercent = 100 }, PanelBasis.Whole, asked: [figure.Key]);
        return panel.Lines.Where(line => line.Key == figure.Key && line.Unit == figure.Unit).Select(line => line.Amount)
            .Concat(panel.LeftOff.Where(line => line.Key == figure.Key).Select(line => line.Amount)).First();
    }

    private static MixturePart Share(MixturePart part, double share) => part with
    {
        MassGrams = part.MassGrams * share,
        MassRangeGrams = part.MassRangeGrams is { } range ? range * share : null,
    };

    private static NutrientProfile Without(NutrientProfile profile, int column) =>
        new(profile.Name, profile.Nutrients, [.. profile.Nutrients.All.Select((_, index) => index == column ? Content.Unknown : profile[index])], profile.NitrogenFactor);
}
