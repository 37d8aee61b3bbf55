using Tamis.Labels;

namespace Tamis.Verification;

/// <summary>What the layout of labels lends to the published checks.</summary>
/// <remarks><list type="bullet">
/// <item><c>label_print_size</c>: <c>rule_set</c>, <c>part</c> (<c>text</c>, <c>list</c>, <c>net quantity</c>, <c>nutrient</c>…), a pack as <c>box_mm</c> or <c>surface_cm2</c>, where they apply <c>net_g</c> and <c>form</c>; as the rule says it: <c>1.2 mm x-height</c>.</item>
/// <item><c>panel_forms</c>: <c>rule_set</c>, a pack, where it applies <c>columns</c>, how many columns of amounts the panel has; the forms that may be drawn, in order, parted by commas.</item>
/// <item><c>second_column_exempt</c>: <c>rule_set</c>, a pack, <c>form</c>; whether that form needs no column for the package or a unit, yes or no.</item>
/// <item><c>second_column</c>: <c>rule_set</c>, <c>of</c> (package, unit), <c>percent</c> of the reference amount; whether a column is asked for, yes or no.</item>
/// <item><c>pack_symbol</c>, <c>pack_symbol_place</c>: <c>rule_set</c>, <c>named</c> (figures parted by bars), a pack; the law's number of the symbol, and where it stands.</item>
/// <item><c>panel_exempt</c>: <c>rule_set</c>, a pack; whether the panel may be left off, yes or no.</item>
/// <item><c>contrast_ratio</c>: <c>ink</c>, <c>ground</c>, as on the web; 1 to 21.</item>
/// <item><c>text_width</c>: <c>text</c>, <c>bold</c> (yes or no); in thousandths of the type size.</item>
/// </list></remarks>
public static class LabelLayoutQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["label_print_size"] = inputs =>
        {
            var rule = LayoutRules.Of(CheckedRules.Of(inputs)).Size(inputs.Text("part"), Pack(inputs), inputs.OptionalNumber("net_g"), inputs.OptionalText("form") ?? "").Rule;
            return CheckValue.Of($"{rule.Value} {rule.Unit}");
        },
        ["panel_forms"] = inputs => CheckValue.Of(string.Join(", ", LayoutRules.Of(CheckedRules.Of(inputs)).FormsFor(Pack(inputs), null).Where(form => !(form.MostColumns < inputs.OptionalNumber("columns"))).Select(form => form.Name))),
        ["second_column_exempt"] = inputs => CheckValue.Of(LayoutRules.Of(CheckedRules.Of(inputs)).Exemption("second column", Pack(inputs), null, inputs.Text("form")) is null ? "no" : "yes"),
        ["second_column"] = inputs =>
        {
            var (words, percent) = (ServingWords.Of(CheckedRules.Of(inputs)), inputs.Number("percent"));
            return CheckValue.Of((Names.Same(inputs.Text("of"), "unit") ? words.UnitColumn(percent) : words.SecondColumn(percent)) is null ? "no" : "yes");
        },
        ["panel_exempt"] = inputs => CheckValue.Of(LayoutRules.Of(CheckedRules.Of(inputs)).Exemption("panel", Pack(inputs), null) is null ? "no" : "yes"),
        ["pack_symbol"] = inputs => CheckValue.Of(Symbol(inputs)?.Figure ?? "none"),
        ["pack_symbol_place"] = inputs => CheckValue.Of(Symbol(inputs)?.Place ?? "none"),
        ["contrast_ratio"] = inputs => CheckValue.Of(new LabelColours(Colour(inputs, "ink"), Colour(inputs, "ground")).ContrastRatio),
        ["text_width"] = inputs => CheckValue.Of(Typeface.Kit.WidthMillimetres(inputs.Text("text"), 1000, Names.Same(inputs.Text("bold"), "yes"))),
    };

    private static PackSymbol? Symbol(CheckInputs inputs) => PackSymbol.Of(CheckedRules.Of(inputs), inputs.Text("named").Split('|', StringSplitOptions.TrimEntries), Pack(inputs));

    private static PackShape Pack(CheckInputs inputs) => inputs.OptionalText("box_mm") is not { } box ? PackShape.Surface(inputs.Number("surface_cm2"))
        : PackShape.Parse(box) ?? throw new FormatException($"'{box}' is no box: write length, width and height in mm, such as 185 x 75 x 65.");

    private static LabelColour Colour(CheckInputs inputs, string name) =>
        LabelColour.Parse(inputs.Text(name)) ?? throw new FormatException($"'{inputs.Text(name)}' is no colour: write one such as #1a2b3c.");
}
