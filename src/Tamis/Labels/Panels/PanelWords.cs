using System.Globalization;

namespace Tamis.Labels;

/// <summary>The words of a nutrition panel about itself.</summary>
internal static class PanelWords
{
    private const int MostNamed = 4;

    public static string Coverage(Amount amount) => amount switch
    {
        { IsWhole: true } => "known for all of the mass",
        { CoveredMassGrams: 0 } => "not known for any of the mass",
        // 99.97 % must not read as 100 %.
        _ => $"known for {Percent(Math.Floor(amount.CoveredShare * 1000) / 10)} of the mass",
    };

    public static string NotKnownOf(IReadOnlyList<UnknownShare> ingredients)
    {
        var named = string.Join(", ", ingredients.Take(MostNamed).Select(one => $"{one.Ingredient} ({Share(one.SharePercent)})"));
        var more = ingredients.Skip(MostNamed).ToArray();
        return $"not known of {named}{(more is [] ? "" : $" and {more.Length} more ({Share(more.Sum(one => one.SharePercent))})")}";
    }

    public static string List(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "",
        1 => words[0],
        <= MostNamed + 1 => $"{string.Join(", ", words.Take(words.Count - 1))} and {words[^1]}",
        _ => $"{string.Join(", ", words.Take(MostNamed))} and {words.Count - MostNamed} more",
    };

    public static string Share(double percent) => percent < 0.1 ? "less than 0.1\u202f%" : Percent(percent);

    private static string Percent(double percent) => percent.ToString("0.#", CultureInfo.InvariantCulture) + "\u202f%";
}
