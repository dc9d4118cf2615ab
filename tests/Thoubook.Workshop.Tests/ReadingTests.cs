using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Quantities;
using Thoubook.Store;

namespace Thoubook.Workshop.Tests;

public class ReadingTests
{
    [Fact]
    public void AddReading_BareNumber_TakesTheUnitOfTheLimits()
    {
        using var bench = new Bench();

        var recorded = Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535") with { Place = "A1", Gauge = "M-1 Test pump", Temperature = "19 °C", Note = " twice " }));

        var reading = Assert.IsType<Reading>(recorded.Fact);
        Assert.Equal(1.2535 * 0.0254, reading.Value.Si, 12);
        Assert.Equal(("1.2535", "A1", "M-1 Test pump", "19 °C", "twice"), (reading.Value.Text, reading.Place.Text, reading.Gauge?.Text, reading.Temperature?.Text, reading.Note));
        Assert.Equal(reading.Id, Assert.Single(bench.Record.Readings).Id);
        Assert.Equal(TradeUnit.Inch, recorded.Value.Unit);
    }

    [Fact]
    public void AddReading_ThousandfoldOff_Asks_AndIsTakenWhenConfirmed()
    {
        using var bench = new Bench();
        var outcome = bench.Workshop.AddReading(Bench.Reading("1253.5"));

        var asked = Bench.Refused(outcome);
        Assert.True(asked.IsQuestion);
        Assert.Equal("value", asked.Field);
        Assert.Empty(bench.Record.Readings);

        foreach (var meaning in asked.Meanings)
        {
            Assert.True(bench.Workshop.AddReading(Bench.Reading("1253.5") with { Confirmed = new HashSet<string> { meaning.Code } }).IsOk(out _, out _), meaning.Code);
        }
    }

    [Fact]
    public void AddReading_NoPieceChosen_GivesThePartAPieceOfItsOwn_OnceAndForAll()
    {
        using var bench = new Bench();

        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535")));
        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2536")));

        Assert.Equal("pump/body", Assert.Single(bench.Record.Choices).Piece.Text);
        Assert.Equal(2, bench.Record.Index.ReadingsOf(new PieceTag("pump/body"), "depth").Count);
    }

    [Fact]
    public void AddReading_SentTwice_IsStoredOnce()
    {
        using var bench = new Bench();
        var entry = Bench.Reading("1.2535") with { Id = FactId.New() };

        var first = Bench.Ok(bench.Workshop.AddReading(entry));
        var second = Bench.Ok(bench.Workshop.AddReading(entry));

        Assert.Equal(first.Fact, second.Fact);
        Assert.Single(bench.Record.Readings);
        Assert.Single(bench.Record.Choices);
        Assert.Equal("id-taken", Bench.Refused(bench.Workshop.AddReading(entry with { Value = "1.2536" })).Code);
    }

