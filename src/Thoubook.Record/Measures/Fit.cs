namespace Thoubook.Record.Measures;

/// <summary>A relation between dimensions of mating parts.</summary>
public sealed record Fit(FigureName Name) : Figure(Name)
{
    public FitKind FitKind { get; init; }

    /// <summary>The gap as a sum of dimensions; empty where the fit can only be measured as such (feeler, dial, plastic strip).</summary>
    public IReadOnlyList<GapTerm> Gap { get; init; } = [];
}

/// <summary>One term of a gap: a coefficient times a dimension.</summary>
public readonly record struct GapTerm(double Coefficient, FigureName Of);

public enum FitKind
{
    Clearance,
    Interference,

    [Word("end float")]
    EndFloat,
    Backlash,
    Gap,

    /// <summary>The opened joint u of a slackened pair of shells.</summary>
    Nip,
    Protrusion,
}
