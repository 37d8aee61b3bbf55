using System.Globalization;
using System.Text.RegularExpressions;

namespace Tamis.Labels;

/// <summary>The energy as a content of <c>declaration.csv</c>: <c>energy_kj</c>, <c>energy_kcal</c>, or one turned into another unit by the law's own number, <c>energy_kj / 4.18</c>.</summary>
internal sealed partial record EnergyContent(bool IsKilojoules, double Times)
{
    public static EnergyContent? Parse(string text)
    {
        if (Written().Match(text) is not { Success: true } match) return null;
        var number = match.Groups["number"] is { Success: true } written ? double.Parse(written.Value, CultureInfo.InvariantCulture) : 1;
        return new(match.Groups["unit"].Value == "kj", match.Groups["by"].Value == "/" ? 1 / number : number);
    }

    /// <summary>What a gram counts in the unit of the line; null where the factor has none.</summary>
    public double? FactorOf(EnergyFactor factor) => (IsKilojoules ? factor.KilojoulesPerGram : factor.KilocaloriesPerGram) * Times;

    [GeneratedRegex(@"^energy_(?<unit>kj|kcal)(\s*(?<by>[/*])\s*(?<number>[0-9]*[1-9][0-9]*(\.[0-9]+)?))?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Written();
}
