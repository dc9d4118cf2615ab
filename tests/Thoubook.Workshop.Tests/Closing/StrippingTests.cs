using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Workshop.Tests.Closing;

/// <summary>What is found before a thing is disturbed, permission to run, and another purpose.</summary>
public sealed class StrippingTests : IDisposable
{
    private readonly ClosedPump _pump = new();

    private OpenWorkshop Workshop => _pump.Workshop;

    public void Dispose() => _pump.Dispose();

    private static AsFoundEntry Found(string of, string what) => new(ClosedPump.Engine, what, "bench") { Of = of };

    private Problem Refused(AsFoundEntry entry) => Bench.Refused(Workshop.TakeAsFound(entry));

    [Fact]
    public void AFigure_IsReadAsItsReadingsAre_AndStandsAgainstWhatIsLeft()
    {
        var found = Bench.Ok(Workshop.TakeAsFound(Found("joint studs", "pump.end-float") with { Value = "6" }));
        Assert.Equal(("pump.end-float", "6 thou", "studs"), (found.Figure.ToString(), found.Value!.Unit.Show(found.Value.Si), found.Joint!.Value.Text));
        Assert.Null(Assert.Single(Bench.Ok(Workshop.FoundAndLeft(ClosedPump.Engine))).Left);

        _pump.Measure("1.2535 in", "1.2510 in");
        var report = Assert.Single(Bench.Ok(Workshop.FoundAndLeft(ClosedPump.Engine)));
        Assert.Equal("from the readings of its parts", report.Left!.By);
        Assert.Equal("-3.5 thou", report.DifferenceSaid);

        Bench.Ok(Workshop.AddReading(new ReadingEntry(ClosedPump.Engine, "pump.end-float", "3 thou", "bench")));
        Assert.Equal("-3 thou", Assert.Single(Bench.Ok(Workshop.FoundAndLeft(ClosedPump.Engine))).DifferenceSaid);
    }

    [Fact]
    public void ATag_BecomesAPieceOfThePart_AndNoTwoThingsBearOne()
    {
        var entry = Found("pump/cover", "tag") with { Tag = "44", Id = FactId.New() };
        Bench.Ok(Workshop.TakeAsFound(entry));
        Bench.Ok(Workshop.TakeAsFound(entry));
        Assert.Equal("pump/cover", _pump.Record.Index.Piece(new PieceTag("44"))!.For.ToString());
        Assert.Single(_pump.Record.AsFound);
        Assert.Equal("tag-taken", Refused(Found("pump/body", "tag") with { Tag = "44" }).Code);
        Assert.Equal("tag-taken", Refused(Found("pump/body", "tag") with { Tag = "G-1" }).Code);
        Assert.Equal("tag-of-a-joint", Refused(Found("joint studs", "tag") with { Tag = "45" }).Code);
    }

    [Fact]
    public void WhatIsPassedOver_IsNotAskedAgain()
    {
        var strip = Bench.Ok(Workshop.Strip(ClosedPump.Engine));
        var cover = strip.Removals.Single(r => r.Joints.Count > 0);
        var asked = strip.Open(cover).Select(a => a.What).ToList();
        Assert.Contains("how it is locked", asked);
        foreach (var ask in strip.Open(cover).ToList())
            Bench.Ok(Workshop.TakeAsFound(Found(ask.Of.ToString(), ask.What) with { Skipped = true }));
        strip = Bench.Ok(Workshop.Strip(ClosedPump.Engine));
        Assert.Empty(strip.Open(strip.Removals.Single(r => r.Joints.Count > 0)));
        Assert.Empty(Bench.Ok(Workshop.FoundAndLeft(ClosedPump.Engine)));
    }

