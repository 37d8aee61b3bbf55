using Tamis.Desserts;

namespace Tamis.Tests.Labels.Layout;

/// <summary>A wafer of whole wheat flour and salt: all their figures are known, and so its panel is no draft.</summary>
internal static class WaferDessert
{
    public static Dessert In(string folder, IEnumerable<string> rows)
    {
        Directory.CreateDirectory(Path.Combine(folder, "store"));
        File.WriteAllText(Path.Combine(folder, "store", "ingredients.csv"), "ingredient,food,allergens,label_name\nflour,SR28 20080,wheat,whole wheat flour\nsalt,SR28 02047,none,salt\n");
        File.WriteAllText(Path.Combine(folder, "formula.csv"), "component,line,T1\nwafer,flour,97\nwafer,salt,3\n");
        File.WriteAllLines(Path.Combine(folder, "dessert.csv"),
            ["key,value", "name,Flour wafer", "portion_word,wafer", "serving_category,cookies", "market,US; US; en", "form_of_sale,prepacked", "business,\"A bakery, Town\"", "lot,L 1", "box_mm,150 x 130 x 60", "date_kind,best before", "keep,dry", .. rows]);
        return Dessert.Open(folder);
    }
}
