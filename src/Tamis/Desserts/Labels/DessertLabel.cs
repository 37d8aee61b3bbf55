using System.Globalization;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What the label of a dessert says, from its sheets.</summary>
public static class DessertLabel
{
    /// <summary>The label of a trial for a market, laid out on the face of its pack.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="market">A country of the rows <c>market</c>, or the folder name of a rule set; several are parted by semicolons. Every language that the rows name for them stands on the pack, one under the other.</param>
    /// <exception cref="TableException">The pack, the market or the masses are not known, or a sheet or a rule file cannot be read.</exception>
    public static LabelDrawing Drawn(Dessert dessert, string trial, string market) => LabelDrawing.Of(ContentOf(dessert, trial, market));

    /// <summary>The label of a trial for a market, face by face as the rows <c>face</c> of <c>dessert.csv</c> spread it (<c>185 x 65: panel; list</c>); all on the largest face where there is no such row.</summary>
    /// <inheritdoc cref="Drawn"/>
    public static IReadOnlyList<LabelDrawing> DrawnFaces(Dessert dessert, string trial, string market)
    {
        var content = ContentOf(dessert, trial, market);
        var faces = LabelAsked.Faces(dessert, trial, content.Pack);
        return faces.Count == 0 ? [LabelDrawing.Of(content)] : [.. PackFace.Spread(content, faces).Select(LabelDrawing.Of)];
    }

    /// <summary>What the label of a trial says in a market.</summary>
    /// <inheritdoc cref="Drawn"/>
    public static LabelContent ContentOf(Dessert dessert, string trial, string market)
    {
        var markets = MarketsOf(dessert, trial, market);
        var rules = KitData.Rules(markets[0].Rules);
        string[] languages = [.. markets.Select(each => each.Language).Distinct(Names.Comparer)];
        var pack = LabelAsked.Pack(dessert, trial);
        var columns = DessertPanels.ColumnsOf(dessert, trial, rules.Name);
        var panels = columns.Columns;
        NutritionPanel[] ofServing = [.. panels.Where(each => !each.Basis.IsPackage && !each.Basis.IsUnit)];
        var serving = DessertPanels.ServingOf(dessert, trial, rules);
        var leftOff = DessertPanels.LeftOffOf(dessert, trial, rules.Name);
        PanelContent Worded(IReadOnlyList<NutritionPanel> shown, bool isShort)
        {
            var content = PanelContent.Of(shown, languages, new(serving?.PerContainer, serving?.Household ?? "") { Said = (words, language) => MeasureIn(dessert, words, language) }, isShort);
            return leftOff?.Without(content, languages) ?? content;
        }

        var (panel, brief) = (Worded(panels, isShort: false), Worded(panels, isShort: true));
        var net = NetQuantity.Of(dessert, trial, rules.Name);
        Texts texts = new(dessert, trial, rules, isWithoutList: ListExemption(dessert, trial, rules) is not null);
        var whyNoPanel = PanelNeed.WhyNone(dessert, trial, rules, columns);
        LabelLanguage[] blocks = [.. languages.Select(texts.In), .. SameInAll(dessert, trial)];
        return new()
        {
            Rules = rules,
            Day = LabelAsked.Day(dessert, trial),
            Pack = pack,
            Panel = whyNoPanel is null ? panel : null,
            WhyNoPanel = whyNoPanel,
            ShortPanel = whyNoPanel is not null ? null : brief.ColumnHeads.Count < panel.ColumnHeads.Count || brief.PercentHead != panel.PercentHead ? brief : null,
            ServingPanel = whyNoPanel is null && ofServing.Length < panels.Count && ofServing.Length > 0 ? Worded(ofServing, isShort: false) : null,
            Languages = blocks,
            NetGrams = net.NominalGrams,
            NetQuantity = net.Stated(languages[0])?.Text ?? "",
            Symbol = TrialSymbol.OnLabel(dessert, dessert.Trial(trial).Trial, rules),
            Colours = ColoursOf(dessert, trial),
            DraftReasons =
            [
                .. whyNoPanel is null ? columns.DraftReasons : [],
                .. MissingForSale(dessert, trial, rules, languages[0], "panel", "list"),
                .. net.Problems,
                .. whyNoPanel is null ? panel.Problems.Select(problem => problem.ToString()) : [],
                .. texts.Problems.Select(problem => problem.ToString()),
            ],
        };
    }

