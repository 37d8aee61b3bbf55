namespace Tamis.Views;

/// <summary>What a tasting lets one say of a difference, judged by the interval as it is printed.</summary>
public enum Finding
{
    /// <summary>The interval holds zero, or there is none.</summary>
    NotShown,
    /// <summary>An end of the interval prints as zero.</summary>
    AtEdge,
    /// <summary>The whole interval, as printed, lies above zero.</summary>
    Gain,
    /// <summary>The whole interval, as printed, lies below zero.</summary>
    Loss,
}

/// <summary>A difference between two trials in one attribute, in points of the scale.</summary>
/// <param name="Points">The difference: this trial less the other.</param>
/// <param name="Interval">Its interval at the level that the page names, or null where the data give no spread.</param>
/// <param name="Decimals">The decimals that are printed.</param>
public sealed record Difference(double Points, Interval? Interval, int Decimals = 1)
{
    /// <summary>What it lets one say, by the interval as printed.</summary>
    public Finding Finding
    {
        get
        {
            if (Interval is not { } range) return Finding.NotShown;
            var (low, high) = (Figures.Round(range.Low, Decimals), Figures.Round(range.High, Decimals));
            return low > 0 ? Finding.Gain : high < 0 ? Finding.Loss : low == 0 || high == 0 ? Finding.AtEdge : Finding.NotShown;
        }
    }

    /// <summary>The difference and its interval with signs.</summary>
    public Estimate Shown(Figures figures) => figures.Estimate(Points, Interval, decimals: Decimals, signed: true);
}

/// <summary>Fills the sentences of a language: the only place where a finding becomes words.</summary>
/// <param name="figures">The numbers and the language of the page.</param>
public sealed class Says(Figures figures)
{
    /// <summary>The sentences in English.</summary>
    public static Says English { get; } = new(Figures.English);

    private readonly Sentences sentences = figures.Language.Sentences;

    /// <summary>What a tasting shows of one attribute between two trials; the words follow the interval as printed.</summary>
    /// <param name="attribute">The attribute in words.</param>
    /// <param name="isLiking">Whether it asks for liking and not for an intensity.</param>
    /// <param name="trial">The trial spoken of.</param>
    /// <param name="other">The trial that it is compared with.</param>
    /// <param name="difference">This trial less the other.</param>
    /// <param name="scalePoints">The points of the whole scale.</param>
    public Html Of(string attribute, bool isLiking, string trial, string other, Difference difference, int scalePoints = 10)
    {
        var up = difference.Points >= 0;
        var template = (difference.Finding, isLiking, up) switch
        {
            (Finding.Gain, true, _) => sentences.LikedBetter,
            (Finding.Loss, true, _) => sentences.LikedLess,
            (Finding.Gain, false, _) => sentences.More,
            (Finding.Loss, false, _) => sentences.Less,
            (Finding.AtEdge, true, true) => sentences.MayBeLikedBetter,
            (Finding.AtEdge, true, false) => sentences.MayBeLikedLess,
            (Finding.AtEdge, false, true) => sentences.MayHaveMore,
            (Finding.AtEdge, false, false) => sentences.MayHaveLess,
            _ => sentences.CannotTell,
        };
        // 'liked less by 1.2' carries its direction in the words, so there the figures stand without their signs.
        var bare = isLiking && difference.Finding is (Finding.Gain or Finding.Loss);
        var shown = bare ? Unsigned(difference) : difference.Shown(figures);
        return template.Fill(("attribute", attribute), ("trial", trial), ("other", other), ("scale", scalePoints),
            ("difference", shown.Value.InText), ("interval", shown.HasInterval ? Html.Of($" <span class=\"sure\">({shown.Range})</span>") : Html.Empty));
    }

    /// <summary>How small a difference the tasting would have missed.</summary>
    public Html SmallestSeen(double gapPoints) => sentences.SmallestSeen.Fill(("gap", figures.Score(gapPoints).InText));

    /// <summary>What tasting would settle an open question.</summary>
    public Html WouldSettle(string trial, string other, int servings) =>
        sentences.WouldSettle.Fill(("trial", trial), ("other", other), ("servings", figures.Count(servings).Text));

