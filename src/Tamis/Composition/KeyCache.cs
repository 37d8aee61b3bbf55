using System.Text;

namespace Tamis.Composition;

/// <summary>Turns the bytes of a cell into the number of what they name. A table repeats its names row after row: the last one and the one after it are tried first.</summary>
internal sealed class KeyCache(Func<string, int> indexOf)
{
    private const int MostBytes = 128;
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
        Span<char> room = stackalloc char[MostBytes];
        var text = name.Length <= MostBytes ? room[..Encoding.UTF8.GetChars(name, room)] : Encoding.UTF8.GetString(name).AsSpan();
        if (!_places.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(text, out var place)) place = Add(name, text.ToString());
        return _seen[_last = place].Index;
    }

    /// <summary>The number, or −1 where the name is not known.</summary>
    public int IndexOf(string name) => _seen[_places.TryGetValue(name, out var place) ? place : Add(Encoding.UTF8.GetBytes(name), name)].Index;

    private int Add(ReadOnlySpan<byte> bytes, string name)
    {
        _seen.Add((bytes.ToArray(), indexOf(name)));
        _places.Add(name, _seen.Count - 1);
        return _seen.Count - 1;
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
