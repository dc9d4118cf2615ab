namespace Thoubook.Record.Closing;

/// <summary>How long the work takes with so many people: who waits for hands as well as for other steps. Waits and cures hold no one.</summary>
public sealed class Crew
{
    /// <summary>Up to so many steps the shortest time is found exactly.</summary>
    public const int ExactUpTo = 15;

    private const int MostVisited = 3_000_000;

    private readonly int _people;
    private readonly long[] _takes;
    private readonly int[] _holds;
    private readonly (int First, long Wait)[][] _before;
    private readonly int[][] _later;
    private readonly long[] _tail;
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private long _best = long.MaxValue;
    private long[] _starts = [];
    private int _visited;

    private Crew(Plan plan, IReadOnlyList<int> left, int people)
    {
        // Hands beyond these are lent for the step.
        _people = people;
        var at = left.Select((step, i) => (step, i)).ToDictionary(p => p.step, p => p.i);
        _takes = [.. left.Select(plan.Seconds)];
        _holds = [.. left.Select(i => Math.Min(people, plan.Steps[i].People))];
        _before = [.. left.Select(i => plan.EdgesBefore(i)
            .Select(e => (First: plan.At(e.First.Name), e.Wait))
            .Where(e => at.ContainsKey(e.First))
            .Select(e => (at[e.First], e.Wait)).ToArray())];
        _later = [.. left.Select(i => plan.Later(i).Where(at.ContainsKey).Select(l => at[l]).ToArray())];
        _tail = new long[left.Count];
        foreach (var i in plan.Order.Reverse().Where(at.ContainsKey).Select(i => at[i]))
        {
            _tail[i] = Math.Max(_tail[i], _takes[i]);
            foreach (var (first, wait) in _before[i])
                _tail[first] = Math.Max(_tail[first], _takes[first] + wait + _tail[i]);
        }
    }

    /// <summary>The work of a plan by so many people: refused where there is a circle or, unless a spare hand is lent, a step that holds more of them.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="people">How many there are all the time.</param>
    /// <param name="isLeft">Whether a step is still to be done; null: all are.</param>
    /// <param name="lent">Whether spare hands come for the steps that hold more.</param>
    public static Outcome<CrewTime> Of(Plan plan, int people, Func<Step, bool>? isLeft = null, bool lent = false)
    {
        if (people < 1)
            return new Problem("crew-people", "people", $"{people}", "One person at least does the work.", "Say how many there are.");
        if (plan.HasCircle)
            return new Problem("plan-circle", "steps", plan.Faults.First(f => f.Kind == PlanFaultKind.Circle).What, "No step may wait for itself.", "Take out one of these.");
        var left = Enumerable.Range(0, plan.Steps.Count).Where(i => isLeft?.Invoke(plan.Steps[i]) ?? true).ToList();
        var more = left.Where(i => plan.Steps[i].People > people && plan.Seconds(i) > 0).Select(i => plan.Steps[i]).ToList();
        if (more.Count > 0 && !lent)
            return new Problem("crew-too-small", "people", $"{people}", $"{more[0].Name} holds {more[0].People} people.", "Find a spare hand for it.");
        var crew = new Crew(plan, left, people);
        var isExact = crew.Solve();
        return new CrewTime(
            people,
            Schedule.Minutes(left.Count == 0 ? 0 : crew._best),
            isExact,
            [.. left.Select((step, i) => (plan.Steps[step].Name, Schedule.Minutes(crew._starts[i]))).OrderBy(s => s.Item2).Select(s => new CrewStart(s.Name, s.Item2))])
        {
            Lent = [.. more.Select(s => s.Name)],
        };
    }

    /// <summary>Whether the best that was found is proved to be the shortest.</summary>
    private bool Solve()
    {
        var n = _takes.Length;
        if (n == 0)
            return true;
        var shortest = Math.Max(_tail.Max(), Share());
        Try([.. _tail.Select(t => (double)t)]);
        var random = new Random(17);
        for (var times = Math.Clamp(6_000 / n, 2, 200); times > 0 && _best > shortest; times--)
            Try([.. _tail.Select(t => (t + 60) * (0.5 + random.NextDouble()))]);
        if (_best == shortest)
            return true;
        if (n > ExactUpTo)
            return false;
        Search(new CrewProfile(_people), new long[n], 0, 0, 0, shortest);
        return _visited < MostVisited || _best == shortest;
    }

