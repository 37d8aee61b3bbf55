using Tamis.Losses;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Of which foods a significant amount is reckoned so.</summary>
public enum SignificantFood
{
    /// <summary>Any food.</summary>
    Any,
    /// <summary>A drink.</summary>
    Drink,
    /// <summary>Anything but a drink.</summary>
    NoDrink,
    /// <summary>A pack that holds a single portion.</summary>
    SinglePortion,
}

/// <summary>In how much of the food a significant amount must be.</summary>
public enum SignificantIn
{
    /// <summary>100 g, or 100 ml of what is sold by volume.</summary>
    Hundred,
    /// <summary>A portion.</summary>
    Portion,
    /// <summary>What the panel speaks of.</summary>
    Declared,
}

/// <summary>From which amount on a voluntary content may be declared.</summary>
/// <param name="Group">Of which contents, by the group of their reference values.</param>
/// <param name="Food">Of which foods.</param>
/// <param name="In">In how much of it.</param>
/// <param name="LeastPercent">The least amount, in per cent of the reference value.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record SignificantAmount(string Group, SignificantFood Food, SignificantIn In, decimal LeastPercent, RuleOrigin Origin)
{
    /// <summary>Whether an amount, in the unit of the reference value, is significant.</summary>
    public bool IsMetBy(ReferenceValue reference, decimal amount) => amount / RoundingTable.ToDecimal(reference.Value) * 100 >= LeastPercent;

    /// <summary>The rule in words: <c>at least 15 % of the reference value in 100 g or 100 ml</c>.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"at least {LeastPercent:0.###}\u202f% of the reference value in {(In switch { SignificantIn.Hundred => "100\u202fg or 100\u202fml", SignificantIn.Portion => "a portion, where the pack holds only one", _ => "what the panel speaks of" })} ({Origin})");
}

/// <summary>The food whose voluntary contents are held against significant amounts.</summary>
/// <param name="IsDrink">Whether it is a drink.</param>
/// <param name="Hundred">100 g or 100 ml of it.</param>
/// <param name="PortionGrams">Its portion, in grams; null where nobody says.</param>
/// <param name="IsSinglePortion">Whether its pack holds a single portion.</param>
public sealed record FoodAsSold(bool IsDrink, PanelBasis Hundred, double? PortionGrams, bool IsSinglePortion);

/// <summary>A voluntary line that was wished for and may not be declared.</summary>
/// <param name="Key">The figure.</param>
/// <param name="Rules">The amounts from which on it might be; any of them would do.</param>
public sealed record NotSignificant(string Key, IReadOnlyList<SignificantAmount> Rules)
{
    /// <summary>The sentence that says so.</summary>
    public override string ToString() => $"{Key} may not be declared: there is too little of it. The law wants {string.Join(", or ", Rules)}.";
}

/// <summary>The significant amounts of a rule set: <c>significant-amounts.csv</c>.</summary>
public sealed class SignificantAmounts
{
    private static readonly Dictionary<string, SignificantFood> Foods = new(Names.Comparer)
    {
        ["any"] = SignificantFood.Any,
        ["drink"] = SignificantFood.Drink,
        ["no drink"] = SignificantFood.NoDrink,
        ["single portion"] = SignificantFood.SinglePortion,
    };

    private static readonly Dictionary<string, SignificantIn> Amounts = new(Names.Comparer)
    {
        ["100"] = SignificantIn.Hundred,
        ["portion"] = SignificantIn.Portion,
        ["declared"] = SignificantIn.Declared,
    };

    private SignificantAmounts(IReadOnlyList<SignificantAmount> rows) => All = rows;

    /// <summary>All rows; none where the law fixes no such amount.</summary>
    public IReadOnlyList<SignificantAmount> All { get; }

    /// <summary>The significant amounts of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static SignificantAmounts Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>The rows that hold for a content of a food; any of them is enough, and without one there is no such limit.</summary>
    public IEnumerable<SignificantAmount> For(ReferenceValue reference, bool isDrink, bool isSinglePortion) => All.Where(row => Names.Same(row.Group, reference.Group) && row.Food switch
    {
        SignificantFood.Drink => isDrink,
        SignificantFood.NoDrink => !isDrink,
        SignificantFood.SinglePortion => isSinglePortion,
        _ => true,
    });

    /// <summary>Which of the voluntary lines that are wished for may not be declared, because there is too little of them.</summary>
    /// <remarks>A content that is not known well enough is not judged here: the panel leaves it off for that.</remarks>
    /// <param name="mixture">The food.</param>
    /// <param name="rules">The rule set.</param>
    /// <param name="basis">What the panel speaks of.</param>
    /// <param name="food">How it is sold.</param>
    /// <param name="asked">The lines, by their keys.</param>
    /// <exception cref="KeyNotFoundException">The rule set has no such line.</exception>
    public static IReadOnlyList<NotSignificant> TooLittle(Mixture mixture, RuleSet rules, PanelBasis basis, FoodAsSold food, IReadOnlyCollection<string> asked)
    {
        var amounts = Of(rules);
        List<NotSignificant> refused = [];
        foreach (var figure in asked.Select(key => rules.Figure(key)))
        {
            if (rules.Reference(figure.Key, figure.Unit) is not { } reference || amounts.For(reference, food.IsDrink, food.IsSinglePortion).ToArray() is not { Length: > 0 } rows) continue;
            var sum = FigureSum.Of(mixture, figure, rules.ProteinFactor);
            if (!sum.IsWhole && sum.CoveredShare * 100 < rules.KnownSharePercent) continue;
            if (!Array.Exists(rows, row => GramsOf(row.In) is { } grams && row.IsMetBy(reference, RoundingTable.ToDecimal(sum.Known / mixture.FinishedGrams * grams)))) refused.Add(new(figure.Key, rows));
        }
        return refused;

        double? GramsOf(SignificantIn amount) => amount switch
        {
            SignificantIn.Hundred => food.Hundred.MassGrams,
            SignificantIn.Portion => food.PortionGrams,
            _ => basis.MassGrams ?? mixture.FinishedGrams,
        };
    }

    private static SignificantAmounts Read(RuleFolder folder, List<CellProblem> problems) => new([.. folder.RowsIfAny("significant-amounts.csv", ["group", "food", "in", "least_percent"], problems)
        .Select(row => new SignificantAmount(row.Cells.Required("group"), row.Choice("food", Foods), row.Choice("in", Amounts), row.RequiredDecimal("least_percent"), row.Origin()))]);
}
