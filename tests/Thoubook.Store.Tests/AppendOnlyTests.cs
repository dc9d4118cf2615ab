using Microsoft.Data.Sqlite;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Store.Schema;

namespace Thoubook.Store.Tests;

public class AppendOnlyTests
{
    private static readonly WorkshopRow[] Rows =
    [
        new("entry", "by_whom = 'somebody else'"), new("definition_edit", "name = 'x'"), new("relied_on", "position = 9"), new("reading", "value_si = 1"),
        new("chosen", "piece_id = 2"), new("placed", "piece_id = 2"), new("lifted", "why = 'x'"), new("work", "what = 'x'"), new("finding", "what = 'x'"),
        new("fit_check", "value_si = 1"), new("decision", "why = 'x'"), new("flow_test", "flow_si = 1"), new("calibration", "why = 'x'"),
        new("joint_state", "stage = 'locked'"), new("acceptance", "why = 'x'"), new("signature", "note = 'x'"), new("departure", "why = 'x'"), new("debt", "what = 'x'"), new("settlement", "how = 'x'"),
        new("counted", "number = 7"), new("undoing", "why = 'x'"), new("as_found", "words = 'x'"), new("permission_line", "note = 'x'"), new("strike_out", "why = 'x'"),
    ];

    public static TheoryData<string, string> Tables => [.. Rows.Select(r => (r.Table, r.Change))];

    [Fact]
    public void Tables_AreAllThatOnlyGrow() =>
        Assert.Equal(WorkshopContext.Tables.Where(t => t.AppendOnly).Select(t => t.Name).Order(), Rows.Select(r => r.Table).Order());

    [Theory]
    [MemberData(nameof(Tables))]
    public void Row_CannotBeChangedOrDeletedOrReplaced(string table, string change)
    {
        using var bench = new Bench();
        using var store = bench.Open();
        Bench.Ok(store.Write(Change.Whole(FullPump(), "owner")));
        using var connection = Connections.Open(bench.Database, Access.Write);

        Assert.Contains("never changed", Assert.Throws<SqliteException>(() => connection.Do($"UPDATE {table} SET {change}")).Message, StringComparison.Ordinal);
        Assert.Contains("never deleted", Assert.Throws<SqliteException>(() => connection.Do($"DELETE FROM {table}")).Message, StringComparison.Ordinal);
        Assert.Contains("never replaced", Assert.Throws<SqliteException>(() => connection.Do($"INSERT OR REPLACE INTO {table} SELECT * FROM {table} LIMIT 1")).Message, StringComparison.Ordinal);
    }

    /// <summary>A pump with at least one fact of each kind.</summary>
    internal static EngineRecord FullPump()
    {
        var pump = ClosedUp.Over(Bench.Pump());
        var piece = pump.Pieces[0].Tag;
        var reading = Bench.Reading(1.2535) with { Gauge = pump.Gauges[0].Tag, Temperature = Bench.Celsius(19), Note = "taken twice" };
        var placed = new Placed(FactId.New(), Bench.Morning, "bench", piece, Bench.Body);
        var test = Bench.FlowTest() with { ReliesOn = [placed.Id] };
        return pump with
        {
            FlowTests = [test],
            Calibrations = [new Calibration(FactId.New(), Bench.Morning, "owner", test.Id) { Why = "within the band" }],
            Readings = [reading, Bench.Reading(1.2536)],
            Placings = [placed],
            Works = [new Work(FactId.New(), Bench.Morning, "machinist", piece, "lapped") { Altered = ["depth"], RepairSize = "+010" }],
            Findings = [new Finding(FactId.New(), Bench.Morning, "bench", piece, null, "scored"), new Finding(FactId.New(), Bench.Morning, "bench", null, Bench.Body, "dirty") { Outcome = FindingOutcome.NotSound }],
            Checks = [new Check(FactId.New(), Bench.Morning, "bench", Bench.EndFloat, Bench.Inches(0.0025, "2.5 thou", Record.Quantities.FitSigns.TightIsNegative)) { Method = CheckMethod.Feeler, ReliesOn = [placed.Id] }],
            Decisions = [new Decision(FactId.New(), Bench.Morning, "owner", DecisionChoice.Keep) { Piece = piece, Figure = Bench.Depth, Basis = DecisionBasis.AcceptedOnJudgement, Why = "stand use", ReliesOn = [reading.Id, placed.Id] }],
            Liftings = [new Lifted(FactId.New(), Bench.Morning, "bench", placed.Id) { Why = "to lap it" }],
            StrikeOuts = [new StrikeOut(FactId.New(), Bench.Morning, "bench", reading.Id, "wrong piece")],
        };
    }

    private sealed record WorkshopRow(string Table, string Change);
}
