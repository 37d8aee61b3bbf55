using System.Globalization;
using System.Text;

namespace Tamis.Tests.Tables;

/// <summary>Changes cells and files as slips, spreadsheets and broken disks do; the same seed makes the same changes.</summary>
internal sealed class Mutations(int seed)
{
    private const string Letters = "0123456789.,,..-+eE %'\"#;\t/<>ghrtON\u00a0\u202f\u2212\u00e9\n";

    private static readonly string[] Texts =
    [
        "#N/A", "#DIV/0!", "####", "1/2", "01-Feb", "2-Jan", "1.234", "1,234", "1.234,5", "1,234.5", "1e400", "1e3", "NaN", "Infinity", "", " ", "tr", "<0.1", "12 %", "=1+1", "1 000", "0x10",
        "\u0661\u0662", "1_000", "-0", "-5", "1.5.2", "1,5,2", "\uff13", "3E2", "1.10", "007", "10/11/2026", "none", "unknown", "1'000",
    ];

    private readonly Random _random = new(seed);

    /// <summary>A number from zero to below a limit.</summary>
    public int Next(int limit) => _random.Next(limit);

    /// <summary>Another text in place of a cell's.</summary>
    public string Cell(string text)
    {
        if (text.Length == 0 || _random.Next(3) == 0) return Texts[_random.Next(Texts.Length)];
        var at = _random.Next(text.Length);
        return _random.Next(4) switch
        {
            0 => text.Remove(at, 1),
            1 => text.Insert(at, Letters[_random.Next(Letters.Length)].ToString()),
            2 => string.Concat(text.AsSpan(0, at), Letters[_random.Next(Letters.Length)].ToString(), text.AsSpan(at + 1)),
            _ => at + 1 < text.Length ? string.Concat(text.AsSpan(0, at), text.AsSpan(at + 1, 1), text.AsSpan(at, 1), text.AsSpan(at + 2)) : text + text,
        };
    }

    /// <summary>Other bytes in place of some lines; the numbers of the lines that were touched, from 0.</summary>
    public (byte[] Bytes, HashSet<int> Touched) File(IReadOnlyList<string> lines)
    {
        List<byte[]> bytes = [.. lines.Select(line => Encoding.UTF8.GetBytes(line + "\n"))];
        HashSet<int> touched = [];
        for (var change = _random.Next(1, 4); change > 0; change--)
        {
            var at = _random.Next(bytes.Count);
            touched.Add(at);
            List<byte> line = [.. bytes[at]];
            var place = line.Count == 0 ? 0 : _random.Next(line.Count);
            switch (_random.Next(6))
            {
                case 0: line.Insert(place, (byte)_random.Next(256)); break;
                case 1: if (line.Count > 0) line.RemoveAt(place); break;
                case 2: if (line.Count > 0) line[place] = (byte)_random.Next(256); break;
                case 3: line.InsertRange(place, Encoding.UTF8.GetBytes(Texts[_random.Next(Texts.Length)])); break;
                case 4: line = [.. line, .. line]; break;
                default:
                    // A file cut short: everything behind is gone.
                    if (line.Count > 0) line.RemoveRange(place, line.Count - place);
                    for (var behind = at + 1; behind < bytes.Count; behind++)
                    {
                        bytes[behind] = [];
                        touched.Add(behind);
                    }
                    break;
            }
            bytes[at] = [.. line];
            // A line whose end is gone runs into the next one.
            if (line.Count == 0 || line[^1] != '\n') touched.Add(at + 1);
        }
        return ([.. bytes.SelectMany(line => line)], touched);
    }

    /// <summary>What a text means as a number where it means one at all: read apart from the kit's own reader.</summary>
    public static double? Meaning(string text, char mark)
    {
        var plain = string.Concat(text.Where(character => character is not (' ' or '\u00a0' or '\u202f' or '\'' or '\u2019'))).Replace('\u2212', '-');
        plain = mark == ',' ? plain.Replace(".", "", StringComparison.Ordinal).Replace(',', '.') : plain.Replace(",", "", StringComparison.Ordinal);
        return double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }

    /// <summary>A cell as a spreadsheet writes it.</summary>
    public static string Quoted(string text, char separator) =>
        text.AsSpan().ContainsAny(separator, '"', '\n') || text != text.Trim() ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
