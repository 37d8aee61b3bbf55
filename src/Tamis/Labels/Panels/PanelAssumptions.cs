using Tamis.Composition;

namespace Tamis.Labels;

/// <summary>What a nutrition panel took as none, or as published, because no table and no document says.</summary>
internal static class PanelAssumptions
{
    public static IEnumerable<string> Of(NutritionPanel panel)
    {
        var known = panel.Mixture.Parts.Where(part => part.Ingredient.Profile is not null)
            .DistinctBy(part => part.Ingredient.Name, Names.Comparer).Select(part => (part.Ingredient.Name, Profile: part.Ingredient.Profile!)).ToArray();
        var summands = panel.Lines.SelectMany(line => line.Figure.Summands).ToArray();
        foreach (var tag in summands.SelectMany(summand => summand.Formula.Ways).SelectMany(way => way).Where(term => term.CountsAsNone).Select(term => term.Tag).Distinct())
        {
            string[] silent = [.. known.Where(one => IsTakenAsNone(tag, one.Profile, summands)).Select(one => one.Name)];
            if (silent.Length == 0) continue;
            var word = WordFor(tag, summands, known[0].Profile);
            yield return silent.Length == known.Length
                ? $"No table or document states {word} of any ingredient; the panel counts none."
                : $"No table or document states {word} of {PanelWords.List(silent)}; the panel counts none there.";
        }
        if (panel.Rules.ProteinFactor is not { } factor) yield break;
        string[] asPublished = [.. known.Where(one => one.Profile.NitrogenFactor is not > 0 && one.Profile["PROCNT"] is { IsKnown: true, Per100Grams: > 0 }).Select(one => one.Name)];
        if (asPublished.Length > 0)
            yield return $"The law reckons protein as nitrogen × {factor.ToString(System.Globalization.CultureInfo.InvariantCulture)}; the nitrogen factor of {PanelWords.List(asPublished)} is not stated, and its protein is taken as published.";
    }

    private static bool IsTakenAsNone(string tag, NutrientProfile profile, IEnumerable<Summand> summands) =>
        !profile[tag].IsKnown && summands.Any(summand => summand.WayFor(profile)?.Any(term => term.Tag == tag) ?? false);

    /// <summary>The word for a content: what the table calls it, or the summand that is this content alone.</summary>
    public static string WordFor(string tag, IEnumerable<Summand> summands, NutrientProfile profile) =>
        profile.Nutrients.IndexOf(tag) is var column and >= 0
            ? profile.Nutrients.All[column].Word
            : summands.FirstOrDefault(summand => summand.Formula.Ways is [[var only]] && only.Tag == tag)?.Word ?? tag;
}
