namespace Tamis.Physics;

/// <summary>A figure that is no share of masses: a density, a water activity, a temperature of the method.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Its unit, empty for a pure number.</param>
/// <param name="Compute">How it is worked out where nobody measured it.</param>
public sealed record OtherFigure(string Name, string Unit, Func<Examined, WindowBase, Predicted> Compute) : IFigure
{
    /// <inheritdoc/>
    /// <remarks>A measured figure stands before a computed one.</remarks>
    public Predicted Of(Examined examined, WindowBase on) => examined.MeasuredOf(Name) is { IsKnown: true } measured
        ? Predicted.From(PhysicsData.Kit.Equation("measured") with { Name = Name, Unit = Unit }, [measured], at => at[0])
        : Compute(examined, on);
}
