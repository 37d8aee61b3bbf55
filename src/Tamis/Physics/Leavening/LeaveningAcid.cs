using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>An acid of baking powders.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Short">Its letters in the trade; empty where it has none.</param>
/// <param name="Value">Grams of soda that 100 g of it use up, with the range of what is printed.</param>
/// <param name="Rate">How fast it acts, in words.</param>
/// <param name="Source">Where the figure comes from.</param>
public sealed record LeaveningAcid(string Name, string Short, Given Value, string Rate, Source Source)
{
    /// <summary>The acids of the kit.</summary>
    public static IReadOnlyList<LeaveningAcid> All { get; } = ReadAll(PhysicsData.Kit.Table("leavening-acids.csv"));

    /// <summary>The acid of a name or of its letters.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static LeaveningAcid Named(string name) => All.FirstOrDefault(acid => Names.Same(acid.Name, name) || acid.Short.Length > 0 && Names.Same(acid.Short, name))
        ?? throw new KeyNotFoundException($"No acid of baking powders is called '{name}'; known are {string.Join(", ", All.Select(acid => acid.Name))}.");

    private static IReadOnlyList<LeaveningAcid> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        LeaveningAcid[] acids = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row =>
        {
            var source = PhysicsData.SourceOf(row.Row, problems);
            var value = row.RequiredNumber("neutralising_value", 1, 400);
            return new LeaveningAcid(row.Required("acid"), row.Row["short"],
                new("neutralising value", value, "g soda to 100 g", source) { Range = row.Number("other_value", 1, 400) is { } other ? Interval.Between(Math.Min(value, other), Math.Max(value, other)) : null },
                row.Required("rate"), source);
        })];
        return problems is [] ? acids : throw new TableException(problems);
    }
}
