using NodaTime;
using Thoubook.Record;
using Thoubook.Store;
using Thoubook.Workshop.Importing;

namespace Thoubook.Workshop.Tests.Oil;

/// <summary>A workshop in a folder of its own, with an engine whose whole oil system is a pump, a relief valve, one bearing and a plugged port.</summary>
internal sealed class OilBench : IDisposable
{
    public const string Engine = "Oil bench";
    public const string Clearance = "crankcase/main.clearance";

    private const string File = """
        engine: { name: Oil bench, purpose: stand-run, invented: true }
        parts:
          crankcase/main/shells: { material: bronze }
          crankshaft: { material: steel }
        dimensions:
          crankcase/main/shells.bore: { new: [2.5010 in, 2.5016 in], worn: 2.5035 in }
          crankshaft.main: { new: [2.4990 in, 2.4995 in], worn: 2.4975 in }
        fits:
          crankcase/main.clearance: { gap: shells.bore - crankshaft.main, kind: clearance, side: diametral, new: [1.5 thou, 2.6 thou], worn: 5 thou }
        circuit:
          oil: { grade: SAE 40 }
          nodes:
            tank: { pressure: 0 psi }
            sump: { pressure: 0 psi }
          elements:
            suction: { kind: pipe, from: tank, to: inlet, bore: 1 in, length: 20 in }
            pump: { kind: pump, from: inlet, to: gallery, displacement: 0.1 in3 }
            relief: { kind: disc valve, from: gallery, to: sump, seat: 0.5 in, cracking: 60 psi, spring: 40 lbf/in, lift: 0.2 in }
            main: { kind: grooved bearing, from: gallery, to: sump, part: crankcase/main, diameter: crankshaft.main, clearance: clearance, land: 0.5 in }
            port: { kind: jet, from: gallery, to: sump, bore: 0.1 in, blanked: true }
          gauges:
            main: { at: gallery, uncertainty: 0.5 psi }
          states:
            hot idle: { speed: 450 rev/min, oil: 80 °C, limits: { main: { least: 10 psi } } }
            cruise: { speed: 1400 rev/min, oil: 75 °C }
            cold start: { speed: 600 rev/min, oil: 10 °C }
          flow test: { at: gallery, pressure: 30 psi, oil: 30 °C }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-oil-").FullName;

    public OilBench()
    {
        Workshop = Bench.Ok(OpenWorkshop.Open(_folder, WhenMissing.MakeOne, SystemClock.Instance));
        Bench.Ok(Workshop.Import([IncomingFile.Pasted("engine.yaml", File)], new ImportOptions("owner")));
    }

    public OpenWorkshop Workshop { get; }

    public EngineRecord Record => Bench.Ok(Workshop.Engine(Engine));

    public void Dispose()
    {
        Workshop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
