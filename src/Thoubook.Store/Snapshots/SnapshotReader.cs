using Microsoft.Data.Sqlite;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Closing;
using Thoubook.Record.Measures;
using Thoubook.Record.Pieces;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Snapshots;

/// <summary>
/// Reads an engine out of the database with one prepared statement for each table, whatever its size. Used inside one transaction, so that
/// the record is of one moment.
/// </summary>
/// <remarks>
/// Pieces and gauges are the workshop's: every gauge is in the record, and the pieces that came with the engine or that its facts name. A piece
/// that is or was chosen or placed here brings along what was read, done, seen and departed from on it in other engines.
/// </remarks>
internal sealed class SnapshotReader(SqliteConnection connection, SqliteTransaction? transaction = null)
{
    private readonly KnownNames _known = new();
    private readonly Dictionary<long, List<FactId>> _reliedOn = [];
    private long _engine;

    public long EngineId => _engine;

    public KnownNames Known => _known;

    public EngineRecord? Load(EngineName name)
    {
        if (Definitions(name) is not { } record)
            return null;

        ReadReliedOn();
        record = record with
        {
            Sequence = Convert.ToInt64(Ask("SELECT coalesce(max(sequence), 0) FROM entry")),
            Choices = Facts(FactTables.Choices),
            Placings = Facts(FactTables.Placings),
            Readings = Facts(FactTables.Readings),
            Liftings = Facts(FactTables.Liftings),
            Works = Facts(FactTables.Works),
            Findings = Facts(FactTables.Findings),
            Checks = Facts(FactTables.Checks),
            Decisions = Facts(FactTables.Decisions),
            FlowTests = Facts(FactTables.FlowTests),
            Calibrations = Facts(FactTables.Calibrations),
            JointStates = Facts(ClosingFactTables.JointStates),
            Acceptances = Facts(ClosingFactTables.Acceptances),
            Signatures = Facts(ClosingFactTables.Signatures),
            Departures = Facts(ClosingFactTables.Departures),
            Debts = Facts(ClosingFactTables.Debts),
            Settlements = Facts(ClosingFactTables.Settlements),
            Counts = Facts(ClosingFactTables.Counts),
            Undoings = Facts(ClosingFactTables.Undoings),
            AsFound = Facts(ClosingFactTables.AsFound),
            Permissions = Facts(ClosingFactTables.Permissions),
            StrikeOuts = Facts(FactTables.StrikeOuts),
        };
        if (Convert.ToInt64(Ask("SELECT count(*) FROM engine")) > 1)
            record = WithPastOfPieces(record);
        return record with { Pieces = [.. record.Pieces.Where(p => _known.UsedPieces.Contains(p.Tag))] };
    }

    /// <summary>The definitions alone, with every piece of the workshop.</summary>
    public EngineRecord? Definitions(EngineName name)
    {
        var engine = Definitions(DefinitionTables.Engines, "WHERE d.name_key = $key", ("$key", DefinitionTables.NameKey(name)), (id, _) => _engine = id).FirstOrDefault();
        if (engine is null)
            return null;

        var parts = List(DefinitionTables.PartTemperatures, "engine_id = $engine").Values.SelectMany(l => l).ToLookup(t => t.State, t => t.Of);
        engine = engine with
        {
            Temperatures = [.. (List(DefinitionTables.TemperatureStates, "engine_id = $engine").GetValueOrDefault(_engine) ?? [])
                .Select((state, i) => state with { Parts = [.. parts[i]] })],
        };
        var record = new EngineRecord(engine)
        {
            Documents = OfEngine(DefinitionTables.Documents, (id, d) => _known.Documents[id] = d.Name),
            Parts = OfEngine(DefinitionTables.Parts, (id, p) => _known.Parts[id] = p.Name),
            Gauges = Gauges(),
            Pieces = Pieces(),
        };
        var figures = Figures();
        return record with
        {
            Dimensions = [.. figures.OfType<Dimension>()],
            Fits = [.. figures.OfType<Fit>()],
            Circuit = Circuit(),
            Spaces = OfEngine(ClosingTables.Spaces, (id, s) => _known.Spaces[id] = s.Name),
            Joints = OfEngine(ClosingTables.Joints, (id, j) => _known.Joints[id] = j.Name),
            Steps = Steps(),
            Together = OfEngine(ClosingTables.Together, (id, t) => _known.Together[id] = t.Name),
            Tools = OfEngine(ClosingTables.Tools, (id, t) => _known.Tools[id] = t.Name),
            PermissionItems = OfEngine(ClosingTables.PermissionItems, (id, p) => _known.PermissionItems[id] = p.Name),
        };
    }

