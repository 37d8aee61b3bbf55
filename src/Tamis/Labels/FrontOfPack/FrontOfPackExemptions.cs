using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A pack that need not carry the symbol of its law. All that is filled must hold.</summary>
/// <param name="Asked">The exemption as <c>dessert.csv</c> asks for it; null where the pack itself decides.</param>
/// <param name="Conditions">What holds of the size of the pack.</param>
/// <param name="UnlessClaimed">Whether it falls away where the pack makes a claim.</param>
/// <param name="UnlessAdded">Whether it falls away where a nutrient was added.</param>
/// <param name="Where">The conditions as the row writes them; empty where there are none.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record FrontOfPackExemption(string? Asked, IReadOnlyList<LayoutCondition> Conditions, bool UnlessClaimed, bool UnlessAdded, string Where, RuleOrigin Origin)
{
    /// <summary>The exemption in words.</summary>
    public override string ToString() => $"no symbol is asked for: {string.Join(", ", new[] { Asked is null ? null : $"the kitchen asks for the exemption '{Asked}', and a competent person says whether it holds", Where.Length > 0 ? Where : null }.OfType<string>())} ({Origin})";
}

/// <summary>The packs that need not carry the symbol of a rule set: <c>front-of-pack-exemptions.csv</c>; none where it has no such file.</summary>
public sealed class FrontOfPackExemptions
{
    private const string File = "front-of-pack-exemptions.csv", Claimed = "claimed", Added = "added";

    private FrontOfPackExemptions(IReadOnlyList<FrontOfPackExemption> all) => All = all;

    /// <summary>Every row, in the order of the file.</summary>
    public IReadOnlyList<FrontOfPackExemption> All { get; }

    /// <summary>The exemptions of a rule set.</summary>
    /// <exception cref="TableException">A cell cannot be read; all problems at once.</exception>
    public static FrontOfPackExemptions Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>The first exemption that holds; null where none does.</summary>
    /// <param name="pack">The pack; where it is not known as a box, with all its faces, no size exempts it.</param>
    /// <param name="asked">The exemptions that the kitchen asks for.</param>
    /// <param name="isClaimed">Whether the pack makes a claim.</param>
    /// <param name="isAdded">Whether a nutrient was added.</param>
    public FrontOfPackExemption? For(PackShape? pack, IReadOnlyCollection<string> asked, bool isClaimed, bool isAdded) => All.FirstOrDefault(row =>
        (row.Asked is null || asked.Contains(row.Asked, Names.Comparer)) && row.Conditions.All(condition => pack is { IsBox: true } && condition.Holds(pack, null)) && !(row.UnlessClaimed && isClaimed) && !(row.UnlessAdded && isAdded));

    private static FrontOfPackExemptions Read(RuleFolder folder, List<CellProblem> problems) => new([.. folder.RowsIfAny(File, ["exemption", "where", "unless"], problems).Select(RowOf)]);

    private static FrontOfPackExemption RowOf(RuleRow row)
    {
        var (cells, where) = (row.Cells, row.Cells.Text("where") ?? "");
        var conditions = LayoutCondition.ParseAll(where);
        if (conditions is null) cells.Note("where", LayoutCondition.Expected);
        if (where.Length == 0 && cells.Text("exemption") is null) cells.Note("exemption", "an exemption that the kitchen may ask for, or a size under where: a row with neither would exempt every pack");
        var unless = cells.Words("unless");
        if (unless.Any(word => word is not (Claimed or Added))) cells.Note("unless", $"{Claimed}, {Added}, both parted by a semicolon, or blank");
        return new(cells.Text("exemption"), conditions ?? [], unless.Contains(Claimed), unless.Contains(Added), where, row.Origin());
    }
}
