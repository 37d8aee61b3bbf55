using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>The components of a dessert beside the windows of their families.</summary>
public static class ComponentCheckUps
{
    private const string Density = "density";

    extension(Dessert dessert)
    {
        /// <summary>A component of a trial with its method and what was measured or stated of it.</summary>
        /// <param name="trial">The trial.</param>
        /// <param name="component">The component.</param>
        /// <exception cref="KeyNotFoundException">There is no such trial or component.</exception>
        public Examined Examine(string trial, string component) => Examined.Of(dessert.Trial(trial), component) with
        {
            Steps = dessert.Method?.StepsOf(component, dessert.LineOf(trial)) ?? [],
            Measured = MeasuredOf(dessert, trial, component),
        };

        /// <summary>A component of a trial beside the windows of the family and use that <c>components.csv</c> names.</summary>
        /// <param name="trial">The trial.</param>
        /// <param name="component">The component.</param>
        /// <param name="figures">The figures; the kit's own where null.</param>
        /// <exception cref="KeyNotFoundException">There is no such trial or component.</exception>
        public CheckUp CheckUp(string trial, string component, FigureList? figures = null)
        {
            var note = dessert.Components.Of(component, dessert.LineOf(trial));
            return Physics.CheckUp.Of(dessert.Examine(trial, component), note?.Family, note?.Use, dessert.Windows, figures);
        }

        /// <summary>Every component of a trial beside its windows, in the order of the formula.</summary>
        /// <param name="trial">The trial.</param>
        /// <exception cref="KeyNotFoundException">There is no such trial.</exception>
        public IReadOnlyList<CheckUp> CheckUps(string trial) => [.. dessert.Trial(trial).Components.Select(made => dessert.CheckUp(trial, made.Name))];
    }

    // What was measured on makes of this very trial, their mean with their range; then what components.csv states.
    private static IReadOnlyList<Given> MeasuredOf(Dessert dessert, string trial, string component)
    {
        List<Given> given = [.. dessert.Measured.Where(each => Names.Same(each.Trial, trial) && Names.Same(each.Component, component))
            .GroupBy(each => each.What, Names.Comparer)
            .Select(makes => new Given(makes.Key, makes.Average(each => each.Value), makes.First().Unit, makes.First().Origin)
            {
                Range = makes.Count() > 1 ? Interval.Between(makes.Min(each => each.Value), makes.Max(each => each.Value)) : null,
            })];
        if (!given.Any(each => Names.Same(each.Name, Density)) && dessert.Components.Of(component, dessert.LineOf(trial)) is { DensityGramsPerMillilitre: { } density } note)
            given.Add(new(Density, density, "g/mL", note.Origin ?? new("components.csv", Evidence.Sheet)));
        return given;
    }
}
