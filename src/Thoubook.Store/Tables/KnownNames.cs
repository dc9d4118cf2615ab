using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tables;

/// <summary>The names behind the numbers by which rows refer to one another, as far as one reading of the database has met them.</summary>
internal sealed class KnownNames
{
    private readonly Dictionary<string, TradeUnit> _units = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PlaceName> _places = new(StringComparer.Ordinal);

    public Dictionary<long, DocumentName> Documents { get; } = [];

    public Dictionary<long, PartName> Parts { get; } = [];

    public Dictionary<long, FigureName> Figures { get; } = [];

    /// <summary>The number of the engine's circuit; null where it has none.</summary>
    public long? Circuit { get; set; }

    public Dictionary<long, SpaceName> Spaces { get; } = [];

    public Dictionary<long, JointName> Joints { get; } = [];

    public Dictionary<long, StepName> Steps { get; } = [];

    public Dictionary<long, TogetherName> Together { get; } = [];

    public Dictionary<long, ToolName> Tools { get; } = [];

    public Dictionary<long, PermissionName> PermissionItems { get; } = [];

    public Dictionary<long, PieceTag> Pieces { get; } = [];

    public Dictionary<long, GaugeTag> Gauges { get; } = [];

    /// <summary>The pieces that came with the engine or that its facts name.</summary>
    public HashSet<PieceTag> UsedPieces { get; } = [];

    public PieceTag Use(PieceTag piece)
    {
        UsedPieces.Add(piece);
        return piece;
    }

    public TradeUnit Unit(string code)
    {
        if (!_units.TryGetValue(code, out var unit))
        {
            unit = TradeUnit.FromCode(code) ?? throw new InvalidDataException($"The workshop holds the unit \"{code}\", which is not known.");
            _units.Add(code, unit);
        }

        return unit;
    }

    public PlaceName Place(string text)
    {
        if (!_places.TryGetValue(text, out var place))
        {
            place = new PlaceName(text);
            _places.Add(text, place);
        }

        return place;
    }
}
