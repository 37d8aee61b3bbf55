using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>Whether the pack of a trial must bear a nutrition panel.</summary>
internal static class PanelNeed
{
    /// <summary>Why a pack bears no panel: its form of sale asks for none, or the kitchen asks for an exemption, and the panel is a draft. Null where it stands on the pack.</summary>
    /// <remarks>A complete panel stands also where none is asked for. A nutrition claim asks for one whatever the form of sale.</remarks>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set.</param>
    /// <param name="columns">The panel.</param>
    /// <exception cref="Tables.TableException">The form of sale or an exemption is none that the rules know, or a rule file cannot be read.</exception>
    public static string? WhyNone(Dessert dessert, string trial, RuleSet rules, PanelColumns columns)
    {
        if (!columns.IsDraft || dessert.Facts.Text("form_of_sale", trial) is null) return null;
        // Rules that are not in force on the day excuse nothing: the panel says so.
        if (!rules.InForce.On(DessertPanels.DayOf(dessert, trial, rules))) return null;
        if (DessertClaims.Asked(dessert, trial, rules.Name).Any(each => each.Verdict.State != ClaimState.NotAClaim)) return null;
        var sale = SaleRules.Of(rules, LabelAsked.Day(dessert, trial));
        var form = LabelAsked.FormOfSale(dessert, trial, sale);
        SaleRequirement[] rows = [.. sale.For(form).Where(row => row.By == "panel")];
        if (rows.All(row => row.Needed == Needed.No))
            return rows is [] ? $"no panel is asked for of food sold {form}" : $"no panel is asked for of food sold {form}: {rows[0].Origin}";
        var asked = LabelAsked.Exemptions(dessert, trial);
        return rows.SelectMany(row => row.Exemptions.Select(lifted => (lifted, row.Origin))).FirstOrDefault(each => asked.Contains(each.lifted, Names.Comparer)) is { lifted: not null } exempt
            ? $"the kitchen asks for the exemption '{exempt.lifted}', and a competent person says whether it holds: {exempt.Origin}" : null;
    }
}
