using Tamis.Composition;
using Tamis.Labels;
using Tamis.Losses;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>All that is put together in a trial, with what cooking leaves of its vitamins: rows <c>retention</c> of <c>dessert.csv</c>, each a component, a line of it and the factors, such as <c>cake; egg; eggs, baked</c>.</summary>
public static class CookedMixture
{
    /// <summary>The mixture whose contents are those of what is eaten, as far as the kitchen says how its lines are cooked; without such a row they are those of what was weighed in.</summary>
    /// <exception cref="TableException">A row names a component, a line or factors that are not there, or the masses of the trial are not all known.</exception>
    public static Mixture Of(Dessert dessert, string trial)
    {
        var (batch, whole) = (dessert.Trial(trial), dessert.Whole(trial));
        List<CellProblem> problems = [];
        Dictionary<Source, Retention> cooked = [];
        foreach (var (value, row) in dessert.Facts.RowsOf("retention", batch.Trial))
            foreach (var (line, retention) in Read(batch, value, row, problems)) cooked[line.Origin] = retention;
        if (problems.Count > 0) throw new TableException(problems);
        return cooked.Count == 0 ? whole : whole with
        {
            Parts = [.. whole.Parts.Select(part => cooked.TryGetValue(part.Origin, out var retention) && part.Ingredient.Profile is { } profile
                ? part with { Ingredient = part.Ingredient with { Profile = profile.Cooked(retention) } } : part)],
        };
    }

    /// <summary>What a reader should know of the vitamins on a panel: that nobody says what cooking leaves of them, or that the factors do not speak of one. Null where it has none, or the kitchen and the factors say it of all.</summary>
    public static string? RemarkOn(Dessert dessert, string trial, NutritionPanel panel)
    {
        var vitamins = KitData.Composition.Nutrients.All.Where(nutrient => nutrient.Kind == "vitamins").ToLookup(nutrient => nutrient.Word, nutrient => nutrient.Tag, Names.Comparer);
        if (dessert.Facts.RowsOf("retention", trial).Any())
        {
            // Of these the table has no column, and no other published factors were to be had.
            string[] silent = [.. panel.Lines.Where(line => vitamins[line.Content].Any() && vitamins[line.Content].All(tag => !KitData.Retentions.All[0].SpeaksOf(tag))).Select(line => line.Key).Distinct()];
            return silent.Length == 0 ? null : $"{string.Join(", ", silent)} as weighed in: the factors of {KitData.Retentions.All[0].Source} do not speak of {(silent.Length == 1 ? "it" : "them")}. Have {(silent.Length == 1 ? "it" : "them")} analysed in what is baked.";
        }
        string[] shown = [.. panel.Lines.Where(line => vitamins.Contains(line.Content)).Select(line => line.Key).Distinct()];
        return shown.Length == 0 ? null : $"{string.Join(", ", shown)} as weighed in: what cooking destroys is not taken off. Write rows retention in dessert.csv, such as cake; egg; eggs, baked.";
    }

    private static IEnumerable<(BatchLine Line, Retention Retention)> Read(Batch batch, string value, SheetRow row, List<CellProblem> problems)
    {
        if (value.Split(';', StringSplitOptions.TrimEntries) is not [var component, var line, var factors])
        {
            problems.Add(row.Problem("value", "component; line; factors of retention.csv, such as: cake; egg; eggs, baked"));
            yield break;
        }
        var lines = batch.Find(component)?.Lines.Where(each => !each.IsComponent && Names.Same(each.Name, line)).ToArray() ?? [];
        if (lines.Length == 0) problems.Add(row.Problem("value", $"a component of {batch.Trial} and an ingredient among its lines; near ones: {string.Join(", ", Near(batch, component, line))}"));
        var known = KitData.Retentions;
        var found = known.All.FirstOrDefault(each => Names.Same(each.Key, factors) || Names.Same(each.Description, factors));
        if (found is null) problems.Add(row.Problem("value", $"factors of retention.csv; near ones: {string.Join(" | ", Names.Nearest(factors, known.All.Select(each => each.Description)))}"));
        else foreach (var each in lines) yield return (each, found);
    }

    private static IEnumerable<string> Near(Batch batch, string component, string line) => batch.Find(component) is { } made
        ? Names.Nearest(line, made.Lines.Where(each => !each.IsComponent).Select(each => each.Name)) : Names.Nearest(component, batch.Components.Select(each => each.Name));
}
