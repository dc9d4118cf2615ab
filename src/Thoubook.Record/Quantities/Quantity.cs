namespace Thoubook.Record.Quantities;

/// <summary>A quantity as a person wrote it, with what was understood: the SI value beside the text as typed.</summary>
/// <param name="Si">The value in the SI unit of <paramref name="Kind"/>; always finite.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Unit">The trade unit it was written in (or that the column head gave).</param>
/// <param name="Text">As typed, unchanged.</param>
public sealed record Quantity(double Si, QuantityKind Kind, TradeUnit Unit, string Text);
