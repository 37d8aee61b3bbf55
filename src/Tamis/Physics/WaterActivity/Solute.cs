using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>Something that dissolves in water and lowers its activity.</summary>
/// <param name="Name">Its name.</param>
/// <param name="MolarMassGramsPerMole">Its molar mass; NaN where each syrup has its own.</param>
/// <param name="Particles">How many particles a formula unit makes in water.</param>
/// <param name="NorrishConstant">K in natural logarithms at 25 °C; NaN where Norrish does not serve.</param>
/// <param name="Source">Where the constant comes from.</param>
public sealed record Solute(string Name, double MolarMassGramsPerMole, int Particles, double NorrishConstant, Source Source)
{
    /// <summary>The part of a balance that it is; null where a balance does not have it.</summary>
    public BalancePart? Part { get; init; }

    /// <summary>Where K lies, if its publication says so.</summary>
    public Interval? NorrishRange { get; init; }

    /// <summary>Grams that 100 g of water hold, by temperature in °C; empty where nothing limits it that the kit knows.</summary>
    public IReadOnlyList<(double Celsius, double GramsPer100GramsWater)> Solubility { get; init; } = [];

    /// <summary>Chen's β, B, n and the highest molality; null where he has none for it.</summary>
    public (double Beta, double B, double N, double MostMolality)? Chen { get; init; }

    /// <summary>Whether it makes ions.</summary>
    public bool IsSalt => Particles > 1;

    /// <summary>Whether it is a mono- or disaccharide, or a saccharide of more units.</summary>
    public bool IsSaccharide => Part is BalancePart.HigherSaccharides || Part is { } part && BalanceParts.Sugars.Contains(part);

    /// <summary>Whether it is a sugar alcohol.</summary>
    public bool IsPolyol => Part is { } part && BalanceParts.Polyols.Contains(part);

    internal static Solute? Read(SheetRow row, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        if (reader.Required("solute") is not { Length: > 0 } name) return null;
        BalancePart? part = null;
        if (reader.Text("part") is { } word)
        {
            if (BalanceParts.ByWord.TryGetValue(word, out var found)) part = found;
            else reader.Note("part", "a part of a balance, or a blank");
        }
        var (low, high) = (reader.Number("k_low"), reader.Number("k_high"));
        if (low > high) reader.Note("k_high", "at least the number under k_low");
        return new(name, reader.Number("molar_mass_g_mol", 1, 1e6) ?? double.NaN, reader.Whole("particles", 1, 10) ?? 1, reader.Number("norrish_k", -100, 0) ?? double.NaN, PhysicsData.SourceOf(row, problems))
        { Part = part, NorrishRange = low <= high ? Interval.Between(low.Value, high.Value) : null };
    }
}
