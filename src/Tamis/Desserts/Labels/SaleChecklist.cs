using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Where something that a form of sale asks for stands.</summary>
public enum SaleState
{
    /// <summary>It is missing.</summary>
    Missing,
    /// <summary>A competent person must say whether it is asked for, or whether it is there.</summary>
    ForAPerson,
    /// <summary>It is there.</summary>
    There,
    /// <summary>An exemption that the kitchen asks for lifts it: a person judges.</summary>
    Lifted,
    /// <summary>It is not asked for.</summary>
    NotAskedFor,
}

/// <summary>Something that a form of sale asks for, and where it stands.</summary>
/// <param name="Requirement">What is asked for.</param>
/// <param name="State">Where it stands.</param>
/// <param name="Words">What there is, or what to supply.</param>
/// <param name="Origin">The cell; null where there is none.</param>
public sealed record SaleItem(SaleRequirement Requirement, SaleState State, string Words, Source? Origin);

/// <summary>What the form of sale of a trial asks for under a rule set, item by item.</summary>
/// <param name="Form">The form of sale.</param>
/// <param name="Items">What is asked for, in the order of the rule file.</param>
public sealed record SaleChecklist(string Form, IReadOnlyList<SaleItem> Items)
{
    /// <summary>The checklist of a trial for a market.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="language">The language of the pack.</param>
    /// <param name="day">The day whose rules count; with no day, those that have no end.</param>
    /// <exception cref="TableException">The form of sale or an exemption is none that the rules know: the cell and the choices are named; or a rule file cannot be read.</exception>
    public static SaleChecklist Of(Dessert dessert, string trial, string rules, string language, DateOnly? day = null)
    {
        var (set, name) = (KitData.Rules(rules), dessert.Trial(trial).Trial);
        var sale = SaleRules.Of(set, day ?? LabelAsked.Day(dessert, name));
        var form = LabelAsked.FormOfSale(dessert, name, sale);
        var exemptions = LabelAsked.Exemptions(dessert, name);
        SaleEvidence evidence = new(dessert, name, set, language);
        return new(form, [.. sale.For(form).Select(row => ItemOf(row, exemptions, evidence))]);
    }

    private static SaleItem ItemOf(SaleRequirement row, IReadOnlyList<string> exemptions, SaleEvidence evidence)
    {
        if (row.Needed == Needed.No) return new(row, SaleState.NotAskedFor, row.When.Length > 0 ? row.When : "not asked for", null);
        if (row.Exemptions.FirstOrDefault(each => exemptions.Contains(each, Names.Comparer)) is { } lifted)
            return new(row, SaleState.Lifted, $"the kitchen asks for the exemption: {lifted}; a competent person says whether it holds", null);
        var (isThere, words, origin) = evidence.Of(row.By);
        return new(row, isThere switch { true => SaleState.There, null => SaleState.ForAPerson, false => row.Needed == Needed.If ? SaleState.ForAPerson : SaleState.Missing }, words, origin);
    }
}

/// <summary>What the sheets show of the things that a form of sale may ask for.</summary>
internal sealed class SaleEvidence(Dessert dessert, string trial, RuleSet rules, string language)
{
    // Three things that may be asked for look at the list, and it is drawn up once.
    private readonly Lazy<IngredientDeclaration> _list = new(() => dessert.IngredientList(trial, rules.Name, language));

    /// <summary>Whether it is there (null where no sheet can show it), with what there is or what to supply.</summary>
    public (bool? IsThere, string Words, Source? Origin) Of(string by) => by switch
    {
        ['f', 'a', 'c', 't', ' ', .. var keys] => Fact(keys),
        "list" => List(),
        "allergens" => Allergens(),
        "panel" => Panel(),
        "quantities" => Quantities(),
        "particulars" => Statements(),
        "date" => Date(),
        "symbol" => Symbol(),
        _ => (null, "no sheet shows it: for a competent person", null),
    };

    private (bool?, string, Source?) Fact(string keys)
    {
        var wanted = keys.Split(';', StringSplitOptions.TrimEntries);
        if (wanted is ["keep"] && dessert.Facts.Text("keep", trial) is { } keep && dessert.Words.Said(keep, language) is null)
            return (false, $"there is no term for '{keep}' in the language '{language}': a row in the store’s words.csv", dessert.Facts.OriginOf("keep", trial));
        if (wanted is ["name"]) return Name();
        return wanted.FirstOrDefault(key => dessert.Facts.Text(key, trial) is not null) is { } key
            ? (true, dessert.Facts.Text(key, trial)! + (key is "net_g" ? "\u202fg" : key is "net_ml" ? "\u202fml" : ""), dessert.Facts.OriginOf(key, trial))
            : (false, $"a row {string.Join(" or ", wanted)} in dessert.csv", null);
    }

