using Tamis.Statistics;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Tasting;

/// <summary>How a scale follows a figure of the trials over all tastings: a straight line, the trial as the unit.</summary>
/// <param name="Attribute">The scale.</param>
/// <param name="Points">What the scale does from the lowest to the highest figure, in points.</param>
/// <param name="Range">Its interval; null where nothing says how sure it is.</param>
/// <param name="P">The probability of so much if the figure did nothing; null where nothing says it.</param>
public sealed record DoseEffect(SensoryAttribute Attribute, double Points, Interval? Range, double? P)
{
    private const string Marks = "points", Figure = "figure", Tasting = "tasting", Trial = "trial", Assessor = "assessor";

    /// <summary>Fits points = figure + tasting + trial + assessor; null where fewer than three trials have different figures, or the marks cannot carry it.</summary>
    /// <param name="log">The tastings.</param>
    /// <param name="attribute">The scale.</param>
    /// <param name="figureOf">The figure of a trial; null where it is unknown, and then the trial is left out.</param>
    /// <param name="policy">The kit's customs.</param>
    public static DoseEffect? Of(TastingLog log, SensoryAttribute attribute, Func<string, double?> figureOf, TastingPolicy policy)
    {
        var bench = log.Sessions.Where(session => session.IsBench).Select(session => session.Name).ToHashSet();
        var rows = log.Scores.Where(score => score.Attribute == attribute && !bench.Contains(score.Serving.Tasting)).Select(score => (score, figure: figureOf(score.Serving.Trial))).Where(row => row.figure is not null).ToArray();
        double[] figures = [.. rows.Select(row => row.figure!.Value).Distinct()];
        if (figures.Length < 3 || rows.Select(row => row.score.Serving.Assessor).Distinct().Count() < policy.FewestAssessors) return null;
        var (low, high) = (figures.Min(), figures.Max());
        var tastings = rows.Select(row => row.score.Serving.Tasting).Distinct().Count() > 1 ? $" + {Tasting}" : "";
        // From 0 at the lowest to 1 at the highest figure, so that the slope is what the whole stretch does.
        var outcome = MixedModel.Fit(MixedFormula.Parse($"{Marks} ~ {Figure}{tastings} + (1 | {Trial}) + (1 | {Assessor})"), ModelData.Empty
            .WithNumbers(Marks, [.. rows.Select(row => row.score.Points)]).WithNumbers(Figure, [.. rows.Select(row => (row.figure!.Value - low) / (high - low))])
            .WithFactor(Tasting, [.. rows.Select(row => row.score.Serving.Tasting)]).WithFactor(Trial, [.. rows.Select(row => row.score.Serving.Trial)]).WithFactor(Assessor, [.. rows.Select(row => row.score.Serving.Assessor)]));
        if (outcome.Fit?.FixedEffect(Figure).Estimate is not { } slope || !double.IsFinite(slope.Value)) return null;
        var range = Ranges.Of(slope, policy, attribute.LengthPoints);
        return new(attribute, slope.Value, range, range is null ? null : Tails.StudentBeyond(slope.Value / slope.StandardError, slope.Degrees));
    }
}
