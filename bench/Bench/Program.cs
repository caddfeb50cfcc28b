using BenchmarkDotNet.Running;

// every class with a [Benchmark] in this project; choose with --filter
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
