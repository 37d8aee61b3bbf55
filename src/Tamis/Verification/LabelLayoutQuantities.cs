using System.Globalization;
using Tamis.Labels;

namespace Tamis.Verification;

/// <summary>What the layout of labels lends to the published checks.</summary>
/// <remarks><list type="bullet">
/// <item><c>label_print_size</c>: <c>rule_set</c>, <c>part</c> (<c>text</c>, <c>list</c>, <c>net quantity</c>, <c>nutrient</c>…), a pack as <c>box_mm</c> or <c>surface_cm2</c>, where they apply <c>net_g</c> and <c>form</c>; as the rule says it: <c>1.2 mm x-height</c>.</item>
/// <item><c>panel_forms</c>: <c>rule_set</c>, a pack, where it applies <c>columns</c>, how many columns of amounts the panel has; the forms that may be drawn, in order, parted by commas; one that is lawful only where another is higher than the face says so.</item>
/// <item><c>second_column_exempt</c>: <c>rule_set</c>, a pack, <c>form</c>; whether that form needs no column for the package or a unit, yes or no.</item>
/// <item><c>second_column</c>: <c>rule_set</c>, <c>of</c> (package, unit), <c>percent</c> of the reference amount; whether a column is asked for, yes or no.</item>
/// <item><c>pack_symbol</c>, <c>pack_symbol_place</c>: <c>rule_set</c>, <c>named</c> (figures parted by bars), a pack; the law's number of the symbol, and where it stands.</item>
/// <item><c>pack_symbol_space</c>: as <c>pack_symbol</c>; the format with its sides and the buffer around it in mm: <c>BH 36 x 18.9 buffer 1.5</c>.</item>
/// <item><c>part_border</c>: <c>rule_set</c>, a pack, <c>part</c>, where it applies <c>form</c>; border or none.</item>
/// <item><c>part_colours</c>: the same with <c>ink</c> and <c>ground</c> of the label; the colours that the part is printed in.</item>
/// <item><c>other_amount_column</c>: <c>rule_set</c>; what a column of another amount of the food shows.</item>
/// <item><c>pack_symbol_exempt</c>: <c>rule_set</c>, a pack, where they apply <c>asked</c> (exemptions parted by bars), <c>claimed</c> and <c>added</c> (yes); the article that exempts it, or none.</item>
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
        ["panel_forms"] = PanelForms,
        ["second_column_exempt"] = inputs => CheckValue.Of(LayoutRules.Of(CheckedRules.Of(inputs)).Exemption("second column", Pack(inputs), null, inputs.Text("form")) is null ? "no" : "yes"),
        ["second_column"] = inputs =>
        {
            var (words, percent) = (ServingWords.Of(CheckedRules.Of(inputs)), inputs.Number("percent"));
            return CheckValue.Of((Names.Same(inputs.Text("of"), "unit") ? words.UnitColumn(percent) : words.SecondColumn(percent)) is null ? "no" : "yes");
        },
        ["panel_exempt"] = inputs => CheckValue.Of(LayoutRules.Of(CheckedRules.Of(inputs)).Exemption("panel", Pack(inputs), null) is null ? "no" : "yes"),
        ["part_border"] = inputs => CheckValue.Of(Sizes(inputs).BarMillimetres(inputs.Text("part")) is null ? "none" : "border"),
        ["part_colours"] = inputs => CheckValue.Of(Sizes(inputs).ColoursOf(inputs.Text("part"), new(Colour(inputs, "ink"), Colour(inputs, "ground"))) is { } own ? $"{own.Ink} on {own.Ground}" : "those of the label"),
        ["other_amount_column"] = inputs => CheckValue.Of(ServingWords.Of(CheckedRules.Of(inputs)).IsOtherAmountBrief switch { null => "none", true => "energy and percentages", false => "all" }),
        ["pack_symbol_space"] = inputs => CheckValue.Of(Symbol(inputs)?.Space is { } space ? string.Create(CultureInfo.InvariantCulture, $"{space.Format} {space.WidthMillimetres:0.#} x {space.HeightMillimetres:0.#} buffer {space.BufferMillimetres:0.#}") : "none"),
        ["pack_symbol"] = inputs => CheckValue.Of(Symbol(inputs)?.Figure ?? "none"),
        ["pack_symbol_place"] = inputs => CheckValue.Of(Symbol(inputs)?.Place ?? "none"),
        ["pack_symbol_exempt"] = inputs => CheckValue.Of(FrontOfPackExemptions.Of(CheckedRules.Of(inputs)).For(Pack(inputs), inputs.OptionalText("asked")?.Split('|') ?? [],
            inputs.OptionalText("claimed") == "yes", inputs.OptionalText("added") == "yes")?.Origin.Locator ?? "none"),
        ["contrast_ratio"] = inputs => CheckValue.Of(new LabelColours(Colour(inputs, "ink"), Colour(inputs, "ground")).ContrastRatio),
        ["text_width"] = inputs => CheckValue.Of(Typeface.Kit.WidthMillimetres(inputs.Text("text"), 1000, Names.Same(inputs.Text("bold"), "yes"))),
    };

    private static TypeSizes Sizes(CheckInputs inputs) => new(LayoutRules.Of(CheckedRules.Of(inputs)), Pack(inputs), null, inputs.OptionalText("form") ?? "");

    private static PackSymbol? Symbol(CheckInputs inputs) => PackSymbol.Of(CheckedRules.Of(inputs), inputs.Text("named").Split('|', StringSplitOptions.TrimEntries), Pack(inputs));

    private static CheckValue PanelForms(CheckInputs inputs)
    {
        var (rules, pack) = (LayoutRules.Of(CheckedRules.Of(inputs)), Pack(inputs));
        return CheckValue.Of(string.Join(", ", rules.FormsFor(pack, null).Where(form => inputs.OptionalNumber("columns") is not { } columns || form.Carries((int)columns))
            .Select(form => rules.TooHighBefore(form, pack, null) is { } before ? $"{form.Name} where {before.Name} is too high" : form.Name)));
    }

    private static PackShape Pack(CheckInputs inputs) => inputs.OptionalText("box_mm") is not { } box ? PackShape.Surface(inputs.Number("surface_cm2"))
        : PackShape.Parse(box) ?? throw new FormatException($"'{box}' is no box: write length, width and height in mm, such as 185 x 75 x 65.");

    private static LabelColour Colour(CheckInputs inputs, string name) =>
        LabelColour.Parse(inputs.Text(name)) ?? throw new FormatException($"'{inputs.Text(name)}' is no colour: write one such as #1a2b3c.");
}
