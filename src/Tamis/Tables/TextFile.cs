using System.Text;

namespace Tamis.Tables;

/// <summary>Writes files whole or not at all.</summary>
public static class TextFile
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes a text as UTF-8. If anything fails, what stood there before is still there.</summary>
    /// <param name="path">The file; its folder is made where it is missing.</param>
    /// <param name="text">What it shall hold.</param>
    public static void WriteWhole(string path, string text) => WriteWhole(path, Utf8.GetBytes(text));

    /// <summary>Writes bytes. If anything fails, what stood there before is still there.</summary>
    /// <param name="path">The file; its folder is made where it is missing.</param>
    /// <param name="bytes">What it shall hold.</param>
    public static void WriteWhole(string path, ReadOnlySpan<byte> bytes) => Write(path, bytes, overwrite: true);

    /// <summary>Writes a text as UTF-8 to a file that is not there yet, whole or not at all.</summary>
    /// <param name="path">The file; its folder is made where it is missing.</param>
    /// <param name="text">What it shall hold.</param>
    /// <exception cref="IOException">The file is there already; it stays as it is.</exception>
    public static void WriteNew(string path, string text) => Write(path, Utf8.GetBytes(text), overwrite: false);

    private static void Write(string path, ReadOnlySpan<byte> bytes, bool overwrite)
    {
        var full = Path.GetFullPath(path);
        var folder = Path.GetDirectoryName(full) ?? throw new ArgumentException($"'{path}' is no file.", nameof(path));
        Directory.CreateDirectory(folder);
        // Beside the target: only a move within one disk is a single step.
        var part = Path.Combine(folder, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.part");
        try
        {
            using (var stream = new FileStream(part, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }
            File.Move(part, full, overwrite);
        }
        finally
        {
            File.Delete(part);
        }
    }
}
