namespace Tamis.Views;

/// <summary>One question of a ballot, in the form in which it is answered.</summary>
/// <param name="Name">The attribute, as the sheet to fill names it.</param>
/// <param name="Question">The question as the assessor reads it.</param>
public abstract record BallotQuestion(string Name, string Question)
{
    /// <summary>What the assessor marks.</summary>
    internal abstract Html Answer(BallotWords words);

    internal virtual string Kind => "";
}

/// <summary>A line to mark anywhere: 100 mm on paper from the lowest to the highest point.</summary>
/// <param name="Name">The attribute.</param>
/// <param name="Question">The question.</param>
/// <param name="LowWord">What its left end means; may be empty.</param>
/// <param name="HighWord">What its right end means; may be empty.</param>
public sealed record LineQuestion(string Name, string Question, string LowWord, string HighWord) : BallotQuestion(Name, Question)
{
    internal override string Kind => " line";

    internal override Html Answer(BallotWords words) =>
        Html.Of($"<div class=\"mark-line\" role=\"img\" aria-label=\"{words.MarkTheLine}\"></div><p class=\"ends\"><span>{LowWord}</span><span>{HighWord}</span></p>");
}

/// <summary>A box for every step.</summary>
/// <param name="Name">The attribute.</param>
/// <param name="Question">The question.</param>
/// <param name="Steps">The steps from left to right, each with the word under it, or nothing.</param>
public sealed record StepsQuestion(string Name, string Question, IReadOnlyList<(string Step, string Word)> Steps) : BallotQuestion(Name, Question)
{
    // Under many narrow boxes the words of the ends stand on a line of their own.
    private const int MostWithWords = 5;

    internal override Html Answer(BallotWords words)
    {
        var hasRoom = Steps.Count <= MostWithWords;
        var boxes = Html.Of($"<ol class=\"step-boxes\" style=\"--steps:{Steps.Count}\">{Steps.Select(step => Html.Of($"<li><span class=\"box\" role=\"img\" aria-label=\"{words.Tick}\"></span><b>{step.Step}</b>{(hasRoom ? Html.Of($"<small>{step.Word}</small>") : Html.Empty)}</li>"))}</ol>");
        return hasRoom ? boxes : boxes + Html.Of($"<p class=\"ends\"><span>{Steps[0].Word}</span><span>{Steps[^1].Word}</span></p>");
    }
}

/// <summary>A list of words to tick.</summary>
/// <param name="Name">The attribute.</param>
/// <param name="Question">The question.</param>
/// <param name="Listed">The words in the order of this ballot.</param>
public sealed record WordsQuestion(string Name, string Question, IReadOnlyList<string> Listed) : BallotQuestion(Name, Question)
{
    internal override Html Answer(BallotWords words) => Html.Of(
        $"<ul class=\"tick-words\">{Listed.Append(words.NoneOfThese).Select(word => Html.Of($"<li><span class=\"box\" role=\"img\" aria-label=\"{words.Tick}\"></span> {word}</li>"))}</ul>");
}

/// <summary>Boxes under codes: a place for each in a ranking, a tick for one in a set.</summary>
/// <param name="Name">The attribute.</param>
/// <param name="Question">The question.</param>
/// <param name="Codes">The codes from left to right.</param>
/// <param name="IsRanking">Whether a place is written into each box, 1 for the first.</param>
public sealed record CodesQuestion(string Name, string Question, IReadOnlyList<string> Codes, bool IsRanking) : BallotQuestion(Name, Question)
{
    internal override Html Answer(BallotWords words) => Html.Of(
        $"<ol class=\"step-boxes codes\" style=\"--steps:{Codes.Count}\">{Codes.Select(code => Html.Of($"<li><span class=\"box{(IsRanking ? " wide" : "")}\" role=\"img\" aria-label=\"{(IsRanking ? words.Place : words.Tick)}\"></span><b>{code}</b></li>"))}</ol>");
}

/// <summary>Lines for free words.</summary>
/// <param name="Name">The attribute.</param>
/// <param name="Question">The question.</param>
/// <param name="Lines">How many lines.</param>
public sealed record FreeQuestion(string Name, string Question, int Lines = 2) : BallotQuestion(Name, Question)
{
    internal override Html Answer(BallotWords words) =>
        Html.Of($"<div class=\"write\" role=\"img\" aria-label=\"{words.Write}\">{Enumerable.Repeat(Html.Of($"<i></i>"), Lines)}</div>");
}

/// <summary>What is asked of one plate, of one set of plates or of all together.</summary>
/// <param name="Heading">The code of the plate, or what stands in its place.</param>
/// <param name="Place">Which plate of how many.</param>
/// <param name="Questions">The questions in order.</param>
public sealed record BallotPart(string Heading, string Place, IReadOnlyList<BallotQuestion> Questions);

/// <summary>The ballot of one assessor: what it contains first, then a part a plate.</summary>
/// <param name="Assessor">The assessor's id.</param>
/// <param name="Codes">The codes in the order of tasting.</param>
/// <param name="Parts">What is asked.</param>
public sealed record Ballot(string Assessor, IReadOnlyList<string> Codes, IReadOnlyList<BallotPart> Parts);

/// <summary>The ballots of one tasting, for paper: every assessor begins on a new page, no plate is cut in two.</summary>
/// <param name="Title">The tasting and the day.</param>
/// <param name="Contains">What the food contains that some people must not eat; stands before anything is tasted.</param>
/// <param name="Ballots">One an assessor.</param>
[TypeFormatterSource(typeof(ViewFormatters<BallotSheets>), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed record BallotSheets(string Title, Html Contains, IReadOnlyList<Ballot> Ballots) : IView
{
    /// <summary>What it is said with.</summary>
    public Language Language { get; init; } = Language.English;

    /// <inheritdoc/>
    public Html ToHtml() => Html.Of($"<h1 class=\"screen-only\">{Title}</h1>\n{Ballots.Select(One)}");

    private BallotWords Words => Language.Words.Ballot;

    private Html One(Ballot ballot) => Html.Of($"""
        <section class="ballot">
        <header><h2>{Words.Assessor} {ballot.Assessor}</h2><p>{Title}</p></header>
        <div class="before"><h3>{Words.BeforeYouTaste}</h3>
        {Contains}<p class="consent"><span class="box" role="img" aria-label="{Words.Tick}"></span> {Words.Consent}</p>
        <p>{Words.HowToTaste}</p>
        <p class="order">{Words.YourOrder} <b>{string.Join(" \u2192 ", ballot.Codes)}</b></p></div>
        {ballot.Parts.Select(Part)}</section>

        """);

    private Html Part(BallotPart part) => Html.Of($"""
        <article class="plate"><header><h3>{part.Heading}</h3><p>{part.Place}</p></header>
        {part.Questions.Select(question => Html.Of($"<div class=\"ask{question.Kind}\"><p>{question.Question}</p>{question.Answer(Words)}</div>\n"))}</article>

        """);
}
