using Tamis.Formulas;
using Tamis.Montage;

namespace Tamis.Desserts;

/// <summary>What physics says of a trial: of each component, and of the piece that they make.</summary>
public sealed class TrialPhysics
{
    internal TrialPhysics(Dessert dessert, string trial)
    {
        (Dessert, Trial) = (dessert, trial);
        Components = [.. dessert.Trial(trial).Components.Select(made => new ComponentPhysics(dessert, trial, made))];
        Assembly = dessert.Method?.StepsOf(MethodStep.Assembly, dessert.LineOf(trial)) ?? [];
    }

    /// <summary>The dessert.</summary>
    public Dessert Dessert { get; }

    /// <summary>The trial.</summary>
    public string Trial { get; }

    /// <summary>Its components, those that others take in among them.</summary>
    public IReadOnlyList<ComponentPhysics> Components { get; }

    /// <summary>How it is put together.</summary>
    public IReadOnlyList<MethodStep> Assembly { get; }

    /// <summary>One piece; null where there is no montage sheet.</summary>
    /// <exception cref="Tables.TableException">A row of the montage does not fit.</exception>
    public AssembledPiece? Piece => field ??= Dessert.PieceOf(Trial);

    /// <summary>A component by its name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name with known masses.</exception>
    public ComponentPhysics Of(string component) => Components.FirstOrDefault(each => Names.Same(each.Name, component))
        ?? throw new KeyNotFoundException($"{Trial} has no component '{component}' with known masses; it has {string.Join(", ", Components.Select(each => each.Name))}.");

    /// <summary>How the moulded part freezes, as its method says; says what is lacking where it cannot be told.</summary>
    public HeatCourse Freezing => field ??= HeatCourse.Freezing(this);

    /// <summary>How the finished piece thaws, as its assembly says; says what is lacking where it cannot be told.</summary>
    public HeatCourse Thawing => field ??= HeatCourse.Thawing(this);

    /// <summary>How water moves between the layers of the piece; says what is lacking where it cannot be told.</summary>
    public PieceWater Water => field ??= PieceWater.Of(this);

    /// <summary>The temperatures that were logged on makes of it.</summary>
    public IReadOnlyList<MeasuredLog> Logs => field ??= [.. TemperatureLogs.In(Dessert.Measured).Where(log => Names.Same(log.Trial, Trial))];
}
