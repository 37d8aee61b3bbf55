using System.Collections.Concurrent;
using Tamis.Composition;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The kit's own data, read once a process and again only where a file of it was changed.</summary>
/// <remarks>Several notebooks of one run open several desserts: the table of foods is the same for all.</remarks>
public static class KitData
{
    private static readonly ConcurrentDictionary<string, (DateTime Written, object Value)> Read = new();

    /// <summary>The composition table.</summary>
    public static CompositionTable Composition => Once(KitFolder.Data("composition"), CompositionTable.Load);

    /// <summary>A composition table in another folder, such as a national table that was imported into a store.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static CompositionTable CompositionIn(string folder) => Once(folder, CompositionTable.Load);

    /// <summary>How much of its vitamins and minerals a food keeps when it is cooked.</summary>
    public static RetentionTable Retentions => Once(KitFolder.Data("composition"), RetentionTable.Load, "retention.csv");

    /// <summary>What the columns of a supplier's document state, in the nutrients of <see cref="Composition"/>.</summary>
    public static StatedFigures Stated => StatedFigures.Load(KitFolder.Data("composition"), Composition.Nutrients);

    /// <summary>A rule set by its folder's name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name; the message names the nearest.</exception>
    public static RuleSet Rules(string name) => Once(KitFolder.Data("rules"), folder => RuleSets.Load(folder, name), name);

    /// <summary>The names of the rule sets that the kit has.</summary>
    public static IReadOnlyList<string> RuleSetNames => RuleSets.NamesIn(KitFolder.Data("rules"));

    private static T Once<T>(string folder, Func<string, T> load, string name = "") where T : class
    {
        // A rule set may be based on another: a change anywhere below counts.
        var written = Directory.Exists(folder) ? Directory.EnumerateFiles(folder, "*.csv", SearchOption.AllDirectories).Select(File.GetLastWriteTimeUtc).DefaultIfEmpty().Max() : default;
        var key = Path.Combine(folder, name);
        if (Read.TryGetValue(key, out var known) && known.Written == written) return (T)known.Value;
        var value = load(folder);
        Read[key] = (written, value);
        return value;
    }
}
