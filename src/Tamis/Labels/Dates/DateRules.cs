using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>What a row of <c>date-marking.csv</c> is about.</summary>
public enum DateRuleKind
{
    /// <summary>A kind of date mark with its words: use by, best before.</summary>
    Mark,
    /// <summary>How the date is written for a durability up to so many days.</summary>
    Form,
    /// <summary>A case in which no date is asked.</summary>
    Exemption,
    /// <summary>Anything else that belongs to the date.</summary>
    Also,
}

/// <summary>A rule on dates.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Name">Its name: <c>best before</c>, <c>day and month</c>.</param>
/// <param name="Rule">The rule in words.</param>
/// <param name="UpToDays">Up to which durability it holds, in days; null where for all.</param>
/// <param name="Wording">The words to print, by language.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record DateRule(DateRuleKind Kind, string Name, string Rule, int? UpToDays, IReadOnlyDictionary<string, string> Wording, RuleOrigin Origin);

/// <summary>The rules of a rule set on date marks. Which mark a food takes is for a competent person: the kit never decides it.</summary>
public sealed class DateRules
{
    private static readonly Dictionary<string, DateRuleKind> Kinds = new(Names.Comparer)
    {
        ["mark"] = DateRuleKind.Mark, ["form"] = DateRuleKind.Form, ["exemption"] = DateRuleKind.Exemption, ["also"] = DateRuleKind.Also,
    };

    private static readonly string[] Columns = ["kind", "name", "rule", "up_to_days"];

    private DateRules(IReadOnlyList<DateRule> all) => All = all;

    /// <summary>Every rule.</summary>
    public IReadOnlyList<DateRule> All { get; }

    /// <summary>The kinds of mark.</summary>
    public IReadOnlyList<DateRule> Marks => [.. All.Where(rule => rule.Kind == DateRuleKind.Mark)];

    /// <summary>The rules of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static DateRules Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>How the date is written for a durability; null where the law fixes no form.</summary>
    /// <param name="days">The durability, in days.</param>
    public DateRule? Form(int days) => All.Where(rule => rule.Kind == DateRuleKind.Form).OrderBy(rule => rule.UpToDays ?? int.MaxValue).FirstOrDefault(rule => rule.UpToDays is not { } most || days <= most);

    /// <summary>The kind of mark that a sheet names; null where the rule set has none of this name.</summary>
    public DateRule? Mark(string name) => Marks.FirstOrDefault(rule => Names.Same(rule.Name, name));

    private static DateRules Read(RuleFolder folder, List<CellProblem> problems) => new([.. folder.RowsIfAny("date-marking.csv", Columns, problems).Select(row => new DateRule(
        row.Choice("kind", Kinds), row.Cells.Required("name"), row.Cells.Required("rule"), row.Cells.Whole("up_to_days", 1),
        row.ByLanguage(Columns), row.Origin()))]);
}
