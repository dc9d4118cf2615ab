using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Workshop.Tests.Closing;

public sealed class SigningTests
{
    private static string[] Refused<T>(Outcome<T> outcome) => [.. Assert.IsType<Outcome<T>.Refused>(outcome).Problems.Select(p => p.Found)];

    [Fact]
    public void Sign_WhatAStepWants_IsRefusedThingByThing()
    {
        using var pump = new ClosedPump();

        var found = Refused(pump.Workshop.Sign(pump.Sign("cover-on")));

        Assert.Contains("part: G-1 is chosen for pump/gear and not in place", found);
        Assert.Contains("step: float is not signed", found);
        Assert.Contains(found, f => f.StartsWith("reading: pump.end-float", StringComparison.Ordinal));
        Assert.Contains("judgement: turns free: not accepted for cover-on", found);
        Assert.Contains("joint: studs is not made", found);
        Assert.Contains("photograph: none of the gears in the body", found);
        Assert.Empty(pump.Record.Signatures);
    }

    [Fact]
    public void Sign_WithItsPieces_PlacesThem_AndRestsOnThem_OnceHoweverOftenItIsSent()
    {
        using var pump = new ClosedPump();
        var entry = pump.Sign("gear-in") with { Placing = true, Id = FactId.New() };

        var signed = Bench.Ok(pump.Workshop.Sign(entry));
        Bench.Ok(pump.Workshop.Sign(entry));

        var placed = Assert.Single(pump.Record.Placings);
        Assert.Equal("G-1", placed.Piece.Text);
        Assert.Equal([placed.Id], Assert.Single(pump.Record.Signatures).ReliesOn);
        Bench.Ok(pump.Workshop.Lift(new LiftEntry(ClosedPump.Engine, "G-1", "bench") { Of = placed.Id }));
        Assert.False(Standing.Of(signed, pump.Record).Stands);
    }

    [Fact]
    public void SecondLook_IsAnotherPersons_OrAnotherDays()
    {
        using var pump = new ClosedPump();
        var second = pump.Sign("gear-in") with { SecondLook = true };
        Assert.Equal("second-look-first", Bench.Refused(pump.Workshop.Sign(second)).Code);
        Bench.Ok(pump.Workshop.Sign(pump.Sign("gear-in") with { Placing = true }));

        Assert.Equal("second-look-same", Bench.Refused(pump.Workshop.Sign(second)).Code);
        Assert.False(pump.Closing.IsDone(new StepName("gear-in")));
        pump.Now += Duration.FromDays(1);
        Bench.Ok(pump.Workshop.Sign(second));

        Assert.True(pump.Closing.IsDone(new StepName("gear-in")));
        Assert.Equal("signed-already", Bench.Refused(pump.Workshop.Sign(pump.Sign("gear-in"))).Code);
    }

    [Theory]
    [InlineData("1.2535 in", "1.2510 in", null)]
    [InlineData("1.2560 in", "1.2510 in", "verdict")]
    public void Fit_OfAHoldPoint_IsGoodByItsVerdict_OrAcceptedWithAReason(string depth, string width, string? wanted)
    {
        using var pump = new ClosedPump();
        pump.Measure(depth, width);
        var hold = pump.Closing.Plan.Find(new StepName("cover-on"))!.Holds[0];

        Assert.Equal(wanted, pump.Closing.WantOf(new StepName("cover-on"), hold)?.Kind.Word());
        if (wanted is null)
            return;
        var accept = new AcceptEntry(ClosedPump.Engine, "cover-on", "pump.end-float", "owner");
        Assert.Equal("reason-missing", Bench.Refused(pump.Workshop.Accept(accept)).Code);
        Bench.Ok(pump.Workshop.Accept(accept with { Why = "it runs for show at low pressure" }));
        Assert.Null(pump.Closing.WantOf(new StepName("cover-on"), hold));

        // It was accepted as it was read: another reading of a piece it rests on does not change that, another piece does.
        Bench.Ok(pump.Workshop.Choose(new PieceEntry(ClosedPump.Engine, "pump/gear", "G-2", "owner")));
        Assert.NotNull(pump.Closing.WantOf(new StepName("cover-on"), hold));
    }