    /// <summary>Two things moved in one trial.</summary>
    /// <param name="first">The one.</param>
    /// <param name="second">The other.</param>
    /// <param name="trial">The trial in which both moved.</param>
    /// <param name="apart">The trial that takes them apart, or null.</param>
    public Html TwoChanges(string first, string second, string trial, string? apart) => apart is null
        ? sentences.TwoChangesTogether.Fill(("first", first), ("second", second), ("trial", trial))
        : sentences.TwoChangesApart.Fill(("first", first), ("second", second), ("trial", trial), ("apart", apart));

    /// <summary>There was one make only.</summary>
    public Html OneMake() => sentences.MadeOnce.Fill();

    /// <summary>No tasting links two trials.</summary>
    public Html NoCommonTasting(string trial, string other) => sentences.NeverTogether.Fill(("trial", trial), ("other", other));

    /// <summary>Too few people to say anything.</summary>
    public Html TooFew(int people) => sentences.People.Fill(people);

    /// <summary>How many of the figures that were looked at would stand out by chance.</summary>
    /// <param name="looked">How many were looked at.</param>
    /// <param name="chanceShare">The share that stands out by chance: 0.05 for 95 % intervals.</param>
    public Html ManyLooks(int looked, double chanceShare = 0.05) => ByChance(sentences.ByChance, looked, chanceShare);

    /// <summary>How many scales of the tastings looked at would show something by chance, where an interval holds for all pairs of trials of a scale together.</summary>
    /// <param name="looked">How many were looked at.</param>
    /// <param name="chanceShare">The share that shows something by chance: 0.05 for 95 % intervals.</param>
    public Html ManyScales(int looked, double chanceShare = 0.05) => ByChance(sentences.ByChanceScales, looked, chanceShare);

    private Html ByChance(Template sentence, int looked, double chanceShare)
    {
        var (low, high) = (Math.Floor(looked * chanceShare + 0.25), Math.Floor(looked * chanceShare + 0.75));
        var chance = low == high ? figures.Number(low, 0).Text : $"{figures.Number(low, 0).Text} {figures.Language.Words.Or} {figures.Number(high, 0).Text}";
        return sentence.Fill(("looked", figures.Count(looked).Text), ("chance", chance));
    }

    /// <summary>A label is not finished.</summary>
    public Html Draft(string missing) => sentences.NotForPrint.Fill(("missing", missing));

    /// <summary>A sheet that is not there, and what it would add.</summary>
    public Html MissingSheet(string sheet, string adds) => sentences.WithSheet.Fill(("sheet", sheet), ("adds", adds));

    /// <summary>A figure beside its usual range.</summary>
    /// <param name="what">What it is, with a capital.</param>
    /// <param name="figure">The figure, in the unit of the window.</param>
    /// <param name="window">The usual range.</param>
    /// <param name="decimals">The decimals of the window's ends.</param>
    /// <param name="unit">The unit of both.</param>
    /// <param name="source">Where the range comes from.</param>
    /// <param name="figureDecimals">The decimals of the figure; null for those of the window, one more where it would seem to lie on an end.</param>
    public Html Window(string what, double figure, Interval window, int decimals, string unit, Source source, int? figureDecimals = null)
    {
        var template = figure < window.Low ? sentences.UnderWindow : figure > window.High ? sentences.OverWindow : sentences.InsideWindow;
        var close = Figures.Round(figure, decimals) == Figures.Round(figure < window.Low ? window.Low : window.High, decimals);
        return template.Fill(("what", what), ("figure", figures.Number(figure, figureDecimals ?? (close ? decimals + 1 : decimals), unit).InText),
            ("window", figures.Between(window, decimals, unit)), ("source", Html.Of($"<span class=\"from\">{Sources.InWords(source)}</span>")));
    }

    private Estimate Unsigned(Difference difference)
    {
        var range = difference.Interval is { } signed && difference.Points < 0 ? Interval.Between(-signed.High, -signed.Low) : difference.Interval;
        return figures.Estimate(Math.Abs(difference.Points), range, decimals: difference.Decimals);
    }
}
