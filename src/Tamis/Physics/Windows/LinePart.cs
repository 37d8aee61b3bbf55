using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>Lines that a cook counts together: the flour, the egg, the nut of a formula.</summary>
/// <param name="Name">The word for them.</param>
/// <param name="Kinds">The kinds of ingredient that they are of; empty where any kind may be.</param>
/// <param name="Words">Words of which the name holds one; empty where the kind is enough.</param>
/// <param name="Without">Words of which the name holds none.</param>
/// <param name="Source">Who counts so.</param>
public sealed record LinePart(string Name, IReadOnlyList<string> Kinds, IReadOnlyList<string> Words, IReadOnlyList<string> Without, Source Source)
{
    /// <summary>The parts of the kit, from <c>data/windows/parts.csv</c>.</summary>
    public static IReadOnlyList<LinePart> All { get; } = ReadAll(SheetFile.Read(Path.Combine(KitFolder.Data("windows"), "parts.csv")));

    /// <summary>The part of a name, or null.</summary>
    public static LinePart? Find(string name) => All.FirstOrDefault(part => NameWords.Same(part.Name, name));

    /// <summary>The part of a name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static LinePart Named(string name) => Find(name) ?? throw new KeyNotFoundException($"No part of a formula is called '{name}'; known are {string.Join(", ", All.Select(part => part.Name))}.");

    /// <summary>Whether an ingredient counts.</summary>
    public bool Holds(Ingredient ingredient) =>
        (Kinds.Count == 0 || Kinds.Contains(IngredientKinds.Kit.Of(ingredient).Name, Names.Comparer)) && HoldsName(ingredient.Name);

    /// <summary>Whether a line counts by its name alone, as a component does.</summary>
    public bool HoldsName(string name) =>
        (Words.Count == 0 || Words.Any(word => NameWords.Hold(name, word))) && !Without.Any(word => NameWords.Hold(name, word));

    /// <summary>The mass of it in a mixture, in grams, as weighed in: water that left later still counts.</summary>
    public Amount In(Mixture mixture)
    {
        double known = 0, total = 0;
        foreach (var part in mixture.Parts)
        {
            total += part.MassGrams;
            if (Holds(part.Ingredient)) known += part.MassGrams;
        }
        return new(known, total, total);
    }

    /// <summary>What is left of a mixture when everything else is taken out.</summary>
    public Mixture Of(Mixture mixture) => new() { Parts = [.. mixture.Parts.Where(part => Holds(part.Ingredient))] };

    private static IReadOnlyList<LinePart> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        var kinds = IngredientKinds.Kit.All.ToDictionary(kind => kind.Name, Names.Comparer);
        List<LinePart> parts = [];
        foreach (var row in sheet.Rows.Select(row => new RowReader(row, problems)))
        {
            foreach (var unknown in row.Words("kinds").Where(kind => !kinds.ContainsKey(kind)))
                row.Note("kinds", $"kinds of ingredient-kinds.csv; '{unknown}' is none");
            parts.Add(new(row.Required("part"), row.Words("kinds"), row.Words("words"), row.Words("without"), PhysicsData.SourceOf(row.Row, problems)));
        }
        return problems is [] ? parts : throw new TableException(problems);
    }
}
