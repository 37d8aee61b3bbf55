using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>How much of its vitamins, minerals and alcohol a food keeps when it is cooked in a way.</summary>
public sealed class Retention
{
    private readonly IReadOnlyDictionary<string, double?> _percent;

    internal Retention(string key, string group, string description, Source source, IReadOnlyDictionary<string, double?> percent) =>
        (Key, Group, Description, Source, _percent) = (key, group, description, source, percent);

    /// <summary>The release and code, <c>R6 0301</c>.</summary>
    public string Key { get; }

    /// <summary>The group of foods that it is for.</summary>
    public string Group { get; }

    /// <summary>The food and what is done with it, <c>flour/meal, baked</c>.</summary>
    public string Description { get; }

    /// <summary>Where it comes from.</summary>
    public Source Source { get; }

    /// <summary>The share of a nutrient that stays, 0 to 1; null where the table speaks of the nutrient but states no factor here.</summary>
    /// <param name="tag">The nutrient. What the table does not speak of (protein, fat, carbohydrate, fibre) is fully kept: what leaves as mass is a loss, not a retention.</param>
    public double? KeptShare(string tag) => _percent.TryGetValue(tag, out var percent) ? percent / 100 : 1;

    /// <summary>Whether the table speaks of a nutrient at all.</summary>
    public bool SpeaksOf(string tag) => _percent.ContainsKey(tag);
}

/// <summary>The retention factors that the kit ships: USDA, release 6 (2007), in steps of 5 %.</summary>
public sealed class RetentionTable
{
    private static readonly string[] Named = ["retention", "group", "description", "source"];

    private readonly Dictionary<string, Retention> _byName = new(Names.Comparer);

    private RetentionTable(IReadOnlyList<Retention> all)
    {
        All = all;
        foreach (var retention in all) _byName.TryAdd(retention.Key, retention);
        foreach (var retention in all) _byName.TryAdd(retention.Description, retention);
    }

    /// <summary>Every food and way of cooking.</summary>
    public IReadOnlyList<Retention> All { get; }

    /// <summary>Reads <c>retention.csv</c> from the folder of a composition table.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static RetentionTable Load(string folder)
    {
        List<CellProblem> problems = [];
        var sheet = SheetFile.Read(Path.Combine(folder, "retention.csv"));
        if (!sheet.Require(Named, problems)) throw new TableException(problems);
        string[] tags = [.. sheet.Besides(Named)];
        Retention[] all = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row =>
        {
            var key = row.Required("retention");
            return new Retention(key, row.Row["group"], row.Required("description"), new(row.Required("source") is { Length: > 0 } source ? source : sheet.File, Evidence.Published, key),
                tags.ToDictionary(tag => tag, tag => row.Number(tag, 0, 100), StringComparer.OrdinalIgnoreCase));
        })];
        return problems is [] ? new(all) : throw new TableException(problems);
    }

    /// <summary>The factors of a key or description.</summary>
    /// <exception cref="KeyNotFoundException">There are none of this name; the message names near ones.</exception>
    public Retention Find(string keyOrDescription) => _byName.GetValueOrDefault(keyOrDescription)
        ?? throw new KeyNotFoundException($"No retention factors are called '{keyOrDescription}'; near ones: {string.Join(", ", Names.Nearest(keyOrDescription, All.Select(retention => retention.Description)))}.");
}
