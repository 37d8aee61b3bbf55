using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>The rule sets of a folder: each folder in it is one, by its name.</summary>
public static class RuleSets
{
    /// <summary>The names of the rule sets that a folder holds, in order.</summary>
    public static IReadOnlyList<string> NamesIn(string rulesFolder) => Directory.Exists(rulesFolder)
        ? [.. Directory.EnumerateDirectories(rulesFolder)
            .Where(folder => File.Exists(Path.Combine(folder, RuleSetReader.SettingsFile)))
            .Select(folder => Path.GetFileName(folder)!).Order(StringComparer.Ordinal)]
        : [];

    /// <summary>Reads every rule set of a folder.</summary>
    /// <exception cref="TableException">A file is missing or a cell cannot be read; all problems of all rule sets at once.</exception>
    public static IReadOnlyList<RuleSet> Load(string rulesFolder)
    {
        List<RuleSet> sets = [];
        List<CellProblem> problems = [];
        foreach (var name in NamesIn(rulesFolder))
        {
            if (RuleSetReader.Read(Path.Combine(rulesFolder, name), problems) is { } set) sets.Add(set);
        }
        return problems is [] ? sets : throw new TableException(problems);
    }

    /// <summary>Reads one rule set by its name.</summary>
    /// <exception cref="KeyNotFoundException">The folder holds no rule set of this name; the message names the nearest.</exception>
    /// <exception cref="TableException">A file is missing or a cell cannot be read; all problems at once.</exception>
    public static RuleSet Load(string rulesFolder, string name)
    {
        var known = NamesIn(rulesFolder);
        if (known.FirstOrDefault(other => Names.Same(other, name)) is { } found) return RuleSet.Load(Path.Combine(rulesFolder, found));
        var near = Names.Nearest(name, known);
        throw new KeyNotFoundException($"No rule set is called '{name}'; {(near is [] ? $"there are: {string.Join(", ", known)}" : $"near ones: {string.Join(", ", near)}")}.");
    }
}
