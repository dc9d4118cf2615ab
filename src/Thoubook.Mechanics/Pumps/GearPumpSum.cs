using Thoubook.Mechanics.Gears;
using Thoubook.Mechanics.Numerics;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Pumps;

/// <summary>The sum <c>gear-pump</c>.</summary>
internal static class GearPumpSum
{
    /// <summary>[rad] involute of 3°.</summary>
    private const double LeastInvolute = 4.8e-5;

    private static readonly string[] TrappedWords = ["relieved", "carried over", "two flanks"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "gear-pump",
        Question = "What does a gear pump carry for one turn, and how much does its flow pulse?",
        Source = "Virtual work on an involute pair, as N. D. Manring and S. B. Kasaragadda, J. Dyn. Sys. Meas. Control 2003 (from memory); proved against areas of the tooth form",
        Inputs =
        [
            new("teeth", "z_1", "teeth of the driving gear", Measure.Number) { IsWhole = true, Allowed = Allowed.Between(5, 60) },
            new("driven-teeth", "z_2", "teeth of the driven gear; as the driver's where left out", Measure.Number) { IsWhole = true, Allowed = Allowed.Between(5, 60), IsOptional = true },
            new("tip-diameter", "d_a1", "diameter over the tips; two modules over the pitch circle and the shift where a module is given", Measure.Length) { Allowed = Allowed.Between(5e-3, 0.5), IsOptional = true },
            new("driven-tip-diameter", "d_a2", "the driven gear's, where it differs", Measure.Length) { Allowed = Allowed.Between(5e-3, 0.5), IsOptional = true },
            new("centre-distance", "a", "distance between the axes; without backlash where a module is given", Measure.Length) { Allowed = Allowed.Between(4e-3, 0.5), IsOptional = true },
            new("width", "b", "width of the teeth", Measure.Length) { Allowed = Allowed.AboveZero },
            new("module", "m", "module (one inch over the diametral pitch)", Measure.Length) { Allowed = Allowed.Between(2e-4, 0.05), IsOptional = true },
            new("base-pitch", "p_b", "what a span over the teeth gains for one tooth more, in place of a module", Measure.Length) { Allowed = Allowed.Between(5e-4, 0.15), IsOptional = true },
            new("pressure-angle", "α", "pressure angle of the cutter", Measure.Angle) { Allowed = Allowed.Between(0.15, 0.65), Default = Math.PI / 9 },
            new("shift", "x_1", "profile shift of the driver in modules", Measure.Number) { Allowed = Allowed.Between(-1, 1.5), Default = 0 },
            new("driven-shift", "x_2", "profile shift of the driven gear", Measure.Number) { Allowed = Allowed.Between(-1, 1.5), IsOptional = true },
            new("trapped", "", "what becomes of the oil trapped in the mesh", Measure.Word) { Words = TrappedWords },
            new("thickness-share", "s", "with two flanks sealing, the driver's share of the pitch", Measure.Number) { Allowed = Allowed.Probability, Default = 0.5 },
            new("speed", "ω", "speed of the driver", Measure.RotationalSpeed) { Allowed = Allowed.Between(0, 5_000), IsOptional = true },
        ],
        Outputs =
        [
            new("displacement", "V", "displacement for one turn of the driver", Measure.Volume),
            new("ripple", "δ", "greatest less least flow, over the mean", Measure.Number),
            new("contact-ratio", "ε", "pairs of teeth in contact on the average", Measure.Number),
            new("flow", "Q", "flow without slip", Measure.Flow),
        ],
        Examples =
        [
            "teeth=11 tip-diameter=1.625in centre-distance=1.375in width=1.5in speed=1000rev/min",
            "teeth=8 module=4.6mm shift=0.424 tip-diameter=48.96mm centre-distance=40mm width=25mm",
        ],
        Together = Check,
    };

    private static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        if (inputs.IsGiven("module") && inputs.IsGiven("base-pitch"))
            yield return new("base-pitch", "module and base-pitch", "one of the two", "Leave one out.");
        if (!inputs.IsGiven("module"))
        {
            foreach (var key in (string[])["tip-diameter", "centre-distance"])
            {
                if (!inputs.IsGiven(key))
                    yield return new(key, "neither a module nor this", "one of the two", $"Give {key} as measured, or the module.");
            }

            foreach (var key in (string[])["shift", "driven-shift"])
            {
                if (inputs.IsGiven(key) && inputs[key] != 0)
                    yield return new(key, "a profile shift without a module", "a shift with its module", "Give the module, or leave the shift out.");
            }

            if (!inputs.IsGiven("tip-diameter") || !inputs.IsGiven("centre-distance"))
                yield break;
        }

