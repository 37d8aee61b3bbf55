namespace Tamis.Notebooks;

/// <summary>Runs the cells of one notebook, one after another, each seeing what the earlier ones defined.</summary>
/// <remarks>The seam behind which the kernel stands: nothing but an implementation of it names a kernel's types.</remarks>
public interface ICellRunner : IDisposable
{
    /// <summary>Runs one cell and returns what it showed; a failing cell ends its outputs with an <see cref="ErrorOutput"/>.</summary>
    /// <param name="code">The text of the cell.</param>
    /// <param name="cell">The number of the code cell, counted from 1.</param>
    /// <param name="cancel">Asks the cell to stop.</param>
    Task<IReadOnlyList<CellOutput>> RunAsync(string code, int cell, CancellationToken cancel);
}
