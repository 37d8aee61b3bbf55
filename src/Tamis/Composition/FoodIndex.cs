using System.Globalization;
using F23.StringSimilarity;

namespace Tamis.Composition;

/// <summary>Finds the rows of foods by id and by name.</summary>
internal sealed class FoodIndex
{
    private const double FarthestWord = 0.3;

    private static readonly Damerau Edits = new();

    private readonly IReadOnlyList<Food> _foods;
    private readonly Dictionary<string, int> _rows = [];
    private readonly ILookup<string, Food> _sharing;

    public FoodIndex(IReadOnlyList<Food> foods)
    {
        _foods = foods;
        // Ids first: a name never hides one. A name that two foods share finds neither, since nobody can tell which is meant; a published name that two records share points to the first.
        _sharing = foods.GroupBy(food => Names.Key(food.Name)).Where(same => same.Count() > 1).SelectMany(same => same).ToLookup(food => Names.Key(food.Name));
        for (var row = 0; row < foods.Count; row++) _rows.TryAdd(IdKey(foods[row].Id), row);
        for (var row = 0; row < foods.Count; row++)
            if (!_sharing.Contains(Names.Key(foods[row].Name))) _rows.TryAdd(Names.Key(foods[row].Name), row);
        for (var row = 0; row < foods.Count; row++)
            if (foods[row].PublishedName.Length > 0 && !_sharing.Contains(Names.Key(foods[row].PublishedName))) _rows.TryAdd(Names.Key(foods[row].PublishedName), row);
    }

    /// <summary>The row of a name or id, or −1.</summary>
    public int Row(string nameOrId) => _rows.TryGetValue(IdKey(nameOrId), out var row) ? row : -1;

    /// <summary>The names of foods near a text, nearest first: word by word, since a cook types two of the five words of a name.</summary>
    public IReadOnlyList<string> Nearest(string text, int most)
    {
        string[] words = [.. Words(text)];
        if (words.Length == 0) return [];
        if (_sharing.Contains(Names.Key(text))) return [.. _sharing[Names.Key(text)].Select(food => food.Id).Take(most)];
        // A number without its dataset.
        if (words is [var alone] && alone.All(char.IsAsciiDigit))
            return [.. _foods.Where(food => IdKey(food.Id) is var key && key.LastIndexOf(' ') is > 0 and var blank && key.AsSpan(blank + 1).SequenceEqual(alone.AsSpan().TrimStart('0'))).Select(food => food.Id).Take(most)];
        if (IdKey(text) != Names.Key(text) || _foods.Any(food => Names.Key(food.Id).StartsWith(words[0] + " ", StringComparison.Ordinal)))
            return Names.Nearest(text, _foods.Select(food => food.Id), most);
        return [.. _foods
            .Select(food => (food.Name, Far: Far(words, food)))
            .Where(near => near.Far <= FarthestWord)
            .OrderBy(near => near.Far).ThenBy(near => near.Name.Length).ThenBy(near => near.Name, StringComparer.Ordinal)
            .Select(near => near.Name).Distinct().Take(most)];
    }

    // The name of this table before the publisher's, and the first word, which says what it is, before those that say of which kind.
    private static double Far(string[] words, Food food) => words.Average(word => Math.Min(
        Words(food.Name).Select((name, place) => Far(word, name) + place * 0.001).DefaultIfEmpty(1).Min(),
        Words(food.PublishedName).Select(name => Far(word, name) + 0.03).DefaultIfEmpty(1).Min()));

    // A word begun (choc) or inflected (egg, eggs) is nearly the word itself; a wrong letter counts by the length of the word, so that buttr is butter rather than butt.
    private static double Far(string word, string name) =>
        word == name ? 0
        : word.Length >= 3 && name.StartsWith(word, StringComparison.Ordinal) ? 0.05
        : name.Length >= 3 && word.StartsWith(name, StringComparison.Ordinal) && word[name.Length..] is "s" or "es" ? 0.05
        : Edits.Distance(word, name) / Math.Max(word.Length, name.Length);

    // A spreadsheet takes the zeros off 01145; with the dataset before it they are still one food.
    /// <summary>The form under which two spellings of a dataset and number are the same: leading zeros of the number do not count.</summary>
    internal static string IdKey(string text)
    {
        var key = Names.Key(text);
        var blank = key.LastIndexOf(' ');
        return blank > 0 && long.TryParse(key.AsSpan(blank + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? string.Create(CultureInfo.InvariantCulture, $"{key[..blank]} {number}")
            : key;
    }

    private static IEnumerable<string> Words(string text) =>
        Names.Key(text).Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
}
