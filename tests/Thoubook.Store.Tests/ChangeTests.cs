using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;

namespace Thoubook.Store.Tests;

public class ChangeTests
{
    [Fact]
    public void Write_TakenIdentifier_WithOtherContents_IsRefused_AndNothingIsWritten()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var reading = Bench.Reading(1.2535);
        var written = Bench.Ok(store.Write(Change.Whole(Bench.Pump() with { Readings = [reading] }, "owner")));

        var problem = Bench.Refused(store.Write(new Change(Bench.Engine, "bench") { Facts = [Bench.Reading(1.2536), reading with { Value = Bench.Inches(1.2531, "1.2531 in") }] }));

        Assert.Equal("id-taken", problem.Code);
        Assert.Equal(written.Sequence, store.Sequence());
        Assert.Single(Bench.Ok(store.Load(Bench.Engine)).Readings);
    }

    [Fact]
    public void Write_SentTwice_WithTimesFilledIn_IsStoredOnce_AsFirstSent()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        var reading = Bench.Reading(1.2535);
        Change Sent(Reading of) => new(Bench.Engine, "bench") { Facts = [of], Circumstances = Circumstances.FilledIn };
        Bench.Ok(store.Write(Sent(reading)));

        var again = Bench.Ok(store.Write(Sent(reading with { At = Bench.Morning.PlusMinutes(1) })));

        Assert.True(again.IsNothing);
        Assert.Equal(Bench.Morning, Assert.Single(again.Facts).At);
        Assert.Equal("id-taken", Bench.Refused(store.Write(Sent(reading) with { Circumstances = Circumstances.Stated, Facts = [reading with { At = Bench.Morning.PlusMinutes(1) }] })).Code);
    }

    [Theory]
    [InlineData("unknown-figure", "pump/body.depht", "P-1", null, "pump/body.depth")]
    [InlineData("unknown-piece", "pump/body.depth", "P-l", null, "P-1")]
    [InlineData("unknown-gauge", "pump/body.depth", "P-1", "M-2", "M-1")]
    public void Write_UnknownName_IsRefused_WithTheNearest(string code, string figure, string piece, string? gauge, string nearest)
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));

        var problem = Bench.Refused(store.Write(new Change(Bench.Engine, "bench")
        {
            Facts = [new Reading(FactId.New(), Bench.Morning, "bench", new PieceTag(piece), FigureName.Of(figure), Bench.Inches(1.25, "1.25 in")) { Gauge = gauge is null ? null : new GaugeTag(gauge) }],
        }));

        Assert.Equal(code, problem.Code);
        Assert.Contains(nearest, problem.DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_AnEdit_LeavesWhoAndWhenAndBeforeAndAfter()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        var part = Bench.Ok(store.Load(Bench.Engine)).Parts[0];

        var changed = Bench.Ok(store.Write(new Change(Bench.Engine, "machinist") { WhenThere = WhenThere.MatchRevision, Parts = [part with { Material = "bronze" }] }));

        Assert.Equal((0, 1), (changed.Added, changed.Edited));
        using var connection = Connections.Open(bench.Database, Access.Read);
        Assert.Equal(
            "part pump/body 2 machinist aluminium→bronze",
            connection.Ask($"SELECT definition || ' ' || name || ' ' || revision || ' ' || by_whom || ' ' || substr(json_extract(before, '$.material'), 6) || '→' || json_extract(after, '$.material') FROM definition_edit JOIN entry USING (sequence) WHERE sequence = {changed.Sequence}"));
        Assert.Equal(2, Bench.Ok(store.Load(Bench.Engine)).Parts[0].Revision);
    }

    [Fact]
    public void Write_WithAnOlderRevision_IsRefused_AndShowsBothValues()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        var part = Bench.Ok(store.Load(Bench.Engine)).Parts[0];
        Bench.Ok(store.Write(new Change(Bench.Engine, "owner") { Parts = [part with { Material = "bronze" }] }));

        var problem = Bench.Refused(store.Write(new Change(Bench.Engine, "bench") { Parts = [part with { Material = "steel" }] }));

        Assert.Equal("revision-clash", problem.Code);
        Assert.Contains("steel", problem.Found, StringComparison.Ordinal);
        Assert.Contains("bronze", problem.Allowed, StringComparison.Ordinal);
        Assert.Equal("bronze", Bench.Ok(store.Load(Bench.Engine)).Parts[0].Material);
    }

    [Fact]
    public void Write_ANewOne_OfANameThatIsThere_IsRefused()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));

        Assert.Equal("there-already", Bench.Refused(store.Write(new Change(Bench.Engine, "bench") { WhenThere = WhenThere.MatchRevision, Parts = [new Part(Bench.Body)] })).Code);
        Assert.Equal("given-twice", Bench.Refused(store.Write(new Change(Bench.Engine, "bench") { Parts = [new Part(PartName.Of("pump/cover")), new Part(PartName.Of("pump/cover"))] })).Code);
    }

    [Fact]
    public void Write_LimitsReplaced_KeepsNoneOfTheOld()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        var depth = Bench.Ok(store.Load(Bench.Engine)).Dimensions[0];

        Bench.Ok(store.Write(new Change(Bench.Engine, "owner") { Figures = [depth with { LimitSets = [new(Limits.None), new(new Limits { NewLeast = Bench.Inches(1, "1") })], RepairSizes = [] }] }));

        var now = Bench.Ok(store.Load(Bench.Engine)).Dimensions[0];
        Assert.Equal(2, now.LimitSets.Count);
        Assert.Empty(now.RepairSizes);
        Assert.True(store.Verify().IsSound);
    }

    [Fact]
    public void Write_ACircuitEdited_DatesTheElementsThatChanged()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        var circuit = Bench.Ok(store.Load(Bench.Engine)).Circuit!;
        Assert.All(circuit.Elements, e => Assert.Equal(1, e.Revision));

        Bench.Ok(store.Write(new Change(Bench.Engine, "bench") { Circuit = circuit with { Elements = [circuit.Elements[0], circuit.Elements[2] with { Blanked = false }] } }));

        var now = Bench.Ok(store.Load(Bench.Engine)).Circuit!;
        Assert.Equal(2, now.Revision);
        Assert.Equal([("pump", 1), ("jet", 2)], now.Elements.Select(e => (e.Name.Text, e.Revision)));
        Assert.True(Bench.Ok(store.Write(Change.Whole(Bench.Pump() with { Choices = [], Circuit = now with { Revision = 0 } }, "owner"))).IsNothing);
        Assert.Equal("revision-clash", Bench.Refused(store.Write(new Change(Bench.Engine, "owner") { Circuit = circuit with { Gauges = [] } })).Code);
        Assert.True(store.Verify().IsSound);
    }

    [Fact]
    public void Write_ACircuitThatNamesAFigureThatIsNotThere_IsRefused()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var circuit = Bench.Circuit();
        circuit = circuit with { Elements = [circuit.Elements[0] with { Values = [new("width", new CircuitValue.Taken(FigureName.Of("pump/driver.widht")))] }] };

        var problem = Bench.Refused(store.Write(Change.Whole(Bench.Pump() with { Circuit = circuit }, "owner")));

        Assert.Equal("unknown-figure", problem.Code);
        Assert.Contains("pump/driver.width", problem.DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_OneWrongFactAmongMany_WritesNone()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var good = Bench.Pump() with { Readings = [.. Enumerable.Range(0, 100).Select(i => Bench.Reading(1.25 + i * 1e-4))] };

        var problem = Bench.Refused(store.Write(Change.Whole(good with { Readings = [.. good.Readings, Bench.Reading(1.25, "P-99")] }, "owner")));

        Assert.Equal("unknown-piece", problem.Code);
        Assert.Empty(store.Engines());
        Assert.Equal(0, store.Sequence());
    }

    [Fact]
    public void Write_PieceOfAnotherEngine_DescribedOtherwise_IsRefused()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        var other = Bench.Pump("Other pump");

        Assert.Equal("described-elsewhere", Bench.Refused(store.Write(Change.Whole(other with { Pieces = [other.Pieces[0] with { Material = "steel" }] }, "owner"))).Code);
    }

    [Fact]
    public void Load_PieceFromAnotherEngine_BringsItsReadingsAndWhatBecameOfThem()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        var (kept, struck) = (Bench.Reading(1.2535), Bench.Reading(1.9));
        var slip = new StrikeOut(FactId.New(), Bench.Morning, "bench", struck.Id, "slip");
        Bench.Ok(store.Write(Change.Whole(Bench.Pump() with { Readings = [kept, struck], StrikeOuts = [slip] }, "owner")));
        Bench.Ok(store.Write(Change.Whole(Bench.Pump("Other pump", "P-2") with { Readings = [Bench.Reading(1.3, "P-2")] }, "owner")));
        Assert.Equal(["P-2"], Bench.Ok(store.Load(new EngineName("other PUMP"))).Pieces.Select(p => p.Tag.Text));

        Bench.Ok(store.Write(new Change(new EngineName("Other pump"), "owner") { Facts = [new Chosen(FactId.New(), Bench.Morning, "owner", new PieceTag("P-1"), Bench.Body)] }));

        var other = Bench.Ok(store.Load(new EngineName("Other pump")));
        Assert.Equal([kept.Id, struck.Id], other.Index.ReadingsOf(new PieceTag("P-1"), "depth").Select(r => r.Id));
        Assert.NotNull(other.Index.StrikeOutOf(struck.Id));
        Assert.Equal(2, other.Pieces.Count);
        Assert.Equal(2, Bench.Ok(store.Load(Bench.Engine)).Readings.Count);
    }

    [Fact]
    public void Engines_AreListed_WithTheirReadings()
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(Bench.Pump() with { Readings = [Bench.Reading(1.2535), Bench.Reading(1.2536)] }, "owner")));
        Bench.Ok(store.Write(Change.Whole(Bench.Pump("A pump", "P-2"), "owner")));

        Assert.Equal([("A pump", 0L), ("Test pump", 2L)], store.Engines().Select(e => (e.Name.Text, e.Readings)));
        Assert.Contains("Test pump", Bench.Refused(store.Load(new EngineName("Test bump"))).DoThis, StringComparison.Ordinal);
    }
}