    /// <summary>[s] All the hands' work shared out evenly.</summary>
    private long Share() => (_takes.Zip(_holds, (t, h) => t * h).Sum() + _people - 1) / _people;

    /// <summary>One step after the other, the most urgent of those that may come next, each as soon as hands are free.</summary>
    private void Try(double[] urgency)
    {
        var n = _takes.Length;
        var waits = _before.Select(b => b.Length).ToArray();
        var next = new PriorityQueue<int, double>();
        for (var i = 0; i < n; i++)
        {
            if (waits[i] == 0)
                next.Enqueue(i, -urgency[i]);
        }

        var profile = new CrewProfile(_people);
        var starts = new long[n];
        var length = 0L;
        while (next.TryDequeue(out var i, out _))
        {
            starts[i] = profile.Earliest(Soonest(i, starts), _takes[i], _holds[i]);
            profile.Take(starts[i], _takes[i], _holds[i]);
            length = Math.Max(length, starts[i] + _takes[i]);
            foreach (var later in _later[i])
            {
                if (--waits[later] == 0)
                    next.Enqueue(later, -urgency[later]);
            }
        }

        if (length < _best)
            (_best, _starts) = (length, starts);
    }

    /// <summary>
    /// Every order worth trying. A shortest plan in which no step could begin sooner comes about by setting its steps one by one in the order
    /// of their beginnings, so orders that go back in time are passed over; so are states met before and those that cannot beat the best.
    /// </summary>
    private void Search(CrewProfile profile, long[] starts, int set, long last, long length, long shortest)
    {
        if (++_visited >= MostVisited || _best == shortest)
            return;
        var n = _takes.Length;
        if (set == (1 << n) - 1)
        {
            if (length < _best)
                (_best, _starts) = (length, [.. starts]);
            return;
        }

        var soonest = new long[n];
        var next = new List<(int Step, long At)>();
        for (var i = 0; i < n; i++)
        {
            if ((set & (1 << i)) != 0)
                continue;
            var mayBe = true;
            foreach (var (first, wait) in _before[i])
            {
                mayBe &= (set & (1 << first)) != 0;
                soonest[i] = Math.Max(soonest[i], (set & (1 << first)) != 0 ? starts[first] + _takes[first] + wait : 0);
            }

            if (Math.Max(soonest[i], last) + _tail[i] >= _best)
                return;
            if (mayBe && profile.Earliest(soonest[i], _takes[i], _holds[i]) is var at && at >= last)
                next.Add((i, at));
        }

        if (!_seen.Add($"{set}:{string.Join(',', Enumerable.Range(0, n).Where(i => (set & (1 << i)) != 0).Select(i => starts[i]))}"))
            return;
        foreach (var (i, at) in next.OrderBy(c => c.At).ThenByDescending(c => _tail[c.Step]))
        {
            var after = profile.Copy();
            after.Take(at, _takes[i], _holds[i]);
            starts[i] = at;
            Search(after, starts, set | (1 << i), at, Math.Max(length, at + _takes[i]), shortest);
        }
    }

    private long Soonest(int i, long[] starts)
    {
        var at = 0L;
        foreach (var (first, wait) in _before[i])
            at = Math.Max(at, starts[first] + _takes[first] + wait);
        return at;
    }
}

/// <summary>How long so many people take.</summary>
/// <param name="People">How many.</param>
/// <param name="Length">[min] from the first beginning to the last end.</param>
/// <param name="IsShortest">Whether no order can be shorter; else it is a good one.</param>
/// <param name="Starts">When each step begins, in time.</param>
public sealed record CrewTime(int People, double Length, bool IsShortest, IReadOnlyList<CrewStart> Starts)
{
    /// <summary>The steps for which a spare hand is lent.</summary>
    public IReadOnlyList<StepName> Lent { get; init; } = [];
}

/// <summary>[min] When a step begins.</summary>
public sealed record CrewStart(StepName Step, double Minute);
