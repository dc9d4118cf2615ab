using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Flow;

/// <summary>The sum <c>pipe-loss</c>.</summary>
internal static class PipeLossSum
{
    /// <summary>[Pa] what the air can press up a suction pipe.</summary>
    private const double Atmosphere = StandardValues.Atmosphere;

    public static Sum Description { get; } = new(Answer)
    {
        Name = "pipe-loss",
        Question = "How much pressure does a flow cost in a pipe or drilling with its bends?",
        Source = "Darcy and Weisbach; Churchill, Chemical Engineering 84 (1977) 91, for the friction",
        Inputs =
        [
            FlowInputs.Size("bore", "d", "inside diameter", 1),
            FlowInputs.Size("length", "L", "length", 1000),
            FlowInputs.Flow,
            FlowInputs.Viscosity,
            FlowInputs.Density,
            new("roughness", "e", "roughness of the wall; drawn tube 1.5 µm, a drilling 6 µm", Measure.Length) { Allowed = Allowed.Between(0, 0.01), Default = 1.5e-6 },
            new("losses", "K", "bends, entry and exit, in velocity heads: sharp entry 0.5, exit 1, elbow 0.9", Measure.Number) { Allowed = Allowed.Between(0, 1000), Default = 0 },
            new("number", "N", "pipes side by side", Measure.Number) { Allowed = Allowed.Between(1, 10000), Default = 1 },
        ],
        Outputs =
        [
            new("loss", "Δp", "loss of pressure", Measure.Pressure),
            new("velocity", "v", "mean velocity", Measure.Velocity),
            new("reynolds", "Re", "Reynolds number", Measure.Number),
            new("friction", "f", "Darcy's friction factor", Measure.Number),
        ],
        Examples = ["bore=12mm length=1.5m flow=20L/min viscosity=17cP", "bore=10mm length=1m flow=40L/min viscosity=8.5cP losses=1.5"],
        Together = inputs => inputs["roughness"] > 0.2 * inputs["bore"]
            ? [new("roughness", "a roughness above a fifth of the bore", "at most a fifth of the bore", "Check both figures and their units.")]
            : [],
    };

    private static string Answer(SumInputs inputs, Written trace)
    {
        var pipe = new RoundPipe(inputs["bore"], inputs["length"], inputs["roughness"], inputs["losses"], inputs["number"]);
        var loss = PipeLoss.Of(pipe, inputs["flow"], inputs["viscosity"], inputs["density"], trace);
        var reynolds = 4 * inputs["density"] * inputs["flow"] / (Math.PI * inputs["bore"] * inputs["number"] * inputs["viscosity"]);
        if (loss > Atmosphere)
            trace.Caution("This is more than the air can press: as a suction pipe it cannot carry this flow.");
        if (pipe.Roughness > 0.05 * pipe.Bore)
            trace.Caution("The wall is rougher than a twentieth of the bore; the friction is a guess.");
        return reynolds switch
        {
            < 2100 => "The flow is laminar.",
            < 4000 => "The flow is between laminar and turbulent; the loss may lie either way by a quarter.",
            _ => "The flow is turbulent.",
        };
    }
}
