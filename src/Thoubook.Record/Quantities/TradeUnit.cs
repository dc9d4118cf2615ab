namespace Thoubook.Record.Quantities;

/// <summary>A unit as the trade writes it. SI value = number × <see cref="Factor"/> + <see cref="Offset"/>.</summary>
public sealed record TradeUnit(string Symbol, QuantityKind Kind, double Factor, double Offset = 0);
