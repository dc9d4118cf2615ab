using Thoubook.Record;

namespace Thoubook.Web.Drawings.Closing;

/// <summary>How a step stands: each with a shape of its own, in the order in which the work goes.</summary>
public enum StepState
{
    Signed,

    [Word("half done")]
    HalfDone,

    /// <summary>It was signed, and something that it relied on has changed since.</summary>
    [Word("no longer stands")]
    Fallen,

    [Word("can do now")]
    CanDoNow,

    /// <summary>No other step is before it, and yet something is wanting.</summary>
    Stopped,

    /// <summary>Other steps come first.</summary>
    Waits,

    /// <summary>Nothing of it is fitted to this engine.</summary>
    [Word("not called for")]
    NotCalledFor,
}

/// <summary>How the cover of a space stands.</summary>
public enum CoverState
{
    [Word("cover on")]
    On,

    [Word("cover half on")]
    HalfOn,

    [Word("cover off")]
    Off,

    /// <summary>No step closes it.</summary>
    [Word("has no cover")]
    None,
}
