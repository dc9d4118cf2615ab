using Thoubook.Record.Closing;

namespace Thoubook.Web.Drawings.Closing;

/// <summary>The states through which a joint goes.</summary>
public static class JointStages
{
    /// <summary>Those that it asks for: what is not tightened or locked skips that.</summary>
    public static IReadOnlyList<JointStage> Of(Joint joint) =>
    [
        JointStage.Placed,
        JointStage.PulledUp,
        .. joint.Tightening is null ? Array.Empty<JointStage>() : [JointStage.Tightened],
        .. joint.Locking is null ? Array.Empty<JointStage>() : [JointStage.Locked],
        .. joint.Inspected ? [JointStage.Inspected] : Array.Empty<JointStage>(),
    ];
}
