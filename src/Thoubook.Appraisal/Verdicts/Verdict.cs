using Thoubook.Record;

namespace Thoubook.Appraisal.Verdicts;

/// <summary>What is said of a figure against its limits.</summary>
public enum Verdict
{
    [Word("as new")]
    AsNew,

    [Word("within worn limits")]
    WithinWornLimits,

    [Word("beyond worn limits")]
    BeyondWornLimits,

    [Word("too tight")]
    TooTight,

    /// <summary>Out of its new limits where wear cannot explain it.</summary>
    [Word("off size")]
    OffSize,

    [Word("too close to call")]
    TooCloseToCall,

    [Word("not measured")]
    NotMeasured,
}
