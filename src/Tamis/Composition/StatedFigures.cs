using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>A column of a supplier's document and the nutrient that it states.</summary>
/// <param name="Column">The column's name, <c>salt_g</c>.</param>
/// <param name="Tag">The nutrient's tagname, <c>NA</c>.</param>
/// <param name="Factor">The nutrient's unit to one of the column's.</param>
/// <param name="NitrogenFactor">Grams of protein to a gram of nitrogen behind a stated protein; null for other columns.</param>
public sealed record StatedColumn(string Column, string Tag, double Factor, double? NitrogenFactor);

/// <summary>Builds what is in an ingredient from the figures of a document (a supplier's sheet, a pack label, an own estimate) over those of its food.</summary>
public sealed class StatedFigures
{
    // What is stated twice may differ by a factor that is rounded in law, such as that of salt to sodium.
    private const double Leeway = 0.05;

    // The words under "document" that say that nobody but the kitchen stands behind the figures.
    internal const string OwnEstimate = "own estimate";

    private readonly NutrientList _nutrients;
    private readonly IReadOnlyList<DeclarationTolerance> _tolerances;

    /// <summary>Makes the reader of documents; of several columns for one nutrient the first filled one counts, and the others may not contradict it.</summary>
    /// <param name="nutrients">The nutrients of the table.</param>
    /// <param name="columns">The columns that state one.</param>
    /// <param name="tolerances">How far a lawful figure may lie from what is in the pack, by the name under <c>tolerance</c> of a document; none by default.</param>
    public StatedFigures(NutrientList nutrients, IReadOnlyList<StatedColumn> columns, IReadOnlyList<DeclarationTolerance>? tolerances = null) =>
        (_nutrients, Columns, _tolerances) = (nutrients, columns, tolerances ?? []);

    /// <summary>The columns that state a nutrient.</summary>
    public IReadOnlyList<StatedColumn> Columns { get; }

    /// <summary>Reads <c>specification-columns.csv</c> from the folder of a composition table.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static StatedFigures Load(string folder, NutrientList nutrients)
    {
        List<CellProblem> problems = [];
        List<StatedColumn> columns = [];
        var sheet = SheetFile.Read(Path.Combine(folder, "specification-columns.csv"));
        var tags = nutrients.All.ToDictionary(nutrient => nutrient.Tag, StringComparer.OrdinalIgnoreCase);
        foreach (var row in sheet.Require(["column", "tag", "factor"], problems) ? sheet.Rows.Select(row => new RowReader(row, problems)) : [])
        {
            row.Required("tag");
            columns.Add(new(row.Required("column"), row.Named("tag", tags)?.Tag ?? "", row.RequiredNumber("factor", double.Epsilon), row.Number("nitrogen_factor", double.Epsilon)));
        }
        return problems is [] ? new(nutrients, columns, DeclarationTolerance.ReadAll(folder)) : throw new TableException(problems);
    }

    /// <summary>Whether a document states any figure at all.</summary>
    public bool IsStatedIn(SheetRow row) => Columns.Any(column => row[column.Column].Length > 0);

    /// <summary>What is in 100 g of an ingredient: the filled cells of the document, and for its blanks what the food has.</summary>
    /// <param name="food">The food behind the ingredient; null where it has none, and then a blank is unknown.</param>
    /// <param name="name">The ingredient's name.</param>
    /// <param name="row">The document's row; a cell that cannot be read is noted there and counts as blank.</param>
    /// <remarks>A declared figure is an interval: what it was before it was rounded to the digits written, and where the document's cell <c>tolerance</c>
    /// names rules (<c>eu</c>), as far as these let it lie from what is in the pack. Own estimates pretend no interval.
    /// Carbohydrate with and without fibre follow from each other where fibre is known, and are unknown where it is not:
    /// a figure of the food never stands beside a stated one that contradicts it.</remarks>
    public NutrientProfile Over(NutrientProfile? food, string name, RowReader row)
    {
        var contents = new Content[_nutrients.Count];
        for (var column = 0; column < contents.Length; column++) contents[column] = food?[_nutrients.All[column].Tag] ?? Content.Unknown;
        var stated = new bool[contents.Length];
        var first = new (StatedColumn Column, StatedNumber Figure)?[contents.Length];
        var nitrogenFactor = food?.NitrogenFactor;
        var tolerance = row.Text("tolerance");
        if (tolerance is not null && _tolerances.All(each => !Names.Same(each.Name, tolerance)))
            row.Note("tolerance", $"a blank, or one of: {string.Join(", ", _tolerances.Select(each => each.Name).Distinct())}");
        foreach (var column in Columns)
        {
            var at = _nutrients.IndexOf(column.Tag);
            if (row.Stated(column.Column) is not { } figure) continue;
            if (first[at] is { } before)
            {
                if (Contradict(before, (column, figure))) row.Note(column.Column, FormattableString.Invariant($"about {before.Figure.Value * before.Column.Factor / column.Factor:0.###}, since {before.Column.Column} says {row.Row[before.Column.Column]}: mend one of them, or take one out"));
                continue;
            }
            first[at] = (column, figure);
            if (figure.Value * column.Factor > _nutrients.All[at].MostPer100Grams) row.Note(column.Column, "at most 100 g in 100 g");
            (contents[at], stated[at]) = (Stated(figure, column, row.Row), true);
            nitrogenFactor = column.NitrogenFactor ?? nitrogenFactor;
        }
        foreach (var nutrient in _nutrients.All) if (nutrient.Derived is not null) Follow(nutrient, contents, stated);
        return new(name, _nutrients, contents, nitrogenFactor);
    }

