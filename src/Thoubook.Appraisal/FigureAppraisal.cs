using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Pieces;

namespace Thoubook.Appraisal;

/// <summary>What is known of a figure of the engine and what is said of it.</summary>
public abstract class FigureAppraisal
{
    public required Figure Figure { get; init; }

    /// <summary>The value that counts; null where not measured.</summary>
    public required Estimate? Estimate { get; init; }

    /// <summary>Null where there are no limits to judge by.</summary>
    public required Verdict? Verdict { get; init; }

    /// <summary>Null where not measured or where there are no limits.</summary>
    public required Probabilities? Probability { get; init; }

    /// <summary>The limits as they bind here: repair size, allowance and nil taken in.</summary>
    public required BindingLimits Limits { get; init; }

    /// <summary>Why the verdict is what it is, in a sentence.</summary>
    public required string Reason { get; init; }

    /// <summary>What would settle a verdict that is too close to call. Worked out when it is asked for.</summary>
    public Advice? Advice => field ??= WorkOutAdvice?.Invoke();

    internal Func<Advice?>? WorkOutAdvice { get; init; }

    /// <summary>The rule of the edition that the limits come from.</summary>
    public CombiningRule Rule { get; init; }

    /// <summary>What the rule makes of the verdicts of parts and pair together.</summary>
    public Verdict? Combined { get; internal set; }

    /// <summary>Which verdict decided the combined one: the name of a figure.</summary>
    public FigureName Governing { get; internal set; }

    /// <summary>Other sets of limits that apply to this engine and differ from the one used.</summary>
    public IReadOnlyList<LimitSet> Conflicting { get; init; } = [];

    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    public Side Side => Figure.Side;
}

public sealed class DimensionAppraisal : FigureAppraisal
{
    public Dimension Dimension => (Dimension)Figure;

    /// <summary>The piece chosen for the part; null where none is.</summary>
    public Piece? Piece { get; init; }

    /// <summary>The repair size that the limits were moved by.</summary>
    public RepairSize? RepairSize { get; init; }

    public required DimensionEstimate Details { get; init; }
}

public sealed class FitAppraisal : FigureAppraisal
{
    public Fit Fit => (Fit)Figure;

    /// <summary>At 20 °C first, then each temperature state of the engine.</summary>
    public required IReadOnlyList<FitState> States { get; init; }

    /// <summary>The gap where every mating place is at its closest, and at its widest. Null where not measured.</summary>
    public Estimate? Least { get; init; }

    public Estimate? Greatest { get; init; }

    /// <summary>Checks taken on parts put together, each with its standing.</summary>
    public IReadOnlyList<(Check Check, Standing Standing)> Checks { get; init; } = [];

    /// <summary>Where the value comes from.</summary>
    public FitBasis Basis { get; init; }

    /// <summary>The terms of the gap whose dimensions are in the record.</summary>
    public required IReadOnlyList<(GapTerm Term, DimensionAppraisal Of)> Terms { get; init; }

    /// <summary>Terms of the gap that are not measured.</summary>
    public IReadOnlyList<FigureName> Unmeasured { get; init; } = [];
}

public enum FitBasis
{
    [Word("not measured")]
    Nothing,

    /// <summary>From the dimensions of its parts.</summary>
    Dimensions,

    /// <summary>Measured as such on parts put together.</summary>
    Check,

    Supposed,
}

/// <summary>A fit in one temperature state.</summary>
/// <param name="Name"><c>20 °C</c>, <c>hot</c>, <c>coldest start</c> …</param>
/// <param name="Estimate">As measured; null where a term is not.</param>
/// <param name="Expected">With the drawing's limits in the place of what is not measured; null where there are none.</param>
/// <param name="WorstCase">[SI] every term at its worst together.</param>
/// <param name="RootSumSquareHalfWidth">[SI] about the middle of the worst case.</param>
/// <param name="RiskOfNil">Probability that the gap is nil or less; null where not measured.</param>
public sealed record FitState(string Name, Estimate? Estimate, Estimate? Expected, (double Least, double Greatest)? WorstCase, double? RootSumSquareHalfWidth, double? RiskOfNil);

/// <summary>The probabilities that everything measured conforms, all places together.</summary>
/// <param name="New">Inside the new limits.</param>
/// <param name="Worn">Inside the limits worn.</param>
/// <param name="PastWornEnd">Past the end to which wear leads.</param>
/// <param name="PastOtherEnd">Past the other end.</param>
public sealed record Probabilities(double New, double Worn, double PastWornEnd, double PastOtherEnd);

/// <summary>[SI] Limits as they bind; null where none.</summary>
public sealed record BindingLimits(double? NewLeast, double? NewGreatest, double? WornLeast, double? WornGreatest, WearDirection Wear)
{
    public static BindingLimits None { get; } = new(null, null, null, null, WearDirection.None);

    public bool IsEmpty => NewLeast is null && NewGreatest is null && WornLeast is null && WornGreatest is null;
}

/// <summary>What would settle a verdict that is too close to call.</summary>
/// <param name="ReadAgain">The dimension (or fit) to read again.</param>
/// <param name="Place">Where; null where any place would do.</param>
/// <param name="MoreReadings">How many more with the same gauge; null where no number would do.</param>
/// <param name="GaugeUncertainty">[SI] Or once with a gauge whose standard uncertainty is at most this.</param>
public sealed record Advice(FigureName ReadAgain, PlaceName? Place, int? MoreReadings, double? GaugeUncertainty, string Text);
