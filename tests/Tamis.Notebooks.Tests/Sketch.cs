namespace Tamis.Notebooks.Tests;

/// <summary>Small notebooks for tests, made in memory or written to a folder that goes away.</summary>
internal static class Sketch
{
    /// <summary>A notebook of cells: text that begins with <c>#</c> and a blank, or with <c>&gt;</c>, is Markdown, all else code.</summary>
    public static NotebookFile Notebook(params string[] cells) => new()
    {
        Name = "sketch",
        Folder = AppContext.BaseDirectory,
        Cells = [.. cells.Select((text, index) => new NotebookCell
        {
            Id = $"c{index + 1}",
            IsCode = !text.StartsWith("# ", StringComparison.Ordinal) && !text.StartsWith('>'),
            Text = text,
        })],
    };

    /// <summary>Everything that a notebook's cells wrote or returned as plain text.</summary>
    public static string PlainText(NotebookRun run) => string.Join('|', run.Notebook.Cells.SelectMany(cell => cell.Outputs).Select(output => output switch
    {
        StreamOutput stream => stream.Text.TrimEnd(),
        DisplayOutput display => display["text/plain"] ?? display["text/html"],
        ErrorOutput { Failure: var failure } => failure.Where,
        _ => "?",
    }));
}

/// <summary>A folder for one test, removed afterwards.</summary>
internal sealed class ScratchFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("tamis-test-").FullName;

    public string Write(string name, string text)
    {
        var path = System.IO.Path.Combine(Path, name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
