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

    /// <summary>Whether it speaks of one dessert or lesson by its own names, so that another folder cannot take its place: <c>"tamis": { "dessert": "its own" }</c>.</summary>
    public bool IsOfItsOwnDessert => Said("dessert") == "its own";

    /// <summary>Whom it is written for: <c>"tamis": { "reader": "chef" }</c> in its metadata.</summary>
    public Reader Reader => Enum.TryParse<Reader>(Said("reader"), ignoreCase: true, out var reader) ? reader : Reader.Chef;

    /// <summary>The first heading of its text, or its name where it has none.</summary>
    public string Title => TextLines.Where(line => line.StartsWith("# ", StringComparison.Ordinal)).Select(line => line[2..].Trim()).FirstOrDefault(Name);

    /// <summary>The word by which other pages link to it: <c>"short"</c> under <c>"tamis"</c>, or its title.</summary>
    public string ShortTitle => Said("short") ?? Title;

    /// <summary>What it answers, in one sentence: <c>"about"</c> under <c>"tamis"</c>, or the first line of text under its title.</summary>
    public string About => Said("about") ?? TextLines.Select(line => line.Trim()).FirstOrDefault(line => line.Length > 0 && line[0] != '#', "");

    /// <summary>Whether its page is for paper first, over the whole width: <c>"sheet": true</c> under <c>"tamis"</c>.</summary>
    public bool IsSheet => Metadata["tamis"] is JsonObject tamis && tamis["sheet"] is JsonValue value && value.TryGetValue<bool>(out var isSheet) && isSheet;

    private IEnumerable<string> TextLines => Cells.Where(cell => !cell.IsCode).SelectMany(cell => cell.Text.Split('\n'));

    private string? Said(string key) => Metadata["tamis"] is JsonObject tamis && tamis[key] is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
