using Thoubook.Record;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Workshop.Tests;

public class FactTests
{
    [Fact]
    public void StrikeOut_TakesAFactAway_AndStrikingThatOutBringsItBack()
    {
        using var bench = new Bench();
        var reading = Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535"))).Fact;

        var strikeOut = Bench.Ok(bench.Workshop.StrikeOut(new StrikeOutEntry(Bench.Pump, reading.Id, "wrong piece", "bench")));
        Assert.Equal("wrong piece", bench.Record.Index.StrikeOutOf(reading.Id)?.Why);
        Assert.Equal("struck-out-already", Bench.Refused(bench.Workshop.StrikeOut(new StrikeOutEntry(Bench.Pump, reading.Id, "again", "bench"))).Code);

        Bench.Ok(bench.Workshop.StrikeOut(new StrikeOutEntry(Bench.Pump, strikeOut.Id, "it was the right one", "bench")));
        Assert.Null(bench.Record.Index.StrikeOutOf(reading.Id));
        Assert.Equal("unknown-fact", Bench.Refused(bench.Workshop.StrikeOut(new StrikeOutEntry(Bench.Pump, FactId.New(), "why", "bench"))).Code);
        Assert.Equal("words-missing", Bench.Refused(bench.Workshop.StrikeOut(new StrikeOutEntry(Bench.Pump, reading.Id, " ", "bench"))).Code);
    }

    [Fact]
    public void Choose_APieceOfAnotherEngine_EndsItsChoiceThere()
    {
        using var bench = new Bench();
        bench.MakePump("Other pump");
        Bench.Ok(bench.Workshop.Choose(new PieceEntry(Bench.Pump, "pump/body", "P-1 Test pump", "owner")));

        Bench.Ok(bench.Workshop.Choose(new PieceEntry("Other pump", "pump/body", "P-1 Test pump", "owner")));

        Assert.Null(bench.Record.Index.ChosenFor(PartName.Of("pump/body")));
        Assert.Equal("went to Other pump", Assert.Single(bench.Record.Liftings).Why);
        Assert.Equal("P-1 Test pump", Bench.Ok(bench.Workshop.Engine("Other pump")).Index.ChosenFor(PartName.Of("pump/body"))?.Piece.Text);
    }

