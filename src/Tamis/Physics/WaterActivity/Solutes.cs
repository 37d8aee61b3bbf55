using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>What dissolves, with its constants: <c>solutes.csv</c>, <c>chen-constants.csv</c>, <c>solubility.csv</c> and <c>grover-factors.csv</c> of <c>data/physics</c>.</summary>
public sealed class Solutes
{
    private static readonly Lazy<Solutes> Shipped = new(() => Read(PhysicsData.Kit));
    private readonly Dictionary<string, Solute> _byName;
    private readonly Dictionary<BalancePart, Solute> _byPart;

    private Solutes(PhysicsData data, Dictionary<string, Solute> byName, IReadOnlyDictionary<BalancePart, double> groverFactors)
    {
        (Data, _byName, GroverFactors) = (data, byName, groverFactors);
        _byPart = byName.Values.Where(solute => solute.Part is not null).ToDictionary(solute => solute.Part!.Value);
    }

    /// <summary>What the kit ships.</summary>
    public static Solutes Kit => Shipped.Value;

    /// <summary>The equations and constants beside them.</summary>
    public PhysicsData Data { get; }

    /// <summary>All of them.</summary>
    public IReadOnlyCollection<Solute> All => _byName.Values;

    /// <summary>Grover's factor of each part of a balance that has one: sucrose counts 1 by mass.</summary>
    public IReadOnlyDictionary<BalancePart, double> GroverFactors { get; }

    /// <summary>A solute by its name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name; the message names those near it.</exception>
    public Solute this[string name] => _byName.TryGetValue(name, out var solute) ? solute
        : throw new KeyNotFoundException($"No solute is called '{name}'{(Names.Nearest(name, _byName.Keys) is { Count: > 0 } near ? $"; near ones: {string.Join(", ", near)}" : "")}.");

    /// <summary>The solute that a part of a balance is, or null where it does not dissolve.</summary>
    public Solute? Of(BalancePart part) => _byPart.GetValueOrDefault(part);

    /// <summary>Reads the sheets of a physics folder.</summary>
    /// <exception cref="TableException">Something in them must be mended; every bad cell is named.</exception>
    public static Solutes Read(PhysicsData data)
    {
        List<CellProblem> problems = [];
        Dictionary<string, Solute> byName = new(Names.Comparer);
        foreach (var row in data.Table("solutes.csv").Rows)
            if (Solute.Read(row, problems) is { } solute && !byName.TryAdd(solute.Name, solute)) problems.Add(row.Problem("solute", "a name that no other row has"));
        foreach (var row in data.Table("chen-constants.csv").Rows)
        {
            var reader = new RowReader(row, problems);
            if (Known(row, byName, problems) is { } solute)
                byName[solute.Name] = solute with { Chen = (reader.RequiredNumber("beta", 0), reader.RequiredNumber("b"), reader.RequiredNumber("n", 0), reader.RequiredNumber("most_mol_kg", 0)) };
        }
        foreach (var row in data.Table("solubility.csv").Rows)
        {
            var reader = new RowReader(row, problems);
            if (Known(row, byName, problems) is { } solute)
                byName[solute.Name] = solute with { Solubility = [.. solute.Solubility.Append((reader.RequiredNumber("temperature_c", -50, 150), reader.RequiredNumber("g_100g_water", 0))).OrderBy(each => each.Item1)] };
        }
        Dictionary<BalancePart, double> factors = [];
        foreach (var row in data.Table("grover-factors.csv").Rows)
        {
            if (BalanceParts.ByWord.TryGetValue(row["part"], out var part)) factors[part] = new RowReader(row, problems).RequiredNumber("factor", 0, 100);
            else problems.Add(row.Problem("part", "a part of a balance"));
        }
        return problems.Count == 0 ? new(data, byName, factors) : throw new TableException(problems);
    }

    private static Solute? Known(SheetRow row, Dictionary<string, Solute> byName, List<CellProblem> problems)
    {
        if (byName.TryGetValue(row["solute"], out var solute)) return solute;
        problems.Add(row.Problem("solute", "a solute of solutes.csv"));
        return null;
    }
}
