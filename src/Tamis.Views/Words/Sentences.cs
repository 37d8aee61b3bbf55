namespace Tamis.Views;

/// <summary>The sentences that say how sure something is, what is not shown and what is missing: each one template with named holes.</summary>
/// <remarks>A translation sets every template. Never <c>the same</c> and never <c>significant</c>: a tasting that shows no difference has not shown that there is none.</remarks>
public sealed record Sentences
{
    /// <summary>Liking went up.</summary>
    public Template LikedBetter { get; init; } = new("{trial} is liked better than {other} by {difference} points of {scale}{interval}.");

    /// <summary>Liking went down.</summary>
    public Template LikedLess { get; init; } = new("{trial} is liked less than {other} by {difference} points of {scale}{interval}.");

    /// <summary>An intensity went up.</summary>
    public Template More { get; init; } = new("{trial} has more {attribute} than {other}: {difference} points of {scale}{interval}.");

    /// <summary>An intensity went down.</summary>
    public Template Less { get; init; } = new("{trial} has less {attribute} than {other}: {difference} points of {scale}{interval}.");

    /// <summary>Liking lies at the edge, upwards.</summary>
    public Template MayBeLikedBetter { get; init; } = new("{trial} may be liked better than {other}: {difference}{interval}.");

    /// <summary>Liking lies at the edge, downwards.</summary>
    public Template MayBeLikedLess { get; init; } = new("{trial} may be liked less than {other}: {difference}{interval}.");

    /// <summary>An intensity lies at the edge, upwards.</summary>
    public Template MayHaveMore { get; init; } = new("{trial} may have more {attribute} than {other}: {difference}{interval}.");

    /// <summary>An intensity lies at the edge, downwards.</summary>
    public Template MayHaveLess { get; init; } = new("{trial} may have less {attribute} than {other}: {difference}{interval}.");

    /// <summary>The interval holds zero.</summary>
    public Template CannotTell { get; init; } = new("The tasting cannot tell {trial} from {other}: {attribute} {difference}{interval}.");

    /// <summary>What could have been seen.</summary>
    public Template SmallestSeen { get; init; } = new("A gap under about {gap} points would not have been seen.");

    /// <summary>What would settle an open question.</summary>
    public Template WouldSettle { get; init; } = new("{trial} and {other} side by side, about {servings} servings of each, from a second make of both.");

    /// <summary>Two changes in one trial that another trial takes apart.</summary>
    public Template TwoChangesApart { get; init; } = new("{first} and {second} moved together in {trial}; {apart} takes them apart.");

    /// <summary>Two changes in one trial that nothing takes apart.</summary>
    public Template TwoChangesTogether { get; init; } = new("{first} and {second} moved together in {trial}; they cannot be told apart yet.");

    /// <summary>Only one make.</summary>
    public Template MadeOnce { get; init; } = new("Made once: batch and formula cannot be told apart.");

    /// <summary>Two trials that no tasting links.</summary>
    public Template NeverTogether { get; init; } = new("{trial} and {other} were never tasted together, and no control links them.");

    /// <summary>Too few people to say.</summary>
    public Plural People { get; init; } = new("One person: notes, not evidence.", "{count} people: notes, not evidence.");

    /// <summary>How many figures would stand out by chance.</summary>
    public Template ByChance { get; init; } = new("Of {looked} figures that were looked at, about {chance} would stand out by chance.");

    /// <summary>How many scales would show something by chance, where an interval holds for all pairs of a scale.</summary>
    public Template ByChanceScales { get; init; } = new("Of {looked} scales that were looked at, tasting by tasting, about {chance} would show something by chance.");

    /// <summary>A label that is not finished.</summary>
    public Template NotForPrint { get; init; } = new("A draft, not for print: {missing}.");

    /// <summary>A sheet that is not there.</summary>
    public Template WithSheet { get; init; } = new("With {sheet} this page would add {adds}.");

    /// <summary>A figure under its usual range.</summary>
    public Template UnderWindow { get; init; } = new("{what} is {figure}, under the usual {window}. {source}");

    /// <summary>A figure over its usual range.</summary>
    public Template OverWindow { get; init; } = new("{what} is {figure}, over the usual {window}. {source}");

    /// <summary>A figure inside its usual range.</summary>
    public Template InsideWindow { get; init; } = new("{what} is {figure}, inside the usual {window}. {source}");
}
