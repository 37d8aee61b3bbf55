using Tamis.Statistics;
using Tamis.Statistics.Comparisons;
using Tamis.Statistics.Models;
using Tamis.Tasting;

namespace Tamis.Verification;

/// <summary>Ranks and ticks within blocks for published checks.</summary>
/// <remarks>
/// Inputs: <c>table</c> (a row a block), or <c>data</c> with <c>score</c>, <c>block</c> and <c>treatment</c> (two columns <c>a:b</c> are their combinations),
/// several scores of a cell averaged, blocks that lack a cell left out, <c>where=column:value</c>; <c>ties</c> corrected or ignored; <c>at_least</c> makes ticks of scores.
/// </remarks>
public static class RankQuantities
{
    /// <summary>Every quantity by its name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["friedman_statistic"] = inputs => CheckValue.Of(Friedman(inputs)),
        ["friedman_p"] = inputs => CheckValue.Of(Tails.ChiSquareAbove(Friedman(inputs), Blocks(inputs)[0].Length - 1)),
        ["page_statistic"] = inputs => CheckValue.Of(RankedBlocks.Of(Blocks(inputs)).Page().L),
        ["page_z"] = inputs => CheckValue.Of(RankedBlocks.Of(Blocks(inputs)).Page().Z),
        ["cochran_q"] = inputs => CheckValue.Of(Cochran(inputs)),
        ["cochran_p"] = inputs => CheckValue.Of(Tails.ChiSquareAbove(Cochran(inputs), Blocks(inputs)[0].Length - 1)),
    };

    private static double Friedman(CheckInputs inputs) =>
        RankedBlocks.Of(Blocks(inputs)).Friedman(inputs.OptionalText("ties") is not "ignored") ?? throw new FormatException("every block ties all treatments");

    private static double Cochran(CheckInputs inputs)
    {
        var least = inputs.OptionalNumber("at_least") ?? 1;
        return TickTest.Q([.. Blocks(inputs).Select(row => row.Select(score => score >= least).ToArray())]) ?? throw new FormatException("no block tells the treatments apart");
    }

    private static List<double[]> Blocks(CheckInputs inputs)
    {
        if (inputs.OptionalText("table") is not null)
            return [.. inputs.Table("table").Select(row => row.Select(cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture)).ToArray())];
        var sheet = CheckData.Sheet(inputs);
        string[] treatments = [.. inputs.List("treatment")];
        var keys = treatments.Select(column => CheckData.Texts(sheet, column).ToList()).ToList();
        var scores = CheckData.Texts(sheet, inputs.Text("score")).ToList();
        var blocks = CheckData.Texts(sheet, inputs.Text("block")).ToList();
        var wanted = inputs.OptionalText("where") is null ? null : inputs.List("where");
        var where = wanted is null ? null : CheckData.Texts(sheet, wanted[0]).ToList();
        int[] rows = [.. Enumerable.Range(0, scores.Count).Where(row => scores[row] is not null && blocks[row] is not null && keys.All(key => key[row] is not null) && (where is null || where[row] == wanted![1]))];
        // The first column changes slowest, each sorted.
        var levels = keys.Select(key => ModelData.SortedLevels(rows.Select(row => key[row]!))).ToList();
        var cells = levels.Aggregate((IEnumerable<string>)[""], (products, level) => products.SelectMany(product => level.Select(one => $"{product}\n{one}")))
            .Where(cell => rows.Any(row => Cell(row) == cell)).ToList();
        return [.. rows.GroupBy(row => blocks[row]).Select(block => block.ToLookup(Cell)).Where(block => cells.TrueForAll(block.Contains))
            .Select(block => cells.Select(cell => block[cell].Average(row => CheckData.Number(sheet, inputs.Text("score"), scores[row]!))).ToArray())];

        string Cell(int row) => string.Concat(keys.Select(key => $"\n{key[row]}"));
    }
}