    [Fact]
    public void Owed_ThingMayBeClosedOver_UntilItsDeadline()
    {
        using var pump = new ClosedPump();
        pump.UpToTheCover();
        var cover = pump.Sign("cover-on") with { Photographed = true };
        Bench.Ok(pump.Workshop.Sign(cover));
        pump.Now += Duration.FromHours(2.5);
        Assert.Contains("locking: studs is tightened and not locked", Refused(pump.Workshop.Sign(pump.Sign("sump-on"))));

        var debt = Bench.Ok(pump.Workshop.Owe(new OwedEntry(ClosedPump.Engine, "bend the tabs", Deadline.BeforeTheStart, "bench") { Item = "joint studs", Why = "no drift here" }));
        Bench.Ok(pump.Workshop.Sign(pump.Sign("sump-on")));

        Assert.Equal([debt.Id], pump.Closing.Debts.Select(d => d.Id));
        Bench.Ok(pump.Workshop.Settle(new SettleEntry(ClosedPump.Engine, debt.Id, "bench") { How = "bent" }));
        Assert.Equal("settled-already", Bench.Refused(pump.Workshop.Settle(new SettleEntry(ClosedPump.Engine, debt.Id, "bench"))).Code);
        Assert.Empty(pump.Closing.Debts);
        Assert.False(pump.Closing.BeforeYouClose(new SpaceName("crankcase")).MayBeClosed);
    }

    [Fact]
    public void OpenTime_ThatRanOut_IsWantedOfWhatIsBuiltOnIt()
    {
        using var pump = new ClosedPump();
        pump.UpToTheCover();
        Bench.Ok(pump.Workshop.Sign(pump.Sign("cover-on") with { Photographed = true }));
        Assert.Equal(["cure", "open"], Bench.Ok(pump.Workshop.LeavingNote(ClosedPump.Engine)).Running.Select(r => r.Kind.Word()));
        Assert.Equal(WantKind.Cure, Assert.Single(pump.Closing.WantsOf(new StepName("lock"))).Kind);

        pump.Now += Duration.FromHours(2.5);
        Assert.Empty(pump.Closing.WantsOf(new StepName("lock")));

        pump.Now += Duration.FromHours(1);
        Assert.Equal(WantKind.OpenTime, Assert.Single(pump.Closing.WantsOf(new StepName("lock"))).Kind);
        Bench.Ok(pump.Workshop.Depart(new DepartureEntry(ClosedPump.Engine, "jointing left to go off", "it never hardens", "owner") { Item = "step cover-on" }));
        Assert.Empty(pump.Closing.WantsOf(new StepName("lock")));
    }

    [Fact]
    public void Departure_OfAJoint_StandsForTheEnginesPurpose_AndCoversItsLocking()
    {
        using var pump = new ClosedPump();
        var departure = new DepartureEntry(ClosedPump.Engine, "wire in place of tabs", "none to be had", "owner") { Joint = "studs", Kind = DepartureKind.LockingChanged };
        Assert.Equal("departure-of-nothing", Bench.Refused(pump.Workshop.Depart(departure with { Joint = null })).Code);

        var written = Bench.Ok(pump.Workshop.Depart(departure));

        Assert.Equal([Purpose.StandRun], written.Purposes);
        Bench.Ok(pump.Workshop.MakeJoint(new JointEntry(ClosedPump.Engine, "studs", JointStage.Tightened, "bench")));
        Assert.Equal(written.Id, pump.Closing.CoverOf(pump.Closing.HalfDone[0])?.Id);
    }

