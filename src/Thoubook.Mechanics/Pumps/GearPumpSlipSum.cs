using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Pumps;

/// <summary>The sum <c>gear-pump-slip</c>.</summary>
internal static class GearPumpSlipSum
{
    public static Sum Description { get; } = new(Answer)
    {
        Name = "gear-pump-slip",
        Question = "How much does a gear pump deliver against pressure, and by which gap does the rest slip back?",
        Source = "Laminar slots: B. S. Massey and J. Ward-Smith, Mechanics of Fluids, examples 6.2 and 6.3; annular gap (from memory)",
        Inputs = [.. GearPumpInputs.Sizes, .. GearPumpInputs.Duty],
        Outputs =
        [
            new("displacement", "V", "displacement for one turn by the geometry", Measure.Volume),
            new("end-leak", "Q_end", "slip over the ends of the gears", Measure.Flow),
            new("tip-leak", "Q_tip", "slip over the tips", Measure.Flow),
            new("bush-leak", "Q_bush", "slip past the bushes", Measure.Flow),
            new("tip-carry", "Q_carry", "carried by the tips besides", Measure.Flow),
            new("slip", "Q_s", "slip by all paths", Measure.Flow),
            new("delivered", "Q_d", "flow delivered", Measure.Flow),
            new("efficiency", "η_v", "flow delivered over displacement times speed", Measure.Number),
        ],
        Examples = ["teeth=11 tip-diameter=1.625in centre-distance=1.375in width=1.5in end-float=3thou speed=450rev/min pressure-rise=30psi viscosity=\"20 cP\""],
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
        var carried = trace.Line("Q_0", "displacement times speed", $"{volume} × ω/(2 × π)", pump.Displacement * speed / (2 * Math.PI), Units.CubicMetrePerSecond);
        var end = trace.Line("Q_end", "slip over the ends of the gears", "C_end × Δp/μ", pump.EndLeak * rise / viscosity, Units.CubicMetrePerSecond);
        var tip = trace.Line("Q_tip", "slip over the tips", "C_tip × Δp/μ", pump.TipLeak * rise / viscosity, Units.CubicMetrePerSecond);
        var bush = trace.Line("Q_bush", "slip past the bushes", "C_bush × Δp/μ", pump.BushLeak * rise / viscosity, Units.CubicMetrePerSecond);
        trace.Line("Q_carry", "carried by the tips besides", "V_tip × ω/(2 × π)", pump.TipDrag * speed / (2 * Math.PI), Units.CubicMetrePerSecond);
        var slip = trace.Line("Q_s", "slip by all paths", "Q_end + Q_tip + Q_bush", end + tip + bush, Units.CubicMetrePerSecond);
        var delivered = trace.Line("Q_d", "flow delivered", "Q_0 + Q_carry − Q_s", pump.Flow(speed, rise, viscosity), Units.CubicMetrePerSecond);
        trace.Line("η_v", "flow delivered over displacement times speed", "Q_d/Q_0", delivered / carried, Units.None);
        trace.Caution("Share of the ends under pressure, teeth that close on the casing and pressure at the bushes are taken by common practice: trust differences (another float, another oil) before the figure itself.");
        if (delivered <= 0)
            return "The pump cannot hold this pressure at this speed: all that it carries slips back.";
        return slip <= 0 ? "Nothing slips back."
            : end >= tip && end >= bush ? "Most of what slips back goes over the ends of the gears."
            : tip >= bush ? "Most of what slips back goes over the tips."
            : "Most of what slips back goes past the bushes.";
    }
}
