using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Oil;

/// <summary>A supposed change to the oil system. Nothing is written.</summary>
/// <param name="Name">What it is, in words.</param>
public sealed record OilTrial(string Name)
{
    /// <summary>[SI] Exact values that take the place of what was measured, by dimension or fit.</summary>
    public IReadOnlyDictionary<FigureName, double> Set { get; init; } = new Dictionary<FigureName, double>();

    /// <summary>[SI] Changes by an amount: what was measured stays, with its doubt.</summary>
    public IReadOnlyDictionary<FigureName, double> ChangeBy { get; init; } = new Dictionary<FigureName, double>();

    /// <summary>Another oil.</summary>
    public OilChoice? Oil { get; init; }

    public IReadOnlyList<ElementName> Blanked { get; init; } = [];

    /// <summary>Blanked ones fitted again.</summary>
    public IReadOnlyList<ElementName> Opened { get; init; } = [];

    /// <summary>Sizes of elements themselves: the cracking pressure of a valve that is shimmed anew.</summary>
    public IReadOnlyList<TrialSize> Sizes { get; init; } = [];
}

/// <param name="Element">Which element.</param>
/// <param name="Key">Which of its sizes.</param>
/// <param name="Value">[SI]</param>
public sealed record TrialSize(ElementName Element, string Key, double Value)
{
    /// <summary>In which it was written; null: as its kind is usually told.</summary>
    public TradeUnit? Unit { get; init; }
}
