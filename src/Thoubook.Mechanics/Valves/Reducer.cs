namespace Thoubook.Mechanics.Valves;

/// <summary>A reducing valve: it lets through as much as holds a lower pressure behind it, and shuts as that rises.</summary>
/// <param name="Seat">[m] bore of the way when wide open.</param>
/// <param name="Setting">[Pa] behind it, at which it is just shut.</param>
/// <param name="Spring">[N/m] rate.</param>
/// <param name="Piston">[m] diameter on which the pressure behind it works.</param>
/// <param name="Lift">[m] greatest opening.</param>
/// <param name="Discharge">[-] discharge coefficient.</param>
public readonly record struct Reducer(double Seat, double Setting, double Spring, double Piston, double Lift, double Discharge)
{
    /// <summary>How far it stands open.</summary>
    /// <param name="behind">[Pa] behind it, above its spring chamber.</param>
    /// <returns>[m] opening.</returns>
    /// <remarks>Model: (setting − p) A/k between shut and the stop. Source: force balance (common practice). Check: ValveStagesTests.</remarks>
    public double Opening(double behind) => Math.Clamp((Setting - behind) * Math.PI * Piston * Piston / 4 / Spring, 0, Lift);

    /// <summary>What it passes.</summary>
    /// <param name="before">[Pa] before it.</param>
    /// <param name="behind">[Pa] behind it.</param>
    /// <param name="density">[kg/m³] above 0.</param>
    /// <returns>[m³/s] flow, back where the pressure behind is higher.</returns>
    /// <remarks>Model: Cd a √(2Δp/ρ), a = π d x, not above the bore. Source: orifice equation, A. Esposito, Fluid Power with Applications, example 8.4 (published). Check: ValveStagesTests.</remarks>
    public double Flow(double before, double behind, double density)
    {
        var area = Math.PI * Seat * Math.Min(Opening(behind), Seat / 4);
        return Math.CopySign(Discharge * area * Math.Sqrt(2 * Math.Abs(before - behind) / density), before - behind);
    }
}
