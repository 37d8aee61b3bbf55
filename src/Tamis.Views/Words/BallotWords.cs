namespace Tamis.Views;

/// <summary>The fixed words of ballots and of the sheets around a tasting, in one language.</summary>
public sealed record BallotWords
{
    /// <summary>Before the id of an assessor.</summary>
    public string Assessor { get; init; } = "Assessor";

    /// <summary>Over what stands before the first plate.</summary>
    public string BeforeYouTaste { get; init; } = "Before you taste";

    /// <summary>What an assessor agrees to; no name and nothing of health is asked.</summary>
    public string Consent { get; init; } = "I have read what it contains. I taste of my own free will and may stop at any time.";

    /// <summary>How to taste.</summary>
    public string HowToTaste { get; init; } = "Taste in the order below. Before each plate drink water, eat a piece of plain bread and wait a minute. Go by your own mouth and do not talk until all have finished.";

    /// <summary>Before the codes in their order.</summary>
    public string YourOrder { get; init; } = "Your order:";

    /// <summary>What a box to tick is called when it is read out.</summary>
    public string Tick { get; init; } = "tick";

    /// <summary>What a box for a place is called when it is read out.</summary>
    public string Place { get; init; } = "place, 1 for the first";

    /// <summary>What a line scale is called when it is read out.</summary>
    public string MarkTheLine { get; init; } = "a line to mark";

    /// <summary>What lines for words are called when they are read out.</summary>
    public string Write { get; init; } = "lines to write on";

    /// <summary>The last box of a list: somebody looked and nothing fitted.</summary>
    public string NoneOfThese { get; init; } = "none of these";

    /// <summary>Under the middle step of a just-right scale.</summary>
    public string JustRight { get; init; } = "just right";

    /// <summary>Which plate of how many.</summary>
    public Template PlateOf { get; init; } = new("plate {place} of {count}");

    /// <summary>Which set of how many.</summary>
    public Template SetOf { get; init; } = new("set {place} of {count}");

    /// <summary>Over what is asked of all plates together.</summary>
    public string AllTogether { get; init; } = "All together";

    /// <summary>The question before the lines for free words.</summary>
    public string InYourWords { get; init; } = "In your own words:";

    /// <summary>The question of a ranking whose attribute has none.</summary>
    public Template RankBy { get; init; } = new("Put them in order by {attribute}: 1 for the first, no place twice.");
}
