using Tamis.Tables;

namespace Tamis.Production;

/// <summary>How a kind of equipment is shared in a plan. Data, in <c>data/production/equipment-kinds.csv</c>.</summary>
/// <param name="Name">The word for the kind, as in <c>equipment.csv</c>.</param>
/// <param name="IsByPlaces">Whether several jobs share it by the places that they take; else one job has it whole.</param>
/// <param name="IsPlanned">Whether a plan counts it at all; a scale is always free.</param>
/// <param name="HasOneTemperature">Whether all that is in it is at one temperature.</param>
/// <param name="IsTakenOut">Whether somebody has to take out what was in when its time is up; else it may stay.</param>
/// <param name="HandsGrow">Whether hands take longer the more there is; else as long as written.</param>
/// <param name="Source">Who says so.</param>
public sealed record EquipmentKind(string Name, bool IsByPlaces, bool IsPlanned, bool HasOneTemperature, bool IsTakenOut, bool HandsGrow, Source Source)
{
    private static readonly Dictionary<string, (bool ByPlaces, bool Planned)> Works = new(Names.Comparer) { ["by places"] = (true, true), ["one job"] = (false, true), ["not planned"] = (false, false) };
    private static readonly Lazy<IReadOnlyDictionary<string, EquipmentKind>> Shipped = new(() => ReadAll(SheetFile.Read(Path.Combine(KitFolder.Data("production"), "equipment-kinds.csv"))));

    /// <summary>The kind of work without equipment.</summary>
    public static EquipmentKind HandsAlone => Shipped.Value["hands alone"];

    /// <summary>A kind; one that the kit does not know works a job at a time, as long as written.</summary>
    public static EquipmentKind Of(string kind) => Shipped.Value.TryGetValue(kind, out var known) ? known
        : new(kind, false, true, false, false, false, new("assumed", Evidence.Practice, $"the kind {kind} is not in equipment-kinds.csv"));

    /// <summary>Reads the kinds.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static IReadOnlyDictionary<string, EquipmentKind> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Dictionary<string, EquipmentKind> kinds = new(Names.Comparer);
        foreach (var reader in sheet.Rows.Select(row => new RowReader(row, problems)))
        {
            var works = reader.Choice("works", Works) ?? default;
            kinds[reader.Required("kind")] = new(reader.Required("kind"), works.ByPlaces, works.Planned, YesOr("one_temperature"), YesOr("taken_out"), YesOr("hands_grow"), new(reader.Required("source"), Evidence.Practice));

            bool YesOr(string column) => reader.YesOrNo(column) ?? false;
        }
        return problems.Count == 0 ? kinds : throw new TableException(problems);
    }
}
