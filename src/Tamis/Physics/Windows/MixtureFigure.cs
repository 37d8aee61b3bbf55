using Tamis.Losses;

namespace Tamis.Physics;

/// <summary>A figure that follows from what a mixture is made of: water, cocoa butter, the flour in it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Per cent, or empty for a plain ratio.</param>
/// <param name="Part">How much of it is in a mixture, in grams.</param>
public sealed record MixtureFigure(string Name, string Unit, Func<Mixture, Amount> Part) : IFigure
{
    /// <summary>What it is counted against on a base that is a mixture; null for the whole mass.</summary>
    public Func<Mixture, Amount>? Against { get; init; }

    /// <summary>What it is counted against, in words; used with <see cref="Against"/>.</summary>
    public string AgainstWord { get; init; } = "";

    /// <inheritdoc/>
    public Predicted Of(Examined examined, WindowBase on)
    {
        if (on.Kind == BaseKind.AfterBaking && !examined.LostWater)
            return Predicted.Unknown(PhysicsData.Kit.Equation("share of a mass") with { Name = Name, Unit = Unit }, "what leaves in the oven (a row 'water' with way 'out')");
        var mixture = examined.MixtureOn(on);
        var (against, word) = Against is not null ? (Against(mixture), AgainstWord) : BaseOf(mixture, on);
        return MassShare.Of(this, Part(mixture), against, word, () => Lacking(mixture, on));
    }

    /// <summary>The mass that a base speaks of, with its word.</summary>
    internal static (Amount Amount, string Word) BaseOf(Mixture mixture, WindowBase on) => on.Kind switch
    {
        BaseKind.OfPart => (on.Part!.In(mixture), on.Part.Name),
        BaseKind.OfAllWater => (mixture.Amount("WATER"), "water"),
        _ => (MassShare.Whole(mixture.FinishedGrams), on.Kind == BaseKind.RawMixture ? "raw mixture" : "finished mixture"),
    };

    private IReadOnlyList<string> Lacking(Mixture mixture, WindowBase on) =>
    [
        .. mixture.Parts.Where(part => IsUnknown(part, Part)).Select(part => $"{Name} of {part.Ingredient.Name}")
            .Concat(on.Kind == BaseKind.OfAllWater ? mixture.Parts.Where(part => IsUnknown(part, each => each.Amount("WATER"))).Select(part => $"water of {part.Ingredient.Name}") : [])
            .Concat(Against is { } against ? mixture.Parts.Where(part => IsUnknown(part, against)).Select(part => $"{AgainstWord} of {part.Ingredient.Name}") : []).Distinct(),
    ];

    private static bool IsUnknown(MixturePart part, Func<Mixture, Amount> of) => part.MassGrams > 0 && !of(new Mixture { Parts = [part] }).IsWhole;
}
