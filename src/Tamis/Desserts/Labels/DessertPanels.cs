using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The nutrition panel of a trial, on the basis that each law asks for.</summary>
public static class DessertPanels
{
    /// <summary>The panel of all that is put together in a trial: per serving where the law wants that and the kitchen names a portion, otherwise per 100 g, or per 100 ml of a liquid.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known, or a cell of <c>dessert.csv</c> keeps the serving from being made.</exception>
    public static NutritionPanel Of(Dessert dessert, string trial, string rules)
    {
        var set = KitData.Rules(rules);
        var basis = (set.IsPerServing ? ServingBasisOf(dessert, trial, set) : null) ?? HundredOf(dessert, trial);
        return NutritionPanel.Of(CookedMixture.Of(dessert, trial), set, basis, DayOf(dessert, trial, set), VoluntaryOf(dessert, trial, set).Declared);
    }

    /// <summary>The panel of a trial with all the columns that the law asks for, a portion beside 100 g where the kitchen names one, and the whole package where the law wants it.</summary>
    /// <inheritdoc cref="Of"/>
    public static PanelColumns ColumnsOf(Dessert dessert, string trial, string rules)
    {
        var set = KitData.Rules(rules);
        var columns = PanelColumns.Of(CookedMixture.Of(dessert, trial), set, BasesOf(dessert, trial, set), DayOf(dessert, trial, set), VoluntaryOf(dessert, trial, set).Declared);
        return TrialLimitedPanel.Asked(dessert, trial, set) is { Limit: { } limit } ? columns.Limited(limit) : columns;
    }

    /// <summary>The voluntary lines that <c>dessert.csv</c> wishes for (rows <c>declare</c>, and <c>fortified_with</c> for what was added), and those of them that the law does not let be declared because there is too little.</summary>
    /// <remarks>A line that only other rule sets have is passed over: one law says folate where another says folic acid.</remarks>
    /// <exception cref="TableException">No rule set has such a line, or the masses of the trial are not all known.</exception>
    public static (IReadOnlyList<string> Declared, IReadOnlyList<NotSignificant> TooLittle) VoluntaryOf(Dessert dessert, string trial, RuleSet rules)
    {
        var known = KitData.RuleSetNames.SelectMany(name => KitData.Rules(name).Declaration).Select(figure => figure.Key).Distinct(Names.Comparer).ToArray();
        (string Key, SheetRow Row)[] wishes = [.. Wishes(dessert, trial, "declare"), .. Wishes(dessert, trial, "fortified_with")];
        CellProblem[] problems = [.. wishes.Where(wish => !known.Contains(wish.Key, Names.Comparer)).Select(wish => wish.Row.Problem("value", $"lines of a nutrition panel; near ones: {string.Join(", ", Names.Nearest(wish.Key, known))}"))];
        if (problems.Length > 0) throw new TableException(problems);
        string[] asked = [.. wishes.Select(wish => wish.Key).Where(key => rules.Declaration.Any(figure => Names.Same(figure.Key, key))).Distinct(Names.Comparer)];
        if (asked.Length == 0) return ([], []);
        var serving = ServingOf(dessert, trial, rules);
        FoodAsSold food = new(Names.Same(dessert.Facts.Text("drink", trial), "yes"), HundredOf(dessert, trial), serving?.Grams, serving?.PerContainer is { } count && Math.Abs(count - 1) < 0.005);
        var tooLittle = SignificantAmounts.TooLittle(CookedMixture.Of(dessert, trial), rules.AsOf(DayOf(dessert, trial, rules)), (rules.IsPerServing ? serving?.Basis : null) ?? food.Hundred, food, asked);
        return ([.. asked.Where(key => !tooLittle.Any(refused => Names.Same(refused.Key, key)))], tooLittle);
    }

    /// <summary>What the columns of a panel speak of, in the order of the law; what the law does not ask for stands last.</summary>
    /// <exception cref="TableException">A cell of <c>dessert.csv</c> keeps the serving from being made.</exception>
    public static IReadOnlyList<PanelBasis> BasesOf(Dessert dessert, string trial, RuleSet rules)
    {
        var serving = ServingOf(dessert, trial, rules);
        List<PanelBasis> bases = [.. rules.Columns.Select(column => column == PanelColumn.Serving ? serving?.Basis : HundredOf(dessert, trial)).OfType<PanelBasis>()];
        if (serving is not null && !bases.Contains(serving.Basis)) bases.Add(serving.Basis);
        if (serving is { SecondColumn: not null, ContainerGrams: { } net }) bases.Add(PanelBasis.Package(net));
        if (serving is { UnitColumn: not null, UnitGrams: { } unit }) bases.Add(PanelBasis.Unit(unit, dessert.Facts.Text("portion_word", trial) ?? "unit"));
        if (serving is not null && ServingWords.Of(rules).IsOtherAmountBrief is { } isBrief) bases.AddRange(LabelAsked.OtherAmounts(dessert, trial, serving).Select(basis => basis with { IsPercentOnly = isBrief }));
        return bases is [] ? [HundredOf(dessert, trial)] : bases;
    }