    // A name that the composition does not bear is no name of the food.
    private (bool?, string, Source?) Name() => Tried(() => CompositionFindings.OfNames(dessert, trial, rules.Name).FirstOrDefault(each => each is { IsOfFood: true, Stops: true }) is { } untrue
        ? (false, untrue.AsProblem.ToString().TrimEnd('.'), untrue.Cell)
        : dessert.Facts.Text("name", trial) is { } name ? (true, name, dessert.Facts.OriginOf("name", trial)) : (false, "a row name in dessert.csv", (Source?)null));

    private (bool?, string, Source?) List() => Tried(() => _list.Value is { IsDraft: true } draft
        ? (false, $"the list is a draft: {draft.Problems[0]}{(draft.Problems.Count > 1 ? $" and {draft.Problems.Count - 1} more" : "")}", draft.Problems[0].Origin) : (true, "the list is complete", (Source?)null));

    private (bool?, string, Source?) Allergens() => Tried(() =>
    {
        string[] unknown = [.. dessert.Whole(trial).Parts.Where(part => part.MassGrams > 0 && part.Ingredient.Allergens is null).Select(part => part.Ingredient.Name).Distinct(Names.Comparer)];
        if (unknown.Length > 0) return (false, $"nobody has written down the allergens of {string.Join(", ", unknown)}", null);
        var list = _list.Value;
        return (true, list.Contains.Count == 0 ? "looked at: none of this law’s list" : string.Join(", ", list.Contains.Select(rule => rule.Substance)), (Source?)null);
    });

    private (bool?, string, Source?) Panel() => Tried(() =>
    {
        var panel = DessertPanels.ColumnsOf(dessert, trial, rules.Name);
        return panel.IsDraft ? (false, $"the panel is a draft: {panel.DraftReasons[0]}", null) : (true, panel.Limit is { } limit ? $"the panel is complete: {limit.Form}" : "the panel is complete", (Source?)null);
    });

    private (bool?, string, Source?) Quantities() => Tried(() =>
    {
        string[] stated = [.. _list.Value.Items.Where(item => item.Quantity is not null).Select(item => $"{item.Printed} {item.Quantity}")];
        return stated.Length > 0 ? (true, string.Join(", ", stated), null) : (null, "no ingredient of the list is in the name; whether words or pictures dwell on one is for a competent person", (Source?)null);
    });

    private (bool?, string, Source?) Statements() => Tried(() =>
    {
        var all = TrialParticulars.Of(dessert, trial, rules.Name);
        if (all.FirstOrDefault(each => each.State == ParticularState.CannotBeSaid) is { } open) return (false, $"{open.Rule.Name}: supply {open.Supply}", null);
        Particular[] met = [.. all.Where(each => each.State == ParticularState.Applies)];
        if (met.FirstOrDefault(each => each.Rule.Wording.Count > 0 && each.In(language) is null) is { } silent)
            return (false, $"there is no wording for {silent.Rule.Name} in the language '{language}': a term in {ParticularRules.File} of {rules.Name}", null);
        return (true, met.Length == 0 ? "the formula triggers none" : string.Join("; ", met.Select(each => each.In(language) ?? each.Rule.Name)), (Source?)null);
    });

    private (bool?, string, Source?) Symbol() => Tried(() =>
    {
        var symbol = TrialSymbol.Of(dessert, trial, rules.Name);
        return symbol.Lacks is { } lacks ? (false, lacks, null) : (true, symbol.Words, symbol.Artwork);
    });

    private (bool?, string, Source?) Date()
    {
        var (kind, days) = (dessert.Facts.Text("date_kind", trial), dessert.Facts.Number("shelf_days", trial));
        return kind is null || days is null ? (false, "date_kind and shelf_days in dessert.csv, set by a competent person", null)
            : (true, FormattableString.Invariant($"{kind}, {days:0} days, as dessert.csv says"), dessert.Facts.OriginOf("date_kind", trial));
    }

    // A formula or a sheet that must be mended first leaves the item missing, with the reason; other items stand.
    private static (bool?, string, Source?) Tried(Func<(bool?, string, Source?)> look)
    {
        try
        {
            return look();
        }
        catch (TableException error)
        {
            return (false, string.Join("; ", error.Problems), null);
        }
    }
}
