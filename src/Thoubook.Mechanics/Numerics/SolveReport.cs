namespace Thoubook.Mechanics.Numerics;

/// <summary>How an iteration stopped.</summary>
public enum SolveStatus
{
    /// <summary>Within the tolerance.</summary>
    Converged,

    /// <summary>The two ends do not enclose an answer.</summary>
    NotBracketed,

    /// <summary>The allowed number of steps was used up.</summary>
    OutOfSteps,
}

/// <summary>How an iterative answer came about; travels with it.</summary>
/// <param name="Status">How it stopped.</param>
/// <param name="Iterations">[-] steps taken.</param>
/// <param name="Residual">[any] what is left unbalanced.</param>
/// <param name="Tolerance">[any] what was asked for, in the unknown.</param>
/// <param name="Hint">What to do where it did not converge; else empty.</param>
public readonly record struct SolveReport(SolveStatus Status, int Iterations, double Residual, double Tolerance, string Hint)
{
    /// <summary>Whether the answer can be used.</summary>
    public bool Converged => Status == SolveStatus.Converged;
}