    /// <summary>What may be left off the panel of a trial, in all of its columns, beside the claims that its pack makes.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known, or a cell of <c>dessert.csv</c> keeps the serving from being made.</exception>
    public static ShortPanel ShortOf(Dessert dessert, string trial, string rules) => ShortPanel.Of(ColumnsOf(dessert, trial, rules).Columns, [.. ClaimSubjects(dessert, trial, rules).Keys], IsSingleServing(dessert, trial, KitData.Rules(rules)));

    // The serving of stated size is what the package holds.
    private static bool IsSingleServing(Dessert dessert, string trial, RuleSet rules) =>
        NetQuantity.Of(dessert, trial, rules.Name).NominalGrams is { } net && ServingOf(dessert, trial, rules)?.Grams is { } serving && Math.Abs(serving - net) < HalfGram;

    private const double HalfGram = 0.5;

    /// <summary>What is left off the panel of a trial because <c>panel_form</c> of <c>dessert.csv</c> asks for the short one or for one of few figures; null where it does not, or the law does not let it.</summary>
    /// <exception cref="TableException">The cell asks for a form of panel that there is not, or the panel cannot be drawn up.</exception>
    public static ShortPanel? LeftOffOf(Dessert dessert, string trial, string rules) => LeftOffOf(dessert, trial, rules, ColumnsOf(dessert, trial, rules));

    /// <summary>The same of a panel that is drawn up already.</summary>
    internal static ShortPanel? LeftOffOf(Dessert dessert, string trial, string rules, PanelColumns columns) => IsShortWanted(dessert, trial)
        ? ShortPanel.Of(columns.Columns, [.. ClaimSubjects(dessert, trial, rules).Keys]) : columns.Limit is { } limit ? ShortPanel.Of(columns.Columns, limit) : null;

    /// <summary>Whether the kitchen wants the short panel: <c>panel_form</c> of <c>dessert.csv</c>.</summary>
    /// <exception cref="TableException">The cell asks for a form of panel that there is not.</exception>
    public static bool IsShortWanted(Dessert dessert, string trial) => PanelFormOf(dessert, trial) == Short;

    internal const string Full = "full", Short = "short";

    /// <summary>The form of panel that the kitchen wants: full, short, or one of few figures by its name; null where it says nothing.</summary>
    /// <exception cref="TableException">The cell asks for a form of panel that no rule set has.</exception>
    internal static string? PanelFormOf(Dessert dessert, string trial)
    {
        if (dessert.Facts.Text("panel_form", trial) is not { } form) return null;
        string[] known = [Full, Short, .. KitData.RuleSetNames.Select(KitData.Rules).SelectMany(set => LimitedPanels.Of(set).All).Select(row => row.Form).Distinct(Names.Comparer)];
        return Array.Find(known, each => Names.Same(each, form)) ?? throw new TableException([dessert.Facts.Problem("panel_form", trial, $"one of: {string.Join(", ", known)}")]);
    }

    /// <summary>What a panel per serving speaks of; null where the kitchen names no portion.</summary>
    /// <inheritdoc cref="ServingOf"/>
    public static PanelBasis? ServingBasisOf(Dessert dessert, string trial, RuleSet rules) => ServingOf(dessert, trial, rules)?.Basis;

    /// <summary>The serving that a law makes of a trial: from its reference amount where <c>dessert.csv</c> names the kind of food (<c>serving_category</c>), otherwise the stated portion; null where neither is known.</summary>
    /// <exception cref="TableException">Something is missing that the law needs, the law has no such kind of food, or the portion is larger than the package: every cell of <c>dessert.csv</c> is named.</exception>
    public static Serving? ServingOf(Dessert dessert, string trial, RuleSet rules)
    {
        var facts = dessert.Facts;
        PackedFood food = new()
        {
            Category = facts.Text("serving_category", trial),
            NetGrams = facts.Number("net_g", trial) ?? facts.Number("net_ml", trial) * facts.Number("density_g_ml", trial),
            UnitGrams = facts.Number("portion_g", trial),
            UnitWord = facts.Text("portion_word", trial),
            StatedGrams = facts.Number("portion_g", trial),
            StatedHousehold = facts.Text("household", trial),
            StatedCount = facts.Number("portions", trial),
            IsLiquid = Names.Same(facts.Text("state", trial), "liquid"),
            DensityGramsPerMillilitre = facts.Number("density_g_ml", trial),
            ReferenceGrams = facts.Number("reference_amount_g", trial),
        };
        if (rules.Servings.Count == 0 && ServingMaker.IsOnePackage(rules, food) is not null) return Named(dessert, trial, () => ServingMaker.Of(rules, food));
        if (rules.Servings.Count > 0 && food.Category is not null) return Named(dessert, trial, () => ServingMaker.Of(rules, food));
        if (food.StatedGrams is null) return null;
        return Named(dessert, trial, () => rules.Servings.Count > 0 ? ServingMaker.Stated(rules, food) : ServingMaker.Of(rules, food));
    }