    [Theory]
    [InlineData("pump/bodi", "P-1 Test pump", "unknown-part", "pump/body")]
    [InlineData("pump/body", "P-2 Test pump", "unknown-piece", "P-1 Test pump")]
    [InlineData("pump/body", "", "piece-missing", "Name")]
    [InlineData("", "P-1 Test pump", "part-missing", "Name")]
    public void Choose_UnknownNames_AreRefused_WithTheNearest(string part, string piece, string code, string doThis)
    {
        using var bench = new Bench();

        var problem = Bench.Refused(bench.Workshop.Choose(new PieceEntry(Bench.Pump, part, piece, "owner")));

        Assert.Equal(code, problem.Code);
        Assert.Contains(doThis, problem.DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void Lift_EndsThePlacingFirst_ThenTheChoice_ThenThereIsNothingToLift()
    {
        using var bench = new Bench();
        var piece = new PieceEntry(Bench.Pump, "pump/body", "P-1 Test pump", "owner");
        var chosen = Bench.Ok(bench.Workshop.Choose(piece));
        var placed = Bench.Ok(bench.Workshop.Place(piece));
        var lift = new LiftEntry(Bench.Pump, "P-1 Test pump", "bench");

        Assert.Equal(placed.Id, Bench.Ok(bench.Workshop.Lift(lift)).Of);
        Assert.Equal(chosen.Id, Bench.Ok(bench.Workshop.Lift(lift)).Of);
        Assert.Equal("not-in-a-part", Bench.Refused(bench.Workshop.Lift(lift)).Code);
    }

    [Fact]
    public void AddWork_MakesOlderReadingsOfWhatItAlteredNoLongerCount()
    {
        using var bench = new Bench();
        var reading = (Reading)Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535"))).Fact;

        Bench.Ok(bench.Workshop.AddWork(new WorkEntry(Bench.Pump, "pump/body", "face lapped", "machinist") { Altered = ["depth"], RepairSize = "+010" }));

        Assert.NotNull(bench.Record.Index.WorkSince(reading));
        Assert.Equal("+010", bench.Record.Index.RepairSizeOf(reading.Piece, "depth"));
        Assert.Equal("unknown-dimension", Bench.Refused(bench.Workshop.AddWork(new WorkEntry(Bench.Pump, "pump/body", "lapped", "machinist") { Altered = ["width"] })).Code);
        Assert.Equal("unknown-repair-size", Bench.Refused(bench.Workshop.AddWork(new WorkEntry(Bench.Pump, "pump/body", "lapped", "machinist") { Altered = [Bench.Depth], RepairSize = "+020" })).Code);
    }

    [Fact]
    public void AddFinding_IsOfAPieceOrAtAPart()
    {
        using var bench = new Bench();

        Bench.Ok(bench.Workshop.AddFinding(new FindingEntry(Bench.Pump, "a crack", "bench") { Piece = "P-1 Test pump", Outcome = FindingOutcome.NotSound }));
        Bench.Ok(bench.Workshop.AddFinding(new FindingEntry(Bench.Pump, "sludge", "bench") { Part = "pump/body" }));

        Assert.Equal([FindingOutcome.NotSound, FindingOutcome.Noted], bench.Record.Findings.Select(f => f.Outcome));
        Assert.Equal("finding-of-nothing", Bench.Refused(bench.Workshop.AddFinding(new FindingEntry(Bench.Pump, "sludge", "bench"))).Code);
    }

    [Fact]
    public void Decide_ReliesOnWhatWasReadAndChosen_AndFallsWithIt()
    {
        using var bench = new Bench();
        var struck = Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2539"))).Fact;
        Bench.Ok(bench.Workshop.StrikeOut(new StrikeOutEntry(Bench.Pump, struck.Id, "slip", "bench")));
        var reading = Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535"))).Fact;

        var decision = Bench.Ok(bench.Workshop.Decide(new DecisionEntry(Bench.Pump, DecisionChoice.Keep, "owner") { Piece = "pump/body", Figure = Bench.Depth, Basis = DecisionBasis.AcceptedOnJudgement, Why = "stand use only" }));

        Assert.Equal([bench.Record.Choices[0].Id, reading.Id], decision.ReliesOn);
        Assert.Equal(decision.ReliesOn, Bench.Ok(bench.Workshop.Decide(new DecisionEntry(Bench.Pump, DecisionChoice.Keep, "owner") { Piece = "pump/body" })).ReliesOn);
        Assert.True(Standing.Of(decision, bench.Record).Stands);
        Bench.Ok(bench.Workshop.StrikeOut(new StrikeOutEntry(Bench.Pump, reading.Id, "wrong gauge", "bench")));
        Assert.Equal(reading.Id, (Standing.Of(decision, bench.Record).BrokenBy as StrikeOut)?.Of);
    }

    [Fact]
    public void Decide_OnAFit_ReliesOnItsDimensionsAndItsChecks()
    {
        using var bench = new Bench();
        var depth = Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535"))).Fact;
        var width = Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2510", Bench.Width))).Fact;
        var check = Bench.Ok(bench.Workshop.AddReading(Bench.Reading("2.5 thou", Bench.EndFloat))).Fact;

        var decision = Bench.Ok(bench.Workshop.Decide(new DecisionEntry(Bench.Pump, DecisionChoice.Keep, "owner") { Figure = Bench.EndFloat }));

        Assert.Equal(new[] { depth.Id, width.Id, check.Id }.Concat(bench.Record.Choices.Select(c => c.Id)).Order(), decision.ReliesOn.Order());
        Assert.Equal("reason-missing", Bench.Refused(bench.Workshop.Decide(new DecisionEntry(Bench.Pump, DecisionChoice.Keep, "owner") { Figure = Bench.EndFloat, Basis = DecisionBasis.AcceptedOnJudgement })).Code);
        Assert.Equal("decision-of-nothing", Bench.Refused(bench.Workshop.Decide(new DecisionEntry(Bench.Pump, DecisionChoice.Keep, "owner"))).Code);
    }

    [Fact]
    public void AFactSentTwice_IsStoredOnce_WhateverItIs()
    {
        using var bench = new Bench();
        var reading = Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535"))).Fact;
        T Twice<T>(Func<FactId, Outcome<T>> send)
            where T : Fact
        {
            var id = FactId.New();
            var first = Bench.Ok(send(id));
            var sequence = bench.Workshop.Sequence();
            var second = Bench.Ok(send(id));
            Assert.Equal((first.Id, first.Sequence, first.At), (second.Id, second.Sequence, second.At));
            Assert.Equal(sequence, bench.Workshop.Sequence());
            return first;
        }

        Twice(id => bench.Workshop.Choose(new PieceEntry(Bench.Pump, "pump/body", "P-1 Test pump", "owner") { Id = id }));
        Twice(id => bench.Workshop.Place(new PieceEntry(Bench.Pump, "pump/body", "P-1 Test pump", "owner") { Id = id }));
        Twice(id => bench.Workshop.AddWork(new WorkEntry(Bench.Pump, "P-1 Test pump", "lapped", "machinist") { Id = id, Altered = ["depth"] }));
        Twice(id => bench.Workshop.AddFinding(new FindingEntry(Bench.Pump, "scored", "bench") { Id = id, Piece = "P-1 Test pump" }));
        Twice(id => bench.Workshop.Decide(new DecisionEntry(Bench.Pump, DecisionChoice.Hold, "owner") { Id = id, Piece = "P-1 Test pump" }));
        Twice(id => bench.Workshop.Lift(new LiftEntry(Bench.Pump, "P-1 Test pump", "bench") { Id = id }));
        Twice(id => bench.Workshop.StrikeOut(new StrikeOutEntry(Bench.Pump, reading.Id, "slip", "bench") { Id = id }));
    }

    [Fact]
    public void Define_WithTheRevisionItWasMadeFrom_IsTaken_AndAnOlderOneIsShownBoth()
    {
        using var bench = new Bench();
        var body = bench.Record.Index.Part(PartName.Of("pump/body"))!;

        var edited = Bench.Ok(bench.Workshop.Define(Bench.Pump, body with { Material = "bronze" }, "owner"));
        Assert.Equal((2, "bronze"), (edited.Revision, edited.Material));

        var clash = Bench.Refused(bench.Workshop.Define(Bench.Pump, body with { Material = "steel" }, "bench"));
        Assert.Equal("revision-clash", clash.Code);
        Assert.Contains("bronze", clash.Allowed, StringComparison.Ordinal);
        Assert.Contains("steel", clash.Found, StringComparison.Ordinal);
        Assert.Equal("there-already", Bench.Refused(bench.Workshop.Define(Bench.Pump, new Part(body.Name) { Material = "tin" }, "bench")).Code);
        Assert.Equal("there-already", Bench.Refused(bench.Workshop.MakeEngine(new Engine(new EngineName("TEST PUMP"), Purpose.Display), "bench")).Code);
        Assert.Equal("confidence", Bench.Refused(bench.Workshop.EditEngine(bench.Record.Engine with { Confidence = 1.2 }, "bench")).Code);
    }

    [Fact]
    public void Define_AGapOfUnknownDimensions_IsRefused_WithTheNearest()
    {
        using var bench = new Bench();

        var problem = Bench.Refused(bench.Workshop.Define(Bench.Pump, new Record.Measures.Fit(FigureName.Of("pump.side-gap")) { Gap = [new(1, FigureName.Of("pump/body.deptth"))] }, "owner"));

        Assert.Equal("unknown-figure", problem.Code);
        Assert.Contains(Bench.Depth, problem.DoThis, StringComparison.Ordinal);
        Assert.Null(bench.Record.Index.Figure(FigureName.Of("pump.side-gap")));
    }

    [Fact]
    public void Appraise_IsKept_UntilSomethingIsWritten()
    {
        using var bench = new Bench();
        var before = Bench.Ok(bench.Workshop.Appraise(Bench.Pump));
        Assert.Same(before, Bench.Ok(bench.Workshop.Appraise(Bench.Pump)));
        Assert.Null(before[FigureName.Of(Bench.Depth)]!.Estimate);

        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535")));

        Assert.NotNull(Bench.Ok(bench.Workshop.Appraise(Bench.Pump))[FigureName.Of(Bench.Depth)]!.Estimate);
    }
}
