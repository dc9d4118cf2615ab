using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Valves;

/// <summary>The sum <c>relief-valve</c>.</summary>
internal static class ReliefValveSum
{
    private static readonly string[] ClosureWords = ["disc", "poppet", "ball", "piston"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "relief-valve",
        Question = "At what pressure does a relief valve lift, and how far above that does it hold at a flow?",
        Source = "Force balance and orifice equation: A. Esposito, Fluid Power with Applications, chapter 8; force of the flow: H. E. Merritt, Hydraulic Control Systems (from memory)",
        Inputs =
        [
            new("closure", "", "what closes it", Measure.Word) { Words = ClosureWords },
            new("seat", "d", "contact diameter of the seat, or diameter of the piston", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.1) },
            new("seat-angle", "β", "half angle of a poppet", Measure.Angle) { Allowed = Allowed.Between(0.1, 1.5), Default = Math.PI / 4 },
            new("ball", "d_b", "diameter of a ball; one and a quarter seats where left out", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.2), IsOptional = true },
            new("port", "w", "width round the bore of the port that a piston uncovers; its diameter where left out", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.3), IsOptional = true },
            new("overlap", "o", "lift of a piston before the port opens", Measure.Length) { Allowed = Allowed.Between(0, 0.05), Default = 0 },
            new("cracking", "p_c", "pressure at which it lifts, against none in its outlet", Measure.Pressure) { Allowed = Allowed.Between(0, 1e8), IsOptional = true },
            new("preload", "F_0", "force of the spring when shut, in place of the cracking pressure", Measure.Force) { Allowed = Allowed.Between(0, 1e5), IsOptional = true },
            new("spring", "k", "spring rate", Measure.Stiffness) { Allowed = Allowed.Between(10, 1e7) },
            new("lift", "X", "lift at its stop", Measure.Length) { Allowed = Allowed.Between(1e-4, 0.2), Default = 0.2 },
            new("discharge", "C_d", "discharge coefficient", Measure.Number) { Allowed = Allowed.Between(0.1, 1), Default = 0.65 },
            new("friction", "F_f", "friction of the closing part in its guide", Measure.Force) { Allowed = Allowed.Between(0, 1e4), Default = 0 },
            new("back-pressure", "p_b", "pressure in its outlet and spring chamber", Measure.Pressure) { Allowed = Allowed.Between(-1e5, 1e8), Default = 0 },
            new("flow", "Q", "flow that it has to pass", Measure.Flow) { Allowed = Allowed.Between(1e-9, 1), IsOptional = true },
            new("density", "ρ", "density of the oil", Measure.Density) { Allowed = Allowed.Between(500, 1_500), Default = 870 },
        ],
        Outputs =
        [
            new("cracking", "p_1", "pressure before it at which it lifts", Measure.Pressure),
            new("opens-at", "p_open", "the same going up, against friction", Measure.Pressure),
            new("shuts-at", "p_shut", "pressure at which it shuts going down", Measure.Pressure),
            new("lift", "x", "lift at the flow", Measure.Length),
            new("pressure", "p", "pressure before it at the flow", Measure.Pressure),
            new("override", "Ω", "what it holds above cracking, over cracking", Measure.Number),
            new("flow-force", "F_x", "closing force of the flow", Measure.Force),
        ],
        Examples =
        [
            "seat=14mm preload=48.4N spring=2.2N/mm flow=\"20 L/min\"",
            "closure=poppet seat=14mm cracking=60psi spring=2.2N/mm flow=\"20 L/min\" back-pressure=4psi",
        ],
        Together = Check,
    };

    private static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        if (inputs.IsGiven("cracking") == inputs.IsGiven("preload"))
            yield return new("cracking", inputs.IsGiven("cracking") ? "cracking and preload" : "neither cracking nor preload", "one of the two", "Give the pressure at which it lifts, or the force of the spring when shut.");
        if (inputs.Word("closure") == "ball" && inputs.Maybe("ball") is { } ball && ball <= inputs["seat"])
            yield return new("ball", "a ball that falls through its seat", "ball above seat", "Check the two diameters.");
        if (inputs.Word("closure") == "piston" && inputs["overlap"] >= inputs["lift"])
            yield return new("overlap", "a piston that stops before its port opens", "overlap below lift", "Check overlap and lift.");
    }

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (seat, spring, friction, back) = (inputs["seat"], inputs["spring"], inputs["friction"], inputs["back-pressure"]);
        trace.Given("d", "contact diameter of the seat, or of the piston", seat, Units.Metre);
        trace.Given("k", "spring rate", spring, Units.NewtonPerMetre);
        trace.Given("F_f", "friction", friction, Units.Newton);
        trace.Given("p_b", "pressure in outlet and spring chamber", back, Units.Pascal);
        var area = trace.Line("A", "area that the pressure pushes on", "π × d^2/4", Math.PI * seat * seat / 4, Units.SquareMetre);
        double preload;
        if (inputs.Maybe("preload") is { } given)
        {
            preload = given;
            trace.Given("F_0", "force of the spring when shut", preload, Units.Newton);
        }
        else
        {
            trace.Given("p_c", "pressure at which it lifts, against none in its outlet", inputs["cracking"], Units.Pascal);
            preload = trace.Line("F_0", "force of the spring when shut", "p_c × A", inputs["cracking"] * area, Units.Newton);
        }

        var cracking = trace.Line("p_1", "pressure before it at which it lifts", "F_0/A + p_b", (preload / area) + back, Units.Pascal);
        trace.Line("p_open", "the same going up, against friction", "(F_0 + F_f)/A + p_b", ((preload + friction) / area) + back, Units.Pascal);
        trace.Line("p_shut", "pressure at which it shuts going down", "(F_0 − F_f)/A + p_b", ((preload - friction) / area) + back, Units.Pascal);
        if (inputs.Maybe("flow") is not { } flow)
            return "It lifts at the pressure below.";
        var closure = Closed(inputs);
        var valve = new SpringValve(closure, preload, spring, inputs["lift"], inputs["discharge"]);
        var drop = valve.DropFor(flow, 1, inputs["density"]);
        var state = valve.At(drop, drop, 1, inputs["density"]);
        var (lift, opening) = (state.Lift, closure.Area(state.Lift));
        trace.Given("Δp", "pressure drop across it at the flow", drop, Units.Pascal, "root of the flow and force balance below");
        trace.Given("x", "lift at the flow", lift, Units.Metre, "root of the flow and force balance below");
        Opening(inputs, closure, lift, opening, trace);
        trace.Given("C_d", "discharge coefficient", valve.Discharge, Units.None);
        trace.Given("ρ", "density of the oil", inputs["density"], Units.KilogramPerCubicMetre);
        trace.Line("Q", "flow through it", "C_d × a_x × sqrt(2 × Δp/ρ)", state.Flow, Units.CubicMetrePerSecond);
        var force = closure.FlowForce(lift, valve.Discharge) * drop;
        var formula = closure.Kind switch { ClosureKind.Poppet => "2 × C_d × a_x × Δp × cos(β)", ClosureKind.Piston => "0.43 × a_x × Δp", _ => "0 × a_x" };
        trace.Line("F_x", "closing force of the flow", formula, force, Units.Newton);
        trace.Line("B", "what is left of the balance: nil between seat and stop", "Δp × A − F_0 − k × x − F_x", (drop * area) - preload - (spring * lift) - force, Units.Newton);
        trace.Line("p", "pressure before it at the flow", "Δp + p_b", drop + back, Units.Pascal);
        if (valve.Cracking > 0)
            trace.Line("Ω", "what it holds above cracking, over cracking", "(Δp − F_0/A)/(F_0/A)", (drop - valve.Cracking) / valve.Cracking, Units.None);
        if (closure.Kind is ClosureKind.Ball)
            trace.Caution("What the flow closes on a ball is small and left out.");
        trace.Caution("Thick cold oil lifts the valve further: the discharge coefficient falls at low Reynolds numbers.");
        return lift >= valve.Lift ? "It stands against its stop: the pressure rises with the square of the flow."
            : opening >= closure.WidestArea ? "It is wide open: the bore of the seat limits the flow."
            : "It holds the flow between its seat and its stop.";
    }

    private static Closure Closed(SumInputs inputs) => inputs.Word("closure") switch
    {
        "poppet" => Closure.Poppet(inputs["seat"], inputs["seat-angle"]),
        "ball" => Closure.Ball(inputs["seat"], inputs.Maybe("ball") ?? 1.25 * inputs["seat"]),
        "piston" => Closure.Piston(inputs["seat"], inputs.Maybe("port") ?? inputs["seat"], inputs["overlap"]),
        _ => Closure.Disc(inputs["seat"]),
    };

    private static void Opening(SumInputs inputs, Closure closure, double lift, double opening, Written trace)
    {
        string formula;
        switch (closure.Kind)
        {
            case ClosureKind.Poppet:
                trace.Given("β", "half angle of the poppet", inputs["seat-angle"], Units.Radian);
                var widest = closure.Seat / (2 * Math.Sin(inputs["seat-angle"]) * Math.Cos(inputs["seat-angle"]));
                trace.Line("x_w", "lift, not above that of the widest cone", "min(x, d/(2 × sin(β) × cos(β)))", Math.Min(lift, widest), Units.Metre);
                formula = "min(A, π × x_w × sin(β) × (d − x_w × sin(β) × cos(β)))";
                break;
            case ClosureKind.Ball:
                var radius = (inputs.Maybe("ball") ?? 1.25 * closure.Seat) / 2;
                trace.Given("R", "radius of the ball", radius, Units.Metre);
                var rise = Math.Sqrt((radius * radius) - (closure.Seat * closure.Seat / 4)) + lift;
                trace.Line("l", "from the seat's edge to the ball's centre", "sqrt((d/2)^2 + (sqrt(R^2 − (d/2)^2) + x)^2)", Math.Sqrt((closure.Seat * closure.Seat / 4) + (rise * rise)), Units.Metre);
                formula = "min(A, π × d/2 × (l − R) × (1 + R/l))";
                break;
            case ClosureKind.Piston:
                trace.Given("w", "width of the port", inputs.Maybe("port") ?? closure.Seat, Units.Metre);
                trace.Given("o", "lift before the port opens", inputs["overlap"], Units.Metre);
                formula = "w × max(0, x − o)";
                break;
            default:
                formula = "min(A, π × d × x)";
                break;
        }

        trace.Line("a_x", "opening", formula, opening, Units.SquareMetre);
    }
}
