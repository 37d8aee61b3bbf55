namespace Tamis.Physics;

/// <summary>What a face of a piece sees: air or a plate of one temperature, how well it takes heat, and what wraps the face.</summary>
/// <remarks><c>default</c> is a face that lets no heat through.</remarks>
public readonly record struct Surroundings
{
    private Surroundings(double celsius, double transfer, double resistance) => (AirCelsius, TransferWPerM2K, ResistanceM2KPerW) = (celsius, transfer, resistance);

    /// <summary>The temperature of the air or plate, °C.</summary>
    public double AirCelsius { get; }

    /// <summary>Heat transfer coefficient, W/(m²·K); 0 where no heat passes.</summary>
    public double TransferWPerM2K { get; }

    /// <summary>What a film, ring or box adds, m²·K/W.</summary>
    public double ResistanceM2KPerW { get; }

    /// <summary>A face that lets no heat through.</summary>
    public static Surroundings Insulated => default;

    /// <summary>Heat that passes from the air to the face's surface for a degree, W/(m²·K), wrapping included.</summary>
    public double OverallWPerM2K => TransferWPerM2K > 0 ? 1 / (1 / TransferWPerM2K + ResistanceM2KPerW) : 0;

    /// <summary>Air (or a plate) of a temperature.</summary>
    /// <param name="celsius">Its temperature.</param>
    /// <param name="transferWPerM2K">Heat transfer coefficient, 0 or more; see <c>surface-heat-transfer.csv</c>.</param>
    /// <param name="resistanceM2KPerW">What wraps the face, thickness in metres over conductivity, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A temperature below absolute zero, a negative coefficient or resistance.</exception>
    public static Surroundings Air(double celsius, double transferWPerM2K, double resistanceM2KPerW = 0)
    {
        Temperature.Require(celsius, nameof(celsius));
        if (!(transferWPerM2K >= 0 && double.IsFinite(transferWPerM2K)))
            throw new ArgumentOutOfRangeException(nameof(transferWPerM2K), transferWPerM2K, "A heat transfer coefficient is 0 W/(m²·K) or more.");
        if (!(resistanceM2KPerW >= 0 && double.IsFinite(resistanceM2KPerW)))
            throw new ArgumentOutOfRangeException(nameof(resistanceM2KPerW), resistanceM2KPerW, "A resistance is 0 m²·K/W or more.");
        return new(celsius, transferWPerM2K, resistanceM2KPerW);
    }
}

/// <summary>The surroundings of a piece for a while: blast freezer, then store, then refrigerator.</summary>
/// <param name="Minutes">How long, above 0.</param>
/// <param name="Top">The upper face.</param>
/// <param name="Bottom">The lower face.</param>
/// <param name="Side">The face all round.</param>
public sealed record HeatStage(double Minutes, Surroundings Top, Surroundings Bottom, Surroundings Side)
{
    /// <summary>How long, in minutes.</summary>
    public double Minutes { get; } = double.IsFinite(Minutes) && Minutes > 0 ? Minutes
        : throw new ArgumentOutOfRangeException(nameof(Minutes), Minutes, "A stage takes more than 0 minutes.");

    /// <summary>The same on all faces.</summary>
    public static HeatStage AllRound(double minutes, Surroundings air) => new(minutes, air, air, air);
}
