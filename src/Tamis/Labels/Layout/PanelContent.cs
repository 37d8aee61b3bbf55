using System.Globalization;
using System.Text.RegularExpressions;

namespace Tamis.Labels;

/// <summary>A line of a panel as it is printed.</summary>
/// <param name="Key">The figure.</param>
/// <param name="Term">Its words, in every language of the pack.</param>
/// <param name="Amounts">The declared amounts, one a column; empty where the amount stands within the words.</param>
/// <param name="Percent">The percentage of the reference value, where one stands for the line; empty where there is none.</param>
/// <param name="Indent">How far it stands in.</param>
/// <param name="IsEnergy">Whether it is the energy.</param>
public sealed record PanelContentLine(string Key, string Term, IReadOnlyList<string> Amounts, string Percent, int Indent, bool IsEnergy)
{
    /// <summary>The percentages where each column has its own, one a column; empty where a column has none.</summary>
    public IReadOnlyList<string> Percents { get; init; } = [];

    /// <summary>The keys of the lines beside which its percentage stands, where it has nothing but that; none where it stands by itself.</summary>
    public IReadOnlyList<string> Beside { get; init; } = [];
}

/// <summary>What a panel says of the serving.</summary>
/// <param name="PerContainer">How many servings the pack holds; null where nobody said.</param>
/// <param name="Household">The serving in a household measure: <c>1 slice</c>; may be empty.</param>
public sealed record PanelServing(double? PerContainer, string Household = "")
{
    /// <summary>A household measure as a pack in a language says it: words and a language to words, null where there is no term.</summary>
    public Func<string, string, string?> Said { get; init; } = (words, _) => words;
}

/// <summary>A nutrition panel in the words and figures that are printed, whatever its form.</summary>
public sealed partial record PanelContent
{
    /// <summary>What parts the words of one language from those of the next.</summary>
    internal const string BetweenLanguages = " / ";

    private const string AnyWords = "#";

    /// <summary>The title.</summary>
    public required string Title { get; init; }

    /// <summary>How many servings the pack holds; empty where the law does not ask.</summary>
    public required string Servings { get; init; }

    /// <summary>The words for the serving size; empty where the law has none.</summary>
    public required string ServingSizeHead { get; init; }

    /// <summary>The serving size itself.</summary>
    public required string ServingSize { get; init; }

    /// <summary>The words over the amounts of a box; may be empty.</summary>
    public required string AmountPer { get; init; }

    /// <summary>The heads of the columns of amounts.</summary>
    public required IReadOnlyList<string> ColumnHeads { get; init; }

    /// <summary>The head of the percentages; empty where there are none.</summary>
    public required string PercentHead { get; init; }

    /// <summary>The head of the percentages where each of several columns has its own; empty where there are none.</summary>
    public required string ColumnPercentHead { get; init; }

    /// <summary>The column that the one percentage of a line speaks of, from 0 on.</summary>
    public required int PercentColumn { get; init; }

    /// <summary>The keys of the lines in lawful order, also of those that are left off.</summary>
    public required IReadOnlyList<string> Order { get; init; }

    /// <summary>Whether it has several columns of amounts.</summary>
    public bool HasColumns => ColumnHeads.Count > 1;

    /// <summary>The lines in lawful order.</summary>
    public required IReadOnlyList<PanelContentLine> Lines { get; init; }

    /// <summary>The notes under the panel, one a language.</summary>
    public required IReadOnlyList<string> Footnotes { get; init; }

    /// <summary>Those of the notes that stand at the foot of the lines in every form: what was left off as next to nothing.</summary>
    public IReadOnlyList<string> FootStatements { get; init; } = [];

    /// <summary>Words that are lacking: which, and in which language.</summary>
    public required IReadOnlyList<ListProblem> Problems { get; init; }

    // A colon behind a word that stands for all others.
    private string ColonForm { get; init; } = "";

    /// <summary>Words with a colon behind them, set as the last language of the pack sets it.</summary>
    internal string Colon(string words) => ColonForm.Replace(AnyWords, words, StringComparison.Ordinal);

