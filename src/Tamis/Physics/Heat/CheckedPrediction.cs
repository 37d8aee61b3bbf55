using System.Globalization;

namespace Tamis.Physics;

/// <summary>Predicts only from figures that can be: a negative mass or a temperature below absolute zero gives a sentence and no figure.</summary>
internal static class CheckedPrediction
{
    private static readonly string[] NotBelowZero = ["g", "min", "%", "kJ/kg", "J/g", "1/min", "m²·K/W"];
    private static readonly string[] AboveZero = ["kg/m³", "g/mL", "W/(m·K)", "kJ/(kg·K)", "W/(m²·K)", "mm", "mm²/s"];

    /// <summary>A figure, or what stands in its way.</summary>
    /// <param name="key">The equation's key.</param>
    /// <param name="given">What it is given.</param>
    /// <param name="compute">The equation on bare numbers.</param>
    /// <param name="refuse">What cannot be true of the figures together, as a sentence; null where all is well.</param>
    public static Predicted Of(string key, IReadOnlyList<Given> given, Func<double[], double> compute, Func<double[], string?>? refuse = null)
    {
        var equation = PhysicsData.Kit.Equation(key);
        string[] lacks = [.. given.Where(each => !each.IsKnown).Select(each => each.Name), .. given.Select(Impossible).OfType<string>()];
        if (lacks.Length == 0 && refuse?.Invoke([.. given.Select(each => each.Value)]) is { } sentence) lacks = [sentence];
        return lacks.Length > 0 ? Predicted.Unknown(equation, lacks) : Predicted.From(equation, given, compute);
    }

    /// <summary>A figure under the name that the equation knows it by; in another unit than the equation's it counts as unknown, and says so.</summary>
    public static Given In(this Given given, string name, string unit) => given.Unit == unit
        ? given with { Name = name }
        : given with { Name = string.Create(CultureInfo.InvariantCulture, $"a {name} in {unit} ({given.Source}: found {given.Value:G6} {given.Unit})"), Value = double.NaN };

    /// <summary>Why a figure cannot be, in words with its place; null for one that can.</summary>
    public static string? Impossible(Given given)
    {
        if (!given.IsKnown) return null;
        var expected = given.Unit switch
        {
            "°C" when given.Value < Temperature.AbsoluteZeroCelsius => string.Create(CultureInfo.InvariantCulture, $"above absolute zero, {Temperature.AbsoluteZeroCelsius} °C"),
            var unit when NotBelowZero.Contains(unit) && given.Value < 0 => $"of 0 {unit} or more",
            var unit when AboveZero.Contains(unit) && given.Value <= 0 => $"above 0 {unit}",
            _ => null,
        };
        return expected is null ? null : string.Create(CultureInfo.InvariantCulture, $"a {given.Name} {expected} ({given.Source}: found {given.Value:G6} {given.Unit})");
    }
}
