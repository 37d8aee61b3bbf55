using System.Collections.Concurrent;
using Tamis.Composition;
using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>The kit's own data, read once a process and again only where a file of it was changed.</summary>
/// <remarks>Several notebooks of one run open several desserts: the table of foods is the same for all.</remarks>
public static class KitData
{
    private static readonly ConcurrentDictionary<string, (DateTime Written, object Value)> Read = new();

    /// <summary>The composition table.</summary>
    public static CompositionTable Composition => Once(KitFolder.Data("composition"), CompositionTable.Load);

    /// <summary>What the columns of a supplier's document state, in the nutrients of <see cref="Composition"/>.</summary>
    public static StatedFigures Stated => StatedFigures.Load(KitFolder.Data("composition"), Composition.Nutrients);

    /// <summary>A rule set by its folder's name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name; the message names the nearest.</exception>
    public static RuleSet Rules(string name) => Once(Path.Combine(KitFolder.Data("rules"), name), _ => RuleSets.Load(KitFolder.Data("rules"), name));

    private static T Once<T>(string folder, Func<string, T> load) where T : class
    {
        var written = Directory.Exists(folder) ? Directory.EnumerateFiles(folder, "*.csv").Select(File.GetLastWriteTimeUtc).DefaultIfEmpty().Max() : default;
        if (Read.TryGetValue(folder, out var known) && known.Written == written) return (T)known.Value;
        var value = load(folder);
        Read[folder] = (written, value);
        return value;
    }
}
