using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Tamis.Composition;

/// <summary>Numbers of a large table: nearly all are a few digits and a point.</summary>
internal static class PlainDecimal
{
    private const int MostBytes = 16;

    private static ReadOnlySpan<double> Tens => [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16];

    /// <summary>Reads a number of at most sixteen digits and points, the exact decimal rounded once: a whole number below 2⁵³ over a power of ten up to 10²² (Clinger 1990).</summary>
    /// <param name="text">The number.</param>
    /// <param name="around">Bytes that it may lie in: the sixteen from its start on are looked at together, as many as it has, so that its length costs no guess.</param>
    /// <param name="value">The number, where it is such a one.</param>
    /// <returns>Whether it is; if not, it may still be a number in another way of writing.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool TryParse(ReadOnlySpan<byte> text, ReadOnlySpan<byte> around, out double value)
    {
        value = 0;
        if (text.IsEmpty || text.Length > MostBytes) return false;
        // Out of bounds, this is a number far above any length.
        var start = (nuint)Unsafe.ByteOffset(ref MemoryMarshal.GetReference(around), ref MemoryMarshal.GetReference(text));
        if (start <= (nuint)around.Length && (nuint)around.Length - start >= MostBytes) return TryParse(Vector128.LoadUnsafe(ref MemoryMarshal.GetReference(text)), text.Length, out value);
        return TryParseCopy(text, out value);
    }

    // Apart: room on the stack makes the method that has it slower.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static bool TryParseCopy(ReadOnlySpan<byte> text, out double value)
    {
        Span<byte> room = stackalloc byte[MostBytes];
        text.CopyTo(room);
        return TryParse(Vector128.Create((ReadOnlySpan<byte>)room), text.Length, out value);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool TryParse(Vector128<byte> bytes, int length, out double value)
    {
        var ofText = (1u << length) - 1;
        var digits = bytes - Vector128.Create((byte)'0');
        var areDigits = Vector128.LessThanOrEqual(digits, Vector128.Create((byte)9)).ExtractMostSignificantBits() & ofText;
        var arePoints = Vector128.Equals(bytes, Vector128.Create((byte)'.')).ExtractMostSignificantBits() & ofText;
        value = 0;
        // Nothing but digits and one point at most, and a digit.
        if ((areDigits | arePoints) != ofText || (arePoints & (arePoints - 1)) != 0 || areDigits == 0) return false;
        var behind = arePoints == 0 ? 0 : length - 1 - BitOperations.TrailingZeroCount(arePoints);
        // To the right end and closed up over the point; what lies before the first digit is 0.
        var from = Vector128<sbyte>.Indices + Vector128.Create((sbyte)(length - MostBytes));
        from += Vector128.LessThanOrEqual(from, Vector128.Create((sbyte)(arePoints == 0 ? -MostBytes - 1 : length - 1 - behind)));
        var inOrder = Vector128.Shuffle(digits, from.AsByte()).AsUInt64();
        var whole = EightDigits(inOrder[0]) * 100_000_000 + EightDigits(inOrder[1]);
        value = whole / Tens[behind];
        return whole < 1UL << 53;
    }

    // Eight digits, the first in the lowest byte: pairs of neighbours at once, then pairs of pairs, then both halves.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong EightDigits(ulong digits)
    {
        var pairs = digits * 10 + (digits >> 8) & 0x00FF00FF00FF00FF;
        var fours = pairs * 100 + (pairs >> 16) & 0x0000FFFF0000FFFF;
        return (fours * 10_000 + (fours >> 32)) & 0xFFFFFFFF;
    }
}
