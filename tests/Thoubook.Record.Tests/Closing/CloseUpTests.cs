using NodaTime;
using Thoubook.Record.Closing;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Record.Tests.Closing;

/// <summary>A pump of one gear and a cover in a crankcase that a sump closes, step by step.</summary>
public sealed class CloseUpTests
{
    private static readonly PartName Gear = PartName.Of("pump/gear");
    private static readonly PartName Cover = PartName.Of("pump/cover");
    private static readonly PartName Body = PartName.Of("pump/body");
    private static readonly FigureName Float = FigureName.Of("pump.float");
    private static readonly SpaceName Chamber = new("chamber");
    private static readonly SpaceName Crankcase = new("crankcase");
    private static readonly JointName Studs = new("studs");
    private static readonly PieceTag Tag = new("G-1");
    private int _minute;

    private static EngineRecord Pump() => Bench.Record(
        Bench.Step("gear-in") with { Places = [Gear], Attitude = Attitude.Inverted },
        Bench.Step("float", StepKind.Measure) with { In = [Chamber], Needs = [Gear], Measures = [Float] },
        Bench.Step("cover-on", StepKind.Close) with
        {
            Places = [Cover],
            Joints = [Studs],
            Brings = JointStage.PulledUp,
            Closes = [Chamber],
            Cure = Bench.Q("2 h"),
            Spoils = ["film of jointing"],
            Holds = [new HoldPoint(HoldKind.Fit, "float") { Figure = Float }, new HoldPoint(HoldKind.Judgement, "turns free")],
        },
        Bench.Step("lock", StepKind.Join) with { Joints = [Studs], After = [new ComesAfter(new StepName("cover-on"), "the jointing sets first")], Attitude = Attitude.Upright },
        Bench.Step("sump-on", StepKind.Close) with { Closes = [Crankcase], Spoils = ["sump gasket"] })
        with
    {
        Parts = [new Part(Gear), new Part(Cover)],
        Fits = [new Fit(Float)],
        Pieces = [new Piece(Tag) { For = Gear }, new Piece(new PieceTag("G-2"))],
        Spaces = [new Space(Chamber) { Parts = [Gear], In = Crankcase }, new Space(Crankcase) { Parts = [PartName.Of("pump")] }],
        Joints = [new Joint(Studs) { Parts = [Cover, Body], Tightening = "8 lbf ft", Locking = "tab washers" }],
    };

    private CloseUp Of(EngineRecord record, CloseUpTerms? terms = null) => CloseUp.Of(Plan.Of(record), terms ?? new(Bench.At(_minute).ToInstant()));

    private EngineRecord Sign(EngineRecord record, string step, string by = "owner", bool second = false) => record with
    {
        Signatures = [.. record.Signatures, new Signature(FactId.New(), Bench.At(++_minute), by, new StepName(step)) { SecondLook = second, ReliesOn = Of(record).ReliedOn(new StepName(step)) }],
    };

    private EngineRecord State(EngineRecord record, JointStage stage) => record with { JointStates = [.. record.JointStates, new JointState(FactId.New(), Bench.At(++_minute), "bench", Studs, stage)] };

    private EngineRecord Accept(EngineRecord record, string step, string hold) => record with { Acceptances = [.. record.Acceptances, new Accepted(FactId.New(), Bench.At(++_minute), "owner", new StepName(step), hold)] };

    private EngineRecord Placed(EngineRecord record) => record with
    {
        Choices = [new Chosen(FactId.New(), Bench.At(++_minute), "owner", Tag, Gear)],
        Placings = [new Placed(FactId.New(), Bench.At(++_minute), "owner", Tag, Gear)],
    };

    private EngineRecord CoverOn() => Sign(State(Accept(Accept(Sign(Sign(Placed(Pump()), "gear-in"), "float"), "cover-on", "float"), "cover-on", "turns free"), JointStage.PulledUp), "cover-on");

    private static string[] Kinds(IEnumerable<Want> wants) => [.. wants.Select(w => w.Kind.Word())];

