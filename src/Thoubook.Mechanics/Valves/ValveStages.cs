using Thoubook.Mechanics.Numerics;

namespace Thoubook.Mechanics.Valves;

/// <summary>What two stages of a valve body have to serve.</summary>
/// <param name="Delivery">[m³/s] of the pump, 0 or more.</param>
/// <param name="MainTaken">[any] what the main stage's bearings take, m³/s for each Pa; 0 or more.</param>
/// <param name="LowTaken">[any] what the low stage's feeds take, m³/s for each Pa; 0 or more.</param>
/// <param name="Viscosity">[Pa s] above 0; counts for leaking seats.</param>
/// <param name="Density">[kg/m³] above 0.</param>
public readonly record struct StageDemand(double Delivery, double MainTaken, double LowTaken, double Viscosity, double Density);

/// <summary>Where the two stages settle.</summary>
/// <param name="Main">[Pa] main pressure.</param>
/// <param name="Low">[Pa] low pressure.</param>
/// <param name="ToLow">[m³/s] what reaches the low stage.</param>
/// <param name="Spilled">[m³/s] what goes back to the sump through relief valves.</param>
public readonly record struct StagePressures(double Main, double Low, double ToLow, double Spilled);

/// <summary>Valve bodies of two stages: the pressure of each at a given delivery.</summary>
public static class ValveStages
{
    /// <summary>The low stage lives on what the main relief valve spills, and has its own relief valve to the sump. With the main valve shut the low stage starves.</summary>
    /// <param name="demand">What is to be served.</param>
    /// <param name="main">The main valve; the low stage's pressure stands behind it and adds to its setting.</param>
    /// <param name="low">The low stage's valve.</param>
    /// <returns>Pressures and flows.</returns>
    /// <remarks>Model: delivery = main taken + spill; spill = low taken + low spill. Source: continuity with SpringValve (computed from it). Check: ValveStagesTests.</remarks>
    public static StagePressures Cascade(StageDemand demand, SpringValve main, SpringValve low) => Settle(
        demand,
        (before, behind) => main.At(before - behind, before - behind, demand.Viscosity, demand.Density).Flow,
        _ => 0,
        pressure => low.At(pressure, pressure, demand.Viscosity, demand.Density).Flow);

    /// <summary>A reducing valve feeds the low stage from the main one; the main relief valve spills to the sump.</summary>
    /// <param name="demand">What is to be served.</param>
    /// <param name="main">The main valve.</param>
    /// <param name="reducer">The reducing valve.</param>
    /// <returns>Pressures and flows.</returns>
    /// <remarks>Model: delivery = main taken + main spill + reduced; reduced = low taken. Source: continuity with SpringValve and Reducer (computed from them). Check: ValveStagesTests.</remarks>
    public static StagePressures Reducing(StageDemand demand, SpringValve main, Reducer reducer) => Settle(
        demand,
        (before, behind) => reducer.Flow(before, behind, demand.Density),
        pressure => main.At(pressure, pressure, demand.Viscosity, demand.Density).Flow,
        _ => 0);

    /// <summary>A jet feeds the low stage from the main one, and a relief valve there spills to the sump; so does the main valve.</summary>
    /// <param name="demand">What is to be served.</param>
    /// <param name="main">The main valve.</param>
    /// <param name="jet">[m] bore of the jet, above 0.</param>
    /// <param name="discharge">[-] of the jet, above 0.</param>
    /// <param name="low">The low stage's valve.</param>
    /// <returns>Pressures and flows.</returns>
    /// <remarks>Model: delivery = main taken + main spill + jet; jet = low taken + low spill. Source: continuity with SpringValve and the orifice equation (computed from them). Check: ValveStagesTests.</remarks>
    public static StagePressures JetAndRelief(StageDemand demand, SpringValve main, double jet, double discharge, SpringValve low)
    {
        var area = Guard.AboveZero(discharge) * Math.PI * Guard.AboveZero(jet, "m") * jet / 4;
        return Settle(
            demand,
            (before, behind) => area * Math.Sqrt(2 * Math.Max(0, before - behind) / demand.Density),
            pressure => main.At(pressure, pressure, demand.Viscosity, demand.Density).Flow,
            pressure => low.At(pressure, pressure, demand.Viscosity, demand.Density).Flow);
    }

    private static StagePressures Settle(StageDemand demand, Func<double, double, double> feed, Func<double, double> mainSpill, Func<double, double> lowSpill)
    {
        Guard.ZeroOrMore(demand.Delivery, "m³/s");
        Guard.ZeroOrMore(demand.MainTaken);
        Guard.ZeroOrMore(demand.LowTaken);
        var high = 1e5;
        while (Served(high) < demand.Delivery)
        {
            high *= 2;
            if (!double.IsFinite(high))
                throw new ArgumentOutOfRangeException(nameof(demand), demand, "Nothing takes the delivery: give what the bearings take, or a relief valve that opens.");
        }

        var main = Roots.Find(pressure => Served(pressure) - demand.Delivery, 0, high).Root;
        var low = Behind(main);
        return new StagePressures(main, low, feed(main, low), mainSpill(main) + lowSpill(low));

        double Served(double pressure) => (demand.MainTaken * pressure) + mainSpill(pressure) + feed(pressure, Behind(pressure));

        double Behind(double before)
        {
            if (before <= 0 || feed(before, 0) <= 0)
                return 0;
            return Roots.Find(pressure => (demand.LowTaken * pressure) + lowSpill(pressure) - feed(before, pressure), 0, before).Root;
        }
    }
}
