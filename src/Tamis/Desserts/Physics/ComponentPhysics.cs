using Tamis.Losses;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>What physics says of one component of a trial. Every figure is worked out when it is first asked for.</summary>
public sealed class ComponentPhysics
{
    private const double RoomCelsius = 20, ThawedCelsius = 4;
    private readonly Dessert _dessert;
    private readonly string _trial;

    internal ComponentPhysics(Dessert dessert, string trial, ComponentBatch made)
    {
        (_dessert, _trial, Made) = (dessert, trial, made);
        Note = dessert.Components.Of(made.Name, dessert.LineOf(trial));
    }

    /// <summary>The component's name.</summary>
    public string Name => Made.Name;

    /// <summary>The component as it is made.</summary>
    public ComponentBatch Made { get; }

    /// <summary>What <c>components.csv</c> says of it; null where it says nothing.</summary>
    public ComponentNote? Note { get; }

    /// <summary>The component with its method and what was measured or stated of it.</summary>
    public Examined Looked => field ??= _dessert.Examine(_trial, Name);

    /// <summary>What went in, by function.</summary>
    public Balance Raw => field ??= Balance.Of(Made.In);

    /// <summary>What is there when it is finished, by function.</summary>
    public Balance Finished => field ??= Balance.Of(Made.Out);

    /// <summary>Where it stands when it is served or kept: as <c>components.csv</c> says, but a frozen one as when it has thawed.</summary>
    public double StorageCelsius => Note?.HoldCelsius is not { } hold ? RoomCelsius : hold < 0 ? ThawedCelsius : hold;

    /// <summary>Its water activity when it is finished.</summary>
    public WaterActivityEstimate WaterActivity => field ??= WaterActivityEstimate.Of(Finished, StorageCelsius);

    /// <summary>How its water freezes.</summary>
    public FreezingCurve Ice => field ??= FreezingCurve.Of(Finished);

    /// <summary>How sweet it is against sucrose.</summary>
    public Predicted Sweet => field ??= Sweetness.Of(Finished);

    /// <summary>How it stands against the windows of its family.</summary>
    public CheckUp CheckUp => field ??= CheckUp.Of(Looked, Note?.Family, Note?.Use, _dessert.Windows);

    /// <summary>The smallest change of one or two lines that brings its shares into their windows.</summary>
    public Mending Mending => field ??= Mending.Of(Looked, _dessert.Windows.For(Note?.Family, Note?.Use).Windows);
}
