using System.Text;

namespace Tamis.Composition;

/// <summary>Turns the bytes of a cell into the number of what they name. A table repeats its names row after row: the last one and the one after it are tried first.</summary>
internal sealed class KeyCache(Func<string, int> indexOf)
{
    private readonly List<(byte[] Bytes, int Index)> _seen = [];
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private int _last;

    /// <summary>The number, or −1 where the name is not known.</summary>
    public int IndexOf(ReadOnlySpan<byte> name)
    {
        if (_seen.Count > 0)
        {
            if (name.SequenceEqual(_seen[_last].Bytes)) return _seen[_last].Index;
            var next = _last + 1 == _seen.Count ? 0 : _last + 1;
            if (name.SequenceEqual(_seen[next].Bytes)) return _seen[_last = next].Index;
        }
        var text = Encoding.UTF8.GetString(name);
        if (!_places.TryGetValue(text, out var place))
        {
            place = _seen.Count;
            _seen.Add((name.ToArray(), indexOf(text)));
            _places.Add(text, place);
        }
        return _seen[_last = place].Index;
    }
}

/// <summary>The sources of a table's contents, each once.</summary>
internal sealed class SourceBook
{
    private readonly Dictionary<(int Food, int Source, int Method, bool IsFilledIn), int> _places = [];
    private readonly List<Source> _all = [];

    public IReadOnlyList<Source> All => _all;

    public int IndexOf(int food, int source, int method, bool isFilledIn, Func<int, int, int, bool, Source> make)
    {
        if (_places.TryGetValue((food, source, method, isFilledIn), out var place)) return place;
        _all.Add(make(food, source, method, isFilledIn));
        return _places[(food, source, method, isFilledIn)] = _all.Count - 1;
    }
}