    [Fact]
    public void WhatIsNotThere_IsRefused_WithTheNearest()
    {
        Assert.Equal("found-nothing", Refused(Found("pump/gear", "which way")).Code);
        Assert.Contains("pump/gear", Refused(Found("pump/geer", "which way") with { Words = "left" }).DoThis, StringComparison.Ordinal);
        Assert.Equal("found-of-what", Refused(new AsFoundEntry(ClosedPump.Engine, "which way", "bench") { Words = "left" }).Code);
        Assert.Equal("value", Refused(Found("pump/gear", "pump/gear.width") with { Value = "a lot" }).Field);
        Assert.Contains("pump/gear", Bench.Refused(Workshop.WhatComesOff(ClosedPump.Engine, "pump/geer")).DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatComesOff_IsTheShortestWay()
    {
        var off = Bench.Ok(Workshop.WhatComesOff(ClosedPump.Engine, "pump/gear"));
        Assert.Equal((["sump gasket", "film of jointing"], 125), (off.Way.Consumables, off.Way.Minutes), (a, b) => a.Item1.SequenceEqual(b.Item1) && Math.Abs(a.Item2 - b.Item2) < 1e-9);
        Assert.Empty(Bench.Ok(Workshop.WhatComesOff(ClosedPump.Engine, "pump/gear", whole: false)).Way.Steps);
    }

    [Fact]
    public void Permission_IsGrantedLineByLine_WhereItsGroundIs()
    {
        var refused = Bench.Refused(Workshop.Grant(new PermitEntry(ClosedPump.Engine, "crankcase", "owner")));
        Assert.Equal("permission-ground", refused.Code);
        Assert.Contains("sump-on is not signed", refused.Allowed, StringComparison.Ordinal);
        Assert.Contains("space crankcase", Bench.Refused(Workshop.Grant(new PermitEntry(ClosedPump.Engine, "space crankase", "owner"))).DoThis, StringComparison.Ordinal);

        _pump.UpToTheCover();
        Bench.Ok(Workshop.Sign(_pump.Sign("cover-on") with { Photographed = true }));
        Bench.Ok(Workshop.MakeJoint(new JointEntry(ClosedPump.Engine, "studs", JointStage.Locked, "bench")));
        _pump.Now = _pump.Now.Plus(NodaTime.Duration.FromHours(3));
        Bench.Ok(Workshop.Sign(_pump.Sign("lock")));
        Bench.Ok(Workshop.Sign(_pump.Sign("sump-on")));

        var line = Bench.Ok(Workshop.Grant(new PermitEntry(ClosedPump.Engine, "space crankcase", "owner") { Note = "seen" }));
        Assert.Equal(Purpose.StandRun, line.Purpose);
        Assert.True(Bench.Ok(Workshop.Permission(ClosedPump.Engine)).IsGranted);
        Assert.Equal("permission-granted-already", Bench.Refused(Workshop.Grant(new PermitEntry(ClosedPump.Engine, "space crankcase", "owner"))).Code);

        Bench.Ok(Workshop.Withdraw(new WithdrawEntry(ClosedPump.Engine, "space crankcase", "owner") { Why = "a stranger was at it" }));
        Assert.Equal("permission to run, space crankcase was undone: a stranger was at it", Assert.Single(Bench.Ok(Workshop.Permission(ClosedPump.Engine)).Lines).Why);
        Assert.Equal("permission-not-granted", Bench.Refused(Workshop.Withdraw(new WithdrawEntry(ClosedPump.Engine, "space crankcase", "owner"))).Code);
        Bench.Ok(Workshop.Grant(new PermitEntry(ClosedPump.Engine, "space crankcase", "owner")));

        // Swapping the gear lapses it, through the signature of the sump.
        Bench.Ok(Workshop.Place(new PieceEntry(ClosedPump.Engine, "pump/gear", "G-2", "bench")));
        Assert.True(Assert.Single(Bench.Ok(Workshop.Permission(ClosedPump.Engine)).Lines).HasLapsed);
    }

    [Fact]
    public void AnotherPurpose_IsShownFirst_ThenChanged_AndAClashIsTold()
    {
        var departure = Bench.Ok(Workshop.Depart(new DepartureEntry(ClosedPump.Engine, "wire in place of tabs", "none to be had", "owner") { Joint = "studs", Undoing = "cut the wire" }));
        var revision = _pump.Record.Engine.Revision;
        Assert.Equal(departure.Id, Assert.Single(Bench.Ok(Workshop.PurposeChange(ClosedPump.Engine, Purpose.Working)).Falls).Departure.Id);
        Assert.Equal(Purpose.StandRun, _pump.Record.Engine.Purpose);

        Bench.Ok(Workshop.ChangePurpose(new PurposeEntry(ClosedPump.Engine, Purpose.Licensed, "owner") { Revision = revision }));
        Assert.Equal("revision-clash", Bench.Refused(Workshop.ChangePurpose(new PurposeEntry(ClosedPump.Engine, Purpose.Working, "bench") { Revision = revision })).Code);
        Assert.Equal("permission-licensed", Bench.Refused(Workshop.Grant(new PermitEntry(ClosedPump.Engine, "space crankcase", "owner"))).Code);
        Bench.Ok(Workshop.ChangePurpose(new PurposeEntry(ClosedPump.Engine, Purpose.Display, "owner")));
        Assert.Equal("permission-display", Bench.Refused(Workshop.Grant(new PermitEntry(ClosedPump.Engine, "space crankcase", "owner"))).Code);
    }
}
