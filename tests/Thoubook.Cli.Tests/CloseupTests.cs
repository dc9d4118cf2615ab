using System.Text.Json;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

/// <summary>A pump closed up by the command alone.</summary>
public sealed class CloseupTests : IDisposable
{
    private const string Pump = """
        engine: { name: Test pump, purpose: stand-run }
        parts:
          pump/body: { material: cast aluminium }
          pump/gear: { material: steel }
          pump/cover: { material: cast aluminium }
        pieces:
          G-1: { for: pump/gear }
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
          gear-in: { kind: place, what: gear into the body, time: 20 min, places: [pump/gear], attitude: inverted, tools: [press] }
          float: { kind: measure, time: 15 min, needs: [pump/gear], in: [chamber], measures: [pump.end-float] }
          cover-on:
            kind: close
            time: 30 min
            places: [pump/cover]
            joints: [studs]
            brings: tightened
            closes: [chamber]
            photograph: the gear in the body
            holds: [{ kind: fit, of: pump.end-float }, { kind: judgement, what: turns free }]
            spoils: [film of jointing]
          lock: { kind: join, time: 20 min, joints: [studs] }
          sump-on: { kind: close, time: 40 min, closes: [crankcase], spoils: [sump gasket] }
        choices:
          - { piece: G-1, part: pump/gear }
        """;

    private readonly Bench _bench = new(Pump);

    public void Dispose() => _bench.Dispose();

    private Spoken Closeup(params string[] words) => _bench.Says(["closeup", words[0], Bench.Engine, .. words[1..], "--by", "bench"]);

    private JsonElement Ask(ExitStatus status, params string[] words) => _bench.Says(["closeup", words[0], Bench.Engine, .. words[1..], "--json"]).Is(status).Json;

    private void UpToTheCover()
    {
        _bench.Says("reading", "add", Bench.Engine, "pump/body.depth", "1.2535in").Is(ExitStatus.Good);
        _bench.Says("reading", "add", Bench.Engine, "pump/gear.width", "1.2510in").Is(ExitStatus.Good);
        _bench.Says("piece", "place", Bench.Engine, "pump/body", "pump/body").Is(ExitStatus.Good);
        Closeup("sign", "gear-in", "--placing").Is(ExitStatus.Good);
        Closeup("sign", "float").Is(ExitStatus.Good);
        Closeup("joint", "studs", "tightened", "--applied", "8 lbf ft").Is(ExitStatus.Good);
        Closeup("accept", "cover-on", "turns free").Is(ExitStatus.Good);
    }

    [Fact]
    public void Ready_SaysWhatCanBeDoneNow_AndWhatTheRestWants()
    {
        var answer = Ask(ExitStatus.Good, "ready");

        Assert.Equal(["gear-in"], answer.GetProperty("now").EnumerateArray().Select(s => s.GetProperty("name").GetString()));
        var cover = answer.GetProperty("later").EnumerateArray().Single(s => s.GetProperty("name").GetString() == "cover-on");
        Assert.Contains(cover.GetProperty("wants").EnumerateArray(), w => w.GetProperty("item").GetString() == "hold cover-on: pump.end-float" && w.GetProperty("kind").GetString() == "reading");
        Assert.Equal(125, answer.GetProperty("minutesLeft").GetProperty("one").GetDouble());
    }

