using MathNet.Numerics.Distributions;
using Tamis.Composition;
using Tamis.Losses;
using Tamis.Statistics.Uncertainty;

namespace Tamis.Labels;

/// <summary>How a kitchen varies from one make to the next.</summary>
/// <param name="WeighingGrams">The standard uncertainty of each line as weighed into the batch, in grams; 0 where nobody stated it.</param>
/// <param name="WaterLossPercent">The standard deviation of the water that leaves, in per cent of it; 0 where nobody stated it.</param>
/// <param name="LeftBehindPercent">The standard deviation of what trim and bowl take of each line, in per cent of the line; 0 where nobody stated it.</param>
public sealed record KitchenVariation(double WeighingGrams = 0, double WaterLossPercent = 0, double LeftBehindPercent = 0)
{
    /// <summary>Whether anything was stated.</summary>
    public bool IsStated => WeighingGrams > 0 || WaterLossPercent > 0 || LeftBehindPercent > 0;
}

/// <summary>How sure a declared figure is.</summary>
/// <param name="Line">The figure.</param>
/// <param name="Declared">The number that is printed, in the unit of the figure.</param>
/// <param name="Number">The figure with its standard uncertainty to first order.</param>
/// <param name="Range">Where it lies in 95 of 100 cases, to first order and no lower than zero.</param>
/// <param name="SpreadShare">The share of the amount, 0 to 1, that comes from contents whose spread is known.</param>
/// <param name="Tolerance">The authority's tolerance; null where it lists none.</param>
/// <param name="OutsideProbability">The probability that one official sample falls outside, to first order; null where there is no tolerance.</param>
/// <param name="Shares">What each ingredient, and the water that leaves, has of the variance, 0 to 1, largest first: the first one is to be analysed first.</param>
public sealed record FigureCertainty(PanelLine Line, double Declared, UncertainNumber Number, Interval Range, double SpreadShare, Tolerance? Tolerance, double? OutsideProbability, IReadOnlyList<(string Ingredient, double Share)> Shares);

/// <summary>How sure the figures of a nutrition panel are: from the spread of contents and from weighing, drying and trimming, to first order and by drawing.</summary>
/// <remarks>First order: JCGM 100:2008, 5.1.2. Contents of one food are taken as independent of one another; one ingredient in several lines moves as one.
/// What has no spread is taken as certain, and <see cref="FigureCertainty.SpreadShare"/> says how much of the figure that is.</remarks>
public sealed class LabelCertainty
{
    private const string WaterThatLeaves = "the water that leaves";

    private readonly string[] _names;
    private readonly UncertainNumber[] _masses;
    private readonly UncertainNumber[][] _values;
    private readonly PanelLine[] _lines;
    private readonly double _perBasis;

    private LabelCertainty(PanelLine[] lines, string[] names, UncertainNumber[] masses, UncertainNumber[][] values, double[] spreadShares, double perBasis)
    {
        (_lines, _names, _masses, _values, _perBasis) = (lines, names, masses, values, perBasis);
        Means = new(masses, [.. Enumerable.Range(0, masses.Length).SelectMany(part => Enumerable.Range(0, lines.Length).Select(line => values[line][part]))]);
        Figures = [.. lines.Select((line, at) => CertaintyOf(line, at, spreadShares[at]))];
    }

    /// <summary>The figures that are known, in the order of the panel.</summary>
    public IReadOnlyList<FigureCertainty> Figures { get; }

    /// <summary>The figures as weighted means of what the ingredients hold, for drawing.</summary>
    public WeightedMeans Means { get; }

