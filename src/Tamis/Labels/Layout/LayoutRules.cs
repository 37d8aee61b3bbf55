using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>How a panel is drawn.</summary>
public enum PanelDrawing
{
    /// <summary>A table: a term a row, a column for each basis.</summary>
    Table,
    /// <summary>An upright box of lines with rules between.</summary>
    Box,
    /// <summary>The same box with its notes at the right of its lines.</summary>
    SideBox,
    /// <summary>The same box laid on its side: lines in two columns.</summary>
    WideBox,
    /// <summary>One figure after the other, as running text.</summary>
    Line,
}

/// <summary>A form of panel that a law allows.</summary>
/// <param name="Name">Its name in the rule file: <c>tabular</c>.</param>
/// <param name="Drawing">How it is drawn.</param>
/// <param name="Conditions">When it is allowed; always where there is none.</param>
/// <param name="Origin">The rule.</param>
public sealed record LayoutForm(string Name, PanelDrawing Drawing, IReadOnlyList<LayoutCondition> Conditions, RuleOrigin Origin)
{
    /// <summary>How many columns of amounts the law lets it carry; null where it sets no limit.</summary>
    public int? MostColumns { get; init; }

    /// <summary>How many columns of amounts a panel must have for it; 1 where the law sets no limit.</summary>
    public int LeastColumns { get; init; } = 1;

    /// <summary>Whether it may carry a panel.</summary>
    public bool Carries(PanelContent panel) => Carries(panel.ColumnHeads.Count);

    /// <summary>Whether it may carry so many columns.</summary>
    public bool Carries(int columns) => columns >= LeastColumns && (MostColumns is not { } most || columns <= most);
}

/// <summary>One row of a rule set's layout rules.</summary>
/// <param name="Rule">What it rules: <c>size</c>, <c>bar</c>.</param>
/// <param name="Form">The form of panel that it is for; empty for all.</param>
/// <param name="Part">The part of the label that it is for.</param>
/// <param name="Value">What it asks; may be empty.</param>
/// <param name="Number">The value as a number; null where it is none.</param>
/// <param name="Unit">The unit of the value, in words.</param>
/// <param name="Conditions">When it holds; always where there is none.</param>
/// <param name="Origin">Where it came from.</param>
public sealed record LayoutRule(string Rule, string Form, string Part, string Value, double? Number, string Unit, IReadOnlyList<LayoutCondition> Conditions, RuleOrigin Origin)
{
    /// <summary>The rule in words: <c>text: 1.2 mm x-height (largest surface &gt;= 80 cm2)</c>.</summary>
    public override string ToString() => $"{Part}: {Value} {Unit}{(Conditions is [] ? "" : $" ({string.Join("; ", Conditions)})")}";
}

/// <summary>How the label of a rule set is laid out: <c>layout.csv</c> of its folder.</summary>
public sealed class LayoutRules
{
    /// <summary>The rule that two parts stand on one face: its part and its value.</summary>
    internal const string Together = "together";

    /// <summary>The part that is left off where the law asks for no second column of a pack: that of the package, or of a unit.</summary>
    internal const string SecondColumn = "second column";

    /// <summary>The rule that a form is lawful only where the panel in another form, its value, is higher than the face.</summary>
    internal const string TooHigh = "too high";

    /// <summary>The colour of the print of a part, that of its ground, and how much of a tint the ground of the label may have and still serve.</summary>
    internal const string Ink = "ink", Ground = "ground", Tint = "tint";

    private const string File = "layout.csv";
    private const string Columns = "columns";
    private const string AtMost = "at most", AtLeast = "at least";

    private static readonly Dictionary<string, PanelDrawing> Drawings = new(Names.Comparer)
    {
        ["table"] = PanelDrawing.Table, ["box"] = PanelDrawing.Box, ["side box"] = PanelDrawing.SideBox, ["wide box"] = PanelDrawing.WideBox, ["line"] = PanelDrawing.Line,
    };

    // A rule and the units that its value may have; with none, the value is a word or empty.
    private static readonly Dictionary<string, string[]> Units = new(Names.Comparer)
    {
        ["form"] = [], ["exempt"] = [], ["weight"] = [], ["fill"] = [], ["section"] = [], ["remark"] = [], [Together] = [], [TooHigh] = [],
        [Ink] = [], [Ground] = [], [Tint] = ["%"],
        [Columns] = [AtMost, AtLeast],
        ["size"] = [TypeSizes.XHeight, TypeSizes.Figure, TypeSizes.Height, TypeSizes.Points],
        ["lead"] = [TypeSizes.OfTheSize, TypeSizes.MorePoints, TypeSizes.Millimetres],
        ["bar"] = [TypeSizes.Points, TypeSizes.Millimetres],
        ["pad"] = [TypeSizes.Points, TypeSizes.Millimetres],
        ["space"] = [TypeSizes.Millimetres, TypeSizes.OfTheSize],
        ["contrast"] = ["ratio"],
    };

    private LayoutRules(IReadOnlyList<LayoutRule> rows, IReadOnlyList<LayoutForm> forms) => (Rows, Forms) = (rows, forms);

    /// <summary>Every row.</summary>
    public IReadOnlyList<LayoutRule> Rows { get; }

    /// <summary>The forms of panel that the law knows, in the order in which they are to be tried.</summary>
    public IReadOnlyList<LayoutForm> Forms { get; }

    /// <summary>The layout rules of a rule set.</summary>
    /// <exception cref="TableException">The file is missing or a cell cannot be read; all problems at once.</exception>
    public static LayoutRules Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>The forms that the law allows for a pack, in the order in which they are to be tried.</summary>
    public IReadOnlyList<LayoutForm> FormsFor(PackShape pack, double? netGrams) => [.. Forms.Where(form => form.Conditions.All(condition => condition.Holds(pack, netGrams)))];

