using NodaTime;
using Thoubook.Record.Circuits;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Record;

/// <summary>Look-ups over one <see cref="EngineRecord"/>: by name, by piece, what is struck out, what is chosen and placed now.</summary>
public sealed class RecordIndex
{
    private readonly Dictionary<PartName, Part> _parts;
    private readonly Dictionary<FigureName, Figure> _figures;
    private readonly Dictionary<PieceTag, Piece> _pieces;
    private readonly Dictionary<GaugeTag, Gauge> _gauges;
    private readonly Dictionary<DocumentName, Document> _documents;
    private readonly Dictionary<FactId, StrikeOut> _struck;
    private readonly Dictionary<FactId, Lifted> _lifted = [];
    private readonly Dictionary<FactId, Undone> _undone = [];
    private readonly Dictionary<FactId, Settled> _settled = [];
    private readonly Dictionary<JointName, List<JointState>> _joints = [];
    private readonly Dictionary<PartName, Chosen> _chosenFor = [];
    private readonly Dictionary<PartName, Placed> _placedIn = [];
    private readonly Dictionary<(PieceTag, string), List<Reading>> _readings = [];
    private readonly Dictionary<PieceTag, List<Work>> _works = [];
    private readonly Dictionary<FigureName, List<Check>> _checks = [];
    private readonly Lazy<Dictionary<FactId, Fact>> _facts;

    internal RecordIndex(EngineRecord record)
    {
        Record = record;
        _parts = record.Parts.ToDictionary(p => p.Name);
        _figures = record.Dimensions.Concat<Figure>(record.Fits).ToDictionary(f => f.Name);
        _pieces = record.Pieces.ToDictionary(p => p.Tag);
        _gauges = record.Gauges.ToDictionary(g => g.Tag);
        _documents = record.Documents.ToDictionary(d => d.Name);
        _struck = StruckOut(record.StrikeOuts);
        _facts = new(() => record.Facts.ToDictionary(f => f.Id));

        foreach (var lifted in record.Liftings)
        {
            if (!_struck.ContainsKey(lifted.Id))
                _lifted.TryAdd(lifted.Of, lifted);
        }

        foreach (var undone in record.Undoings)
        {
            if (!_struck.ContainsKey(undone.Id))
                _undone.TryAdd(undone.Of, undone);
        }

        foreach (var settled in record.Settlements)
        {
            if (!_struck.ContainsKey(settled.Id))
                _settled.TryAdd(settled.Of, settled);
        }

        foreach (var state in record.JointStates)
        {
            if (!_struck.ContainsKey(state.Id) && !_undone.ContainsKey(state.Id))
                Of(_joints, state.Joint).Add(state);
        }

        Occupy(record.Choices, c => c.Piece, c => c.Part, _chosenFor);
        Occupy(record.Placings, p => p.Piece, p => p.Part, _placedIn);

        foreach (var work in record.Works)
        {
            if (!_struck.ContainsKey(work.Id))
                Of(_works, work.Piece).Add(work);
        }

        foreach (var reading in record.Readings)
            Of(_readings, (reading.Piece, reading.Figure.Local)).Add(reading);
        foreach (var check in record.Checks)
            Of(_checks, check.Figure).Add(check);
    }

    public EngineRecord Record { get; }

    public Part? Part(PartName name) => _parts.GetValueOrDefault(name);

    public Figure? Figure(FigureName name) => _figures.GetValueOrDefault(name);

    public Piece? Piece(PieceTag tag) => _pieces.GetValueOrDefault(tag);

    public Gauge? Gauge(GaugeTag tag) => _gauges.GetValueOrDefault(tag);

    /// <summary>A tool that is kept, by the name that steps have for it.</summary>
    public KeptTool? Tool(string name) => ToolName.TryRead(name, out var tool, out _) ? Record.Tools.FirstOrDefault(t => t.Name == tool) : null;

    public Document? Document(DocumentName name) => _documents.GetValueOrDefault(name);

    public Fact? Fact(FactId id) => _facts.Value.GetValueOrDefault(id);

    /// <summary>The strike-out that is in force on a fact; null where it stands.</summary>
    public StrikeOut? StrikeOutOf(FactId id) => _struck.GetValueOrDefault(id);

    public Lifted? LiftingOf(FactId id) => _lifted.GetValueOrDefault(id);

    /// <summary>The undoing that ended a signature or a joint's state; null where it was not undone.</summary>
    public Undone? UndoingOf(FactId id) => _undone.GetValueOrDefault(id);

