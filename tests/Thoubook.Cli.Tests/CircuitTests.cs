using System.Globalization;
using System.Text;
using System.Text.Json;
using Thoubook.Cli.Speaking;
using Thoubook.OutsideChecks;

namespace Thoubook.Cli.Tests;

/// <summary>A circuit solved from its file alone.</summary>
public sealed class CircuitTests : IDisposable
{
    private const string Hand = """
        circuit:
          oil: { grade: SAE 40 }
          nodes: { tank: { pressure: 0 psi } }
          elements:
            pump: { kind: pump, from: tank, to: gallery, displacement: 1e-5 m3 }
            way-1: { kind: laminar pipe, from: gallery, to: middle, bore: 5 mm, length: 1 m }
            way-2: { kind: laminar pipe, from: middle, to: tank, bore: 5 mm, length: 3 m }
            plug: { kind: jet, from: gallery, to: tank, bore: 3 mm, blanked: true }
          states: { hot idle: { speed: 600 rev/min, oil: 80 °C } }
        """;

    private readonly string _file = Path.Combine(Path.GetTempPath(), $"thoubook-circuit-{Guid.NewGuid():N}.yaml");

    public static TheoryData<string, string> Networks =>
    [
        .. new[] { "N1", "N2", "N3", "N4", "N5", "N6" }.Select(n => ("c04-networks.json", n)),
        .. new[] { "S80", "S150" }.Select(n => ("c04-large-networks.json", n)),
    ];

    public void Dispose() => File.Delete(_file);

