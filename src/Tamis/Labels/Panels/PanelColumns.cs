namespace Tamis.Labels;

/// <summary>One figure of a nutrition panel with several columns.</summary>
/// <param name="Key">The figure.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Term">The words of the law.</param>
/// <param name="Cells">A line for each column, in their order.</param>
public sealed record ColumnedRow(string Key, string Unit, string Term, IReadOnlyList<PanelLine> Cells);

/// <summary>The nutrition declaration of a mixture on several bases side by side, as one panel: per serving beside per 100 g, per serving beside the whole package.</summary>
/// <remarks>The columns have the same lines: a line that one of them shows, all show. Each column is a <see cref="NutritionPanel"/> of its own and rounds by itself,
/// as no law derives one column from the rounded figures of another.</remarks>
public sealed class PanelColumns
{
    private PanelColumns(IReadOnlyList<NutritionPanel> columns) => Columns = columns;

    /// <summary>The columns, in order; at least one.</summary>
    public IReadOnlyList<NutritionPanel> Columns { get; }

    /// <summary>The rows in lawful order.</summary>
    public IReadOnlyList<ColumnedRow> Rows { get; private init; } = [];

    /// <summary>Whether any column may not yet go on a pack, or the law asks for a column that is not there.</summary>
    public bool IsDraft => DraftReasons.Count > 0;

    /// <summary>Why it may not yet go on a pack; none where it may.</summary>
    public IReadOnlyList<string> DraftReasons => [.. Columns.SelectMany(ReasonsOf).Distinct(), .. MissingColumns];

    /// <summary>The panel of few figures that stands in place of the full one; null where all figures stand.</summary>
    public LimitedPanel? Limit { get; private init; }

    /// <summary>The same with few figures printed: one that is not printed need not be known.</summary>
    public PanelColumns Limited(LimitedPanel limit) => new(Columns) { Rows = Rows, Limit = limit };

    /// <summary>Whether a column may not yet go on a pack.</summary>
    public bool IsDraftIn(NutritionPanel column) => ReasonsOf(column).Any();

    /// <summary>Mandatory figures of the first column that are printed and not known well enough.</summary>
    public IReadOnlyList<MissingFigure> Missing => [.. Columns[0].Missing.Where(missing => IsPrinted(missing.Line.Key))];

    private IEnumerable<string> ReasonsOf(NutritionPanel column) => Limit is null ? column.DraftReasons : column.DraftReasonsWhere(IsPrinted);

    private bool IsPrinted(string key) => Limit?.Has(key) != false;

    /// <summary>The columns that the law asks for and that are not there, a sentence each.</summary>
    public IReadOnlyList<string> MissingColumns => [.. Columns[0].Rules.Columns.Where(asked => !Columns.Any(column => column.IsOf(asked)))
        .Select(asked => asked == PanelColumn.Serving ? "The law asks for a column per serving: state the serving (portion_g)." : "The law asks for a column per 100 g, or per 100 ml of what is sold by volume.")];

    /// <summary>What a reader should know beside the figures: what was taken as none or as published.</summary>
    public IReadOnlyList<string> Remarks => [.. PanelAssumptions.Of(Columns[0])];

    /// <summary>Draws up a panel of several columns.</summary>
    /// <param name="mixture">What it speaks of.</param>
    /// <param name="rules">The rule set.</param>
    /// <param name="bases">What each column speaks of, in order; at least one.</param>
    /// <param name="asOf">The day for which it is drawn up.</param>
    /// <param name="asked">Voluntary lines that are wished for.</param>
    /// <exception cref="ArgumentException">No basis is given, or a serving is larger than all that is made.</exception>
    public static PanelColumns Of(Losses.Mixture mixture, RuleSet rules, IReadOnlyList<PanelBasis> bases, DateOnly? asOf = null, IReadOnlyCollection<string>? asked = null)
    {
        if (bases.Count == 0) throw new ArgumentException("A panel needs a column: per 100 g, or per serving.", nameof(bases));
        NutritionPanel[] columns = [.. bases.Select(basis => NutritionPanel.Of(mixture, rules, basis, asOf, asked))];
        // A line that one column declares as zero stands there too where another declares some.
        HashSet<string> shown = new(columns.SelectMany(column => column.Lines).Where(line => line.Figure.Shown == LineShown.IfPresent).Select(line => line.Key), Names.Comparer);
        if (Array.Exists(columns, column => !shown.IsSubsetOf(column.Lines.Select(line => line.Key))))
            columns = [.. bases.Select(basis => NutritionPanel.Of(mixture, rules, basis, asOf, [.. asked ?? [], .. shown]))];
        return new(columns)
        {
            Rows = [.. columns[0].Lines.Select((line, index) => new ColumnedRow(line.Key, line.Unit, line.Term, [.. columns.Select(column => column.Lines[index])]))],
        };
    }
}
