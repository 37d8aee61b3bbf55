using Tamis.Labels;

namespace Tamis.Tests.Labels;

/// <summary>A copy of the shipped rules that a test may spoil.</summary>
internal sealed class RuleFolderCopy : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public RuleFolderCopy()
    {
        foreach (var file in Directory.EnumerateFiles(LabelKit.Folder, "*", SearchOption.AllDirectories))
        {
            var to = Path.Combine(_folder.Path, Path.GetRelativePath(LabelKit.Folder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
    }

    /// <summary>The folder of all rule sets.</summary>
    public string Root => _folder.Path;

    public void Append(string set, string file, string rows) => File.AppendAllText(Path.Combine(_folder.Path, set, file), rows);

    public void Change(string set, string file, string from, string to)
    {
        var path = Path.Combine(_folder.Path, set, file);
        var text = File.ReadAllText(path);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(from, to, StringComparison.Ordinal));
    }

    public RuleSet Load(string set) => RuleSets.Load(_folder.Path, set);

    public void Dispose() => _folder.Dispose();
}