    /// <summary>Works out how sure a panel is.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="variation">How the kitchen varies.</param>
    public static LabelCertainty Of(NutritionPanel panel, KitchenVariation? variation = null)
    {
        variation ??= new();
        var lines = panel.Lines.Where(line => line.Value is not null && (line.Rounded?.Number is not null || line.Amount.Known >= 0)).ToArray();
        var groups = panel.Mixture.Parts.GroupBy(part => part.Ingredient.Name, Names.Comparer).Select(group => group.ToArray()).ToArray();
        var names = groups.Select(group => group[0].Ingredient.Name).ToArray();
        var masses = groups.Select(group => MassOf(group, variation)).ToList();
        var values = lines.Select(line => groups.Select(group => ValueOf(line, group[0].Ingredient.Profile)).ToList()).ToArray();
        var spread = lines.Select((_, at) => SpreadShareOf(values[at], masses)).ToArray();
        if (panel.Mixture.WaterLostGrams is var water and > 0)
        {
            // Water that leaves is a part of less than nothing: it takes mass and no content.
            masses.Add(new(-water, water * variation.WaterLossPercent / 100));
            foreach (var line in values) line.Add(0);
            names = [.. names, WaterThatLeaves];
        }
        return new(lines, names, [.. masses], [.. values.Select(line => line.ToArray())], spread, panel.BasisGrams / 100);
    }

    /// <summary>The same probability by drawing.</summary>
    /// <param name="draws">How many draws.</param>
    /// <param name="seed">The same seed gives the same draws on any number of threads.</param>
    /// <param name="threads">At most so many threads; 0 for as many as the machine has.</param>
    /// <returns>For each figure its mean, standard deviation and the share of draws outside the tolerance; null where there is none.</returns>
    public IReadOnlyList<(double Mean, double StandardDeviation, double? Outside)> Drawn(int draws = 100_000, ulong seed = 1, int threads = 0)
    {
        var drawn = Means.Draw(draws, seed, threads);
        return [.. Figures.Select((figure, column) =>
        {
            double? outside = figure.Tolerance is { } tolerance ? OutsideOf(drawn[column], tolerance.Lowest(figure.Declared) / _perBasis, tolerance.Highest(figure.Declared) / _perBasis) : null;
            return (drawn[column].Mean * _perBasis, drawn[column].StandardDeviation * _perBasis, outside);
        })];
    }

    private static double OutsideOf(DrawnNumbers drawn, double lowest, double highest)
    {
        var outside = 0;
        foreach (var value in drawn.Draws) if (value < lowest || value > highest) outside++;
        return (double)outside / drawn.Draws.Length;
    }

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
        foreach (var term in line.Figure.Summands.SelectMany(summand => (summand.WayFor(profile) ?? []).Select(term => (term.Tag, PerUnit: summand.Factor * term.Coefficient * FigureSum.ProteinConversion(term, profile, line.Panel.Rules.ProteinFactor))))
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

    private FigureCertainty CertaintyOf(PanelLine line, int at, double spreadShare)
    {
        var first = Means.FirstOrder(at);
        var uncertainty = first.StandardUncertainty * _perBasis;
        var value = first.Value * _perBasis;
        var declared = (double)(line.Rounded?.Number ?? 0);
        var tolerance = Tolerances.Of(line.Panel.Rules).For(line.Key, line.Unit, declared);
        var half = Propagation.CoverageFactor(0.95) * uncertainty;
        return new(line, declared, new(value, uncertainty), Interval.Between(Math.Max(Math.Min(0, value), value - half), value + half), spreadShare, tolerance,
            tolerance is null ? null : Outside(value, uncertainty, tolerance.Lowest(declared), tolerance.Highest(declared)), SharesOf(first));
    }

    private static double Outside(double value, double uncertainty, double lowest, double highest) => uncertainty > 0
        ? Normal.CDF(value, uncertainty, lowest) + 1 - Normal.CDF(value, uncertainty, highest)
        : value < lowest || value > highest ? 1 : 0;

    private IReadOnlyList<(string, double)> SharesOf(Propagated first)
    {
        var shares = first.VarianceShares;
        return [.. _names.Select((name, part) => (Name: name, Share: shares[part] + shares[_masses.Length + part])).Where(each => each.Share > 0).OrderByDescending(each => each.Share)];
    }

    private static double Square(double number) => number * number;
}
