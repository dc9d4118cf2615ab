using Thoubook.Record.Closing;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Record.Tests.Closing;

/// <summary>What lets a step be done, a space be closed, and a signature stand: the finer points.</summary>
public sealed class WhatHoldsTests
{
    private static readonly PartName Gear = PartName.Of("pump/gear");
    private static readonly PartName Cover = PartName.Of("pump/cover");
    private static readonly PieceTag Tag = new("G-1");
    private static readonly SpaceName Case = new("case");
    private static readonly SpaceName Chamber = new("chamber");

    private static CloseUp Of(EngineRecord record, int minute = 1000) => CloseUp.Of(Plan.Of(record), new(Bench.At(minute).ToInstant()));

    private static Signature Signed(string step, int minute, params FactId[] on) => new(FactId.New(), Bench.At(minute), "bench", new StepName(step)) { ReliesOn = on };

    private static string[] Whys(IEnumerable<Want> wants) => [.. wants.Select(w => w.Why)];

    [Fact]
    public void OpenTime_OfWhatWasSignedInTime_IsNotAskedOfItsPhotograph()
    {
        var record = Bench.Record(
            Bench.Step("jointing-on", StepKind.Seal) with { Open = Bench.Q("20 min") },
            Bench.Step("cover-on") with { Photograph = "the bead", After = Bench.After("jointing-on") })
            with
        { Signatures = [Signed("jointing-on", 0)] };
        Assert.Equal(["open time"], Of(record, 30).WantsOf(new StepName("cover-on")).Select(w => w.Kind.Word()));

        var inTime = record with { Signatures = [.. record.Signatures, Signed("cover-on", 10)] };
        Assert.False(Of(inTime, 30).IsDone(new StepName("cover-on")));
        Assert.Empty(Of(inTime, 30).WantsOf(new StepName("cover-on")));
    }

    [Fact]
    public void ClosingSignature_RestsOnTheJointsInside()
    {
        var state = new JointState(FactId.New(), Bench.At(1), "bench", new JointName("nuts"), JointStage.Locked);
        var record = Bench.Record(Bench.Step("nuts-on", StepKind.Join) with { Joints = Bench.Joints("nuts") }, Bench.Step("sump-on", StepKind.Close) with { Closes = [Case] })
            with
        { Joints = [new Joint(new JointName("nuts")) { In = Case, Parts = [Gear, Cover], Locking = "tabs" }], JointStates = [state] };

        Assert.Equal([state.Id], Of(record).ReliedOn(new StepName("sump-on")));
        Assert.Equal([state.Id], Of(record).ReliedOn(new StepName("nuts-on")));
    }

    [Fact]
    public void Hold_OnTheFigureThatTheStepItselfMeasures_IsWantedWhenItIsSigned_NotToBegin()
    {
        var figure = FigureName.Of("pump.float");
        var hold = new HoldPoint(HoldKind.Fit, "float") { Figure = figure };
        var record = Bench.Record(Bench.Step("float", StepKind.Measure) with { Measures = [figure], Holds = [hold] }, Bench.Step("drive-in") with { Holds = [hold] });

        Assert.Empty(Of(record).WantsOf(new StepName("float")));
        Assert.Equal(["pump.float is not accepted"], Whys(Of(record).WantsToSign(new StepName("float"))));
        Assert.Contains("pump.float is not accepted", Whys(Of(record).WantsOf(new StepName("drive-in"))));
    }

    [Fact]
    public void CostToGetBackIn_OfASpaceThatNothingOfItsOwnCloses_IsThatOfTheSpaceAroundIt()
    {
        var record = Bench.Record(Bench.Step("sump-on", StepKind.Close) with { Closes = [Case], Spoils = ["sump gasket"] })
            with
        {
            Spaces = [new Space(Case), new Space(Chamber) { In = Case }],
            Counts = [new Counted(FactId.New(), Bench.At(1), "bench", "rags", 1, CountedWay.Out) { Space = Chamber }],
        };

        Assert.Equal(["sump-on"], Assert.Single(Of(record).BeforeYouClose(Chamber).Missing).CostToGetBackIn.Steps.Select(s => s.Text));
    }

