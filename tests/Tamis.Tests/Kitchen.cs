using System.Text;
using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Tables;
using Tamis.Trials;

namespace Tamis.Tests;

/// <summary>Small kitchens for tests: sheets from text, batches from sheets.</summary>
internal static class Kitchen
{
    public static readonly NutrientList Nutrients = new([new("WATER", "water", "g"), new("FAT", "fat", "g"), new("SUGAR", "sugars", "g")]);

    public static Sheet Sheet(string file, string text) => SheetFile.Parse(file, Encoding.UTF8.GetBytes(text));

    public static IngredientList Store { get; } = new(
    [
        Known("flour", 12, 1, 0.5), Known("butter", 16, 82, 0.5), Known("sugar", 0, 0, 100), Known("water", 100, 0, 0),
        Known("milk", 88, 3.5, 5), Known("leaf", 60, 2, 1),
        Known("egg yolk", 52, 27, 0.5) with { Piece = "yolk", PieceGrams = 17.4 },
        Known("egg", 76, 9.5, 0.4) with { Piece = "egg", PieceGrams = 58, EdiblePercent = 88 },
        Known("syrup", 20, 0, 60) with { DensityGramsPerMillilitre = 1.42 },
        new() { Name = "powder" },
    ]);

    public static Ingredient Known(string name, double water, double fat, double sugar) => new()
    {
        Name = name,
        Profile = new(name, Nutrients, [Content(water), Content(fat), Content(sugar)]),
    };

    public static IReadOnlyList<Formula> Formulas(string formula, string? trials = null)
    {
        List<CellProblem> problems = [];
        var log = trials is null ? null : TrialLog.Read(Sheet("trials.csv", trials), problems);
        var formulas = FormulaSheet.Read(Sheet("formula.csv", formula), log?.Lineage, problems);
        return problems.Count == 0 ? formulas : throw new TableException(problems);
    }

    public static Batch Batch(string formula, string trial = "T1", string? trials = null)
    {
        List<CellProblem> problems = [];
        var batch = Tamis.Losses.Batch.Of(Formulas(formula, trials).Single(each => each.Trial == trial), Store, problems);
        return problems.Count == 0 ? batch : throw new TableException(problems);
    }

    public static IReadOnlyList<CellProblem> ProblemsOf(Action read) => Assert.Throws<TableException>(read).Problems;

    private static Content Content(double per100Grams) =>
        new(ContentState.Measured, per100Grams, null, new("a test", Evidence.Estimate));
}
