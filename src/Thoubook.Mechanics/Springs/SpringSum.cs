using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Springs;

/// <summary>The sum <c>spring</c>.</summary>
internal static class SpringSum
{
    /// <summary>Share of the tensile strength that the wire may carry in shear when the spring is solid.</summary>
    private const double SolidShare = 0.56;

    private static readonly string[] Ends = ["ground", "not-ground"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "spring",
        Question = "What is the rate of a helical compression spring from its drawing, and how far may it be pressed?",
        Source = "EN 13906-1 (from memory) for stress factor, solid length, gaps and buckling; the rate is in every handbook",
        Inputs =
        [
            Size("wire", "d", "diameter of the wire", 0.05),
            Size("coil", "D", "mean diameter of the coils, from middle to middle of the wire", 0.5) with { IsOptional = true },
            Size("outside", "D_o", "outside diameter, in place of the mean", 0.5) with { IsOptional = true },
            new("active", "n", "coils that work", Measure.Number) { Allowed = Allowed.Between(1, 60) },
            new("total", "n_t", "coils in all; left out, two more than work", Measure.Number) { Allowed = Allowed.Between(1, 64), IsOptional = true },
            Size("free-length", "L_0", "free length", 3),
            new("ends", "", "ends ground flat or not", Measure.Word) { Words = Ends },
            new("material", "", "wire: drawn steel, oil tempered, stainless, phosphor bronze, brass; left out, drawn steel", Measure.Name),
            new("shear-modulus", "G", "shear modulus, in place of a material", Measure.Pressure) { Allowed = Allowed.Between(1e9, 1.5e11), IsOptional = true },
            new("load", "F", "load on the spring", Measure.Force) { Allowed = Allowed.Between(0, 1e6), IsOptional = true },
            new("tensile", "R_m", "least tensile strength of the wire", Measure.Pressure) { Allowed = Allowed.Between(1e7, 5e9), IsOptional = true },
            new("seats", "ν", "how the ends are held: 0.5 both flat and guided, 0.7 one on a pivot, 1 both, 2 one free", Measure.Number) { Allowed = Allowed.Between(0.5, 2), Default = 0.5 },
        ],
        Outputs =
        [
            new("rate", "R", "rate", Measure.Stiffness),
            new("index", "w", "spring index", Measure.Number),
            new("solid-length", "L_c", "solid length", Measure.Length),
            new("solid-load", "F_c", "load that makes it solid", Measure.Force),
            new("shortest-length", "L_n", "shortest length in use", Measure.Length),
            new("buckling", "s_k", "deflection at which it buckles", Measure.Length),
            new("deflection", "s", "deflection under the load", Measure.Length),
            new("length", "L_1", "length under the load", Measure.Length),
            new("stress", "τ", "greatest stress under the load", Measure.Pressure),
            new("allowed-stress", "τ_p", "stress that the wire may carry when solid", Measure.Pressure),
        ],
        Examples = ["wire=4mm coil=30mm active=6 free-length=62mm load=350N", "wire=0.105in outside=0.725in active=10.8 free-length=2in load=35lbf material=\"music wire\""],
        Together = Check,
    };

    private static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        if (inputs.IsGiven("coil") == inputs.IsGiven("outside"))
        {
            yield return new("coil", inputs.IsGiven("coil") ? "mean and outside diameter" : "neither mean nor outside diameter", "one of the two", "Give the one that was measured.");
            yield break;
        }

