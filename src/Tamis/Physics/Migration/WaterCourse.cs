namespace Tamis.Physics;

/// <summary>The water activity through a stack at one instant.</summary>
/// <param name="Days">Days since the stack was put together.</param>
/// <param name="HeightMillimetres">The middle of each cell over the floor of the stack, mm.</param>
/// <param name="WaterActivity">The water activity there.</param>
public sealed record WaterProfile(double Days, IReadOnlyList<double> HeightMillimetres, IReadOnlyList<double> WaterActivity);

/// <summary>One layer's water over time, instant by instant as in <see cref="WaterCourse.Days"/>.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="WaterGramsPerGramDry">Its mean water, g per g of dry matter.</param>
/// <param name="MeanWaterActivity">The water activity of that mean water: what a ground sample would show.</param>
/// <param name="LowerWaterActivity">The water activity at its lower face.</param>
/// <param name="UpperWaterActivity">The water activity at its upper face.</param>
public sealed record LayerCourse(WaterLayer Layer, IReadOnlyList<double> WaterGramsPerGramDry, IReadOnlyList<double> MeanWaterActivity, IReadOnlyList<double> LowerWaterActivity, IReadOnlyList<double> UpperWaterActivity)
{
    /// <summary>Its water over a square centimetre at an instant, g.</summary>
    public double WaterGramsPerSquareCentimetre(int instant) => WaterGramsPerGramDry[instant] * Layer.DryGramsPerSquareCentimetre;
}

/// <summary>Where a layer's water activity is taken for its limit.</summary>
public enum LimitAt
{
    /// <summary>The layer's mean water.</summary>
    Mean,
    /// <summary>The face that passes first.</summary>
    Surface,
}

/// <summary>How water moves between the layers of a stack over days.</summary>
/// <remarks>Source: equations-migration.csv, <c>water between layers</c>. Diffusivities, isotherms and the temperature stay as given; nothing crystallises, melts or swells.</remarks>
public sealed class WaterCourse
{
    private WaterCourse(WaterStack stack, IReadOnlyList<double> days, IReadOnlyList<LayerCourse> layers, IReadOnlyList<WaterProfile> profiles, IReadOnlyList<double> fromAir) =>
        (Stack, Days, Layers, Profiles, FromAirGramsPerSquareCentimetre) = (stack, days, layers, profiles, fromAir);

    /// <summary>The stack.</summary>
    public WaterStack Stack { get; }

    /// <summary>The instants, in days since the stack was put together; the first is 0.</summary>
    public IReadOnlyList<double> Days { get; }

    /// <summary>Each layer over time, lowest first.</summary>
    public IReadOnlyList<LayerCourse> Layers { get; }

    /// <summary>The water activity through the stack at the instants asked for.</summary>
    public IReadOnlyList<WaterProfile> Profiles { get; }

    /// <summary>The water that came in from the air by each instant, g per cm²; below zero where it left.</summary>
    public IReadOnlyList<double> FromAirGramsPerSquareCentimetre { get; }

    /// <summary>All water of the stack at an instant, g per cm².</summary>
    public double WaterGramsPerSquareCentimetre(int instant) => Layers.Sum(layer => layer.WaterGramsPerSquareCentimetre(instant));

    /// <summary>The course of a layer by its name.</summary>
    /// <exception cref="KeyNotFoundException">The stack has no such layer.</exception>
    public LayerCourse Of(string layer) => Layers.FirstOrDefault(each => Names.Same(each.Layer.Name, layer))
        ?? throw new KeyNotFoundException($"The stack has no layer called '{layer}'; it has {string.Join(", ", Layers.Select(each => each.Layer.Name))}.");

