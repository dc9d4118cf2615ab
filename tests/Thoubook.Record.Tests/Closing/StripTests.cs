using Thoubook.Record.Closing;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;

namespace Thoubook.Record.Tests.Closing;

/// <summary>A gear with shims under a wired cover, in a crankcase that a sump closes, taken apart.</summary>
public sealed class StripTests
{
    private static readonly PartName Body = PartName.Of("pump/body");
    private static readonly PartName Gear = PartName.Of("pump/gear");
    private static readonly PartName Shims = PartName.Of("pump/shims");
    private static readonly PartName Cover = PartName.Of("pump/cover");
    private static readonly PartName Sump = PartName.Of("sump");
    private static readonly FigureName Float = FigureName.Of("pump.end-float");
    private static readonly FigureName Projection = FigureName.Of("pump/body.stud-projection");
    private static readonly JointName Studs = new("cover-studs");
    private static readonly JointName SumpStuds = new("sump-studs");

    private static EngineRecord Pump() => Bench.Record(
        Bench.Step("gear-in") with { Places = [Gear], Photograph = "marks in mesh", Holds = [new HoldPoint(HoldKind.Orientation, "oil hole upwards")] },
        Bench.Step("studs-out", StepKind.Measure) with { Needs = [Cover], Measures = [Projection] },
        Bench.Step("shims-in") with { Places = [Shims], Needs = [Gear] },
        Bench.Step("cover-on", StepKind.Close) with { Places = [Cover], Joints = [Studs], Closes = Bench.Spaces("chamber"), Spoils = ["film of jointing"] },
        Bench.Step("sump-on", StepKind.Close) with { Places = [Sump], Joints = [SumpStuds], Closes = Bench.Spaces("crankcase"), Spoils = ["sump gasket"] })
        with
    {
        Parts = [new Part(Body), new Part(Gear) { Asks = ["which tooth is chipped"] }, new Part(Shims), new Part(Cover), new Part(Sump), new Part(PartName.Of("breather"))],
        Fits = [new Fit(Float) { FitKind = FitKind.EndFloat, Gap = [new GapTerm(1, new FigureName(Body, "depth")), new GapTerm(-1, new FigureName(Gear, "width")), new GapTerm(-1, new FigureName(Shims, "thickness"))] }, new Fit(FigureName.Of("pump.shaft-clearance"))],
        Dimensions = [new Dimension(new FigureName(Body, "depth")), new Dimension(new FigureName(Gear, "width")), new Dimension(Projection), new Dimension(new FigureName(Shims, "thickness"))],
        Spaces = [new Space(new SpaceName("chamber")) { In = new SpaceName("crankcase"), Parts = [Gear, Shims] }, new Space(new SpaceName("crankcase")) { Parts = [PartName.Of("pump")] }],
        Joints =
        [
            new Joint(Studs) { Parts = [Body, Shims, Cover], Tightening = "8 lbf ft", Locking = "lock-wire", Asks = ["which studs leaned"] },
            new Joint(SumpStuds) { Parts = [Body, Sump], Tightening = "6 lbf ft", Sealing = "cork gasket" },
        ],
    };

    private static CloseUp CloseUpOf(EngineRecord record) => CloseUp.Of(Plan.Of(record), new(Bench.At(900).ToInstant()));

    private static EngineRecord Signed(EngineRecord record, params string[] steps) => record with { Signatures = [.. record.Signatures, .. steps.Select((s, i) => new Signature(FactId.New(), Bench.At(i), "owner", new StepName(s)))] };

    private static string[] Said(Removal removal) => [.. removal.Asks.Select(a => $"{a.Of}: {a.What}")];

    [Fact]
    public void AsItCame_ThePlanBackwards_AndWhatEachRemovalDestroys()
    {
        var strip = Strip.Of(CloseUpOf(Pump()));
        Assert.True(strip.IsWhole);
        Assert.Equal(["sump-on", "cover-on", "shims-in", "gear-in", "pump/body", "breather"], strip.Removals.Select(r => r.Said));
        Assert.Equal(["joint sump-studs: release feel", "joint sump-studs: what sealed it, and how thick", "part sump: tag"], Said(strip.Removals[0]));
        // The float goes with the cover's joint, for its gap takes the body and the shims between; the shims are loose from then on.
        Assert.Equal(
            [
                "joint cover-studs: pump.end-float", "part pump/cover: pump/body.stud-projection", "part pump/shims: which shims, in which order, where", "joint cover-studs: route of the lock-wire",
                "joint cover-studs: release feel", "joint cover-studs: which studs leaned", "part pump/cover: tag",
            ],
            Said(strip.Removals[1]));
        Assert.Equal(["part pump/shims: tag"], Said(strip.Removals[2]));
        Assert.Equal(["part pump/gear: marks in mesh", "part pump/gear: oil hole upwards", "part pump/gear: which tooth is chipped", "part pump/gear: tag"], Said(strip.Removals[3]));
    }

