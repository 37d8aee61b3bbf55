using Tamis.Desserts;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What a page speaks of: the dessert, how many trials and tastings stand behind it, and whether its data are invented.</summary>
    public static Html About(Dessert dessert)
    {
        var trials = dessert.Batches.Count;
        var (tastings, bench) = (dessert.Tastings?.Sessions.Count(session => !session.IsBench) ?? 0, dessert.Tastings?.Sessions.Count(session => session.IsBench) ?? 0);
        var counts = $"{(trials == 1 ? "one trial" : $"{trials} trials")}{(tastings == 0 ? "" : tastings == 1 ? ", one tasting" : $", {tastings} tastings")}{(bench == 0 ? "" : bench == 1 ? " and one at the bench" : $" and {bench} at the bench")}";
        var invented = dessert.Facts.Text("about") is { } about ? Html.Of($" {Capital(about)} data.") : Html.Empty;
        return Notes.Paragraph(Html.Of($"<strong>{dessert.Name}</strong>: {counts}.{invented} Local rules for food safety, allergens and claims come first, and so does the judgement of whoever signs."));
    }

    /// <summary>Links to the weighing sheets, the one that is meant to be served first.</summary>
    public static Html WeighingLinks(Dessert dessert)
    {
        var candidate = dessert.Candidate;
        var others = dessert.Batches.Where(batch => !Names.Same(batch.Trial, candidate)).Select(batch => Link(dessert, batch.Trial, batch.Trial)).ToArray();
        var pieces = dessert.WantedPieces(candidate);
        var main = Link(dessert, candidate, $"Weighing sheet of {candidate}{(pieces == 1 ? "" : $" for {Figures.Number(pieces, 0).Text} pieces")}");
        return Notes.Paragraph(others.Length == 0 ? main : Html.Of($"{main}; of {Html.Join(others, ", ")}."));
    }

    /// <summary>The sheets that are not there, with what each would add, and the columns that nobody reads.</summary>
    public static Html Missing(Dessert dessert)
    {
        List<Html> lines = [.. dessert.SheetsMissing.Select(missing => Says.English.MissingSheet(missing.File, missing.WouldAdd))];
        string[] bare = [.. dessert.Batches.SelectMany(batch => batch.Components).SelectMany(component => component.Out.Parts)
            .Where(part => part.Ingredient.Profile is null).Select(part => part.Ingredient.Name).Distinct(Names.Comparer)];
        if (bare.Length > 0) lines.Add(Html.Of($"No figures stand behind {string.Join(", ", bare)}: a food or a document would close the gap in coverage."));
        if (dessert.UnreadTrialColumns.Count > 0) lines.Add(Html.Of($"Columns of formula.csv that are kept and not read: {string.Join(", ", dessert.UnreadTrialColumns)}."));
        lines.AddRange(dessert.Batches.Select(batch => batch.Whole).OfType<Losses.Mixture>().SelectMany(whole => RemarksFor(dessert, whole)).Distinct().Select(remark => Html.Text(remark)));
        return lines.Count == 0 ? Notes.Paragraph(Html.Of($"Nothing: every sheet that the kit knows is there.")) : Html.Of($"<ul>{lines.Select(line => Html.Of($"<li>{line}</li>"))}</ul>\n");
    }

    /// <summary>The ratios of every component that more than one trial wrote anew.</summary>
    public static Html RatiosThatMoved(Dessert dessert)
    {
        string[] moved = [.. dessert.Batches.SelectMany(batch => batch.Components).Select(component => component.Name).Distinct(Names.Comparer)
            .Where(name => dessert.Batches.Count(batch => batch.Find(name) is { MassInGrams: > 0 } made && Names.Same(made.WrittenIn, batch.Trial)) > 1)];
        return moved.Length == 0 ? Notes.Small(Html.Of($"No component was written anew yet."))
            : Html.Join(moved.Select(name => Notes.Folded(Capital(name), RatiosAcross(dessert, name))));
    }

    private static Html Link(Dessert dessert, string trial, string words) => Html.Of($"<a href=\"{WeighingPages.FileName(dessert, trial)}\">{words}</a>");
}
