using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Production;

/// <summary>A line as it is weighed for one make.</summary>
/// <param name="Line">The line of the formula.</param>
/// <param name="ExactGrams">What the sum asks for, edible part.</param>
/// <param name="WeighedGrams">What a scale of the kitchen can show of it.</param>
/// <param name="Count">How many pieces that is, where the cook counts them; null where they are weighed.</param>
public sealed record WeighedAmount(BatchLine Line, double ExactGrams, double WeighedGrams, double? Count);

/// <summary>How much of one component is made, and where it goes.</summary>
public sealed record ComponentAmount
{
    /// <summary>The component as the formula has it.</summary>
    public required ComponentBatch Formula { get; init; }

    /// <summary>Its name.</summary>
    public string Name => Formula.Name;

    /// <summary>How many times the formula it is, all makes together; 0 where none is made.</summary>
    public required double FactorRatio { get; init; }

    /// <summary>In how many makes, each as large as the others.</summary>
    public required int Makes { get; init; }

    /// <summary>What is there already.</summary>
    public double HaveGrams { get; init; }

    /// <summary>What is made, finished, by the written losses.</summary>
    public double MadeGrams => Formula.YieldGrams * FactorRatio;

    /// <summary>What stands in the pieces.</summary>
    public required double InPiecesGrams { get; init; }

    /// <summary>What other components take in.</summary>
    public required double InOthersGrams { get; init; }

    /// <summary>What is made as the chosen reserve for the pieces.</summary>
    public required double ReserveGrams { get; init; }

    /// <summary>What is left over when all goes as written, the reserve with it.</summary>
    public double LeftGrams => Math.Max(0, HaveGrams + MadeGrams - InPiecesGrams - InOthersGrams);

    /// <summary>Why more is made than is needed: a blade, a bowl, a whole egg. Null where nothing asks for more.</summary>
    public string? WhyMore { get; init; }

    /// <summary>Where <see cref="WhyMore"/> or several makes come from.</summary>
    public Source? WhyOrigin { get; init; }

    /// <summary>Why it takes several makes; null for one.</summary>
    public string? WhySeveral { get; init; }

    /// <summary>What is weighed for one make.</summary>
    public required IReadOnlyList<WeighedAmount> Weighed { get; init; }

    /// <summary>What leaves in all makes together, as the formula names it.</summary>
    public IReadOnlyList<(Loss Loss, double Grams)> Leaves => [.. Formula.Losses.Select(loss => (loss, loss.MassGrams * FactorRatio))];
}

/// <summary>An ingredient over all components.</summary>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="WeighedGrams">What is weighed of it, edible part.</param>
/// <param name="Pieces">How many whole pieces that takes; null where it is weighed only.</param>
/// <param name="Piece">The word for one.</param>
/// <param name="BoughtGrams">What that is as bought: whole pieces, with shell and peel.</param>
public sealed record NeededIngredient(Ingredient Ingredient, double WeighedGrams, int? Pieces, string? Piece, double BoughtGrams)
{
    /// <summary>Shell, peel and the like.</summary>
    public double NotEdibleGrams => BoughtGrams * (1 - Ingredient.EdiblePercent / 100);

    /// <summary>What is left of the last whole piece, edible part.</summary>
    public double LeftOfPieceGrams => BoughtGrams - NotEdibleGrams - WeighedGrams;
}

/// <summary>The way of all mass from purchase to plate and bin, in grams.</summary>
/// <param name="Bought">All that is bought.</param>
/// <param name="Had">Components that were there already.</param>
/// <param name="NotEdible">Shell and peel.</param>
/// <param name="LeftOfPieces">What is left of whole pieces.</param>
/// <param name="Lost">What leaves on the way, by its word.</param>
/// <param name="Left">Finished components that are left over.</param>
/// <param name="InPieces">What stands in the pieces.</param>
/// <param name="Rounding">What the scales' steps add or take.</param>
public sealed record MassAccount(double Bought, double Had, double NotEdible, double LeftOfPieces, IReadOnlyList<(string Name, double Grams)> Lost, double Left, double InPieces, double Rounding)
{
    /// <summary>What comes in less what is accounted for; 0 but for the last digits.</summary>
    public double UnaccountedGrams => Bought + Had - NotEdible - LeftOfPieces - Lost.Sum(loss => loss.Grams) - Left - InPieces - Rounding;
}
