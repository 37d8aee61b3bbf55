namespace Tamis.Views;

/// <summary>One axis of curves.</summary>
/// <param name="Title">What it is, with its unit in words: <c>temperature, °C</c>.</param>
/// <param name="Ends">The ends of the axis; null to hold all that is drawn.</param>
public sealed record CurveAxis(string Title, Interval? Ends = null)
{
    /// <summary>The decimals of its figures in the table and under the pointer; null for three significant digits.</summary>
    public int? Decimals { get; init; }
}

/// <summary>One curve, or dots that were measured.</summary>
/// <param name="Name">What it is of; stands at its end.</param>
/// <param name="Points">Its points from left to right; one that is not finite parts the curve.</param>
public sealed record Curve(string Name, IReadOnlyList<(double X, double Y)> Points)
{
    /// <summary>Whether the page speaks of it.</summary>
    public bool IsChosen { get; init; }

    /// <summary>Whether its points were measured one by one: dots without a line.</summary>
    public bool IsDots { get; init; }

    /// <summary>Between which heights it lies as far as is known, point by point; empty where nothing is known of that.</summary>
    public IReadOnlyList<(double X, double Low, double High)> Between { get; init; } = [];
}

/// <summary>A line across a picture, at a height that something must not pass.</summary>
/// <param name="Name">What it is, in few words.</param>
/// <param name="Y">Its height.</param>
public sealed record CurveLimit(string Name, double Y);

/// <summary>A band across a picture: where something lies well, or is in danger.</summary>
/// <param name="Name">What it is, in few words.</param>
/// <param name="Y">From which height to which.</param>
/// <param name="IsDanger">Whether it is to be left quickly, not aimed at.</param>
public sealed record CurveBand(string Name, Interval Y, bool IsDanger = false);

/// <summary>An upright line at a moment or a place.</summary>
/// <param name="Name">What happens or begins there, in few words.</param>
/// <param name="X">Where.</param>
public sealed record CurveEvent(string Name, double X);

/// <summary>Curves over one axis: what changes with time, temperature or place.</summary>
/// <param name="Title">What against what.</param>
/// <param name="Across">The axis across.</param>
/// <param name="Up">The axis upwards.</param>
/// <param name="Curves">The curves.</param>
public sealed record CurvePanel(string Title, CurveAxis Across, CurveAxis Up, IReadOnlyList<Curve> Curves)
{
    /// <summary>Lines across.</summary>
    public IReadOnlyList<CurveLimit> Limits { get; init; } = [];

    /// <summary>Bands across.</summary>
    public IReadOnlyList<CurveBand> Bands { get; init; } = [];

    /// <summary>Upright lines.</summary>
    public IReadOnlyList<CurveEvent> Events { get; init; } = [];

    /// <summary>What is seen, in one sentence; read out with the picture.</summary>
    public string Description { get; init; } = "";

    /// <summary>What is seen and how sure, under the picture.</summary>
    public Html Below { get; init; }
}