    /// <summary>The rule by which the pack of a trial is too small for a list of ingredients, which is then given by other means; null where the list stands on the pack, or the size of the pack is not known.</summary>
    /// <exception cref="TableException">A cell holds no size.</exception>
    public static LayoutRule? ListExemption(Dessert dessert, string trial, RuleSet rules) => LabelAsked.HasPack(dessert)
        ? LayoutRules.Of(rules).Exemption("list", LabelAsked.Pack(dessert, trial), dessert.Facts.Number("net_g", trial)) : null;

    /// <summary>What the pack of a trial in a language leaves off because it has no room for it and the law lets it go, by its key in <c>dessert.csv</c>; nothing where all has room, or where no market or no size of the pack is known.</summary>
    /// <exception cref="TableException">The label cannot be drawn: a sheet or a rule file cannot be read.</exception>
    public static IReadOnlyDictionary<string, LayoutRule> LeftOff(Dessert dessert, string trial, RuleSet rules, string language)
    {
        string[] countries = [.. dessert.Markets(trial).Where(market => Names.Same(market.Rules, rules.Name) && Names.Same(market.Language, language)).Select(market => market.Country).Distinct(Names.Comparer)];
        if (countries is [] || !LabelAsked.HasPack(dessert)) return new Dictionary<string, LayoutRule>();
        // Only a small pack is laid out for this: on others nothing may be left off.
        var (pack, grams) = (LabelAsked.Pack(dessert, trial), dessert.Facts.Number("net_g", trial));
        return !LayoutRules.Of(rules).Rows.Any(row => row.Value.Length > 0 && ReferenceEquals(LayoutRules.Of(rules).Exemption(row.Part, pack, grams), row)) ? new Dictionary<string, LayoutRule>()
            : DrawnFaces(dessert, trial, string.Join("; ", countries)).SelectMany(drawing => drawing.Layout.LeftOff).DistinctBy(rule => rule.Part, Names.Comparer).ToDictionary(rule => rule.Part, Names.Comparer);
    }

    /// <summary>What the form of sale asks for and the sheets do not show.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set.</param>
    /// <param name="language">The language of the pack.</param>
    /// <param name="saidElsewhere">What is left out here because it says itself what it lacks, as <see cref="SaleRequirement.By"/> names it.</param>
    internal static IEnumerable<string> MissingForSale(Dessert dessert, string trial, RuleSet rules, string language, params string[] saidElsewhere) => dessert.Facts.Text("form_of_sale", trial) is null
        ? ["How it is sold is not known, and so what its pack must bear: write form_of_sale in dessert.csv."]
        : SaleChecklist.Of(dessert, trial, rules.Name, language).Items
            .Where(item => item.State == SaleState.Missing && !saidElsewhere.Contains(item.Requirement.By, Names.Comparer))
            .Select(item => $"Missing: {item.Requirement.Particular}; {item.Words} ({item.Requirement.Origin}).");

    internal static Market[] MarketsOf(Dessert dessert, string trial, string market)
    {
        var known = dessert.Markets(trial);
        var asked = market.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        bool IsMeant(Market each, string word) => Names.Same(each.Country, word) || Names.Same(each.Rules, word);
        string[] missing = [.. asked.Where(word => !known.Any(each => IsMeant(each, word)))];
        if (asked is [] || missing.Length > 0) throw new TableException([DessertFacts.InNoRow("market", $"a row 'market' for '{string.Join("; ", missing)}' and {trial}, such as IE; EU; en; there are: {string.Join(" | ", known)}")]);
        Market[] own = [.. asked.SelectMany(word => known.Where(each => IsMeant(each, word))).Distinct()];
        return Array.TrueForAll(own, each => each.Rules == own[0].Rules) ? own
            : throw new TableException([DessertFacts.InNoRow("market", $"markets of one rule set for one pack; these are of {string.Join(", ", own.Select(each => each.Rules).Distinct())}")]);
    }

    // The sheet's own term for the measure, or else for what is counted: "1 slice" is said with the term for "slice".
    internal static string? MeasureIn(Dessert dessert, string measure, string language) => dessert.Words.Said(measure, language)
        ?? (measure.IndexOf(' ', StringComparison.Ordinal) is var at and > 0 && char.IsDigit(measure[0]) && dessert.Words.Said(measure[(at + 1)..], language) is { } counted ? $"{measure[..at]} {counted}" : null);

    // An address and a lot are the same in every language.
    private static IEnumerable<LabelLanguage> SameInAll(Dessert dessert, string trial)
    {
        LabelParagraph[] same = [.. from key in (string[])["business", "lot"] let text = dessert.Facts.Text(key, trial) where text is not null select LabelParagraph.Of("text", text) with { Particular = key }];
        if (same.Length > 0) yield return new("", same);
    }

