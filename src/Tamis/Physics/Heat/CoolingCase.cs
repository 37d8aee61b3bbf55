namespace Tamis.Physics;

/// <summary>A piece of steady properties that cools or warms in air without freezing: the series' questions with range and working.</summary>
public sealed record CoolingCase
{
    /// <summary>Half thickness of a slab that is cooled on both faces, or radius, mm.</summary>
    public required Given Length { get; init; }

    /// <summary>Slab, roll or ball.</summary>
    public required ConductionShape Shape { get; init; }

    /// <summary>Half the height of a short roll, mm; null for a long one and for a slab or ball.</summary>
    public Given? HalfHeight { get; init; }

    /// <summary>Conductivity, W/(m·K).</summary>
    public required Given Conductivity { get; init; }

    /// <summary>Density, kg/m³.</summary>
    public required Given Density { get; init; }

    /// <summary>Specific heat, kJ/(kg·K).</summary>
    public required Given SpecificHeat { get; init; }

    /// <summary>Heat transfer coefficient, W/(m²·K).</summary>
    public required Given Transfer { get; init; }

    /// <summary>Temperature at the start, °C.</summary>
    public required Given Initial { get; init; }

    /// <summary>Temperature of the centre at the end, °C.</summary>
    public required Given Final { get; init; }

    /// <summary>Temperature of the air, °C.</summary>
    public required Given Air { get; init; }

    /// <summary>Minutes until the centre has the final temperature, by the whole series.</summary>
    public Predicted Minutes() => Time("cooling_time_series", firstTermOnly: false);

    /// <summary>Minutes by the first term alone, as tables give it; good from a Fourier number of 0.2 on.</summary>
    public Predicted MinutesByFirstTerm()
    {
        var time = Time("cooling_time_one_term", firstTermOnly: true);
        return time.IsKnown && time.Equation.Valid.Select(range => range.Outside(time.Value * 60 * Diffusivity(Values()) / Square(Length.Value / 1000))).OfType<string>().ToArray() is { Length: > 0 } outside
            ? time with { Outside = outside }
            : time;
    }

    private static double Square(double x) => x * x;

    private static double Diffusivity(double[] x) => x[1] / (x[2] * x[3] * 1000);

    private double[] Values() => [.. Inputs().Select(each => each.Value)];

    private Given[] Inputs() => 
    [
        Length.In("half thickness or radius", "mm"), Conductivity.In("conductivity", "W/(m·K)"), Density.In("density", "kg/m³"), SpecificHeat.In("specific heat", "kJ/(kg·K)"),
        Transfer.In("heat transfer coefficient", "W/(m²·K)"), Initial.In("initial temperature", "°C"), Final.In("final temperature", "°C"), Air.In("air temperature", "°C"),
        .. HalfHeight is null ? (Given[])[] : [HalfHeight.In("half height", "mm")],
    ];

    private Predicted Time(string equation, bool firstTermOnly) => CheckedPrediction.Of(equation, Inputs(), x => Minutes(x, firstTermOnly),
        x => (x[6] - x[7]) / (x[5] - x[7]) is > 0 and < 1 ? null : "a final temperature between the start and the air");

    private double Minutes(double[] x, bool firstTermOnly)
    {
        var length = x[0] / 1000;
        List<(ConductionSeries, double)> bodies = [(ConductionSeries.Of(Shape, x[4] * length / x[1], firstTermOnly), 1)];
        if (x.Length > 8)
        {
            var half = x[8] / 1000;
            bodies.Add((ConductionSeries.Of(ConductionShape.Slab, x[4] * half / x[1], firstTermOnly), Square(length / half)));
        }
        return ConductionSeries.FourierFor((x[6] - x[7]) / (x[5] - x[7]), bodies) * Square(length) / Diffusivity(x) / 60;
    }
}
