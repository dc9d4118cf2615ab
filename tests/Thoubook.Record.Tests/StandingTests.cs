using NodaTime;
using Thoubook.Record.Measures;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests;

public sealed class StandingTests
{
    private static readonly PartName Body = PartName.Of("pump/body");
    private static readonly FigureName Float = FigureName.Of("pump.float");
    private int _minutes;

    private OffsetDateTime Next() => Instant.FromUtc(2026, 3, 1, 9, 0).Plus(Duration.FromMinutes(++_minutes)).WithOffset(Offset.Zero);

    private static Quantity Q(string text) => QuantityReader.Read(text, ReadingContext.None).IsOk(out var q, out _) ? q : throw new ArgumentException(text);

    private (EngineRecord Record, Placed Placed, Check Check) Bench()
    {
        var tag = new PieceTag("P-1");
        var placed = new Placed(FactId.New(), Next(), "owner", tag, Body) { Sequence = 1 };
        var check = new Check(FactId.New(), Next(), "bench", Float, Q("2.5 thou")) { ReliesOn = [placed.Id], Sequence = 2 };
        var record = new EngineRecord(new Engine(new EngineName("Stand"), Purpose.StandRun))
        {
            Pieces = [new Piece(tag), new Piece(new PieceTag("P-2"))],
            Placings = [placed],
            Checks = [check],
        };
        return (record, placed, check);
    }

    [Fact]
    public void Untouched_Stands()
    {
        var (record, _, check) = Bench();
        Assert.True(Standing.Of(check, record).Stands);
    }

    [Fact]
    public void StruckOut_FallsToItsStrikeOut_AndStandsAgainWhenThatIsStruckOut()
    {
        var (record, _, check) = Bench();
        var strike = new StrikeOut(FactId.New(), Next(), "owner", check.Id, "wrong cover");
        var struck = record with { StrikeOuts = [strike] };
        Assert.Equal(strike, Standing.Of(check, struck).BrokenBy);
        var back = struck with { StrikeOuts = [strike, new StrikeOut(FactId.New(), Next(), "owner", strike.Id, "it was the right one")] };
        Assert.True(Standing.Of(check, back).Stands);
    }

    [Fact]
    public void WhatItReliedOnStruckOut_FallsWithIt()
    {
        var (record, placed, check) = Bench();
        var strike = new StrikeOut(FactId.New(), Next(), "owner", placed.Id, "another piece");
        Assert.Equal(strike, Standing.Of(check, record with { StrikeOuts = [strike] }).BrokenBy);
    }

    [Fact]
    public void PieceLifted_Falls()
    {
        var (record, placed, check) = Bench();
        var lifted = new Lifted(FactId.New(), Next(), "owner", placed.Id) { Why = "to lap it" };
        var standing = Standing.Of(check, record with { Liftings = [lifted] });
        Assert.Equal(lifted, standing.BrokenBy);
        Assert.Contains("to lap it", standing.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void AnotherPiecePlacedThere_Supersedes()
    {
        var (record, placed, check) = Bench();
        var other = new Placed(FactId.New(), Next(), "owner", new PieceTag("P-2"), Body) { Sequence = 3 };
        Assert.Equal(other, Standing.Of(check, record with { Placings = [placed, other] }).BrokenBy);
    }

    [Fact]
    public void WorkOnThePieceAfterwards_Breaks_WorkBeforeDoesNot()
    {
        var (record, _, check) = Bench();
        var after = new Work(FactId.New(), Next(), "machinist", new PieceTag("P-1"), "lapped") { Altered = ["depth"], Sequence = 3 };
        Assert.Equal(after, Standing.Of(check, record with { Works = [after] }).BrokenBy);
        var before = after with { At = Instant.FromUtc(2026, 2, 1, 0, 0).WithOffset(Offset.Zero) };
        Assert.True(Standing.Of(check, record with { Works = [before] }).Stands);
        var nothingAltered = after with { Altered = [] };
        Assert.True(Standing.Of(check, record with { Works = [nothingAltered] }).Stands);
    }

    [Fact]
    public void ConclusionOnAConclusion_FallsWithIt()
    {
        var (record, placed, check) = Bench();
        var decision = new Decision(FactId.New(), Next(), "owner", DecisionChoice.Keep) { Figure = Float, ReliesOn = [check.Id], Sequence = 4 };
        var with = record with { Decisions = [decision] };
        Assert.True(Standing.Of(decision, with).Stands);
        var lifted = new Lifted(FactId.New(), Next(), "owner", placed.Id);
        Assert.Equal(lifted, Standing.Of(decision, with with { Liftings = [lifted] }).BrokenBy);
    }

    [Fact]
    public void ReadingItReliedOn_WorkCameAfter_Falls()
    {
        var (record, _, _) = Bench();
        var reading = new Reading(FactId.New(), Next(), "bench", new PieceTag("P-1"), FigureName.Of("pump/body.depth"), Q("1.2535 in"));
        var decision = new Decision(FactId.New(), Next(), "owner", DecisionChoice.Keep) { Piece = new PieceTag("P-1"), ReliesOn = [reading.Id] };
        var work = new Work(FactId.New(), Next(), "machinist", new PieceTag("P-1"), "lapped") { Altered = ["depth"] };
        Assert.Equal(work, Standing.Of(decision, record with { Readings = [reading], Decisions = [decision], Works = [work] }).BrokenBy);
    }

    [Fact]
    public void WhatIsNotInTheRecord_CannotBeReliedOn()
    {
        var (record, _, _) = Bench();
        var decision = new Decision(FactId.New(), Next(), "owner", DecisionChoice.Keep) { ReliesOn = [FactId.New()] };
        Assert.False(Standing.Of(decision, record).Stands);
    }

    [Fact]
    public void Circle_DoesNotHang()
    {
        var (record, _, _) = Bench();
        var (one, two) = (FactId.New(), FactId.New());
        var first = new Decision(one, Next(), "owner", DecisionChoice.Keep) { ReliesOn = [two] };
        var second = new Decision(two, Next(), "owner", DecisionChoice.Keep) { ReliesOn = [one] };
        Assert.True(Standing.Of(first, record with { Decisions = [first, second] }).Stands);
    }

    [Fact]
    public void PieceChosenElsewhere_LeavesItsFirstPart()
    {
        var (record, _, _) = Bench();
        var head = PartName.Of("pump/head");
        var here = new Chosen(FactId.New(), Next(), "owner", new PieceTag("P-1"), Body) { Sequence = 5 };
        var there = new Chosen(FactId.New(), Next(), "owner", new PieceTag("P-1"), head) { Sequence = 6 };
        var moved = record with { Choices = [here, there] };
        Assert.Null(moved.Index.ChosenFor(Body));
        Assert.Equal(there, moved.Index.ChosenFor(head));
        Assert.Equal(head, moved.Index.PartOf(new PieceTag("P-1")));
        Assert.False(Standing.Of(here, moved).Stands);
    }
}
