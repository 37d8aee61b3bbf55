using BenchmarkDotNet.Running;
using Tamis.Benchmarks;

// --ratios: both sides of each comparison by turns in one run; with --peers FOLDER also beside the scripts in that folder; --tables --peers FOLDER: reading, panels
// and draws beside the scripts; --kitchen: plans and amounts; --labels: panels beside bare sums, draws of one label; --tasting: all that one tasting says; --mixed-models, with or without --peers FOLDER: mixed models beside R; anything else goes to BenchmarkDotNet.
if (args is ["--ratios"]) Ratios.Print(Console.Out);
else if (args is ["--ratios", "--peers", var folder]) Ratios.Print(Console.Out, folder);
else if (args is ["--tables", "--peers", var tables]) PeerTables.Print(Console.Out, tables);
else if (args is ["--kitchen"]) KitchenWork.Print(Console.Out);
else if (args is ["--labels"]) LabelSpeed.Print(Console.Out);
else if (args is ["--tasting"]) TastingReports.Print(Console.Out);
else if (args is ["--mixed-models"]) MixedScores.Print(Console.Out, null);
else if (args is ["--mixed-models", "--peers", var scripts]) MixedScores.Print(Console.Out, scripts);
else BenchmarkSwitcher.FromAssembly(typeof(PanelSums).Assembly).Run(args);