    [Fact]
    public void Ready_InWords()
    {
        Closeup("joint", "studs", "pulled up").Is(ExitStatus.Good);
        Approved.Check("closeup-ready", _bench.Says("closeup", "ready", Bench.Engine, "--attitude", "upright", "--all").Is(ExitStatus.Good).Out);
        Assert.Contains("tool: press is not at hand", _bench.Says("closeup", "ready", Bench.Engine, "--away", "press", "--all").Is(ExitStatus.Good).Out, StringComparison.Ordinal);
        Assert.Contains("upright, inverted", _bench.Says("closeup", "ready", Bench.Engine, "--attitude", "flat").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_ASpaceIsClosed_NamesWhatIsMissing_AndWhatItCostsLater()
    {
        UpToTheCover();
        Closeup("undo", "--joint", "studs").Is(ExitStatus.Good);

        var answer = Ask(ExitStatus.Good, "before", "chamber");
        Assert.Equal("chamber", answer.GetProperty("space").GetString());
        Assert.Equal(["cover-on"], answer.GetProperty("closes").EnumerateArray().Select(s => s.GetString()));
        Assert.Empty(answer.GetProperty("missing").EnumerateArray());

        var crankcase = Ask(ExitStatus.FallsShort, "before", "crankcase");
        var joint = crankcase.GetProperty("missing").EnumerateArray().Single(m => m.GetProperty("item").GetString() == "joint studs");
        Assert.Equal("joint", joint.GetProperty("kind").GetString());
        Assert.Equal("studs is not made", joint.GetProperty("why").GetString());
        var cost = joint.GetProperty("costToGetBackIn");
        Assert.Equal(40, cost.GetProperty("minutes").GetDouble());
        Assert.Equal(["sump-on"], cost.GetProperty("steps").EnumerateArray().Select(s => s.GetString()));
        Assert.Equal(["sump gasket"], cost.GetProperty("consumables").EnumerateArray().Select(s => s.GetString()));
    }

    [Fact]
    public void Before_InWords_WithWhatIsOwed()
    {
        UpToTheCover();
        Closeup("sign", "cover-on", "--photographed").Is(ExitStatus.Good);
        Closeup("owe", "bend the tabs", "before the start", "--item", "joint studs", "--why", "no drift").Is(ExitStatus.Good);

        Approved.Check("closeup-before", _bench.Says("closeup", "before", Bench.Engine, "crankcase").Is(ExitStatus.Good).Out);
        Closeup("sign", "sump-on").Is(ExitStatus.Good);
    }

    [Fact]
    public void Sign_OverSomethingMissing_IsRefused_EachThingNamed()
    {
        var refused = Closeup("sign", "cover-on").Is(ExitStatus.BadInput).Error;

        Assert.Contains("float is not signed", refused, StringComparison.Ordinal);
        Assert.Contains("turns free: not accepted", refused, StringComparison.Ordinal);
        Assert.Contains("departure or a debt for \"joint studs\"", refused, StringComparison.Ordinal);
    }

    [Fact]
    public void Reach_APart_SaysWhatComesOff_AndWhatMustBeNew()
    {
        UpToTheCover();
        Closeup("sign", "cover-on", "--photographed").Is(ExitStatus.Good);

        var answer = Ask(ExitStatus.Good, "reach", "pump/gear");
        Assert.Equal(["cover-on"], answer.GetProperty("steps").EnumerateArray().Select(s => s.GetString()));
        Assert.Equal(30, answer.GetProperty("minutes").GetDouble());
        Assert.Equal(["cover-on", "float", "gear-in"], answer.GetProperty("takeOut").GetProperty("steps").EnumerateArray().Select(s => s.GetString()));
        Assert.Equal(["cover-on"], Ask(ExitStatus.Good, "reach", "chamber").GetProperty("steps").EnumerateArray().Select(s => s.GetString()));
        Approved.Check("closeup-reach", _bench.Says("closeup", "reach", Bench.Engine, "pump/gear").Is(ExitStatus.Good).Out);
        Assert.Contains("Did you mean pump/gear?", _bench.Says("closeup", "reach", Bench.Engine, "pump/gera").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Inside_AClosedSpace_ShowsItAsItWasLeft()
    {
        UpToTheCover();
        Closeup("sign", "cover-on", "--photographed", "--at", "2026-11-02T10:00:00+00:00").Is(ExitStatus.Good);
        Closeup("depart", "wire in place of tabs", "--why", "none to be had", "--joint", "studs", "--kind", "locking changed", "--for", "display", "--for", "stand-run").Is(ExitStatus.Good);

        Approved.Check("closeup-inside", _bench.Says("closeup", "inside", Bench.Engine, "crankcase").Is(ExitStatus.Good).Out);
        var answer = Ask(ExitStatus.Good, "inside", "chamber");
        Assert.True(answer.GetProperty("isClosed").GetBoolean());
        Assert.Equal(["wire in place of tabs"], Ask(ExitStatus.Good, "inside", "crankcase").GetProperty("departures").EnumerateArray().Select(d => d.GetString()));
    }

    [Fact]
    public void Note_HalfDoneFirst_AndADebtIsSettledByItsIdentifier()
    {
        Closeup("joint", "studs", "pulled up", "--at", "2026-11-02T10:00:00+00:00").Is(ExitStatus.Good);
        Closeup("count", "6", "gallery plugs", "out", "--space", "crankcase", "--at", "2026-11-02T10:01:00+00:00").Is(ExitStatus.Good);
        var debt = Closeup("owe", "bend the tabs", "before priming", "--at", "2026-11-02T10:02:00+00:00", "--id", "01932c5e-0000-7000-8000-000000000103").Is(ExitStatus.Good).Out.Trim();

        Approved.Check("closeup-note", _bench.Says("closeup", "note", Bench.Engine).Is(ExitStatus.Good).Out);
        Closeup("settle", debt, "--how", "bent").Is(ExitStatus.Good);
        Assert.Empty(Ask(ExitStatus.Good, "note").GetProperty("owed").EnumerateArray());
    }

    [Theory]
    [InlineData("joint", "studs", "tight", "pulled up")]
    [InlineData("owe", "later", "soon", "before it is turned")]
    [InlineData("sign", "cover-om", null, "Did you mean cover-on?")]
    [InlineData("before", "chambr", null, "Did you mean chamber?")]
    [InlineData("settle", "01932c5e-0000-7000-8000-000000000199", null, "list of what is owed")]
    [InlineData("undo", "--step", "cover-on", "a step that is signed")]
    public void BadInput_IsRefusedInWords(string verb, string first, string? second, string says)
    {
        string[] words = second is null ? [verb, first] : [verb, first, second];
        var error = _bench.Says(["closeup", words[0], Bench.Engine, .. words[1..]]).Is(ExitStatus.BadInput).Error;
        Assert.Contains(says, error, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Ready_OfAnEngineWithoutAPlan_SaysHowToMakeOne()
    {
        using var bare = new Bench();
        Assert.Contains("a starter", bare.Says("closeup", "ready", Bench.Engine).Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }
}
