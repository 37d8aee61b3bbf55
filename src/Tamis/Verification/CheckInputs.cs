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
    /// <summary>The text of an input.</summary>
    /// <exception cref="FormatException">The row does not give it.</exception>
    public string Text(string name) => Values.TryGetValue(name, out var text) ? text : throw new FormatException($"the inputs lack '{name}'");

    /// <summary>The text of an input, or null where the row does not give it.</summary>
    public string? OptionalText(string name) => Values.GetValueOrDefault(name);

    /// <summary>A number, decimal point.</summary>
    public double Number(string name) => Parse(name, Text(name));

    /// <summary>A number, or null where the row does not give it.</summary>
    public double? OptionalNumber(string name) => Values.TryGetValue(name, out var text) ? Parse(name, text) : null;

    /// <summary>A list <c>a:b:c</c>.</summary>
    public IReadOnlyList<string> List(string name) => Text(name).Split(':');

    /// <summary>A list of numbers <c>1:2:3</c>.</summary>
    public IReadOnlyList<double> Numbers(string name) => [.. List(name).Select(text => Parse(name, text))];

    /// <summary>A table <c>a:b|c:d</c>, rows parted by a bar.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Table(string name) => [.. Text(name).Split('|').Select(row => row.Split(':'))];

    private static double Parse(string name, string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        ? number
        : throw new FormatException($"the input '{name}' is '{text}', not a number");
}