    private List<Step> Steps()
    {
        const string Here = "step_id IN (SELECT id FROM step WHERE engine_id = $engine)";
        var ids = new List<long>();
        var steps = OfEngine(ClosingTables.Steps, (id, s) =>
        {
            _known.Steps[id] = s.Name;
            ids.Add(id);
        });
        var holds = List(ClosingTables.Holds, Here);
        var after = List(ClosingTables.After, Here);
        return [.. steps.Select((s, i) => s with { Holds = holds.GetValueOrDefault(ids[i]) ?? [], After = after.GetValueOrDefault(ids[i]) ?? [] })];
    }

    private OilCircuit? Circuit()
    {
        if (OfEngine(CircuitTables.Circuits, (id, _) => _known.Circuit = id) is not [var circuit])
            return null;
        var values = Of(CircuitTables.Values).ToLookup(v => v.Element, v => v.Value);
        var limits = Of(CircuitTables.Limits).ToLookup(l => l.State, l => l.Limit);
        return circuit with
        {
            Oil = circuit.Oil with { Points = Of(CircuitTables.Points) },
            Nodes = Of(CircuitTables.Nodes),
            Elements = [.. Of(CircuitTables.Elements).Select((e, i) => e with { Values = [.. values[i]] })],
            Gauges = Of(CircuitTables.Gauges),
            States = [.. Of(CircuitTables.States).Select((s, i) => s with { Limits = [.. limits[i]] })],
        };

        List<TItem> Of<TItem>(ListTable<OilCircuit, TItem> table) => List(table, $"circuit_id = {_known.Circuit}").Values.SingleOrDefault() ?? [];
    }

    private List<Figure> Figures()
    {
        const string Here = "figure_id IN (SELECT id FROM figure WHERE engine_id = $engine)";
        var ids = new List<long>();
        var figures = OfEngine(FigureTables.Figures, (id, f) =>
        {
            _known.Figures[id] = f.Name;
            ids.Add(id);
        });
        var limitSets = List(FigureTables.LimitSets, Here);
        var gaps = List(FigureTables.GapTerms, Here);
        var sizes = List(FigureTables.RepairSizes, Here);
        for (var i = 0; i < figures.Count; i++)
        {
            var figure = figures[i] with { LimitSets = limitSets.GetValueOrDefault(ids[i]) ?? [] };
            figures[i] = figure switch
            {
                Dimension dimension => dimension with { RepairSizes = sizes.GetValueOrDefault(ids[i]) ?? [] },
                Fit fit => fit with { LimitSets = FigureTables.OfFit(fit.LimitSets), Gap = gaps.GetValueOrDefault(ids[i]) ?? [] },
                _ => figure,
            };
        }

        return figures;
    }

    public List<Gauge> Gauges() => OfWorkshop(DefinitionTables.Gauges, (id, g) => _known.Gauges[id] = g.Tag);

    public List<Piece> Pieces()
    {
        var home = new HashSet<long>();
        using (var command = Command("SELECT id FROM piece WHERE engine_id = $engine"))
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
                home.Add(reader.GetInt64(0));
        }