    [Fact]
    public void AtFirst_OnlyWhatNothingStandsBefore()
    {
        Assert.Equal(["gear-in"], Bench.Names(Of(Placed(Pump())).Now.Select(r => r.Step)));
        var wants = Of(Pump()).WantsOf(new StepName("gear-in"));
        Assert.Equal("no piece is chosen for pump/gear", Assert.Single(wants).Why);
    }

    [Fact]
    public void ClosingStep_WantsWhatIsInsideAndWhatIsToBeAccepted()
    {
        var record = Sign(Placed(Pump()), "gear-in");
        Assert.Equal(["verdict", "judgement", "step"], Kinds(Of(record).WantsOf(new StepName("cover-on"))));
        Assert.Equal("float is not signed", Of(record).WantsOf(new StepName("cover-on"))[2].Why);
        record = Accept(Sign(record, "float"), "cover-on", "turns free");
        Assert.Equal(["reading"], Kinds(Of(record, new CloseUpTerms(default) { Judged = _ => (WantKind.Reading, "pump.float is not measured") }).WantsOf(new StepName("cover-on"))));
        Assert.Empty(Of(record, new CloseUpTerms(default) { Judged = _ => null }).WantsOf(new StepName("cover-on")));
    }

    [Fact]
    public void Signing_WantsTheJointThatTheStepMakes()
    {
        var record = Accept(Accept(Sign(Sign(Placed(Pump()), "gear-in"), "float"), "cover-on", "float"), "cover-on", "turns free");
        Assert.Equal("studs is not made", Assert.Single(Of(record).WantsToSign(new StepName("cover-on"))).Why);
        Assert.Empty(Of(State(record, JointStage.PulledUp)).WantsToSign(new StepName("cover-on")));
    }

    [Fact]
    public void Cure_HoldsUpWhatIsBuiltOnIt_NotWhatClosesOverIt()
    {
        var record = CoverOn();
        var early = Of(record);
        Assert.Equal(["cure"], Kinds(early.WantsOf(new StepName("lock"))));
        Assert.DoesNotContain(early.WantsOf(new StepName("sump-on")), w => w.Kind == WantKind.Cure);
        Assert.Empty(Of(record, new CloseUpTerms(Bench.At(_minute + 121).ToInstant())).WantsOf(new StepName("lock")));
    }

    [Fact]
    public void Attitude_StepsThatSuitItComeFirst()
    {
        var record = CoverOn() with { Steps = [.. Pump().Steps, Bench.Step("turn", StepKind.TurnByHand) with { Attitude = Attitude.Inverted }] };
        var later = Bench.At(_minute + 300).ToInstant();
        Assert.Equal(["turn", "lock"], Bench.Names(Of(record, new CloseUpTerms(later)).Now.Select(r => r.Step)));
        Assert.Equal(["lock", "turn"], Bench.Names(Of(record, new CloseUpTerms(later) { Attitude = Attitude.Upright }).Now.Select(r => r.Step)));
    }

    [Fact]
    public void Tool_ThatIsAwayIsWanted()
    {
        var record = Placed(Pump()) with { Steps = [Pump().Steps[0] with { Tools = ["gear drift"] }] };
        Assert.Equal(["tool"], Kinds(Of(record, new CloseUpTerms(default) { ToolsAway = ["Gear drift"] }).WantsOf(new StepName("gear-in"))));
    }

    [Fact]
    public void HalfDoneJoint_StandsFirst()
    {
        var record = CoverOn();
        var before = Of(record).BeforeYouClose(Crankcase);
        Assert.Equal("studs is pulled up and not locked", before.Missing[0].Want.Why);
        Assert.True(before.Missing[0].Want.IsHalfDone);
        Assert.Equal("studs is tightened and not locked", Assert.Single(Of(State(record, JointStage.Tightened)).HalfDone).Why);
    }

