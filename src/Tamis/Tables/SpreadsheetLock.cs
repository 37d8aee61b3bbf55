namespace Tamis.Tables;

/// <summary>The small files by which spreadsheets tell each other that they have a file open.</summary>
internal static class SpreadsheetLock
{
    /// <summary>Whether a spreadsheet says that it has the file open.</summary>
    public static bool IsHeld(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? "";
        var name = Path.GetFileName(path);
        return File.Exists(Path.Combine(folder, $".~lock.{name}#")) || File.Exists(Path.Combine(folder, $"~${name}"));
    }
}
