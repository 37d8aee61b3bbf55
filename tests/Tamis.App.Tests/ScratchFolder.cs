namespace Tamis.App.Tests;

/// <summary>A folder for one test, removed afterwards.</summary>
internal sealed class ScratchFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("tamis-test-").FullName;

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(this[name])!);
        File.WriteAllText(this[name], text);
        return this[name];
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