    [Fact]
    public void BeforeYouClose_NamesEachWithItsCost()
    {
        var before = Of(Pump()).BeforeYouClose(Crankcase);
        Assert.Equal(["sump-on"], before.Closes.Select(c => c.Text));
        var gear = before.Missing.Single(m => m.Want.Item == WorkItem.Of(Gear));
        Assert.Equal("pump/gear is not in place", gear.Want.Why);
        Assert.Equal(["sump-on", "lock", "cover-on"], gear.CostToGetBackIn.Steps.Select(s => s.Text));
        Assert.Equal(30, gear.CostToGetBackIn.Minutes);
        Assert.Equal(["sump gasket", "film of jointing"], gear.CostToGetBackIn.Consumables);
        Assert.False(before.MayBeClosed);
    }

    [Fact]
    public void DepartureAndDebt_LetASpaceBeClosed_AndAnotherPurposeDoesNot()
    {
        var record = State(CoverOn(), JointStage.Tightened);
        Assert.Contains(WantKind.Locking, Of(record).WantsOf(new StepName("sump-on")).Select(w => w.Kind));
        var departed = record with
        {
            Departures = [new Departure(FactId.New(), Bench.At(++_minute), "owner", "adhesive for tab washers", "none to be had") { Kind = DepartureKind.LockingChanged, Joint = Studs, Purposes = [Purpose.StandRun] }],
            Debts = [new Owed(FactId.New(), Bench.At(++_minute), "owner", "sign the locking", Deadline.BeforeItIsTurned) { Item = WorkItem.Of(new StepName("lock")) }],
        };
        Assert.Empty(Of(departed).WantsOf(new StepName("sump-on")));
        Assert.True(Of(departed).BeforeYouClose(Crankcase).MayBeClosed);
        Assert.Contains(WantKind.Locking, Of(departed with { Engine = departed.Engine with { Purpose = Purpose.Working } }).WantsOf(new StepName("sump-on")).Select(w => w.Kind));
        var slack = departed with { JointStates = [.. departed.JointStates, new JointState(FactId.New(), Bench.At(++_minute), "bench", Studs, JointStage.PulledUp)] };
        Assert.Contains(WantKind.Joint, Of(slack).WantsOf(new StepName("sump-on")).Select(w => w.Kind));
    }

    [Fact]
    public void OwedBeforeItIsTurned_HoldsUpTurning_UntilSettled()
    {
        var debt = new Owed(FactId.New(), Bench.At(1), "owner", "photograph of the timing marks", Deadline.BeforeItIsTurned);
        var record = Bench.Record(Bench.Step("turn", StepKind.TurnByHand)) with { Debts = [debt] };
        Assert.Equal(["owed"], Kinds(Of(record).WantsOf(new StepName("turn"))));
        Assert.Empty(Of(record with { Settlements = [new Settled(FactId.New(), Bench.At(2), "owner", debt.Id)] }).WantsOf(new StepName("turn")));
    }

    [Fact]
    public void SecondLook_IsAnotherPersonOrAnotherDay()
    {
        var record = Sign(Bench.Record(Bench.Step("pins-in") with { SecondLook = true }), "pins-in");
        Assert.False(Of(record).IsDone(new StepName("pins-in")));
        Assert.False(Of(Sign(record, "pins-in", "Owner", second: true)).IsDone(new StepName("pins-in")));
        Assert.True(Of(Sign(record, "pins-in", "bench", second: true)).IsDone(new StepName("pins-in")));
        _minute += 24 * 60;
        Assert.True(Of(Sign(record, "pins-in", "owner", second: true)).IsDone(new StepName("pins-in")));
    }

    [Fact]
    public void PartWithoutAPiece_IsInPlaceOnceItsStepIsSigned_ThoughThePhotographIsMissing()
    {
        var record = Pump() with { Pieces = [], Steps = [Pump().Steps[0] with { Photograph = "marks in mesh" }, .. Pump().Steps.Skip(1)] };
        var before = Of(Sign(record, "gear-in")).BeforeYouClose(Chamber);
        Assert.DoesNotContain(before.Missing, m => m.Want.Item == WorkItem.Of(Gear));
        Assert.Equal("gear-in: no photograph of marks in mesh", before.Missing.Single(m => m.Want.Item == WorkItem.Of(new StepName("gear-in"))).Want.Why);
    }

