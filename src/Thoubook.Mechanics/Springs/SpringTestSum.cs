using Thoubook.Mechanics.Sums;

namespace Thoubook.Mechanics.Springs;

/// <summary>The sum <c>spring-test</c>.</summary>
internal static class SpringTestSum
{
    /// <summary>Loss of load at the fitted length from which springs are usually rejected.</summary>
    private const double UsualRejection = 0.1;

    public static Sum Description { get; } = new(Answer)
    {
        Name = "spring-test",
        Question = "What is the rate of the actual spring from its loads at two lengths, how far has it set, and what shim gives the wanted load?",
        Source = "Definition of the rate; two lengths, not the free length alone, are common practice",
        Inputs =
        [
            Size("first-length", "L_1", "one length"),
            Load("first-load", "F_1", "load there"),
            Size("second-length", "L_2", "another length"),
            Load("second-load", "F_2", "load there"),
            Size("free-length", "L_d", "free length by the drawing") with { IsOptional = true },
            Size("fitted-length", "L", "length as fitted") with { IsOptional = true },
            Load("wanted-load", "F_w", "load wanted at the fitted length") with { IsOptional = true },
            Load("load-uncertainty", "u_F", "standard uncertainty of each load") with { Default = 0 },
            new("length-uncertainty", "u_L", "standard uncertainty of each length", Measure.Length) { Allowed = Allowed.Between(0, 0.1), Default = 0 },
        ],
        Outputs =
        [
            new("rate", "R", "rate", Measure.Stiffness),
            new("free-length", "L_0", "free length that the two point to", Measure.Length),
            new("standard-uncertainty", "u_R", "standard uncertainty of the rate", Measure.Stiffness),
            new("set", "S", "set: what it has lost of its free length", Measure.Length),
            new("load", "F", "load at the fitted length", Measure.Force),
            new("shim", "t", "shim for the wanted load", Measure.Length),
        ],
        Examples = ["first-length=50mm first-load=150N second-length=40mm second-load=311N free-length=62mm fitted-length=44mm wanted-load=270N"],
        Together = Check,
    };

    private static IEnumerable<SumProblem> Check(SumInputs inputs)
    {
        if (inputs["first-length"] == inputs["second-length"])
            yield return new("second-length", "two loads at one length", "two lengths well apart", "Measure at a second length.");
        else if ((inputs["second-load"] - inputs["first-load"]) / (inputs["first-length"] - inputs["second-length"]) is not (> 0 and < double.PositiveInfinity))
            yield return new("second-load", "a spring that is not stronger where it is shorter", "the greater load at the shorter length", "Check which load belongs to which length.");
        if (inputs.Maybe("free-length") is { } free && free < Math.Max(inputs["first-length"], inputs["second-length"]))
            yield return new("free-length", "a free length shorter than a length at which the spring was loaded", "a free length at least as long as both lengths", "Check the lengths and the drawing.");
        if (inputs.IsGiven("wanted-load") && !inputs.IsGiven("fitted-length"))
            yield return new("fitted-length", "a wanted load without the length", "the length as fitted", "Give fitted-length too.");
    }

    private static string Answer(SumInputs inputs, Written trace)
    {
        var test = SpringTest.Of(inputs["first-length"], inputs["first-load"], inputs["second-length"], inputs["second-load"], trace);
        var (loads, lengths) = (inputs["load-uncertainty"], inputs["length-uncertainty"]);
        if (loads > 0 || lengths > 0)
        {
            trace.Given("u_F", "standard uncertainty of each load", loads, Units.Newton);
            trace.Given("u_L", "standard uncertainty of each length", lengths, Units.Metre);
            var (force, length) = (inputs["second-load"] - inputs["first-load"], inputs["first-length"] - inputs["second-length"]);
            trace.Line("u_R", "standard uncertainty of the rate", "R × sqrt(2 × (u_F / (F_2 − F_1))^2 + 2 × (u_L / (L_1 − L_2))^2)", test.Rate * Math.Sqrt((2 * Math.Pow(loads / force, 2)) + (2 * Math.Pow(lengths / length, 2))), Units.NewtonPerMetre, "JCGM 100:2008, 5.1.2");
        }

        if (inputs.Maybe("free-length") is { } drawn)
        {
            trace.Given("L_d", "free length by the drawing", drawn, Units.Metre);
            trace.Line("S", "set", "L_d − L_0", drawn - test.Free, Units.Metre);
        }

        if (inputs.Maybe("fitted-length") is not { } fitted)
            return "The rate is that between the two lengths.";
        trace.Given("L", "length as fitted", fitted, Units.Metre);
        var load = trace.Line("F", "load at the fitted length", "max(0, R × (L_0 − L))", test.LoadAt(fitted), Units.Newton);
        if (load == 0)
            trace.Caution("At the fitted length the spring is loose.");
        if (inputs.Maybe("wanted-load") is not { } wanted)
            return "The rate is that between the two lengths, and the load at the fitted length follows.";
        trace.Given("F_w", "load wanted", wanted, Units.Newton);
        var shim = trace.Line("t", "shim for the wanted load", "F_w / R − (L_0 − L)", test.ShimFor(wanted, fitted), Units.Metre);
        if (load < (1 - UsualRejection) * wanted)
            trace.Caution("It has lost more than a tenth of its load; such a spring is usually replaced, not shimmed (common practice).");
        return shim > 0 ? "That much shim brings the wanted load." : shim < 0 ? "The load is above what is wanted: that much must come out from under the spring." : "The load is as wanted.";
    }

    private static SumInput Size(string key, string symbol, string name) => new(key, symbol, name, Measure.Length) { Allowed = new(0, 3, Ends.Open) };

    private static SumInput Load(string key, string symbol, string name) => new(key, symbol, name, Measure.Force) { Allowed = Allowed.Between(0, 1e6) };
}