    [Fact]
    public void AnswersAndWhatIsPassedOver_AreNotAskedAgain_UntilItIsSignedAnew()
    {
        var record = Pump() with
        {
            AsFound =
            [
                new AsFound(FactId.New(), Bench.At(0), "bench", "Tag") { Part = Sump, Tag = new PieceTag("44") },
                new AsFound(FactId.New(), Bench.At(1), "bench", "release feel") { Joint = SumpStuds, Skipped = true },
            ],
        };
        var strip = Strip.Of(CloseUpOf(record));
        Assert.Equal("what sealed it, and how thick", Assert.Single(strip.Open(strip.Removals[0])).What);

        var struck = record with { StrikeOuts = [new StrikeOut(FactId.New(), Bench.At(2), "bench", record.AsFound[0].Id, "the other sump")] };
        strip = Strip.Of(CloseUpOf(struck));
        Assert.Equal(2, strip.Open(strip.Removals[0]).Count());

        var rebuilt = record with { Signatures = [new Signature(FactId.New(), Bench.At(10), "owner", new StepName("sump-on"))] };
        strip = Strip.Of(CloseUpOf(rebuilt));
        Assert.False(strip.IsWhole);
        Assert.Equal(3, strip.Open(Assert.Single(strip.Removals)).Count());
    }

    [Fact]
    public void WithoutAPlan_JointsAndPartsAreAskedFor()
    {
        var strip = Strip.Of(CloseUpOf(Pump() with { Steps = [] }));
        Assert.Equal(["cover-studs", "sump-studs", "pump/body", "pump/gear", "pump/shims", "pump/cover", "sump", "breather"], strip.Removals.Select(r => r.Said));
        Assert.Contains("joint cover-studs: pump.end-float", Said(strip.Removals[0]));
    }

    [Fact]
    public void WhatComesOff_ToHaveAPartOut_AsItCameAndAsSigned()
    {
        var asItCame = Strip.Of(CloseUpOf(Pump())).ToTakeOut(Gear);
        Assert.Equal(["sump-on", "studs-out", "cover-on", "shims-in", "gear-in"], asItCame.Way.Steps.Select(s => s.Text));
        Assert.Equal(["sump gasket", "film of jointing"], asItCame.Way.Consumables);
        Assert.Equal(4, asItCame.Removals.Count);

        var signed = Strip.Of(CloseUpOf(Signed(Pump(), "gear-in", "shims-in", "cover-on"))).ToTakeOut(Gear);
        Assert.Equal(["cover-on", "shims-in", "gear-in"], signed.Way.Steps.Select(s => s.Text));
        Assert.Equal(30, signed.Way.Minutes);
        Assert.Equal(["film of jointing"], signed.Way.Consumables);
    }

    [Fact]
    public void FoundAgainstLeft_FiguresByCheckOrEstimate_AndWordsByWords()
    {
        var record = Pump() with
        {
            AsFound =
            [
                new AsFound(FactId.New(), Bench.At(0), "bench", Float.ToString()) { Joint = Studs, Figure = Float, Value = Bench.Q("6 thou") },
                new AsFound(FactId.New(), Bench.At(0), "bench", Projection.ToString()) { Part = Cover, Figure = Projection, Value = Bench.Q("0.51 in") },
                new AsFound(FactId.New(), Bench.At(0), "bench", "route of the lock-wire") { Joint = Studs, Words = "clockwise, pair by pair" },
                new AsFound(FactId.New(), Bench.At(0), "bench", "which studs leaned") { Joint = Studs, Skipped = true },
            ],
            Checks = [new Check(FactId.New(), Bench.At(5), "bench", Float, Bench.Q("2.5 thou"))],
            JointStates = [new JointState(FactId.New(), Bench.At(6), "bench", Studs, JointStage.Locked) { Note = "as it was" }],
        };
        var report = FoundAndLeft.Of(CloseUpOf(record), f => f == Projection ? new AsLeft("0.5 in", 0.0127, "two readings") : null);
        Assert.Equal(["-3.5 thou", "-0.01 in", null], report.Select(r => r.DifferenceSaid));
        Assert.Equal("locked: lock-wire, as it was", report[2].Left!.What);

        var struck = record with { StrikeOuts = [new StrikeOut(FactId.New(), Bench.At(7), "bench", record.Checks[0].Id, "not seated")] };
        Assert.Null(FoundAndLeft.Of(CloseUpOf(struck), _ => null)[0].Left);
    }
}
