using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Holds the tables of a rule set against each other, so that no figure is without a rounding rule on any day.</summary>
internal static class RuleSetChecks
{
    /// <summary>The condition of a percentage whose amount the label shows as zero.</summary>
    public const string DeclaredAsZero = "declared as 0";

    public static IEnumerable<CellProblem> Problems(IReadOnlyList<DeclaredFigure> declaration, IReadOnlyList<RoundingBand> all, IReadOnlyList<ReferenceValue> references, IReadOnlyList<RuleCondition> conditions)
    {
        foreach (var missing in all.Where(band => band.If.Length > 0 && band.If != DeclaredAsZero && !conditions.Any(condition => Names.Same(condition.Name, band.If))).Select(band => band.If).Distinct())
            yield return new("rounding.csv", 0, "if", missing, $"a condition of {RuleConditionReader.File}, or '{DeclaredAsZero}'");
        // A band that hangs on a condition stands in place of one that does not, so these alone must be whole.
        RoundingBand[] bands = [.. all.Where(band => band.If.Length == 0)];
        var byFigure = bands.ToLookup(band => (Names.Key(band.Key), band.Unit));
        foreach (var figure in byFigure)
        {
            foreach (var fault in Days(figure).SelectMany(day => Faults([.. figure.Where(band => band.InForce.On(day))])).Distinct())
                yield return new("rounding.csv", 0, "from", "", $"the bands of '{figure.Key.Item1}' in {figure.Key.Unit} must join from 0 upwards; {fault}");
        }
        foreach (var figure in declaration.Where(figure => !figure.IsPercentOnly && !byFigure.Contains((Names.Key(figure.Key), figure.Unit))))
            yield return new("rounding.csv", 0, "key", "", $"bands are missing for '{figure.Key}' in {figure.Unit}, which declaration.csv has{Near(figure.Key, bands)}");
        foreach (var figure in declaration.Where(figure => figure.IsPercentOnly && !references.Any(reference => Names.Same(reference.Key, figure.Key) && reference.Unit == figure.Unit)))
            yield return new("reference-values.csv", 0, "key", "", $"a value for '{figure.Key}' in {figure.Unit}, of which declaration.csv prints the percentage alone");
        foreach (var part in declaration.SelectMany(figure => figure.Parts).Where(part => !declaration.Any(figure => Names.Same(figure.Key, part))))
            yield return new("declaration.csv", 0, "parts", part, "lines of this file");
        foreach (var other in declaration.SelectMany(figure => figure.StandsWith).Where(other => !declaration.Any(figure => Names.Same(figure.Key, other))).Distinct(Names.Comparer))
            yield return new("declaration.csv", 0, "stands_with", other, "lines of this file");
        foreach (var reference in references)
        {
            if (!byFigure.Contains((Names.Key(reference.PercentRounding), "%")))
                yield return new("rounding.csv", 0, "key", "", $"bands in % are missing for '{reference.PercentRounding}', which reference-values.csv has{Near(reference.PercentRounding, bands)}");
            if (!declaration.Any(figure => Names.Same(figure.Key, reference.Key) && figure.Unit == reference.Unit))
                yield return new("reference-values.csv", 0, "key", "", $"'{reference.Key}' in {reference.Unit} is no line of declaration.csv");
        }
    }

    // The bands may change on the days on which one begins; on each of them, and today, they must be whole.
    private static IEnumerable<DateOnly?> Days(IEnumerable<RoundingBand> bands) => bands.Select(band => band.InForce.From).Append(null).Distinct();

    private static IEnumerable<string> Faults(IReadOnlyList<RoundingBand> bands)
    {
        if (bands is []) yield break;
        RoundingBand[] ordered = [.. bands.OrderBy(band => band.From).ThenByDescending(band => band.IncludesFrom)];
        if (ordered[0] is not { From: 0, IncludesFrom: true }) yield return "none takes 0";
        for (var i = 0; i + 1 < ordered.Length; i++)
        {
            var (band, next) = (ordered[i], ordered[i + 1]);
            if (band.To is not { } to || to > next.From || to == next.From && band.IncludesTo && next.IncludesFrom) yield return $"two take {Plain(next.From)}";
            else if (to < next.From || !band.IncludesTo && !next.IncludesFrom) yield return $"none takes {Plain(to)}";
        }
        if (ordered[^1].To is { } end) yield return $"none takes more than {Plain(end)}";
    }

    private static string Near(string key, IEnumerable<RoundingBand> bands) =>
        Names.Nearest(key, bands.Select(band => band.Key)) is [var near, ..] && !Names.Same(near, key) ? $"; is it the one called '{near}'?" : "";

    private static string Plain(decimal number) => number.ToString("0.#########", CultureInfo.InvariantCulture);
}
