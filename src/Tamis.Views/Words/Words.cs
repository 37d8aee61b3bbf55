namespace Tamis.Views;

/// <summary>The fixed words of pages, tables and charts in one language. A translation sets every one of them.</summary>
public sealed record Words
{
    /// <summary>Between the two ends of a range.</summary>
    public string To { get; init; } = "to";

    /// <summary>Between two neighbouring counts of which either may be right.</summary>
    public string Or { get; init; } = "or";

    /// <summary>Where nobody has a figure.</summary>
    public string NotKnown { get; init; } = "not known";

    /// <summary>An amount that is there but too small to count.</summary>
    public string Trace { get; init; } = "trace";

    /// <summary>Before the bound of an amount that lies below it.</summary>
    public string Under { get; init; } = "under";

    /// <summary>Before the sum of the known parts where some parts are unknown.</summary>
    public string AtLeast { get; init; } = "at least";

    /// <summary>In place of 100 per cent of the mass.</summary>
    public string All { get; init; } = "all";

    /// <summary>Beside a share whose figure is known, such as a column header.</summary>
    public string KnownFor { get; init; } = "known for";

    /// <summary>The line that leads past the navigation.</summary>
    public string ToTheText { get; init; } = "To the text";

    /// <summary>The name of the navigation.</summary>
    public string Pages { get; init; } = "Pages";

    /// <summary>The line at the foot of every page.</summary>
    public string Foot { get; init; } = "From the sheets of the dessert folder. Local rules and the judgement of the person who signs come first.";

    /// <summary>What can be done with care.</summary>
    public string Caution { get; init; } = "Caution";

    /// <summary>What somebody has to decide.</summary>
    public string LookAt { get; init; } = "Look at";

    /// <summary>What cannot go on as it is.</summary>
    public string StopsRelease { get; init; } = "Stops release";

    /// <summary>The heading of what the data show.</summary>
    public string Shown { get; init; } = "Shown";

    /// <summary>The heading of what the data do not show.</summary>
    public string NotShown { get; init; } = "Not shown";

    /// <summary>The heading of what lies between.</summary>
    public string AtTheEdge { get; init; } = "At the edge";

    /// <summary>The heading of what would settle an open question.</summary>
    public string WouldSettleIt { get; init; } = "Would settle it";

    /// <summary>The name of the list of verdicts.</summary>
    public string Verdict { get; init; } = "Verdict";

    /// <summary>The summary over folded code.</summary>
    public string Code { get; init; } = "Code of this section";

    /// <summary>The summary over the table behind a chart.</summary>
    public string FiguresBehind { get; init; } = "The figures behind this chart";

    /// <summary>The column of one cell in the list of what changed.</summary>
    public string Cell { get; init; } = "Cell";

    /// <summary>The column of the texts of a cell, then and now.</summary>
    public string BeforeAndNow { get; init; } = "before and now";

    /// <summary>The column of the figures that a cell moved.</summary>
    public string Moved { get; init; } = "moved";

    /// <summary>The name of the table of what changed.</summary>
    public string Changes { get; init; } = "What changed since the last run";

    /// <summary>Where a cell was empty before.</summary>
    public string New { get; init; } = "new";

    /// <summary>Where a cell or a figure is there no more.</summary>
    public string Gone { get; init; } = "gone";

    /// <summary>The unit of minutes.</summary>
    public string Minutes { get; init; } = "min";

    /// <summary>Left of the reference line of a chart of differences.</summary>
    public string Less { get; init; } = "less";

    /// <summary>Right of the reference line of a chart of differences; <c>{other}</c> is what it is compared with.</summary>
    public Template MoreThan { get; init; } = new("more than {other}");

    /// <summary>The number of people behind a mean, for one and for more.</summary>
    public Plural Assessors { get; init; } = new("{count} assessor", "{count} assessors");

    /// <summary>The sum of what a component is made of for which no figure is known.</summary>
    public string Unknown { get; init; } = "not known";

    /// <summary>The words around a nutrition panel.</summary>
    public PanelWords Panel { get; init; } = new();

    /// <summary>The words of charts.</summary>
    public ChartWords Chart { get; init; } = new();

    /// <summary>The words around what models say.</summary>
    public PhysicsWords Physics { get; init; } = new();

    /// <summary>The words around how a figure was worked out.</summary>
    public WorkingWords Working { get; init; } = new();

    /// <summary>The words of the weighing sheet.</summary>
    public WeighingWords Weighing { get; init; } = new();

    /// <summary>The words of ballots.</summary>
    public BallotWords Ballot { get; init; } = new();
}

/// <summary>The fixed words of the weighing sheet in one language.</summary>
public sealed record WeighingWords
{
    /// <summary>Beside the line for a name.</summary>
    public string MadeBy { get; init; } = "Made by";

    /// <summary>Beside the line for a date.</summary>
    public string Date { get; init; } = "Date";

    /// <summary>Before the mass that the formula expects.</summary>
    public string ShouldWeigh { get; init; } = "Should weigh about";

    /// <summary>Beside the line for the mass that was found.</summary>
    public string Weighed { get; init; } = "Weighed";

    /// <summary>Beside the line for what was read on a thermometer or a clock.</summary>
    public string Measured { get; init; } = "Measured";

    /// <summary>Beside the line for the hour of a reading.</summary>
    public string At { get; init; } = "at";

    /// <summary>Beside the line for who read it.</summary>
    public string By { get; init; } = "by";

    /// <summary>What a box to tick is called when it is read out.</summary>
    public string Tick { get; init; } = "tick";

    /// <summary>The unit of the line for the mass that was found.</summary>
    public string Grams { get; init; } = "g";
}
