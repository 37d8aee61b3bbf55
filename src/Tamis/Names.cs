using F23.StringSimilarity;

namespace Tamis;

/// <summary>Names as a kitchen writes them: case does not count, nor runs of blanks, nor a blank against an underscore.</summary>
public static class Names
{
    /// <summary>Compares names as a kitchen does.</summary>
    public static IEqualityComparer<string> Comparer { get; } = new KitchenComparer();

    /// <summary>The form under which two spellings of a name are the same.</summary>
    public static string Key(string name) =>
        string.Join(' ', name.Split([' ', '_', '\t', '\u00a0', '\u202f', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();

    /// <summary>Whether two spellings are one name.</summary>
    public static bool Same(string? left, string? right) =>
        left is null || right is null ? left is null && right is null : Comparer.Equals(left, right);

    /// <summary>Whether a text holds a word by itself, in the singular or with an s.</summary>
    public static bool Holds(string text, string word) => HoldsWhere(text, word, rest => IsEnd(rest) || rest[0] == 's');

    /// <summary>Whether a text holds a word by itself, spelt as it is.</summary>
    public static bool HoldsWhole(string text, string word) => HoldsWhere(text, word, IsEnd);

    /// <summary>Whether a text holds an English word by itself, in the singular or the plural, whichever of the two is asked for: <c>raspberry</c> is in <c>raspberries</c>, and <c>hazelnuts</c> in <c>ground hazelnut</c>.</summary>
    public static bool HoldsInEitherNumber(string text, string word) => NumbersOf(Key(word)).Any(form => HoldsWhole(text, form));

    private static IEnumerable<string> NumbersOf(string word)
    {
        yield return word;
        yield return word + "s";
        yield return word + "es";
        if (word is [.., 'y']) yield return word[..^1] + "ies";
        if (word is [_, _, .., 'i', 'e', 's']) yield return word[..^3] + "y";
        if (word is [_, _, .., 'e', 's']) yield return word[..^2];
        if (word is [_, _, .., 's']) yield return word[..^1];
    }

    /// <summary>Whether a word of a text begins with this one: <c>freeze</c> is in <c>freezer</c>, and <c>ice</c> is not in <c>slice</c>.</summary>
    public static bool HoldsBeginning(string text, string word) => HoldsWhere(text, word, _ => true);

    /// <summary>Whether a word of a text ends with this one, for languages that write several words as one: <c>schokolade</c> is in <c>Milchschokolade</c>.</summary>
    public static bool HoldsEnding(string text, string word)
    {
        var (inside, wanted) = (Key(text), Key(word));
        for (var at = inside.IndexOf(wanted, StringComparison.Ordinal); at >= 0; at = inside.IndexOf(wanted, at + 1, StringComparison.Ordinal))
            if (IsEnd(inside.AsSpan(at + wanted.Length))) return true;
        return false;
    }

    private static bool IsEnd(ReadOnlySpan<char> rest) => rest.IsEmpty || !char.IsLetter(rest[0]);

    private static bool HoldsWhere(string text, string word, Func<ReadOnlySpan<char>, bool> endsWell)
    {
        var (inside, wanted) = (Key(text), Key(word));
        for (var at = inside.IndexOf(wanted, StringComparison.Ordinal); at >= 0; at = inside.IndexOf(wanted, at + 1, StringComparison.Ordinal))
            if ((at == 0 || !char.IsLetter(inside[at - 1])) && endsWell(inside.AsSpan(at + wanted.Length))) return true;
        return false;
    }

    /// <summary>A text with its first letter as a capital.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>The known names nearest to a mistyped one, nearest first.</summary>
    /// <remarks>Nearness counts single edits and swaps of neighbours (Damerau 1964), against the longer name; a name that holds the other whole counts as near.</remarks>
    public static IReadOnlyList<string> Nearest(string name, IEnumerable<string> known, int most = 3)
    {
        var wanted = Key(name);
        var distance = new Damerau();
        return [.. known.Distinct()
            .Select(candidate => (candidate, key: Key(candidate)))
            .Select(pair => (pair.candidate, far: Distance(wanted, pair.key)))
            .Where(pair => pair.far <= 0.45)
            .OrderBy(pair => pair.far).ThenBy(pair => pair.candidate, StringComparer.Ordinal)
            .Take(most).Select(pair => pair.candidate)];

        double Distance(string left, string right)
        {
            if (left.Length == 0 || right.Length == 0) return 1;
            var edits = distance.Distance(left, right) / Math.Max(left.Length, right.Length);
            var holds = left.Length >= 3 && right.Contains(left, StringComparison.Ordinal) || right.Length >= 3 && left.Contains(right, StringComparison.Ordinal);
            return holds ? Math.Min(edits, 0.3 + edits / 10) : edits;
        }
    }

    // Every cell of every sheet is looked up by its column's name, so names are compared letter by letter with no text made in between.
    private sealed class KitchenComparer : IEqualityComparer<string>
    {
        public bool Equals(string? left, string? right)
        {
            if (left is null || right is null || ReferenceEquals(left, right)) return ReferenceEquals(left, right);
            KeyLetters a = new(left), b = new(right);
            while (true)
            {
                var hasLeft = a.MoveNext();
                if (hasLeft != b.MoveNext()) return false;
                if (!hasLeft) return true;
                if (a.Current != b.Current) return false;
            }
        }

        public int GetHashCode(string name)
        {
            var hash = 17;
            KeyLetters letters = new(name);
            while (letters.MoveNext()) hash = unchecked(hash * 31 + letters.Current);
            return hash;
        }
    }

    /// <summary>The letters of a name's key, one by one.</summary>
    private ref struct KeyLetters(ReadOnlySpan<char> name)
    {
        private readonly ReadOnlySpan<char> _name = name;
        private int _next = 0;
        private bool _isInside = false;

        public char Current { get; private set; } = default;

        public bool MoveNext()
        {
            var start = _next;
            while (_next < _name.Length && IsBlank(_name[_next])) _next++;
            if (_next == _name.Length) return false;
            // A run of blanks between two words is one blank; at the ends it is nothing.
            if (_isInside && _next > start)
            {
                Current = ' ';
                _isInside = false;
                return true;
            }
            _isInside = true;
            Current = char.ToLowerInvariant(_name[_next++]);
            return true;
        }

        private static bool IsBlank(char letter) => letter is ' ' or '_' or '\t' or '\u00a0' or '\u202f' or '\r' or '\n';
    }
}
