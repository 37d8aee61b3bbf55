namespace Tamis.Views;

/// <summary>Says a source in words, with its weight where that is little.</summary>
public static class Sources
{
    /// <summary>The source, its place in it and, where it bears little weight, how little.</summary>
    public static string InWords(Source source)
    {
        var weight = source.Evidence switch
        {
            Evidence.Guidance => "guidance, not law",
            Evidence.Estimate => "estimate",
            Evidence.Practice => "common practice, no source",
            Evidence.Memory => "from memory, text not read",
            _ => "",
        };
        var said = source.ToString();
        return weight.Length == 0 || said.Contains(weight, StringComparison.OrdinalIgnoreCase) ? said : $"{said}; {weight}";
    }
}
