using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Text;

namespace Tamis.Composition;

/// <summary>Turns the bytes of a cell into the number of what they name. A table repeats its names row after row: the last one and the one after it are tried first.</summary>
internal sealed class KeyCache(Func<string, int> indexOf)
{
    private const int ShortBytes = 2 * sizeof(ulong);
    private readonly Dictionary<string, int> _long = new(StringComparer.Ordinal);
    private Entry[] _entries = new Entry[16];
    // 1 and the place of an entry; 0 where a slot is free.
    private int[] _slots = new int[64];
    private int _count, _last;

    /// <summary>The number, or −1 where the name is not known.</summary>
    public int IndexOf(ReadOnlySpan<byte> name)
    {
        if (name.Length > ShortBytes) return LongIndexOf(Encoding.UTF8.GetString(name));
        var (first, rest) = name.Length <= sizeof(ulong) ? (Padded(name), 0UL)
            : (BinaryPrimitives.ReadUInt64LittleEndian(name), BinaryPrimitives.ReadUInt64LittleEndian(name[^sizeof(ulong)..]) >> 8 * (ShortBytes - name.Length));
        var entries = _entries.AsSpan(0, _count);
        var last = _last;
        if ((uint)last < (uint)entries.Length && entries[last].Is(first, rest, name.Length)) return entries[last].Index;
        var next = last + 1 < entries.Length ? last + 1 : 0;
        if ((uint)next < (uint)entries.Length && entries[next].Is(first, rest, name.Length))
        {
            _last = next;
            return entries[next].Index;
        }
        var slot = SlotOf(first, rest, name.Length, _slots.Length);
        for (; _slots[slot] > 0; slot = slot + 1 & _slots.Length - 1)
        {
            ref readonly var entry = ref entries[_slots[slot] - 1];
            if (!entry.Is(first, rest, name.Length)) continue;
            _last = _slots[slot] - 1;
            return entry.Index;
        }
        return Added(new(first, rest, name.Length, indexOf(Encoding.UTF8.GetString(name))));
    }

    private int LongIndexOf(string name)
    {
        if (!_long.TryGetValue(name, out var index)) _long.Add(name, index = indexOf(name));
        return index;
    }

    private int Added(Entry entry)
    {
        if (_count == _entries.Length) Array.Resize(ref _entries, 2 * _count);
        // At most half full, so that a chain of full slots is short.
        if (2 * _count >= _slots.Length)
        {
            _slots = new int[4 * _slots.Length];
            for (var place = 0; place < _count; place++) Place(place);
        }
        _entries[_count] = entry;
        Place(_count);
        _last = _count++;
        return entry.Index;
    }

    private void Place(int place)
    {
        var entry = _entries[place];
        var slot = SlotOf(entry.First, entry.Rest, entry.Length, _slots.Length);
        while (_slots[slot] > 0) slot = slot + 1 & _slots.Length - 1;
        _slots[slot] = place + 1;
    }

    // Multiplicative hashing by the golden ratio (Knuth, The Art of Computer Programming 3, 6.4): the high bits are the mixed ones.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int SlotOf(ulong first, ulong rest, int length, int slots) =>
        (int)((first ^ BitOperations.RotateLeft(rest * 0x9E3779B97F4A7C15, 29) ^ (ulong)length) * 0x9E3779B97F4A7C15 >> 64 - BitOperations.Log2((uint)slots));

    // Eight bytes as a number; fewer are read as two halves, or as the first, the middle and the last byte, that may overlap.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Padded(ReadOnlySpan<byte> name)
    {
        var last = name.Length - 1;
        if (name.Length == sizeof(ulong)) return BinaryPrimitives.ReadUInt64LittleEndian(name);
        if (name.Length >= sizeof(uint)) return BinaryPrimitives.ReadUInt32LittleEndian(name) | (ulong)BinaryPrimitives.ReadUInt32LittleEndian(name[^sizeof(uint)..]) << 8 * (name.Length - sizeof(uint));
        return name.IsEmpty ? 0 : name[0] | (uint)name[name.Length / 2] << 8 * (name.Length / 2) | (uint)name[last] << 8 * last;
    }

    // The length is held too: a name that ends in zero bytes is not the same as the name without them.
    private readonly record struct Entry(ulong First, ulong Rest, int Length, int Index)
    {
        public bool Is(ulong first, ulong rest, int length) => First == first && Rest == rest && Length == length;
    }
}

/// <summary>Numbers the runs of rows that have one name: a name is held against the row before and nothing else, and only the first and the last are kept.</summary>
internal sealed class RunNames
{
    private byte[] _last = [];
    private int _length;

    /// <summary>How many runs there were.</summary>
    public int Count { get; private set; }

    /// <summary>The name of the first run; empty where there was none.</summary>
    public string First { get; private set; } = "";

    /// <summary>The name of the last run; empty where there was none.</summary>
    public string Last => Encoding.UTF8.GetString(_last.AsSpan(0, _length));

    /// <summary>The run that this row belongs to.</summary>
    // Inlined, because a first call of it by itself would be compiled in the slow way.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int IndexOf(ReadOnlySpan<byte> name)
    {
        if (Count > 0 && name.SequenceEqual(_last.AsSpan(0, _length))) return Count - 1;
        if (name.Length > _last.Length) _last = new byte[Math.Max(64, name.Length)];
        name.CopyTo(_last);
        _length = name.Length;
        if (Count == 0) First = Last;
        return Count++;
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
