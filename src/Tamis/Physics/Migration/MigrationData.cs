using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>What is known of water in the layers of desserts: isotherms, diffusivities, films and the limits of crisp and moist layers, by name.</summary>
/// <remarks>From <c>sorption.csv</c>, <c>sorption-points.csv</c> <c>water-movement.csv</c> and <c>migration-families.csv</c> under <c>data/physics</c>; a row more there is a layer more here.</remarks>
public sealed class MigrationData
{
    private static readonly Lazy<MigrationData> Shipped = new(() => Read(PhysicsData.Kit));

    private MigrationData(IReadOnlyDictionary<string, SorptionIsotherm> isotherms, IReadOnlyDictionary<string, Given> diffusivities, IReadOnlyDictionary<string, Given> permeabilities, IReadOnlyDictionary<string, WaterLimit> limits, IReadOnlyDictionary<string, LayerKind> kinds) =>
        (Isotherms, Diffusivities, Permeabilities, Limits, Kinds) = (isotherms, diffusivities, permeabilities, limits, kinds);

    /// <summary>What the kit ships.</summary>
    public static MigrationData Kit => Shipped.Value;

    /// <summary>Isotherms by what they are of. Those of measured sugars are called <c>sucrose, amorphous</c>.</summary>
    public IReadOnlyDictionary<string, SorptionIsotherm> Isotherms { get; }

    /// <summary>How fast water moves in a layer, m²/s, at the temperature of the row.</summary>
    public IReadOnlyDictionary<string, Given> Diffusivities { get; }

    /// <summary>Permeabilities of films to water vapour, kg·m/(m²·s·Pa).</summary>
    public IReadOnlyDictionary<string, Given> Permeabilities { get; }

    /// <summary>The water activities at which layers go soft or dry.</summary>
    public IReadOnlyDictionary<string, WaterLimit> Limits { get; }

    /// <summary>What is taken for the components of a family, by family; a family that is not there has no layer.</summary>
    public IReadOnlyDictionary<string, LayerKind> Kinds { get; }

    /// <summary>An isotherm by its name.</summary>
    /// <exception cref="KeyNotFoundException">There is none; near names are named.</exception>
    public SorptionIsotherm Isotherm(string name) => Named(Isotherms, name, "isotherm");

    /// <summary>A diffusivity by its layer.</summary>
    /// <exception cref="KeyNotFoundException">There is none; near names are named.</exception>
    public Given Diffusivity(string layer) => Named(Diffusivities, layer, "diffusivity");

    /// <summary>A diffusivity at another temperature than that of its row, 20 °C, by the activation energy that was measured for sponge; its range takes in the range of that energy.</summary>
    /// <param name="diffusivity">As in <see cref="Diffusivities"/>.</param>
    /// <param name="temperatureCelsius">The temperature of the store, 0 to 40 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is not from 0 to 40 °C: below freezing water does not move as this says.</exception>
    public static Given At(Given diffusivity, double temperatureCelsius)
    {
        if (!(temperatureCelsius is >= 0 and <= 40)) throw new ArgumentOutOfRangeException(nameof(temperatureCelsius), temperatureCelsius, "Diffusivities of water in layers are taken from 0 to 40 °C.");
        var energy = PhysicsData.Kit.Constant("activation energy of water diffusion in sponge");
        var (range, energies) = (diffusivity.Range ?? Interval.At(diffusivity.Value), energy.Range ?? Interval.At(energy.Value));
        double[] ratios = [Ratio(energies.Low), Ratio(energies.High)];
        return diffusivity with { Value = diffusivity.Value * Ratio(energy.Value), Range = Interval.Between(range.Low * ratios.Min(), range.High * ratios.Max()) };

        double Ratio(double kilojoules) => WaterVapour.DiffusionRatio(temperatureCelsius, RowCelsius, kilojoules);
    }

    // The temperature of every diffusivity in water-movement.csv; reading refuses another.
    private const double RowCelsius = 20;

    /// <summary>A limit by its layer.</summary>
    /// <exception cref="KeyNotFoundException">There is none; near names are named.</exception>
    public WaterLimit Limit(string layer) => Named(Limits, layer, "limit");

    /// <summary>A film of some thickness by what it is of.</summary>
    /// <exception cref="KeyNotFoundException">No permeability of this name; near names are named.</exception>
    /// <exception cref="ArgumentException">The thickness or the bare share is outside its range.</exception>
    public FatFilm Film(string name, double thicknessMillimetres, double bareShare = 0) => FatFilm.Of(name, Named(Permeabilities, name, "permeability"), thicknessMillimetres, bareShare);

    /// <summary>Reads the sheets of a physics folder.</summary>
    /// <exception cref="TableException">Something in them must be mended; every bad cell is named.</exception>
    public static MigrationData Read(PhysicsData data)
    {
        List<CellProblem> problems = [];
        Dictionary<string, SorptionIsotherm> isotherms = new(Names.Comparer);
        foreach (var row in data.Table("sorption.csv").Rows) AddGab(row, isotherms, problems);
        foreach (var rows in data.Table("sorption-points.csv").Rows.GroupBy(row => $"{row["solid"]}, {row["form"]}", Names.Comparer)) AddPoints(rows.Key, [.. rows], isotherms, problems);
        Dictionary<string, Given> diffusivities = new(Names.Comparer), permeabilities = new(Names.Comparer);
        Dictionary<string, WaterLimit> limits = new(Names.Comparer);
        foreach (var row in data.Table("water-movement.csv").Rows)
        {
            if (Figure(row, problems) is not { } figure) continue;
            var isNew = Names.Key(row["kind"]) switch
            {
                "diffusivity" when row["temperature_c"] != "20" => Note(row, "temperature_c", "20: diffusivities are given for 20 °C", problems),
                "diffusivity" => diffusivities.TryAdd(figure.Name, figure),
                "permeability" => permeabilities.TryAdd(figure.Name, figure),
                "soft above" => limits.TryAdd(figure.Name, new(figure, LimitSide.SoftAbove)),
                "dry below" => limits.TryAdd(figure.Name, new(figure, LimitSide.DryBelow)),
                _ => Note(row, "kind", "diffusivity, permeability, soft above or dry below", problems),
            };
            if (!isNew) problems.Add(row.Problem("name", "a name that no other row of this kind has"));
        }
        Dictionary<string, LayerKind> kinds = new(Names.Comparer);
        foreach (var row in data.Table("migration-families.csv").Rows) AddKind(row, isotherms, diffusivities, limits, kinds, problems);
        return problems.Count == 0 ? new(isotherms, diffusivities, permeabilities, limits, kinds) : throw new TableException(problems);
    }

