namespace Tamis.Formulas;

/// <summary>One preparation of a dessert, as one trial has it.</summary>
public sealed record Component
{
    /// <summary>Its name in the formula sheet.</summary>
    public required string Name { get; init; }

    /// <summary>What goes in, in the order of the sheet.</summary>
    public required IReadOnlyList<Line> Lines { get; init; }

    /// <summary>What leaves, in the order of the sheet.</summary>
    public IReadOnlyList<Line> Leaving { get; init; } = [];

    /// <summary>The yield weighed in this very trial; null where nobody weighed. Never inherited.</summary>
    public Line? WeighedYield { get; init; }

    /// <summary>The trial whose cells these are: this trial, or the one that it takes the component from.</summary>
    public required string WrittenIn { get; init; }
}

/// <summary>All the components of one version of a dessert.</summary>
public sealed record Formula
{
    private readonly Dictionary<string, Component> _byName;

    /// <summary>Makes a formula; each component stands once.</summary>
    public Formula(string trial, IReadOnlyList<Component> components)
    {
        Trial = trial;
        Components = components;
        _byName = components.ToDictionary(component => component.Name, Names.Comparer);
    }

    /// <summary>The name of the version.</summary>
    public string Trial { get; }

    /// <summary>The components in the order of the sheet.</summary>
    public IReadOnlyList<Component> Components { get; }

    /// <summary>The component of a name, or null where the formula has none.</summary>
    public Component? Find(string name) => _byName.GetValueOrDefault(name);

    /// <summary>The components that no other component takes in: what is put together in the end.</summary>
    public IReadOnlyList<Component> Placed
    {
        get
        {
            var used = Components.SelectMany(component => component.Lines).Select(line => line.Name).ToHashSet(Names.Comparer);
            return [.. Components.Where(component => !used.Contains(component.Name))];
        }
    }
}
