using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Oil;

/// <summary>The sum <c>viscosity</c>.</summary>
internal static class ViscositySum
{
    private static readonly string[] Points = ["first-temperature", "first-viscosity", "second-temperature", "second-viscosity"];

    public static Sum Description { get; } = new(Answer)
    {
        Name = "viscosity",
        Question = "How thick is an oil at a temperature, known by its grade or by two points?",
        Source = "ASTM D341-20; grades of SAE J300, ISO 3448, SAE J1966 and J1899; ASTM D1250 for the density",
        Inputs =
        [
            new("temperature", "T", "temperature of the oil", Measure.Temperature) { Allowed = Allowed.Between(ViscosityLine.LeastTemperature, ViscosityLine.GreatestTemperature) },
            new("grade", "", "grade: SAE 40, 15W-40, ISO VG 46, aviation 100", Measure.Name),
            new("first-temperature", "T_1", "temperature of the first point", Measure.Temperature) { Allowed = OnChart, Default = 313.15 },
            new("first-viscosity", "ν_1", "kinematic viscosity there", Measure.KinematicViscosity) { Allowed = Viscosities, IsOptional = true },
            new("second-temperature", "T_2", "temperature of the second point", Measure.Temperature) { Allowed = OnChart, Default = 373.15 },
            new("second-viscosity", "ν_2", "kinematic viscosity there", Measure.KinematicViscosity) { Allowed = Viscosities, IsOptional = true },
            new("density", "ρ_15", "density at 15 °C", Measure.Density) { Allowed = Allowed.Between(OilProperties.LeastDensity, OilProperties.GreatestDensity), Default = OilProperties.UsualDensity },
            new("shear", "S", "share of its viscosity that it keeps between fast surfaces; left out, 0.9 for a multigrade, else 1", Measure.Number) { Allowed = Allowed.Between(0.3, 1), IsOptional = true },
        ],
        Outputs =
        [
            new("kinematic", "ν", "kinematic viscosity", Measure.KinematicViscosity),
            new("dynamic", "μ", "dynamic viscosity", Measure.DynamicViscosity),
            new("sheared", "μ_s", "dynamic viscosity between fast surfaces", Measure.DynamicViscosity),
            new("density", "ρ", "density", Measure.Density),
            new("standard-uncertainty", "u", "standard uncertainty of an oil of that grade, as a share", Measure.Number),
        ],
        Examples = ["temperature=80°C grade=\"SAE 40\"", "temperature=80°C first-viscosity=140cSt second-viscosity=14.2cSt density=890kg/m3"],
        Together = Check,
    };

    private static Allowed OnChart => Allowed.Between(ViscosityLine.LeastTemperature, ViscosityLine.GreatestTemperature);

    private static Allowed Viscosities => Allowed.Between(ViscosityLine.LeastViscosity, ViscosityLine.GreatestViscosity);

    private static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        if (inputs.MaybeWord("grade") is { } grade)
        {
            if (Points.Any(inputs.IsGiven))
                yield return new("grade", "a grade and points", "one of the two", "Leave one out; two measured points are better than a grade.");
            else if (!EngineOil.TryGrade(grade, out _, out var nearest))
                yield return new("grade", grade, "a grade of SAE J300, ISO 3448 or of aviation", nearest.Count > 0 ? $"Did you mean {string.Join(" or ", nearest)}? Or give two points." : "Give two points instead.");
        }
        else if (inputs.Maybe("first-viscosity") is not { } first || inputs.Maybe("second-viscosity") is not { } second)
        {
            yield return new("grade", "neither a grade nor two points", "a grade, or the viscosity at two temperatures", "Name the grade, or give first-viscosity and second-viscosity with their temperatures.");
        }
        else if (ViscosityLine.Fault(inputs["first-temperature"], first, inputs["second-temperature"], second) is not ViscosityPointsFault.None and var fault)
        {
            yield return new("second-viscosity", fault == ViscosityPointsFault.SameTemperature ? "two points at one temperature" : "an oil that is not thinner where it is hotter", "two points, the hotter one thinner", "Check the figures and their units.");
        }
    }

    private static string Answer(SumInputs inputs, Written trace)
    {
        var oil = Oil(inputs, trace);
        var temperature = inputs["temperature"];
        var kinematic = oil.Line.At(temperature, trace);
        var density = OilProperties.Density(oil.DensityAt15, temperature, trace);
        var dynamic = trace.Line("μ", "dynamic viscosity", "ν × ρ", kinematic * density, Units.PascalSecond);
        trace.Given("S", "share of its viscosity that it keeps between fast surfaces", oil.ShearFactor, Units.None, oil.ShearIsAssumed ? "usual for a multigrade (common practice)" : "");
        trace.Line("μ_s", "dynamic viscosity between fast surfaces", "S × μ", oil.ShearFactor * dynamic, Units.PascalSecond);
        if (inputs.MaybeWord("grade") is not null)
            trace.Given("u", "standard uncertainty of an oil of that grade, as a share", oil.ViscosityUncertainty(temperature), Units.None, "limits of the grade, taken as rectangular");
        if (oil.Remark(temperature) is { } remark)
            trace.Caution(remark);
        if (kinematic < ViscosityLine.LeastViscosity)
            trace.Caution("The chart of ASTM D341 ends at 0.21 mm²/s; here it is stretched.");
        if (kinematic > ViscosityLine.GreatestViscosity)
            trace.Caution("The chart of ASTM D341 ends at 20,000,000 mm²/s; no oil flows here.");
        return inputs.MaybeWord("grade") is null ? "The viscosity lies on the line through the two points." : $"The viscosity is that of an oil in the middle of {oil.Name}.";
    }

    private static EngineOil Oil(SumInputs inputs, Written trace)
    {
        EngineOil? oil = null;
        if (inputs.MaybeWord("grade") is { } grade && EngineOil.TryGrade(grade, out oil, out _))
        {
            trace.Given("A", "start of the line", oil.Line.A, Units.None, $"an oil in the middle of {oil.Name}");
            trace.Given("B", "fall of the line", oil.Line.B, Units.None, $"an oil in the middle of {oil.Name}");
        }

        oil ??= new EngineOil("This oil", ViscosityLine.Through(inputs["first-temperature"], inputs["first-viscosity"], inputs["second-temperature"], inputs["second-viscosity"], trace), EngineOil.UsualColdest);
        oil = oil.WithDensity(inputs["density"]);
        return inputs.Maybe("shear") is { } shear ? oil.WithShearFactor(shear) : oil;
    }
}