    /// <summary>What settled a debt; null where it is still owed.</summary>
    public Settled? SettlementOf(FactId id) => _settled.GetValueOrDefault(id);

    /// <summary>The states of a joint in the order written, those struck out or undone left out.</summary>
    public IReadOnlyList<JointState> StatesOf(JointName joint) => _joints.GetValueOrDefault(joint) ?? [];

    /// <summary>The choice that holds for a part now.</summary>
    public Chosen? ChosenFor(PartName part) => _chosenFor.GetValueOrDefault(part);

    public Placed? PlacedIn(PartName part) => _placedIn.GetValueOrDefault(part);

    /// <summary>The part that a piece is chosen for now.</summary>
    public PartName? PartOf(PieceTag piece) => _chosenFor.Values.FirstOrDefault(c => c.Piece == piece)?.Part;

    /// <summary>Every reading of a dimension of a piece, in the order written, struck out and superseded ones among them.</summary>
    public IReadOnlyList<Reading> ReadingsOf(PieceTag piece, string dimension) => _readings.GetValueOrDefault((piece, dimension)) ?? [];

    public IReadOnlyList<Check> ChecksOf(FigureName fit) => _checks.GetValueOrDefault(fit) ?? [];

    /// <summary>The flow test by which the circuit is calibrated now: that of the last acceptance that stands; null where there is none.</summary>
    public FlowTest? CalibratingTest => Record.Calibrations.Reverse()
        .Where(c => Standing.Of(c, Record).Stands)
        .Select(c => Fact(c.Of))
        .OfType<FlowTest>()
        .FirstOrDefault();

    /// <summary>Work done on a piece, not struck out.</summary>
    public IReadOnlyList<Work> WorksOn(PieceTag piece) => _works.GetValueOrDefault(piece) ?? [];

    /// <summary>The work that came after a reading and altered its dimension; null where the reading still counts.</summary>
    public Work? WorkSince(Reading reading)
    {
        foreach (var work in WorksOn(reading.Piece))
        {
            if (work.Altered.Contains(reading.Figure.Local, StringComparer.Ordinal) && IsAfter(work, reading))
                return work;
        }

        return null;
    }

    /// <summary>The repair size that a dimension of a piece has now, by its last work or as it came; null for standard.</summary>
    public string? RepairSizeOf(PieceTag piece, string dimension)
    {
        Work? last = null;
        foreach (var work in WorksOn(piece))
        {
            if (work.RepairSize is not null && work.Altered.Contains(dimension, StringComparer.Ordinal) && (last is null || IsAfter(work, last)))
                last = work;
        }

        return last?.RepairSize ?? Piece(piece)?.RepairSize;
    }

    /// <summary>Whether <paramref name="later"/> came after <paramref name="earlier"/>: by the clock, then by the order of writing.</summary>
    public static bool IsAfter(Fact later, Fact earlier)
    {
        var byClock = Instant.Subtract(later.At.ToInstant(), earlier.At.ToInstant());
        return byClock != Duration.Zero ? byClock > Duration.Zero : later.Sequence > earlier.Sequence;
    }

    private void Occupy<T>(IReadOnlyList<T> facts, Func<T, PieceTag> piece, Func<T, PartName> part, Dictionary<PartName, T> now)
        where T : Fact
    {
        var whereIs = new Dictionary<PieceTag, PartName>();
        foreach (var fact in facts)
        {
            if (_struck.ContainsKey(fact.Id) || _lifted.ContainsKey(fact.Id))
                continue;
            if (whereIs.TryGetValue(piece(fact), out var before) && now.TryGetValue(before, out var earlier) && piece(earlier) == piece(fact))
                now.Remove(before);
            now[part(fact)] = fact;
            whereIs[piece(fact)] = part(fact);
        }
    }

    /// <summary>A strike-out is in force unless it is itself struck out by one that is.</summary>
    private static Dictionary<FactId, StrikeOut> StruckOut(IReadOnlyList<StrikeOut> strikeOuts)
    {
        var struck = new Dictionary<FactId, StrikeOut>();
        for (var i = strikeOuts.Count - 1; i >= 0; i--)
        {
            if (!struck.ContainsKey(strikeOuts[i].Id))
                struck[strikeOuts[i].Of] = strikeOuts[i];
        }

        return struck;
    }

    private static List<TValue> Of<TKey, TValue>(Dictionary<TKey, List<TValue>> lists, TKey key)
        where TKey : notnull
    {
        if (!lists.TryGetValue(key, out var list))
            lists[key] = list = [];
        return list;
    }
}
