using Tamis.Formulas;

namespace Tamis.Labels;

/// <summary>Formulas that lie one after another, for panels by the thousand.</summary>
/// <param name="Ingredients">What they are made of.</param>
/// <param name="Starts">Where the lines of each formula start; one more entry closes the last.</param>
/// <param name="Rows">The ingredient of each line, by its place in <paramref name="Ingredients"/>.</param>
/// <param name="MassGrams">The mass of each line, in grams.</param>
/// <param name="WaterLostGrams">The water that left each formula, in grams; less than was weighed in.</param>
public sealed record ManyFormulas(IReadOnlyList<Ingredient> Ingredients, int[] Starts, int[] Rows, double[] MassGrams, double[] WaterLostGrams)
{
    /// <summary>How many there are.</summary>
    public int Count => Starts.Length - 1;
}

/// <summary>Room for the panels of a block of formulas, used again for every block.</summary>
/// <remarks>Figure f of the block's formula i stands at <c>i × <see cref="ManyPanels.Stride"/> + f</c>.</remarks>
public sealed class PanelRoom
{
    internal PanelRoom(int formulas, int stride)
    {
        Stride = stride;
        (Amounts, CoveredGrams, TotalGrams, IsExact) = (new double[formulas * stride], new double[formulas * stride], new double[formulas], new bool[formulas]);
        (Steps, Shares) = (new PrintedStep?[formulas * stride], new PrintedStep?[formulas * stride]);
    }

    /// <summary>The amounts in what the panel speaks of, not rounded; a lower bound where an ingredient is unknown.</summary>
    public double[] Amounts { get; }

    /// <summary>For how many grams of what was weighed in each is known.</summary>
    public double[] CoveredGrams { get; }

    /// <summary>What was weighed in, a formula each.</summary>
    public double[] TotalGrams { get; }

    /// <summary>Whether a panel was drawn up by itself, because an amount lay at a tie or at the limit of a condition.</summary>
    public bool[] IsExact { get; }

    internal int Stride { get; }

    internal PrintedStep?[] Steps { get; }

    internal PrintedStep?[] Shares { get; }

    /// <summary>What is printed; null where the figure is not known well enough, or is not shown.</summary>
    public string? Declared(int at) => Steps[at]?.Text;

    /// <summary>The printed percentage of the reference value; null where there is none.</summary>
    public string? Percent(int at) => Steps[at] is { } step ? step.Percent ?? Shares[at]?.Text : null;
}
