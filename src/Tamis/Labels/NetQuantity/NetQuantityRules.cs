using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>How far a single pack may fall short of the quantity on it.</summary>
/// <param name="FromGrams">From which nominal quantity on, in grams.</param>
/// <param name="ToGrams">Up to which one, itself included; null where there is no end.</param>
/// <param name="Percent">The shortfall in per cent of the nominal quantity; null where it is in grams.</param>
/// <param name="Grams">The shortfall in grams; null where it is in per cent.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record ShortfallBand(decimal FromGrams, decimal? ToGrams, decimal? Percent, decimal? Grams, RuleOrigin Origin);

/// <summary>The rules of a rule set on net quantities: <c>net-quantity-errors.csv</c> and <c>net-quantity.csv</c>.</summary>
public sealed class NetQuantityRules
{
    private const string OfLiquids = "liquids";

    private static readonly Dictionary<string, bool> Measures = new(Names.Comparer) { ["by volume"] = true, ["by weight"] = false };

    private NetQuantityRules(IReadOnlyList<ShortfallBand> bands, IReadOnlyList<(string Word, string Rule, RuleOrigin Origin)> rules, decimal? roundsUpToGrams, RuleOrigin? liquidsByVolume) =>
        (Bands, Rules, RoundsUpToGrams, LiquidsByVolume) = (bands, rules, roundsUpToGrams, liquidsByVolume);

    /// <summary>The row that wants the quantity of a liquid stated by volume; null where the law does not.</summary>
    public RuleOrigin? LiquidsByVolume { get; }

    /// <summary>The bands, smallest first; none where the law has no such table.</summary>
    public IReadOnlyList<ShortfallBand> Bands { get; }

    /// <summary>The other rules, in words: what the mean must be, how many packs may fall short, how the quantity is written.</summary>
    public IReadOnlyList<(string Word, string Rule, RuleOrigin Origin)> Rules { get; }

    /// <summary>To which step a shortfall in per cent is rounded up, in grams; null where it is not.</summary>
    public decimal? RoundsUpToGrams { get; }

    /// <summary>The rules of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read, or the bands do not join.</exception>
    public static NetQuantityRules Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>How far a single pack may fall short, in grams, with the row; null where no band takes the quantity.</summary>
    /// <param name="nominalGrams">The quantity on the pack, in grams, above 0.</param>
    public (decimal Grams, ShortfallBand Band)? Shortfall(decimal nominalGrams)
    {
        if (Bands.FirstOrDefault(each => nominalGrams >= each.FromGrams && (each.ToGrams is not { } to || nominalGrams <= to)) is not { } band) return null;
        if (band.Grams is { } grams) return (grams, band);
        var share = nominalGrams * band.Percent!.Value / 100;
        return (RoundsUpToGrams is { } step ? Math.Ceiling(share / step) * step : share, band);
    }

    private static NetQuantityRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        List<ShortfallBand> bands = [];
        foreach (var row in folder.RowsIfAny("net-quantity-errors.csv", ["from_g", "to_g", "percent", "grams"], problems))
        {
            ShortfallBand band = new(row.RequiredDecimal("from_g"), row.Decimal("to_g"), row.Decimal("percent"), row.Decimal("grams"), row.Origin());
            if (band.Percent is null == band.Grams is null) row.Cells.Note("percent", "a figure here or under grams, and not in both");
            if (bands.Count > 0 && bands[^1].ToGrams != band.FromGrams) row.Cells.Note("from_g", "where the row above ends: the bands join");
            bands.Add(band);
        }
        List<(string, string, RuleOrigin)> rules = [];
        decimal? step = null;
        RuleOrigin? liquids = null;
        foreach (var row in folder.RowsIfAny("net-quantity.csv", ["key", "value"], problems))
        {
            if (Names.Same(row.Cells.Required("key"), "rounds_up_to_g")) step = row.Decimal("value");
            else
            {
                if (Names.Same(row.Cells.Row["key"], OfLiquids) && row.Choice("value", Measures)) liquids = row.Origin();
                rules.Add((row.Cells.Row["key"], row.Cells.Required("value"), row.Origin()));
            }
        }
        return new(bands, rules, step, liquids);
    }
}
