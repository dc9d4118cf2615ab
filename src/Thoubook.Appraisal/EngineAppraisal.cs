using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;

namespace Thoubook.Appraisal;

/// <summary>What a whole engine amounts to, worked out from one record.</summary>
public sealed class EngineAppraisal
{
    public required EngineRecord Record { get; init; }

    /// <summary>In the order of their names.</summary>
    public required IReadOnlyList<DimensionAppraisal> Dimensions { get; init; }

    public required IReadOnlyList<FitAppraisal> Fits { get; init; }

    /// <summary>What stands in the way, worst first.</summary>
    public required IReadOnlyList<Matter> InTheWay { get; init; }

    /// <summary>What would stand in the way had it not been accepted on judgement.</summary>
    public required IReadOnlyList<Matter> Accepted { get; init; }

    private Dictionary<FigureName, FigureAppraisal>? _byName;

    public FigureAppraisal? this[FigureName name] =>
        (_byName ??= Dimensions.Concat<FigureAppraisal>(Fits).ToDictionary(f => f.Figure.Name)).GetValueOrDefault(name);

    public static int Count(IEnumerable<FigureAppraisal> figures, Verdict verdict) => figures.Count(f => f.Verdict == verdict);
}

/// <summary>One thing that stands in the way.</summary>
public sealed record Matter(MatterKind Kind, PartName Part, string Text)
{
    /// <summary>The figure it is about, if it is about one.</summary>
    public FigureName? Figure { get; init; }

    public PieceTag? Piece { get; init; }

    public Verdict? Verdict { get; init; }

    /// <summary>The decision that cleared it.</summary>
    public Decision? Decision { get; init; }
}

/// <summary>In the order of gravity.</summary>
public enum MatterKind
{
    [Word("not sound")]
    NotSound,

    [Word("beyond limits")]
    BeyondLimits,

    [Word("may bind")]
    MayBind,

    [Word("no longer stands")]
    NoLongerStands,

    [Word("too close to call")]
    TooCloseToCall,

    [Word("wrong modification state")]
    WrongModificationState,

    [Word("not measured")]
    NotMeasured,
}