    [Fact]
    public void LeavingNote_HalfDoneJointsFirst_ThenWhatIsBegunAndOut()
    {
        using var pump = new ClosedPump();
        Bench.Ok(pump.Workshop.MakeJoint(new JointEntry(ClosedPump.Engine, "studs", JointStage.PulledUp, "bench") { Applied = "30 lbf in" }));
        Bench.Ok(pump.Workshop.Count(new CountEntry(ClosedPump.Engine, "gallery plugs", "6", CountedWay.Out, "bench") { Space = "crankcase" }));
        Bench.Ok(pump.Workshop.Count(new CountEntry(ClosedPump.Engine, "gallery plugs", "5", CountedWay.In, "bench") { Space = "crankcase" }));

        var note = Bench.Ok(pump.Workshop.LeavingNote(ClosedPump.Engine));

        Assert.Equal("studs is pulled up and not locked", Assert.Single(note.HalfDone).Why);
        Assert.Empty(note.Begun);
        Assert.Equal("6 gallery plugs counted out and 5 in", Assert.Single(note.LeftOver).Why);
        Assert.Equal("5 gallery plugs counted in", note.Last?.Headline);
        Assert.Contains(pump.Closing.BeforeYouClose(new SpaceName("crankcase")).Missing, m => m.Want.Kind == WantKind.Count);
    }

    [Fact]
    public void LeavingNote_NamesWhatIsBegunAndCanGoOn_NotWhatATrialBuildLeftInPlace()
    {
        using var pump = new ClosedPump();
        Bench.Ok(pump.Workshop.Place(new PieceEntry(ClosedPump.Engine, "pump/gear", "G-1", "bench")));
        Assert.Equal(["gear-in"], Bench.Ok(pump.Workshop.LeavingNote(ClosedPump.Engine)).Begun.Select(s => s.Name.Text));

        Bench.Ok(pump.Workshop.Save(pump.Record with { Steps = [.. pump.Record.Steps.Select(s => s.Name.Text == "gear-in" ? s with { After = [new ComesAfter(new StepName("body-clean"), "so")] } : s), new Step(new StepName("body-clean"))] }, "owner"));

        Assert.Empty(Bench.Ok(pump.Workshop.LeavingNote(ClosedPump.Engine)).Begun);
    }

    [Fact]
    public void Undo_TakesTheSignatureBack_AndTheNoteSaysWhatFellWithAnotherPiece()
    {
        using var pump = new ClosedPump();
        pump.UpToTheCover();
        Bench.Ok(pump.Workshop.Undo(new UndoEntry(ClosedPump.Engine, "bench") { Step = "float", Why = "to look again" }));
        Assert.False(pump.Closing.IsDone(new StepName("float")));
        Assert.Equal("nothing-to-undo", Bench.Refused(pump.Workshop.Undo(new UndoEntry(ClosedPump.Engine, "bench") { Step = "float" })).Code);
        Assert.Empty(Bench.Ok(pump.Workshop.LeavingNote(ClosedPump.Engine)).Fallen);
        var second = Bench.Ok(pump.Workshop.Undo(new UndoEntry(ClosedPump.Engine, "bench") { Step = "gear-in" }));
        Assert.Null(pump.Closing.SignatureOf(new StepName("gear-in")));
        Bench.Ok(pump.Workshop.StrikeOut(new StrikeOutEntry(ClosedPump.Engine, second.Id, "it was not undone", "bench")));

        Bench.Ok(pump.Workshop.Place(new PieceEntry(ClosedPump.Engine, "pump/gear", "G-2", "bench")));

        Assert.Equal(["gear-in signed", "gear-in signed after a second look"], Bench.Ok(pump.Workshop.LeavingNote(ClosedPump.Engine)).Fallen.Select(f => f.Fact.Headline));
    }

