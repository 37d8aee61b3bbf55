using System.Text.RegularExpressions;

namespace Tamis.Views;

/// <summary>Which form of panel the law of a rule set asks for.</summary>
public enum PanelForm
{
    /// <summary>A plain table: term and amount per 100 g or 100 ml, further columns per portion (Regulation (EU) No 1169/2011, Articles 30 to 34 and Annex XV).</summary>
    Table,
    /// <summary>A box of lines with rules between and per cent daily values at the end (21 CFR 101.9(d)).</summary>
    Box,
}

/// <summary>One line of a nutrition panel.</summary>
/// <param name="Term">The law's term.</param>
/// <param name="Amounts">The declared amounts as texts, one a column; several units stand one under the other. Blank where the one amount stands in the term.</param>
public sealed record PanelRow(string Term, IReadOnlyList<string> Amounts)
{
    /// <summary>How far it is indented: 0 for a main line, 1 for one of which the line above is made.</summary>
    public int Indent { get; init; }

    /// <summary>Per cent of the reference, as texts: in a box one beside each column of amounts, in a table one that stands last. None where the line has none.</summary>
    public IReadOnlyList<string> Percents { get; init; } = [];

    /// <summary>The per cent of the first column; empty where there is none.</summary>
    public string Percent => Percents.FirstOrDefault() ?? "";

    /// <summary>Whether the law sets it in heavy type.</summary>
    public bool IsHeavy { get; init; }

    /// <summary>Whether a heavy rule stands above it, as the law draws it.</summary>
    public bool AfterRule { get; init; }

    /// <summary>The figure before rounding, for the table beside the panel; its unit with it.</summary>
    public Num Unrounded { get; init; }

    /// <summary>The interval of the figure before rounding, as text; may be empty.</summary>
    public string Interval { get; init; } = "";

    /// <summary>For which share of the mass it is known, 0 to 1; null where the question does not arise.</summary>
    public double? CoveredShare { get; init; }

    /// <summary>How it was worked out, or null.</summary>
    public Working? Working { get; init; }

    /// <summary>The name of the tracked figure that it shows, or null.</summary>
    public string? Figure { get; init; }
}

