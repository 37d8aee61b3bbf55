using MathNet.Numerics.Distributions;
using Tamis.Composition;
using Tamis.Losses;
using Tamis.Statistics.Uncertainty;

namespace Tamis.Labels;

/// <summary>How sure the figures of a nutrition panel are: from the spread of contents and from weighing, drying and trimming, to first order and by drawing.</summary>
/// <remarks>First order: JCGM 100:2008, 5.1.2; drawing: JCGM 101:2008. Contents of one food are taken as independent of one another; one ingredient in several lines moves as one.
/// A sample comes from one make: contents, weighing and the drying of the make are shared by all its packs, the drying of each piece is averaged over them, the laboratory's uncertainty over its analyses.
/// What has no spread is taken as certain, and <see cref="FigureCertainty.SpreadShare"/> says how much of the figure that is.</remarks>
public sealed class LabelCertainty
{
    private const string WaterThatLeaves = "the water that leaves";

    private static readonly OfficialSample OnePack = new(1, 1);

    private readonly PanelLine[] _lines;
    private readonly string[] _names;
    private readonly UncertainNumber[] _masses;
    private readonly UncertainNumber[] _values;
    private readonly double _waterLostGrams;
    private readonly KitchenVariation _variation;
    private readonly double _perBasis;

    private LabelCertainty(NutritionPanel panel, KitchenVariation variation, IReadOnlyDictionary<string, ClaimSubject> claims)
    {
        (_variation, _waterLostGrams, _perBasis) = (variation, panel.Mixture.WaterLostGrams, panel.BasisGrams / 100);
        _lines = [.. panel.Lines.Where(line => line.Value is not null && !line.Figure.IsPercentOnly)];
        var groups = panel.Mixture.Parts.GroupBy(part => part.Ingredient.Name, Names.Comparer).Select(group => group.ToArray()).ToArray();
        _names = [.. groups.Select(group => group[0].Ingredient.Name), WaterThatLeaves];
        _masses = [.. groups.Select(group => MassOf(group, variation))];
        var values = groups.Select(group => _lines.Select(line => ValueOf(line, group[0].Ingredient.Profile)).ToArray()).ToArray();
        // Water that leaves is a part of less than nothing: it takes mass and no content.
        _values = [.. values.SelectMany(line => line), .. _lines.Select(_ => (UncertainNumber)0)];
        var ofSamples = new Dictionary<int, WeightedMeans> { [1] = MeansOf(1) };
        Figures = [.. _lines.Select((line, at) => CertaintyOf(line, at, SpreadShareOf([.. values.Select(part => part[at])], _masses), claims.GetValueOrDefault(line.Key), ofSamples))];
    }

    /// <summary>The figures that are known, in the order of the panel.</summary>
    public IReadOnlyList<FigureCertainty> Figures { get; }

    /// <summary>Works out how sure a panel is.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="variation">How the kitchen varies; null where nothing was stated.</param>
    /// <param name="claims">Figures that a claim is made of, by their keys; null where there is none.</param>
    public static LabelCertainty Of(NutritionPanel panel, KitchenVariation? variation = null, IReadOnlyDictionary<string, ClaimSubject>? claims = null) =>
        new(panel, variation ?? new(), claims ?? new Dictionary<string, ClaimSubject>(Names.Comparer));

    /// <summary>The same by drawing.</summary>
    /// <param name="draws">How many draws, two at least.</param>
    /// <param name="seed">The same seed gives the same draws on any number of threads.</param>
    /// <param name="threads">At most so many threads; 0 for as many as the machine has.</param>
    /// <returns>A row for each of <see cref="Figures"/>.</returns>
    public IReadOnlyList<DrawnFigure> Drawn(int draws = 100_000, ulong seed = 1, int threads = 0)
    {
        if (Figures.Count == 0) return [];
        Dictionary<OfficialSample, (DrawnColumns Figures, DrawnColumns? Errors)> drawn = [];
        foreach (var sample in Figures.Select(figure => figure.Tolerance?.Sample ?? OnePack).Append(OnePack).Distinct())
            drawn[sample] = (MeansOf(sample.Units).Draw(draws, seed, threads), Errors(sample)?.Draw(draws, seed + 1, threads));
        return [.. Figures.Select((figure, column) =>
        {
            var one = drawn[OnePack].Figures[column];
            var sample = figure.Tolerance is { } tolerance && tolerance.Sample != OnePack ? OutsideOf(drawn[tolerance.Sample], column, figure) : null;
            return new DrawnFigure(one.Mean * _perBasis, one.StandardDeviation * _perBasis, OutsideOf(drawn[OnePack], column, figure), sample);
        })];
    }

    private double? OutsideOf((DrawnColumns Figures, DrawnColumns? Errors) drawn, int column, FigureCertainty figure)
    {
        if (figure.Accepted is not var (lowest, highest)) return null;
        var values = drawn.Figures[column].Draws;
        var errors = drawn.Errors is { } all ? all[column].Draws : [];
        var outside = 0;
        for (var draw = 0; draw < values.Length; draw++)
        {
            var result = (values[draw] + (errors.IsEmpty ? 0 : errors[draw])) * _perBasis;
            if (result < lowest || result > highest) outside++;
        }
        return (double)outside / values.Length;
    }

    private WeightedMeans MeansOf(int packs) => new([.. _masses, new(-_waterLostGrams, _waterLostGrams * _variation.WaterPercentOf(packs) / 100)], _values);

    // What the laboratory adds to each figure in 100 g.
    private WeightedMeans? Errors(OfficialSample sample) => _variation.MeasurementPercent > 0
        ? new([1], [.. Figures.Select(figure => new UncertainNumber(0, MeasurementOf(figure.Number.Value, sample) / _perBasis))])
        : null;

