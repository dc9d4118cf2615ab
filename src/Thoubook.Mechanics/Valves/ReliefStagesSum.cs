using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Valves;

/// <summary>The sum <c>relief-stages</c>.</summary>
internal static class ReliefStagesSum
{
    private static readonly string[] BodyWords = ["cascade", "reducing", "jet"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "relief-stages",
        Question = "What pressures do the two stages of a valve body hold at a given delivery?",
        Source = "Continuity, with disc valves by force balance and orifice equation: A. Esposito, Fluid Power with Applications, chapter 8",
        Inputs =
        [
            new("body", "", "cascade (low stage fed by what the main one spills), reducing valve, or jet and relief", Measure.Word) { Words = BodyWords },
            new("delivery", "Q", "flow from the pump", Measure.Flow) { Allowed = Allowed.Between(0, 0.02) },
            new("main-taken", "q_1", "what the main stage takes at its pressure below", Measure.Flow) { Allowed = Allowed.Between(1e-7, 0.02) },
            new("main-at", "p_q1", "pressure for that", Measure.Pressure) { Allowed = Allowed.Between(1e3, 1e7), Default = 413_685.4 },
            new("low-taken", "q_2", "what the low stage takes at its pressure below", Measure.Flow) { Allowed = Allowed.Between(1e-8, 0.02) },
            new("low-at", "p_q2", "pressure for that", Measure.Pressure) { Allowed = Allowed.Between(1e2, 1e7), Default = 27_579.03 },
            new("main-seat", "d_1", "seat of the main valve", Measure.Length) { Allowed = Allowed.Between(2e-3, 0.1) },
            new("main-cracking", "p_c1", "pressure at which it lifts", Measure.Pressure) { Allowed = Allowed.Between(0, 1e7) },
            new("main-spring", "k_1", "its spring rate", Measure.Stiffness) { Allowed = Allowed.Between(10, 1e6) },
            new("low-seat", "d_2", "seat of the low stage's valve, or bore of the reducing valve", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.1) },
            new("low-cracking", "p_c2", "pressure at which it lifts, or at which the reducing valve is just shut", Measure.Pressure) { Allowed = Allowed.Between(0, 1e7) },
            new("low-spring", "k_2", "its spring rate", Measure.Stiffness) { Allowed = Allowed.Between(10, 1e6) },
            new("jet", "d_j", "bore of the jet", Measure.Length) { Allowed = Allowed.Between(1e-4, 0.02), Default = 2e-3 },
            new("piston", "d_p", "piston of the reducing valve; its bore where left out", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.1), IsOptional = true },
            new("discharge", "C_d", "discharge coefficient of valves and jet", Measure.Number) { Allowed = Allowed.Between(0.1, 1), Default = 0.65 },
            new("density", "ρ", "density of the oil", Measure.Density) { Allowed = Allowed.Between(500, 1_500), Default = 870 },
        ],
        Outputs =
        [
            new("main", "p_1", "main pressure", Measure.Pressure),
            new("low", "p_2", "low pressure", Measure.Pressure),
            new("to-low", "Q_2", "what reaches the low stage", Measure.Flow),
            new("spilled", "Q_r", "what goes back to the sump through the valves", Measure.Flow),
            new("main-share", "Q_1", "what the main stage takes", Measure.Flow),
            new("low-share", "Q_3", "what the low stage takes", Measure.Flow),
        ],
        Examples = ["body=cascade delivery=\"20 L/min\" main-taken=\"12 L/min\" main-at=60psi low-taken=\"3 L/min\" low-at=4psi main-seat=14mm main-cracking=60psi main-spring=3.2N/mm low-seat=14mm low-cracking=4psi low-spring=0.2N/mm"],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var body = inputs.Word("body");
        var (discharge, density) = (inputs["discharge"], inputs["density"]);
        var main = Valve("main");
        var demand = new StageDemand(inputs["delivery"], inputs["main-taken"] / inputs["main-at"], inputs["low-taken"] / inputs["low-at"], 1, density);
        var settled = body switch
        {
            "reducing" => ValveStages.Reducing(demand, main, new Reducer(inputs["low-seat"], inputs["low-cracking"], inputs["low-spring"], inputs.Maybe("piston") ?? inputs["low-seat"], inputs["low-seat"] / 4, discharge)),
            "jet" => ValveStages.JetAndRelief(demand, main, inputs["jet"], discharge, Valve("low")),
            _ => ValveStages.Cascade(demand, main, Valve("low")),
        };
        trace.Given("Q", "flow from the pump", demand.Delivery, Units.CubicMetrePerSecond);
        trace.Given("q_1", "what the main stage takes at its pressure", inputs["main-taken"], Units.CubicMetrePerSecond);
        trace.Given("p_q1", "pressure for that", inputs["main-at"], Units.Pascal);
        trace.Given("q_2", "what the low stage takes at its pressure", inputs["low-taken"], Units.CubicMetrePerSecond);
        trace.Given("p_q2", "pressure for that", inputs["low-at"], Units.Pascal);
        const string how = "root of the balance below";
        trace.Given("p_1", "main pressure", settled.Main, Units.Pascal, how);
        trace.Given("p_2", "low pressure", settled.Low, Units.Pascal, how);
        trace.Given("Q_2", "what reaches the low stage", settled.ToLow, Units.CubicMetrePerSecond, body switch { "reducing" => "opening of the reducing valve", "jet" => "orifice equation of the jet", _ => "lift of the main valve against the low pressure" });
        trace.Given("Q_r", "what goes back to the sump through the valves", settled.Spilled, Units.CubicMetrePerSecond, "lift of the valves");
        var taken = trace.Line("Q_1", "what the main stage takes", "q_1 × p_1/p_q1", inputs["main-taken"] * settled.Main / inputs["main-at"], Units.CubicMetrePerSecond);
        var low = trace.Line("Q_3", "what the low stage takes", "q_2 × p_2/p_q2", inputs["low-taken"] * settled.Low / inputs["low-at"], Units.CubicMetrePerSecond);
        trace.Line("B", "what is left of the balance: nil", "Q − Q_1 − Q_3 − Q_r", demand.Delivery - taken - low - settled.Spilled, Units.CubicMetrePerSecond);
        trace.Caution("What the bearings take is counted as in proportion to pressure, and the closing force of the flow on the valves as none (discs).");
        return body == "cascade" && settled.ToLow <= 0
            ? "The main valve is shut: the low stage gets nothing, whatever the main gauge says."
            : settled.Spilled <= 0 ? "The stages take all that the pump gives." : "The valves spill the rest to the sump.";

        SpringValve Valve(string stage)
        {
            var closure = Closure.Disc(inputs[stage + "-seat"]);
            return new(closure, inputs[stage + "-cracking"] * closure.LiftingArea, inputs[stage + "-spring"], closure.Seat, discharge);
        }
    }
}
