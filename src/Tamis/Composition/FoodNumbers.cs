using System.Globalization;
using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Numbers of foods as a spreadsheet may have written them.</summary>
internal static partial class FoodNumbers
{
    /// <summary>The numbers of foods near a text, nearest first; of a food's name, its number; of a number that a spreadsheet computed (<c>3E2</c> became <c>3.00E+02</c>), what it was.</summary>
    public static IReadOnlyList<string> Near(string text, IReadOnlyList<Food> foods)
    {
        var number = Computed(text);
        string[] near = [.. foods.Where(food => Names.Same(food.Name, text) || Names.Same(food.PublishedName, text) || !double.IsNaN(number) && Computed(food.Id) == number).Select(food => food.Id)
            .Concat(Names.Nearest(text, foods.Select(food => food.Id))).Distinct().Take(3)];
        return near is [] && Names.Nearest(text, foods.Select(food => food.Name), 1) is [var name] ? [.. foods.Where(food => food.Name == name).Select(food => food.Id)] : near;
    }

    /// <summary>What to do where a spreadsheet made a number or a date of what was typed; empty where it did not.</summary>
    public static string Mangled(string text) =>
        DateText.LooksLikeDate(text) ? "; the spreadsheet made a date of it: format the column as text and write it again"
        : Exponent().IsMatch(text) ? "; the spreadsheet made a number of it: format the column as text and write it again"
        : "";

    // The last word of a number: LAB 3E2 counts as 300.
    private static double Computed(string text) =>
        text[(text.LastIndexOf(' ') + 1)..].Replace(',', '.') is var word && word.Length > 0 && char.IsAsciiDigit(word[0])
            && double.TryParse(word, NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;

    [GeneratedRegex(@"(^| )\d([.,]\d+)?E\+?\d+$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Exponent();
}