    // Proteins by other factors of nitrogen, bounds and traces say other things.
    private static bool Contradict((StatedColumn Column, StatedNumber Figure) one, (StatedColumn Column, StatedNumber Figure) other)
    {
        if (one.Column.NitrogenFactor != other.Column.NitrogenFactor || one.Figure.Kind != StatedKind.Number || other.Figure.Kind != StatedKind.Number) return false;
        var (first, second) = (one.Figure.Value * one.Column.Factor, other.Figure.Value * other.Column.Factor);
        var rounding = (one.Figure.Step * one.Column.Factor + other.Figure.Step * other.Column.Factor) / 2;
        return Math.Abs(first - second) > rounding + Leeway * Math.Max(first, second);
    }

    private void Follow(Nutrient nutrient, Content[] contents, bool[] stated)
    {
        var derivation = nutrient.Derived!;
        var at = _nutrients.IndexOf(nutrient.Tag);
        var whole = _nutrients.IndexOf(derivation.Terms[0].Tag);
        if (!stated[at] && derivation.Terms.Any(term => stated[_nutrients.IndexOf(term.Tag)]))
            contents[at] = derivation.Of(tag => contents[_nutrients.IndexOf(tag)], _nutrients);
        else if (stated[at] && !stated[whole])
            contents[whole] = derivation.ForFirst(nutrient.Tag).Of(tag => contents[_nutrients.IndexOf(tag)], _nutrients);
    }

    private Content Stated(StatedNumber figure, StatedColumn column, SheetRow row)
    {
        var isEstimate = row["document"].Contains(OwnEstimate, StringComparison.OrdinalIgnoreCase);
        var document = string.Join(", ", new[] { row["document"], row["supplier"], row["date"] }.Where(text => text.Length > 0));
        Source source = new(document.Length > 0 ? document : row.Sheet.File, isEstimate ? Evidence.Estimate : Evidence.Supplier, $"{row.Sheet.File} row {row.Number}, column {column.Column}");
        if (figure.Kind == StatedKind.Trace) return new(ContentState.Trace, 0, null, source);
        if (figure.Kind == StatedKind.Below) return Content.Below(figure.Value * column.Factor, source);
        var range = isEstimate ? null : Declared(figure, column, row["tolerance"]);
        return new(figure.Value == 0 ? ContentState.Zero : isEstimate ? ContentState.Estimated : ContentState.Measured, figure.Value * column.Factor, range, source);
    }

    // The wider of the two on each side: a tolerance is counted from the declared figure and has the rounding in it.
    private Interval? Declared(StatedNumber figure, StatedColumn column, string tolerance)
    {
        var (minus, plus) = _tolerances.FirstOrDefault(each => Names.Same(each.Name, tolerance) && Names.Same(each.Column, column.Column) && each.Takes(figure.Value))?.Of(figure.Value) ?? (0, 0);
        var (low, high) = (Math.Max(0, figure.Value - Math.Max(minus, figure.Step / 2)), figure.Value + Math.Max(plus, figure.Step / 2));
        return high > low ? Interval.Between(low, high) * column.Factor : null;
    }
}
