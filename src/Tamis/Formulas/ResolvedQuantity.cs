namespace Tamis.Formulas;

/// <summary>What a written quantity weighs.</summary>
/// <param name="MassGrams">The mass that is reckoned with, in grams; the middle of a written range.</param>
/// <param name="RangeGrams">The range that was written or assumed, in grams; a point where there is none.</param>
/// <param name="Assumption">What was assumed on the way from the words to the mass; empty where it was weighed.</param>
public sealed record ResolvedQuantity(double MassGrams, Interval RangeGrams, string Assumption);

/// <summary>Why a written quantity has no mass.</summary>
/// <param name="IsMistake">Whether the sheet must be mended; else a figure is merely unknown, which is a gap and no error.</param>
/// <param name="Reason">What is missing, or what was expected.</param>
public sealed record QuantityGap(bool IsMistake, string Reason);
