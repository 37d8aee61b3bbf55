namespace Tamis.Views;

/// <summary>A page in the list of pages.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Href">Its address beside the list.</param>
/// <param name="Description">What it answers, in one sentence.</param>
public sealed record PageLink(string Title, string Href, Html Description);

/// <summary>A figure that moved between two runs.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Href">The page that shows it, or nothing.</param>
/// <param name="Was">What it was; null where it is new.</param>
/// <param name="Now">What it is; null where it is gone.</param>
public sealed record MovedFigure(string Name, string Href, string? Was, string? Now);

/// <summary>A cell that changed between two runs, with the figures that it moved.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Place">The row and the column in words.</param>
/// <param name="Was">What stood there; null where nothing stood.</param>
/// <param name="Now">What stands there; null where nothing stands any more.</param>
/// <param name="Moved">The figures that moved with it.</param>
public sealed record ChangedCell(string Sheet, string Place, string? Was, string? Now, IReadOnlyList<MovedFigure> Moved);

/// <summary>The parts of the index: the list of pages and what changed since the last run.</summary>
public static class IndexParts
{
    /// <summary>The list of pages.</summary>
    public static Html PageList(IEnumerable<PageLink> pages) =>
        Html.Of($"<ul class=\"pages\">\n{pages.Select(page => Html.Of($"<li><a href=\"{page.Href}\">{page.Title}</a><p>{page.Description}</p></li>\n"))}</ul>\n");

    /// <summary>Cell by cell, what changed since the last run.</summary>
    public static Html ChangedSince(IEnumerable<ChangedCell> changes, Language? language = null)
    {
        var words = (language ?? Language.English).Words;
        return new DataTable(words.Changes,
            [Column.Words(words.Cell), Column.Words(words.BeforeAndNow), Column.Words(words.Moved)],
            [.. changes.Select(change => new Row(
                (Cell)change.Sheet with { From = change.Place },
                Pair(change.Was, change.Now, words),
                Html.Join(change.Moved.Select(moved => Moved(moved, words)), "; ")))]).ToHtml();
    }

    private static Html Moved(MovedFigure moved, Words words)
    {
        var name = moved.Href.Length == 0 ? Html.Text(moved.Name) : Html.Of($"<a href=\"{moved.Href}\">{moved.Name}</a>");
        return Html.Of($"{name} {Pair(moved.Was, moved.Now, words)}");
    }

    private static Html Pair(string? was, string? now, Words words) => (was, now) switch
    {
        (null, null) => Html.Empty,
        (null, _) => Html.Of($"{words.New}: <span class=\"now\">{now}</span>"),
        (_, null) => Html.Of($"<span class=\"was\">{was}</span> {words.Gone}"),
        _ => Html.Of($"<span class=\"was\">{was}</span> <span class=\"now\">{now}</span>"),
    };
}
