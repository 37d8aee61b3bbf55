using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The symbol that the law wants on the front of a trial's pack.</summary>
/// <param name="IsNeeded">Whether it must stand there; null where nobody can say.</param>
/// <param name="Words">Which one and where, or why none, or what to supply.</param>
/// <param name="Artwork">The cell that names the authority's artwork; null where none does.</param>
public sealed record TrialSymbol(bool? IsNeeded, string Words, Source? Artwork)
{
    /// <summary>The figures that it names, in words; none where nobody can say.</summary>
    public IReadOnlyList<string> Named { get; private init; } = [];

    /// <summary>The file that <c>symbol_artwork</c> names and that is not there; null where it is there or no row names one.</summary>
    public string? MissingFile { get; private init; }

    /// <summary>What keeps the front from print, and what to do; null where nothing does.</summary>
    public string? Lacks => IsNeeded is null ? Words
        : IsNeeded == true && Artwork is null ? $"{Words}. The kit does not draw it: set the authority’s own artwork there, and write its file under symbol_artwork in dessert.csv{(MissingFile is { } file ? $"; '{file}', which the row names, stands neither beside the dessert nor in its store" : "")}" : null;

    /// <summary>The symbol of a trial under a rule set. The front is the face that carries the name, or else the largest.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known, the pack cannot be read, or a rule file cannot be read.</exception>
    public static TrialSymbol Of(Dessert dessert, string trial, string rules)
    {
        var (set, name) = (KitData.Rules(rules), dessert.Trial(trial).Trial);
        if (!FrontOfPackRules.Of(set).HasSymbol) return new(false, "these rules have no symbol for the front of a pack", null);
        if (ExemptionOf(dessert, name, set) is { } exempt) return new(false, exempt.ToString(), null);
        var scheme = TrialFrontOfPack.Of(dessert, name, rules).First(each => each.HasSymbol);
        string[] unknown = [.. scheme.Figures.Where(figure => figure.Origin is null).Select(figure => $"{figure.Word}: {figure.Why}")];
        if (unknown.Length > 0) return new(null, $"whether the symbol must stand cannot be said: {string.Join("; ", unknown)}", null);
        string[] named = [.. scheme.Figures.Where(figure => figure.IsNamed).Select(figure => figure.Word)];
        if (named.Length == 0) return new(false, "no figure reaches its threshold: no symbol is asked for", null);
        if (dessert.Facts.Text("box_mm", name) is null && dessert.Facts.Number("surface_cm2", name) is null)
            return new(true, $"{scheme.Verdict.TrimEnd('.')}; which one it is hangs on the size of the pack: box_mm or surface_cm2 in dessert.csv", ArtworkOf(dessert, name)) { Named = named, MissingFile = MissingOf(dessert, name) };
        var pack = LabelAsked.Pack(dessert, name);
        var front = LabelAsked.Faces(dessert, name, pack).FirstOrDefault(face => face.Parts.Contains("name", Names.Comparer))?.Shape ?? pack;
        return new(true, PackSymbol.Of(set, named, front)?.ToString() ?? scheme.Verdict.TrimEnd('.'), ArtworkOf(dessert, name)) { Named = named, MissingFile = MissingOf(dessert, name) };
    }

    /// <summary>The symbol as the front of a trial's pack must carry it; null where its form of sale asks for none, no figure reaches its threshold or nobody can say.</summary>
    /// <exception cref="TableException">A sheet or a rule file cannot be read.</exception>
    public static LabelSymbol? OnLabel(Dessert dessert, string trial, RuleSet rules)
    {
        if (dessert.Facts.Text("form_of_sale", trial) is null) return null;
        var sale = SaleRules.Of(rules, LabelAsked.Day(dessert, trial));
        var exemptions = LabelAsked.Exemptions(dessert, trial);
        if (!sale.For(LabelAsked.FormOfSale(dessert, trial, sale)).Any(row => row.By == "symbol" && row.Needed == Needed.Yes && !row.Exemptions.Any(each => exemptions.Contains(each, Names.Comparer)))) return null;
        return Of(dessert, trial, rules.Name) is { IsNeeded: true, Named.Count: > 0 } symbol ? new(symbol.Named, symbol.Artwork is not null) : null;
    }

    /// <summary>Whether a file that <c>symbol_artwork</c> names stands beside the dessert or in its store.</summary>
    internal static bool IsThere(Dessert dessert, string file) => ((string?[])[dessert.Folder, dessert.StoreFolder]).OfType<string>().Any(folder => File.Exists(Path.Combine(folder, file)));

    private static Source? ArtworkOf(Dessert dessert, string trial) => MissingOf(dessert, trial) is null ? dessert.Facts.OriginOf("symbol_artwork", trial) : null;

    private static string? MissingOf(Dessert dessert, string trial) => dessert.Facts.Text("symbol_artwork", trial) is { } file && !IsThere(dessert, file) ? file : null;

    private static FrontOfPackExemption? ExemptionOf(Dessert dessert, string trial, RuleSet rules)
    {
        var exemptions = FrontOfPackExemptions.Of(rules);
        if (exemptions.All.Count == 0) return null;
        var pack = dessert.Facts.Text("box_mm", trial) is null ? null : LabelAsked.Pack(dessert, trial);
        var isClaimed = DessertClaims.Asked(dessert, trial, rules.Name).Any(each => each.Verdict.State != ClaimState.NotAClaim);
        return exemptions.For(pack, LabelAsked.Exemptions(dessert, trial), isClaimed, dessert.Facts.WordsOf("fortified_with", trial).Any());
    }
}
