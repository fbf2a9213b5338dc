using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Environments;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Perfolizer.Horology;
using TheoryKit.Benchmarks;

// dotnet run -c Release --project tests/TheoryKit.Benchmarks -- --filter '*'
// Each class sets the library against a plain way to the same answer, and throws if the answers differ.
var job = Job
    .Default.WithToolchain(InProcessEmitToolchain.Instance)
    .WithWarmupCount(4)
    .WithIterationCount(9)
    .WithIterationTime(TimeInterval.FromMilliseconds(150));
var config = ManualConfig
    .CreateEmpty()
    .AddJob(job)
    .AddLogger(ConsoleLogger.Default)
    .AddColumnProvider(DefaultColumnProviders.Instance)
    .AddColumn(StatisticColumn.Min)
    .AddLogicalGroupRules(BenchmarkLogicalGroupRule.ByCategory, BenchmarkLogicalGroupRule.ByParams)
    .AddDiagnoser(BenchmarkDotNet.Diagnosers.MemoryDiagnoser.Default)
    .AddExporter(MarkdownExporter.GitHub)
    .HideColumns(
        "Type",
        "Error",
        "Job",
        "Toolchain",
        "IterationCount",
        "IterationTime",
        "WarmupCount",
        "Gen0",
        "Gen1",
        "Gen2",
        "RatioSD",
        "Alloc Ratio"
    )
    .WithOptions(ConfigOptions.JoinSummary)
    .WithArtifactsPath(Path.Combine("artifacts", "benchmarks"));

Console.WriteLine($"{HostEnvironmentInfo.GetCurrent().Os.Value}");
Console.WriteLine(
    $"Picture of a neck with forty marks: {NeckPictureBenchmarks.Size():N0} bytes of UTF-8 (limit 20,000)."
);
BenchmarkSwitcher.FromAssembly(typeof(NeckPictureBenchmarks).Assembly).Run(args, config);
