using BenchmarkDotNet.Attributes;
using Tamis.Composition;

namespace Tamis.Benchmarks;

/// <summary>The sums behind 100,000 nutrition panels: what is in each formula and for how much of it that is known.</summary>
[MemoryDiagnoser]
public class PanelSums
{
    private const int Block = 256;

    private readonly PanelInputs _inputs = PanelInputs.Make();
    private readonly double[] _known;
    private readonly double[] _covered;
    private readonly double[] _totals = new double[Block];

    /// <summary>Makes the inputs and the room for a block of results, which is used again for every block.</summary>
    public PanelSums() => (_known, _covered) = (new double[Block * _inputs.Matrix.Stride], new double[Block * _inputs.Matrix.Stride]);

    /// <summary>One nutrient after another, one line after another: slow, easily seen to be right.</summary>
    [Benchmark(Baseline = true)]
    public (double Known, double Covered) LineByLine()
    {
        double knownSum = 0, coveredSum = 0;
        for (var formula = 0; formula < PanelInputs.Formulas; formula++)
            for (var nutrient = 0; nutrient < PanelInputs.Nutrients; nutrient++)
            {
                double known = 0, covered = 0, total = 0;
                for (var line = _inputs.Starts[formula]; line < _inputs.Starts[formula + 1]; line++)
                {
                    var (content, mass) = (_inputs.Matrix.Row(_inputs.Rows[line])[nutrient], _inputs.MassGrams[line]);
                    total += mass;
                    if (double.IsNaN(content)) continue;
                    known += mass * content / 100;
                    covered += mass;
                }
                knownSum += known / total * 100;
                coveredSum += covered / total;
            }
        return (knownSum, coveredSum);
    }

    /// <summary>The kit's sums, a block of formulas at a time.</summary>
    [Benchmark]
    public (double Known, double Covered) Kit()
    {
        double knownSum = 0, coveredSum = 0;
        for (var first = 0; first < PanelInputs.Formulas; first += Block)
        {
            var count = Math.Min(Block, PanelInputs.Formulas - first);
            MixtureSums.SumMany(_inputs.Matrix, _inputs.Starts.AsSpan(first, count + 1), _inputs.Rows, _inputs.MassGrams, _known, _covered, _totals.AsSpan(0, count));
            for (var formula = 0; formula < count; formula++)
            {
                var (known, covered) = (0.0, 0.0);
                foreach (var sum in _known.AsSpan(formula * _inputs.Matrix.Stride, PanelInputs.Nutrients)) known += sum;
                foreach (var grams in _covered.AsSpan(formula * _inputs.Matrix.Stride, PanelInputs.Nutrients)) covered += grams;
                knownSum += known / _totals[formula] * 100;
                coveredSum += covered / _totals[formula];
            }
        }
        return (knownSum, coveredSum);
    }
}