    /// <summary>Puts a panel into words.</summary>
    /// <param name="panels">The panel on each basis, in the order of the columns; at least one.</param>
    /// <param name="languages">The languages of the pack, in order.</param>
    /// <param name="said">What is said of the serving; null where nothing is.</param>
    /// <param name="isShort">Whether columns and percentages that the law does not ask for are left off.</param>
    /// <exception cref="ArgumentException">There is no panel or no language.</exception>
    public static PanelContent Of(IReadOnlyList<NutritionPanel> panels, IReadOnlyList<string> languages, PanelServing? said = null, bool isShort = false)
    {
        if (panels is [] || languages is []) throw new ArgumentException("A panel is drawn from at least one basis and in at least one language.");
        var rules = panels[0].Rules;
        if (isShort && panels.Where(IsAskedFor).ToArray() is { Length: > 0 } asked) panels = asked;
        Wording words = new(PanelTerms.Of(rules), languages);
        said ??= new(null);
        var withPercent = panels.LastOrDefault(panel => panel.Basis.IsServing) ?? panels[0];
        var serving = panels.FirstOrDefault(panel => panel.Basis.IsServing);
        var hasPercent = withPercent.Lines.Any(IsPercentShown);
        var percentHead = hasPercent ? words.Of("percent head", "%").Replace("% ", "%\u00a0", StringComparison.Ordinal) : "";
        // Several amounts stand over their columns, each with its size.
        var isOfAmounts = serving is not null && panels.Any(panel => panel.Basis.IsOtherAmount);
        string[] measures = [.. languages.Select(language => said.Household.Length == 0 ? "" : words.Measure(said, said.Household, language)).Distinct()];
        var metric = serving is null ? "" : $"{Size(serving)}\u00a0{UnitOf(serving)}";
        var hasOneMeasure = measures.Length == 1;
        return new()
        {
            Title = words.Of("title", rules.DeclarationTitle),
            Servings = serving is not null && said.PerContainer is { } count ? words.Counted(ServingWords.Counted(rules, count)) : "",
            ServingSizeHead = serving is null || isOfAmounts ? "" : hasOneMeasure ? words.IfAny("serving size", Size(serving), UnitOf(serving)) : words.Sized(said, said.Household, ""),
            ServingSize = serving is null || isOfAmounts ? "" : !hasOneMeasure ? $"({metric})" : measures[0].Length > 0 ? $"{measures[0]} ({metric})" : metric,
            AmountPer = words.IfAny("amount per"),
            ColumnHeads = [.. panels.Select(panel => panel.Basis switch
            {
                { IsServing: true } when isOfAmounts => words.Sized(said, said.Household, metric),
                { IsOtherAmount: true } => words.Sized(said, panel.Basis.Household, $"{Size(panel)}\u00a0{UnitOf(panel)}"),
                { IsServing: true } => words.Of("per serving", panel.Basis.Words, Size(panel), UnitOf(panel)),
                { IsPackage: true } => words.Of("per package", panel.Basis.Words, Number(panel.BasisGrams)),
                { IsUnit: true } => words.Of("per unit", panel.Basis.Words, Number(panel.BasisGrams)),
                { IsVolume: true } => words.Of("per 100 ml", panel.Basis.Words),
                { MassGrams: 100 } => words.Of("per 100 g", panel.Basis.Words),
                var other => other.Words,
            })],
            PercentHead = percentHead,
            ColumnPercentHead = hasPercent && words.IfAny("column percent head") is { Length: > 0 } brief ? brief.Replace("% ", "%\u00a0", StringComparison.Ordinal) : percentHead,
            PercentColumn = panels.ToList().IndexOf(withPercent),
            Order = [.. panels[0].Lines.Select(line => line.Key).Distinct(Names.Comparer)],
            Lines = [.. panels[0].Lines.GroupBy(line => line.Key, Names.Comparer).Select(LineOf)],
            Footnotes = hasPercent ? words.Each("reference statement", rules.ReferenceStatement) : [],
            Problems = words.Problems,
            ColonForm = LabelWords.Of(rules.Folder).Colon(AnyWords, languages[^1]),
        };

        bool IsPercentShown(PanelLine line) => line.Percent is not null && !(isShort && line.Reference is { Shown: PercentShown.Optional });

        PanelContentLine LineOf(IGrouping<string, PanelLine> group)
        {
            var line = group.First();
            // Of several columns none can stand within the words.
            var isInTerm = line.IsAmountInTerm && panels.Count == 1;
            string[] percents = [.. panels.Select(panel => words.Marked(Unbroken(panel.Lines.FirstOrDefault(each => Names.Same(each.Key, line.Key) && IsPercentShown(each))?.Percent?.Text ?? "")))];
            // What is printed as a percentage is not said again as an amount.
            var isPercentAlone = line.Figure.IsPercentOnly && Array.TrueForAll(percents, percent => percent.Length > 0);
            return new(line.Key, isInTerm || !line.IsAmountInTerm ? words.Of(line.Key, line.Term, words.Marked(line.Declared)) : words.WithoutNumber(line.Key, line.TermWithoutAmount), isInTerm ? [] : isPercentAlone ? [.. panels.Select(_ => "")]
                : [.. panels.Select(panel => words.Marked(Unbroken(string.Join(" / ", panel.Lines.Where(each => Names.Same(each.Key, line.Key)).Select(each => each.Printed)))))],
                percents[panels.ToList().IndexOf(withPercent)], line.Indent, line.IsEnergy) { Percents = percents, Beside = isPercentAlone ? line.Figure.Parts : [] };
        }
    }

