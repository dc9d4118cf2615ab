using Thoubook.Mechanics.Gears;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Pumps;

/// <summary>The sizes of a gear pump as sums ask for them.</summary>
internal static class GearPumpInputs
{
    public static IReadOnlyList<SumInput> Sizes { get; } =
    [
        new("teeth", "z_1", "teeth of each gear", Measure.Number) { IsWhole = true, Allowed = Allowed.Between(5, 60) },
        new("tip-diameter", "d_a", "diameter over the tips", Measure.Length) { Allowed = Allowed.Between(5e-3, 0.5) },
        new("centre-distance", "a", "distance between the spindles", Measure.Length) { Allowed = Allowed.Between(4e-3, 0.5) },
        new("width", "b", "width of the gears", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.5) },
        new("pressure-angle", "α", "pressure angle of the cutter", Measure.Angle) { Allowed = Allowed.Between(0.15, 0.65), Default = Math.PI / 9 },
        new("module", "m", "module (one inch over the diametral pitch); from the centre distance where left out", Measure.Length) { Allowed = Allowed.Between(2e-4, 0.05), IsOptional = true },
        new("end-float", "e_1", "end float, total", Measure.Length) { Allowed = Allowed.Between(0, 2e-3) },
        new("driven-end-float", "e_2", "end float of the driven gear where it differs", Measure.Length) { Allowed = Allowed.Between(0, 2e-3), IsOptional = true },
        new("float-share", "f", "share of the float on one face: 0.5 centred, 0 or 1 against a face", Measure.Number) { Allowed = Allowed.Between(0, 1), Default = 0.5 },
        new("tip-clearance", "c_t", "pocket less tips, diametral", Measure.Length) { Allowed = Allowed.Between(0, 2e-3), Default = 0.1016e-3 },
        new("root-diameter", "d_f", "diameter at the roots of the teeth", Measure.Length) { Allowed = Allowed.Between(2e-3, 0.5), IsOptional = true },
        new("hub-diameter", "d_s", "diameter of hub or spindle within the ends", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.3), IsOptional = true },
        new("bush-clearance", "c", "clearance of the bushes, diametral; none where left out", Measure.Length) { Allowed = Allowed.Between(0, 2e-3), Default = 0 },
        new("bush-length", "L", "length of each bush; none where left out", Measure.Length) { Allowed = Allowed.Between(0, 0.3), Default = 0 },
        new("bush-diameter", "D_s", "diameter of the spindles; the hub's where left out", Measure.Length) { Allowed = Allowed.Between(1e-3, 0.3), IsOptional = true },
        new("displacement", "V_m", "displacement for one turn as caught, in place of the geometry", Measure.Volume) { Allowed = Allowed.AboveZero, IsOptional = true },
    ];

    /// <summary>What the pump is asked to do.</summary>
    public static IReadOnlyList<SumInput> Duty { get; } =
    [
        new("speed", "ω", "speed of the pump", Measure.RotationalSpeed) { Allowed = Allowed.Between(0.1, 2_000) },
        new("pressure-rise", "Δp", "outlet above inlet", Measure.Pressure) { Allowed = Allowed.Between(0, 5e7) },
        new("viscosity", "μ", "viscosity of the oil in the pump", Measure.DynamicViscosity) { Allowed = Allowed.Between(1e-4, 100) },
    ];

    public static GearPumpSizes Read(SumInputs inputs) => new(
        (int)inputs["teeth"],
        inputs["tip-diameter"],
        inputs["centre-distance"],
        inputs["width"],
        inputs["pressure-angle"],
        inputs.Maybe("module") ?? 0,
        inputs["end-float"],
        inputs["float-share"],
        inputs["tip-clearance"],
        inputs.Maybe("root-diameter") ?? 0,
        inputs.Maybe("hub-diameter") ?? 0,
        inputs["bush-clearance"],
        inputs["bush-length"],
        inputs.Maybe("bush-diameter") ?? 0)
    {
        DrivenEndFloat = inputs.Maybe("driven-end-float"),
        MeasuredDisplacement = inputs.Maybe("displacement"),
    };

    public static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        if (inputs["bush-clearance"] > 0 != inputs["bush-length"] > 0)
            yield return new("bush-length", "one of bush-clearance and bush-length", "both or neither", "Give both, or leave both out.");
        if (Problem(Read(inputs).Fault) is { } problem)
            yield return problem;
    }

    /// <summary>What is wrong with two gears, in words.</summary>
    public static SumProblem? Problem(GearFault fault) => fault switch
    {
        GearFault.TipsApart => new("tip-diameter", "tips that do not reach into each other", "tip diameter above the centre distance", "Check the tip diameter and the centre distance."),
        GearFault.TipsTooDeep => new("tip-diameter", "tips that reach the other gear's hub", "tip diameter at most about one and a half centre distances", "Check the tip diameter and the centre distance."),
        GearFault.BaseBeyondCentres => new("module", "base circles larger than the centre distance", "module times teeth times the cosine of the pressure angle not above the centre distance", "Check module, pressure angle and centre distance."),
        GearFault.TipInsideBase => new("tip-diameter", "tips within the base circle", "tip diameter above module times teeth times the cosine of the pressure angle", "Check the tip diameter and the module."),
        _ => null,
    };

    private static SumProblem? Problem(GearPumpFault fault) => fault switch
    {
        GearPumpFault.None => null,
        GearPumpFault.TipsApart => Problem(GearFault.TipsApart),
        GearPumpFault.TipsTooDeep => Problem(GearFault.TipsTooDeep),
        GearPumpFault.BaseBeyondCentres => Problem(GearFault.BaseBeyondCentres),
        GearPumpFault.TipInsideBase => Problem(GearFault.TipInsideBase),
        GearPumpFault.BushTooSlack => new("bush-clearance", "a bush as slack as its spindle is thick", "bush-clearance below bush-diameter, or below hub-diameter where that is left out", "Check bush-clearance and bush-diameter."),
        _ => new("hub-diameter", "hub, roots and tips that do not follow each other outwards", "hub below root, root below tip diameter", "Check hub-diameter, bush-diameter and root-diameter."),
    };
}
