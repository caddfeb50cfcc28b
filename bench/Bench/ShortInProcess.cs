using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Bench;

/// <summary>A short job in this process: a few seconds a benchmark, good to a few per cent.</summary>
public sealed class ShortInProcess : ManualConfig
{
    public ShortInProcess() => AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));
}
