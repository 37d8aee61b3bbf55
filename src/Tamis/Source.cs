namespace Tamis;

/// <summary>How much weight a source can bear, best first.</summary>
public enum Evidence
{
    /// <summary>A legal text.</summary>
    Law,
    /// <summary>A certified reference value.</summary>
    Certified,
    /// <summary>A published table, handbook or dataset.</summary>
    Published,
    /// <summary>Official guidance without legal force.</summary>
    Guidance,
    /// <summary>A supplier's document or a pack label.</summary>
    Supplier,
    /// <summary>Worked out from other values by a stated method.</summary>
    Computed,
    /// <summary>What was written in one of the kitchen's own sheets.</summary>
    Sheet,
    /// <summary>An estimate whose method is stated.</summary>
    Estimate,
    /// <summary>Common practice of the trade, no source.</summary>
    Practice,
    /// <summary>From memory, no text at hand.</summary>
    Memory,
}

/// <summary>Where a figure came from.</summary>
/// <param name="Key">What it is: a publication, an act, a document, a sheet. Never empty.</param>
/// <param name="Evidence">What weight it can bear.</param>
/// <param name="Locator">Where in it: an article, a food number, a row and column. May be empty.</param>
public sealed record Source(string Key, Evidence Evidence, string Locator = "")
{
    /// <summary>What it is: a publication, an act, a document, a sheet.</summary>
    public string Key { get; } = string.IsNullOrWhiteSpace(Key)
        ? throw new ArgumentException("A source has a name; write where the figure came from, or that it is from memory.", nameof(Key))
        : Key;

    /// <summary>The source as a reader reads it.</summary>
    public override string ToString() => Locator.Length == 0 ? Key : $"{Key}, {Locator}";
}