    [Fact]
    public void BeforeYouClose_HalfDoneStandsFirst_ThoughOtherThingsCostMore()
    {
        var record = Bench.Record(
            Bench.Step("gear-in") with { Places = [Gear] },
            Bench.Step("chamber-shut", StepKind.Close) with { Closes = [Chamber], Time = Bench.Q("5 h") },
            Bench.Step("nuts-on", StepKind.Join) with { Joints = Bench.Joints("nuts") },
            Bench.Step("sump-on", StepKind.Close) with { Closes = [Case] })
            with
        {
            Parts = [new Part(Gear)],
            Spaces = [new Space(Case), new Space(Chamber) { In = Case, Parts = [Gear] }],
            Joints = [new Joint(new JointName("nuts")) { In = Case, Parts = [Cover, Gear], Locking = "tabs", Tightening = "8 lbf ft" }],
            JointStates = [new JointState(FactId.New(), Bench.At(1), "bench", new JointName("nuts"), JointStage.PulledUp)],
        };

        var missing = Of(record).BeforeYouClose(Case).Missing;

        Assert.Equal("nuts is pulled up and not locked", missing[0].Want.Why);
        Assert.True(missing[1].CostToGetBackIn.Minutes > missing[0].CostToGetBackIn.Minutes);
    }

    [Fact]
    public void Departure_OfAPiece_CoversWhichItIs_AndOnlyADeferredOneThatItIsNotThere()
    {
        Departure Of(DepartureKind kind) => new(FactId.New(), Bench.At(2), "owner", "as it is", "none to be had") { Piece = Tag, Kind = kind, Purposes = [Purpose.StandRun] };
        var record = Bench.Record(Bench.Step("gear-in") with { Places = [Gear] }, Bench.Step("sump-on", StepKind.Close) with { Closes = [Case] })
            with
        {
            Parts = [new Part(Gear)],
            Pieces = [new Piece(Tag) { For = Gear }],
            Spaces = [new Space(Case) { Parts = [Gear] }],
            Choices = [new Chosen(FactId.New(), Bench.At(1), "owner", Tag, Gear)],
        };
        bool MayBeClosed(DepartureKind kind) => WhatHoldsTests.Of(record with { Departures = [Of(kind)] }).BeforeYouClose(Case).MayBeClosed;

        Assert.False(MayBeClosed(DepartureKind.Substituted));
        Assert.True(MayBeClosed(DepartureKind.BlankedOrDeferred));

        var cracked = record with
        {
            Placings = [new Placed(FactId.New(), Bench.At(2), "bench", Tag, Gear)],
            Signatures = [Signed("gear-in", 3)],
            Findings = [new Finding(FactId.New(), Bench.At(4), "machinist", Tag, null, "pitted") { Outcome = FindingOutcome.NotSound }],
        };
        Assert.False(WhatHoldsTests.Of(cracked).BeforeYouClose(Case).MayBeClosed);
        Assert.True(WhatHoldsTests.Of(cracked with { Departures = [Of(DepartureKind.LimitExceeded)] }).BeforeYouClose(Case).MayBeClosed);
    }

    [Theory]
    [InlineData(1, 2, "1 rags counted out and 2 in")]
    [InlineData(2, 2, null)]
    public void Counts_MoreInThanOut_IsAsWrongAsFewer(int went, int came, string? says)
    {
        var record = Bench.Record(Bench.Step("sump-on", StepKind.Close) with { Closes = [Case] })
            with
        {
            Counts =
            [
                new Counted(FactId.New(), Bench.At(1), "bench", "rags", went, CountedWay.Out) { Space = Case },
                new Counted(FactId.New(), Bench.At(2), "bench", "rags", came, CountedWay.In) { Space = Case },
            ],
        };

        Assert.Equal(says, Of(record).BeforeYouClose(Case).Missing.SingleOrDefault()?.Want.Why);
    }

    [Theory]
    [InlineData(5, false)]
    [InlineData(15, true)]
    public void Finding_NotSound_IsAnsweredByADecisionAfterIt_NotByOneBefore(int decided, bool good)
    {
        var record = Bench.Record(Bench.Step("sump-on", StepKind.Close) with { Closes = [Case] })
            with
        {
            Parts = [new Part(Gear)],
            Pieces = [new Piece(Tag) { For = Gear }],
            Spaces = [new Space(Case) { Parts = [Gear] }],
            Choices = [new Chosen(FactId.New(), Bench.At(1), "owner", Tag, Gear)],
            Placings = [new Placed(FactId.New(), Bench.At(2), "bench", Tag, Gear)],
            Findings = [new Finding(FactId.New(), Bench.At(10), "machinist", Tag, null, "pitted") { Outcome = FindingOutcome.NotSound }],
            Decisions = [new Decision(FactId.New(), Bench.At(decided), "owner", DecisionChoice.Keep) { Piece = Tag, Basis = DecisionBasis.AcceptedOnJudgement, Why = "off the loaded flank" }],
        };

        Assert.Equal(good, Of(record).BeforeYouClose(Case).MayBeClosed);
    }

