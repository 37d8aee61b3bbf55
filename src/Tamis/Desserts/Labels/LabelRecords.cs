using System.Globalization;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Signs the label of a trial and finds what was changed since: the folder <c>records</c> of a dessert.</summary>
public static class LabelRecords
{
    private const string FolderName = "records";

    /// <summary>All that the label of a trial rests on and says, section by section: what a record of it would hold.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="language">The language's code.</param>
    /// <exception cref="TableException">The masses of the trial are not all known.</exception>
    public static IReadOnlyList<RecordSection> SectionsOf(Dessert dessert, string trial, string rules, string language) => new Drawn(dessert, trial, rules, language).Sections;

    /// <summary>What keeps a label from being signed; none where it may be.</summary>
    public static IReadOnlyList<string> Hindrances(Dessert dessert, string trial, string rules, string language) => new Drawn(dessert, trial, rules, language).Hindrances;

    /// <summary>Signs the label of a trial: one file in the folder <c>records</c>, written whole, never over another.</summary>
    /// <returns>The path of the file.</returns>
    /// <exception cref="TableException">Cells cannot be read: all of them, whichever part of the label they are for.</exception>
    /// <exception cref="InvalidOperationException">The label is a draft, or was signed on that day already; the message says what to do.</exception>
    public static string Sign(Dessert dessert, string trial, string rules, string language, string signer, DateOnly on)
    {
        if (string.IsNullOrWhiteSpace(signer)) throw new InvalidOperationException("A record says who signed it: give a name.");
        var cells = LabelCells.Problems(dessert, trial, [rules], () => DessertPanels.ColumnsOf(dessert, trial, rules), () => dessert.IngredientList(trial, rules, language),
            () => DessertClaims.Asked(dessert, trial, rules), () => _ = new RecordedParticulars(dessert, dessert.Trial(trial).Trial, KitData.Rules(rules), language));
        if (cells.Count > 0) throw new TableException(cells);
        Drawn drawn = new(dessert, trial, rules, language);
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
    /// <exception cref="TableException">The masses of the trial are no longer all known.</exception>
    public static IReadOnlyList<RecordDifference> Since(Dessert dessert, LabelRecord record)
    {
        if (!dessert.Batches.Any(batch => Names.Same(batch.Trial, record.Trial))) return [new("Formula", false, "trial", record.Trial, "", "formula.csv has no such trial")];
        return KitData.RuleSetNames.Any(name => Names.Same(name, record.Rules))
            ? RecordDifference.Between(record.Sections, SectionsOf(dessert, record.Trial, record.Rules, record.Language))
            : [new("Rules", false, "rule set", record.Rules, "", "the kit has no such rule set")];
    }

    private static string Number(double number) => number.ToString("G10", CultureInfo.InvariantCulture);

    /// <summary>A label with its panel, list and claims, each drawn up once: signing looks at them for what hinders it, and writes them down.</summary>
    private sealed class Drawn
    {
        private readonly Dessert _dessert;
        private readonly Losses.Batch _batch;
        private readonly PanelColumns _columns;
        private readonly NutritionPanel _panel;
        private readonly ShortPanel? _short;
        private readonly IngredientDeclaration _list;
        private readonly string _language;
        private readonly IReadOnlyList<(ClaimVerdict Verdict, Source Origin)> _claims;
        private readonly RecordedParticulars _particulars;
        private readonly string? _whyNoPanel;

        public Drawn(Dessert dessert, string trial, string rules, string language)
        {
            (_dessert, _language, _batch) = (dessert, language, dessert.Trial(trial));
            (_columns, _short) = (DessertPanels.ColumnsOf(dessert, trial, rules), DessertPanels.LeftOffOf(dessert, trial, rules));
            // The panel on the basis of the law comes first, whichever column stands first on the pack.
            _panel = _columns.Columns.FirstOrDefault(column => column.Basis.IsServing == column.Rules.IsPerServing) ?? _columns.Columns[0];
            (_list, _claims) = (dessert.IngredientList(trial, rules, language), DessertClaims.Asked(dessert, trial, rules));
            _particulars = new(dessert, _batch.Trial, _panel.Rules, language);
            _whyNoPanel = PanelNeed.WhyNone(dessert, _batch.Trial, _panel.Rules, _columns);
        }

        public IReadOnlyList<string> Hindrances =>
        [
            .. _whyNoPanel is null ? _columns.DraftReasons : [],
            .. _short is { LeftOff.Count: > 0 } && _short.StatementIn(_language) is null ? [$"what is left off the panel has no words in '{_language}': write them in short-panel.csv of the rule set"] : Array.Empty<string>(),
            .. _list.Problems.Select(problem => problem.ToString()),
            .. _claims.Where(each => each.Verdict.IsRefused).Select(each => $"the claim '{each.Verdict.Asked}' is asked for and may not be made ({each.Origin})"),
            .. _particulars.Hindrances,
        ];

        public IReadOnlyList<RecordSection> Sections =>
        [
            new("Formula", false, [.. _batch.Components.SelectMany(component => component.Lines.Select((line, at) => new RecordRow($"{component.Name}, {line.Name}, step {line.Step}, line {at + 1}", line.Quantity.Text, line.Origin.ToString())))]),
            new("What leaves", false, [.. _batch.Components.SelectMany(component => component.Losses.Select((loss, at) => new RecordRow($"{component.Name}, {loss.Name}, step {loss.Step}, loss {at + 1}", loss.Written, loss.Origin.ToString())))]),
            new("Documents", false, Documents()),
            new("Contents in 100 g", false, Contents()),
            new("Rules", false, RuleRows()),
            new("Nutrition panel", true, _whyNoPanel is { } why ? [new("panel", "none on the pack", why)] : [.. Printed(_panel).Select(line => RowOf(line, ""))]),
            new("Figures before rounding", false, [.. _panel.Lines.Select(line => new RecordRow($"{line.Key}, {line.Unit}, {_panel.Basis.Words}", Number(line.Amount.Known), ""))]),
            new("List of ingredients", true, [new("list", _list.Text, ""), new("contains", string.Concat(_list.ContainsStatement.Select(run => run.Text)), ""), new("may contain", string.Concat(_list.MayContainStatement.Select(run => run.Text)), "")]),
            new("Claims", true, [.. ClaimsOnce.Select(each => new RecordRow(each.Verdict.Asked, each.Verdict.IsRefused ? "refused" : each.Verdict.State == ClaimState.NotAClaim ? "no nutrition claim" : "may be made", each.Origin.ToString()))]),
            .. _particulars.Sections,
            // Written also where they hold nothing: what comes later is then known to be new.
            new("Further columns of the nutrition panel", true, [.. _columns.Columns.Where(column => column != _panel && _whyNoPanel is null).SelectMany(Printed).Select(line => RowOf(line, line.Rounded?.Band.Origin.ToString() ?? ""))]),
            new("What the nutrition panel leaves off", true, [.. LeftOff()]),
        ];

        private IEnumerable<PanelLine> Printed(NutritionPanel panel) => panel.Lines.Where(line => (line.Printed.Length > 0 || line.Percent is not null) && _short?.LeftOff.Any(row => Names.Same(row.Figure, line.Key)) != true);

        private static RecordRow RowOf(PanelLine line, string source) =>
            new($"{line.Key}, {line.Unit}, {line.Panel.Basis.Words}", string.Join("; ", ((string?[])[line.Printed, line.Percent?.Text]).Where(text => text is { Length: > 0 })), source);

        private IEnumerable<RecordRow> LeftOff()
        {
            if (_short is not { LeftOff.Count: > 0 }) yield break;
            yield return new("in its place", _short.StatementIn(_language) ?? "", "");
            foreach (var row in _short.LeftOff) yield return new(row.Figure, $"left off: {row.LimitInWords}", row.Origin.ToString());
        }

        public LabelRecord SignedBy(string signer, DateOnly on) => new()
        {
            Product = _dessert.Name,
            Trial = _batch.Trial,
            Rules = _panel.Rules.Name,
            Language = _language,
            Signer = signer,
            SignedOn = on,
            Sections = Sections,
        };

        private IEnumerable<(ClaimVerdict Verdict, Source Origin)> ClaimsOnce => _claims.DistinctBy(each => each.Verdict.Asked);

        private IEnumerable<Formulas.Ingredient> Ingredients => _panel.Mixture.Parts.Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer);

        private RecordRow[] Documents() =>
            [.. Ingredients.Select(ingredient =>
            {
                var documents = _dessert.Specifications.Of(ingredient.Name).Where(document => _dessert.Store.AsOf is not { } day || document.Date is null || document.Date <= day).ToArray();
                var said = documents.Length > 0 ? documents[^1].InWords : ingredient.Food ?? "neither a food nor a document";
                return new RecordRow(ingredient.Name, $"{said}; allergens: {(ingredient.Allergens is { } known ? known.Count == 0 ? "none" : string.Join(", ", known) : "nobody looked")}{(ingredient.SupplierList is { } list ? $"; {list}" : "")}", ingredient.Origin?.ToString() ?? "");
            })];

        private RecordRow[] Contents()
        {
            string[] tags = [.. _panel.Rules.Declaration.SelectMany(figure => figure.Summands).SelectMany(summand => summand.Formula.Ways).SelectMany(way => way).Select(term => term.Tag).Distinct().Order(StringComparer.Ordinal)];
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
            .. _panel.Lines.Where(line => line.Rounded is not null).Select(line => new RecordRow($"rounding of {line.Key}, {line.Unit}", line.Rounded!.Band.InWords, line.Rounded.Band.Origin.ToString())),
            .. _panel.Lines.Where(line => line.Reference is not null).Select(line => new RecordRow($"reference value of {line.Key}, {line.Unit}", Number(line.Reference!.Value), line.Reference.Origin.ToString())),
            .. _panel.Rules.EnergyFactors.Select(factor => new RecordRow($"energy of {factor.Key}", $"{factor.KilojoulesPerGram?.ToString(CultureInfo.InvariantCulture) ?? "none"} kJ, {factor.KilocaloriesPerGram?.ToString(CultureInfo.InvariantCulture) ?? "none"} kcal a gram", factor.Origin.ToString())),
            .. ClaimsOnce.SelectMany(each => each.Verdict.Conditions.Select((result, at) =>
                new RecordRow($"claim {each.Verdict.Asked}, condition {at + 1}", ClaimCheck.LimitInWords(result.Condition), result.Condition.Origin.ToString()))),
            .. LabelCertainty.Of(_panel, claims: DessertPanels.ClaimSubjects(_dessert, _batch.Trial, _claims.Select(each => each.Verdict))).Figures.Where(figure => figure.Tolerance is not null).Select(figure =>
                new RecordRow($"tolerance of {figure.Line.Key}, {figure.Line.Unit}", $"from {Limit(figure.Accepted!.Value.Lowest)} to {Limit(figure.Accepted.Value.Highest)} {figure.Line.Unit}", figure.Tolerance!.Origin.ToString())),
        ];

        private static string Limit(double limit) => double.IsFinite(limit) ? Number(limit) : "any";
    }
}