    private static bool IsAskedFor(NutritionPanel panel) =>
        panel.Basis.IsPackage || panel.Basis.IsUnit || panel.Rules.Columns.Any(panel.IsOf);

    private static string Size(NutritionPanel panel) => Number(panel.Basis.Millilitres ?? panel.BasisGrams);

    private static string UnitOf(NutritionPanel panel) => panel.Basis.Millilitres is null ? "g" : "ml";

    private static string Number(double number) => number.ToString("0.#", CultureInfo.InvariantCulture);

    // A number does not part from its unit at the end of a line, nor its thousands from each other.
    private static string Unbroken(string text) => NumberAndUnit().Replace(text, "$1\u00a0");

    [GeneratedRegex(@"(\d) (?=[\p{L}\d%µ])")]
    private static partial Regex NumberAndUnit();

    /// <summary>Finds words in every language of the pack, and keeps what is lacking.</summary>
    private sealed class Wording(PanelTerms terms, IReadOnlyList<string> languages)
    {
        private readonly List<ListProblem> _problems = [];

        public IReadOnlyList<ListProblem> Problems => [.. _problems.Distinct()];

        /// <summary>A word in every language, each once; where the file has it in none, the other words stand.</summary>
        public string Of(string word, string otherwise, string number = "", string unit = "g") => string.Join(BetweenLanguages, Each(word, otherwise, number, unit));

        /// <summary>A word that has a figure within, without it.</summary>
        public string WithoutNumber(string word, string otherwise) => string.Join(BetweenLanguages, Each(word, otherwise, "").Select(term => term.Replace("  ", " ", StringComparison.Ordinal).Trim()));

        /// <summary>A word that only some laws have.</summary>
        public string IfAny(string word, string number = "", string unit = "g") => terms.Has(word) ? Of(word, "", number, unit) : "";

        /// <summary>How many servings the pack holds, in the words for a count that was rounded where it was.</summary>
        public string Counted((string Number, bool IsAbout) count) => IfAny(count.IsAbout ? "servings about" : "servings", Marked(count.Number));

        /// <summary>A word, once a language; the same words are not said twice. Laws write the size of a serving in grams and mean millilitres of a liquid.</summary>
        public IReadOnlyList<string> Each(string word, string otherwise, string number = "", string unit = "g")
        {
            List<string> said = [];
            foreach (var language in languages)
            {
                if (terms.In(word, language) is { } term) said.Add(Unbroken(term.Replace("# g", $"# {unit}").Replace("#", number)));
                else if (Names.Same(language, "en")) said.Add(otherwise);
                else
                {
                    _problems.Add(new($"The word '{word}' has no term in '{language}'", "write it in panel-words.csv of the rule set", null));
                    said.Add(otherwise);
                }
            }
            return [.. said.Where(text => text.Length > 0).Distinct()];
        }

        /// <summary>A household measure in a language.</summary>
        public string Measure(PanelServing said, string household, string language)
        {
            if (said.Said(household, language) is { } term) return Unbroken(term);
            _problems.Add(new($"'{household}' has no words in '{language}'", "write the measure, or its word without the number, in words.csv of the store", null));
            return household;
        }

        /// <summary>An amount of the food with the words before it, once a language: <c>Per 2 slices (80 g) / pour 2 tranches (80 g)</c>; without its size where none is given.</summary>
        public string Sized(PanelServing said, string household, string size) => string.Join(BetweenLanguages,
            languages.Select(language => $"{terms.In("serving size", language)} {(household.Length == 0 ? size : $"{Measure(said, household, language)}{(size.Length > 0 ? $" ({size})" : "")}")}".Trim()).Distinct());

        /// <summary>A figure with the decimal mark of the first language.</summary>
        public string Marked(string figure) => terms.Marked(figure, languages[0]);
    }
}
