using System.Globalization;
using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>What the composition of a trial says of a name that its label prints, or of an additive in it.</summary>
/// <param name="Key">What it is about: <c>name: honey, the label name of honey</c>.</param>
/// <param name="Verdict">What can be said, in a word or two.</param>
/// <param name="Why">The figure and the limit, or what nobody knows.</param>
/// <param name="Supply">What to supply or do; empty where nothing.</param>
/// <param name="Stops">Whether the label may not be released like this.</param>
/// <param name="Rule">The rule; null where the kit has none.</param>
/// <param name="Cell">The cell; null where there is none.</param>
/// <param name="As">As what a name is printed; null for an additive.</param>
public sealed record CompositionFinding(string Key, string Verdict, string Why, string Supply, bool Stops, RuleOrigin? Rule, Source? Cell, PrintedAs? As)
{
    /// <summary>Whether it is about the name of the food.</summary>
    public bool IsOfFood => As == PrintedAs.Food;

    /// <summary>Whether it is about what the list of ingredients names: an ingredient's name, or an additive.</summary>
    public bool IsOfList => As is null or PrintedAs.Ingredient;

    /// <summary>The finding as what keeps a label from print.</summary>
    internal ListProblem AsProblem => new(Rule is null ? Why : $"{Why} ({Rule})", Supply, Cell);
}

/// <summary>Reserved names and additives held against the composition, with what of it stops a label.</summary>
/// <remarks>
/// <para>Only a row of the strength <c>law</c> stops: guidance and convention are shown and left to a person. A row from memory is held as it stands, and says so.</para>
/// <para>A name that the composition refuses stops. So does one of which no figure says whether it may stand: whoever signs says that the name is true, and an auditor asks on what paper.
/// That paper may be a figure, or the document of the bought food where it bears the name as its legal name: then the supplier answers for the composition, and the label is not stopped.
/// An own estimate is no such paper.</para>
/// <para>An additive that is over its limit or not permitted stops. So does one that the kitchen weighs itself and whose amount might be over the limit: its own sheet can tell.
/// What came in with a bought food and has no stated amount is written down as open: few suppliers state amounts, and their own word that the food keeps the law is a paper that no sheet holds.</para>
/// </remarks>
public static class CompositionFindings
{
    /// <summary>Every reserved name that the trial prints in its name, its claims and its list.</summary>
    /// <exception cref="Tables.TableException">The masses of the trial are not all known, a cell that states a figure holds none, or a rule file cannot be read.</exception>
    public static IReadOnlyList<CompositionFinding> OfNames(Dessert dessert, string trial, string rules) =>
        [.. TrialNames.Of(dessert, trial, rules).Select(name => Of(name, PaperOf(dessert, rules, name)))];

    /// <summary>The document of the food that a printed name means, where it bears the name as its legal name and is no own estimate; null where there is none.</summary>
    /// <exception cref="Tables.TableException">A rule file cannot be read.</exception>
    public static Specification? PaperOf(Dessert dessert, string rules, PrintedName name) =>
        name.Checks.Count > 0 && dessert.Specifications.On(name.Checks[0].Food, dessert.Store.AsOf) is { IsOwnEstimate: false } document
            && ReservedNames.Of(KitData.Rules(rules)).In(document.LegalName).Any(said => said.Name.Name == name.Said.Name.Name) ? document : null;

    /// <summary>Every additive of the trial.</summary>
    /// <inheritdoc cref="OfNames"/>
    public static IReadOnlyList<CompositionFinding> OfAdditives(Dessert dessert, string trial, string rules) => [.. TrialParticulars.Additives(dessert, trial, rules).Select(Of)];

    /// <summary>What of the names and additives in a list of ingredients keeps it from print.</summary>
    internal static IEnumerable<CompositionFinding> StoppingList(Dessert dessert, string trial, string rules) =>
        OfNames(dessert, trial, rules).Where(each => each.IsOfList).Concat(OfAdditives(dessert, trial, rules)).Where(each => each.Stops);

