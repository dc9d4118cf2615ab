using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>Pressure that turning gives to the oil in a drilling.</summary>
public static class CentrifugalHead
{
    /// <summary>Pressure gained from one radius to another.</summary>
    /// <param name="speed">[rad/s] of the shaft.</param>
    /// <param name="from">[m] radius where the oil comes from, from the axis of turning, 0 or more.</param>
    /// <param name="to">[m] radius where it goes, 0 or more.</param>
    /// <param name="density">[kg/m³] density.</param>
    /// <returns>[Pa] the gain; negative inwards.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: ρ ω² (r2² − r1²)/2. Assumes: a full column of oil turning with the shaft. Source: hydrostatics of a turning liquid (computed from first principles). Check: CentrifugalHeadTests.</remarks>
    public static double Of(double speed, double from, double to, double density) => Of(speed, from, to, density, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="speed">[rad/s] of the shaft.</param>
    /// <param name="from">[m] radius where the oil comes from, 0 or more.</param>
    /// <param name="to">[m] radius where it goes, 0 or more.</param>
    /// <param name="density">[kg/m³] density.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[Pa] the gain; negative inwards.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: hydrostatics of a turning liquid (computed from first principles). Check: CentrifugalHeadTests.</remarks>
    public static double Of<TTrace>(double speed, double from, double to, double density, TTrace trace)
        where TTrace : struct, ITrace
    {
        trace.Given("ω", "speed of the shaft", Guard.Finite(speed, Units.RadianPerSecond), Units.RadianPerSecond);
        trace.Given("r_1", "radius where the oil comes from", Guard.ZeroOrMore(from, Units.Metre), Units.Metre);
        trace.Given("r_2", "radius where it goes", Guard.ZeroOrMore(to, Units.Metre), Units.Metre);
        trace.Given("ρ", "density", Guard.AboveZero(density, Units.KilogramPerCubicMetre), Units.KilogramPerCubicMetre);
        var (inner, outer) = (trace.Line("v_1", "speed round the axis there", "ω × r_1", speed * from, Units.MetrePerSecond), trace.Line("v_2", "speed round the axis where it goes", "ω × r_2", speed * to, Units.MetrePerSecond));
        return trace.Line("Δp", "pressure gained", "ρ × (v_2^2 − v_1^2) / 2", density * ((outer * outer) - (inner * inner)) / 2, Units.Pascal, "hydrostatics of a turning liquid");
    }
}
