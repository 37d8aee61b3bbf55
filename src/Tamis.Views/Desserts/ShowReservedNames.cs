using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Every reserved name that a trial would print, in its own name, its claims and its list, held against composition: condition, figure, limit and margin.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name: <c>eu</c>.</param>
    /// <param name="day">The day whose rules count; with no day, those that have no end.</param>
    public static Html ReservedNames(Dessert dessert, string trial, string rules, DateOnly? day = null) => Guarded(trial, "reserved names", () =>
    {
        var set = KitData.Rules(rules);
        var printed = TrialNames.Of(dessert, trial, rules, day);
        if (printed.Count == 0) return Notes.Small(Html.Of($"{set.Title}: {trial} prints no name that the kit’s rules keep for a composition."));
        var verdicts = Notes.Verdict([.. printed.OrderByDescending(each => each.Verdict).Select(each => CompositionFindings.PaperOf(dessert, rules, each) is { } paper && each.Verdict == NameVerdict.CannotBeSaid
            ? ("By its document", SentenceOf(each, paper)) : (WordOf(each.Verdict), SentenceOf(each, null)))]);
        var folded = printed.Where(each => each.Checks.Count > 0).Select(each => Notes.Folded($"{Capital(each.Said.Words)}, in {each.Where}: condition by condition", TableOf(each, set), open: each.Verdict == NameVerdict.Refused));
        return verdicts + Html.Join(folded) + Aid();
    });

    private static string WordOf(NameVerdict verdict) => verdict switch
    {
        NameVerdict.Allowed => "Holds",
        NameVerdict.DoesNotBind => "Not bound here",
        NameVerdict.CannotBeSaid => "Cannot be said",
        _ => "Stops release",
    };

    private static Html SentenceOf(PrintedName printed, Specification? paper)
    {
        var named = Html.Of($"<strong>{Capital(printed.Said.Words)}</strong> in {printed.Where}{(Names.Same(printed.Text, printed.Said.Words) ? "" : $" (“{printed.Text}”)")}");
        if (printed.Checks.Count == 0) return Html.Of($"{named}: the trial has no ingredient that the name could mean.{From(printed)}");
        var best = printed.Checks[0];
        var food = Html.Of($"{best.Food}");
        return printed.Verdict switch
        {
            NameVerdict.Allowed => Html.Of($"{named}: {food} meets every condition{(best.Conditions.Any(each => each.IsOfRecord) ? ", in part by the record of a food table and not by its own document" : "")}.{From(printed)}"),
            NameVerdict.DoesNotBind => Html.Of($"{named}: the law’s minima bind the food when it is sold as such; {food} is an ingredient of {best.Conditions[0].Condition.NotFor[0]} here.{From(printed)}"),
            NameVerdict.CannotBeSaid when paper is not null => Html.Of($"{named}: no figure says whether {food} may bear it; {paper.InWords} does, and who supplied it answers for the composition. To be sure of it, supply {AndAll(best.Supply)}.{From(printed)}"),
            NameVerdict.CannotBeSaid => Html.Of($"{named}: nobody can say whether {food} may bear it. Supply {AndAll(best.Supply)}.{From(printed)}"),
            _ => Html.Of($"{named}: {food} may not bear it: {AndAll([.. best.Conditions.Where(each => each is { Binds: true, Holds: false, IsOfRecord: false }).Select(FailureOf)])}. Give it a name that says what it is, or use what the name means.{From(printed)}"),
        };
    }

    private static string FailureOf(NameConditionCheck check) => check.Condition.Figure is { } figure
        ? $"{figure.Word} {Written(check.Value)}\u202f{check.Condition.Unit}, wanted {check.Condition.Test.InWords} {Written(check.Condition.Limit)}\u202f{check.Condition.Unit}"
        : $"its own list has {string.Join(", ", check.Listed)}";

    private static Html From(PrintedName printed) => printed.Origin is { } origin ? Marks.From(origin) : Html.Empty;

    private static Html TableOf(PrintedName printed, RuleSet set) => Html.Join(printed.Checks.Select(check => new DataTable($"{Capital(printed.Said.Name.Name)}, {check.Food}, {set.Title}",
        [Column.Words("Condition"), Column.Numbers("Of the food"), Column.Numbers("Limit"), Column.Numbers("Margin"), Column.Words("Holds"), Column.Words("Rule")],
        [.. check.Conditions.Select((each, at) => new Row(
            each.Condition.Figure is { } figure ? $"{Capital(figure.Word)}{(each.Condition.Basis.Length > 0 && !figure.Word.Contains("dry matter", StringComparison.Ordinal) ? $", {each.Condition.Basis}" : "")}" : $"Own list without {string.Join(", ", each.Condition.NotListed)}",
            each.Condition.Figure is null ? Num.Said(each.Holds is null ? "no list" : each.Listed.Count == 0 ? "none of them" : string.Join(", ", each.Listed)) : each.Value is { } value ? Num.Said($"{Written(value)}\u202f{each.Condition.Unit}") : Num.Said("not known"),
            each.Condition.Figure is null ? Num.Said("none") : Num.Said($"{each.Condition.Test.InWords} {Written(each.Condition.Limit)}\u202f{each.Condition.Unit}"),
            each.Margin is { } margin ? Num.Said(margin < 0 ? $"−{Written(-margin)}" : Written(margin)) : Num.Said(""),
            !each.Binds ? "does not bind here" : each.Holds switch { true => each.IsOfRecord ? "yes, by a record" : "yes", false => each.IsOfRecord ? "not by the record: supply its own figure" : "no", _ => $"supply {each.Supply}" },
            Html.Of($"{each.Condition.Origin.ToString()}{(each.From.Count > 0 ? $"; figure: {string.Join("; ", each.From.Select(term => Sources.InWords(term.Figure.Source)).Distinct())}" : "")}{(each.Condition.Origin.Note.Length > 0 && (at == 0 || check.Conditions[at - 1].Condition.Origin.Note != each.Condition.Origin.Note) ? $". {Capital(each.Condition.Origin.Note)}." : "")}")))])
    { IsWide = true, LeastRem = 46, Caption = Html.Of($"{Capital(check.Food)} as {printed.Said.Name.Name}") }.ToHtml()));

    private static string Written(decimal? value) => value is { } number ? Math.Round(number, Math.Abs(number) < 10 ? 2 : 1).ToString("0.##", CultureInfo.InvariantCulture) : "";

    private static Html Aid() => Notes.Caution(Html.Of($"This is an aid. A competent person signs for the pack, and local law prevails; what was written from memory says so and is to be read in its source."));
}
