using System.Globalization;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Signs the label of a trial and finds what was changed since: the folder <c>records</c> of a dessert.</summary>
public static class LabelRecords
{
    private const string FolderName = "records";

    /// <summary>All that the label of a trial rests on and says, not yet signed.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="language">The language's code.</param>
    /// <param name="signer">Who signs.</param>
    /// <param name="on">The day.</param>
    /// <exception cref="TableException">The masses of the trial are not all known.</exception>
    public static LabelRecord DrawUp(Dessert dessert, string trial, string rules, string language, string signer, DateOnly on)
    {
        var (batch, panel, list) = (dessert.Trial(trial), DessertPanels.Of(dessert, trial, rules), dessert.IngredientList(trial, rules, language));
        return new()
        {
            Product = dessert.Name,
            Trial = batch.Trial,
            Rules = panel.Rules.Name,
            Language = language,
            Signer = signer,
            SignedOn = on,
            Sections =
            [
                new("Formula", false, [.. batch.Components.SelectMany(component => component.Lines.Select((line, at) => new RecordRow($"{component.Name}, {line.Name}, step {line.Step}, line {at + 1}", line.Quantity.Text, line.Origin.ToString())))]),
                new("What leaves", false, [.. batch.Components.SelectMany(component => component.Losses.Select((loss, at) => new RecordRow($"{component.Name}, {loss.Name}, step {loss.Step}, loss {at + 1}", loss.Written, loss.Origin.ToString())))]),
                new("Documents", false, Documents(dessert, panel)),
                new("Contents in 100 g", false, Contents(panel)),
                new("Rules", false, RuleRows(dessert, trial, panel)),
                new("Nutrition panel", true, [.. panel.Lines.Select(line => new RecordRow($"{line.Key}, {line.Unit}, {panel.Basis.Words}", line.Percent is { } percent ? $"{line.Declared}; {percent.Text}" : line.Declared, ""))]),
                new("Figures before rounding", false, [.. panel.Lines.Select(line => new RecordRow($"{line.Key}, {line.Unit}, {panel.Basis.Words}", Number(line.Amount.Known), ""))]),
                new("List of ingredients", true, [new("list", list.Text, ""), new("contains", string.Concat(list.ContainsStatement.Select(run => run.Text)), ""), new("may contain", string.Concat(list.MayContainStatement.Select(run => run.Text)), "")]),
                new("Claims", true, [.. DessertClaims.Asked(dessert, trial, rules).DistinctBy(each => each.Verdict.Asked).Select(each => new RecordRow(each.Verdict.Asked, each.Verdict.IsRefused ? "refused" : each.Verdict.State == ClaimState.NotAClaim ? "no nutrition claim" : "may be made", each.Origin.ToString()))]),
            ],
        };
    }

    /// <summary>What keeps a label from being signed; none where it may be.</summary>
    public static IReadOnlyList<string> Hindrances(Dessert dessert, string trial, string rules, string language) =>
    [
        .. DessertPanels.Of(dessert, trial, rules).DraftReasons,
        .. dessert.IngredientList(trial, rules, language).Problems.Select(problem => problem.ToString()),
        .. DessertClaims.Asked(dessert, trial, rules).Where(each => each.Verdict.IsRefused).Select(each => $"the claim '{each.Verdict.Asked}' is asked for and may not be made ({each.Origin})"),
    ];

    /// <summary>Signs the label of a trial: one file in the folder <c>records</c>, written whole, never over another.</summary>
    /// <returns>The path of the file.</returns>
    /// <exception cref="InvalidOperationException">The label is a draft, or was signed on that day already; the message says what to do.</exception>
    public static string Sign(Dessert dessert, string trial, string rules, string language, string signer, DateOnly on)
    {
        if (string.IsNullOrWhiteSpace(signer)) throw new InvalidOperationException("A record says who signed it: give a name.");
        if (Hindrances(dessert, trial, rules, language) is { Count: > 0 } hindrances)
            throw new InvalidOperationException($"The label of {trial} cannot be signed yet:\n{string.Join('\n', hindrances.Select(hindrance => $"  {hindrance}"))}");
        var record = DrawUp(dessert, trial, rules, language, signer.Trim(), on).Sealed();
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
            ? record.Against(DrawUp(dessert, record.Trial, record.Rules, record.Language, record.Signer, record.SignedOn))
            : [new("Rules", false, "rule set", record.Rules, "", "the kit has no such rule set")];
    }