    [Fact]
    public void CountedOut_AndNotIn_IsMissing()
    {
        var record = Pump() with
        {
            Counts =
            [
                new Counted(FactId.New(), Bench.At(1), "bench", "gallery plugs", 6, CountedWay.Out) { Space = Chamber },
                new Counted(FactId.New(), Bench.At(2), "bench", "Gallery plugs", 5, CountedWay.In) { Space = Chamber },
            ],
        };
        Assert.Contains(Of(record).BeforeYouClose(Crankcase).Missing, m => m.Want.Why == "6 gallery plugs counted out and 5 in");
        var back = record with { Counts = [.. record.Counts, new Counted(FactId.New(), Bench.At(3), "bench", "gallery plugs", 1, CountedWay.In) { Space = Chamber }] };
        Assert.DoesNotContain(Of(back).BeforeYouClose(Crankcase).Missing, m => m.Want.Kind == WantKind.Count);
    }

    [Fact]
    public void WrongPieceAndUnsoundPiece_AreNamed()
    {
        var record = Placed(Pump());
        var other = record with { Choices = [.. record.Choices, new Chosen(FactId.New(), Bench.At(50), "owner", new PieceTag("G-2"), Gear)] };
        Assert.Equal("G-1 is in pump/gear, and G-2 is chosen for it", Of(other).BeforeYouClose(Chamber).Missing.Single(m => m.Want.Kind == WantKind.WrongPiece).Want.Why);
        var cracked = record with { Findings = [new Finding(FactId.New(), Bench.At(60), "machinist", Tag, null, "crack at a tooth root") { Outcome = FindingOutcome.NotSound }] };
        Assert.Equal("G-1 was found not sound: crack at a tooth root", Of(cracked).BeforeYouClose(Chamber).Missing.Single(m => m.Want.Kind == WantKind.Decision).Want.Why);
        var state = record with { Parts = [new Part(Gear) { ModificationState = "wet sump" }, new Part(Cover)], Pieces = [new Piece(Tag) { ModificationState = "dry sump" }] };
        Assert.Contains(Of(state).BeforeYouClose(Chamber).Missing, m => m.Want.Why == "G-1 belongs to dry sump, and pump/gear to wet sump");
    }

    [Fact]
    public void LiftedPiece_TheClosingSignatureFallsAndSaysWhy()
    {
        var record = CoverOn();
        var lifted = record with { Liftings = [new Lifted(FactId.New(), Bench.At(++_minute), "bench", record.Placings[0].Id) { Why = "to look at the teeth" }] };
        var closeUp = Of(lifted);
        Assert.False(closeUp.IsDone(new StepName("cover-on")));
        Assert.Contains(closeUp.WantsOf(new StepName("sump-on")), w => w.Kind == WantKind.Signature && w.Why.Contains("to look at the teeth", StringComparison.Ordinal));
    }

    [Fact]
    public void Undone_SignatureNoLongerStands()
    {
        var record = Sign(Placed(Pump()), "gear-in");
        Assert.True(Of(record).IsDone(new StepName("gear-in")));
        var undone = record with { Undoings = [new Undone(FactId.New(), Bench.At(++_minute), "bench", record.Signatures[0].Id)] };
        Assert.False(Of(undone).IsDone(new StepName("gear-in")));
    }

    [Fact]
    public void WayBackIn_ToASpaceToAPartAndOut()
    {
        var record = CoverOn();
        Assert.Equal(["cover-on"], Of(record).ToReach(Gear).Steps.Select(s => s.Text));
        Assert.Equal(["cover-on", "float", "gear-in"], Of(record).ToTakeOut(Gear).Steps.Select(s => s.Text));
        Assert.Empty(Of(record).ToGetBackIn(Crankcase).Steps);
        Assert.Equal(["cover-on"], Of(record).ToGetBackIn(Chamber).Steps.Select(s => s.Text));
    }
}
