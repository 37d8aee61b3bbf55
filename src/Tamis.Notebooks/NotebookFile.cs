using System.Text.Json.Nodes;

namespace Tamis.Notebooks;

/// <summary>Whom a notebook is written for; it decides whether a page folds its code away.</summary>
public enum Reader
{
    /// <summary>Who develops the dessert. The default.</summary>
    Chef,
    /// <summary>Who answers for the pack.</summary>
    Labeller,
    /// <summary>Who teaches why it works; reads the code too.</summary>
    Teacher,
}

/// <summary>A cell of a notebook.</summary>
public sealed record NotebookCell
{
    /// <summary>The cell's name within its notebook.</summary>
    public required string Id { get; init; }

    /// <summary>Whether the cell is code; otherwise it is text in Markdown.</summary>
    public required bool IsCode { get; init; }

    /// <summary>The text of the cell, lines parted by LF.</summary>
    public required string Text { get; init; }

    /// <summary>What the cell showed when it last ran.</summary>
    public IReadOnlyList<CellOutput> Outputs { get; init; } = [];

    /// <summary>The number under which it ran, counted from 1; null where it has not run.</summary>
    public int? Number { get; init; }
}

/// <summary>A notebook: text and code in order, with what the code showed.</summary>
public sealed record NotebookFile
{
    /// <summary>The file's name without folder and ending.</summary>
    public required string Name { get; init; }

    /// <summary>The folder that it stands in; relative paths in its cells start here.</summary>
    public required string Folder { get; init; }

    /// <summary>The cells in order.</summary>
    public required IReadOnlyList<NotebookCell> Cells { get; init; }

    /// <summary>The notebook's own metadata, as the file had it.</summary>
    public JsonObject Metadata { get; init; } = [];

    /// <summary>Whom it is written for: <c>"tamis": { "reader": "chef" }</c> in its metadata.</summary>
    public Reader Reader => (string?)Metadata["tamis"]?["reader"] is { } word && Enum.TryParse<Reader>(word, ignoreCase: true, out var reader) ? reader : Reader.Chef;

    /// <summary>The first heading of its text, or its name where it has none.</summary>
    public string Title => Cells.Where(cell => !cell.IsCode)
        .SelectMany(cell => cell.Text.Split('\n'))
        .Where(line => line.StartsWith("# ", StringComparison.Ordinal))
        .Select(line => line[2..].Trim())
        .FirstOrDefault(Name);
}