        if (inputs.IsGiven("module") && !inputs.IsGiven("centre-distance") && TightInvolute(inputs) < LeastInvolute)
            yield return new("shift", "teeth so thin that they meet without backlash on no centres", "shifts that leave a working pressure angle of 3° or more", "Check the shifts, or give the centre distance.");
        else if (GearPumpInputs.Problem(Pair(inputs).Fault) is { } problem)
            yield return problem;
    }

    private static GearPair Pair(SumInputs inputs)
    {
        var (z1, angle) = ((int)inputs["teeth"], inputs["pressure-angle"]);
        var z2 = inputs.Maybe("driven-teeth") is { } driven ? (int)driven : z1;
        if (inputs.Maybe("module") is not { } module)
        {
            var centres = inputs["centre-distance"];
            var first = inputs["tip-diameter"] / 2;
            return GearPair.Measured(z1, z2, first, inputs.Maybe("driven-tip-diameter") / 2 ?? first, centres, inputs.Maybe("base-pitch") ?? 2 * Math.PI * centres / (z1 + z2) * Math.Cos(angle));
        }

        var (x1, x2) = (inputs["shift"], inputs.Maybe("driven-shift") ?? inputs["shift"]);
        var tip1 = inputs.Maybe("tip-diameter") / 2 ?? module * (z1 + 2 + (2 * x1)) / 2;
        var tip2 = inputs.Maybe("driven-tip-diameter") / 2 ?? (z2 == z1 && x2 == x1 ? tip1 : module * (z2 + 2 + (2 * x2)) / 2);
        return new(SpurGear.Drawn(module, z1, angle, x1, tip1), SpurGear.Drawn(module, z2, angle, x2, tip2), inputs.Maybe("centre-distance") ?? TightCentres(inputs, module, z1 + z2));
    }

    /// <summary>Involute of the angle at which teeth of nominal thickness work without backlash.</summary>
    private static double TightInvolute(SumInputs inputs)
    {
        var (z1, angle, shift) = (inputs["teeth"], inputs["pressure-angle"], inputs["shift"]);
        return SpurGear.Involute(angle) + (2 * Math.Tan(angle) * (shift + (inputs.Maybe("driven-shift") ?? shift)) / (z1 + (inputs.Maybe("driven-teeth") ?? z1)));
    }

    /// <summary>The centres on which they do.</summary>
    private static double TightCentres(SumInputs inputs, double module, int teeth)
    {
        var (angle, involute) = (inputs["pressure-angle"], TightInvolute(inputs));
        var working = Roots.Find(a => SpurGear.Involute(a) - involute, 0, 1.5).Root;
        return module * teeth / 2 * Math.Cos(angle) / Math.Cos(working);
    }

    private static string Answer(SumInputs inputs, Written trace)
    {
        var pair = Pair(inputs);
        var trapped = (TrappedOil)Array.IndexOf(TrappedWords, inputs.Word("trapped"));
        var got = Displacement.Of(pair, inputs["width"], trapped, inputs["thickness-share"], trace);
        trace.Line("α_w", "working pressure angle", "acos((z_1 + z_2) × p_b/(2 × π × a))", pair.WorkingAngle, Units.Radian);
        var contact = trace.Line(
            "ε",
            "pairs of teeth in contact on the average",
            "(sqrt(r_a1^2 − (z_1 × p_b/(2 × π))^2) + sqrt(r_a2^2 − (z_2 × p_b/(2 × π))^2) − a × sin(α_w))/p_b",
            pair.ContactRatio,
            Units.None,
            "ISO 21771:2007");
        if (inputs.Maybe("speed") is { } speed)
        {
            trace.Given("ω", "speed of the driver", speed, Units.RadianPerSecond);
            trace.Line("Q", "flow without slip", "V × ω/(2 × π)", got.Volume * speed / (2 * Math.PI), Units.CubicMetrePerSecond);
        }

        if (!inputs.IsGiven("module") && !inputs.IsGiven("base-pitch"))
            trace.Caution("The base pitch is taken from the centre distance; on gears with profile shift the displacement comes out one or two per cent low. The gain of a span for one tooth more gives it exactly.");
        if (inputs.IsGiven("module") && pair.Backlash < 0)
            trace.Caution("On these centres teeth of nominal thickness would bind: check centre distance and shift.");
        if (contact < 1)
            trace.Caution("Less than one pair of teeth is in contact on the average: the mesh does not seal all the time, and the pump carries less.");
        return "The gears carry the oil round the outside in their tooth spaces; the mesh carries some of it back.";
    }
}
