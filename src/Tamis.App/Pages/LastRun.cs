using System.Text.Encodings.Web;
using System.Text.Json;

namespace Tamis.App.Pages;

/// <summary>What a run leaves for the next one to compare with; it stands beside the pages.</summary>
/// <param name="Sheets">The sheets that its pages were made from.</param>
/// <param name="Figures">The marked figures of each page, by the page's name.</param>
internal sealed record LastRun(IReadOnlyList<SheetCells> Sheets, IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> Figures)
{
    /// <summary>The file's name; a folder that has it was written by this program.</summary>
    public const string FileName = "last-run.json";

    private static readonly JsonSerializerOptions Json = new() { WriteIndented = true, IndentSize = 1, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>What the run left that wrote a folder; null where there was none, or where its file cannot be read.</summary>
    public static LastRun? Read(string folder)
    {
        var path = Path.Combine(folder, FileName);
        if (!File.Exists(path)) return null;
        try
        {
            return JsonSerializer.Deserialize<LastRun>(File.ReadAllText(path), Json);
        }
        catch (JsonException)
        {
            // A file of another version of this program: there is nothing to compare with, as on a first run.
            return null;
        }
    }

    /// <summary>Leaves it in a folder.</summary>
    public void Write(string folder) => File.WriteAllText(Path.Combine(folder, FileName), JsonSerializer.Serialize(this, Json) + "\n");
}
