using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>An additive by number and name.</summary>
/// <param name="Number">The number of the Union's list: <c>E 440</c>.</param>
/// <param name="Name">Its name.</param>
/// <param name="Class">The class that it usually has in pastry.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record Additive(string Number, string Name, string Class, RuleOrigin Origin);

/// <summary>The additives that pastry meets: <c>additives.csv</c> beside the rule sets.</summary>
public sealed class Additives
{
    private Additives(IReadOnlyList<Additive> all) => All = all;

    /// <summary>All of them, by number.</summary>
    public IReadOnlyList<Additive> All { get; }

    /// <summary>The additives that a rule set's folder stands beside.</summary>
    public static Additives Of(RuleSet rules) => Of(rules.Folder);

    /// <summary>The additives that a rule folder stands beside.</summary>
    internal static Additives Of(RuleFolder folder) => folder.Table(Read);

    /// <summary>The additive of this number or name; null where the list has none. What stands in brackets does not count (<c>lecithins (soya)</c>).</summary>
    public Additive? Find(string text)
    {
        var bare = (text.IndexOf('(') is var bracket and > 0 && !text.StartsWith("E ", StringComparison.OrdinalIgnoreCase) ? text[..bracket] : text).Trim();
        var number = bare.Replace("\u00a0", " ");
        if (number.StartsWith('E') && number.Length > 1 && char.IsAsciiDigit(number[1])) number = $"E {number[1..]}";
        return All.FirstOrDefault(additive => Names.Same(additive.Number, number))
            ?? All.FirstOrDefault(additive => Names.Same(additive.Name, bare) || additive.Name.Split(", ").Contains(bare, Names.Comparer));
    }

    private static Additives Read(RuleFolder folder, List<CellProblem> problems) =>
        new([.. folder.SharedRows("additives.csv", ["e_number", "name", "class"], problems).Select(row => new Additive(row.Cells.Required("e_number"), row.Cells.Required("name"), row.Cells.Required("class"), row.Origin()))]);
}
