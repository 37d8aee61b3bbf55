using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Losses;

/// <summary>One trial as it is made on the bench: every component with its masses, losses and what it is made of.</summary>
public sealed class Batch
{
    private readonly Dictionary<string, ComponentBatch> _byName;

    internal Batch(Formula formula, IReadOnlyList<ComponentBatch> components, IReadOnlyList<CellProblem> gaps)
    {
        Formula = formula;
        Components = components;
        Gaps = gaps;
        _byName = components.ToDictionary(component => component.Name, Names.Comparer);
    }

    /// <summary>The formula that was made.</summary>
    public Formula Formula { get; }

    /// <summary>The trial's name.</summary>
    public string Trial => Formula.Trial;

    /// <summary>The components whose masses are known, in the order of the sheet.</summary>
    public IReadOnlyList<ComponentBatch> Components { get; }

    /// <summary>What is missing to know the rest: a piece mass, a density. Such a component is left out, never taken as nothing.</summary>
    public IReadOnlyList<CellProblem> Gaps { get; }

    /// <summary>A component of the batch, or null where it has none or its masses are not known.</summary>
    public ComponentBatch? Find(string component) => _byName.GetValueOrDefault(component);

    /// <summary>The components that are put together in the end, not taken in by another.</summary>
    public IReadOnlyList<ComponentBatch> Placed => [.. Formula.Placed.Select(component => Find(component.Name)).OfType<ComponentBatch>()];

    /// <summary>All that is put together, if the masses of every component are known; else null.</summary>
    public Mixture? Whole => Formula.Placed.All(component => Find(component.Name) is not null)
        ? Mixture.Of(Placed.Select(component => component.Out))
        : null;

    /// <summary>How much of a component the others take in, in grams.</summary>
    public double UsedGrams(string component) =>
        Components.SelectMany(each => each.Lines).Where(line => line.IsComponent && Names.Same(line.Name, component)).Sum(line => line.MassGrams);

    /// <summary>Works out a formula: quantities to grams, losses step by step, components inside components.</summary>
    /// <param name="formula">The formula, free of cycles.</param>
    /// <param name="ingredients">The store's ingredients.</param>
    /// <param name="problems">Receives cells that must be mended: a word that is not the ingredient's piece, a loss from a line that is not there.</param>
    public static Batch Of(Formula formula, IngredientList ingredients, List<CellProblem> problems) => new Bench(formula, ingredients, problems).Make();

    /// <summary>The same batch made <paramref name="factor"/> times as large.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not a number above zero.</exception>
    public Batch Scaled(double factor)
    {
        if (!double.IsFinite(factor) || factor <= 0)
            throw new ArgumentOutOfRangeException(nameof(factor), factor, "Scale by a number above zero.");
        return new(Formula, [.. Components.Select(component => component with
        {
            Lines = [.. component.Lines.Select(line => line with { MassGrams = line.MassGrams * factor, RangeGrams = line.RangeGrams * factor })],
            Losses = [.. component.Losses.Select(loss => loss with { MassGrams = loss.MassGrams * factor })],
            In = component.In.Scaled(factor),
            Out = component.Out.Scaled(factor),
            WeighedYieldGrams = null,
            WeighedYieldOrigin = null,
        })], Gaps);
    }
}
