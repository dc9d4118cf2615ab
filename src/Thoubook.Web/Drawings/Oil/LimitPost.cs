namespace Thoubook.Web.Drawings.Oil;

/// <summary>A state of running on the map. Pressures in Pa, of the main gauge.</summary>
/// <param name="Name">As it stands under the edge.</param>
/// <param name="Speed">[rad/s]</param>
/// <param name="Value">[Pa]</param>
/// <param name="Band">[Pa] half width.</param>
/// <param name="Least">[Pa] asked for; null: nothing.</param>
/// <param name="Greatest">[Pa]</param>
public sealed record LimitPost(string Name, double Speed, double Value, double Band, double? Least, double? Greatest);
