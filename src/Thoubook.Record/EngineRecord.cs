using Thoubook.Record.Circuits;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Record;

/// <summary>
/// Everything that is known of one engine at one moment: its definitions and its facts. Immutable; <c>with</c> gives a supposed state
/// that nothing has written. Facts stand in the order in which they were written.
/// </summary>
public sealed record EngineRecord(Engine Engine)
{
    private RecordIndex? _index;

    /// <summary>The workshop's sequence number up to which this record is complete.</summary>
    public long Sequence { get; init; }

    public IReadOnlyList<Document> Documents { get; init; } = [];

    public IReadOnlyList<Part> Parts { get; init; } = [];

    public IReadOnlyList<Dimension> Dimensions { get; init; } = [];

    public IReadOnlyList<Fit> Fits { get; init; } = [];

    /// <summary>The oil system; null where none is described yet.</summary>
    public OilCircuit? Circuit { get; init; }

    public IReadOnlyList<Space> Spaces { get; init; } = [];

    public IReadOnlyList<Joint> Joints { get; init; } = [];

    public IReadOnlyList<Step> Steps { get; init; } = [];

    /// <summary>Parts that go together or not at all.</summary>
    public IReadOnlyList<Together> Together { get; init; } = [];

    /// <summary>Tools made or got for this engine, and where they are kept.</summary>
    public IReadOnlyList<KeptTool> Tools { get; init; } = [];

    /// <summary>What permission to run asks for beside what the record shows of itself.</summary>
    public IReadOnlyList<PermissionItem> PermissionItems { get; init; } = [];

    public IReadOnlyList<Gauge> Gauges { get; init; } = [];

    public IReadOnlyList<Piece> Pieces { get; init; } = [];

    public IReadOnlyList<Reading> Readings { get; init; } = [];

    public IReadOnlyList<Chosen> Choices { get; init; } = [];

    public IReadOnlyList<Placed> Placings { get; init; } = [];

    public IReadOnlyList<Lifted> Liftings { get; init; } = [];

    public IReadOnlyList<Work> Works { get; init; } = [];

    public IReadOnlyList<Finding> Findings { get; init; } = [];

    public IReadOnlyList<Check> Checks { get; init; } = [];

    public IReadOnlyList<Decision> Decisions { get; init; } = [];

    public IReadOnlyList<FlowTest> FlowTests { get; init; } = [];

    public IReadOnlyList<Calibration> Calibrations { get; init; } = [];

    public IReadOnlyList<JointState> JointStates { get; init; } = [];

    public IReadOnlyList<Accepted> Acceptances { get; init; } = [];

    public IReadOnlyList<Signature> Signatures { get; init; } = [];

    public IReadOnlyList<Departure> Departures { get; init; } = [];

    public IReadOnlyList<Owed> Debts { get; init; } = [];

    public IReadOnlyList<Settled> Settlements { get; init; } = [];

    public IReadOnlyList<Counted> Counts { get; init; } = [];

    public IReadOnlyList<Undone> Undoings { get; init; } = [];

    public IReadOnlyList<AsFound> AsFound { get; init; } = [];

    public IReadOnlyList<PermissionLine> Permissions { get; init; } = [];

    public IReadOnlyList<StrikeOut> StrikeOuts { get; init; } = [];

    /// <summary>[SI] Values supposed for dimensions or fits in a trial; they take the place of what was measured.</summary>
    public IReadOnlyDictionary<FigureName, double> Supposed { get; init; } = new Dictionary<FigureName, double>();

    /// <summary>All facts of every kind, in no stated order.</summary>
    public IEnumerable<Fact> Facts =>
        [.. Readings, .. Choices, .. Placings, .. Liftings, .. Works, .. Findings, .. Checks, .. Decisions, .. FlowTests, .. Calibrations,
        .. JointStates, .. Acceptances, .. Signatures, .. Departures, .. Debts, .. Settlements, .. Counts, .. Undoings, .. AsFound, .. Permissions, .. StrikeOuts];

    /// <summary>Look-ups over this very record, made when first asked for.</summary>
    public RecordIndex Index => _index is { } index && ReferenceEquals(index.Record, this) ? index : _index = new RecordIndex(this);
}
