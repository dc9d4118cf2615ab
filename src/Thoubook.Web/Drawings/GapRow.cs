namespace Thoubook.Web.Drawings;

/// <summary>The gap of a fit in one temperature state.</summary>
/// <param name="Name"><c>20 °C</c>, <c>hot</c> …</param>
/// <param name="Value">[SI] null: nothing is known.</param>
/// <param name="Band">[SI] half the width that holds it 95 times in 100.</param>
/// <param name="FromDrawing">Some of it comes from the drawing, not from a reading.</param>
public sealed record GapRow(string Name, double? Value, double Band, bool FromDrawing);