    [Fact]
    public void Look_IntoAClosedSpace_ShowsWhatLiesInItAsItWasLeft()
    {
        using var pump = new ClosedPump();
        pump.UpToTheCover();
        Bench.Ok(pump.Workshop.Sign(pump.Sign("cover-on") with { Photographed = true }));

        var look = pump.Closing.Look(new SpaceName("crankcase"));

        Assert.False(look.IsClosed);
        Assert.Equal([new SpaceName("chamber")], look.Spaces);
        Assert.Equal("G-1", look.Pieces.Single(p => p.Part.Path == "pump/gear").Piece?.Text);
        Assert.Equal(["pump.end-float"], look.Fits.Select(f => f.ToString()));
        Assert.Equal(JointStage.Tightened, Assert.Single(look.Joints).State?.Stage);
        Assert.Equal([new PhotographInside(new StepName("cover-on"), "the gears in the body", true)], look.Photographs);
        Assert.True(pump.Closing.Look(new SpaceName("chamber")).IsClosed);
    }

    [Fact]
    public void LeavingNote_OfASlackenedJoint_SaysWhatRestedOnIt_NotThatItWasSlackened()
    {
        using var pump = new ClosedPump();
        pump.UpToTheCover();
        Bench.Ok(pump.Workshop.Sign(pump.Sign("cover-on") with { Photographed = true }));
        Bench.Ok(pump.Workshop.MakeJoint(new JointEntry(ClosedPump.Engine, "studs", JointStage.Placed, "bench")));

        Assert.Equal("cover-on signed", Assert.Single(Bench.Ok(pump.Workshop.LeavingNote(ClosedPump.Engine)).Fallen).Fact.Headline);
    }

    [Fact]
    public void Photograph_OfAStepThatClosesNothing_MayFollowItsSignature()
    {
        using var pump = new ClosedPump();
        var steps = pump.Record.Steps.Select(s => s.Name.Text == "gear-in" ? s with { Photograph = "the marks", SecondLook = false } : s);
        Bench.Ok(pump.Workshop.Save(pump.Record with { Steps = [.. steps] }, "owner"));

        Bench.Ok(pump.Workshop.Sign(pump.Sign("gear-in") with { Placing = true }));

        Assert.False(pump.Closing.IsDone(new StepName("gear-in")));
        Assert.Contains(pump.Closing.BeforeYouClose(new SpaceName("chamber")).Missing, m => m.Want.Kind == WantKind.Photograph);
        Assert.Equal("signed-already", Bench.Refused(pump.Workshop.Sign(pump.Sign("gear-in"))).Code);
        Bench.Ok(pump.Workshop.Sign(pump.Sign("gear-in") with { Photographed = true }));
        Assert.True(pump.Closing.IsDone(new StepName("gear-in")));
    }

    [Fact]
    public void Sign_Placing_PutsThePieceChosenNowInPlaceOfAnother()
    {
        using var pump = new ClosedPump();
        Bench.Ok(pump.Workshop.Place(new PieceEntry(ClosedPump.Engine, "pump/gear", "G-2", "bench")));
        Bench.Ok(pump.Workshop.Sign(pump.Sign("gear-in") with { Placing = true }));

        Assert.Equal("G-1", pump.Record.Index.PlacedIn(PartName.Of("pump/gear"))?.Piece.Text);
    }

    [Fact]
    public void Joint_RestsOnThePiecesThatItHolds()
    {
        using var pump = new ClosedPump();
        var body = Bench.Ok(pump.Workshop.Define(ClosedPump.Engine, new Record.Pieces.Piece(new PieceTag("B-1")) { For = PartName.Of("pump/body") }, "owner")).Tag.Text;
        Bench.Ok(pump.Workshop.Place(new PieceEntry(ClosedPump.Engine, "pump/body", body, "bench")));
        Bench.Ok(pump.Workshop.MakeJoint(new JointEntry(ClosedPump.Engine, "studs", JointStage.Locked, "bench")));
        Assert.Equal(JointStage.Locked, pump.Closing.StageOf(new JointName("studs")));

        Bench.Ok(pump.Workshop.Lift(new LiftEntry(ClosedPump.Engine, body, "bench")));

        Assert.Null(pump.Closing.StageOf(new JointName("studs")));
    }

