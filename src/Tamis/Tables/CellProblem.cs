namespace Tamis.Tables;

/// <summary>One thing in a sheet that a cook must mend.</summary>
/// <param name="File">The file's name, without its folder.</param>
/// <param name="Row">The row as the spreadsheet counts it (the header is 1); 0 where the whole file is meant.</param>
/// <param name="Column">The column's name, empty where the whole row or file is meant.</param>
/// <param name="Found">The text that was found.</param>
/// <param name="Expected">What was expected, in words that say what to do.</param>
public sealed record CellProblem(string File, int Row, string Column, string Found, string Expected)
{
    /// <summary>The sentence that says what to fix.</summary>
    public override string ToString() => (Row, Column) switch
    {
        (0, "") => $"{File}: {Expected}{End}",
        (0, _) => $"{File}, column '{Column}': {Expected}{End}",
        (_, "") => $"{File}, row {Row}: found '{Found}', expected {Expected}{End}",
        _ => $"{File}, row {Row}, column '{Column}': found '{Found}', expected {Expected}{End}",
    };

    // What ends in a question, or in a list that goes on, has its mark already.
    private string End => Expected.EndsWith('?') || Expected.EndsWith('…') ? "" : ".";
}

/// <summary>A sheet that cannot be used, with everything in it that must be mended.</summary>
public sealed class TableException : FormatException
{
    /// <summary>Gathers all problems of one or more sheets.</summary>
    public TableException(IReadOnlyList<CellProblem> problems)
        : base(string.Join('\n', problems)) => Problems = problems;

    /// <summary>Everything that must be mended, in the order of the sheet.</summary>
    public IReadOnlyList<CellProblem> Problems { get; }

    /// <summary>The sheet as far as it can be read, so that whoever reads it can name everything else that is wrong in it; null where nothing of it can.</summary>
    internal Sheet? Readable { get; init; }
}