        if (inputs.IsGiven("material") && inputs.IsGiven("shear-modulus"))
            yield return new("shear-modulus", "a material and a modulus", "one of the two", "Leave one out.");
        if (inputs.MaybeWord("material") is { } name && !SpringMaterials.TryFind(name, out _, out var nearest))
            yield return new("material", name, "a spring wire of the table", nearest.Count > 0 ? $"Did you mean {string.Join(" or ", nearest)}? Or give the shear-modulus." : "Give the shear-modulus instead.");
        var spring = Of(inputs);
        if (!(spring.Index >= CompressionSpring.LeastIndex))
            yield return new(inputs.IsGiven("coil") ? "coil" : "outside", "coils narrower than two wires", "a mean diameter of two wires or more", "Check both figures; the mean diameter is the outside less one wire.");
        if (spring.Total < spring.Active)
            yield return new("total", "fewer coils in all than work", "as many or more", "Check both counts.");
        if (spring.Free <= spring.SolidLength)
            yield return new("free-length", "a free length not above the solid length", "more than the coils take", "Check the free length, the wire and the number of coils.");
    }

    private static string Answer(SumInputs inputs, Written trace)
    {
        var (spring, load, seats) = (Of(inputs), inputs.Maybe("load"), inputs["seats"]);
        if (inputs.Maybe("outside") is { } outside)
        {
            trace.Given("D_o", "outside diameter", outside, Units.Metre);
            trace.Given("d_w", "diameter of the wire", spring.Wire, Units.Metre);
            trace.Line("D", "mean diameter of the coils", "D_o − d_w", spring.Coil, Units.Metre);
        }
        else
        {
            trace.Given("D", "mean diameter of the coils", spring.Coil, Units.Metre);
        }

        var source = inputs.IsGiven("shear-modulus") ? "" : Material(inputs).Source;
        trace.Given("G", "shear modulus", spring.Shear, Units.Pascal, source);
        trace.Given("E", "modulus of elasticity", spring.Young, Units.Pascal, source);
        spring.Told(load, seats, trace);
        if (spring.Index is < 4 or > 20)
            trace.Caution("The spring index is outside 4 to 20, where springs are usually wound; the stress factor is less sure there.");
        if (inputs.Maybe("tensile") is { } tensile)
        {
            trace.Given("R_m", "least tensile strength of the wire", tensile, Units.Pascal);
            var allowed = trace.Line("τ_p", "stress that the wire may carry when solid, without the curvature", "0.56 × R_m", SolidShare * tensile, Units.Pascal, "EN 13906-1 (from memory)");
            if (8 * spring.Coil * spring.Rate * (spring.Free - spring.SolidLength) / (Math.PI * Math.Pow(spring.Wire, 3)) > allowed)
                trace.Caution("Pressed solid, the wire is overstressed: the spring will set.");
        }

        var pressed = load / spring.Rate;
        return pressed > spring.Free - spring.SolidLength ? "The spring is solid before it carries the load."
            : pressed > spring.BucklingDeflection(seats) ? "The spring buckles before it carries the load, unless it is guided."
            : pressed > spring.Free - spring.SolidLength - spring.LeastGaps ? "The spring carries the load, but its coils come closer than they should."
            : load is null ? "The rate follows from the drawing; a rate measured on the spring is better."
            : "The spring carries the load.";
    }

    private static CompressionSpring Of(SumInputs inputs)
    {
        var (wire, material) = (inputs["wire"], Material(inputs));
        var shear = inputs.Maybe("shear-modulus") ?? material.Shear;
        return new CompressionSpring(
            wire,
            inputs.Maybe("coil") ?? (inputs["outside"] - wire),
            inputs["active"],
            inputs.Maybe("total") ?? (inputs["active"] + 2),
            inputs["free-length"],
            shear,
            inputs.IsGiven("shear-modulus") ? shear * material.Young / material.Shear : material.Young,
            inputs.Word("ends") == "ground");
    }

    private static SpringMaterial Material(SumInputs inputs) =>
        inputs.MaybeWord("material") is { } name && SpringMaterials.TryFind(name, out var material, out _) ? material : SpringMaterials.Usual;

    private static SumInput Size(string key, string symbol, string name, double greatest) => new(key, symbol, name, Measure.Length) { Allowed = new(0, greatest, Sums.Ends.Open) };
}
