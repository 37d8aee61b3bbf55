namespace Tamis.Views;

/// <summary>Passages that stand out from the text: notes beside it, verdicts before it, cautions in it, code and lists under it.</summary>
public static class Notes
{
    /// <summary>A note beside the paragraph that follows.</summary>
    public static Html Note(Html text, string heading = "") =>
        Html.Of($"<aside class=\"note\">{(heading.Length == 0 ? Html.Empty : Html.Of($"<b>{heading}</b> "))}{text}</aside>\n");

    /// <summary>The first words of a page: what to do.</summary>
    public static Html Lead(Html text) => Html.Of($"<p class=\"lead\">{text}</p>\n");

    /// <summary>A paragraph.</summary>
    public static Html Paragraph(Html text) => Html.Of($"<p>{text}</p>\n");

    /// <summary>A paragraph in the second voice.</summary>
    public static Html Small(Html text) => Html.Of($"<p class=\"small\">{text}</p>\n");

    /// <summary>Something to do with care.</summary>
    public static Html Caution(Html text, Language? language = null) => Warned("caution", Words(language).Caution, text);

    /// <summary>Something that somebody has to decide.</summary>
    public static Html LookAt(Html text, Language? language = null) => Warned("caution", Words(language).LookAt, text);

    /// <summary>Something that cannot go on as it is.</summary>
    public static Html StopsRelease(Html text, Language? language = null) => Warned("stop", Words(language).StopsRelease, text);

    /// <summary>A file that could not be read, or a page that could not be made: what to fix, cell by cell.</summary>
    public static Html Problems(string heading, IEnumerable<string> problems) =>
        Html.Of($"<div class=\"stop\"><b>{heading}</b><ul>{problems.Select(problem => Html.Of($"<li>{problem}</li>"))}</ul></div>\n");

    /// <summary>What is shown, what is not, what would settle it: a list of headings and sentences, before anything else.</summary>
    public static Html Verdict(IEnumerable<(string Heading, Html Text)> lines, string? name = null, Language? language = null) =>
        Html.Of($"<section class=\"verdict\" aria-label=\"{name ?? Words(language).Verdict}\"><dl>\n{lines.Select(line => Html.Of($"<dt>{line.Heading}</dt><dd>{line.Text}</dd>\n"))}</dl></section>\n");

    /// <summary>The verdict under its usual headings; a list without sentences is left out.</summary>
    public static Html Verdict(IReadOnlyList<Html> shown, IReadOnlyList<Html> notShown, IReadOnlyList<Html> atTheEdge, IReadOnlyList<Html> wouldSettle, Language? language = null)
    {
        var words = Words(language);
        return Verdict(
            ((string Heading, IReadOnlyList<Html> Texts)[])[(words.Shown, shown), (words.NotShown, notShown), (words.AtTheEdge, atTheEdge), (words.WouldSettleIt, wouldSettle)]
                is var all ? all.Where(line => line.Texts.Count > 0).Select(line => (line.Heading, Html.Join(line.Texts, " "))) : [], language: language);
    }

    /// <summary>Code, folded away for a reader who does not want it.</summary>
    public static Html Code(string code, bool open = false, Language? language = null) =>
        Html.Of($"<details class=\"code\"{(open ? Html.Of($" open") : Html.Empty)}><summary>{Words(language).Code}</summary><pre tabindex=\"0\"><code>{code}</code></pre></details>\n");

    /// <summary>Something that opens on request.</summary>
    public static Html Folded(string summary, Html content, bool open = false) =>
        Html.Of($"<details{(open ? Html.Of($" open") : Html.Empty)}><summary>{summary}</summary>{content}</details>\n");

    /// <summary>A list of passages.</summary>
    public static Html List(IEnumerable<Html> items) => Html.Of($"<ul>{items.Select(item => Html.Of($"<li>{item}</li>\n"))}</ul>\n");

    private static Html Warned(string kind, string word, Html text) => Html.Of($"<p class=\"{kind}\"><b>{word}</b> {text}</p>\n");

    private static Words Words(Language? language) => (language ?? Language.English).Words;
}
