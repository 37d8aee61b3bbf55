using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>What a serving is made of, for units or packages of a certain size.</summary>
public enum ServingMade
{
    /// <summary>The whole package.</summary>
    Package,
    /// <summary>So many units as come nearest to the reference amount.</summary>
    NearestUnits,
    /// <summary>One unit, or two as the maker chooses; the nearer of both is taken.</summary>
    OneOrTwoUnits,
    /// <summary>One unit.</summary>
    OneUnit,
    /// <summary>The fraction of the unit that comes nearest to the reference amount.</summary>
    NearestFraction,
}

/// <summary>One rule by which a serving follows from the reference amount.</summary>
/// <param name="OfPackage">Whether the size of the package is held against the reference amount; otherwise that of one unit.</param>
/// <param name="Percent">The sizes that it is for, in per cent of the reference amount.</param>
/// <param name="Made">What the serving is then.</param>
/// <param name="Origin">Where the rule came from.</param>
public sealed record ServingRule(bool OfPackage, FigureBand Percent, ServingMade Made, RuleOrigin Origin);

/// <summary>How a rule set makes a serving from its reference amounts: <c>serving-rules.csv</c> and the fractions of a unit that it allows.</summary>
public sealed class ServingRules
{
    private static readonly Dictionary<string, ServingMade> Made = new(Names.Comparer)
    {
        ["whole package"] = ServingMade.Package,
        ["nearest units"] = ServingMade.NearestUnits,
        ["one or two units"] = ServingMade.OneOrTwoUnits,
        ["one unit"] = ServingMade.OneUnit,
        ["nearest fraction"] = ServingMade.NearestFraction,
    };

    private static readonly Dictionary<string, bool> Measures = new(Names.Comparer) { ["package"] = true, ["unit"] = false };

    private ServingRules(IReadOnlyList<ServingRule> rules, IReadOnlyList<int> parts) => (All, Parts) = (rules, parts);

    /// <summary>The rules, in the order of the file: the first that takes the food counts.</summary>
    public IReadOnlyList<ServingRule> All { get; }

    /// <summary>Into how many parts a unit may be cut, in rising order; none where the law has no such list.</summary>
    public IReadOnlyList<int> Parts { get; }

    /// <summary>The rules of a rule set; none where it has no reference amounts.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static ServingRules Of(RuleSet rules) => rules.Folder.Table(Read);

    private static ServingRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        var rows = folder.RowsIfAny("serving-rules.csv", ["measure", "from_percent", "from_inclusive", "to_percent", "to_inclusive", "serving", "parts"], problems);
        List<ServingRule> rules = [];
        SortedSet<int> parts = [];
        foreach (var row in rows)
        {
            rules.Add(new(row.Choice("measure", Measures), row.Band("_percent"), row.Choice("serving", Made), row.Origin()));
            foreach (var part in row.Cells.Words("parts"))
            {
                if (int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 1) parts.Add(number);
                else row.Cells.Note("parts", "whole numbers above 1, parted by semicolons");
            }
            if (rules[^1].Made == ServingMade.NearestFraction && row.Cells.Words("parts").Count == 0) row.Cells.Note("parts", "into how many parts a unit may be cut");
        }
        return new(rules, [.. parts]);
    }
}