    /// <summary>The least type size of a part of the label.</summary>
    /// <param name="part">The part: <c>text</c>, <c>list</c>, <c>net quantity</c>, <c>nutrient</c>.</param>
    /// <param name="pack">The pack.</param>
    /// <param name="netGrams">What it holds, in grams; null where it is not known.</param>
    /// <param name="form">The form of panel; empty where it makes no difference.</param>
    /// <exception cref="InvalidOperationException">No size holds for this pack: the rule file has a gap.</exception>
    public RequiredSize Size(string part, PackShape pack, double? netGrams, string form = "") => new TypeSizes(this, pack, netGrams, form).Size(part);

    /// <summary>The rule that lets a part be left off a pack; null where none does.</summary>
    /// <param name="part">The part.</param>
    /// <param name="pack">The pack.</param>
    /// <param name="netGrams">What it holds, in grams; null where it is not known.</param>
    /// <param name="form">The form of panel; empty where it makes no difference.</param>
    public LayoutRule? Exemption(string part, PackShape pack, double? netGrams, string form = "") => For("exempt", part, form, pack, netGrams).FirstOrDefault();

    /// <summary>The rows of a kind that hold for a part of a form: those of the form, or else those for all.</summary>
    internal IEnumerable<LayoutRule> For(string rule, string part, string form, PackShape pack, double? netGrams)
    {
        var rows = Rows.Where(row => Is(row, rule) && Names.Same(row.Part, part) && Holds(row, pack, netGrams)).ToArray();
        var own = rows.Where(row => row.Form.Length > 0 && Names.Same(row.Form, form)).ToArray();
        return own.Length > 0 ? own : rows.Where(row => row.Form.Length == 0);
    }

    /// <summary>What the rule file says beside its rules of a form; empty for what it says of all.</summary>
    internal IEnumerable<LayoutRule> RemarksOn(string form, PackShape pack, double? netGrams) => Rows.Where(row => Is(row, "remark") && (row.Form.Length == 0 || Names.Same(row.Form, form)) && Holds(row, pack, netGrams));

    /// <summary>The form whose panel must be higher than the face before another one may stand on it; null where the other is lawful without that.</summary>
    internal LayoutForm? TooHighBefore(LayoutForm form, PackShape pack, double? netGrams) =>
        For(TooHigh, "panel", form.Name, pack, netGrams).FirstOrDefault(row => row.Form.Length > 0) is { } row ? Forms.First(each => Names.Same(each.Name, row.Value)) : null;

    private static bool Is(LayoutRule row, string rule) => Names.Same(row.Rule, rule);

    private static bool Holds(LayoutRule row, PackShape pack, double? netGrams) => row.Conditions.All(condition => condition.Holds(pack, netGrams));

    private static LayoutRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        List<LayoutRule> rows = [];
        List<LayoutForm> forms = [];
        foreach (var row in folder.Rows(File, ["rule", "form", "part", "value", "unit", "where"], problems))
        {
            var cells = row.Cells;
            var rule = cells.Required("rule");
            if (!Units.TryGetValue(rule, out var units))
            {
                if (rule.Length > 0) cells.Note("rule", $"one of: {string.Join(", ", Units.Keys)}");
                continue;
            }
            var unit = cells.Text("unit") ?? "";
            if (units.Length > 0 && !units.Contains(unit, StringComparer.Ordinal)) cells.Note("unit", $"one of: {string.Join(", ", units)}");
            var number = units.Length > 0 ? (double)row.RequiredDecimal("value") : (double?)null;
            if ((Names.Same(rule, Ink) || Names.Same(rule, Ground)) && LabelColour.Parse(cells.Text("value") ?? "") is null) cells.Note("value", "a colour, such as #1a2b3c");
            var conditions = LayoutCondition.ParseAll(cells.Text("where") ?? "");
            if (conditions is null) cells.Note("where", LayoutCondition.Expected);
            LayoutRule read = new(rule, cells.Text("form") ?? "", cells.Required("part"), cells.Text("value") ?? "", number, unit, conditions ?? [], row.Origin());
            rows.Add(read);
            if (Is(read, "form")) forms.Add(new(cells.Required("form"), row.Choice("value", Drawings), read.Conditions, read.Origin));
        }
        if (problems is [] && forms is []) problems.Add(new(File, 0, "rule", "", "a row 'form'"));
        if (problems is [] && !rows.Exists(row => Is(row, "size") && Names.Same(row.Part, TypeSizes.Text))) problems.Add(new(File, 0, "rule", "", "a row 'size' for the part 'text'"));
        foreach (var row in rows.Where(row => Is(row, TooHigh) && !forms.Exists(form => Names.Same(form.Name, row.Value))))
            problems.Add(new(File, 0, "value", row.Value, $"in a row '{TooHigh}', one of the forms: {string.Join(", ", forms.Select(form => form.Name))}"));
        LayoutForm[] limited = [.. forms.Select(form => form with { MostColumns = LimitOf(form, AtMost), LeastColumns = LimitOf(form, AtLeast) ?? 1 })];
        if (problems is [] && !Array.TrueForAll([1, 2, int.MaxValue], columns => Array.Exists(limited, form => form.Conditions is [] && !rows.Exists(row => Is(row, TooHigh) && Names.Same(row.Form, form.Name)) && form.Carries(columns)))) problems.Add(new(File, 0, "rule", "", "rows 'form' without a condition and without a limit of columns that not another such row goes beyond, for what no other form carries"));
        return new(rows, limited);

        int? LimitOf(LayoutForm form, string limit) => rows.FirstOrDefault(row => Is(row, Columns) && row.Unit == limit && Names.Same(row.Form, form.Name))?.Number is { } number ? (int)number : null;
    }
}
