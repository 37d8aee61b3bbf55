using BenchmarkDotNet.Running;
using Tamis.Benchmarks;

// --ratios: both sides of each comparison by turns in one run; anything else goes to BenchmarkDotNet.
if (args is ["--ratios"]) Ratios.Print(Console.Out);
else BenchmarkSwitcher.FromAssembly(typeof(PanelSums).Assembly).Run(args);
