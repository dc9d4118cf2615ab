using System.Globalization;
using Thoubook.Cli.Speaking;
using Thoubook.OutsideChecks;

namespace Thoubook.Cli.Tests;

/// <summary>The times of a plan from its file alone.</summary>
public sealed class CloseupPlanTests : IDisposable
{
    private const string Hand = """
        steps:
          A1: { time: 4 h, in: [Z1] }
          A2: { time: 6 h }
          A3: { time: 4 h, in: [Z2] }
          A4: { time: 4 h, cure: 12 h, closes: [Z1] }
          A5: { time: 6 h, after: [A1] }
          A6: { time: 2 h, after: [A3], closes: [Z2] }
          A7: { time: 5 h, after: [A6] }
          A8: { time: 2 h, cure: 4 h, after: [A3, A5, A7], closes: [Z3] }
        """;

    private readonly string _file = Path.Combine(Path.GetTempPath(), $"thoubook-plan-{Guid.NewGuid():N}.yaml");

    public void Dispose() => File.Delete(_file);

    [Fact]
    [Computed("A plan timed apart from this code: critical path by two formulations, times of one and two people by branch and bound and by constraint programming; whole hours, exact")]
    public void Plan_TimesAsComputedApart()
    {
        File.WriteAllText(_file, Hand);
        var answer = Spoken.Here(null, "closeup", "plan", _file, "--json").Is(ExitStatus.Good).Json;
        var steps = answer.GetProperty("steps").EnumerateArray().ToDictionary(s => s.GetProperty("name").GetString()!);
        (string Property, string Column)[] columns = [("earliestStart", "earliest_start_h"), ("earliestFinish", "earliest_finish_h"), ("latestStart", "latest_start_h"), ("latestFinish", "latest_finish_h"), ("totalFloat", "total_float_h"), ("freeFloat", "free_float_h")];
        foreach (var row in Rows("c08-cpm.csv").Where(r => r["graph_id"] == "S1"))
        {
            foreach (var (property, column) in columns)
                Outside.Check($"{property} of {row["task"]} in plan S1, by the command [min]", 60 * Number(row[column]), steps[row["task"]].GetProperty(property).GetDouble(), 0);
        }

        var whole = Rows("c08-makespan.csv").Single(r => r["graph_id"] == "S1");
        Outside.Check("time of plan S1, by the command [min]", 60 * Number(whole["makespan_unlimited_no_windows_h"]), answer.GetProperty("makespan").GetDouble(), 0);
        foreach (var (people, column) in new[] { ("1", "makespan_1_worker_h"), ("2", "makespan_2_workers_h") })
        {
            var crew = Spoken.Here(null, "closeup", "plan", _file, "--people", people, "--json").Is(ExitStatus.Good).Json;
            Assert.True(crew.GetProperty("isShortest").GetBoolean());
            Outside.Check($"time of plan S1 with {people}, by the command [min]", 60 * Number(whole[column]), crew.GetProperty("makespan").GetDouble(), 0);
        }
    }

    [Fact]
    public void Plan_InWords()
    {
        File.WriteAllText(_file, Hand);
        var said = Spoken.Here(null, "closeup", "plan", _file, "--people", "2").Is(ExitStatus.Good).Out;
        Assert.Contains("With as many people as it takes: 780 min.", said, StringComparison.Ordinal);
        Assert.Contains("With 2: 1020 min, and no order is shorter.", said, StringComparison.Ordinal);
        Assert.Contains("Look at: A2 has nothing to do with any other step", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("after: [A1]", "after: [A1, A8]", "A8 comes before A5")]
    [InlineData("after: [A1]", "after: [A0]", "plan.yaml(6,")]
    [InlineData("A2: { time: 6 h }", "A2: { time: 6 h, people: 3 }", "A2 holds 3 people")]
    [InlineData("closes: [Z1]", "closes: [Z1], in: [Z1]", "A4 closes Z1 and lies in it")]
    [InlineData("steps:", "stages:", "steps:")]
    public void Plan_Wrong_IsRefusedInWords(string good, string wrong, string says)
    {
        File.WriteAllText(_file, Hand.Replace(good, wrong, StringComparison.Ordinal));
        var spoken = Spoken.Here(null, "closeup", "plan", _file, "--people", "2").Is(ExitStatus.BadInput);
        Assert.Contains(says, spoken.Error.Replace(Path.GetFileName(_file), "plan.yaml", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("1.5")]
    [InlineData("two")]
    public void Plan_PeopleThatAreNone_AreRefused(string people)
    {
        File.WriteAllText(_file, Hand);
        Assert.Contains("whole number of people", Spoken.Here(null, "closeup", "plan", _file, "--people", people).Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static List<Dictionary<string, string>> Rows(string file)
    {
        var lines = File.ReadAllLines(Reference(file));
        return [.. lines.Skip(1).Where(l => l.Length > 0).Select(l => lines[0].Split(',').Zip(l.Split(',')).ToDictionary(p => p.First, p => p.Second))];
    }

    private static string Reference(string file)
    {
        var at = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(at, "thoubook.slnx")))
            at = Path.GetDirectoryName(at)!;
        return Path.Combine(at, "tests", "reference", file);
    }
}
