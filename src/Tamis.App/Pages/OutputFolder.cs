namespace Tamis.App.Pages;

/// <summary>A folder that is replaced whole or not at all: it is built beside the old one and takes its place at the end.</summary>
/// <remarks>Beside a folder <c>pages</c> stand, while a run goes on, <c>.pages.next</c> (being built), <c>.pages.lock</c> and for a
/// moment <c>.pages.before</c>. Whatever an interrupted run left of them, the next one tidies away.</remarks>
internal sealed class OutputFolder : IDisposable
{
    private readonly string _before;
    private readonly FileStream _lock;

    private OutputFolder(string path, string marker)
    {
        Path = System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(path));
        var parent = System.IO.Path.GetDirectoryName(Path) ?? throw new UserProblem($"{path} cannot be replaced; choose a folder inside another one.");
        string Beside(string ending) => System.IO.Path.Combine(parent, $".{System.IO.Path.GetFileName(Path)}.{ending}");
        (Building, _before) = (Beside("next"), Beside("before"));
        Directory.CreateDirectory(parent);
        _lock = Lock(Beside("lock"), Path);
        try
        {
            Tidy();
            RefuseForeign(marker);
            Directory.CreateDirectory(Building);
        }
        catch
        {
            _lock.Dispose();
            throw;
        }
    }

    /// <summary>The folder that readers open; until <see cref="Finish"/> it holds the previous run.</summary>
    public string Path { get; }

    /// <summary>The folder to write to.</summary>
    public string Building { get; }

    /// <summary>Begins to build a folder.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="marker">The name of the file by which a folder is known as one that this program wrote.</param>
    /// <exception cref="UserProblem">The folder holds something else, or another run is writing it.</exception>
    public static OutputFolder Begin(string path, string marker) => new(path, marker);

    /// <summary>Puts what was built in the place of what was there.</summary>
    public void Finish()
    {
        if (Directory.Exists(Path)) Directory.Move(Path, _before);
        try
        {
            Directory.Move(Building, Path);
        }
        catch (IOException) when (Directory.Exists(_before))
        {
            Directory.Move(_before, Path);
            throw;
        }
        if (Directory.Exists(_before)) Directory.Delete(_before, recursive: true);
    }

    /// <summary>Removes what was built and not finished.</summary>
    public void Dispose()
    {
        if (Directory.Exists(Building)) Directory.Delete(Building, recursive: true);
        _lock.Dispose();
    }

    private static FileStream Lock(string path, string folder)
    {
        try
        {
            return new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (IOException)
        {
            throw new UserProblem($"Another run is writing {folder} just now; wait for it, or give --out another folder.");
        }
    }

    // A run that was interrupted between the two moves left the old pages under the other name: they come back first.
    private void Tidy()
    {
        if (Directory.Exists(_before))
        {
            if (Directory.Exists(Path)) Directory.Delete(_before, recursive: true);
            else Directory.Move(_before, Path);
        }
        if (Directory.Exists(Building)) Directory.Delete(Building, recursive: true);
    }

    private void RefuseForeign(string marker)
    {
        if (File.Exists(Path)) throw new UserProblem($"{Path} is a file; give --out a folder.");
        if (Directory.Exists(Path) && Directory.EnumerateFileSystemEntries(Path).Any() && !File.Exists(System.IO.Path.Combine(Path, marker)))
            throw new UserProblem($"{Path} holds something that this program did not write, and it would be replaced; give --out a new or an empty folder.");
    }
}
