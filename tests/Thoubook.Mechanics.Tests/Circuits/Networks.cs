using System.Globalization;
using System.Text.Json;
using Thoubook.Mechanics.Circuits;

namespace Thoubook.Mechanics.Tests.Circuits;

/// <summary>The networks of reference and their pressures, computed independently.</summary>
internal sealed record Network(string Id, IReadOnlyList<CircuitNode> Nodes, IReadOnlyList<CircuitElement> Elements, IReadOnlyList<(double Rpm, double Viscosity, IReadOnlyDictionary<string, double> Pressures)> States)
{
    public const double Density = 870;

    public static IReadOnlyList<Network> Small { get; } = Read("c04-networks.json", "c04-network-pressures.csv");

    public static IReadOnlyList<Network> Large { get; } = Read("c04-large-networks.json", "c04-large-pressures.csv");

    public static OperatingPoint Point(double rpm, double viscosity) => new(rpm * Math.PI / 30, viscosity, Density);

    private static IReadOnlyList<Network> Read(string networks, string pressures)
    {
        var rows = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "reference", pressures)).Skip(1).Select(line => line.Split(',')).ToLookup(cells => cells[0]);
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", networks)));
        return [.. json.RootElement.GetProperty("networks").EnumerateArray().Select(n => Of(n, rows[n.GetProperty("id").GetString()!]))];
    }

    private static Network Of(JsonElement n, IEnumerable<string[]> rows)
    {
        var names = n.GetProperty("nodes").EnumerateArray().Select(node => node.GetString()!).ToList();
        var reservoir = n.GetProperty("reservoir").GetString()!;
        if (!names.Contains(reservoir))
            names.Insert(0, reservoir);
        return new(
            n.GetProperty("id").GetString()!,
            [.. names.Select(name => new CircuitNode(name, name == reservoir ? n.GetProperty("reservoir_pressure_Pa").GetDouble() : null))],
            [.. n.GetProperty("elements").EnumerateArray().Select(e => ElementOf(e, names))],
            [.. rows.GroupBy(r => (Rpm: Number(r[1]), Viscosity: Number(r[2]))).Select(g => (g.Key.Rpm, g.Key.Viscosity, (IReadOnlyDictionary<string, double>)g.ToDictionary(r => r[3], r => Number(r[4]))))]);
    }

    private static CircuitElement ElementOf(JsonElement e, List<string> nodes)
    {
        var (name, from, to) = (e.GetProperty("id").GetString()!, nodes.IndexOf(e.GetProperty("from").GetString()!), nodes.IndexOf(e.GetProperty("to").GetString()!));
        double Of(string key) => e.GetProperty(key).GetDouble();
        return e.GetProperty("type").GetString() switch
        {
            "pipe_laminar" => new LaminarPassage(name, from, to, Math.PI * Math.Pow(Of("d_m"), 4) / (128 * Of("L_m"))),
            "pipe_churchill" => new Pipe(name, from, to, Of("d_m"), Of("L_m"), Of("roughness_m")),
            "orifice" => new Orifice(name, from, to, Of("d_m"), Of("Cd")),
            "bearing" => new LaminarPassage(name, from, to, Of("lands") * Math.PI * Of("D_m") * Math.Pow(Of("c_m"), 3) * (1 + (1.5 * Of("eccentricity_ratio") * Of("eccentricity_ratio"))) / (12 * Of("land_m"))),
            "pump" => new Pump(name, from, to, Of("V_m3_per_rev"), Of("k_leak_m3")) { SpeedRatio = Of("speed_ratio") },
            "relief" => new ReliefValve(name, from, to, Of("d_seat_m"), Of("preload_N"), Of("spring_N_per_m"), Of("x_max_m"), Of("Cd")),
            var other => throw new InvalidOperationException($"No element of kind {other}."),
        };
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
