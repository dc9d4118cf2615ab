using NodaTime;
using Thoubook.Record;
using Thoubook.Workshop.Importing;

namespace Thoubook.Workshop.Tests.Closing;

/// <summary>A pump of a gear, a body and a cover in a crankcase that a sump closes: taken in from its engine file, one piece chosen, nothing done.</summary>
internal sealed class ClosedPump : IDisposable, IClock
{
    public const string Engine = "Test stand";

    private const string Text = """
        engine: { name: Test stand, purpose: stand-run }
        parts:
          pump/body: { material: cast aluminium }
          pump/gear: { material: steel }
          pump/cover: { material: cast aluminium }
        pieces:
          G-1: { for: pump/gear }
          G-2: { for: pump/gear, origin: donor }
        dimensions:
          pump/body.depth: { new: [1.2530 in, 1.2540 in] }
          pump/gear.width: { new: [1.2505 in, 1.2515 in] }
        fits:
          pump.end-float: { gap: body.depth - gear.width, new: [1.5 thou, 3.5 thou] }
        spaces:
          chamber: { in: crankcase, parts: [pump/gear] }
          crankcase: { parts: [pump] }
        joints:
          studs: { parts: [pump/body, pump/cover], tightening: 8 lbf ft, locking: tab washers }
        steps:
          gear-in: { kind: place, time: 20 min, places: [pump/gear], second-look: true }
          float: { kind: measure, time: 15 min, needs: [pump/gear], in: [chamber], measures: [pump.end-float] }
          cover-on:
            kind: close
            time: 30 min
            cure: 2 h
            open: 3 h
            places: [pump/cover]
            joints: [studs]
            brings: tightened
            closes: [chamber]
            photograph: the gears in the body
            holds: [{ kind: fit, of: pump.end-float }, { kind: judgement, what: turns free }]
            spoils: [film of jointing]
          lock: { kind: join, time: 20 min, joints: [studs] }
          sump-on: { kind: close, time: 40 min, closes: [crankcase], spoils: [sump gasket] }
        choices:
          - { piece: G-1, part: pump/gear }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-closing-").FullName;

    public ClosedPump()
    {
        Workshop = Bench.Ok(OpenWorkshop.Open(_folder, Store.WhenMissing.MakeOne, this));
        Bench.Ok(Workshop.Import([IncomingFile.Pasted("engine.yaml", Text)], new ImportOptions("owner")));
    }

    public Instant Now { get; set; } = Instant.FromUtc(2026, 3, 2, 9, 0);

    public OpenWorkshop Workshop { get; }

    public EngineRecord Record => Bench.Ok(Workshop.Engine(Engine));

    public Record.Closing.CloseUp Closing => Bench.Ok(Workshop.ClosingUp(Engine));

    public Instant GetCurrentInstant() => Now;

    public SignEntry Sign(string step, string by = "bench") => new(Engine, step, by);

    public void Measure(string depth, string width)
    {
        Bench.Ok(Workshop.AddReading(new ReadingEntry(Engine, "pump/body.depth", depth, "bench")));
        Bench.Ok(Workshop.AddReading(new ReadingEntry(Engine, "pump/gear.width", width, "bench")));
    }

    /// <summary>Everything up to the cover, which is not yet signed.</summary>
    public void UpToTheCover()
    {
        Measure("1.2535 in", "1.2510 in");
        Bench.Ok(Workshop.Place(new PieceEntry(Engine, "pump/body", "pump/body", "bench")));
        Bench.Ok(Workshop.Sign(Sign("gear-in") with { Placing = true }));
        Bench.Ok(Workshop.Sign(Sign("gear-in", "owner") with { SecondLook = true }));
        Bench.Ok(Workshop.Sign(Sign("float")));
        Bench.Ok(Workshop.MakeJoint(new JointEntry(Engine, "studs", Thoubook.Record.Closing.JointStage.Tightened, "bench") { Applied = "8 lbf ft" }));
        Bench.Ok(Workshop.Accept(new AcceptEntry(Engine, "cover-on", "turns free", "owner")));
    }

    public void Dispose()
    {
        Workshop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
