using System.Globalization;
using CsCheck;
using Thoubook.Record.Closing;

namespace Thoubook.Record.Tests.Closing;

public sealed class ScheduleTests
{
    [Fact]
    [Computed("Six plans timed apart from this code: critical path by two formulations, whole hours, exact")]
    public void Times_AreThoseComputedApart()
    {
        foreach (var (id, plan) in ComputedPlans.All)
        {
            var schedule = Schedule.Of(plan)!;
            foreach (var row in ComputedPlans.Table("c08-cpm.csv").Where(r => r["graph_id"] == id))
            {
                var times = schedule.Of(new StepName(row["task"]));
                Check(row, "earliest_start_h", "earliest start", times.EarliestStart);
                Check(row, "earliest_finish_h", "earliest finish", times.EarliestFinish);
                Check(row, "latest_start_h", "latest start", times.LatestStart);
                Check(row, "latest_finish_h", "latest finish", times.LatestFinish);
                Check(row, "total_float_h", "total float", times.TotalFloat);
                Check(row, "free_float_h", "free float", times.FreeFloat);
                Assert.Equal(row["critical"] == "true", times.IsCritical);
            }
        }
    }

    [Fact]
    [Computed("Six plans timed apart from this code: branch and bound and constraint programming, both proved, whole hours, exact")]
    public void ShortestTimes_AreThoseComputedApart()
    {
        var rows = ComputedPlans.Table("c08-makespan.csv").ToDictionary(r => r["graph_id"]);
        foreach (var (id, plan) in ComputedPlans.All)
        {
            var row = rows[id];
            Check(row, "makespan_unlimited_no_windows_h", $"time of plan {id}, people enough", Schedule.Of(plan)!.Length);
            foreach (var people in new[] { 1, 2 })
            {
                var said = row[$"makespan_{people}_worker{(people > 1 ? "s" : "")}_h"];
                if (!Crew.Of(plan, people).IsOk(out var time, out var problems))
                {
                    Outside.CheckWord($"plan {id} with {people}", said, "infeasible");
                    Assert.Equal("crew-too-small", problems[0].Code);
                    continue;
                }

                Assert.True(time.IsShortest);
                Outside.Check($"shortest time of plan {id} with {people} [h]", Hours(said), time.Length / 60, 0);
                Keeps(plan, time);
            }
        }
    }

    [Fact]
    public void MoreThanFifteenSteps_TimeIsGoodAndBreaksNothing()
    {
        var steps = Enumerable.Range(0, 60).Select(i => Bench.Step($"s{i}") with
        {
            Time = Bench.Q($"{5 + (i * 7 % 31)} min"),
            People = i % 9 == 0 ? 2 : 1,
            After = i < 4 ? [] : Bench.After($"s{i - 4}", $"s{i / 2}"),
        });
        var plan = Plan.Of(Bench.Record([.. steps]));
        Assert.True(Crew.Of(plan, 2).IsOk(out var time, out _));
        Keeps(plan, time);
        var work = plan.Steps.Sum(s => s.Seconds * s.People) / 60.0 / 2;
        Assert.InRange(time.Length, Math.Max(work, Schedule.Of(plan)!.Length), 1.1 * Math.Max(work, Schedule.Of(plan)!.Length));
    }

    /// <summary>Orders of a few steps, each tried: none may be shorter than what is said to be the shortest.</summary>
    [Fact]
    public void ShortestTime_NoOrderOfFewStepsIsShorter()
    {
        Gen.Select(Gen.Int[1, 4].Array[5], Gen.Int[1, 2].Array[5], Gen.Int[0, 2].Array[5], Gen.Bool.Array[10]).Sample((takes, people, cures, after) =>
        {
            var pairs = Enumerable.Range(0, 5).SelectMany(i => Enumerable.Range(0, i).Select(j => (i, j))).ToList();
            var steps = Enumerable.Range(0, 5).Select(i => Bench.Step($"s{i}") with
            {
                Time = Bench.Q($"{takes[i]} min"),
                Cure = Bench.Q($"{cures[i]} min"),
                People = people[i],
                After = Bench.After([.. pairs.Where((p, k) => p.i == i && after[k]).Select(p => $"s{p.j}")]),
            });
            var plan = Plan.Of(Bench.Record([.. steps]));
            Assert.True(Crew.Of(plan, 2).IsOk(out var time, out _));
            Keeps(plan, time);
            Assert.Equal(ByTrying(plan), time.Length);
        }, iter: 30);
    }

    /// <summary>[min] By moving through time minute by minute and trying every choice of what begins.</summary>
    private static double ByTrying(Plan plan)
    {
        var n = plan.Steps.Count;
        var seen = new Dictionary<string, double>();
        var place = plan.Steps.Select((s, i) => (s.Name, i)).ToDictionary(p => p.Name, p => p.i);
        var before = plan.Steps.Select(s => plan.Before(s.Name).Select(e => (First: place[e.First.Name], Minutes: (e.First.Seconds + e.Wait) / 60.0)).ToArray()).ToArray();
        return From(0, [.. Enumerable.Repeat(-1, n)]);

        double From(int minute, int[] starts)
        {
            if (starts.All(s => s >= 0))
                return Enumerable.Range(0, n).Max(i => starts[i] + (plan.Steps[i].Seconds / 60.0));
            var key = $"{minute}:{string.Join(',', starts)}";
            if (seen.TryGetValue(key, out var known))
                return known;
            // Four steps of four minutes and two of cure, one after the other, end at 24: nothing need begin later.
            if (minute > 24)
                return double.MaxValue;
            var best = double.MaxValue;
            var may = Enumerable.Range(0, n).Where(i => starts[i] < 0 && Array.TrueForAll(before[i], e => starts[e.First] >= 0 && starts[e.First] + e.Minutes <= minute)).ToList();
            var busy = Enumerable.Range(0, n).Where(i => starts[i] >= 0 && starts[i] + (plan.Steps[i].Seconds / 60.0) > minute).Sum(i => plan.Steps[i].People);
            for (var choice = 0; choice < 1 << may.Count; choice++)
            {
                var begin = may.Where((_, k) => (choice & (1 << k)) != 0).ToList();
                if (busy + begin.Sum(i => plan.Steps[i].People) > 2)
                    continue;
                var after = starts.ToArray();
                begin.ForEach(i => after[i] = minute);
                best = Math.Min(best, From(minute + 1, after));
            }

            return seen[key] = best;
        }
    }

    private static void Keeps(Plan plan, CrewTime time)
    {
        var at = time.Starts.ToDictionary(s => s.Step, s => s.Minute);
        foreach (var edge in plan.Edges)
            Assert.True(at[edge.First.Name] + ((edge.First.Seconds + edge.Wait) / 60.0) <= at[edge.Then.Name] + 1e-9, edge.Why);
        foreach (var moment in at.Values)
            Assert.True(plan.Steps.Where(s => at[s.Name] <= moment && moment < at[s.Name] + (s.Seconds / 60.0)).Sum(s => s.People) <= time.People);
        Assert.Equal(time.Length, plan.Steps.Max(s => at[s.Name] + (s.Seconds / 60.0)), 9);
    }

    private static void Check(Dictionary<string, string> row, string column, string what, double minutes) =>
        Outside.Check(row.TryGetValue("task", out var task) ? $"{what} of {task} in plan {row["graph_id"]} [h]" : $"{what} [h]", Hours(row[column]), minutes / 60, 0);

    private static double Hours(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
