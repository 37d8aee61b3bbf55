namespace Tamis.Tables;

/// <summary>Writes folders of files whole or not at all.</summary>
public static class FolderFile
{
    /// <summary>Writes files into a folder that is not there yet or is empty. If anything fails, nothing stands there.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="files">The bytes of each file by its name.</param>
    /// <exception cref="IOException">The folder holds something already, or cannot be written.</exception>
    public static void WriteWhole(string folder, IEnumerable<KeyValuePair<string, byte[]>> files)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (File.Exists(full)) throw new IOException($"'{folder}' is a file; name a folder that is not there yet, or an empty one.");
        if (Directory.Exists(full) && Directory.EnumerateFileSystemEntries(full).Any())
            throw new IOException($"The folder '{folder}' holds files already; name one that is not there yet, or an empty one.");
        var parent = Path.GetDirectoryName(full) ?? throw new IOException($"'{folder}' is no folder that can be made.");
        Directory.CreateDirectory(parent);
        // Beside the target: only a move within one disk is a single step.
        var part = Path.Combine(parent, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.part");
        Directory.CreateDirectory(part);
        try
        {
            foreach (var (name, bytes) in files) TextFile.WriteWhole(Path.Combine(part, name), bytes);
            if (Directory.Exists(full)) Directory.Delete(full);
            Directory.Move(part, full);
        }
        finally
        {
            if (Directory.Exists(part)) Directory.Delete(part, recursive: true);
        }
    }
}
