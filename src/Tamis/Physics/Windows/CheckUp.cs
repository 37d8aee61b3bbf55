namespace Tamis.Physics;

/// <summary>A component beside the windows of its family and use: what is inside, what is not and why it matters, what cannot be said.</summary>
/// <remarks>A window says 'usually works'. It is no promise that something is safe, keeps, or is liked.</remarks>
public sealed record CheckUp
{
    /// <summary>The component's name.</summary>
    public required string Component { get; init; }

    /// <summary>The family and use that it was held against; null where there are no windows.</summary>
    public string? Family { get; init; }

    /// <summary>The use within the family; null where there are no windows.</summary>
    public string? Use { get; init; }

    /// <summary>Every window with the figure beside it, in the order of the sheet.</summary>
    public IReadOnlyList<CheckUpLine> Lines { get; init; } = [];

    /// <summary>Why there is no verdict, as a sentence; empty where there is one.</summary>
    public string NoVerdict { get; init; } = "";

    /// <summary>The lines that lie inside.</summary>
    public IReadOnlyList<CheckUpLine> Inside => [.. Lines.Where(line => line.Verdict == WindowVerdict.Inside)];

    /// <summary>The lines that lie outside, farthest first in widths of their windows.</summary>
    public IReadOnlyList<CheckUpLine> Outside =>
        [.. Lines.Where(line => line.Verdict is WindowVerdict.TooLow or WindowVerdict.TooHigh).OrderByDescending(line => line.OutsideBy / Math.Max(line.Window.Range.Width, 1e-9))];

    /// <summary>The lines that cannot be worked out.</summary>
    public IReadOnlyList<CheckUpLine> NotKnown => [.. Lines.Where(line => line.Verdict == WindowVerdict.NotKnown)];

    /// <summary>The line of a figure on a base, or null; the base is as the sheet writes it (<c>finished</c>), and the first one where it is left out.</summary>
    public CheckUpLine? Line(string figure, string? on = null) =>
        Lines.FirstOrDefault(line => Names.Same(line.Window.Figure, figure) && (on is null || Names.Same(line.Window.On.Word, on)));

    /// <summary>Holds a component against the windows of its family and use.</summary>
    /// <param name="examined">The component, with what was measured of it and its method.</param>
    /// <param name="family">Its family; null where nobody named one, and then there is no verdict.</param>
    /// <param name="use">What it is used for; the first words are enough.</param>
    /// <param name="windows">The windows; the kit's own where null.</param>
    /// <param name="figures">The figures; the kit's own where null.</param>
    public static CheckUp Of(Examined examined, string? family, string? use, FamilyWindows? windows = null, FigureList? figures = null)
    {
        var chosen = (windows ?? FamilyWindows.Kit).For(family, use);
        return new()
        {
            Component = examined.Made.Name,
            Family = chosen.Family,
            Use = chosen.Use,
            NoVerdict = chosen.Reason,
            Lines = [.. chosen.Windows.Select(window => CheckUpLine.Of(window, examined, figures))],
        };
    }
}
