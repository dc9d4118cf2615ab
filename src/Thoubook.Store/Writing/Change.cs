using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Store;

/// <summary>What is to be written of one engine: all of it in one transaction, or nothing.</summary>
public sealed record Change(EngineName Engine, string By)
{
    /// <summary>What to do where a definition of that name is there already.</summary>
    public WhenThere WhenThere { get; init; }

    /// <summary>The engine itself, where it is to be made or edited.</summary>
    public Engine? Definition { get; init; }

    public IReadOnlyList<Document> Documents { get; init; } = [];

    public IReadOnlyList<Part> Parts { get; init; } = [];

    public IReadOnlyList<Figure> Figures { get; init; } = [];

    /// <summary>The whole circuit, where it is to be made or edited.</summary>
    public OilCircuit? Circuit { get; init; }

    public IReadOnlyList<Space> Spaces { get; init; } = [];

    public IReadOnlyList<Joint> Joints { get; init; } = [];

    public IReadOnlyList<Step> Steps { get; init; } = [];

    public IReadOnlyList<Together> Together { get; init; } = [];

    public IReadOnlyList<KeptTool> Tools { get; init; } = [];

    public IReadOnlyList<PermissionItem> PermissionItems { get; init; } = [];

    public IReadOnlyList<Gauge> Gauges { get; init; } = [];

    public IReadOnlyList<Piece> Pieces { get; init; } = [];

    public IReadOnlyList<Fact> Facts { get; init; } = [];

    /// <summary>Where the times of the facts, and what conclusions rely on, come from.</summary>
    public Circumstances Circumstances { get; init; }

    /// <summary>Everything that a record says.</summary>
    public static Change Whole(EngineRecord record, string by) => new(record.Engine.Name, by)
    {
        Definition = record.Engine,
        Documents = record.Documents,
        Parts = record.Parts,
        Figures = [.. record.Dimensions, .. record.Fits],
        Circuit = record.Circuit,
        Spaces = record.Spaces,
        Joints = record.Joints,
        Steps = record.Steps,
        Together = record.Together,
        Tools = record.Tools,
        PermissionItems = record.PermissionItems,
        Gauges = record.Gauges,
        Pieces = record.Pieces,
        Facts = InOrder(record),
    };

    internal bool Defines => Definition is not null || Circuit is not null || Documents.Count + Parts.Count + Figures.Count + Gauges.Count + Pieces.Count
        + Spaces.Count + Joints.Count + Steps.Count + Together.Count + Tools.Count + PermissionItems.Count > 0;

    // As they were written, where they were; else readings before what was done afterwards, each kind in its own order.
    private static IReadOnlyList<Fact> InOrder(EngineRecord record)
    {
        List<Fact> facts =
        [
            .. record.Choices, .. record.Placings, .. record.Readings, .. record.Works, .. record.Findings, .. record.Liftings,
            .. record.Checks, .. record.Decisions, .. record.FlowTests, .. record.Calibrations,
            .. record.JointStates, .. record.Acceptances, .. record.Signatures, .. record.Departures, .. record.Debts, .. record.Settlements, .. record.Counts, .. record.Undoings, .. record.AsFound, .. record.Permissions, .. record.StrikeOuts,
        ];
        return facts.TrueForAll(f => f.Sequence > 0) ? [.. facts.OrderBy(f => f.Sequence)] : facts;
    }
}

public enum WhenThere
{
    /// <summary>What is said takes the place of what was there. Where it carries a revision, that must still be the one in force.</summary>
    Replace,

    /// <summary>Revision 0 says that it is new, so it must not be there yet; any other must be the one in force.</summary>
    MatchRevision,
}

/// <summary>Whether two sendings of one fact may differ in when it was and in what it relied on.</summary>
public enum Circumstances
{
    /// <summary>They were stated with it: a fact that differs in them is another.</summary>
    Stated,

    /// <summary>They were filled in on arrival: the ones stored first hold.</summary>
    FilledIn,
}

/// <summary>What a change came to.</summary>
/// <param name="Sequence">The workshop's sequence number afterwards.</param>
/// <param name="Facts">As stored, in the order given; one that was there before is the one stored then.</param>
public sealed record Changed(long Sequence, IReadOnlyList<Fact> Facts)
{
    /// <summary>How many definitions were not there before.</summary>
    public int Added { get; init; }

    public int Edited { get; init; }

    public int Unchanged { get; init; }

    public int FactsAdded { get; init; }

    public int FactsThereBefore => Facts.Count - FactsAdded;

    public bool IsNothing => Added + Edited + FactsAdded == 0;
}
