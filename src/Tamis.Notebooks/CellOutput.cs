namespace Tamis.Notebooks;

/// <summary>Something that a cell showed.</summary>
public abstract record CellOutput;

/// <summary>Text that a cell wrote to the console.</summary>
/// <param name="Stream"><c>stdout</c> or <c>stderr</c>.</param>
/// <param name="Text">The text as written.</param>
public sealed record StreamOutput(string Stream, string Text) : CellOutput;

/// <summary>A value that a cell displayed, or its last expression.</summary>
/// <param name="Data">The value in each form that it can be shown in, by MIME type; forms in the order of the kernel.</param>
/// <param name="IsResult">Whether it is the cell's last expression rather than something displayed on the way.</param>
public sealed record DisplayOutput(IReadOnlyList<KeyValuePair<string, string>> Data, bool IsResult) : CellOutput
{
    /// <summary>The value in one form, or null where it has none.</summary>
    public string? this[string mimeType] => Data.Where(form => form.Key == mimeType).Select(form => form.Value).FirstOrDefault();
}

/// <summary>What stopped a cell.</summary>
/// <param name="Failure">Where and why.</param>
public sealed record ErrorOutput(CellFailure Failure) : CellOutput;

/// <summary>Why a cell could not be run.</summary>
/// <param name="Cell">The number of the code cell, counted from 1 as a notebook shows it.</param>
/// <param name="Line">The line in the cell, counted from 1; null where it is not known.</param>
/// <param name="Kind">The kind of error, the name of its exception.</param>
/// <param name="Message">What happened, in words; several sentences stand on lines of their own.</param>
public sealed record CellFailure(int Cell, int? Line, string Kind, string Message)
{
    /// <summary>Where it happened: <c>cell 3, line 2</c>.</summary>
    public string Where => Line is { } line ? $"cell {Cell}, line {line}" : $"cell {Cell}";
}
