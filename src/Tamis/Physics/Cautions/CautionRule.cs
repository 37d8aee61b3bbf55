using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>Whom or what a caution is for.</summary>
public enum CautionOf
{
    /// <summary>Those who work and those who eat.</summary>
    People,
    /// <summary>What is made: a gel that would not set.</summary>
    Gel,
}

/// <summary>When a caution belongs beside a step or a component, and what it says. Every condition that is filled must hold.</summary>
public sealed record CautionRule
{
    /// <summary>What must be shown beside every list of cautions.</summary>
    public const string Deferral = "These are the usual cautions of the trade, not all there are: local codes, the maker’s instructions and who is trained and licensed decide.";

    private static readonly Lazy<IReadOnlyList<CautionRule>> Shipped = new(() => ReadAll(SheetFile.Read(Path.Combine(KitFolder.Data("cautions"), "cautions.csv"))));

    /// <summary>The kit's own.</summary>
    public static IReadOnlyList<CautionRule> Kit => Shipped.Value;

    /// <summary>The hazard, in a few words.</summary>
    public required string Hazard { get; init; }

    /// <summary>Whom or what it is for.</summary>
    public required CautionOf Of { get; init; }

    /// <summary>What can happen.</summary>
    public required string Caution { get; init; }

    /// <summary>What is usually done about it.</summary>
    public required string Practice { get; init; }

    /// <summary>Where it comes from.</summary>
    public required Source Source { get; init; }

    /// <summary>One of these stands in the step; empty where the rule is not about a step.</summary>
    public IReadOnlyList<string> StepWords { get; init; } = [];

    /// <summary>None of these stands in the step.</summary>
    public IReadOnlyList<string> StepWithout { get; init; } = [];

    /// <summary>The step is at least so hot, °C.</summary>
    public double? FromCelsius { get; init; }

    /// <summary>The step is at most so hot, °C.</summary>
    public double? ToCelsius { get; init; }

    /// <summary>The component has an ingredient of one of these kinds.</summary>
    public IReadOnlyList<string> Kinds { get; init; } = [];

    /// <summary>The component has an ingredient whose name holds one of these words.</summary>
    public IReadOnlyList<string> IngredientWords { get; init; } = [];

    /// <summary>These lines are in the component too: gelatine beside the fruit that digests it; null where none are asked.</summary>
    public LinePart? Beside { get; init; }

    /// <summary>No step makes the component as hot as this, °C.</summary>
    public double? HottestBelowCelsius { get; init; }

    /// <summary>The component is more acid than this.</summary>
    public double? PhBelow { get; init; }

    /// <summary>The component has more alcohol than this, per cent by mass.</summary>
    public double? AlcoholPercentAbove { get; init; }

    /// <summary>Whether it is about a step; otherwise about the component.</summary>
    public bool IsOfStep => StepWords.Count > 0 || FromCelsius is not null || ToCelsius is not null;

    /// <summary>Reads rules.</summary>
    /// <exception cref="TableException">A cell cannot be read, or a rule has no condition; all are named.</exception>
    public static IReadOnlyList<CautionRule> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        List<CautionRule> rules = [];
        Dictionary<string, CautionOf> of = new(Names.Comparer) { ["people"] = CautionOf.People, ["gel"] = CautionOf.Gel };
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            if (row["of"].Length == 0) problems.Add(row.Problem("of", "people or gel"));
            CautionRule rule = new()
            {
                Hazard = reader.Required("hazard"), Of = reader.Choice("of", of) ?? CautionOf.People, Caution = reader.Required("caution"), Practice = reader.Required("practice"),
                Source = PhysicsData.SourceOf(row, problems), StepWords = reader.Words("step_words"), StepWithout = reader.Words("step_without"),
                FromCelsius = reader.Number("from_c", Temperature.AbsoluteZeroCelsius, 1000), ToCelsius = reader.Number("to_c", Temperature.AbsoluteZeroCelsius, 1000),
                Kinds = reader.Words("kinds"), IngredientWords = reader.Words("ingredient_words"), Beside = BesideOf(reader), HottestBelowCelsius = reader.Number("hottest_below_c", -60, 400),
                PhBelow = reader.Number("ph_below", 0, 14), AlcoholPercentAbove = reader.Number("alcohol_percent_above", 0, 100),
            };
            // A rule without a condition would stand everywhere, and then nobody reads any.
            if (!rule.IsOfStep && rule.Kinds.Count == 0 && rule.IngredientWords.Count == 0 && row["beside"].Length == 0) problems.Add(row.Problem("step_words", "a word of a step, a temperature, a kind or an ingredient: a rule with none would stand everywhere"));
            rules.Add(rule);
        }
        return problems.Count == 0 ? rules : throw new TableException(problems);
    }

    private static LinePart? BesideOf(RowReader row)
    {
        if (row.Text("beside") is not { } name) return null;
        var part = LinePart.Find(name);
        if (part is null) row.Note("beside", $"a part of a formula as in parts.csv: {string.Join(", ", LinePart.All.Select(each => each.Name))}");
        return part;
    }
}
