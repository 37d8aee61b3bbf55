using Tamis.Statistics.Comparisons;

namespace Tamis.Statistics.Models;

/// <summary>One value of a block design.</summary>
/// <param name="Block">The block in which it was observed.</param>
/// <param name="Treatment">The treatment that it was observed of.</param>
/// <param name="Value">The value.</param>
public readonly record struct BlockValue(string Block, string Treatment, double Value);

/// <summary>Treatments compared within blocks, complete or not: value = block + treatment + error, by least squares.</summary>
/// <remarks>
/// In complete blocks a difference is the mean of the differences within the blocks. In incomplete blocks it is the intra-block estimate:
/// blocks that lack one of two treatments still count through the treatments that they share with others. All treatments share one
/// error variance. Fixed block effects: no information is taken from differences between blocks.
/// </remarks>
public sealed class BlockModel
{
    private const string Block = "block", Treatment = "treatment", Response = "value";

    private static readonly ModelFormula Formula = new(Response, true, [new([new(Block)]), new([new(Treatment)])]);

    private readonly LinearFit _fit;
    private readonly string[] _blocks;

    private BlockModel(IReadOnlyList<BlockValue> values)
    {
        // The levels' names go through numbers of fixed width, so that a name is never taken for a number or split.
        _blocks = [.. values.Select(value => value.Block).Distinct().Order(StringComparer.Ordinal)];
        Treatments = [.. values.Select(value => value.Treatment).Distinct().Order(StringComparer.Ordinal)];
        var blockNumber = Numbered(_blocks);
        var treatmentNumber = Numbered(Treatments);
        _fit = LinearFit.Of(Formula, ModelData.Empty
            .WithNumbers(Response, [.. values.Select(value => value.Value)])
            .WithFactor(Block, [.. values.Select(value => Level(blockNumber[value.Block]))])
            .WithFactor(Treatment, [.. values.Select(value => Level(treatmentNumber[value.Treatment]))]));
    }

    /// <summary>The treatments, sorted by character code.</summary>
    public IReadOnlyList<string> Treatments { get; }

    /// <summary>How many blocks there are.</summary>
    public int BlockCount => _blocks.Length;

    /// <summary>Degrees of freedom of the error within blocks; 0 where nothing is left to judge it by.</summary>
    public int ResidualDegrees => _fit.ResidualDegrees;

    /// <summary>The standard deviation of the error within blocks, in units of the value; NaN without a degree of freedom.</summary>
    public double ResidualStandardDeviation => _fit.ResidualStandardDeviation;

    /// <summary>Fits the model. The order of the values means nothing.</summary>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static BlockModel Of(IEnumerable<BlockValue> values) =>
        new([.. values.OrderBy(value => value.Block, StringComparer.Ordinal).ThenBy(value => value.Treatment, StringComparer.Ordinal).ThenBy(value => value.Value)]);

    /// <summary>The mean of a treatment with every block weighing the same, or <see langword="null"/> where the design does not link it to all blocks.</summary>
    /// <exception cref="ArgumentException">No value is of this treatment.</exception>
    public Estimate? Mean(string treatment)
    {
        Dictionary<string, double> weights = new() { ["(Intercept)"] = 1 };
        for (var i = 1; i < _blocks.Length; i++) weights[Block + Level(i)] = 1.0 / _blocks.Length;
        if (IndexOf(treatment) is var index and > 0) weights[Treatment + Level(index)] = 1;
        return _fit.Contrast(weights);
    }

    /// <summary>One treatment less another within blocks, or <see langword="null"/> where no chain of blocks links them.</summary>
    /// <exception cref="ArgumentException">No value is of one of the treatments.</exception>
    public Estimate? Difference(string treatment, string against)
    {
        Dictionary<string, double> weights = [];
        if (IndexOf(treatment) is var first and > 0) weights[Treatment + Level(first)] = 1;
        if (IndexOf(against) is var second and > 0) weights[Treatment + Level(second)] = weights.GetValueOrDefault(Treatment + Level(second)) - 1;
        return _fit.Contrast(weights);
    }

    /// <summary>Every treatment less every later one, adjusted for there being so many; pairs that no chain of blocks links are left out.</summary>
    public IReadOnlyList<PairwiseDifference> PairwiseDifferences() =>
        [.. from i in Enumerable.Range(0, Treatments.Count)
            from j in Enumerable.Range(i + 1, Treatments.Count - i - 1)
            let difference = ResidualDegrees > 0 ? Difference(Treatments[i], Treatments[j]) : null
            where difference is not null
            select new PairwiseDifference(Treatments[i], Treatments[j], difference.Value, Treatments.Count)];

    private int IndexOf(string treatment)
    {
        for (var i = 0; i < Treatments.Count; i++)
            if (string.Equals(Treatments[i], treatment, StringComparison.Ordinal)) return i;
        throw new ArgumentException($"No value is of '{treatment}'; there are {string.Join(", ", Treatments)}.", nameof(treatment));
    }

    private static Dictionary<string, int> Numbered(IReadOnlyList<string> names) => names.Select((name, i) => (name, i)).ToDictionary(pair => pair.name, pair => pair.i, StringComparer.Ordinal);

    private static string Level(int index) => index.ToString("D6", System.Globalization.CultureInfo.InvariantCulture);
}
