using System.Globalization;

namespace Tamis.Physics;

/// <summary>A solute with its mass.</summary>
/// <param name="Solute">What it is.</param>
/// <param name="Grams">How much of it, in grams.</param>
/// <param name="Moles">How many moles.</param>
public sealed record Dissolved(Solute Solute, double Grams, double Moles);

/// <summary>What cannot stay dissolved.</summary>
/// <param name="Solute">What it is.</param>
/// <param name="Grams">How much of it lies beside the solution, in grams.</param>
/// <param name="SolubilityGramsPer100GramsWater">What 100 g of water hold at the storage temperature.</param>
public sealed record Undissolved(Solute Solute, double Grams, double SolubilityGramsPer100GramsWater);

/// <summary>The water of a mixture and what is dissolved in it.</summary>
public sealed record Solution
{
    private readonly double[] _moles;
    private readonly double[] _constants;

    private Solution(double waterGrams, IReadOnlyList<Dissolved> solutes, Solutes table)
    {
        (WaterGrams, Solutes, Table) = (waterGrams, solutes, table);
        Dissolved[] plain = [.. solutes.Where(each => !each.Solute.IsSalt)];
        _moles = [.. plain.Select(each => each.Moles)];
        _constants = [.. plain.Select(each => each.Solute.NorrishConstant)];
        SaltMoles = solutes.Where(each => each.Solute.IsSalt).Sum(each => each.Moles);
        ParticleMoles = solutes.Sum(each => each.Moles * each.Solute.Particles);
    }

    /// <summary>Water, in grams.</summary>
    public double WaterGrams { get; }

    /// <summary>What is dissolved.</summary>
    public IReadOnlyList<Dissolved> Solutes { get; }

    /// <summary>What cannot stay dissolved at the storage temperature; empty where all can.</summary>
    public IReadOnlyList<Undissolved> Undissolved { get; init; } = [];

    /// <summary>Solids that take up water without dissolving: starch, fibre, proteins, gelling agents, solids of milk, cocoa and egg, in grams.</summary>
    public double SwellingGrams { get; init; }

    /// <summary>The same in sucrose equivalents by Grover's factors, in grams.</summary>
    public double SwellingEquivalentGrams { get; init; }

    /// <summary>What must be known before anything can be said; empty where enough is.</summary>
    public IReadOnlyList<string> Lacks { get; init; } = [];

    /// <summary>What was assumed: a molar mass, unknown parts counted as none.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>The constants behind it.</summary>
    public Solutes Table { get; }

    /// <summary>Water, in moles.</summary>
    public double WaterMoles => WaterGrams / Molar.WaterGramsPerMole;

    /// <summary>Salts, in moles of formula units.</summary>
    public double SaltMoles { get; }

    /// <summary>All dissolved particles, a salt once for each ion, in moles.</summary>
    public double ParticleMoles { get; }

    /// <summary>Moles of each solute that makes no ions.</summary>
    public ReadOnlySpan<double> Moles => _moles;

    /// <summary>Norrish's constant of each solute that makes no ions.</summary>
    public ReadOnlySpan<double> NorrishConstants => _constants;

    /// <summary>Dissolved grams, in grams.</summary>
    public double SoluteGrams => Solutes.Sum(each => each.Grams);

    /// <summary>Dissolved matter in per cent of the solution, as a refractometer roughly reads it.</summary>
    public double DissolvedPercent => SoluteGrams / (SoluteGrams + WaterGrams) * 100;

    /// <summary>Salt, mol to a kilogram of water.</summary>
    public double SaltMolality => SaltMoles / WaterGrams * 1000;

    /// <summary>The same solutes in another mass of water; nothing falls out of it.</summary>
    public Solution WithWater(double waterGrams) => new(waterGrams, Solutes, Table) { SwellingGrams = SwellingGrams, SwellingEquivalentGrams = SwellingEquivalentGrams, Lacks = Lacks, Remarks = Remarks };

    /// <summary>The same with everything in solution, as in a mixture that was boiled and has not grained yet.</summary>
    public Solution AllDissolved => Undissolved.Count == 0 ? this : new(WaterGrams, [.. Solutes.Select(each => Undissolved.FirstOrDefault(other => other.Solute == each.Solute) is { } beside
        ? each with { Grams = each.Grams + beside.Grams, Moles = each.Moles * (each.Grams + beside.Grams) / each.Grams } : each)], Table)
    { SwellingGrams = SwellingGrams, SwellingEquivalentGrams = SwellingEquivalentGrams, Lacks = Lacks, Remarks = Remarks };

