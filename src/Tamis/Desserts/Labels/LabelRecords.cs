using System.Globalization;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Signs the label of a trial and finds what was changed since: the folder <c>records</c> of a dessert.</summary>
public static class LabelRecords
{
    private const string FolderName = "records";

    // Where the day of the rules came from, if no row of dessert.csv said it.
    internal const string RulesDayKey = "rules_day", AskedFor = "asked for when it was signed";

    /// <summary>All that the label of a trial rests on and says, section by section: what a record of it would hold.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="language">The language's code.</param>
    /// <exception cref="TableException">The masses of the trial are not all known.</exception>
    public static IReadOnlyList<RecordSection> SectionsOf(Dessert dessert, string trial, string rules, string language) => Drawn.Of(dessert, trial, rules, language).Sections;

    /// <summary>What keeps a label from being signed; none where it may be.</summary>
    public static IReadOnlyList<string> Hindrances(Dessert dessert, string trial, string rules, string language) => Drawn.Of(dessert, trial, rules, language).Hindrances;

    /// <summary>Signs the label of a trial: one file in the folder <c>records</c>, written whole, never over another.</summary>
    /// <returns>The path of the file.</returns>
    /// <exception cref="TableException">Cells cannot be read: all of them, whichever part of the label they are for.</exception>
    /// <exception cref="InvalidOperationException">The label is a draft, or was signed on that day already; the message says what to do.</exception>
    public static string Sign(Dessert dessert, string trial, string rules, string language, string signer, DateOnly on)
    {
        if (string.IsNullOrWhiteSpace(signer)) throw new InvalidOperationException("A record says who signed it: give a name.");
        Drawn drawn = new(dessert, trial, rules, language);
        var cells = LabelCells.Problems(dessert, trial, [rules], drawn.Reads);
        if (cells.Count > 0) throw new TableException(cells);
        if (drawn.Hindrances is { Count: > 0 } hindrances)
            throw new InvalidOperationException($"The label of {trial} cannot be signed yet:\n{string.Join('\n', hindrances.Select(hindrance => $"  {hindrance}"))}");
        var record = drawn.SignedBy(signer.Trim(), on).Sealed();
        var name = FormattableString.Invariant($"{record.Trial}-{record.Rules}-{record.Language}-{on:yyyy-MM-dd}.json");
        var path = Path.Combine(dessert.Folder, FolderName, string.Concat(name.Select(letter => "/\\:*?\"<>|".Contains(letter, StringComparison.Ordinal) || char.IsControl(letter) ? '-' : letter)));
        if (File.Exists(path)) throw new InvalidOperationException($"{Path.GetFileName(path)} is there already, and a record is never written over; sign on another day, or move it away.");
        TextFile.WriteNew(path, record.ToJson());
        return path;
    }