    [Fact]
    public void AddReading_SentTwice_StaysWithItsPiece_ThoughAnotherWasChosenSince()
    {
        using var bench = new Bench();
        var entry = Bench.Reading("1.2535") with { Id = FactId.New() };
        Bench.Ok(bench.Workshop.AddReading(entry));
        Bench.Ok(bench.Workshop.Choose(new PieceEntry(Bench.Pump, "pump/body", "P-1 Test pump", "owner")));

        Assert.Equal("pump/body", ((Reading)Bench.Ok(bench.Workshop.AddReading(entry)).Fact).Piece.Text);
        Assert.Equal("P-1 Test pump", ((Reading)Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535"))).Fact).Piece.Text);
    }

    [Fact]
    public void AddReading_SentFromTwoPlacesAtOnce_IsStoredOnce()
    {
        using var bench = new Bench();
        var entry = Bench.Reading("1.2535") with { Id = FactId.New() };

        Parallel.For(0, 8, _ => Bench.Ok(bench.Workshop.AddReading(entry)));

        Assert.Single(bench.Record.Readings);
        Assert.Single(bench.Record.Choices);
        Assert.True(bench.Workshop.Verify().IsSound);
    }

    [Fact]
    public void AddReading_EverythingWrong_IsSaidAtOnce()
    {
        using var bench = new Bench();

        var refused = Assert.IsType<Outcome<Recorded>.Refused>(bench.Workshop.AddReading(Bench.Reading("1.2.3") with { Gauge = "M-2", Temperature = "warm", Place = new string('x', 100) }));

        Assert.Equal(["gauge", "place", "temperature", "value"], refused.Problems.Select(p => p.Field).Order());
    }

    [Theory]
    [InlineData("pump/body.depht", "pump/body.depth")]
    [InlineData("pump/boddy.depth", "pump/body.depth")]
    public void AddReading_UnknownFigure_NamesTheNearest(string figure, string nearest)
    {
        using var bench = new Bench();

        Assert.Contains(nearest, Bench.Refused(bench.Workshop.AddReading(Bench.Reading("1.25", figure))).DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void AddReading_OfAFit_IsACheck_AndFallsWithThePieces()
    {
        using var bench = new Bench();
        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535")));
        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2510", Bench.Width)));
        Bench.Ok(bench.Workshop.Place(new PieceEntry(Bench.Pump, "pump/body", "pump/body", "bench")));

        var check = Assert.IsType<Check>(Bench.Ok(bench.Workshop.AddReading(Bench.Reading("2.5 thou", Bench.EndFloat) with { Method = CheckMethod.Feeler })).Fact);

        var record = bench.Record;
        Assert.Equal([record.Placings[0].Id, record.Index.ChosenFor(PartName.Of("pump/driver"))!.Id], check.ReliesOn);
        Assert.True(Standing.Of(check, record).Stands);
        Bench.Ok(bench.Workshop.Lift(new LiftEntry(Bench.Pump, "pump/body", "bench") { Why = "to lap it" }));
        Assert.False(Standing.Of(check, bench.Record).Stands);
    }

    [Fact]
    public void AddReading_PartsOfOneNameInTwoEngines_HavePiecesOfTheirOwn()
    {
        using var bench = new Bench();
        bench.MakePump("Other pump");
        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535")));

        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2538") with { Engine = "Other pump" }));

        var other = Bench.Ok(bench.Workshop.Engine("Other pump"));
        Assert.Equal("pump/body of Other pump", Assert.Single(other.Readings).Piece.Text);
        Assert.Equal("pump/body", Assert.Single(bench.Record.Readings).Piece.Text);
    }

    [Fact]
    public void Save_TwoEnginesWithPartsOfOneName_KeepsTheirPiecesApart_AndCanBeRepeated()
    {
        using var bench = new Bench();
        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535")));
        var copy = bench.Record with { Engine = bench.Record.Engine with { Name = new EngineName("Other pump"), Revision = 0 } };
        copy = copy with
        {
            Pieces = [.. copy.Pieces.Where(p => p.Tag.Text == "pump/body").Select(p => p with { Revision = 0 })],
            Gauges = [],
            Choices = [.. copy.Choices.Select(c => c with { Id = FactId.New() })],
            Readings = [.. copy.Readings.Select(r => r with { Id = FactId.New() })],
        };

        Bench.Ok(bench.Workshop.Save(copy, "owner"));

        Assert.True(Bench.Ok(bench.Workshop.Save(copy, "owner")).IsNothing);
        Assert.Equal("pump/body of Other pump", Assert.Single(Bench.Ok(bench.Workshop.Engine("Other pump")).Readings).Piece.Text);
        Assert.Single(bench.Record.Readings);
    }

    [Fact]
    public void AddReading_WhenThePieceWasLifted_AsksWhichPiece()
    {
        using var bench = new Bench();
        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535")));
        Bench.Ok(bench.Workshop.Lift(new LiftEntry(Bench.Pump, "pump/body", "bench")));

        Assert.Equal("which-piece", Bench.Refused(bench.Workshop.AddReading(Bench.Reading("1.2535"))).Code);
        Bench.Ok(bench.Workshop.AddReading(Bench.Reading("1.2535") with { Piece = "pump/body" }));
    }

    [Fact]
    public void Understand_WritesNothing()
    {
        using var bench = new Bench();
        var before = bench.Workshop.Sequence();

        Assert.Equal(1.2535 * 0.0254, Bench.Ok(bench.Workshop.Understand(Bench.Pump, Bench.Depth, "1.2535", new HashSet<string>())).Si, 12);
        Assert.Equal(before, bench.Workshop.Sequence());
    }

    [Fact]
    public void Engine_KeptInMemory_IsWhatTheDatabaseHolds()
    {
        using var bench = new Bench();
        using var other = Bench.Ok(OpenWorkshop.Open(bench.Folder, WhenMissing.Refuse, SystemClock.Instance));
        foreach (var (value, figure) in new[] { ("1.2535", Bench.Depth), ("1.2536", Bench.Depth), ("1.251", Bench.Width), ("2.5 thou", Bench.EndFloat), ("0.5T", Bench.EndFloat) })
        {
            var entry = Bench.Reading(value, figure) with { Place = "A1", Note = "as taken" };
            var outcome = bench.Workshop.AddReading(entry);
            if (!outcome.IsOk(out _, out var problems))
                Bench.Ok(bench.Workshop.AddReading(entry with { Confirmed = problems.SelectMany(p => p.Meanings).Select(m => m.Code).Take(1).ToHashSet(StringComparer.Ordinal) }));
            var (kept, held) = (bench.Record, Bench.Ok(other.Engine(Bench.Pump)));
            Assert.Equal(held.Sequence, kept.Sequence);
            Assert.Equal(held.Readings, kept.Readings);
            Assert.Equal(held.Choices, kept.Choices);
            Assert.Equal(held.Checks.Select(c => (c with { ReliesOn = [] }, string.Join(' ', c.ReliesOn))), kept.Checks.Select(c => (c with { ReliesOn = [] }, string.Join(' ', c.ReliesOn))));
        }
    }

    [Fact]
    public void Engine_WrittenByAnotherProgram_IsSeen()
    {
        using var bench = new Bench();
        using var other = Bench.Ok(OpenWorkshop.Open(bench.Folder, WhenMissing.Refuse, SystemClock.Instance));
        Assert.Empty(bench.Record.Readings);
        Assert.Same(bench.Record, bench.Record);

        Bench.Ok(other.AddReading(Bench.Reading("1.2535")));

        Assert.Single(bench.Record.Readings);
        Assert.Equal(bench.Workshop.Sequence(), bench.Record.Sequence);
    }
}