    private static RecordRow[] Documents(Dessert dessert, NutritionPanel panel) =>
        [.. panel.Mixture.Parts.Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer).Select(ingredient =>
        {
            var documents = dessert.Specifications.Of(ingredient.Name).Where(document => dessert.Store.AsOf is not { } day || document.Date is null || document.Date <= day).ToArray();
            var said = documents.Length > 0 ? documents[^1].InWords : ingredient.Food ?? "neither a food nor a document";
            return new RecordRow(ingredient.Name, $"{said}; allergens: {(ingredient.Allergens is { } known ? known.Count == 0 ? "none" : string.Join(", ", known) : "nobody looked")}{(ingredient.SupplierList is { } list ? $"; {list}" : "")}", ingredient.Origin?.ToString() ?? "");
        })];

    private static RecordRow[] Contents(NutritionPanel panel)
    {
        string[] tags = [.. panel.Rules.Declaration.SelectMany(figure => figure.Summands).SelectMany(summand => summand.Formula.Ways).SelectMany(way => way).Select(term => term.Tag).Distinct().Order(StringComparer.Ordinal)];
        return [.. from ingredient in panel.Mixture.Parts.Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer)
                   where ingredient.Profile is not null
                   from tag in tags
                   let content = ingredient.Profile![tag]
                   where content.IsKnown
                   select new RecordRow($"{ingredient.Name}, {tag}", Number(content.Per100Grams), content.Source?.ToString() ?? "")];
    }

    // The rows that the printed figures were made with; other rows of the folder may come and go.
    private static RecordRow[] RuleRows(Dessert dessert, string trial, NutritionPanel panel) =>
    [
        .. panel.Lines.Where(line => line.Rounded is not null).Select(line => new RecordRow($"rounding of {line.Key}, {line.Unit}", line.Rounded!.Band.InWords, line.Rounded.Band.Origin.ToString())),
        .. panel.Lines.Where(line => line.Reference is not null).Select(line => new RecordRow($"reference value of {line.Key}, {line.Unit}", Number(line.Reference!.Value), line.Reference.Origin.ToString())),
        .. panel.Rules.EnergyFactors.Select(factor => new RecordRow($"energy of {factor.Key}", $"{factor.KilojoulesPerGram?.ToString(CultureInfo.InvariantCulture) ?? "none"} kJ, {factor.KilocaloriesPerGram?.ToString(CultureInfo.InvariantCulture) ?? "none"} kcal a gram", factor.Origin.ToString())),
        .. DessertClaims.Asked(dessert, trial, panel.Rules.Name).DistinctBy(each => each.Verdict.Asked).SelectMany(each => each.Verdict.Conditions.Select((result, at) =>
            new RecordRow($"claim {each.Verdict.Asked}, condition {at + 1}", ClaimCheck.LimitInWords(result.Condition), result.Condition.Origin.ToString()))),
        .. LabelCertainty.Of(panel, claims: DessertPanels.ClaimSubjects(dessert, trial, panel.Rules.Name)).Figures.Where(figure => figure.Tolerance is not null).Select(figure =>
            new RecordRow($"tolerance of {figure.Line.Key}, {figure.Line.Unit}", $"from {Limit(figure.Accepted!.Value.Lowest)} to {Limit(figure.Accepted.Value.Highest)} {figure.Line.Unit}", figure.Tolerance!.Origin.ToString())),
    ];

    private static string Limit(double limit) => double.IsFinite(limit) ? Number(limit) : "any";

    private static string Number(double number) => number.ToString("G10", CultureInfo.InvariantCulture);
}
