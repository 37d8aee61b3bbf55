namespace Tamis.Physics;

/// <summary>Something that a window can be about, with the way to work it out.</summary>
public interface IFigure
{
    /// <summary>Its name, as the sheet of windows has it.</summary>
    string Name { get; }

    /// <summary>Its unit, empty for a pure number.</summary>
    string Unit { get; }

    /// <summary>The figure of a component on a base; what is lacking where it cannot be worked out.</summary>
    Predicted Of(Examined examined, WindowBase on);
}