    private static bool Note(SheetRow row, string column, string expected, List<CellProblem> problems)
    {
        problems.Add(row.Problem(column, expected));
        return true;
    }

    private static Given? Figure(SheetRow row, List<CellProblem> problems)
    {
        var (before, reader) = (problems.Count, new RowReader(row, problems));
        var isLimit = row["unit"].Length == 0;
        var most = isLimit ? 1 : double.PositiveInfinity;
        var (name, value) = (reader.Required("name"), reader.RequiredNumber("value", 0, most));
        var (low, high) = (reader.Number("low", 0, most) ?? value, reader.Number("high", 0, most) ?? value);
        if (!(low <= value && value <= high)) reader.Note("value", "a number from low to high");
        var source = PhysicsData.SourceOf(row, problems);
        return problems.Count == before ? new(name, value, row["unit"], source) { Range = Interval.Between(low, high) } : null;
    }

    private static void AddGab(SheetRow row, Dictionary<string, SorptionIsotherm> isotherms, List<CellProblem> problems)
    {
        var (before, reader) = (problems.Count, new RowReader(row, problems));
        var name = reader.Required("material");
        var (monolayer, c, k) = (reader.RequiredNumber("monolayer_g_per_g", 1e-6, 0.999), reader.RequiredNumber("c", 1e-6), reader.RequiredNumber("k", 1e-6, 1));
        var (low, high) = (reader.RequiredNumber("low", 0, 1), reader.RequiredNumber("high", 0, 1));
        var isIllustrative = reader.Choice("status", Statuses);
        if (low > high) reader.Note("high", "at least the number under low");
        var source = PhysicsData.SourceOf(row, problems);
        if (problems.Count > before) return;
        var isotherm = SorptionIsotherm.OfGab(name, Gab.Of(monolayer, c, k), Interval.Between(low, high), source);
        if (!isotherms.TryAdd(name, isotherm.Marked(isIllustrative ?? true, reader.Number("temperature_c"))))
            reader.Note("material", "a name that no other row has");
    }

    private static void AddPoints(string name, IReadOnlyList<SheetRow> rows, Dictionary<string, SorptionIsotherm> isotherms, List<CellProblem> problems)
    {
        var before = problems.Count;
        (double Activity, double Water)[] points = [.. rows.Select(row => new RowReader(row, problems)).Select(reader => (reader.RequiredNumber("water_activity", 1e-6, 0.999), reader.RequiredNumber("water_g_per_100g", 1e-6) / 100))];
        var source = PhysicsData.SourceOf(rows[0], problems);
        if (problems.Count > before) return;
        for (var i = 1; i < points.Length; i++)
            if (!(points[i].Activity > points[i - 1].Activity && points[i].Water > points[i - 1].Water)) problems.Add(rows[i].Problem("water_g_per_100g", "more water at a higher water activity than in the row before"));
        if (problems.Count == before && !isotherms.TryAdd(name, SorptionIsotherm.OfPoints(name, points, source))) problems.Add(rows[0].Problem("solid", "a name that no other row has"));
    }

    private static void AddKind(SheetRow row, Dictionary<string, SorptionIsotherm> isotherms, Dictionary<string, Given> diffusivities, Dictionary<string, WaterLimit> limits, Dictionary<string, LayerKind> kinds, List<CellProblem> problems)
    {
        RowReader reader = new(row, problems);
        var (family, isotherm, limit) = (reader.Required("family"), reader.Named("isotherm", isotherms), reader.Named("limit", limits));
        var source = PhysicsData.SourceOf(row, problems);
        if (reader.Required("diffusivity").Length == 0 || reader.Named("diffusivity", diffusivities) is not { } diffusivity) return;
        if (!kinds.TryAdd(family, new(family, isotherm, diffusivity, limit, source) { IsOfSwellingSolids = reader.Choice("of", Bases) == true })) reader.Note("family", "a family that no other row has");
    }

    private static readonly Dictionary<string, bool> Bases = new(Names.Comparer) { ["dry matter"] = false, ["starch, fibre and protein"] = true };

    private static readonly Dictionary<string, bool> Statuses = new(Names.Comparer) { ["illustrative"] = true, ["recalled"] = false, ["published"] = false };

    private static T Named<T>(IReadOnlyDictionary<string, T> known, string name, string what) => known.TryGetValue(name, out var found) ? found
        : throw new KeyNotFoundException($"The kit has no {what} of '{name}'{(Names.Nearest(name, known.Keys) is { Count: > 0 } near ? $"; near ones: {string.Join(", ", near)}" : $"; it has {string.Join(", ", known.Keys)}")}.");
}
