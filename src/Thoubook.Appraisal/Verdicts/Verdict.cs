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

public static class VerdictGravity
{
    /// <summary>[-] 0 is the gravest; a figure without a verdict comes last.</summary>
    public static int Gravity(this Verdict? verdict) => verdict switch
    {
        Verdict.BeyondWornLimits => 0,
        Verdict.TooTight => 1,
        Verdict.OffSize => 2,
        Verdict.TooCloseToCall => 3,
        Verdict.NotMeasured => 4,
        Verdict.WithinWornLimits => 5,
        Verdict.AsNew => 6,
        _ => 7,
    };
}
