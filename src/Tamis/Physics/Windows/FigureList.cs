using Tamis.Losses;

namespace Tamis.Physics;

/// <summary>The figures that windows may be about, by name. A new one is one entry.</summary>
public sealed class FigureList
{
    private const string LinePrefix = "line ";
    private readonly Dictionary<string, IFigure> _byName;

    private FigureList(IEnumerable<IFigure> figures) => _byName = figures.ToDictionary(figure => figure.Name, Names.Comparer);

    /// <summary>The figures of the kit.</summary>
    public static FigureList Kit { get; } = new([.. Contents(), .. Lines(), .. MethodFigures.All]);

    /// <summary>Every figure.</summary>
    public IReadOnlyCollection<IFigure> All => _byName.Values;

    /// <summary>The figure of a name; <c>line</c> and the name of a line is that line's share; null for any other name.</summary>
    public IFigure? Find(string name) => _byName.TryGetValue(name, out var figure) ? figure
        : Names.Key(name).StartsWith(LinePrefix, StringComparison.Ordinal) && Names.Key(name)[LinePrefix.Length..] is { Length: > 0 } line
            ? new LineFigure(Names.Key(name), (each, _) => Names.Same(each.Line.Name, line)) : null;

    /// <summary>The figure of a name, as <see cref="Find"/> has it.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public IFigure Named(string name) => Find(name) ?? throw new KeyNotFoundException($"No figure is called '{name}'; near ones: {string.Join(", ", Nearest(name))}.");

    /// <summary>Names of figures near a mistyped one.</summary>
    public IReadOnlyList<string> Nearest(string name) => Names.Nearest(name, _byName.Keys) is { Count: > 0 } near ? near : [.. _byName.Keys.Order(StringComparer.Ordinal)];

    /// <summary>These figures and others; one of a known name stands in its place.</summary>
    public FigureList With(params IReadOnlyList<IFigure> others) => new([.. All.Where(figure => !others.Any(other => Names.Same(other.Name, figure.Name))), .. others]);

    private static IEnumerable<IFigure> Contents() =>
    [
        Share("water", mixture => mixture.Amount("WATER")),
        Share("fat", mixture => Balance.Of(mixture).Fat),
        Share("milk fat", mixture => Balance.Of(mixture)[BalancePart.MilkFat]),
        Share("cocoa butter", mixture => Balance.Of(mixture)[BalancePart.CocoaButter]),
        Share("nut and liquid fat", NutAndLiquidFat),
        Share("sugars", mixture => Balance.Of(mixture).Sugars),
        Share("sugar solids", mixture => Balance.Of(mixture).Together([.. BalanceParts.Sugars, BalancePart.HigherSaccharides, .. BalanceParts.Polyols])),
        Share("soluble solids", SolubleSolids),
        Share("starch", mixture => Balance.Of(mixture)[BalancePart.Starch]),
        Share("fat-free cocoa solids", mixture => Balance.Of(mixture)[BalancePart.CocoaSolids]),
        Share("salt", mixture => Balance.Of(mixture)[BalancePart.Salt]),
        Share("alcohol", mixture => Balance.Of(mixture)[BalancePart.Alcohol]),
        Share("gelatine", GelatineAtReference),
        Share("water without flour", mixture => Less(mixture.Amount("WATER"), LinePart.Named("flour").Of(mixture).Amount("WATER"))),
        new MixtureFigure("fat to water", "", mixture => Balance.Of(mixture).Fat) { Against = mixture => mixture.Amount("WATER"), AgainstWord = "water" },
        new MixtureFigure("sugar of the water phase", "%", mixture => Balance.Of(mixture).Sugars) { Against = mixture => Balance.Of(mixture).Together([BalancePart.Water, .. BalanceParts.Sugars]), AgainstWord = "water and sugars" },
    ];

    // Every part of a formula that cooks count together is a figure by itself.
    private static IEnumerable<IFigure> Lines() =>
    [
        .. LinePart.All.Where(part => part.Kinds.Count > 0 && part.Name is not ("gelatine" or "water poured")).Select(part => new MixtureFigure(part.Name, "%", part.In)),
        new MixtureFigure("water added", "%", LinePart.Named("water poured").In),
        .. LinePart.All.Where(part => part.Kinds.Count == 0).Select(part => new LineFigure(part.Name, (line, _) => part.HoldsName(line.Line.Name))),
        new LineFigure("whipped cream", IsWhippedCream),
    ];

    private static MixtureFigure Share(string name, Func<Mixture, Amount> part) => new(name, "%", part);

    // Cream that a remark calls whipped; where no remark does, all cream.
    private static bool IsWhippedCream(LineContent line, IReadOnlyList<LineContent> all)
    {
        return IsCream(line) && (IsWhipped(line) || !all.Any(other => IsCream(other) && IsWhipped(other)));

        static bool IsCream(LineContent each) => each.Content.Parts is [var only] && LinePart.Named("cream").Holds(only.Ingredient);
        static bool IsWhipped(LineContent each) => NameWords.Hold(each.Line.Notes, "whipped");
    }

    // What a refractometer reads, nearly: all that is neither water, fat, protein, starch nor fibre; added pectin dissolves too.
    private static Amount SolubleSolids(Mixture mixture)
    {
        var water = mixture.Amount("WATER");
        var fat = mixture.Amount("FAT");
        var undissolved = fat.Known + mixture.Amount("PROCNT").Known + mixture.Amount("STARCH").Known + mixture.Amount("FIBTG").Known - LinePart.Named("pectin").Of(mixture).Amount("FIBTG").Known;
        return new(mixture.FinishedGrams - water.Known - undissolved, Math.Min(water.CoveredMassGrams, fat.CoveredMassGrams), water.TotalMassGrams);
    }

    private static Amount NutAndLiquidFat(Mixture mixture)
    {
        var nut = Balance.Of(mixture)[BalancePart.NutFat];
        var oil = LinePart.Named("oil that thins a paste").Of(mixture);
        // Oil of nuts among them is nut fat already.
        return nut with { Known = nut.Known + Balance.Of(oil)[BalancePart.OtherFat].Known };
    }

    /// <summary>Dry gelatine as of the reference strength, by the root rule.</summary>
    private static Amount GelatineAtReference(Mixture mixture)
    {
        double known = 0, covered = 0, total = 0;
        var gelatine = LinePart.Named("gelatine");
        foreach (var part in mixture.Parts)
        {
            total += part.MassGrams;
            if (!gelatine.Holds(part.Ingredient)) covered += part.MassGrams;
            else if (part.Ingredient.BloomGrams is { } bloom)
            {
                covered += part.MassGrams;
                known += Gelatine.SquareRootEquivalentGrams(part.MassGrams, bloom, Gelatine.ReferenceBloom);
            }
        }
        // A little gelatine of unknown strength is the whole of the figure, not a little of it.
        return new(known, mixture.Parts.Any(part => part.MassGrams > 0 && gelatine.Holds(part.Ingredient) && part.Ingredient.BloomGrams is null) ? 0 : covered, total);
    }

    private static Amount Less(Amount whole, Amount part) => whole with { Known = whole.Known - part.Known };
}
