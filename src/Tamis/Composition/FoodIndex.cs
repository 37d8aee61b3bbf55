using System.Globalization;

namespace Tamis.Composition;

/// <summary>Finds the rows of foods by id and by name.</summary>
internal sealed class FoodIndex
{
    private readonly IReadOnlyList<Food> _foods;
    private readonly Dictionary<string, int> _rows = [];

    public FoodIndex(IReadOnlyList<Food> foods)
    {
        _foods = foods;
        // Ids first: a name never hides one. A published name that two records share points to the first.
        for (var row = 0; row < foods.Count; row++) _rows.TryAdd(IdKey(foods[row].Id), row);
        for (var row = 0; row < foods.Count; row++) _rows.TryAdd(Names.Key(foods[row].Name), row);
        for (var row = 0; row < foods.Count; row++)
            if (foods[row].PublishedName.Length > 0) _rows.TryAdd(Names.Key(foods[row].PublishedName), row);
    }

    /// <summary>The row of a name or id, or −1.</summary>
    public int Row(string nameOrId) => _rows.TryGetValue(IdKey(nameOrId), out var row) ? row : -1;

    public IReadOnlyList<string> Nearest(string text, int most)
    {
        string[] words = [.. Words(text)];
        var holding = words.Length == 0 ? [] : _foods
            .Where(food => words.All(word => Holds(food, word)))
            .OrderBy(food => food.Name.Length).Select(food => food.Name);
        return [.. holding.Concat(Names.Nearest(text, _foods.Select(food => food.Name).Concat(_foods.Select(food => food.Id)), most)).Distinct().Take(most)];
    }

    // A spreadsheet takes the zeros off 01145; with the dataset before it they are still one food.
    private static string IdKey(string text)
    {
        var key = Names.Key(text);
        var blank = key.LastIndexOf(' ');
        return blank > 0 && long.TryParse(key.AsSpan(blank + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? string.Create(CultureInfo.InvariantCulture, $"{key[..blank]} {number}")
            : key;
    }

    private static bool Holds(Food food, string word) =>
        Names.Key(food.Name).Contains(word, StringComparison.Ordinal) || Names.Key(food.PublishedName).Contains(word, StringComparison.Ordinal);

    private static IEnumerable<string> Words(string text) =>
        Names.Key(text).Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
}