    [Theory]
    [MemberData(nameof(Networks))]
    [Computed("independent solutions of oil networks in two formulations that agree to 3e-13; error below 1e-12 of the greatest pressure")]
    public void Circuit_OilNetworks_PressuresAndFlowsAsComputedApart(string file, string id)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Reference(file)));
        var network = document.RootElement.GetProperty("networks").EnumerateArray().Single(n => n.GetProperty("id").GetString() == id);
        File.WriteAllText(_file, Text(network));
        var pressures = Rows(file == "c04-networks.json" ? "c04-network-pressures.csv" : "c04-large-pressures.csv", id, "node", "pressure_Pa");
        var flows = file == "c04-networks.json" ? Rows("c04-network-flows.csv", id, "element", "flow_m3_s") : null;
        Assert.Equal(flows is null ? 8 : 16, pressures.Count);
        foreach (var ((speed, viscosity), nodes) in pressures)
        {
            var answer = Spoken.Here(null, "circuit", _file, "--speed", $"{speed} rev/min", "--viscosity", $"{viscosity} Pa s", "--density", "870 kg/m3", "--json").Is(ExitStatus.Good).Json;

            // What is asked of a solver: within a millionth of the greatest.
            var tolerance = 1e-6 * nodes.Values.Max(Math.Abs);
            var (node, pressure) = nodes.MaxBy(n => Math.Abs(n.Value - Of("nodes", n.Key)));
            Outside.Check($"oil network {id} at {speed} rev/min and {viscosity} Pa s: the pressure that differs most, by the command", pressure, Of("nodes", node), tolerance);
            if (flows is null)
                continue;
            var ofState = flows[(speed, viscosity)];
            tolerance = 1e-6 * ofState.Values.Max(Math.Abs);
            var (element, flow) = ofState.MaxBy(e => Math.Abs(e.Value - Of("elements", e.Key)));
            Outside.Check($"oil network {id} at {speed} rev/min and {viscosity} Pa s: the flow that differs most, by the command", flow, Of("elements", element), tolerance);

            double Of(string group, string name) => answer.GetProperty(group).GetProperty(name).GetDouble();
        }
    }

    /// <summary>A pump and two laminar pipes one after the other: Hagen and Poiseuille by hand.</summary>
    [Fact]
    [Computed("by hand from the law of Hagen and Poiseuille, Q = π d⁴ dp/(128 μ L)")]
    public void Circuit_ByHand()
    {
        File.WriteAllText(_file, Hand);
        var answer = Spoken.Here(null, "circuit", _file, "--speed", "600 rev/min", "--viscosity", "40 cP", "--density", "870 kg/m3", "--json").Is(ExitStatus.Good).Json;

        const double Flow = 1e-5 * 10;
        const double PerMetre = 128 * 0.04 * Flow / (Math.PI * 0.005 * 0.005 * 0.005 * 0.005);
        Outside.CheckRelative("pressure before 4 m of pipe", 4 * PerMetre, answer.GetProperty("nodes").GetProperty("gallery").GetDouble(), 1e-9);
        Outside.CheckRelative("pressure before the last 3 m", 3 * PerMetre, answer.GetProperty("nodes").GetProperty("middle").GetDouble(), 1e-9);
        Assert.Equal(0, answer.GetProperty("nodes").GetProperty("tank").GetDouble());
        Assert.Equal(Flow, answer.GetProperty("elements").GetProperty("way-2").GetDouble(), Flow * 1e-9);
        Assert.Equal(0, answer.GetProperty("elements").GetProperty("plug").GetDouble());
    }

    [Fact]
    public void Circuit_WithoutAPoint_RunsAtItsFirstState()
    {
        File.WriteAllText(_file, Hand);
        var first = Spoken.Here(null, "circuit", _file, "--json").Is(ExitStatus.Good).Json;
        var same = Spoken.Here(null, "circuit", _file, "--speed", "600 rev/min", "--oil-temp", "80 °C", "--json").Is(ExitStatus.Good).Json;
        var colder = Spoken.Here(null, "circuit", _file, "--oil-temp", "20 °C", "--json").Is(ExitStatus.Good).Json;

        Assert.Equal(Gallery(first), Gallery(same));
        Assert.True(Gallery(colder) > 5 * Gallery(first));
        Assert.Contains("middle", Spoken.Here(null, "circuit", _file).Is(ExitStatus.Good).Out, StringComparison.Ordinal);

        static double Gallery(JsonElement answer) => answer.GetProperty("nodes").GetProperty("gallery").GetDouble();
    }

    [Theory]
    [InlineData("length: 3 m", "length: -3 m", "circuit.yaml(7,")]
    [InlineData("length: 3 m", "lenght: 3 m", "Did you mean length?")]
    [InlineData("nodes: { tank: { pressure: 0 psi } }", "nodes: {}", "fixed pressure")]
    [InlineData("circuit:", "circuits:", "circuit:")]
    public void Circuit_Wrong_IsRefusedInWords(string good, string wrong, string says)
    {
        File.WriteAllText(_file, Hand.Replace(good, wrong, StringComparison.Ordinal));
        var spoken = Spoken.Here(null, "circuit", _file).Is(ExitStatus.BadInput);
        Assert.Contains(says, spoken.Error.Replace(Path.GetFileName(_file), "circuit.yaml", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    /// <summary>Every kind of circuit that cannot be solved, at the line of the element or node that it is about.</summary>
    [Theory]
    [InlineData("    lost: { kind: jet, from: nowhere, to: elsewhere, bore: 3 mm }", "circuit.yaml(9,30): circuit, elements, lost, from: nowhere, elsewhere are joined to each other and to no reservoir")]
    [InlineData("    more: { kind: pump, from: tank, to: dead, displacement: 1e-5 m3 }", "circuit.yaml(9,11): circuit, elements, more: more delivers to dead, which no other element in use meets")]
    [InlineData("    more: { kind: pump, from: dry, to: gallery, displacement: 1e-5 m3 }", "circuit.yaml(9,11): circuit, elements, more: more draws from dry, which no other element in use meets")]
    [InlineData("    more: { kind: pump, from: tank, to: dead, displacement: 1e-5 m3 }\n    eats: { kind: consumer, from: dead, to: tank, flow: 1 l/min }", "circuit.yaml(9,11): circuit, elements, more: more delivers to dead, where oil cannot leave")]
    [InlineData("    more: { kind: pump, from: tank, to: between, displacement: 1e-5 m3 }\n    less: { kind: pump, from: between, to: gallery, displacement: 1e-6 m3 }", "circuit.yaml(9,11): circuit, elements, more: Between more and less, at between, nothing takes up")]
    [InlineData("    more: { kind: pump, from: dry, to: gallery, displacement: 1e-5 m3 }\n    stop: { kind: disc valve, from: dry, to: tank, seat: 10 mm, cracking: 2 bar, spring: 4 N/mm, lift: 3 mm }", "circuit.yaml(9,11): circuit, elements, more: more draws from dry, where oil cannot come")]
    [InlineData("    stop: { kind: disc valve, from: dry, to: tank, seat: 10 mm, cracking: 2 bar, spring: 4 N/mm, lift: 3 mm }\n    eats: { kind: consumer, from: dry, to: tank, flow: 1 l/min }", "circuit.yaml(10,11): circuit, elements, eats: eats takes oil at dry, where no oil can come")]
    [InlineData("    gears: { kind: gear pump, from: tank, to: gallery, teeth: 11, tip-diameter: 40 mm, centre-distance: 20 mm, width: 25 mm, end-float: 0.1 mm, hub-diameter: 15 mm }", "circuit.yaml(9,81): circuit, elements, gears, tip-diameter: found tips too deep; Gears that mesh")]
    [InlineData("    gears: { kind: gear pump, from: tank, to: gallery, teeth: 11, tip-diameter: 40 mm, centre-distance: 34 mm, width: 25 mm, end-float: 0.1 mm, root-diameter: 30 mm, hub-diameter: 15 mm, module: 6 mm }", "circuit.yaml(9,105): circuit, elements, gears, centre-distance: found base beyond centres; Gears that mesh")]
    [InlineData("    big: { kind: hole-fed bearing, from: gallery, to: tank, diameter: 50 mm, clearance: 0.1 mm, width: 20 mm, hole: 15.5 mm }", "circuit.yaml(9,117): circuit, elements, big, hole: found a hole wider than three quarters")]
    public void Circuit_Insoluble_IsNamedAtItsLine(string lines, string says)
    {
        File.WriteAllText(_file, Hand.Replace("  states:", lines + "\n  states:", StringComparison.Ordinal));
        var spoken = Spoken.Here(null, "circuit", _file).Is(ExitStatus.BadInput);
        Assert.Contains(says, spoken.Error.Replace(Path.GetFileName(_file), "circuit.yaml", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("  nodes: { tank: { pressure: 0 psi } }", "  nodes: { tank: {} }", "circuit.yaml(3,10): circuit, nodes: No node has a fixed pressure")]
    [InlineData("  nodes: { tank: { pressure: 0 psi } }", "  nodes: { tank: { pressure: 0 psi }, alone: { height: 2 in } }", null)]
    [InlineData("  oil: { grade: SAE 40 }\n", "", "circuit.yaml(2,3): circuit, oil: found nothing; The circuit does not say which oil it runs on")]
    [InlineData("{ grade: SAE 40 }", "{ grade: SAE 41 }", "circuit.yaml(2,17): circuit, oil, grade: found SAE 41")]
    public void Circuit_OilOrReservoirLeftOut_IsNamedAtItsLine(string good, string wrong, string? says)
    {
        File.WriteAllText(_file, Hand.Replace(good, wrong, StringComparison.Ordinal));
        var spoken = Spoken.Here(null, "circuit", _file);
        spoken.Is(says is null ? ExitStatus.Good : ExitStatus.BadInput);
        Assert.Contains(says ?? "", spoken.Error.Replace(Path.GetFileName(_file), "circuit.yaml", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    /// <summary>A circuit that is half drawn is taken in, and what is wrong with it is said.</summary>
    [Fact]
    public void Import_OfACircuitThatCannotBeSolved_SaysWhere()
    {
        using var bench = new Bench();
        File.WriteAllText(_file, $"engine: {{ name: {Bench.Engine}, purpose: stand-run }}\n" + Hand.Replace("  states:", "    more: { kind: pump, from: tank, to: dead, displacement: 1e-5 m3 }\n  states:", StringComparison.Ordinal));
        var name = Path.GetFileName(_file);
        var says = $"Caution: The circuit cannot be solved as it is. {name}(10,11): circuit, elements, more: more delivers to dead";
        Assert.Contains(says, bench.Says("import", _file, "--dry-run").Is(ExitStatus.Good).Error, StringComparison.Ordinal);
        Assert.Contains(says, bench.Says("import", _file).Is(ExitStatus.Good).Error, StringComparison.Ordinal);
        Assert.Contains("dead", bench.Says("export", Bench.Engine).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--viscosity", "1e9 cP", "100000 cP")]
    [InlineData("--viscosity", "0 cP", "0.1 cP")]
    [InlineData("--density", "8.7 kg/m3", "600 kg/m³")]
    [InlineData("--oil-temp", "900 °C", "200 °C")]
    [InlineData("--speed", "1e6 rev/min", "20000 rev/min")]
    public void Circuit_AskedBeyondAllOil_IsRefusedWithWhatIsAllowed(string option, string value, string allowed)
    {
        File.WriteAllText(_file, Hand);
        string[] point = option is "--viscosity" ? ["--density", "870 kg/m3"] : option is "--density" ? ["--viscosity", "40 cP"] : [];
        var error = Spoken.Here(null, ["circuit", _file, option, value, .. point]).Is(ExitStatus.BadInput).Error;
        Assert.Contains($"{option[2..]}: found {value}", error, StringComparison.Ordinal);
        Assert.Contains(allowed, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--viscosity", "40 cP", "go together")]
    [InlineData("--density", "870 kg/m3", "go together")]
    [InlineData("--viscosity", "40", "unit")]
    [InlineData("--speed", "-600 rev/min", "0 rev/min or more")]
    [InlineData("--speed", "600 psi", "pressure")]
    public void Circuit_AskedWrongly_IsRefused(string option, string value, string says)
    {
        File.WriteAllText(_file, Hand);
        Assert.Contains(says, Spoken.Here(null, "circuit", _file, option, value).Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    private static string Text(JsonElement network)
    {
        var text = new StringBuilder("circuit:\n");
        var reservoir = network.GetProperty("reservoir").GetString();
        text.Append(CultureInfo.InvariantCulture, $"  nodes: {{ {reservoir}: {{ pressure: {network.GetProperty("reservoir_pressure_Pa").GetRawText()} Pa }} }}\n  elements:\n");
        foreach (var element in network.GetProperty("elements").EnumerateArray())
        {
            string Of(string key) => element.GetProperty(key).GetRawText();
            var sizes = element.GetProperty("type").GetString() switch
            {
                "pipe_laminar" => $"kind: laminar pipe, bore: {Of("d_m")} m, length: {Of("L_m")} m",
                "pipe_churchill" => $"kind: pipe, bore: {Of("d_m")} m, length: {Of("L_m")} m, roughness: {Of("roughness_m")} m",
                "orifice" => $"kind: jet, bore: {Of("d_m")} m, discharge: {Of("Cd")}",
                "bearing" => $"kind: grooved bearing, diameter: {Of("D_m")} m, clearance: {(2 * element.GetProperty("c_m").GetDouble()).ToString("R", CultureInfo.InvariantCulture)} m, land: {Of("land_m")} m, lands: {Of("lands")}, eccentricity: {Of("eccentricity_ratio")}, film-rise: 0 K",
                "pump" => $"kind: pump, displacement: {Of("V_m3_per_rev")} m3, leak: {Of("k_leak_m3")} m3, speed-ratio: {Of("speed_ratio")}",
                "relief" => $"kind: disc valve, seat: {Of("d_seat_m")} m, preload: {Of("preload_N")} N, spring: {Of("spring_N_per_m")} N/m, lift: {Of("x_max_m")} m, discharge: {Of("Cd")}",
                var other => throw new InvalidOperationException(other),
            };
            text.Append(CultureInfo.InvariantCulture, $"    {element.GetProperty("id").GetString()}: {{ from: {element.GetProperty("from").GetString()}, to: {element.GetProperty("to").GetString()}, {sizes} }}\n");
        }

        return text.ToString();
    }

    /// <summary>Values of one network by state, then by name.</summary>
    private static Dictionary<(string Speed, string Viscosity), Dictionary<string, double>> Rows(string file, string id, string name, string value)
    {
        var lines = File.ReadAllLines(Reference(file));
        var heads = lines[0].Split(',');
        int Column(string head) => Array.IndexOf(heads, head);
        return lines.Skip(1).Select(l => l.Split(','))
            .Where(c => c[0] == id)
            .GroupBy(c => (c[Column("engine_speed_rpm")], c[Column("viscosity_Pa_s")]))
            .ToDictionary(g => g.Key, g => g.ToDictionary(c => c[Column(name)], c => double.Parse(c[Column(value)], CultureInfo.InvariantCulture)));
    }

    private static string Reference(string file)
    {
        var at = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(at, "thoubook.slnx")))
            at = Path.GetDirectoryName(at)!;
        return Path.Combine(at, "tests", "reference", file);
    }
}