    private static LabelColours ColoursOf(Dessert dessert, string trial)
    {
        LabelColour Colour(string key, LabelColour otherwise) => dessert.Facts.Text(key, trial) is not { } text ? otherwise : LabelColour.Parse(text) ?? throw new TableException([dessert.Facts.Problem(key, trial, "a colour, such as #1a2b3c")]);
        return new(Colour("print_colour", LabelColours.BlackOnWhite.Ink), Colour("ground_colour", LabelColours.BlackOnWhite.Ground));
    }

    /// <summary>The texts of a label, language by language; what is lacking is kept.</summary>
    private sealed class Texts(Dessert dessert, string trial, RuleSet rules, bool isWithoutList)
    {
        private readonly List<ListProblem> _problems = [];

        public IReadOnlyList<ListProblem> Problems => [.. _problems.Distinct()];

        public LabelLanguage In(string language)
        {
            var list = dessert.IngredientList(trial, rules.Name, language);
            _problems.AddRange(list.Problems);
            var (besideName, others) = Statements(language);
            List<LabelParagraph> paragraphs = [LabelParagraph.Of("name", Translated(dessert.Name, language)), .. besideName, new("list", list.Runs)];
            // A pack too small for a list still tells of allergens.
            if (isWithoutList && list.InPlaceOfList.Count > 0) paragraphs.Add(new("contains", list.InPlaceOfList));
            if (isWithoutList) _problems.AddRange(list.InPlaceOfListProblems);
            if (list.ContainsStatement.Count > 0) paragraphs.Add(new("contains", list.ContainsStatement));
            if (list.MayContainStatement.Count > 0) paragraphs.Add(new("contains", list.MayContainStatement));
            paragraphs.AddRange(others);
            if (dessert.Facts.Text("date_kind", trial) is { } kind)
            {
                if (DateRules.Of(rules).Mark(kind)?.Wording.GetValueOrDefault(language) is { } mark && PanelTerms.Of(rules).In("stamp", language) is { } stamp)
                    paragraphs.Add(LabelParagraph.Of("text", $"{LabelWords.Of(rules.Folder).Colon(Names.Capital(mark), language)} {stamp}"));
                else _problems.Add(new($"The date '{kind}' has no words in '{language}'", "write them in date-marking.csv of the rule set, and where the date stands in panel-words.csv", null));
            }
            if (dessert.Facts.Text("keep", trial) is { } keep) paragraphs.Add(LabelParagraph.Of("text", Translated(keep, language)) with { Particular = "keep" });
            if (dessert.Facts.Text("instructions", trial) is { } said) paragraphs.Add(LabelParagraph.Of("text", Translated(said, language)) with { Particular = "instructions" });
            if (dessert.Facts.Text("origin", trial) is { } origin)
            {
                paragraphs.Add(LabelParagraph.Of("text", OriginWords.Of(rules, Translated(origin, language), language)) with { Particular = "origin" });
                if (!OriginWords.HasThem(rules, language)) _problems.Add(new($"The place of origin has no words before it in '{language}'", "write them in panel-words.csv of the rule set, row 'origin'", null));
            }
            return new(language, paragraphs);
        }

        // What the formula triggers, in the words of the law: with the name where it says so, otherwise after the list.
        private (LabelParagraph[] BesideName, LabelParagraph[] Others) Statements(string language)
        {
            var met = TrialParticulars.Of(dessert, trial, rules.Name).Where(each => each.State == ParticularState.Applies && each.Rule.Wording.Count > 0).ToArray();
            _problems.AddRange(met.Where(each => each.In(language) is null).Select(each => new ListProblem($"The statement '{each.Rule.Name}' has no words in '{language}'", $"write them in particulars.csv of {rules.Name}", null)));
            LabelParagraph[] Printed(bool besideName) => [.. met.Where(each => each.Rule.IsWithName == besideName)
                .Select(each => each.In(language)).OfType<string>().Select(words => LabelParagraph.Of("warning", Names.Capital(words)) with { StandsWith = besideName ? "name" : "warning" })];
            return (Printed(besideName: true), Printed(besideName: false));
        }

        private string Translated(string words, string language)
        {
            if (dessert.Words.Said(words, language) is { } said) return Names.Capital(said);
            _problems.Add(new($"'{words}' has no words in '{language}'", "write them in words.csv of the store", null));
            return Names.Capital(words);
        }

    }
}
