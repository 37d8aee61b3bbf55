using System.Buffers.Binary;
using System.Text;

namespace Tamis.Composition;

/// <summary>Turns the bytes of a cell into the number of what they name. A table repeats its names row after row: the last one and the one after it are tried first.</summary>
internal sealed class KeyCache(Func<string, int> indexOf)
{
    private readonly List<(byte[] Bytes, int Index)> _seen = [];
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private readonly Dictionary<ulong, int> _short = [];
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
        return _seen[_last = name.Length <= sizeof(ulong) && !name.Contains((byte)0) ? ShortPlace(name) : Place(name)].Index;
    }

    // Codes are short: eight bytes are a number, and no text is made to look them up. None holds a zero byte, so shorter ones do not collide.
    private int ShortPlace(ReadOnlySpan<byte> name)
    {
        Span<byte> padded = stackalloc byte[sizeof(ulong)];
        padded.Clear();
        name.CopyTo(padded);
        var key = BinaryPrimitives.ReadUInt64LittleEndian(padded);
        if (!_short.TryGetValue(key, out var place)) _short.Add(key, place = Place(name));
        return place;
    }

    private int Place(ReadOnlySpan<byte> name)
    {
        var text = Encoding.UTF8.GetString(name);
        if (!_places.TryGetValue(text, out var place))
        {
            place = _seen.Count;
            _seen.Add((name.ToArray(), indexOf(text)));
            _places.Add(text, place);
        }
        return place;
    }
}

/// <summary>Numbers the runs of rows that have one name: a name is held against the row before and nothing else.</summary>
internal sealed class RunNames(List<string> names)
{
    private byte[] _last = [];
    private int _length = -1;

    /// <summary>The run that this row belongs to.</summary>
    public int IndexOf(ReadOnlySpan<byte> name)
    {
        if (_length < 0 || !name.SequenceEqual(_last.AsSpan(0, _length)))
        {
            if (name.Length > _last.Length) _last = new byte[Math.Max(64, name.Length)];
            name.CopyTo(_last);
            _length = name.Length;
            names.Add(Encoding.UTF8.GetString(name));
        }
        return names.Count - 1;
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
