namespace Tamis.Tables;

/// <summary>What is said about a file beforehand, in place of what its own cells would tell.</summary>
/// <param name="DecimalMark">Point or comma; null = decided from the file.</param>
/// <param name="DateOrder">How dates stand; null = decided from the file.</param>
public sealed record SheetSettings(char? DecimalMark = null, DateOrder? DateOrder = null);
