namespace Tamis.Labels;

/// <summary>What a column of a nutrition panel speaks of.</summary>
public enum PanelColumn
{
    /// <summary>100 g, or 100 ml of what is sold by volume.</summary>
    Per100,
    /// <summary>A serving or portion.</summary>
    Serving,
}

/// <summary>Reads the columns that a law asks for from the setting <c>columns</c>: <c>serving; 100 g</c>.</summary>
internal static class PanelColumnWords
{
    private static readonly Dictionary<string, PanelColumn> Words = new(Names.Comparer) { ["100 g"] = PanelColumn.Per100, ["serving"] = PanelColumn.Serving };

    /// <summary>The columns; where the setting does not stand, the one that the law's basis names.</summary>
    public static IReadOnlyList<PanelColumn> Read(RuleSettings settings, bool isPerServing)
    {
        var written = settings.WordsIfAny("columns");
        if (written.Any(word => !Words.ContainsKey(word)) || written.Distinct(Names.Comparer).Count() < written.Count) settings.Note("columns", $"{string.Join(" or ", Words.Keys)}, each once, parted by semicolons");
        PanelColumn[] columns = [.. written.Where(Words.ContainsKey).Select(word => Words[word])];
        return columns is [] ? [isPerServing ? PanelColumn.Serving : PanelColumn.Per100] : columns;
    }
}
