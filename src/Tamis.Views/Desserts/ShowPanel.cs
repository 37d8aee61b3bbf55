using System.Globalization;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The nutrition panel of all that is put together in a trial, by one rule set: every column that the law asks for, with what is said of the serving; under it every figure before rounding and how it was worked out.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name: <c>eu</c>, <c>us</c>.</param>
    public static Html Panel(Dessert dessert, string trial, string rules) => Guarded(trial, "panel", () =>
    {
        if (dessert.Trial(trial).Whole is not { FinishedGrams: > 0 } whole)
            return Notes.LookAt(Html.Of($"{trial} has no panel yet: {string.Join("; ", dessert.Trial(trial).Gaps)}"));
        if (!HasFigures(whole)) return NoFigures();
        var panel = DessertPanels.ColumnsOf(dessert, trial, rules);
        var leftOff = DessertPanels.LeftOffOf(dessert, trial, rules);
        return ByDay(panel.Columns[0]) + PanelOf(trial, panel.Columns, panel.DraftReasons, DessertPanels.ServingOf(dessert, trial, KitData.Rules(rules)), leftOff, full: true);
    });

    /// <summary>The nutrition panel of one whole piece, as if all that was made were on the pieces.</summary>
    public static Html PiecePanel(Dessert dessert, string trial, string rules)
    {
        if (dessert.Facts.Number("pieces", trial) is not { } pieces) return Notes.Small(Says.English.MissingSheet("dessert.csv", "how many pieces a batch makes, and so what one of them holds"));
        if (dessert.Trial(trial).Whole is not { FinishedGrams: > 0 } whole || !HasFigures(whole)) return NoFigures();
        return PanelOf($"{trial}, a piece", Drawn(whole, KitData.Rules(rules), PanelBasis.Piece(Math.Round(whole.FinishedGrams / pieces), "piece")));
    }

    /// <summary>The nutrition panel of one component, per 100 g finished.</summary>
    public static Html ComponentPanel(Dessert dessert, string trial, string component, string rules) =>
        dessert.Trial(trial).Find(component) is { YieldGrams: > 0 } made
            ? !HasFigures(made.Out) ? NoFigures() : PanelOf($"{trial}, {component}", Drawn(made.Out, KitData.Rules(rules), PanelBasis.Per100Grams))
            : Notes.LookAt(Html.Of($"{component} of {trial} has no known mass, so it has no panel."));

    /// <summary>What stands open before a panel may go on a pack.</summary>
    public static Html PanelVerdict(Dessert dessert, string trial, string rules) => Guarded(trial, "panel", () =>
    {
        if (dessert.Trial(trial).Whole is not { FinishedGrams: > 0 } whole) return Notes.Lead(Says.English.Draft($"the masses of {trial} are not all known"));
        if (!HasFigures(whole)) return NoFigures();
        var columns = DessertPanels.ColumnsOf(dessert, trial, rules);
        var panel = columns.Columns[0];
        var lead = columns.IsDraft
            ? Notes.Lead(Html.Of($"<strong>A draft, not for print.</strong> {string.Join(" ", columns.DraftReasons)}"))
            : Notes.Lead(Html.Of($"<strong>The panel of {trial} is complete.</strong> {(columns.Limit is null ? panel.Status : $"{panel.Rules.DeclarationTitle} {panel.Basis.Words} ({panel.Rules.Title}): {columns.Limit.Form}.")} Nobody has signed it yet: that is for the person who answers for the pack."));
        lead += ByDay(panel);
        List<(string, Html)> open = [.. columns.Missing.Select(missing => ("Supply", Html.Of($"{missing.Line.Key}: {string.Join("; ", UnknownReach.Of(panel, missing.Line.Key))}."))), .. panel.LeftOff.Select(line => ("Left off", Html.Of($"{line.ToString()} {Capital(string.Join("; ", UnknownReach.Of(panel, line.Key)))}."))), .. columns.Remarks.Select(remark => ("Look at", Html.Text(remark)))];
        if (DessertPanels.ServingOf(dessert, trial, panel.Rules) is { Remark.Length: > 0 } serving) open.Add(("Look at", Html.Text(serving.Remark)));
        open.AddRange(LabelRemarks.OfOtherAmounts(dessert, trial, panel.Rules).Select(left => ("Look at", Html.Text(left))));
        if (CookedMixture.RemarkOn(dessert, trial, panel) is { } remark) open.Add(("Look at", Html.Text(remark)));
        open.AddRange(DessertPanels.VoluntaryOf(dessert, trial, panel.Rules).TooLittle.Select(refused => ("Left off", Html.Text(refused.ToString()))));
        if (TrialLimitedPanel.Asked(dessert, trial, panel.Rules) is { } asked)
            open.Add(asked.Limit is { } limit ? ("Few figures", Html.Of($"{Capital(limit.Form)} stands on the panel, as dessert.csv asks; all others are worked out and not printed ({limit.Origin}).{NoteOf(limit)}"))
                : ("Look at", Html.Of($"dessert.csv asks for the panel “{asked.Form}”, and the full one stands: {asked.Because}.")));
        else if (TrialLimitedPanel.Offered(dessert, trial, panel.Rules) is { Count: > 0 } offered)
            open.Add(("May be short", Html.Of($"No panel is asked for, so it may have few figures: write panel_form, {string.Join(" or ", offered.Select(row => $"{row.Form} ({AndAll(row.Figures)})"))} in dessert.csv ({offered[0].Origin}).{NoteOf(offered[0])}")));
        if (!DessertPanels.IsShortWanted(dessert, trial) && columns.Limit is null && DessertPanels.ShortOf(dessert, trial, rules) is { LeftOff.Count: > 0 } leftOff)
            open.Add(("May be short", leftOff.IsSingleServing
                ? Html.Of($"The package is one serving, and its panel may leave off {string.Join(", ", leftOff.LeftOff.Select(row => row.Figure))}; nothing is said in their place. Write panel_form, short in dessert.csv ({leftOff.LeftOff[0].Origin}).")
                : Html.Of($"{(leftOff.IsSimplified ? "The simplified format may be used" : "Figures may be left off")}, with the words: {leftOff.StatementIn("en") ?? string.Join(", ", leftOff.LeftOff.Select(row => row.Figure))} Write panel_form, short in dessert.csv ({leftOff.LeftOff[0].Origin}).")));
        open.AddRange(RemarksFor(dessert, whole).Select(remark => ("Look at", Html.Text(remark))));
        var (allergens, _, unlooked) = AllergensHeld.By(whole.Parts.Select(part => part.Ingredient));
        if (unlooked.Count > 0) open.Add(("Look at", Html.Of($"Nobody has written down the allergens of {string.Join(", ", unlooked)}.")));
        if (allergens.Count > 0) open.Add(("Caution", Html.Of($"Contains {string.Join(", ", allergens)}. How they stand out in the list of ingredients is shown where the list is; local rules and the person who signs come first.")));
        return lead + Notes.Verdict(open);
    });

    private static string NoteOf(LimitedPanel row) => row.Origin.Note.Length > 0 ? $" {Capital(row.Origin.Note)}." : "";

    /// <summary>Panel figures of every trial side by side, per 100 g, before rounding: for the eye, not for a pack.</summary>
    public static Html PanelOfAll(Dessert dessert, string rules)
    {
        var set = KitData.Rules(rules);
        var panels = dessert.Batches.Where(batch => batch.Whole is { FinishedGrams: > 0 } whole && HasFigures(whole)).Select(batch => (batch.Trial, Panel: Drawn(batch.Whole!, set, PanelBasis.Per100Grams))).ToArray();
        if (panels.Length == 0) return Html.Empty;
        var keys = panels.SelectMany(each => each.Panel.Lines).Select(line => (line.Key, line.Unit)).Distinct().ToArray();
        return new DataTable($"Nutrition figures of every trial, {set.Title}",
            [Column.Words("In 100 g"), .. panels.Select(each => Column.Numbers(each.Trial))],
            [.. keys.Select(key => new Row([$"{key.Key}, {key.Unit}", .. panels.Select(each => (Cell)FigureOf(each.Panel, key.Key, key.Unit))]))])
        { IsWide = true, LeastRem = 20 + panels.Length * 4, Caption = Html.Of($"Before rounding. <em>At least</em> stands where the figure is not known for all of the mass.") }.ToHtml();
    }

    private static Num FigureOf(NutritionPanel panel, string key, string unit) =>
        panel.Lines.FirstOrDefault(line => line.Key == key && line.Unit == unit) is { } line ? Figures.Sum(line.Amount, DecimalsOf(line), "")
        : panel.LeftOff.FirstOrDefault(left => left.Key == key) is { } left ? Figures.Sum(left.Amount, 2, "")
        : Num.Said("0");

    // Only what the trial is made from: the store serves other desserts too.
    private static IEnumerable<string> RemarksFor(Dessert dessert, Mixture mixture)
    {
        var used = mixture.Parts.Select(part => part.Ingredient.Name).ToHashSet(Names.Comparer);
        return dessert.Store.Remarks.Where(remark => used.Contains(remark.Ingredient)).Select(remark => remark.Text);
    }

    private static bool HasFigures(Mixture mixture) => mixture.Parts.Any(part => part.Ingredient.Profile is not null);

    private static Html NoFigures() => Notes.Small(Says.English.MissingSheet("ingredients.csv", "a nutrition panel, with the food or the document behind each ingredient"));

    // Rules of another day than the newest are never shown unsaid.
    private static Html ByDay(NutritionPanel panel) => panel.AsOf is { } day ? Notes.Small(Html.Of($"By the rules as of {day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}.")) : Html.Empty;

    private static NutritionPanel Drawn(Mixture mixture, RuleSet rules, PanelBasis basis) => NutritionPanel.Of(mixture, rules, basis, rules.InForce.To);

    private static Html PanelOf(string what, NutritionPanel panel) => PanelOf(what, [panel], panel.DraftReasons, null, null, full: false);

    private static Html PanelOf(string what, IReadOnlyList<NutritionPanel> panels, IReadOnlyList<string> draftReasons, Serving? serving, ShortPanel? leftOff, bool full)
    {
        var rules = panels[0].Rules;
        var language = rules.Languages.Contains("en", Names.Comparer) ? "en" : rules.Languages[0];
        var content = PanelContent.Of(panels, [language], new(serving?.PerContainer, serving?.Household ?? ""));
        content = leftOff?.Without(content, [language]) ?? content;
        var view = new NutritionPanelView(content.Title, content.ColumnHeads, [.. RowsOf(what, panels, content)])
        {
            Form = rules.IsPerServing ? PanelForm.Box : PanelForm.Table,
            LanguageTag = language == "en" ? "" : language,
            Draft = draftReasons.Count > 0 ? "Draft: not for print" : "",
            PercentHead = rules.IsPerServing && content.HasColumns ? content.ColumnPercentHead : content.PercentHead,
            Notes = content.Footnotes,
            Servings = serving?.Lines ?? [],
        };
        var reasons = Html.Join(draftReasons.Select(reason => Notes.StopsRelease(Html.Text(reason))));
        return full ? view.Pack() + reasons + view.Behind() : view.Pack() + reasons;
    }

    // Lines of one figure in several units stand one under the other in one row.
    private static IEnumerable<PanelRow> RowsOf(string what, IReadOnlyList<NutritionPanel> panels, PanelContent content)
    {
        // A box sets vitamins and minerals, which stand after the protein, light and under a bar of their own (21 CFR 101.9(d)).
        var terms = content.Lines.ToDictionary(line => line.Key, Names.Comparer);
        string? before = null;
        var isVitamin = false;
        foreach (var group in panels[0].Lines.Where(line => terms.ContainsKey(line.Key)).GroupBy(line => line.Key))
        {
            var line = group.First();
            isVitamin |= before == "protein";
            var isInTerm = line.IsAmountInTerm && panels.Count == 1;
            yield return new(line.IsAmountInTerm && !isInTerm ? line.TermWithoutAmount : terms[line.Key].Term, isInTerm ? [""] : [.. panels.Select(panel => string.Join('\n', panel.Lines.Where(each => each.Key == group.Key).Select(each => each.Printed)))])
            {
                Indent = terms[line.Key].Indent,
                IsHeavy = terms[line.Key].Indent == 0 && !isVitamin,
                AfterRule = before == "protein",
                Percents = panels[0].Rules.IsPerServing ? [.. panels.Select(panel => PercentIn(panel, line))] : [terms[line.Key].Percent],
                Unrounded = Figures.Sum(line.Amount, DecimalsOf(line), line.Unit),
                Interval = line.Range is { } range ? Figures.Between(range, DecimalsOf(line), line.Unit) : "",
                CoveredShare = line.Amount.CoveredShare,
                Working = line.Explain(),
                Figure = $"{what}, {line.Key}, {panels[0].Basis.Words}",
            };
            before = line.Key;
        }
    }

    private static string PercentIn(NutritionPanel panel, PanelLine line) => panel.Lines.FirstOrDefault(each => each.Key == line.Key && each.Percent is not null)?.Percent?.Text ?? "";

    // Two decimals before rounding show how near a figure is to a step; milligrams and energy need none.
    private static int DecimalsOf(PanelLine line) => line.Unit is "g" ? 2 : line.Amount.Known < 10 ? 1 : 0;
}
