using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using NodaTime;
using Thoubook.Record;
using Thoubook.Store;

namespace Thoubook.Benchmarks;

/// <summary>The store on this machine's disk: 100,000 readings imported (the aim is 5 s), a large engine loaded, one reading acknowledged.</summary>
[MemoryDiagnoser]
[SimpleJob(RunStrategy.Monitoring, iterationCount: 7, warmupCount: 2)]
public class StoreBenchmarks
{
    private readonly EngineRecord _large = AppraisalBenchmarks.LargeEngine();
    private string _folder = "";
    private WorkshopStore _store = null!;
    private List<Reading> _hundredThousand = null!;

    [GlobalSetup]
    public void Setup() => _hundredThousand = [.. Enumerable.Range(0, 5).SelectMany(_ => _large.Readings.Select(r => r with { Id = FactId.New() }))];

    [IterationSetup]
    public void Open()
    {
        _folder = Directory.CreateTempSubdirectory("thoubook-").FullName;
        WorkshopStore.Open(_folder, WhenMissing.MakeOne, SystemClock.Instance).IsOk(out _store, out _);
        Write(Change.Whole(_large, "owner"));
    }

    [IterationCleanup]
    public void Close()
    {
        _store.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>2,000 dimensions, 1,200 fits and 20,000 readings are there; 100,000 more come in one transaction.</summary>
    [Benchmark]
    public Changed Import() => Write(new Change(_large.Engine.Name, "owner") { Facts = _hundredThousand });

    /// <summary>2,000 dimensions, 1,200 fits and 20,000 readings.</summary>
    [Benchmark]
    public EngineRecord Load() => _store.Load(_large.Engine.Name).IsOk(out var record, out _) ? record : throw new InvalidOperationException();

    /// <summary>A hundred readings, each in a transaction of its own.</summary>
    [Benchmark(OperationsPerInvoke = 100)]
    public void Acknowledge()
    {
        for (var i = 0; i < 100; i++)
            Write(new Change(_large.Engine.Name, "bench") { Facts = [_hundredThousand[i]] });
    }

    private Changed Write(Change change) => _store.Write(change).IsOk(out var changed, out var problems) ? changed : throw new InvalidOperationException(string.Join('\n', problems));
}
