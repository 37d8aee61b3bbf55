using System.Globalization;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>The settings of a rule set: <c>rule-set.csv</c>, one a row.</summary>
internal sealed class RuleSettings
{
    private readonly Dictionary<string, RuleRow> _rows = new(Names.Comparer);
    private readonly Dictionary<string, RuleOrigin> _origins = new(Names.Comparer);
    private readonly List<CellProblem> _problems;

    private readonly string _file;

    public RuleSettings(IEnumerable<RuleRow> rows, List<CellProblem> problems, string file = RuleSetReader.SettingsFile)
    {
        (_problems, _file) = (problems, file);
        foreach (var row in rows)
        {
            var key = row.Cells.Required("key");
            if (!_rows.TryAdd(key, row)) row.Cells.Note("key", "each setting once");
            else _origins.Add(key, row.Origin());
        }
    }

    /// <summary>Where each setting came from.</summary>
    public IReadOnlyDictionary<string, RuleOrigin> Origins => _origins;

    public string Text(string key) => Row(key)?.Cells.Required("value") ?? "";

    /// <summary>A text that may be blank in a row that must stand.</summary>
    public string TextOrNone(string key) => Row(key)?.Cells.Text("value") ?? "";

    public IReadOnlyList<string> Words(string key) => Row(key)?.Cells.Words("value") ?? [];

    /// <summary>Words where the setting stands, none where it does not.</summary>
    public IReadOnlyList<string> WordsIfAny(string key) => _rows.TryGetValue(key, out var row) ? row.Cells.Words("value") : [];

    /// <summary>A word that has one of a few readings.</summary>
    public T Choice<T>(string key, IReadOnlyDictionary<string, T> choices) where T : struct =>
        Row(key) is { } row ? row.Choice("value", choices) : choices.Values.First();

    /// <summary>Notes a problem with a setting that stands in the file.</summary>
    public void Note(string key, string expected) => _rows[key].Cells.Note("value", expected);

    public DateOnly? Date(string key) => _rows.TryGetValue(key, out var row) ? row.Cells.Date("value") : null;

    public double Percent(string key) => Row(key)?.Cells.Percent("value") ?? 100;

    /// <summary>One of two words; whether it is the first.</summary>
    public bool Is(string key, string yes, string no)
    {
        if (Row(key) is not { } row) return false;
        var value = row.Cells.Text("value");
        if (!Names.Same(value, yes) && !Names.Same(value, no)) row.Cells.Note("value", $"'{yes}' or '{no}'");
        return Names.Same(value, yes);
    }

    /// <summary>One of two words; whether it is the first. The second where the setting does not stand: the law asks for nothing.</summary>
    public bool IsIfAny(string key, string yes, string no) => _rows.ContainsKey(key) && Is(key, yes, no);

    /// <summary>One of several words; the first of them after a problem.</summary>
    public T Choice<T>(string key, string word, IReadOnlyDictionary<string, T> choices) where T : struct
    {
        if (choices.TryGetValue(word, out var chosen)) return chosen;
        Row(key)?.Cells.Note("value", $"one of: {string.Join(", ", choices.Keys)}");
        return choices.Values.First();
    }

    /// <summary>A word that has one reading only so far; anything else is a problem, so that a rule is never read past.</summary>
    public void MustBe(string key, string only)
    {
        if (Row(key) is { } row && !Names.Same(row.Cells.Text("value"), only)) row.Cells.Note("value", $"'{only}', the only way that is worked out");
    }

    /// <summary>A number above 0, or null where the word stands instead.</summary>
    public double? NumberOr(string key, string word)
    {
        if (Row(key) is not { } row || Names.Same(row.Cells.Text("value"), word)) return null;
        if (double.TryParse(row.Cells.Text("value"), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number > 0) return number;
        row.Cells.Note("value", $"a number above 0, or '{word}'");
        return null;
    }

    private RuleRow? Row(string key)
    {
        if (_rows.TryGetValue(key, out var row)) return row;
        CellProblem missing = new(_file, 0, "key", "", $"a row '{key}' is missing");
        if (!_problems.Contains(missing)) _problems.Add(missing);
        return null;
    }
}
