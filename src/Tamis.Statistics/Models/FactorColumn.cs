namespace Tamis.Statistics.Models;

/// <summary>A factor's values, coded once by their sorted levels.</summary>
internal sealed class FactorColumn
{
    public FactorColumn(IReadOnlyList<string?> values)
    {
        Values = values;
        Dictionary<string, int> met = new(StringComparer.Ordinal);
        var codes = new int[values.Count];
        for (var row = 0; row < codes.Length; row++)
        {
            if (values[row] is not { } value) codes[row] = -1;
            else if (met.TryGetValue(value, out var code)) codes[row] = code;
            else met[value] = codes[row] = met.Count;
        }
        Levels = ModelData.SortedLevels(met.Keys);
        var rank = new int[Levels.Length];
        for (var level = 0; level < rank.Length; level++) rank[met[Levels[level]]] = level;
        for (var row = 0; row < codes.Length; row++)
            if (codes[row] >= 0) codes[row] = rank[codes[row]];
        Codes = codes;
    }

    public IReadOnlyList<string?> Values { get; }

    /// <summary>The levels: numbers in their order if all are numbers, else by character code.</summary>
    public string[] Levels { get; }

    /// <summary>The index of each row's level; −1 where it is missing.</summary>
    public int[] Codes { get; }

    /// <summary>The codes of some rows, and the levels that occur in them.</summary>
    public (string[] Levels, int[] Codes) Of(int[] rows)
    {
        var used = new bool[Levels.Length];
        foreach (var row in rows) used[Codes[row]] = true;
        var place = new int[Levels.Length];
        var count = 0;
        for (var level = 0; level < place.Length; level++) place[level] = used[level] ? count++ : -1;
        var codes = new int[rows.Length];
        for (var i = 0; i < rows.Length; i++) codes[i] = place[Codes[rows[i]]];
        return ([.. Levels.Where((_, level) => used[level])], codes);
    }
}
