namespace Tamis.Labels;

/// <summary>A range of numbers with its ends in or out; <c>default</c> takes nothing below or at 0.</summary>
/// <param name="From">The lower end.</param>
/// <param name="IncludesFrom">Whether it belongs to the range.</param>
/// <param name="To">The upper end; null where there is none.</param>
/// <param name="IncludesTo">Whether it belongs to the range.</param>
public readonly record struct FigureBand(decimal From, bool IncludesFrom, decimal? To, bool IncludesTo)
{
    /// <summary>Whether the range takes an amount.</summary>
    public bool Takes(decimal amount) => (amount > From || IncludesFrom && amount == From) && (To is not { } to || amount < to || IncludesTo && amount == to);
}
