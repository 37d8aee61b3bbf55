using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>What the fat, the solids and the carbohydrate of an ingredient are, by the kind of food that it is.</summary>
/// <param name="Name">The kind: milk, nut, flour.</param>
/// <param name="Source">Who says so.</param>
public sealed record IngredientKind(string Name, Source Source)
{
    /// <summary>A food of no known kind: its fats stay unsplit, and nothing is taken as none.</summary>
    public static IngredientKind Unknown { get; } = new("not known", new("no kind is known for it", Evidence.Practice)) { SodiumIsSalt = true };

    /// <summary>What its fat is; two kinds where only the sheet can say how much of each; none where nobody knows.</summary>
    public IReadOnlyList<BalancePart> FatIs { get; init; } = [];

    /// <summary>What remains of it without water, fat, sugars, polyols, alcohol and salt, with the share of each, in per cent (NaN where the sheet must say); empty where protein, starch and fibre stand for themselves.</summary>
    public IReadOnlyList<(BalancePart Part, double Percent)> SolidsAre { get; init; } = [];

    /// <summary>What its sugars are where they are not stated one by one.</summary>
    public BalancePart? SugarsAre { get; init; }

    /// <summary>What its polyols are.</summary>
    public BalancePart? PolyolsAre { get; init; }

    /// <summary>What its carbohydrate is that nothing else accounts for: starch in a flour, higher saccharides in a syrup.</summary>
    public BalancePart? CarbohydrateIs { get; init; }

    /// <summary>Whether its sodium was added as salt, and is not of its own minerals.</summary>
    public bool SodiumIsSalt { get; init; }

    /// <summary>Parts that it has none of by its nature where nobody states them.</summary>
    public IReadOnlyList<BalancePart> NoneOf { get; init; } = [];

    private static readonly Dictionary<string, BalancePart> Totals = new(Names.Comparer) { ["sugars"] = BalancePart.UnsplitSugars, ["polyols"] = BalancePart.UnsplitPolyols, ["fat"] = BalancePart.UnsplitFat };

    internal bool HasNone(BalancePart part) => NoneOf.Contains(BalanceParts.TotalOf(part) ?? part);

    internal static IngredientKind? Read(SheetRow row, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        if (reader.Required("kind") is not { Length: > 0 } name) return null;
        return new(name, PhysicsData.SourceOf(row, problems))
        {
            FatIs = [.. reader.Words("fat_is").Select(word => PartOf(reader, "fat_is", word)).OfType<BalancePart>()],
            SolidsAre = [.. reader.Words("solids_are").Select(word => ShareOf(reader, word)).Where(share => share is not null).Select(share => share!.Value)],
            SugarsAre = reader.Text("sugars_are") is { } sugars ? PartOf(reader, "sugars_are", sugars) : null,
            PolyolsAre = reader.Text("polyols_are") is { } polyols ? PartOf(reader, "polyols_are", polyols) : null,
            CarbohydrateIs = reader.Text("carbohydrate_is") is { } rest ? PartOf(reader, "carbohydrate_is", rest) : null,
            SodiumIsSalt = Names.Same(reader.Required("sodium_is_salt"), "yes"),
            NoneOf = [.. reader.Words("none_of").Select(word => Totals.TryGetValue(word, out var total) ? total : PartOf(reader, "none_of", word)).OfType<BalancePart>()],
        };
    }

    // 'egg yolk solids 48' is a part and its per cent; a lone part is all of it, one of several is left to the sheet.
    private static (BalancePart, double)? ShareOf(RowReader reader, string text)
    {
        var blank = text.LastIndexOf(' ');
        var isShare = blank > 0 && double.TryParse(text.AsSpan(blank + 1), System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out _);
        var percent = isShare ? double.Parse(text.AsSpan(blank + 1), System.Globalization.CultureInfo.InvariantCulture) : reader.Words("solids_are").Count == 1 ? 100 : double.NaN;
        return PartOf(reader, "solids_are", isShare ? text[..blank] : text) is { } part ? (part, percent) : null;
    }

    private static BalancePart? PartOf(RowReader reader, string column, string word)
    {
        if (BalanceParts.ByWord.TryGetValue(word, out var part)) return part;
        var near = Names.Nearest(word, BalanceParts.ByWord.Keys);
        reader.Note(column, $"a part of a balance{(near.Count > 0 ? $", such as {string.Join(", ", near)}" : "")}");
        return null;
    }
}
