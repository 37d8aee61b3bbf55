using System.Globalization;

namespace Tamis.Physics;

/// <summary>Shares of masses of which a part may be unknown.</summary>
internal static class MassShare
{
    /// <summary>A part of a mass in the unit of a figure, with the range that unknown contents leave.</summary>
    /// <param name="figure">The figure: its name, its unit (per cent, or a plain ratio).</param>
    /// <param name="part">The part, in grams.</param>
    /// <param name="of">The mass that it is a part of, in grams.</param>
    /// <param name="ofWord">What that mass is, in words.</param>
    /// <param name="lacking">The ingredients of which the part or the mass is not known.</param>
    public static Predicted Of(IFigure figure, Amount part, Amount of, string ofWord, Func<IReadOnlyList<string>> lacking)
    {
        var rule = PhysicsData.Kit.Equation("share of a mass");
        var equation = rule with { Name = figure.Name, Unit = figure.Unit };
        var least = PhysicsData.Kit.Constant("least known share for a verdict").Value / 100;
        if (of.Known <= 0) return Predicted.Unknown(equation, $"any {ofWord}");
        if (part.CoveredShare < least || of.CoveredShare < least) return Predicted.Unknown(equation, lacking());
        var factor = figure.Unit == "%" ? 100 : 1;
        var (missing, missingOf) = (part.TotalMassGrams - part.CoveredMassGrams, of.TotalMassGrams - of.CoveredMassGrams);
        Interval? range = missing <= 1e-9 && missingOf <= 1e-9 ? null : Interval.Between(factor * part.Known / (of.Known + missingOf), factor * (part.Known + missing) / of.Known);
        return Predicted.Computed(equation, factor * part.Known / of.Known, () =>
        [
            new(figure.Name, part.Known, "g", rule.Source),
            new(ofWord, of.Known, "g", rule.Source),
            .. range is null ? Array.Empty<Working>() : [new(string.Create(CultureInfo.InvariantCulture, $"not known for {string.Join(", ", lacking())}"), missing + missingOf, "g", rule.Source)],
        ]) with
        { Range = range };
    }

    /// <summary>A mass that is wholly known.</summary>
    public static Amount Whole(double grams) => new(grams, Math.Max(grams, 1e-300), Math.Max(grams, 1e-300));
}
