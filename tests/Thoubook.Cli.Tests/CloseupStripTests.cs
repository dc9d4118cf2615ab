using System.Text.Json;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

/// <summary>A pump taken apart, permitted to run and put to another purpose by the command alone.</summary>
public sealed class CloseupStripTests : IDisposable
{
    private const string Pump = """
        engine: { name: Test pump, purpose: stand-run, states: [mod 2] }
        parts:
          pump/body: { material: cast aluminium }
          pump/gear: { material: steel, asks: [which tooth is chipped] }
          pump/cover: { material: cast aluminium, state: mod 2 }
          pump/early-cover: { state: mod 1 }
          feed-pipe: {}
          boss: { function-unknown: true, note: on the left }
        pieces:
          G-1: { for: pump/gear }
        dimensions:
          pump/body.depth: { new: [1.2530 in, 1.2540 in] }
          pump/gear.width: { new: [1.2505 in, 1.2515 in] }
        fits:
          pump.end-float: { kind: end float, gap: body.depth - gear.width, new: [1.5 thou, 3.5 thou] }
        spaces:
          chamber: { parts: [pump/gear] }
        joints:
          studs: { parts: [pump/body, pump/cover], tightening: 8 lbf ft, locking: lock-wire }
          feed-union: { parts: [pump/body, feed-pipe], tightening: nipped }
        steps:
          gear-in: { kind: place, what: gear into the body, time: 20 min, places: [pump/gear], holds: [{ kind: orientation, what: oil hole upwards }] }
          cover-on: { kind: close, time: 30 min, places: [pump/cover], joints: [studs], closes: [chamber], spoils: [film of jointing] }
          feed-on: { kind: join, time: 5 min, places: [feed-pipe], joints: [feed-union] }
        tools:
          cam nut spanner: { kept: drawer 3, made: from a box spanner }
        permission:
          extinguisher: { what: extinguisher within reach }
        choices:
          - { piece: G-1, part: pump/gear }
        """;

    private readonly Bench _bench = new(Pump);

    public void Dispose() => _bench.Dispose();

    private Spoken Closeup(params string[] words) => _bench.Says(["closeup", words[0], Bench.Engine, .. words[1..], "--by", "bench"]);

    private JsonElement Ask(ExitStatus status, params string[] words) => _bench.Says(["closeup", words[0], Bench.Engine, .. words[1..], "--json"]).Is(status).Json;

    private void CloseItUp()
    {
        Closeup("accept", "gear-in", "oil hole upwards").Is(ExitStatus.Good);
        Closeup("sign", "gear-in", "--placing").Is(ExitStatus.Good);
        Closeup("joint", "studs", "locked").Is(ExitStatus.Good);
        Closeup("sign", "cover-on").Is(ExitStatus.Good);
        Closeup("joint", "feed-union", "tightened").Is(ExitStatus.Good);
        Closeup("sign", "feed-on").Is(ExitStatus.Good);
    }

