using System.Globalization;
using System.Text;
using NodaTime;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;

namespace Thoubook.Web.Tests;

/// <summary>Invented engines with a plan: a small one with one of everything that a sheet of closing up can show, and one as large as is wanted.</summary>
public static class InventedPlan
{
    public const string Name = "Dunlin single";

    public const string LargeName = "Godwit eight";

    private const string Text = """
        engine: { name: Dunlin single, purpose: stand-run, invented: true }
        documents:
          overhaul-book: { title: Overhaul book, edition: 2nd }
        parts:
          pump/body: { material: cast aluminium }
          pump/gear: { material: steel }
          pump/cover: { material: cast aluminium }
          crankcase: { material: cast aluminium }
          sump: { material: cast aluminium }
          governor: { intent: blanked, instead: a plate of 3 mm }
        pieces:
          P-31: { for: pump/gear }
        choices:
          - { piece: P-31, part: pump/gear, by: owner, at: "2026-11-08T09:00:00+00:00", id: 01932c5e-0000-7000-8000-0000000d0101 }
        fits:
          pump.end-float: { kind: end float, new: [1.5 thou, 3.5 thou], worn: 5 thou }
        spaces:
          pump-chamber: { what: chamber of the pump, in: crankcase, parts: [pump/gear] }
          crankcase: { parts: [pump] }
        joints:
          cover-studs: { parts: [pump/body, pump/cover], in: crankcase, thread: 1/4 BSF, number: 6, tightening: "60 lbf in, oiled, crosswise", locking: tab washers, sealing: film of jointing, inspected: true, document: "overhaul-book, row 21" }
          sump-studs: { parts: [crankcase, sump], thread: 1/4 BSF, number: 32, tightening: 60 lbf in, sealing: paper }
        steps:
          case-washed: { kind: inspect, what: wash the crankcase, time: 40 min, tools: [paraffin, lamp], attitude: inverted, in: [crankcase], holds: [{ kind: cleanliness, what: every oilway sighted }] }
          body-in: { kind: place, what: pump body on its face, time: 15 min, places: [pump/body] }
          gear-in: { kind: place, what: driving gear into the body, time: 20 min, attitude: on its side, tools: [feeler gauges], places: [pump/gear], needs: [pump/body], second-look: true, photograph: marks of both gears in mesh }
          end-float: { kind: measure, what: end float of the gear, time: 15 min, needs: [pump/gear], in: [pump-chamber], measures: [pump.end-float] }
          turned: { kind: turn by hand, what: turn the pump by hand, time: 5 min, needs: [pump/gear], in: [pump-chamber], holds: [{ kind: judgement, what: turns free }] }
          cover-on: { kind: close, what: "pump cover on, nuts pulled up", time: 30 min, cure: 2 h, open: 3 h, people: 2, places: [pump/cover], joints: [cover-studs], brings: pulled up, closes: [pump-chamber], holds: [{ kind: fit, of: pump.end-float }, { kind: cleanliness, what: chamber wiped and looked into with a lamp }], spoils: [film of jointing], document: "overhaul-book, row 22" }
          cover-locked: { kind: join, what: pump cover tightened and locked, time: 20 min, joints: [cover-studs] }
          sump-on: { kind: close, what: sump on, time: 45 min, attitude: inverted, places: [sump], joints: [sump-studs], closes: [crankcase], spoils: [sump paper] }
          plate-on: { kind: place, what: governor drive, places: [governor] }
        departures:
          - { what: wire in place of tab washers, why: none to be had, kind: locking changed, piece: P-31, purposes: [display, stand-run], undoing: "cut the wire, fit tabs", by: owner, at: "2026-11-10T11:00:00+00:00", id: 01932c5e-0000-7000-8000-0000000d0116 }
        debts:
          - { what: stamp the number on the body, deadline: before the start, why: stamps are lent, by: bench, at: "2026-11-10T12:00:00+00:00", id: 01932c5e-0000-7000-8000-0000000d0103 }
        counts:
          - { what: gallery plugs, number: 6, way: out, space: crankcase, note: in the tin, by: bench, at: "2026-11-09T09:00:00+00:00", id: 01932c5e-0000-7000-8000-0000000d0114 }
          - { what: gallery plugs, number: 5, way: in, by: bench, at: "2026-11-09T10:00:00+00:00", id: 01932c5e-0000-7000-8000-0000000d0115 }
        """;

    public static EngineRecord Small() => Read(Text);

    /// <summary>So many steps in so many spaces, nested three deep; a third of them signed.</summary>
    public static EngineRecord Large(int steps, int spaces)
    {
        var (parts, joints, rooms, plan, signed) = (new StringBuilder(), new StringBuilder(), new StringBuilder(), new StringBuilder(), new StringBuilder());
        for (var s = 0; s < spaces; s++)
            rooms.AppendLine(CultureInfo.InvariantCulture, $"  room-{s}: {{ what: chamber number {s} of the rear auxiliary drive, {(s > 2 ? $"in: room-{(s - 3) / 3}, " : "")}parts: [unit-{s}] }}");
        for (var i = 0; i < steps - spaces; i++)
        {
            var room = i % spaces;
            var before = i >= spaces ? $", needs: [unit-{room}/part-{i - spaces}]" : "";
            parts.AppendLine(CultureInfo.InvariantCulture, $"  unit-{room}/part-{i}: {{ material: steel }}");
            plan.AppendLine(CultureInfo.InvariantCulture, $"  unit-{room}/fit-{i}: {{ kind: place, what: intermediate gear number {i} with its distance piece, time: {10 + (i % 7 * 5)} min, places: [unit-{room}/part-{i}]{before}, tools: [drift {i % 5}] }}");
            if (i < steps / 3)
                signed.AppendLine(CultureInfo.InvariantCulture, $"  - {{ step: unit-{room}/fit-{i}, by: bench, at: \"2026-11-10T09:{i % 60:00}:00+00:00\" }}");
        }

        for (var s = 0; s < spaces; s++)
        {
            parts.AppendLine(CultureInfo.InvariantCulture, $"  covers/cover-{s}: {{ material: cast aluminium }}");
            parts.AppendLine(CultureInfo.InvariantCulture, $"  covers/body-{s}: {{ material: cast aluminium }}");
            joints.AppendLine(CultureInfo.InvariantCulture, $"  studs-{s}: {{ parts: [covers/cover-{s}, covers/body-{s}], {(s > 2 ? $"in: room-{(s - 3) / 3}, " : "")}thread: 1/4 BSF, number: 8, tightening: 60 lbf in, locking: tab washers }}");
            plan.AppendLine(CultureInfo.InvariantCulture, $"  close-{s}: {{ kind: close, what: cover of chamber number {s} with its gasket, time: 30 min, places: [covers/cover-{s}], joints: [studs-{s}], closes: [room-{s}], spoils: [gasket {s}] }}");
        }

        return Read($"engine: {{ name: {LargeName}, purpose: stand-run, invented: true }}\nparts:\n{parts}spaces:\n{rooms}joints:\n{joints}steps:\n{plan}signatures:\n{signed}");
    }

    private static EngineRecord Read(string text) =>
        OpenWeb.Taken(EngineFile.Read(text, "engine.yaml", new ImportTerms(Instant.FromUtc(2026, 11, 1, 9, 0).WithOffset(Offset.Zero), "owner")));
}
