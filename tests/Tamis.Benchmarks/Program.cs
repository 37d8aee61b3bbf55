using BenchmarkDotNet.Running;
using Tamis.Benchmarks;

// --ratios: both sides of each comparison by turns in one run; with --peers FOLDER also beside the scripts in that folder; anything else goes to BenchmarkDotNet.
if (args is ["--ratios"]) Ratios.Print(Console.Out);
else if (args is ["--ratios", "--peers", var folder]) Ratios.Print(Console.Out, folder);
else BenchmarkSwitcher.FromAssembly(typeof(PanelSums).Assembly).Run(args);
