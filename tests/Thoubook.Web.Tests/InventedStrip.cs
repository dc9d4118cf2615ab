using NodaTime;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;

namespace Thoubook.Web.Tests;

/// <summary>An invented pump to be taken apart: shims, a wired cover, two pipes outside, parts of two states.</summary>
public static class InventedStrip
{
    public const string Name = "Wader pump";

    private const string Text = """
        engine: { name: Wader pump, purpose: stand-run, invented: true, states: [mod 2] }
        parts:
          pump/body: { material: cast aluminium }
          pump/gear: { material: steel, asks: [which tooth is chipped] }
          pump/shims: { material: steel }
          pump/cover: { material: cast aluminium, state: mod 2 }
          pump/early-cover: { state: mod 1 }
          heater: { intent: blanked, instead: heater-plate }
          heater-plate: {}
          feed-pipe: {}
          boss: { function-unknown: true, note: on the left }
        pieces:
          G-1: { for: pump/gear }
        dimensions:
          pump/body.depth: { new: [1.2530 in, 1.2540 in] }
          pump/gear.width: { new: [1.2505 in, 1.2515 in] }
          pump/shims.thickness: { new: [0 thou, 3 thou] }
        fits:
          pump.end-float: { kind: end float, gap: body.depth - gear.width - shims.thickness, new: [1.5 thou, 3.5 thou] }
        spaces:
          chamber: { what: chamber of the pump, parts: [pump/gear, pump/shims] }
        joints:
          studs: { parts: [pump/body, pump/shims, pump/cover], tightening: 8 lbf ft, locking: lock-wire }
          feed-union: { parts: [pump/body, feed-pipe], tightening: nipped }
        steps:
          gear-in: { kind: place, what: gear into the body, time: 20 min, places: [pump/gear] }
          shims-in: { kind: place, what: shims under the cover, time: 5 min, places: [pump/shims], needs: [pump/gear] }
          cover-on: { kind: close, what: pump cover on, time: 30 min, places: [pump/cover], joints: [studs], closes: [chamber], spoils: [film of jointing] }
          feed-on: { kind: join, what: feed pipe, time: 5 min, places: [feed-pipe], joints: [feed-union] }
        together:
          late-cover: { parts: [pump/cover, pump/shims], why: the later cover stands off by the shims }
        tools:
          cam nut spanner: { kept: drawer 3, made: from a box spanner }
        permission:
          extinguisher: { what: extinguisher within reach }
        departures:
          - { what: wire in place of tabs, why: none to be had, joint: studs, purposes: [display, stand-run], undoing: "cut the wire, fit tabs", by: owner, at: "2026-11-10T11:00:00+00:00", id: 01932c5e-0000-7000-8000-000000000116 }
        """;

    public static EngineRecord Record() => EngineFile.Read(Text, "strip.yaml", new ImportTerms(Instant.FromUtc(2026, 11, 1, 9, 0).WithOffset(Offset.Zero), "owner")).IsOk(out var record, out var problems)
        ? record
        : throw new InvalidOperationException(string.Join('\n', problems));
}