    /// <summary>Lets water move for some days.</summary>
    /// <param name="stack">The stack.</param>
    /// <param name="days">For how long, above 0.</param>
    /// <param name="detail">How finely; null for the usual.</param>
    /// <exception cref="ArgumentException">The time or the detail is outside its range.</exception>
    public static WaterCourse Of(WaterStack stack, double days, MigrationDetail? detail = null)
    {
        detail ??= new();
        if (!(days > 0 && double.IsFinite(days))) throw new ArgumentException(FormattableString.Invariant($"Water is followed for more than 0 days, found {days:G6}."), nameof(days));
        if (detail.CellsPerLayer is < 2 or > 1000) throw new ArgumentException(FormattableString.Invariant($"A layer has from 2 to 1000 cells, found {detail.CellsPerLayer}."), nameof(detail));
        if (detail.Steps is < 1 or > 1_000_000) throw new ArgumentException(FormattableString.Invariant($"The time has from 1 to 1000000 steps, found {detail.Steps}."), nameof(detail));
        // Most happens early, so the instants lie close together there: their distance grows in a line.
        double[] instants = [.. Enumerable.Range(0, detail.Steps + 1).Select(i => days * i / detail.Steps * i / detail.Steps)];
        double[] asked = detail.ProfileDays is { Count: > 0 } given ? [.. given.Order()] : [0, WholeHours(days / 64), WholeHours(days / 16), WholeHours(days / 4), days];
        if (asked.FirstOrDefault(day => !(day >= 0 && day <= days), 0) is var beyond and not 0) throw new ArgumentException(FormattableString.Invariant($"A profile lies within the {days:G6} days that water is followed, found {beyond:G6}."), nameof(detail));
        return Marched(stack, instants, asked, detail.CellsPerLayer);
    }

    private static double WholeHours(double days) => days * 24 >= 1 ? Math.Round(days * 24) / 24 : days;

    private static WaterCourse Marched(WaterStack stack, double[] instants, double[] asked, int cellsPerLayer)
    {
        MigrationMarch march = new(stack, cellsPerLayer);
        Recording[] layers = [.. stack.Layers.Select(_ => new Recording(instants.Length))];
        var fromAir = new double[instants.Length];
        List<WaterProfile> profiles = [];
        var before = march.Water.ToArray();
        var next = 0;
        for (var i = 0; i < instants.Length; i++)
        {
            if (i > 0)
            {
                march.Water.CopyTo(before);
                march.Advance(instants[i] - instants[i - 1]);
            }
            for (var layer = 0; layer < layers.Length; layer++) layers[layer].Take(i, march, layer, stack.Layers[layer]);
            // From kg/m² to g/cm².
            fromAir[i] = march.FromAirKilogramsPerSquareMetre / 10;
            for (; next < asked.Length && asked[next] <= instants[i]; next++)
                profiles.Add(Profile(stack, before, march.Water, i == 0 ? 1 : (asked[next] - instants[i - 1]) / (instants[i] - instants[i - 1]), asked[next]));
        }
        return new(stack, instants, [.. layers.Select((recording, i) => recording.Course(stack.Layers[i]))], profiles, fromAir);
    }

    private static WaterProfile Profile(WaterStack stack, ReadOnlySpan<double> before, ReadOnlySpan<double> after, double part, double day)
    {
        var cells = after.Length / stack.Layers.Count;
        double[] heights = new double[after.Length], activities = new double[after.Length];
        double floor = 0;
        for (var i = 0; i < after.Length; i++)
        {
            var layer = stack.Layers[i / cells];
            heights[i] = floor + layer.ThicknessMillimetres * (i % cells + 0.5) / cells;
            activities[i] = layer.Isotherm.WaterActivity(before[i] + part * (after[i] - before[i]));
            if (i % cells == cells - 1) floor += layer.ThicknessMillimetres;
        }
        return new(day, heights, activities);
    }

    private sealed class Recording(int instants)
    {
        private readonly double[] _water = new double[instants], _mean = new double[instants], _lower = new double[instants], _upper = new double[instants];

        public void Take(int instant, MigrationMarch march, int number, WaterLayer layer)
        {
            _water[instant] = march.LayerKilogramsPerSquareMetre(number) / (layer.DryGramsPerSquareCentimetre * 10);
            _mean[instant] = layer.Isotherm.WaterActivity(_water[instant]);
            (_lower[instant], _upper[instant]) = march.Faces(number);
        }

        public LayerCourse Course(WaterLayer layer) => new(layer, _water, _mean, _lower, _upper);
    }
}
