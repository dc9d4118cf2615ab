using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>A round pipe or drilling, or several alike side by side.</summary>
/// <param name="Bore">[m] inside diameter.</param>
/// <param name="Length">[m] length.</param>
/// <param name="Roughness">[m] roughness of the wall, at most 0.05 of the bore for good figures.</param>
/// <param name="Losses">[-] bends, entry and exit, in velocity heads.</param>
/// <param name="Number">[-] pipes side by side, 1 or more.</param>
public readonly record struct RoundPipe(double Bore, double Length, double Roughness, double Losses, double Number);

/// <summary>What a flow costs in a pipe.</summary>
public static class PipeLoss
{
    /// <summary>Pressure that a flow costs.</summary>
    /// <param name="pipe">The pipe.</param>
    /// <param name="flow">[m³/s] through all pipes together, above 0.</param>
    /// <param name="viscosity">[Pa s] dynamic viscosity, above 0.</param>
    /// <param name="density">[kg/m³] density, above 0.</param>
    /// <returns>[Pa] the loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Model: Δp = (f L/d + K) ρ v²/2. Assumes: flow developed over the length, no heating of the oil by its friction. Source: Darcy and Weisbach; friction of Churchill, 1977 (published). Check: PipeLossTests.</remarks>
    public static double Of(RoundPipe pipe, double flow, double viscosity, double density) => Of(pipe, flow, viscosity, density, default(Silent));

    /// <summary>The same for any trace.</summary>
    /// <typeparam name="TTrace">Silent, or written.</typeparam>
    /// <param name="pipe">The pipe.</param>
    /// <param name="flow">[m³/s] through all pipes together, above 0.</param>
    /// <param name="viscosity">[Pa s] dynamic viscosity, above 0.</param>
    /// <param name="density">[kg/m³] density, above 0.</param>
    /// <param name="trace">What hears the lines.</param>
    /// <returns>[Pa] the loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range.</exception>
    /// <remarks>Source: Darcy and Weisbach; Churchill, 1977 (published). Check: PipeLossTests.</remarks>
    public static double Of<TTrace>(RoundPipe pipe, double flow, double viscosity, double density, TTrace trace)
        where TTrace : struct, ITrace
    {
        var bore = Guard.AboveZero(pipe.Bore, Units.Metre);
        Guard.AboveZero(pipe.Length, Units.Metre);
        Guard.Within(pipe.Roughness, 0, 0.2 * bore, Units.Metre);
        Guard.ZeroOrMore(pipe.Losses);
        Guard.Within(pipe.Number, 1, 1e6);
        trace.Given("d", "bore", bore, Units.Metre);
        trace.Given("L", "length", pipe.Length, Units.Metre);
        trace.Given("e", "roughness", pipe.Roughness, Units.Metre);
        trace.Given("K", "bends, entry and exit, in velocity heads", pipe.Losses, Units.None);
        trace.Given("N", "pipes side by side", pipe.Number, Units.None);
        trace.Given("Q", "flow through all of them", Guard.AboveZero(flow, Units.CubicMetrePerSecond), Units.CubicMetrePerSecond);
        trace.Given("μ", "dynamic viscosity", Guard.AboveZero(viscosity, Units.PascalSecond), Units.PascalSecond);
        trace.Given("ρ", "density", Guard.AboveZero(density, Units.KilogramPerCubicMetre), Units.KilogramPerCubicMetre);
        var v = trace.Line("v", "mean velocity", "4 × Q / (π × d^2 × N)", 4 * flow / (Math.PI * bore * bore * pipe.Number), Units.MetrePerSecond);
        var re = trace.Line("Re", "Reynolds number", "ρ × v × d / μ", density * v * bore / viscosity, Units.None);
        var f = Friction.Told(re, pipe.Roughness / bore, trace);
        var head = trace.Line("h", "velocity head", "ρ × v^2 / 2", density * v * v / 2, Units.Pascal);
        return trace.Line("Δp", "loss of pressure", "(f × L / d + K) × h", ((f * pipe.Length / bore) + pipe.Losses) * head, Units.Pascal, "Darcy and Weisbach");
    }
}