    /// <summary>What can be said of a printed name.</summary>
    /// <param name="name">The name, held against composition.</param>
    /// <param name="paper">The document of the bought food that bears the name as its legal name; null where there is none.</param>
    public static CompositionFinding Of(PrintedName name, Specification? paper)
    {
        var best = name.Checks.Count > 0 ? name.Checks[0] : null;
        NameConditionCheck[] binding = [.. best?.Conditions.Where(each => each.Binds) ?? []];
        NameConditionCheck[] failing = [.. binding.Where(each => name.Verdict == NameVerdict.Refused ? each is { Holds: false, IsOfRecord: false } : each.Holds != true)];
        // What keeps an undecided name open may be law beside a row that is none: the law decides.
        var decisive = Array.Find(failing, each => each.Condition.Origin.Strength == RuleStrength.Law) ?? failing.FirstOrDefault();
        var rule = decisive?.Condition.Origin ?? name.Said.Name.Conditions[0].Origin;
        var printed = $"'{name.Said.Words}' in {name.Where}{(Names.Same(name.Text, name.Said.Words) ? "" : $" ('{name.Text}')")}";
        var (verdict, why, supply) = name.Verdict switch
        {
            NameVerdict.Allowed => ("may stand", $"{best!.Food} meets every condition", ""),
            NameVerdict.DoesNotBind => ("not bound here", "the law’s minima bind the food when it is sold as such", ""),
            NameVerdict.CannotBeSaid when paper is not null => ("by the supplier’s word", $"no figure says whether {best!.Food} may be called {printed}; {paper.InWords} bears the name", ""),
            NameVerdict.CannotBeSaid => ("cannot be said", $"nobody can say whether {best!.Food} may be called {printed}", $"supply {string.Join("; ", best.Supply)}; or the supplier’s document with the name under legal_name; or print a name that says what it is"),
            _ when best is null => ("may not stand", $"nothing in the trial may be called {printed}", "print a name that says what it is, or use what the name means"),
            _ => ("may not stand", $"{best.Food} may not be called {printed}: {string.Join("; ", failing.Select(FailureOf))}", "print a name that says what it is, or use what the name means"),
        };
        return new($"name: {name.Said.Words}, in {name.Where}", verdict, why, supply, (name.Verdict == NameVerdict.Refused || name.Verdict == NameVerdict.CannotBeSaid && paper is null) && rule.Strength == RuleStrength.Law, rule, name.Origin, name.As);
    }

    private static string FailureOf(NameConditionCheck check) => check.Condition.Figure is { } figure
        ? $"{figure.Word} is {Number(check.Value)} {check.Condition.Unit}, wanted {check.Condition.Test.InWords} {Number(check.Condition.Limit)} {check.Condition.Unit}"
        : $"its own list has {string.Join(", ", check.Listed)}";

    /// <summary>What can be said of an additive.</summary>
    /// <param name="check">The additive, held against the levels.</param>
    public static CompositionFinding Of(AdditiveCheck check)
    {
        var (use, level) = (check.Use, check.Level);
        var named = $"{use.Additive.Number}, {use.Additive.Name}, {(use.IsOwn ? $"of {use.Ingredient.Name}" : $"in {use.Ingredient.Name}")}";
        var most = check.MostMgPerKg is { } mg ? $"at most {Number(mg)} mg/kg" : "an amount that nobody states";
        var limit = level?.LimitMgPerKg is { } allowed ? $"{Number(allowed)} mg/kg{(level.ExpressedAs.Length > 0 ? $" as {level.ExpressedAs}" : "")} in {check.Category}" : "";
        var (verdict, why) = check.Verdict switch
        {
            LevelVerdict.Within => ("within its limit", $"{most}, allowed {limit}"),
            LevelVerdict.AsNeeded => ("as needed", "as much as is needed may be used"),
            LevelVerdict.CarriedOver => ("carried over", $"it may be in {check.Category} and came in with it"),
            LevelVerdict.NoRow => ("no row", "the kit’s table has no row for it here"),
            LevelVerdict.Over => ("over its limit", $"{named}: {(check.MostMgPerKg is { } over ? $"{Number(over)} mg/kg" : most)}, allowed {limit}"),
            LevelVerdict.NotPermitted => ("not permitted", $"{named} is not permitted in {(check.Category == "all" ? "any food" : check.Category)}"),
            _ => ("cannot be said", $"whether {named} is within its limit cannot be said{(limit.Length > 0 ? $": {most}, allowed {limit}" : "")}"),
        };
        var stops = check.Verdict is LevelVerdict.Over or LevelVerdict.NotPermitted || check.Verdict == LevelVerdict.CannotBeSaid && use.IsOwn;
        return new($"additive: {named}", verdict, why, check.Supply, stops && (level is null || level.Origin.Strength == RuleStrength.Law), level?.Origin, use.Ingredient.Origin, null);
    }

    private static string Number(decimal? number) => number is { } known ? Math.Round(known, Math.Abs(known) < 10 ? 2 : 1).ToString("0.##", CultureInfo.InvariantCulture) : "not known";
}