    /// <summary>The records of a dessert, oldest first, by file name; what cannot be read is named.</summary>
    /// <exception cref="TableException">A file in the folder is no record.</exception>
    public static IReadOnlyList<(string File, LabelRecord Record)> Of(Dessert dessert)
    {
        var folder = Path.Combine(dessert.Folder, FolderName);
        if (!Directory.Exists(folder)) return [];
        List<(string, LabelRecord)> records = [];
        List<CellProblem> problems = [];
        foreach (var path in Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal))
        {
            try
            {
                records.Add((Path.GetFileName(path), LabelRecord.FromJson(File.ReadAllText(path))));
            }
            catch (FormatException error)
            {
                problems.Add(new(Path.GetFileName(path), 0, "", "", error.Message.TrimEnd('.')));
            }
        }
        return problems is [] ? [.. records.OrderBy(each => each.Item2.SignedOn)] : throw new TableException(problems);
    }

    /// <summary>What is not as a record has it: cells, documents, contents, rules, and what is printed.</summary>
    /// <remarks>A record that was signed by the rules of a day that somebody asked for is held against the rules of that day.</remarks>
    /// <exception cref="TableException">The masses of the trial are no longer all known.</exception>
    public static IReadOnlyList<RecordDifference> Since(Dessert dessert, LabelRecord record)
    {
        if (!dessert.Batches.Any(batch => Names.Same(batch.Trial, record.Trial))) return [new("Formula", false, "trial", record.Trial, "", "formula.csv has no such trial")];
        return KitData.RuleSetNames.Any(name => Names.Same(name, record.Rules))
            ? RecordDifference.Between(record.Sections, SectionsOf(dessert.ByRulesOf(DayAskedFor(record)), record.Trial, record.Rules, record.Language))
            : [new("Rules", false, "rule set", record.Rules, "", "the kit has no such rule set")];
    }

    private static DateOnly? DayAskedFor(LabelRecord record) =>
        record.Sections.SelectMany(section => section.Rows).FirstOrDefault(row => row is { Key: RulesDayKey, Source: AskedFor }) is { } row
            && DateOnly.TryParseExact(row.Text, LabelAsked.DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    private static string Number(double number) => number.ToString("G10", CultureInfo.InvariantCulture);

    /// <summary>A label with its panel, list and claims, each read once: signing looks at them for what hinders it, and writes them down.</summary>
    private sealed class Drawn
    {
        private readonly Dessert _dessert;
        private readonly string _language;
        private readonly Losses.Batch _batch;
        private readonly Lazy<PanelColumns> _columns;
        private readonly Lazy<ShortPanel?> _short;
        private readonly Lazy<string?> _whyNoPanel;
        private readonly Lazy<IngredientDeclaration> _list;
        private readonly Lazy<IReadOnlyList<(ClaimVerdict Verdict, Source Origin)>> _claims;
        private readonly Lazy<RecordedParticulars> _particulars;
        private readonly Lazy<LayoutRule?> _withoutList;
        private readonly Lazy<Serving?> _serving;

        public Drawn(Dessert dessert, string trial, string rules, string language)
        {
            (_dessert, _language, _batch) = (dessert, language, dessert.Trial(trial));
            _columns = new(() => DessertPanels.ColumnsOf(dessert, trial, rules));
            _short = new(() => DessertPanels.LeftOffOf(dessert, trial, rules, _columns.Value));
            _whyNoPanel = new(() => PanelNeed.WhyNone(dessert, _batch.Trial, Rules, _columns.Value));
            _list = new(() => dessert.IngredientList(trial, rules, language));
            _claims = new(() => DessertClaims.Asked(dessert, trial, rules));
            _particulars = new(() => new(dessert, _batch.Trial, KitData.Rules(rules), language));
            _serving = new(() => DessertPanels.ServingOf(dessert, _batch.Trial, KitData.Rules(rules)));
            _withoutList = new(() => DessertLabel.ListExemption(dessert, _batch.Trial, KitData.Rules(rules)));
        }

        /// <summary>A label of which everything could be read.</summary>
        /// <exception cref="TableException">Cells cannot be read: all of them, whichever part of the label they are for.</exception>
        public static Drawn Of(Dessert dessert, string trial, string rules, string language)
        {
            Drawn drawn = new(dessert, trial, rules, language);
            return LabelCells.Tried(drawn.Reads) is { Count: > 0 } problems ? throw new TableException(problems) : drawn;
        }

        /// <summary>What reads each part, once: where one of them fails the others go on.</summary>
        public Action[] Reads =>
        [
            () => _ = _columns.Value, () => _ = _short.Value, () => _ = _whyNoPanel.Value, () => _ = _list.Value, () => _ = _claims.Value, () => _ = _particulars.Value, () => _ = _withoutList.Value, () => _ = _serving.Value,
        ];

        // The panel on the basis of the law comes first, whichever column stands first on the pack.
        private NutritionPanel Panel => _columns.Value.Columns.FirstOrDefault(column => column.Basis.IsServing == column.Rules.IsPerServing) ?? _columns.Value.Columns[0];

        private RuleSet Rules => _columns.Value.Columns[0].Rules;

        public IReadOnlyList<string> Hindrances =>
        [
            .. _whyNoPanel.Value is null ? _columns.Value.DraftReasons : [],
            .. _short.Value?.ProblemsIn([_language]).Select(problem => problem.ToString()) ?? [],
            .. _list.Value.Problems.Concat(_withoutList.Value is null ? [] : _list.Value.InPlaceOfListProblems).Select(problem => problem.ToString()).Distinct(),
            .. _claims.Value.Where(each => each.Verdict.IsRefused).Select(each => $"the claim '{each.Verdict.Asked}' is asked for and may not be made ({each.Origin})"),
            .. _particulars.Value.Hindrances,
        ];

        public IReadOnlyList<RecordSection> Sections =>
        [
            new("Formula", false, [.. _batch.Components.SelectMany(component => component.Lines.Select((line, at) => new RecordRow($"{component.Name}, {line.Name}, step {line.Step}, line {at + 1}", line.Quantity.Text, line.Origin.ToString())))]),
            new("What leaves", false, [.. _batch.Components.SelectMany(component => component.Losses.Select((loss, at) => new RecordRow($"{component.Name}, {loss.Name}, step {loss.Step}, loss {at + 1}", loss.Written, loss.Origin.ToString())))]),
            new("Documents", false, Documents()),
            new("Contents in 100 g", false, Contents()),
            new("Rules", false, RuleRows()),
            new("Nutrition panel", true, _whyNoPanel.Value is { } why ? [new("panel", "none on the pack", why)] : [.. Printed(Panel).Select(line => RowOf(line, ""))]),
            new("Figures before rounding", false, [.. Panel.Lines.Select(line => new RecordRow($"{line.Key}, {line.Unit}, {Panel.Basis.Words}", Number(line.Amount.Known), ""))]),
            new("List of ingredients", true, [_withoutList.Value is { } small ? new("in place of the list", TextOf(_list.Value.InPlaceOfList), small.Origin.ToString()) : ListRow(""),
                new("contains", TextOf(_list.Value.ContainsStatement), ""), new("may contain", TextOf(_list.Value.MayContainStatement), "")]),
            new("Claims", true, [.. ClaimsOnce.Select(each => new RecordRow(each.Verdict.Asked, each.Verdict.IsRefused ? "refused" : each.Verdict.State == ClaimState.NotAClaim ? "no nutrition claim" : "may be made", each.Origin.ToString()))]),
            .. _particulars.Value.Sections,
            // Written also where they hold nothing: what comes later is then known to be new.
            new("Further columns of the nutrition panel", true, [.. _columns.Value.Columns.Where(column => column != Panel && _whyNoPanel.Value is null).SelectMany(Printed).Select(line => RowOf(line, line.Rounded?.Band.Origin.ToString() ?? ""))]),
            new("What the nutrition panel leaves off", true, [.. LeftOff()]),
            new("List of ingredients by other means", false, _withoutList.Value is { } rule ? [ListRow(rule.Origin.ToString())] : []),
            new("Serving on the nutrition panel", true, [.. ServingRows()]),
        ];

        private RecordRow ListRow(string source) => new("list", _list.Value.Text, source);

        private static string TextOf(IEnumerable<TextRun> runs) => string.Concat(runs.Select(run => run.Text));

        private IEnumerable<PanelLine> Printed(NutritionPanel panel) => panel.Lines.Where(line => (line.Printed.Length > 0 || line.Percent is not null) && _short.Value?.IsLeftOff(line.Key) != true);

        private static RecordRow RowOf(PanelLine line, string source) =>
            new($"{line.Key}, {line.Unit}, {line.Panel.Basis.Words}", string.Join("; ", ((string?[])[line.Printed, line.Percent?.Text]).Where(text => text is { Length: > 0 })), source);

        // In the words of the drawing, which are in the language of the label.
        private IEnumerable<RecordRow> ServingRows()
        {
            if (_whyNoPanel.Value is not null || _serving.Value is not { } serving) yield break;
            var content = PanelContent.Of(_columns.Value.Columns, [_language], new(serving.PerContainer, serving.Household) { Said = (words, language) => DessertLabel.MeasureIn(_dessert, words, language) });
            if (content.Servings.Length > 0) yield return new("servings", content.Servings, "");
            if (content.ServingSizeHead.Length > 0) yield return new("serving size", $"{content.ServingSizeHead} {content.ServingSize}".Trim(), serving.Working.Source.ToString());
        }

        private IEnumerable<RecordRow> LeftOff()
        {
            if (_short.Value is not { LeftOff.Count: > 0 }) yield break;
            if (_short.Value.Limit is { } limit) yield return new("the panel is", limit.Form, limit.Origin.ToString());
            else yield return new("in its place", _short.Value.IsSingleServing ? "nothing: the package is one serving" : _short.Value.StatementIn(_language) ?? "", "");
            foreach (var row in _short.Value.LeftOff) yield return new(row.Figure, $"left off: {row.Why}", row.Origin.ToString());
        }

        public LabelRecord SignedBy(string signer, DateOnly on) => new()
        {
            Product = _dessert.Name,
            Trial = _batch.Trial,
            Rules = Rules.Name,
            Language = _language,
            Signer = signer,
            SignedOn = on,
            Sections = Sections,
        };

        private IEnumerable<(ClaimVerdict Verdict, Source Origin)> ClaimsOnce => _claims.Value.DistinctBy(each => each.Verdict.Asked);

        private IEnumerable<Formulas.Ingredient> Ingredients => Panel.Mixture.Parts.Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer);

        private RecordRow[] Documents() =>
            [.. Ingredients.Select(ingredient =>
            {
                var documents = _dessert.Specifications.Of(ingredient.Name).Where(document => _dessert.Store.AsOf is not { } day || document.Date is null || document.Date <= day).ToArray();
                var said = documents.Length > 0 ? documents[^1].InWords : ingredient.Food ?? "neither a food nor a document";
                return new RecordRow(ingredient.Name, $"{said}; allergens: {(ingredient.Allergens is { } known ? known.Count == 0 ? "none" : string.Join(", ", known) : "nobody looked")}{(ingredient.SupplierList is { } list ? $"; {list}" : "")}", ingredient.Origin?.ToString() ?? "");
            })];

        private RecordRow[] Contents()
        {
            string[] tags = [.. Rules.Declaration.SelectMany(figure => figure.Summands).SelectMany(summand => summand.Formula.Ways).SelectMany(way => way).Select(term => term.Tag).Distinct().Order(StringComparer.Ordinal)];
            return [.. from ingredient in Ingredients
                       where ingredient.Profile is not null
                       from tag in tags
                       let content = ingredient.Profile![tag]
                       where content.IsKnown
                       select new RecordRow($"{ingredient.Name}, {tag}", Number(content.Per100Grams), content.Source?.ToString() ?? "")];
        }

        // The rows that the printed figures were made with; other rows of the folder may come and go.
        private RecordRow[] RuleRows() =>
        [
            .. Panel.Lines.Where(line => line.Rounded is not null).Select(line => new RecordRow($"rounding of {line.Key}, {line.Unit}", line.Rounded!.Band.InWords, line.Rounded.Band.Origin.ToString())),
            .. Panel.Lines.Where(line => line.Reference is not null).Select(line => new RecordRow($"reference value of {line.Key}, {line.Unit}", Number(line.Reference!.Value), line.Reference.Origin.ToString())),
            .. Rules.EnergyFactors.Select(factor => new RecordRow($"energy of {factor.Key}", $"{factor.KilojoulesPerGram?.ToString(CultureInfo.InvariantCulture) ?? "none"} kJ, {factor.KilocaloriesPerGram?.ToString(CultureInfo.InvariantCulture) ?? "none"} kcal a gram", factor.Origin.ToString())),
            .. ClaimsOnce.SelectMany(each => each.Verdict.Conditions.Select((result, at) =>
                new RecordRow($"claim {each.Verdict.Asked}, condition {at + 1}", ClaimCheck.LimitInWords(result.Condition), result.Condition.Origin.ToString()))),
            .. LabelCertainty.Of(Panel, claims: DessertPanels.ClaimSubjects(_dessert, _batch.Trial, _claims.Value.Select(each => each.Verdict))).Figures.Where(figure => figure.Tolerance is not null).Select(figure =>
                new RecordRow($"tolerance of {figure.Line.Key}, {figure.Line.Unit}", $"from {Limit(figure.Accepted!.Value.Lowest)} to {Limit(figure.Accepted.Value.Highest)} {figure.Line.Unit}", figure.Tolerance!.Origin.ToString())),
        ];

        private static string Limit(double limit) => double.IsFinite(limit) ? Number(limit) : "any";
    }
}
