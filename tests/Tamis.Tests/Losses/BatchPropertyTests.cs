using System.Globalization;
using CsCheck;
using Tamis.Losses;

namespace Tamis.Tests.Losses;

/// <summary>What must hold of every batch, whatever a cook writes.</summary>
public class BatchPropertyTests
{
    private sealed record InRow(string Line, int Step, double Grams);

    private sealed record OutRow(string Word, int Step, double Percent);

    private static readonly Gen<InRow> GenIn = Gen.Select(Gen.OneOf(Gen.Const("flour"), Gen.Const("butter"), Gen.Const("sugar"), Gen.Const("milk"), Gen.Const("powder")), Gen.Int[1, 3], Gen.Double[0.5, 900],
        (line, step, grams) => new InRow(line, step, Math.Round(grams, 1)));

    private static readonly Gen<OutRow> GenOut = Gen.Select(Gen.OneOf(Gen.Const("bowl"), Gen.Const("trim"), Gen.Const("water")), Gen.Int[1, 3], Gen.Double[0, 15],
        (word, step, percent) => new OutRow(word, step, Math.Round(percent, 1)));

    // A first line of milk keeps enough water in for what evaporates.
    private static readonly Gen<(InRow[] In, OutRow[] Out)> GenComponent =
        Gen.Select(GenIn.Array[1, 6], GenOut.Array[0, 4], (lines, outs) => (lines.Prepend(new InRow("milk", 1, 4000)).ToArray(), outs));

    [Fact]
    public void MassIn_EqualsYieldPlusNamedLosses() => GenComponent.Sample(component =>
    {
        var made = Make(component.In, component.Out);
        Near(made.MassInGrams, made.YieldGrams + made.Losses.Sum(loss => loss.MassGrams));
    });

    [Fact]
    public void Scaling_ChangesNoFigurePer100Grams() => Gen.Select(GenComponent, Gen.Double[0.01, 50]).Sample((component, factor) =>
    {
        var made = Make(component.In, component.Out);
        var scaled = Batch(component.In, component.Out).Scaled(factor).Find("x")!;
        Near(made.YieldGrams * factor, scaled.YieldGrams);
        SameComposition(made.Out, scaled.Out);
    });

    [Fact]
    public void OrderOfLines_ChangesNothing() => Gen.Select(GenComponent, Gen.Int[0, 1000]).Sample((component, seed) =>
    {
        var shuffled = component.In.ToArray();
        new Random(seed).Shuffle(shuffled);
        SameBatch(Make(component.In, component.Out), Make(shuffled, component.Out));
    });

    [Fact]
    public void SplittingALine_ChangesNothing() => Gen.Select(GenComponent, Gen.Double[0.1, 0.9]).Sample((component, share) =>
    {
        var first = component.In[^1];
        InRow[] split = [.. component.In[..^1], first with { Grams = first.Grams * share }, first with { Grams = first.Grams * (1 - share) }];
        SameBatch(Make(component.In, component.Out), Make(split, component.Out));
    });

    [Fact]
    public void Nesting_EqualsWritingTheLinesOut() => GenComponent.Sample(component =>
    {
        // The inner component is used whole, so the outer one must be what the lines written out would be.
        var written = Make(component.In, component.Out);
        var nested = Kitchen.Batch(Text("inner", component.In, component.Out) + "x,inner,,1,rest\n").Find("x")!;
        Near(written.YieldGrams, nested.YieldGrams);
        SameComposition(written.Out, nested.Out);
    });

    [Fact]
    public void InheritedComponent_EqualsOneWrittenOut() => GenComponent.Sample(component =>
    {
        static string Twice(string text, bool blank) => string.Join('\n', text.Split('\n').Select((line, i) => line.Length == 0 ? line : i == 0 ? line.Replace("T1", "T1,T2") : line + "," + (blank ? "" : line[(line.LastIndexOf(',') + 1)..])));
        const string trials = "trial,parent\nT1,\nT2,T1\n";
        var text = Text("x", component.In, component.Out);
        SameBatch(Kitchen.Batch(Twice(text, true), "T2", trials).Find("x")!, Kitchen.Batch(Twice(text, false), "T2", trials).Find("x")!);
    });

    [Fact]
    public void Unknown_NeverRaisesCoverageNorBecomesZero() => GenComponent.Sample(component =>
    {
        var made = Make(component.In, component.Out);
        var known = component.In.Where(row => row.Line != "powder").ToArray();
        var fat = made.Out.Amount("FAT");
        Assert.Equal(known.Length == component.In.Length, fat.IsWhole);
        Assert.Equal(fat.IsWhole, made.Out.Per100Grams("FAT") is not null);
    });

    [Fact]
    public void DifferenceToItself_IsNone() => GenComponent.Sample(component =>
    {
        var batch = Batch(component.In, component.Out);
        var difference = BatchDifference.Between(batch, batch);
        Assert.True(difference.IsNone);
        Assert.Empty(difference.SharesOnly);
    });

    [Fact]
    public void Difference_OfAScaledBatch_IsOneFactor() => GenComponent.Sample(component =>
    {
        var batch = Batch(component.In, component.Out);
        if (batch.Find("x")!.Lines.Select(line => line.Name).Distinct().Count() < 2) return;
        var (_, factor) = Assert.Single(BatchDifference.Between(batch, batch.Scaled(1.5)).ScaledComponents);
        Near(1.5, factor);
    });

    private static Batch Batch(InRow[] lines, OutRow[] outs) => Kitchen.Batch(Text("x", lines, outs));

    private static ComponentBatch Make(InRow[] lines, OutRow[] outs) => Batch(lines, outs).Find("x")!;

    private static string Text(string component, InRow[] lines, OutRow[] outs) => "component,line,way,step,T1\n"
        + string.Concat(lines.Select(row => string.Create(CultureInfo.InvariantCulture, $"{component},{row.Line},,{row.Step},{row.Grams:R} g\n")))
        + string.Concat(outs.Select(row => string.Create(CultureInfo.InvariantCulture, $"{component},{row.Word},out,{row.Step},{row.Percent:R} %\n")));

    private static void SameBatch(ComponentBatch one, ComponentBatch other)
    {
        Near(one.MassInGrams, other.MassInGrams);
        Near(one.YieldGrams, other.YieldGrams);
        SameComposition(one.Out, other.Out);
    }

    private static void SameComposition(Mixture one, Mixture other)
    {
        foreach (var tag in new[] { "WATER", "FAT", "SUGAR" })
        {
            var (a, b) = (one.Amount(tag), other.Amount(tag));
            Near(a.CoveredShare, b.CoveredShare);
            Near(a.Known / one.FinishedGrams, b.Known / other.FinishedGrams);
        }
    }

    // Sums in another order differ in the last of sixteen digits; ten are asked for.
    private static void Near(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-10 * Math.Max(1, Math.Abs(expected)), $"{expected:R} against {actual:R}");
}