/// <summary>A nutrition panel as it would stand on the pack, with every figure before rounding beside it.</summary>
/// <param name="Title">The law's title of it.</param>
/// <param name="Columns">The heads of the columns of amounts: <c>per 100 g</c>, <c>per portion (65 g)</c>.</param>
/// <param name="Rows">Its lines in the law's order.</param>
[TypeFormatterSource(typeof(ViewFormatters<NutritionPanelView>), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed partial record NutritionPanelView(string Title, IReadOnlyList<string> Columns, IReadOnlyList<PanelRow> Rows) : IView
{
    /// <summary>The form that the law asks for.</summary>
    public PanelForm Form { get; init; }

    /// <summary>Lines between title and rows: portions, the size of one; the last one is set heavy in a box.</summary>
    public IReadOnlyList<string> Servings { get; init; } = [];

    /// <summary>The head of the column of per cents, such as the law's words for a daily value; may be empty.</summary>
    public string PercentHead { get; init; } = "";

    /// <summary>The law's notes under the panel.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>What keeps it from print; empty for a panel that is ready.</summary>
    public string Draft { get; init; } = "";

    /// <summary>The language of the law's words, if it is not the page's.</summary>
    public string LanguageTag { get; init; } = "";

    /// <summary>What the pack says beside the panel: the list of ingredients; may be empty.</summary>
    public Html Beside { get; init; }

    /// <summary>The numbers and the language of the page.</summary>
    public Figures Figures { get; init; } = Figures.English;

    /// <summary>The panel, and under it every figure before rounding.</summary>
    public Html ToHtml() => Pack() + Behind();

    /// <summary>The panel as it would stand on the pack.</summary>
    public Html Pack()
    {
        var state = Draft.Length == 0 ? Html.Empty : Html.Of($"<span class=\"state\">{Draft}</span>\n");
        var language = LanguageTag.Length == 0 ? Html.Empty : Html.Of($" lang=\"{LanguageTag}\"");
        var content = Form == PanelForm.Box ? BoxOf() : TableOf();
        return Html.Of($"<div class=\"pack{(Form == PanelForm.Box ? " facts-box" : "")}{(Form == PanelForm.Box && Columns.Count > 1 ? " of-columns" : "")}{(Draft.Length == 0 ? "" : " draft")}\"{language}>{state}{content}{Beside}</div>\n");
    }

    /// <summary>Every figure before and after rounding, its interval, its coverage and, folded, how it was worked out.</summary>
    public Html Behind()
    {
        var words = Figures.Language.Words.Panel;
        var sure = Rows.Any(row => row.Interval.Length > 0);
        var table = new DataTable(words.EveryFigure,
            [Column.Words(words.Nutrient), Column.Numbers(words.Computed), .. sure ? (Column[])[Column.Numbers(words.LikelyBetween)] : [], Column.Words(Figures.Language.Words.KnownFor), Column.Numbers(words.Declared)],
            [.. Rows.Select(row => new Row([row.Term, row.Unrounded,
                .. sure ? (Cell[])[Num.Said(row.Interval)] : [],
                row.CoveredShare is { } share ? Marks.Known(share, Figures.Language) : "",
                ((Cell)Num.Said(Declared(row))) with { Figure = row.Figure }])
                { Kind = row.Indent > 0 ? RowKind.Part : RowKind.Line })]) { IsWide = true, LeastRem = 34 };
        return table.ToHtml() + Html.Join(Rows.Where(row => row.Working is not null).Select(row =>
            WorkingView.Of(row.Working!, Figures, words.HowItWas.Fill(("term", row.Term), ("amount", Unbroken(Declared(row)))).ToPlainText())));
    }

    private static string Declared(PanelRow row) => row.Amounts.Count == 0 ? "" : row.Amounts[0].Replace("\n", ", ", StringComparison.Ordinal);

    private Html TableOf()
    {
        var percent = PercentHead.Length > 0;
        var heads = Html.Join(Columns.Concat(percent ? [PercentHead] : []).Select(head => Html.Of($"<th scope=\"col\" class=\"num\">{Unbroken(head)}</th>")));
        var rows = Html.Join(Rows.Select(row => Html.Of(
            $"<tr{(row.Indent > 0 ? Html.Of($" class=\"in\"") : Html.Empty)}><th scope=\"row\">{row.Term}</th>{row.Amounts.Select(amount => Html.Of($"<td class=\"num\">{Lines(amount)}</td>"))}{(percent ? Html.Of($"<td class=\"num\">{row.Percent}</td>") : Html.Empty)}</tr>\n")));
        var notes = Html.Join(Notes.Select(note => Html.Of($"<p class=\"pack-note\">{Unbroken(note)}</p>\n")));
        // What is said of the serving stands between title and table; without it the title heads the column of terms.
        var servings = Servings.Count == 0 ? Html.Empty : Html.Of($"<p class=\"pack-head\"><strong>{Title}</strong></p>\n{Servings.Select(line => Html.Of($"<p class=\"serving\">{Unbroken(line)}</p>\n"))}");
        var corner = Servings.Count == 0 ? Html.Of($"<th scope=\"col\">{Title}</th>") : Html.Of($"<td></td>");
        return Html.Of($"{servings}<table{(Servings.Count == 0 ? Html.Empty : Html.Of($" aria-label=\"{Title}\""))}><thead><tr>{corner}{heads}</tr></thead>\n<tbody>{rows}</tbody></table>\n{notes}");
    }

    private Html BoxOf()
    {
        var servings = Html.Join(Servings.Select((line, at) => Html.Of($"<p class=\"{(at == Servings.Count - 1 ? "serving heavy" : "serving")}\">{line}</p>\n")));
        var isWide = Columns.Count > 1;
        var percents = isWide ? Html.Join(Columns.Select(_ => Html.Of($"<td></td><th scope=\"col\" class=\"num\">{PercentHead}</th>"))) : Html.Of($"<th scope=\"col\" class=\"num\">{PercentHead}</th>");
        var head = PercentHead.Length == 0 ? Html.Empty : Html.Of($"<tr class=\"percent-head\"><td></td>{percents}</tr>\n");
        var columns = isWide ? Html.Of($"<thead><tr><td></td>{Columns.Select(column => Html.Of($"<th scope=\"colgroup\" colspan=\"2\" class=\"num\">{Unbroken(column)}</th>"))}</tr></thead>\n") : Html.Empty;
        // The head of the per cents stands under the energy, above the first line that has one.
        var headAt = Rows.ToList().FindIndex(row => row.AfterRule || row.Percent.Length > 0);
        var rows = Html.Join(Rows.Select((row, at) => Html.Of($"{(at == headAt ? head : Html.Empty)}{(isWide ? WideRow(row) : BoxRow(row))}")));
        var notes = Html.Join(Notes.Select(note => Html.Of($"<p class=\"pack-note\">{Unbroken(note)}</p>\n")));
        return Html.Of($"<p class=\"pack-title\">{Title}</p>\n{servings}<table aria-label=\"{Title}\">{columns}<tbody>{rows}</tbody></table>\n{notes}");
    }

    // Of several columns each has its amount and its per cent (21 CFR 101.9(e)).
    private Html WideRow(PanelRow row)
    {
        var cells = Html.Join(row.Amounts.Select((amount, at) => IsEnergy(row)
            ? Html.Of($"<td class=\"num\" colspan=\"2\"><strong>{Lines(amount)}</strong></td>")
            : Html.Of($"<td class=\"num\">{Lines(amount)}</td><td class=\"num\"><strong>{row.Percents.ElementAtOrDefault(at) ?? ""}</strong></td>")));
        return Html.Of($"<tr class=\"{Kinds(row)}\"><th scope=\"row\">{TermOf(row)}</th>{cells}</tr>\n");
    }

    private string Kinds(PanelRow row) => string.Join(' ', ((string[])[row.Indent > 0 ? $"in in-{Math.Min(row.Indent, 3)}" : "", row.AfterRule ? "after-rule" : "", IsEnergy(row) ? "energy" : ""]).Where(kind => kind.Length > 0));

    private static Html TermOf(PanelRow row) => row.IsHeavy ? Html.Of($"<strong>{row.Term}</strong>") : Html.Text(row.Term);

    private Html BoxRow(PanelRow row)
    {
        var (kinds, term) = (Kinds(row), TermOf(row));
        var amount = row.Amounts.Count == 0 ? Html.Empty : Lines(row.Amounts[0]);
        // Energy stands large at the right edge; of every other line the amount stands beside its term and the per cent at the edge.
        return IsEnergy(row)
            ? Html.Of($"<tr class=\"{kinds}\"><th scope=\"row\">{term}</th><td class=\"num\"><strong>{amount}</strong></td></tr>\n")
            : Html.Of($"<tr class=\"{kinds}\"><th scope=\"row\">{term} <span class=\"amount\">{amount}</span></th><td class=\"num\">{(row.IsHeavy || row.Percent.Length > 0 ? Html.Of($"<strong>{row.Percent}</strong>") : Html.Empty)}</td></tr>\n");
    }

    // Only the first line of a box can be the energy: it is heavy, has no per cent and stands before the rule.
    private bool IsEnergy(PanelRow row) => Form == PanelForm.Box && ReferenceEquals(row, Rows[0]) && row is { IsHeavy: true, Percent: "", AfterRule: false };

    // A number does not part from its unit at a line's end, nor its thousands from each other.
    private static string Unbroken(string text) => NumberAndUnit().Replace(text, "$1\u00a0");

    private static Html Lines(string amount) => Html.Join(amount.Split('\n').Select((line, at) => at == 0 ? Html.Text(line) : Html.Of($"<br>{line}")));

    [GeneratedRegex(@"(\d) (?=[\p{L}\d%])")]
    private static partial Regex NumberAndUnit();
}
