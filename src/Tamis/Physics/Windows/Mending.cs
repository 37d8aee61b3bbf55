using System.Globalization;
using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Physics;

/// <summary>A line whose mass is changed.</summary>
/// <param name="Line">The ingredient or component.</param>
/// <param name="Step">The step at which it goes in; 0 for one that is not in yet.</param>
/// <param name="FromGrams">What is weighed now.</param>
/// <param name="ToGrams">What to weigh instead.</param>
public sealed record MendedLine(string Line, int Step, double FromGrams, double ToGrams)
{
    /// <summary>What is added (above zero) or left out, in grams.</summary>
    public double ChangeGrams => ToGrams - FromGrams;

    /// <summary>The line as a cook would say it.</summary>
    public string InWords => string.Create(CultureInfo.InvariantCulture, $"{Line} {FromGrams:0.#} g → {ToGrams:0.#} g");
}

/// <summary>A change of one or two lines that brings every figure inside.</summary>
/// <param name="Lines">The lines.</param>
/// <param name="MovedPercent">What is added and left out together, in per cent of all that is weighed in now.</param>
public sealed record Mend(IReadOnlyList<MendedLine> Lines, double MovedPercent)
{
    /// <summary>The change as a cook would say it.</summary>
    public string InWords => string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", Lines.Select(line => line.InWords))} ({MovedPercent:0.#} % of the batch moved)");
}

/// <summary>What may be changed, and how far inside to aim.</summary>
public sealed record MendingChoices
{
    /// <summary>Ingredients that are not in the component and might be added.</summary>
    public IReadOnlyList<Ingredient> MayAdd { get; init; } = [];

    /// <summary>Lines that stay as they are, by name.</summary>
    public IReadOnlyList<string> Keep { get; init; } = [];

    /// <summary>How far inside its ends each figure is to lie, in widths of its window, 0 to under a half; a scale that rounds to a gram needs a little.</summary>
    public double InsideShare { get; init; } = 0.01;
}

/// <summary>The smallest changes that bring every figure of a component into its window: solved, not guessed.</summary>
/// <remarks>
/// With one or two lines free and all others as they are, every window that is a share of masses is two straight limits, so what is allowed is a convex polygon
/// and the least mass moved (added plus left out) lies at one of its corners or where it crosses the present mass of a line. All of these points are tried; the answer is exact.
/// Water that leaves keeps its grams. Figures that are no shares (density, water activity, temperatures) are left as they are and named.
/// </remarks>
public sealed record Mending
{
    /// <summary>The component's name.</summary>
    public required string Component { get; init; }

    /// <summary>Whether any share lies outside its window now.</summary>
    public bool IsNeeded { get; init; }

    /// <summary>Each change of one or of two lines that helps, the least mass moved first; none where none helps or none is needed.</summary>
    public IReadOnlyList<Mend> Ways { get; init; } = [];

    /// <summary>Windows that the search could not weigh in, by figure: no shares of masses, or not known.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];

    /// <summary>The least change, or null.</summary>
    public Mend? Smallest => Ways.Count > 0 ? Ways[0] : null;

    /// <summary>The least change of a single line, or null.</summary>
    public Mend? SmallestOfOneLine => Ways.FirstOrDefault(way => way.Lines.Count == 1);

    /// <summary>What was found, as a cook would say it.</summary>
    public string InWords => !IsNeeded ? "Every share lies inside its window; nothing to change."
        : Smallest is not { } least ? "No change of one or two lines brings every figure inside at once."
        : $"Least change: {least.InWords}.{(least.Lines.Count > 1 && SmallestOfOneLine is { } one ? $" With one line alone: {one.InWords}." : "")}";

    /// <summary>Seeks the least changes of one or two lines.</summary>
    /// <param name="examined">The component.</param>
    /// <param name="windows">The windows that all must hold.</param>
    /// <param name="choices">What may be changed; the component's own lines where null.</param>
    /// <param name="figures">The figures; the kit's own where null.</param>
    public static Mending Of(Examined examined, IReadOnlyList<Window> windows, MendingChoices? choices = null, FigureList? figures = null)
    {
        choices ??= new();
        figures ??= FigureList.Kit;
        LineContent[] lines = [.. examined.Contents, .. choices.MayAdd.Where(added => examined.Contents.All(line => !Names.Same(line.Line.Name, added.Name))).Select(Added)];
        LinearWindow?[] linear = [.. windows.Select(window => LinearWindow.Of(window, figures.Named(window.Figure), examined, lines, choices.InsideShare))];
        Mending found = new()
        {
            Component = examined.Made.Name,
            IsNeeded = windows.Where((_, i) => linear[i] is not null).Any(window => CheckUpLine.Of(window, examined, figures).OutsideBy > 0),
            LeftOut = [.. windows.Where((_, i) => linear[i] is null).Select(window => window.Figure).Distinct()],
        };
        if (!found.IsNeeded) return found;
        var total = examined.Made.MassInGrams;
        int[] free = [.. Enumerable.Range(0, lines.Length).Where(i => !choices.Keep.Contains(lines[i].Line.Name, Names.Comparer))];
        MendingSearch search = new([.. linear.OfType<LinearWindow>()], [.. lines.Select(line => line.Line.MassGrams)]);
        return found with
        {
            Ways = [.. search.Ways(free).OrderBy(way => way.MovedGrams).ThenBy(way => way.Changes.Count)
                .Select(way => new Mend([.. way.Changes.Select(change => new MendedLine(lines[change.Line].Line.Name, lines[change.Line].Line.Step, lines[change.Line].Line.MassGrams, change.ToGrams))], 100 * way.MovedGrams / total))],
        };
    }

    private static LineContent Added(Ingredient ingredient)
    {
        Source origin = ingredient.Origin ?? new("not in the formula yet", Evidence.Computed);
        BatchLine line = new(ingredient.Name, 0, 0, Interval.At(0), WrittenQuantity.OfGrams(0), "", IsComponent: false, origin, "");
        return new(line, new Mixture { Parts = [new MixturePart(ingredient, 1, 0, origin)] });
    }
}