    [Fact]
    public void Accept_OnAFigure_RestsOnWhatWasReadOfIt()
    {
        using var pump = new ClosedPump();
        pump.Measure("1.2560 in", "1.2510 in");
        var accepted = Bench.Ok(pump.Workshop.Accept(new AcceptEntry(ClosedPump.Engine, "cover-on", "pump.end-float", "owner") { Why = "for show" }));

        Assert.Superset(pump.Record.Readings.Select(r => r.Id).ToHashSet(), accepted.ReliesOn.ToHashSet());
        Bench.Ok(pump.Workshop.StrikeOut(new StrikeOutEntry(ClosedPump.Engine, pump.Record.Readings[0].Id, "wrong piece", "bench")));
        Assert.False(Standing.Of(accepted, pump.Record).Stands);
    }

    [Fact]
    public void Figure_WithoutLimits_IsAcceptedByNameOnceItIsMeasured()
    {
        using var pump = new ClosedPump();
        var bore = FigureName.Of("pump/body.bore");
        var hold = new HoldPoint(HoldKind.Dimension, "bore") { Figure = bore };
        Bench.Ok(pump.Workshop.Save(pump.Record with { Dimensions = [.. pump.Record.Dimensions, new Record.Measures.Dimension(bore)], Steps = [.. pump.Record.Steps, new Step(new StepName("bush-in")) { Holds = [hold] }] }, "owner"));
        Assert.Equal(WantKind.Reading, pump.Closing.WantOf(new StepName("bush-in"), hold)?.Kind);

        Bench.Ok(pump.Workshop.AddReading(new ReadingEntry(ClosedPump.Engine, "pump/body.bore", "0.750 in", "bench")));

        Assert.Equal(WantKind.Verdict, pump.Closing.WantOf(new StepName("bush-in"), hold)?.Kind);
        Bench.Ok(pump.Workshop.Accept(new AcceptEntry(ClosedPump.Engine, "bush-in", "bore", "owner") { Why = "the bush is made to it" }));
        Assert.Null(pump.Closing.WantOf(new StepName("bush-in"), hold));
    }

    [Theory]
    [InlineData("stud", null, "unknown-joint", "Did you mean studs?")]
    [InlineData("studs", "12 psi", "applied-kind", "18 lbf ft")]
    public void MakeJoint_BadInput_IsRefused_WithWhatToDo(string joint, string? applied, string code, string doThis)
    {
        using var pump = new ClosedPump();

        var problem = Bench.Refused(pump.Workshop.MakeJoint(new JointEntry(ClosedPump.Engine, joint, JointStage.Tightened, "bench") { Applied = applied }));

        Assert.Equal(code, problem.Code);
        Assert.Contains(doThis, problem.DoThis, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("step floot", "unknown-step", "float")]
    [InlineData("joint stubs", "unknown-joint", "studs")]
    [InlineData("hold cover-on: turns fre", "unknown-hold", "turns free")]
    [InlineData("part pump/geer", "unknown-part", "pump/gear")]
    [InlineData("studs", "work-item", "")]
    public void Owe_OverWhatThereIsNot_IsRefused_WithTheNearest(string item, string code, string nearest)
    {
        using var pump = new ClosedPump();

        var problem = Bench.Refused(pump.Workshop.Owe(new OwedEntry(ClosedPump.Engine, "later", Deadline.BeforePriming, "bench") { Item = item }));

        Assert.Equal(code, problem.Code);
        Assert.Contains(nearest, problem.DoThis, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("2.5")]
    public void Count_OfNoWholeNumber_IsRefused(string number)
    {
        using var pump = new ClosedPump();
        Assert.Equal("count-number", Bench.Refused(pump.Workshop.Count(new CountEntry(ClosedPump.Engine, "jets", number, CountedWay.Out, "bench"))).Code);
    }
}
