using Tamis.Physics;
using Part = Tamis.Physics.BalancePart;

namespace Tamis.Views;

/// <summary>What components are made of, by function, as stacked bars: water, sugars by kind, fats by kind, solids by where they come from.</summary>
public static class BalanceBars
{
    // Parts that stand together in a bar; a bar of thirty parts could not be read.
    private static readonly (MadeOf Kind, string Name, IReadOnlyList<Part> Parts)[] Groups =
    [
        (MadeOf.Water, "water", [Part.Water]),
        (MadeOf.Alcohol, "alcohol", [Part.Alcohol]),
        (MadeOf.Sugars, "sucrose", [Part.Sucrose]),
        (MadeOf.Sugars2, "other sugars", [Part.Glucose, Part.Fructose, Part.Galactose, Part.Lactose, Part.Maltose, Part.Trehalose, Part.UnsplitSugars]),
        (MadeOf.Sugars3, "higher saccharides, polyols", [Part.HigherSaccharides, .. BalanceParts.Polyols]),
        (MadeOf.Fat, "milk fat", [Part.MilkFat]),
        (MadeOf.Fat2, "cocoa butter", [Part.CocoaButter]),
        (MadeOf.Fat3, "nut, egg and other fat", [Part.NutFat, Part.EggFat, Part.OtherFat, Part.UnsplitFat]),
        (MadeOf.Protein, "milk solids", [Part.MilkSolids]),
        (MadeOf.Cocoa, "cocoa solids", [Part.CocoaSolids]),
        (MadeOf.Egg, "egg solids", [Part.EggYolkSolids, Part.EggWhiteSolids]),
        (MadeOf.Fibre, "starch, fibre, other protein, gelling agents", [Part.Protein, Part.Starch, Part.Fibre, Part.GellingAgents]),
        (MadeOf.Other, "salt, acids, minerals, rest", [Part.Salt, Part.OrganicAcids, Part.Ash, Part.Rest]),
    ];

    /// <summary>The chart; groups of which nothing is there are left out, and mass of which a part is not known is a mesh.</summary>
    /// <param name="title">What is shown.</param>
    /// <param name="balances">The components and what they are made of, from above.</param>
    /// <param name="caption">What is drawn; what is not known is said behind it.</param>
    /// <param name="massUnit">The unit of the masses in words.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Of(string title, IReadOnlyList<(string Name, Balance Balance)> balances, Html caption, string massUnit = "g a batch", Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var shares = balances.Select(each => SharesOf(each.Balance)).ToArray();
        int[] shown = [.. Enumerable.Range(0, Groups.Length).Where(at => shares.Any(bar => bar[at] > LeastShare))];
        Bar[] bars = [.. balances.Zip(shares, (each, bar) => new Bar(each.Name, [.. shown.Select(at => (double?)bar[at])]) { MassGrams = each.Balance.FinishedGrams })];
        var unknown = balances.SelectMany(each => Gaps(each.Name, each.Balance, numbers)).ToArray();
        var said = unknown.Length == 0 ? caption : Html.Join([.. caption.IsEmpty ? (Html[])[] : [caption], .. unknown], " ");
        return CompositionBars.Of(title, [.. shown.Select(at => new BarPart(Groups[at].Kind, Groups[at].Name))], bars, said, massUnit, numbers);
    }

    // Less than this share of every bar is not worth a colour.
    private const double LeastShare = 0.0005;

    // Known grams of each group; mass of which some part is unknown leaves the rest to the mesh.
    private static double[] SharesOf(Balance balance)
    {
        var known = Groups.Select(group => group.Parts.Sum(part => part == Part.Rest ? 0 : balance[part].Known) / balance.FinishedGrams).Select(share => Math.Max(0, share)).ToArray();
        var unknown = 1 - balance[Part.Rest].CoveredShare;
        known[^1] += Math.Max(0, 1 - known.Sum() - unknown);
        return known;
    }

    private static IEnumerable<Html> Gaps(string name, Balance balance, Figures figures) =>
        balance[Part.Rest].CoveredShare is var covered && covered < 1 - 1e-9
            ? [Html.Of($"All parts of {name} are known for {Marks.Known(covered, figures.Language)} of its mass.")] : [];
}