    [Fact]
    public void Joint_ThatIsOnlyPlaced_NeedsNeitherOfItsParts()
    {
        var record = Bench.Record(
            Bench.Step("studs-laid-out", StepKind.Join) with { Joints = Bench.Joints("studs"), Brings = JointStage.Placed },
            Bench.Step("cover-on") with { Places = [Cover] },
            Bench.Step("studs-up", StepKind.Join) with { Joints = Bench.Joints("studs") })
            with
        { Joints = [new Joint(new JointName("studs")) { Parts = [Cover, Gear], Tightening = "8 lbf ft" }] };

        Assert.Empty(Plan.Of(record).Before(new StepName("studs-laid-out")));
        Assert.Equal(["studs-laid-out", "cover-on"], Plan.Of(record).Before(new StepName("studs-up")).Select(e => e.First.Name.Text));
    }

    [Fact]
    public void TwoReasonsForOneEdge_TheOneThatWaitsLongestIsKept()
    {
        // The cover lies in the case, which is no reason to wait, and the sump is built on it, which is.
        var record = Bench.Record(
            Bench.Step("cover-on") with { Places = [Cover], Cure = Bench.Q("2 h") },
            Bench.Step("sump-on", StepKind.Close) with { Closes = [Case], Holds = [new HoldPoint(HoldKind.Fit, "gap") { Figure = FigureName.Of("pump.gap") }], Needs = [Cover] },
            Bench.Step("only-shut", StepKind.Close) with { Closes = [Case] })
            with
        { Spaces = [new Space(Case) { Parts = [Cover] }] };
        var plan = Plan.Of(record);

        Assert.Equal(7200, Assert.Single(plan.Before(new StepName("sump-on"))).Wait);
        Assert.Equal(0, Assert.Single(plan.Before(new StepName("only-shut"))).Wait);
        Assert.Equal(130, Schedule.Of(plan)!.Of(new StepName("sump-on")).EarliestStart);
        Assert.Equal(10, Schedule.Of(plan)!.Of(new StepName("only-shut")).EarliestStart);
    }

    [Fact]
    public void Joint_LiesWhereAllItsPartsLie_NotWhereOneDoes()
    {
        var spaces = Plan.Of(Bench.Record() with
        {
            Spaces = [new Space(Chamber) { Parts = [Gear], In = Case }, new Space(Case) { Parts = [Cover] }],
            Joints = [new Joint(new JointName("both")) { Parts = [Gear, Cover] }, new Joint(new JointName("out")) { Parts = [Gear, PartName.Of("flywheel")] }],
        }).Spaces;

        Assert.Equal([Case], spaces.Of(new JointName("both")));
        Assert.Empty(spaces.Of(new JointName("out")));
    }

    [Fact]
    public void StepThatCloses_LiesInAllTheSpacesAroundTheOneItCloses()
    {
        var outer = new SpaceName("casing");
        var plan = Plan.Of(Bench.Record(Bench.Step("shut", StepKind.Close) with { Closes = [Chamber] }) with
        {
            Spaces = [new Space(Chamber) { In = Case }, new Space(Case) { In = outer }, new Space(outer)],
        });

        Assert.Equal([Case, outer], plan.SpacesOf(new StepName("shut")).Order());
    }

    [Fact]
    public void HoursLeft_ForOne_WithASpareHandWhereAStepHoldsTwo()
    {
        var record = Bench.Record(Bench.Step("block-on") with { People = 2 }, Bench.Step("nuts-on") with { After = Bench.After("block-on") }, Bench.Step("paint"));

        Assert.Equal("crew-too-small", Assert.Single(Assert.IsType<Outcome<CrewTime>.Refused>(Crew.Of(Plan.Of(record), 1)).Problems).Code);
        Assert.True(Of(record).LeftFor(1).IsOk(out var one, out _));
        Assert.True(Of(record).LeftFor(2).IsOk(out var two, out _));
        Assert.Equal((30, "block-on"), (one.Length, Assert.Single(one.Lent).Text));
        Assert.Equal(20, two.Length);
        Assert.Empty(two.Lent);
    }
}
