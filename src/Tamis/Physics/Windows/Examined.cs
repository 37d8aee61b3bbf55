using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Physics;

/// <summary>What a line brings into a component.</summary>
/// <param name="Line">The line.</param>
/// <param name="Content">All that it brings in, as weighed.</param>
public sealed record LineContent(BatchLine Line, Mixture Content);

/// <summary>A component that is looked at: how it was made, what was measured, how the method goes.</summary>
public sealed record Examined
{
    /// <summary>The component as it is made.</summary>
    public required ComponentBatch Made { get; init; }

    /// <summary>What each line brings in, in the order of the lines.</summary>
    public required IReadOnlyList<LineContent> Contents { get; init; }

    /// <summary>The steps of the method; none where there is no method sheet.</summary>
    public IReadOnlyList<MethodStep> Steps { get; init; } = [];

    /// <summary>What was measured or stated of it, by name: <c>density</c>, <c>water activity</c>, <c>pH</c>. A measured figure stands before a computed one.</summary>
    public IReadOnlyList<Given> Measured { get; init; } = [];

    /// <summary>A component of a batch.</summary>
    /// <exception cref="KeyNotFoundException">The batch has no such component with known masses.</exception>
    public static Examined Of(Batch batch, string component)
    {
        var made = batch.Find(component) ?? throw new KeyNotFoundException($"{batch.Trial} has no component '{component}' with known masses; it has {string.Join(", ", batch.Components.Select(each => each.Name))}.");
        // The parts of what went in stand in the order of the lines: one for an ingredient, those of its yield for a component.
        List<LineContent> contents = [];
        var next = 0;
        foreach (var line in made.Lines)
        {
            var inner = line.IsComponent ? batch.Find(line.Name)?.Out : null;
            var count = inner?.Parts.Count ?? 1;
            var evaporated = inner is { FinishedGrams: > 0 } ? inner.EvaporatedGrams * line.MassGrams / inner.FinishedGrams : 0;
            contents.Add(new(line, new Mixture { Parts = [.. made.In.Parts.Skip(next).Take(count)], EvaporatedGrams = evaporated }));
            next += count;
        }
        return new() { Made = made, Contents = contents };
    }

    /// <summary>A figure that was measured or stated, or null.</summary>
    public Given? MeasuredOf(string name) => Measured.FirstOrDefault(given => Names.Same(given.Name, name));

    /// <summary>Whether any water left while it was made.</summary>
    public bool LostWater => Made.Losses.Any(loss => loss is { IsWater: true, MassGrams: > 0 });

    /// <summary>The mixture that a base speaks of: what went in, or what is there.</summary>
    public Mixture MixtureOn(WindowBase on) => on.Kind is BaseKind.RawMixture or BaseKind.OfPart ? Made.In : Made.Out;

    /// <summary>The hottest that the method makes it, in °C; null where no step names a temperature.</summary>
    public double? HottestCelsius => Steps.Max(step => step.TemperatureCelsius);
}
