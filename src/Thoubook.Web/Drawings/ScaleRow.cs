namespace Thoubook.Web.Drawings;

/// <summary>One value on a scale.</summary>
/// <param name="Label">Its place.</param>
/// <param name="Value">[SI] where it stands.</param>
/// <param name="Band">[SI] half the width that holds it 95 times in 100.</param>
public sealed record ScaleRow(string Label, double Value, double Band);
