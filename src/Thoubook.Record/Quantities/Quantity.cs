namespace Thoubook.Record.Quantities;

/// <summary>A quantity as a person wrote it, with what was understood: the SI value beside the text as typed.</summary>
/// <param name="Si">The value in the SI unit of <paramref name="Kind"/>; always finite.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Unit">The trade unit it was written in (or that the column head gave).</param>
/// <param name="Text">As typed, unchanged.</param>
public sealed record Quantity(double Si, QuantityKind Kind, TradeUnit Unit, string Text)
{
    /// <summary>Whether its sign says tight or loose.</summary>
    public FitSigns Signs { get; init; } = FitSigns.NotHere;

    /// <summary>The SI unit of <see cref="Si"/>: <c>m</c>; empty for a number.</summary>
    public string SiUnit => TradeUnit.Default(Kind).Symbol;

    /// <summary>What was understood, for reading back: <c>0.0025 in (2.5 thou, 0.0635 mm)</c>.</summary>
    public string Understood => QuantityText.InTradeUnits(Si, Unit)
        + (Kind == QuantityKind.TemperatureDifference ? ", a difference" : "")
        + (Signs == FitSigns.NotHere || Si == 0 ? "" : Si < 0 ? ", tight" : ", loose");
}
