using NodaTime;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Store;
using Thoubook.Workshop;

namespace Thoubook.Cli.Tests;

/// <summary>A workshop in a folder of its own with one small engine, gone when the test is over.</summary>
internal sealed class Bench : IDisposable
{
    public const string Engine = "Test pump";
    public const string Depth = "pump/body.depth";
    public const string EndFloat = "pump.end-float";

    public const string TestPump = """
        engine: { name: Test pump, purpose: stand-run, invented: true }
        temperatures:
          hot: { everywhere: 80 °C }
        documents:
          book: { edition: 1st, rule: both limits must pass }
        gauges:
          M-1: { what: "outside micrometer", resolution: 0.1 thou, uncertainty: 0.05 thou, repeatability: 0.05 thou, material: steel }
        parts:
          pump/body: { material: cast aluminium }
          pump/driver: { material: steel }
        dimensions:
          pump/body.depth: { new: [1.2530 in, 1.2540 in], worn: 1.2560 in, document: "book, row 1" }
          pump/body.port: { new: [10.00 mm, 10.05 mm] }
          pump/driver.width: { new: [1.2505 in, 1.2515 in], worn: 1.2490 in }
        fits:
          pump.end-float: { gap: body.depth - driver.width, kind: end float, side: total, new: [1.5 thou, 3.5 thou], worn: 5 thou }
        readings:
          - { of: pump/driver.width, place: A1, value: 1.2510 in, gauge: M-1, temperature: 20 °C, by: owner, at: "2026-11-01T10:00:00+00:00" }
        """;

    public Bench(string engine = TestPump)
    {
        Folder = Directory.CreateTempSubdirectory("thoubook-bench-").FullName;
        using var workshop = Open();
        Take(EngineFile.Read(engine, "engine.yaml", new ImportTerms(Instant.FromUtc(2026, 11, 1, 9, 0).WithOffset(Offset.Zero), "owner")).Then(record => workshop.Save(record, "owner")));
    }

    public string Folder { get; }

    public OpenWorkshop Open() => Take(OpenWorkshop.Open(Folder, WhenMissing.MakeOne, SystemClock.Instance));

    public Spoken Says(params string[] words) => Spoken.Here(Folder, words);

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    public static T Take<T>(Record.Outcome<T> outcome) => outcome.IsOk(out var value, out var problems) ? value : throw new InvalidOperationException(string.Join("\n", problems));
}