        return OfWorkshop(DefinitionTables.Pieces, (id, p) =>
        {
            _known.Pieces[id] = p.Tag;
            if (home.Contains(id))
                _known.Use(p.Tag);
        });
    }

    /// <summary>What was read, done, seen and departed from on pieces of this engine while they were in others.</summary>
    private EngineRecord WithPastOfPieces(EngineRecord record)
    {
        const string Travelled = """
            FROM (SELECT piece_id FROM chosen JOIN entry USING (sequence) WHERE engine_id = $engine
                  UNION SELECT piece_id FROM placed JOIN entry USING (sequence) WHERE engine_id = $engine) AS here
            """;
        using (var command = Command($"""
            SELECT f.id, f.part, f.local {Travelled} JOIN reading AS t ON t.piece_id = here.piece_id JOIN figure AS f ON f.id = t.figure_id WHERE f.engine_id <> $engine
            """))
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
                _known.Figures[reader.GetInt64(0)] = new FigureName(PartName.Of(reader.GetString(1)), reader.GetString(2));
        }

        using (var command = Command("SELECT id, name FROM part WHERE engine_id <> $engine"))
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
                _known.Parts[reader.GetInt64(0)] = PartName.Of(reader.GetString(1));
        }

        using (var command = Command("SELECT id, name FROM joint WHERE engine_id <> $engine"))
        using (var reader = command.ExecuteReader())
        {
            while (reader.Read())
                _known.Joints[reader.GetInt64(0)] = new JointName(reader.GetString(1));
        }

        string Elsewhere(FactTable table) => $"{Travelled} JOIN {table.Name} AS t ON t.piece_id = here.piece_id JOIN entry AS e ON e.sequence = t.sequence WHERE e.engine_id <> $engine";
        var readings = Facts(FactTables.Readings, Elsewhere(FactTables.Readings));
        var works = Facts(FactTables.Works, Elsewhere(FactTables.Works));
        var findings = Facts(FactTables.Findings, Elsewhere(FactTables.Findings));
        var departures = Facts(ClosingFactTables.Departures, Elsewhere(ClosingFactTables.Departures));
        if (readings.Count + works.Count + findings.Count + departures.Count == 0)
            return record;

        var brought = readings.Concat<Fact>(works).Concat(findings).Concat(departures).Select(f => f.Id).ToHashSet();
        var strikeOuts = Facts(FactTables.StrikeOuts, "FROM entry AS e JOIN strike_out AS t ON t.sequence = e.sequence WHERE e.engine_id <> $engine")
            .Where(s => brought.Contains(s.Of) && brought.Add(s.Id));
        return record with
        {
            Readings = Merge(record.Readings, readings),
            Works = Merge(record.Works, works),
            Findings = Merge(record.Findings, findings),
            Departures = Merge(record.Departures, departures),
            StrikeOuts = Merge(record.StrikeOuts, strikeOuts.ToList()),
        };
    }

    private static List<T> Merge<T>(IReadOnlyList<T> here, IReadOnlyList<T> elsewhere)
        where T : Fact => [.. here.Concat(elsewhere).OrderBy(f => f.Sequence)];

    private void ReadReliedOn()
    {
        using var command = Command("""
            SELECT r.sequence, referred.id FROM entry AS e JOIN relied_on AS r ON r.sequence = e.sequence JOIN entry AS referred ON referred.sequence = r.on_sequence
            WHERE e.engine_id = $engine ORDER BY r.sequence, r.position
            """);
        using var reader = command.ExecuteReader();
        var row = new RowReader(reader, _known);
        while (row.Next())
        {
            var sequence = row.Integer();
            if (!_reliedOn.TryGetValue(sequence, out var list))
                _reliedOn[sequence] = list = [];
            list.Add(row.Fact());
        }
    }

    private List<T> Facts<T>(FactTable<T> table)
        where T : Fact =>
        Facts(table, $"FROM entry AS e JOIN {table.Name} AS t ON t.sequence = e.sequence WHERE e.engine_id = $engine AND e.kind = '{table.Name}'");

    private List<T> Facts<T>(FactTable<T> table, string from)
        where T : Fact
    {
        using var command = Command($"SELECT e.sequence, e.id, e.at_utc_ns, e.offset_s, e.by_whom, {table.Read("t")} {from} ORDER BY e.sequence");
        using var reader = command.ExecuteReader();
        var row = new RowReader(reader, _known);
        var facts = new List<T>();
        while (row.Next())
            facts.Add(table.Fact(row.Head(_reliedOn), row));
        return facts;
    }

    private List<T> OfEngine<T>(DefinitionTable<T> table, Action<long, T> met) => Definitions(table, "WHERE d.engine_id = $engine", null, met);

    private List<T> OfWorkshop<T>(DefinitionTable<T> table, Action<long, T> met) => Definitions(table, "", null, met);

    private List<T> Definitions<T>(DefinitionTable<T> table, string where, (string Name, string Value)? parameter, Action<long, T> met)
    {
        using var command = Command($"SELECT d.id, d.revision, {table.Read("d")} FROM {table.Name} AS d {where} ORDER BY d.id");
        if (parameter is { } named)
            command.Parameters.AddWithValue(named.Name, named.Value);
        using var reader = command.ExecuteReader();
        var row = new RowReader(reader, _known);
        var definitions = new List<T>();
        while (row.Next())
        {
            var id = row.Integer();
            var definition = table.Definition(row, (int)row.Integer());
            met(id, definition);
            definitions.Add(definition);
        }

        return definitions;
    }

    private Dictionary<long, List<TItem>> List<TOwner, TItem>(ListTable<TOwner, TItem> table, string where)
    {
        using var command = Command($"SELECT l.{table.OwnerColumn}, {table.Read("l")} FROM {table.Name} AS l WHERE l.{where} ORDER BY l.{table.OwnerColumn}, l.position");
        using var reader = command.ExecuteReader();
        var row = new RowReader(reader, _known);
        var lists = new Dictionary<long, List<TItem>>();
        while (row.Next())
        {
            var owner = row.Integer();
            if (!lists.TryGetValue(owner, out var list))
                lists[owner] = list = [];
            list.Add(table.Item(row));
        }

        return lists;
    }

    private object? Ask(string sql)
    {
        using var command = Command(sql);
        return command.ExecuteScalar();
    }

    private SqliteCommand Command(string sql)
    {
        var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        if (sql.Contains("$engine", StringComparison.Ordinal))
            command.Parameters.AddWithValue("$engine", _engine);
        return command;
    }
}
