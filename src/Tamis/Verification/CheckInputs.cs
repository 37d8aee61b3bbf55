using System.Globalization;

namespace Tamis.Verification;

/// <summary>What a quantity computed: a number in the row's unit, or a text.</summary>
/// <param name="Number">The number, null where the answer is a text.</param>
/// <param name="Text">The text, null where the answer is a number.</param>
public readonly record struct CheckValue(double? Number, string? Text)
{
    /// <summary>A number in the unit of the row.</summary>
    public static CheckValue Of(double number) => new(number, null);

    /// <summary>A text, compared whole with what is expected.</summary>
    public static CheckValue Of(string text) => new(null, text);
}

/// <summary>The inputs of one check row: <c>name=value;name=value</c>, in any order.</summary>
/// <param name="Values">The text of each input by its name.</param>
/// <param name="Folder">The folder of the check file, beside which data files stand.</param>
public sealed record CheckInputs(IReadOnlyDictionary<string, string> Values, string Folder)
{
    /// <summary>Reads inputs as a check row writes them. The first <c>=</c> of a part ends its name.</summary>
    /// <exception cref="FormatException">A part has no name, or a name stands twice.</exception>
    public static CheckInputs Parse(string inputs, string folder)
    {
        Dictionary<string, string> values = new(StringComparer.Ordinal);
        foreach (var part in inputs.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var end = part.IndexOf('=', StringComparison.Ordinal);
            if (end <= 0) throw new FormatException($"the input '{part}' is not name=value");
            if (!values.TryAdd(part[..end].Trim(), part[(end + 1)..].Trim())) throw new FormatException($"the input '{part[..end].Trim()}' stands twice");
        }
        return new(values, folder);
    }

    /// <summary>The path of a data file that an input names, beside the check file.</summary>
    public string DataFile(string name) => Path.Combine(Folder, Text(name));

    /// <summary>Lines with their masses, <c>flour:250|butter:125</c>; the text behind the last colon is the mass in grams.</summary>
    public IReadOnlyList<(string Name, double MassGrams)> Weighed(string name) => [.. Text(name).Split('|').Select(line =>
        line.LastIndexOf(':') is var colon and > 0
            ? (line[..colon].Trim(), Number(line[..colon], line[(colon + 1)..]))
            : throw new FormatException($"the input '{name}' holds '{line}', not name:mass"))];

    /// <summary>The text of an input.</summary>
    /// <exception cref="FormatException">The row does not give it.</exception>
    public string Text(string name) => Values.TryGetValue(name, out var text) ? text : throw new FormatException($"the inputs lack '{name}'");

    /// <summary>The text of an input, or null where the row does not give it.</summary>
    public string? OptionalText(string name) => Values.GetValueOrDefault(name);

    /// <summary>A number, decimal point.</summary>
    public double Number(string name) => Number(name, Text(name));

    /// <summary>A number, or null where the row does not give it.</summary>
    public double? OptionalNumber(string name) => Values.TryGetValue(name, out var text) ? Number(name, text) : null;

    /// <summary>A list <c>a:b:c</c>.</summary>
    public IReadOnlyList<string> List(string name) => Text(name).Split(':');

    /// <summary>A list of numbers <c>1:2:3</c>.</summary>
    public IReadOnlyList<double> Numbers(string name) => [.. List(name).Select(text => Number(name, text))];

    /// <summary>A table <c>a:b|c:d</c>, rows parted by a bar.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Table(string name) => [.. Text(name).Split('|').Select(row => row.Split(':'))];

    private static double Number(string name, string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        ? number
        : throw new FormatException($"the input '{name}' is '{text}', not a number");
}
