using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The columns that the kit knows in each sheet of a fixed layout; what stands beside them is kept and named.</summary>
public static class SheetColumns
{
    private static readonly Dictionary<string, string> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        ["ingredients.csv"] = "ingredient food piece piece_g density_g_ml edible_percent label_name allergens may_contain notes function e_number bloom cocoa_percent cocoa_butter_percent milk_fat_percent dextrose_equivalent solids_percent ph ingredient_list additives",
        ["prices.csv"] = "ingredient supplier pack pack_g price currency date",
        ["moulds.csv"] = "mould shape diameter_mm top_diameter_mm length_mm width_mm height_mm places count measured_ml notes",
        ["equipment.csv"] = "name kind count capacity unit smallest min_c max_c from to notes",
        ["trials.csv"] = "trial parent made_on question outcome photo notes",
        ["steps.csv"] = "component step trial do temperature_c minutes hands_minutes equipment after caution",
        ["components.csv"] = "component family use base on_label raw_density_g_ml density_g_ml hold_hours hold_c trial notes",
        ["montage.csv"] = "order component as inside mould diameter_mm thickness_mm above_mm count raw_g mass_g trial notes",
        ["measured.csv"] = "trial make component what value unit at notes",
        ["tastings.csv"] = "tasting date kind trials control portion_g served_c minutes_out assessors trained servings_each expected_order design seed notes",
        ["attributes.csv"] = "attribute kind low high low_word high_word question words scale",
        ["servings.csv"] = "tasting assessor position code trial make",
        ["dessert.csv"] = "key value trial notes",
    };

    /// <summary>The columns of a sheet that the kit does not know, in the order of the file; none where the sheet's columns are the kitchen's own (trials, attributes, figures, languages).</summary>
    public static IReadOnlyList<string> Besides(Sheet sheet) => Known.TryGetValue(sheet.File, out var known) ? sheet.Besides(known.Split(' ')) : [];
}
