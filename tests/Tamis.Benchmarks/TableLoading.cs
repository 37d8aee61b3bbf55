using BenchmarkDotNet.Attributes;
using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Benchmarks;

/// <summary>Reading a composition table of 640,000 contents: the general reader of sheets beside the reader of contents.</summary>
[MemoryDiagnoser]
public class TableLoading : IDisposable
{
    private readonly LargeTableFolder _folder = new(8_000, 80);

    /// <summary>The contents as a sheet of texts, and each value as a number.</summary>
    [Benchmark(Baseline = true)]
    public double AsASheet()
    {
        List<CellProblem> problems = [];
        return SheetFile.Read(Path.Combine(_folder.Path, "contents.csv")).Rows.Sum(row => new RowReader(row, problems).Number("value") ?? 0);
    }

    /// <summary>The whole table, ready for sums.</summary>
    [Benchmark]
    public double AsATable()
    {
        var sum = 0.0;
        foreach (var content in CompositionTable.Load(_folder.Path).ToMatrix().Per100Grams) sum += double.IsNaN(content) ? 0 : content;
        return sum;
    }

    /// <summary>Takes the folder away.</summary>
    [GlobalCleanup]
    public void Dispose()
    {
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }
}
