namespace Thoubook.Record.Closing;

/// <summary>A line of the permission to run that the record does not show of itself: an extinguisher within reach, somebody else present.</summary>
public sealed record PermissionItem(PermissionName Name)
{
    public int Revision { get; init; }

    /// <summary>In words; null: its name says enough.</summary>
    public string? What { get; init; }

    /// <summary>The parts, joints, steps and hold points on which it relies: where one is disturbed, the line lapses.</summary>
    public IReadOnlyList<WorkItem> On { get; init; } = [];

    /// <summary>The purposes for which it is asked; empty: for all.</summary>
    public IReadOnlyList<Purpose> Purposes { get; init; } = [];

    public string? Note { get; init; }

    public string Said => What ?? Name.Text;
}
