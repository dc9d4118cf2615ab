using System.Text.Json;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Closing;

/// <summary>The plans that were timed apart from this code.</summary>
internal static class ComputedPlans
{
    public static IReadOnlyList<(string Id, Plan Plan)> All { get; } = Read();

    public static IReadOnlyList<Dictionary<string, string>> Table(string file)
    {
        var lines = File.ReadAllLines(In(file));
        var heads = lines[0].Split(',');
        return [.. lines.Skip(1).Where(l => l.Length > 0).Select(l => heads.Zip(l.Split(',')).ToDictionary(p => p.First, p => p.Second))];
    }

    private static string In(string file) => Path.Combine(AppContext.BaseDirectory, "reference", file);

    private static IReadOnlyList<(string Id, Plan Plan)> Read()
    {
        using var json = JsonDocument.Parse(File.ReadAllText(In("c08-graphs.json")));
        return [.. json.RootElement.GetProperty("graphs").EnumerateArray().Select(g => (
            g.GetProperty("id").GetString()!,
            Plan.Of(Bench.Record([.. g.GetProperty("tasks").EnumerateArray().Select(Step)]))))];
    }

    private static Step Step(JsonElement task) => new(new StepName(task.GetProperty("id").GetString()!))
    {
        Time = Bench.Q($"{task.GetProperty("duration_h").GetInt32()} h"),
        Cure = Bench.Q($"{task.GetProperty("wait_after_h").GetInt32()} h"),
        People = task.GetProperty("workers").GetInt32(),
        After = [.. Names(task, "predecessors").Select(p => new ComesAfter(new StepName(p), null))],
        In = [.. Names(task, "needs_open").Select(z => new SpaceName(z))],
        Closes = [.. Names(task, "closes").Select(z => new SpaceName(z))],
    };

    private static IEnumerable<string> Names(JsonElement task, string key) => task.GetProperty(key).EnumerateArray().Select(n => n.GetString()!);
}