    [Fact]
    public void Strip_AsksWhatEachRemovalDestroys_UntilItIsAnsweredOrPassedOver()
    {
        Approved.Check("closeup-strip", _bench.Says("closeup", "strip", Bench.Engine).Is(ExitStatus.Good).Out);

        Closeup("as-found", "pump/gear", "pump.end-float", "5.5thou").Is(ExitStatus.Good);
        Closeup("as-found", "joint studs", "route of the lock-wire", "--words", "clockwise").Is(ExitStatus.Good);
        Closeup("as-found", "studs", "release feel", "--skip").Is(ExitStatus.Good);
        Closeup("as-found", "pump/cover", "tag", "--tag", "44").Is(ExitStatus.Good);
        var removals = Ask(ExitStatus.Good, "strip").GetProperty("removals").EnumerateArray().ToList();
        var cover = removals.Single(r => r.GetProperty("step").GetString() == "cover-on");
        Assert.Equal(
            [("route of the lock-wire", "clockwise"), ("release feel", "passed over"), ("tag", "tag 44")],
            cover.GetProperty("asks").EnumerateArray().Select(a => (a.GetProperty("what").GetString(), a.GetProperty("answer").GetString())));
        Assert.DoesNotContain("lock-wire", _bench.Says("closeup", "strip", Bench.Engine).Is(ExitStatus.Good).Out, StringComparison.Ordinal);
        Assert.Contains("route of the lock-wire = clockwise", _bench.Says("closeup", "strip", Bench.Engine, "--all").Is(ExitStatus.Good).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Strip_ToOnePart_HasItsHoursAndWhatMustBeNew()
    {
        var off = Ask(ExitStatus.Good, "strip", "pump/gear").GetProperty("takeOut");
        Assert.Equal((50, "cover-on gear-in", "film of jointing"), (off.GetProperty("minutes").GetDouble(), string.Join(' ', off.GetProperty("steps").EnumerateArray()), off.GetProperty("consumables")[0].GetString()));
        Assert.Contains("pump/gear", _bench.Says("closeup", "strip", Bench.Engine, "pump/geer").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AsFound_AgainstAsLeft()
    {
        Assert.Contains("Nothing was taken down", _bench.Says("closeup", "as-found", Bench.Engine).Is(ExitStatus.Good).Out, StringComparison.Ordinal);
        Closeup("as-found", "pump/gear", "pump.end-float", "5.5", "thou").Is(ExitStatus.Good);
        Closeup("as-found", "joint studs", "route of the lock-wire", "--words", "clockwise").Is(ExitStatus.Good);
        _bench.Says("reading", "add", Bench.Engine, "pump/body.depth", "1.2535in").Is(ExitStatus.Good);
        _bench.Says("reading", "add", Bench.Engine, "pump/gear.width", "1.2510in").Is(ExitStatus.Good);
        Approved.Check("closeup-as-found", _bench.Says("closeup", "as-found", Bench.Engine).Is(ExitStatus.Good).Out);
        var found = Ask(ExitStatus.Good, "as-found").GetProperty("found")[0];
        Assert.Equal(-3e-3 * 0.0254, found.GetProperty("difference").GetDouble(), 1e-9);
        Assert.Contains("no WHAT", _bench.Says("closeup", "as-found", Bench.Engine, "pump/gear").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
        Assert.Contains("A figure", _bench.Says("closeup", "as-found", "--help").Is(ExitStatus.Good).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Permit_LineByLine_AndOneLapsesAlone()
    {
        Assert.Contains("cover-on is not signed", Closeup("permit", "space chamber").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
        CloseItUp();
        Approved.Check("closeup-permit", _bench.Says("closeup", "permit", Bench.Engine).Is(ExitStatus.FallsShort).Out);
        foreach (var line in Ask(ExitStatus.FallsShort, "permit").GetProperty("lines").EnumerateArray().Select(l => l.GetProperty("line").GetString()!))
            Closeup("permit", line).Is(ExitStatus.Good);
        Assert.True(Ask(ExitStatus.Good, "permit").GetProperty("granted").GetBoolean());

        Closeup("joint", "feed-union", "tightened", "--note", "nipped up: it wept").Is(ExitStatus.Good);
        var lines = Ask(ExitStatus.FallsShort, "permit").GetProperty("lines").EnumerateArray().ToList();
        Assert.Equal(["joint feed-union"], lines.Where(l => l.GetProperty("state").GetString() == "lapsed").Select(l => l.GetProperty("line").GetString()));
        Closeup("permit", "feed-union").Is(ExitStatus.Good);
        _bench.Says("closeup", "permit", Bench.Engine).Is(ExitStatus.Good);
        Closeup("permit", "extinguisher", "--withdraw", "--note", "empty").Is(ExitStatus.Good);
        Assert.Contains("undone: empty", _bench.Says("closeup", "permit", Bench.Engine).Is(ExitStatus.FallsShort).Out, StringComparison.Ordinal);
        Assert.Contains("no LINE", Closeup("permit", "--withdraw").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Purpose_IsShownFirst_ThenChanged()
    {
        CloseItUp();
        Closeup("depart", "wire in place of tabs", "--why", "none to be had", "--joint", "studs", "--undoing", "cut the wire, fit tabs").Is(ExitStatus.Good);
        Closeup("permit", "extinguisher").Is(ExitStatus.Good);
        Assert.Empty(Ask(ExitStatus.Good, "purpose").GetProperty("falls").EnumerateArray());
        Approved.Check("closeup-purpose", _bench.Says("closeup", "purpose", Bench.Engine, "licensed").Is(ExitStatus.FallsShort).Out);
        Assert.False(Ask(ExitStatus.FallsShort, "purpose", "working").GetProperty("changed").GetBoolean());

        Closeup("purpose", "licensed", "--change").Is(ExitStatus.FallsShort);
        Assert.Contains("licensed body", Closeup("permit", "extinguisher").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
        Assert.Contains("display, stand-run, working, licensed", _bench.Says("closeup", "purpose", Bench.Engine, "pleasure").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void States_ListsWhatIsNotSimplyFitted()
    {
        Approved.Check("closeup-states", _bench.Says("closeup", "states", Bench.Engine).Is(ExitStatus.Good).Out);
        var answer = Ask(ExitStatus.Good, "states");
        Assert.Equal(("pump/early-cover", "boss", "drawer 3"), (answer.GetProperty("ofAnotherState")[0].GetString(), answer.GetProperty("functionUnknown")[0].GetString(), answer.GetProperty("tools")[0].GetProperty("kept").GetString()));
    }
}
