using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Tamis.Notebooks;

/// <summary>Reads and writes notebooks in the open Jupyter format, nbformat 4.5.</summary>
/// <remarks>The format: nbformat.readthedocs.io, "The Notebook file format", version 4.5.</remarks>
public static class NotebookFormat
{
    private static readonly JsonSerializerOptions Json = new()
    {
        WriteIndented = true,
        IndentSize = 1,
        NewLine = "\n",
        // Notebooks are read and compared as text: an é stays an é.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Reads a notebook; outputs of an earlier run are left behind.</summary>
    /// <exception cref="FormatException">The file is not a notebook of nbformat 4.</exception>
    public static NotebookFile Load(string path)
    {
        var name = Path.GetFileName(path);
        try
        {
            var root = JsonNode.Parse(File.ReadAllText(path)) as JsonObject;
            if ((int?)root?["nbformat"] is not 4 || root["cells"] is not JsonArray cells)
                throw new FormatException($"{name} is not a notebook of nbformat 4; save it again from Jupyter.");
            return new()
            {
                Name = Path.GetFileNameWithoutExtension(path),
                Folder = Path.GetDirectoryName(Path.GetFullPath(path))!,
                Cells = [.. cells.OfType<JsonObject>().Select((cell, index) => Cell(cell, index, name))],
                Metadata = root["metadata"]?.DeepClone() as JsonObject ?? [],
            };
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException)
        {
            throw new FormatException($"{name} cannot be read as a notebook: {problem.Message}", problem);
        }
    }

    /// <summary>The text of a notebook file; the same notebook gives the same text.</summary>
    public static string ToText(NotebookFile notebook)
    {
        var metadata = (JsonObject)notebook.Metadata.DeepClone();
        metadata["kernelspec"] ??= new JsonObject { ["display_name"] = ".NET (C#)", ["language"] = "C#", ["name"] = ".net-csharp" };
        metadata["language_info"] ??= new JsonObject { ["name"] = "csharp" };
        var root = new JsonObject
        {
            ["cells"] = new JsonArray([.. notebook.Cells.Select(ToJson)]),
            ["metadata"] = metadata,
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
        };
        return root.ToJsonString(Json) + "\n";
    }

    private static NotebookCell Cell(JsonObject cell, int index, string name) => new()
    {
        // Cell ids came with 4.5; older files get the same ones on every reading.
        Id = (string?)cell["id"] ?? $"cell-{index + 1}",
        IsCode = (string?)cell["cell_type"] switch
        {
            "code" => true,
            "markdown" => false,
            var other => throw new FormatException($"{name}, cell {index + 1} in the file: found the type '{other}', expected code or markdown."),
        },
        Text = (cell["source"] switch
        {
            JsonArray lines => string.Concat(lines.Select(line => (string?)line)),
            var text => (string?)text ?? "",
        }).ReplaceLineEndings("\n"),
    };

    private static JsonObject ToJson(NotebookCell cell)
    {
        var json = new JsonObject { ["cell_type"] = cell.IsCode ? "code" : "markdown" };
        if (cell.IsCode) json["execution_count"] = cell.Number;
        json["id"] = cell.Id;
        json["metadata"] = new JsonObject();
        if (cell.IsCode) json["outputs"] = new JsonArray([.. cell.Outputs.Select(output => ToJson(output, cell.Number))]);
        json["source"] = Lines(cell.Text);
        return json;
    }

    private static JsonObject ToJson(CellOutput output, int? number) => output switch
    {
        StreamOutput stream => new() { ["name"] = stream.Stream, ["output_type"] = "stream", ["text"] = Lines(stream.Text) },
        DisplayOutput { IsResult: true } result => new() { ["data"] = Data(result), ["execution_count"] = number, ["metadata"] = new JsonObject(), ["output_type"] = "execute_result" },
        DisplayOutput display => new() { ["data"] = Data(display), ["metadata"] = new JsonObject(), ["output_type"] = "display_data" },
        ErrorOutput { Failure: var failure } => new()
        {
            ["ename"] = failure.Kind,
            ["evalue"] = failure.Message,
            ["output_type"] = "error",
            ["traceback"] = new JsonArray($"{failure.Where}: {failure.Message}"),
        },
        _ => throw new ArgumentException($"An output of the kind {output.GetType().Name} has no form in a notebook.", nameof(output)),
    };

    private static JsonObject Data(DisplayOutput output)
    {
        var data = new JsonObject();
        foreach (var (mimeType, text) in output.Data)
            data[mimeType] = mimeType.EndsWith("json", StringComparison.Ordinal) ? JsonNode.Parse(text) : Lines(text);
        return data;
    }

    private static JsonArray Lines(string text)
    {
        var lines = new JsonArray();
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start) is var at and >= 0 ? at + 1 : text.Length;
            lines.Add(text[start..end]);
            start = end;
        }
        return lines;
    }
}
