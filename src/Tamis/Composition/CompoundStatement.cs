namespace Tamis.Composition;

/// <summary>What is said of a food as an ingredient: that it is a single food, or a compound, which has ingredients of its own.</summary>
/// <param name="IsCompound">Whether it is a compound.</param>
/// <param name="Kind">What rules of lists call it (<c>dark chocolate</c>); empty where none needs a word for it.</param>
/// <param name="ConsistsOf">What a compound of its kind is mostly made of, in words; it tells a reader what to ask for and is never printed on a label. Empty for a single food.</param>
/// <param name="Source">Where this comes from.</param>
public sealed record CompoundStatement(bool IsCompound, string Kind, string ConsistsOf, Source Source);