    /// <summary>Water and solutes by name, for tests, lessons and checks.</summary>
    /// <exception cref="ArgumentException">A mass is negative or not a number, or there is no water.</exception>
    /// <exception cref="KeyNotFoundException">A solute is not known.</exception>
    public static Solution OfGrams(double waterGrams, params IReadOnlyList<(string Solute, double Grams)> solutes)
    {
        if (!(waterGrams > 0) || !double.IsFinite(waterGrams)) throw new ArgumentException(Text($"A solution needs water above zero; found {waterGrams} g."), nameof(waterGrams));
        if (solutes.FirstOrDefault(each => !(each.Grams >= 0) || !double.IsFinite(each.Grams)) is { Solute: not null } bad)
            throw new ArgumentException(Text($"A solute weighs zero grams or more; found {bad.Grams} g of {bad.Solute}."), nameof(solutes));
        var table = Physics.Solutes.Kit;
        return new(waterGrams, [.. solutes.Select(each => Weighed(table[each.Solute], each.Grams, double.NaN, table))], table);
    }

    /// <summary>What is dissolved in a mixture at its storage temperature.</summary>
    /// <param name="balance">What the mixture is made of.</param>
    /// <param name="storageCelsius">The temperature at which it is kept, which decides what stays dissolved.</param>
    /// <param name="table">Constants; the kit's own where null.</param>
    /// <remarks>Water and sugars must be known for nearly all of the mass; anything else that is unknown is counted as none and said. A solubility is that in water alone: other sugars lower that of sucrose a little.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies below absolute zero.</exception>
    public static Solution Of(Balance balance, double storageCelsius = 20, Solutes? table = null)
    {
        table ??= Physics.Solutes.Kit;
        Temperature.Require(storageCelsius, nameof(storageCelsius));
        List<string> remarks = [], lacks = [];
        var least = table.Data.Constant("least known share").Value / 100;
        if (balance[BalancePart.Water].CoveredShare < least) lacks.Add(Known("water", balance[BalancePart.Water]));
        if (balance.Sugars.CoveredShare < least) lacks.Add(Known("sugars", balance.Sugars));
        var water = balance[BalancePart.Water].Known;
        if (lacks.Count == 0 && water <= 0) lacks.Add("water: it holds none");
        List<Dissolved> dissolved = [];
        List<Undissolved> beside = [];
        foreach (var part in BalanceParts.WaterPhase)
            if (table.Of(part) is { } solute && balance[part] is var amount)
            {
                if (amount.CoveredShare < least && part is (BalancePart.HigherSaccharides or BalancePart.UnsplitPolyols or BalancePart.Salt or BalancePart.Alcohol or BalancePart.OrganicAcids))
                    remarks.Add($"{Known(solute.Name, amount)}; the rest is counted as none");
                if (amount.Known > 0 && water > 0) Dissolve(solute, amount.Known, water, storageCelsius, balance, dissolved, beside, remarks, table);
            }
        BalancePart[] swelling = [BalancePart.Protein, BalancePart.Starch, BalancePart.Fibre, BalancePart.GellingAgents, BalancePart.MilkSolids, BalancePart.CocoaSolids, BalancePart.EggYolkSolids, BalancePart.EggWhiteSolids];
        return new(water, dissolved, table)
        {
            Undissolved = beside, Lacks = lacks, Remarks = remarks,
            SwellingGrams = swelling.Sum(part => balance[part].Known),
            SwellingEquivalentGrams = swelling.Sum(part => balance[part].Known * table.GroverFactors.GetValueOrDefault(part)),
        };
    }

    private static void Dissolve(Solute solute, double grams, double water, double celsius, Balance balance, List<Dissolved> dissolved, List<Undissolved> beside, List<string> remarks, Solutes table)
    {
        if (Solubility.GramsPer100GramsWater(solute, celsius, table.Data) is { } most && grams > most * water / 100)
        {
            beside.Add(new(solute, grams - most * water / 100, most));
            grams = most * water / 100;
        }
        var moles = double.NaN;
        if (solute.Part == BalancePart.HigherSaccharides)
        {
            if (balance.HigherSaccharidesMoles is { IsWhole: true, Known: > 0 } known) moles = known.Known;
            else if (grams > water / 100) remarks.Add("higher saccharides without a dextrose equivalent: their molar mass is assumed");
        }
        dissolved.Add(Weighed(solute, grams, moles, table));
    }

    private static Dissolved Weighed(Solute solute, double grams, double moles, Solutes table) => new(solute, grams, !double.IsNaN(moles) ? moles
        : grams / (double.IsNaN(solute.MolarMassGramsPerMole) ? table.Data.Constant("molar mass of higher saccharides without a dextrose equivalent").Value : solute.MolarMassGramsPerMole));

    private static string Known(string what, Amount amount) => Text($"{what}, known for {amount.CoveredShare * 100:0.#} % of the mass");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
