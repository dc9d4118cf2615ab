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

    [Theory]
    [InlineData("--viscosity", "40 cP", "go together")]
    [InlineData("--density", "870 kg/m3", "go together")]
    [InlineData("--viscosity", "40", "unit")]
    [InlineData("--speed", "-600 rev/min", "0 or more")]
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
