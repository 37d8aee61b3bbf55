using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The figures of a panel and their working as data: for a spreadsheet and as JSON.</summary>
public static class PanelExport
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, PropertyNamingPolicy = JsonNamingPolicy.CamelCase, NewLine = "\n" };

    /// <summary>Every figure of every column of a panel: raw, rounded, how sure, on which rule, and whether the short panel leaves it off.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known, or a cell of <c>dessert.csv</c> asks for what there is not.</exception>
    public static IReadOnlyList<ExportedFigure> Figures(Dessert dessert, string trial, string rules)
    {
        var (variation, subjects) = (KitchenVariations.Of(dessert, trial), DessertPanels.ClaimSubjects(dessert, trial, rules));
        var leftOff = DessertPanels.LeftOffOf(dessert, trial, rules);
        var columns = DessertPanels.ColumnsOf(dessert, trial, rules);
        var serving = DessertPanels.ServingOf(dessert, trial, columns.Columns[0].Rules)?.Lines ?? [];
        return [.. columns.Columns.SelectMany(panel => FiguresOf(dessert, trial, panel, LabelCertainty.Of(panel, variation, subjects), leftOff, columns.IsDraftIn(panel))).Select(figure => figure with { Serving = serving })];
    }

    private static IReadOnlyList<ExportedFigure> FiguresOf(Dessert dessert, string trial, NutritionPanel panel, LabelCertainty sureOf, ShortPanel? leftOff, bool isDraft)
    {
        var statements = leftOff is null ? "" : string.Join(" / ", leftOff.Languages.Select(leftOff.StatementIn).OfType<string>());
        var certainty = sureOf.Figures.ToDictionary(figure => figure.Line);
        return [.. panel.Lines.Select(line =>
        {
            var band = line.Rounded?.Band;
            var shortened = leftOff?.LeftOff.FirstOrDefault(row => Names.Same(row.Figure, line.Key));
            var sure = certainty.GetValueOrDefault(line);
            return new ExportedFigure
            {
                Product = dessert.Name, Trial = dessert.Trial(trial).Trial, Rules = panel.Rules.Name, RulesDay = panel.AsOf, Basis = panel.Basis.Words, Serving = [], Figure = line.Key, Term = line.Term, Unit = line.Unit,
                Amount = Raw(line.Amount.Known), KnownPercent = Raw(line.Amount.CoveredShare * 100), Low = Raw(line.Range?.Low), High = Raw(line.Range?.High),
                Declared = line.Printed, Rounded = line.Rounded?.Number, AlsoLawful = line.Alternatives,
                ReferenceValue = line.Reference?.Value, ReferencePercent = line.Reference is { } reference && line.Value is { } value ? Raw(value / reference.Value * 100) : null,
                Percent = line.Percent?.Text ?? "", ReferenceSource = line.Reference?.Origin.ToString() ?? "",
                Rounding = band?.InWords ?? "", Source = band?.Origin.Source.ToString() ?? "", Strength = band?.Origin.StrengthInWords ?? "",
                AcceptedLow = Limit(sure?.Accepted?.Lowest), AcceptedHigh = Limit(sure?.Accepted?.Highest), OutsidePercent = sure is { IsRangeKnown: true } ? Raw(sure.OutsideProbability * 100) : null, SampleOutsidePercent = sure is { IsRangeKnown: true } ? Raw(sure.SampleProbability * 100) : null,
                ToleranceSource = sure?.Tolerance?.Origin.ToString() ?? "", AnalyseFirst = sure?.Shares.Count > 0 ? sure.Shares[0].Ingredient : "",
                IsLeftOff = shortened is not null, InItsPlace = shortened is null ? "" : statements, LeftOffSource = shortened?.Origin.ToString() ?? "", IsDraft = isDraft,
            };
        })];
    }

    /// <summary>The working of every figure, a row for each content of each line; their sum is the figure in the whole mixture.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known.</exception>
    public static IReadOnlyList<ExportedWorking> Working(Dessert dessert, string trial, string rules)
    {
        var panel = DessertPanels.Of(dessert, trial, rules);
        return [.. panel.Lines.Select(FigureLedger.Of).SelectMany(ledger => ledger.Lines.Select(line => new ExportedWorking(dessert.Name, dessert.Trial(trial).Trial, panel.Rules.Name, panel.AsOf, ledger.Line.Key, ledger.Line.Unit, line.Ingredient, line.Weighed.ToString(),
            Raw(line.MassGrams), line.Content, Raw(line.Per100Grams), line.Unit, line.Source?.ToString() ?? "", Raw(line.Factor), line.FactorSource.ToString(), Raw(line.Gives), Raw(panel.Mixture.FinishedGrams), Raw(panel.BasisGrams))))];
    }

    /// <summary>Rows as JSON.</summary>
    public static string ToJson<T>(IReadOnlyList<T> rows) => JsonSerializer.Serialize(rows, Options) + "\n";

    /// <summary>Rows as a table for a spreadsheet: a column for each figure of a row, by its name in small letters.</summary>
    public static (IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows) ToTable<T>(IReadOnlyList<T> rows)
    {
        var properties = typeof(T).GetProperties();
        return ([.. properties.Select(property => JsonNamingPolicy.SnakeCaseLower.ConvertName(property.Name))],
            [.. rows.Select(row => (IReadOnlyList<string>)[.. properties.Select(property => Written(property.GetValue(row)))])]);
    }

    private static string Written(object? value) => value switch
    {
        null => "",
        bool yes => yes ? "yes" : "no",
        DateOnly day => day.ToString(LabelAsked.DayFormat, CultureInfo.InvariantCulture),
        IEnumerable<string> words => string.Join("; ", words),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    private static double? Limit(double? limit) => limit is { } number && double.IsFinite(number) ? Raw(number) : null;

    private static double? Raw(double? number) => number is { } known ? Raw(known) : null;

    // Ten figures are more than any food table bears and hide the last bits of a sum; a zero has no sign.
    private static double Raw(double number) => double.Parse(number.ToString("G10", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + 0.0;
}