    private double MeasurementOf(double value, OfficialSample sample) => Math.Abs(value) * _variation.MeasurementPercent / 100 / Math.Sqrt(sample.Analyses);

    private static UncertainNumber MassOf(MixturePart[] parts, KitchenVariation variation)
    {
        var mass = parts.Sum(part => part.MassGrams);
        var ranges = parts.Sum(part => part.MassRangeGrams is { IsPoint: false } range ? Square((range.High - range.Low) / 2 / Math.Sqrt(3)) : Square(variation.WeighingGrams));
        return new(mass, Math.Sqrt(ranges + Square(mass * variation.LeftBehindPercent / 100)));
    }

    // What 100 g of an ingredient hold of a figure, with the spread of all the contents that it is summed from.
    private static UncertainNumber ValueOf(PanelLine line, NutrientProfile? profile)
    {
        var (value, _) = FigureSum.Per100Grams(line.Figure, profile, line.Panel.Rules.ProteinFactor);
        if (profile is null) return value;
        var variance = 0.0;
        UncertainNumber? only = null;
        var count = 0;
        foreach (var term in line.Figure.Summands.SelectMany(summand => FigureSum.Moving(summand, profile, line.Panel.Rules.ProteinFactor).Select(term => (term.Tag, PerUnit: summand.Factor * term.Coefficient * FigureSum.ProteinConversion(term, profile, line.Panel.Rules.ProteinFactor))))
            .GroupBy(term => term.Tag).Select(terms => (Tag: terms.Key, PerUnit: terms.Sum(term => term.PerUnit))))
        {
            if (ContentInterval.Of(profile[term.Tag]) is not { } interval) continue;
            variance += Square(term.PerUnit * interval.Number.StandardUncertainty);
            only = new(value, Math.Abs(term.PerUnit) * interval.Number.StandardUncertainty, interval.Number.Shape);
            count++;
        }
        // A single content keeps the shape of its distribution; several make a sum that is near to normal.
        return count == 1 && only is { Shape: DrawShape.Normal or DrawShape.Rectangular } alone ? alone : new(value, Math.Sqrt(variance));
    }

    private static double SpreadShareOf(IReadOnlyList<UncertainNumber> values, IReadOnlyList<UncertainNumber> masses)
    {
        var (all, spread) = (0.0, 0.0);
        for (var part = 0; part < values.Count; part++)
        {
            var amount = Math.Abs(values[part].Value * masses[part].Value);
            all += amount;
            if (values[part].StandardUncertainty > 0) spread += amount;
        }
        return all > 0 ? spread / all : 0;
    }

    private FigureCertainty CertaintyOf(PanelLine line, int at, double spreadShare, ClaimSubject subject, Dictionary<int, WeightedMeans> ofSamples)
    {
        var first = ofSamples[1].FirstOrder(at);
        var (value, uncertainty) = (first.Value * _perBasis, first.StandardUncertainty * _perBasis);
        var half = Propagation.CoverageFactor(0.95) * uncertainty;
        var declared = DeclaredOf(line.Rounded!);
        FigureCertainty figure = new(line, declared, new(value, uncertainty), Interval.Between(Math.Max(Math.Min(0, value), value - half), value + half), spreadShare) { Shares = SharesOf(first) };
        if (Tolerances.Of(line.Panel.Rules).For(line.Key, line.Unit, declared, subject) is not { } tolerance) return figure;
        var (lowest, highest) = (tolerance.Lowest(declared, _variation.MeasurementPercent), Math.Max(tolerance.Highest(declared, _variation.MeasurementPercent), PrintedUpTo(line.Rounded!)));
        return figure with
        {
            Tolerance = tolerance,
            Accepted = (lowest, highest),
            OutsideProbability = Outside(value, uncertainty, OnePack),
            SampleProbability = tolerance.Sample == OnePack ? null : Outside(value, OfPacks(tolerance.Sample.Units).FirstOrder(at).StandardUncertainty * _perBasis, tolerance.Sample),
        };

        double Outside(double mean, double deviation, OfficialSample sample) => LabelCertainty.Outside(mean, double.Hypot(deviation, MeasurementOf(mean, sample)), lowest, highest);

        WeightedMeans OfPacks(int packs) => ofSamples.TryGetValue(packs, out var known) ? known : ofSamples[packs] = MeansOf(packs);
    }

    private static double DeclaredOf(RoundedAmount rounded) => (double)(rounded.ShownNumber ?? rounded.Band.To ?? rounded.Band.From);

    // What the law prints as zero, or in words, cannot be wrong for being more than the zero.
    private static double PrintedUpTo(RoundedAmount rounded) => rounded.Band.Method == RoundingMethod.Text ? (double)(rounded.Band.To ?? 0)
        : rounded is { IsZero: true, Band.Method: RoundingMethod.Nearest } ? (double)rounded.Band.Increment / 2 : 0;

    /// <summary>The probability that a normal number lies outside two limits; an exact number lies outside or does not.</summary>
    internal static double Outside(double value, double uncertainty, double lowest, double highest) => uncertainty > 0
        ? Normal.CDF(value, uncertainty, lowest) + Normal.CDF(-value, uncertainty, -highest)
        : value < lowest || value > highest ? 1 : 0;

    private IReadOnlyList<(string, double)> SharesOf(Propagated first)
    {
        var shares = first.VarianceShares;
        return [.. _names.Select((name, part) => (Name: name, Share: shares[part] + shares[_names.Length + part])).Where(each => each.Share > 0).OrderByDescending(each => each.Share)];
    }

    private static double Square(double number) => number * number;
}
