using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Pumps;

/// <summary>The sum <c>gear-pump-power</c>.</summary>
internal static class GearPumpPowerSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "gear-pump-power",
        Question = "What torque and power does a gear pump take to turn?",
        Source = "V Δp/2π: A. Esposito, Fluid Power with Applications, example 5-8; shear in the gaps: B. S. Massey and J. Ward-Smith, Mechanics of Fluids, example 6.6; Petroff's equation (from memory)",
        Inputs = [.. GearPumpInputs.Sizes, .. GearPumpInputs.Duty],
        Outputs =
        [
            new("pressure-torque", "T_p", "torque against the pressure", Measure.Torque),
            new("end-torque", "T_end", "drag of the ends of the gears", Measure.Torque),
            new("tip-torque", "T_tip", "drag of the tips", Measure.Torque),
            new("bush-torque", "T_bush", "drag of the bushes", Measure.Torque),
            new("torque", "T", "torque at the pump's spindle, friction of the mesh left out", Measure.Torque),
            new("power", "P", "power", Measure.Power),
        ],
        Examples = ["teeth=11 tip-diameter=1.625in centre-distance=1.375in width=1.5in end-float=3thou speed=1500rev/min pressure-rise=60psi viscosity=\"400 cP\""],
        Together = GearPumpInputs.Check,
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var sizes = GearPumpInputs.Read(inputs);
        var pump = GearPump.Characteristic(sizes, trace);
        var (speed, rise, viscosity) = (inputs["speed"], inputs["pressure-rise"], inputs["viscosity"]);
        trace.Given("ω", "speed of the pump", speed, Units.RadianPerSecond);
        trace.Given("Δp", "outlet above inlet", rise, Units.Pascal);
        trace.Given("μ", "viscosity of the oil in the pump", viscosity, Units.PascalSecond);
        var volume = sizes.MeasuredDisplacement is null ? "V" : "V_m";
        var pressure = trace.Line("T_p", "torque against the pressure", $"{volume} × Δp/(2 × π)", pump.Torque(0, rise, viscosity), Units.NewtonMetre);
        Part("T_end", "drag of the ends of the gears", "D_end", pump.EndDrag);
        Part("T_tip", "drag of the tips", "D_tip", pump.TipShear);
        Part("T_bush", "drag of the bushes", "D_bush", pump.BushDrag);
        var torque = trace.Line("T", "torque at the pump's spindle, friction of the mesh left out", "T_p + D × μ × ω", pump.Torque(speed, rise, viscosity), Units.NewtonMetre);
        trace.Line("P", "power", "T × ω", pump.Power(speed, rise, viscosity), Units.Watt);
        trace.Caution("The ends are counted as full rings and every tip as against the casing: drag is an upper value. Friction of the mesh is left out.");
        return pressure >= torque / 2 ? "The pressure takes most of the torque." : "The drag of the oil takes most of the torque: thick oil or narrow gaps.";

        void Part(string symbol, string what, string drag, double value) => trace.Line(symbol, what, $"{drag} × μ × ω", value * viscosity * speed, Units.NewtonMetre);
    }
}
