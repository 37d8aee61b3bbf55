using Tamis.Losses;

namespace Tamis.Physics;

/// <summary>A figure that counts lines of the formula by their names or remarks: the crumble of a bound crumble, the whipped cream of a mousse.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Holds">Whether a line counts; the second argument is all lines of the component.</param>
public sealed record LineFigure(string Name, Func<LineContent, IReadOnlyList<LineContent>, bool> Holds) : IFigure
{
    /// <inheritdoc/>
    public string Unit => "%";

    /// <inheritdoc/>
    public Predicted Of(Examined examined, WindowBase on)
    {
        var grams = examined.Contents.Where(line => Holds(line, examined.Contents)).Sum(line => line.Line.MassGrams * (on.Kind is BaseKind.RawMixture or BaseKind.OfPart ? 1 : KeptShare(examined, line.Line.Name)));
        var (of, word) = MixtureFigure.BaseOf(examined.MixtureOn(on), on);
        return MassShare.Of(this, MassShare.Whole(grams), of, word, () => []);
    }

    /// <summary>The share of a line that is still there in the end, its water counted: bowl, trim and straining take theirs.</summary>
    internal static double KeptShare(Examined examined, string line)
    {
        var kept = 1.0;
        var (there, ofLine) = (examined.Made.MassInGrams, examined.Contents.Where(each => Names.Same(each.Line.Name, line)).Sum(each => each.Line.MassGrams));
        foreach (var loss in examined.Made.Losses)
        {
            if (loss.Of is { } of)
            {
                if (!loss.IsWater && Names.Same(of, line) && ofLine > 0) kept *= Math.Max(0, 1 - loss.MassGrams / ofLine);
            }
            else if (!loss.IsWater && there > 0)
            {
                // Losses before a line goes in do not touch it.
                if (examined.Contents.Any(each => Names.Same(each.Line.Name, line) && each.Line.Step <= loss.Step)) kept *= 1 - loss.MassGrams / InBy(examined, loss);
            }
        }
        return kept;
    }

    // What is in the pot when a loss leaves: all that went in by then, less what left before.
    private static double InBy(Examined examined, Loss loss)
    {
        var grams = examined.Contents.Where(each => each.Line.Step <= loss.Step).Sum(each => each.Line.MassGrams);
        foreach (var earlier in examined.Made.Losses)
        {
            if (ReferenceEquals(earlier, loss)) break;
            grams -= earlier.MassGrams;
        }
        return grams;
    }
}
