using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The nutrition panel of a trial, on the basis that each law asks for, and its figures as data.</summary>
public static class DessertPanels
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, PropertyNamingPolicy = JsonNamingPolicy.CamelCase, NewLine = "\n" };

    /// <summary>The panel of all that is put together in a trial: per serving where the law wants that and the kitchen names a portion, otherwise per 100 g.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known.</exception>
    public static NutritionPanel Of(Dessert dessert, string trial, string rules)
    {
        var set = KitData.Rules(rules);
        var whole = dessert.Trial(trial).Whole is { FinishedGrams: > 0 } made ? made : throw new TableException(dessert.Trial(trial).Gaps);
        return NutritionPanel.Of(whole, set, set.IsPerServing && dessert.Facts.Number("portion_g", trial) is { } portion ? PanelBasis.Serving(portion) : PanelBasis.Per100Grams, set.InForce.To);
    }

    /// <summary>How sure the panel of a trial is, with what <c>dessert.csv</c> says of how the kitchen varies (<c>weighing_g</c>, <c>drying_percent</c>, <c>left_behind_percent</c>).</summary>
    public static LabelCertainty CertaintyOf(Dessert dessert, string trial, string rules) => LabelCertainty.Of(Of(dessert, trial, rules), VariationOf(dessert, trial));

    /// <summary>How the kitchen varies, as <c>dessert.csv</c> has it.</summary>
    public static KitchenVariation VariationOf(Dessert dessert, string trial) =>
        new(dessert.Facts.Number("weighing_g", trial) ?? 0, dessert.Facts.Number("drying_percent", trial) ?? 0, dessert.Facts.Number("left_behind_percent", trial) ?? 0);

    /// <summary>Every figure of a panel as a row: raw, rounded, on which rule.</summary>
    public static IReadOnlyList<ExportedFigure> Export(Dessert dessert, string trial, string rules)
    {
        var panel = Of(dessert, trial, rules);
        return [.. panel.Lines.Select(line => new ExportedFigure(dessert.Name, dessert.Trial(trial).Trial, panel.Rules.Name, panel.Basis.Words, line.Key, line.Term, line.Unit,
            Raw(line.Amount.Known), Raw(line.Amount.CoveredShare * 100), line.Range is { } range ? Raw(range.Low) : null, line.Range is { } same ? Raw(same.High) : null,
            line.Declared, line.Alternatives, line.Percent?.Text ?? "", line.Rounded?.Band.InWords ?? "", line.Rounded?.Band.Origin.Source.ToString() ?? "", line.Rounded?.Band.Origin.StrengthInWords ?? "", panel.IsDraft))];
    }

    /// <summary>Figures as JSON.</summary>
    public static string ToJson(IReadOnlyList<ExportedFigure> figures) => JsonSerializer.Serialize(figures, Options) + "\n";

    /// <summary>Figures as a table for a spreadsheet.</summary>
    public static (IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows) ToTable(IReadOnlyList<ExportedFigure> figures) =>
    (
        ["product", "trial", "rules", "basis", "figure", "term", "unit", "amount", "known_percent", "low", "high", "declared", "also_lawful", "percent", "rounding", "source", "strength", "draft"],
        [.. figures.Select(figure => (IReadOnlyList<string>)[figure.Product, figure.Trial, figure.Rules, figure.Basis, figure.Figure, figure.Term, figure.Unit, Written(figure.Amount), Written(figure.KnownPercent), Written(figure.Low), Written(figure.High),
            figure.Declared, string.Join("; ", figure.AlsoLawful), figure.Percent, figure.Rounding, figure.Source, figure.Strength, figure.IsDraft ? "yes" : "no"])]
    );

    // Ten figures are more than any food table bears and hide the last bits of a sum.
    private static double Raw(double number) => double.Parse(number.ToString("G10", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Written(double? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";
}

/// <summary>A figure of a panel as data.</summary>
/// <param name="Product">The product.</param>
/// <param name="Trial">The trial.</param>
/// <param name="Rules">The rule set.</param>
/// <param name="Basis">How much the figure speaks of.</param>
/// <param name="Figure">The figure, by its key.</param>
/// <param name="Term">The words of the law.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Amount">The amount before rounding; a lower bound where it is not known for all of the mass.</param>
/// <param name="KnownPercent">For how much of the mass it is known.</param>
/// <param name="Low">The lower end of its range; null where the data give none.</param>
/// <param name="High">The upper end.</param>
/// <param name="Declared">What is printed.</param>
/// <param name="AlsoLawful">Other texts that are as lawful.</param>
/// <param name="Percent">The percentage of the reference value as printed; empty where there is none.</param>
/// <param name="Rounding">The rounding rule in words.</param>
/// <param name="Source">The article of the rule.</param>
/// <param name="Strength">What stands behind it: law, guidance, convention.</param>
/// <param name="IsDraft">Whether the panel may not yet go on a pack.</param>
public sealed record ExportedFigure(string Product, string Trial, string Rules, string Basis, string Figure, string Term, string Unit, double Amount, double KnownPercent, double? Low, double? High,
    string Declared, IReadOnlyList<string> AlsoLawful, string Percent, string Rounding, string Source, string Strength, bool IsDraft);
