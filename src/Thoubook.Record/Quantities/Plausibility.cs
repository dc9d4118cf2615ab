namespace Thoubook.Record.Quantities;

/// <summary>
/// Tells a slip from an honest reading, given the least and greatest of the limits (a … b, span s = b − a, size m = the larger of |a| and |b|).
/// <list type="bullet">
/// <item><b>No surprise</b>: within s of the limits, or within 2 % of m if that is more. Never asked.</item>
/// <item><b>A slip</b>: beyond that, and moving the point by one, two or three places, changing the sign or taking the number in another usual unit
/// puts it within the limits. Asked.</item>
/// <item><b>Far off</b>: beyond 10 s from the limits, and beyond m/4. Asked even if no slip explains it.</item>
/// <item>Anything between is a worn, a wrong or a tight part: taken.</item>
/// </list>
/// The question offers the value as typed and the slips that lead within the limits; if none does, those that would be no surprise.
/// </summary>
public sealed record Plausibility(double Least, double Greatest)
{
    private double Span => Greatest - Least;

    private double Size => Math.Max(Math.Abs(Least), Math.Abs(Greatest));

    public bool IsNoSurprise(double si) => IsWithin(si, Math.Max(Span, 0.02 * Size));

    public bool IsFarOff(double si) => !IsWithin(si, Math.Max(10 * Span, 0.25 * Size));

    /// <summary>Whether a slip that leads here explains a surprising reading.</summary>
    public bool Explains(double si) => IsWithin(si, 1e-9 * Size);

    private bool IsWithin(double si, double margin) => si >= Least - margin && si <= Greatest + margin;
}