    /// <summary>The law's reference amount of a trial in grams, from <c>serving_category</c>; null where it names none or the law has no such amounts.</summary>
    /// <exception cref="TableException">The law has no such kind of food, or its amount is a volume and <c>density_g_ml</c> is missing.</exception>
    public static double? ReferenceGramsOf(Dessert dessert, string trial, RuleSet rules) =>
        rules.Servings.Count > 0 && dessert.Facts.Text("serving_category", trial) is { } category
            ? Named<double?>(dessert, trial, () => ServingMaker.Reference(rules, category, dessert.Facts.Number("density_g_ml", trial)).Grams) : null;

    /// <summary>100 g, or 100 ml where <c>state</c> of <c>dessert.csv</c> says that the food is liquid.</summary>
    /// <exception cref="TableException">It is a liquid without a density above 0, or <c>state</c> is neither liquid nor solid.</exception>
    public static PanelBasis HundredOf(Dessert dessert, string trial)
    {
        if (dessert.Facts.Text("state", trial) is not { } state || Names.Same(state, "solid")) return PanelBasis.Per100Grams;
        if (!Names.Same(state, "liquid")) throw new TableException([dessert.Facts.Problem("state", trial, "liquid or solid")]);
        return dessert.Facts.Number("density_g_ml", trial) is > 0 and { } density ? PanelBasis.Per100Millilitres(density)
            : throw new TableException([dessert.Facts.Problem("density_g_ml", trial, "a number above 0: what 1 ml of the food as sold weighs in grams, for a panel per 100 ml")]);
    }

    // Rules that are no longer in force are shown as of their last day.
    internal static DateOnly? DayOf(Dessert dessert, string trial, RuleSet rules) => LabelAsked.Day(dessert, trial) ?? rules.InForce.To;

    private static IEnumerable<(string Key, SheetRow Row)> Wishes(Dessert dessert, string trial, string fact) =>
        dessert.Facts.RowsOf(fact, trial).SelectMany(row => row.Value.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(key => (key, row.Row)));

    // What the room of labels lacks is a cell of this dessert's sheet.
    private static T Named<T>(Dessert dessert, string trial, Func<T> make)
    {
        try
        {
            return make();
        }
        catch (ServingException error)
        {
            throw new TableException([.. error.Problems.Select(problem => dessert.Facts.Problem(problem.Key, trial, problem.Expected))]);
        }
    }

    /// <summary>How sure the panel of a trial is, as the kitchen varies and with the claims that are asked for.</summary>
    public static LabelCertainty CertaintyOf(Dessert dessert, string trial, string rules) =>
        LabelCertainty.Of(Of(dessert, trial, rules), KitchenVariations.Of(dessert, trial), ClaimSubjects(dessert, trial, rules));

    /// <summary>The figures that claims of a trial are made of, each with the kind of claim, and those that were added (rows <c>fortified_with</c> of <c>dessert.csv</c>), of which a law may tolerate nothing below.</summary>
    public static IReadOnlyDictionary<string, ClaimSubject> ClaimSubjects(Dessert dessert, string trial, string rules) =>
        ClaimSubjects(dessert, trial, DessertClaims.Asked(dessert, trial, rules).Select(each => each.Verdict));

    /// <summary>The same of claims that are known already; where two claims are of one figure, the later one counts.</summary>
    internal static IReadOnlyDictionary<string, ClaimSubject> ClaimSubjects(Dessert dessert, string trial, IEnumerable<ClaimVerdict> claims)
    {
        Dictionary<string, ClaimSubject> subjects = new(Names.Comparer);
        foreach (var condition in claims.SelectMany(verdict => verdict.Conditions).Select(result => result.Condition).Where(condition => condition.Figure.Length > 0))
            subjects[condition.Figure] = condition.Test.IsUpper ? ClaimSubject.AtMost : ClaimSubject.AtLeast;
        foreach (var key in dessert.Facts.WordsOf("fortified_with", trial)) subjects[key] = ClaimSubject.Added;
        return subjects;
    }
}
