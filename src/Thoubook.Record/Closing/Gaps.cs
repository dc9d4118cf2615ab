namespace Thoubook.Record.Closing;

/// <summary>For each step, part, joint and hold point, what is wanting about it by the facts; null where it is as it should be.</summary>
internal sealed class Gaps
{
    private readonly Plan _plan;
    private readonly EngineRecord _record;
    private readonly CloseUpTerms _terms;
    private readonly Dictionary<JointName, Joint> _joints;
    private readonly ILookup<PartName, int> _placing;
    private readonly ILookup<StepName, Signature> _signatures;
    private readonly ILookup<(StepName, string), Accepted> _accepted;
    private readonly Dictionary<WorkItem, Fact> _covered = [];
    private readonly ILookup<JointName, Departure> _ofJoints;
    private readonly ILookup<PieceTag, Departure> _ofPieces;
    private readonly Dictionary<JointName, JointStage?> _stages = [];
    private readonly Want?[] _steps;

    public Gaps(Plan plan, CloseUpTerms terms)
    {
        (_plan, _record, _terms) = (plan, plan.Record, terms);
        _joints = _record.Joints.ToDictionary(j => j.Name);
        _placing = plan.Steps.SelectMany((s, i) => s.Places.Select(p => (p, i))).ToLookup(p => p.p, p => p.i);
        _signatures = _record.Signatures.ToLookup(s => s.Step);
        _accepted = _record.Acceptances.ToLookup(a => (a.Step, a.Hold));
        var departures = _record.Departures.Where(d => d.StandsFor(_record.Engine.Purpose) && Standing.Of(d, _record).Stands).ToList();
        _ofJoints = departures.Where(d => d.Joint is not null).ToLookup(d => d.Joint!.Value);
        _ofPieces = departures.Where(d => d.Piece is not null).ToLookup(d => d.Piece!.Value);
        foreach (var departure in departures)
        {
            if (departure.Item is { } item)
                _covered[item] = departure;
        }

        Debts = [.. _record.Debts.Where(d => _record.Index.StrikeOutOf(d.Id) is null && _record.Index.SettlementOf(d.Id) is null)];
        foreach (var debt in Debts)
        {
            if (debt.Item is { } item)
                _covered.TryAdd(item, debt);
        }

        First = [.. plan.Steps.Select(s => Looks(s).Find(l => !l.SecondLook))];
        _steps = [.. plan.Steps.Select(Signed)];
    }

    /// <summary>What is still owed.</summary>
    public IReadOnlyList<Owed> Debts { get; }

    /// <summary>The standing first signature of each step.</summary>
    public IReadOnlyList<Signature?> First { get; }

    public bool IsDone(int step) => _steps[step] is null;

    /// <summary>
    /// The departure or the debt that lets a thing be closed over; null where nothing does. A departure that belongs to a joint covers its locking,
    /// one of a piece which piece it is and in what state; only what is deferred may be left out altogether.
    /// </summary>
    public Fact? Cover(Want want)
    {
        if (_covered.TryGetValue(want.Item, out var cover))
            return cover;
        return want.Item.Kind switch
        {
            ItemKind.Joint => _ofJoints[new JointName(want.Item.Name)].FirstOrDefault(d => want.Kind == WantKind.Locking || d.Kind == DepartureKind.BlankedOrDeferred),
            ItemKind.Part when PieceIn(PartName.Of(want.Item.Name)) is { } piece => _ofPieces[piece].FirstOrDefault(d => want.Kind != WantKind.Part || d.Kind == DepartureKind.BlankedOrDeferred),
            _ => null,
        };
    }

    public Want? Step(int step) => _steps[step];

    public Want? Part(PartName part)
    {
        var item = WorkItem.Of(part);
        var index = _record.Index;
        var (chosen, placed) = (index.ChosenFor(part)?.Piece, index.PlacedIn(part)?.Piece);
        if (!_plan.IsFitted(part))
            return placed is null ? Stead(part, item) : new(WantKind.WrongPiece, item, $"{placed} is in {part}, which is not to be fitted");
        if (placed is null && (chosen is not null || !_placing[part].Any(i => First[i] is not null)))
            return new(WantKind.Part, item, chosen is null ? $"{part} is not in place" : $"{chosen} is chosen for {part} and not in place");
        if (placed is null)
            return null;
        if (chosen is not null && chosen != placed)
            return new(WantKind.WrongPiece, item, $"{placed} is in {part}, and {chosen} is chosen for it");
        return State(part, placed.Value, item);
    }

    /// <summary>What is wanting of that which is fitted in the stead of a part that is blanked off or deferred.</summary>
    private Want? Stead(PartName part, WorkItem item)
    {
        if (_record.Index.Part(part) is not { InItsStead: { } stead } place)
            return null;
        var intent = place.IntentOn(_record.Engine);
        if (intent is not (Parts.PartIntent.Blanked or Parts.PartIntent.Deferred))
            return null;
        if (PartName.TryRead(stead, out var other, out _) && _record.Index.Part(other) is not null)
        {
            if (!_plan.IsFitted(other))
                return new(WantKind.Part, item, $"{part} is {intent.Word()}, and {other} in its stead is itself not to be fitted");
            return Part(other) is { } want ? new(want.Kind, item, $"{part} is {intent.Word()}, and in its stead {want.Why}") : null;
        }

        // In words: a step that puts it there says that it is there.
        var placing = _placing[part].Where(i => _plan.IsCalledFor(_plan.Steps[i])).ToList();
        return placing.Count > 0 && placing.TrueForAll(i => First[i] is not null) ? null : new(WantKind.Part, item, $"{part} is {intent.Word()}, and nothing says that {stead} is in its stead");
    }

    /// <summary>Groups of which some parts are fitted and some are not, though they go together or not at all.</summary>
    public IEnumerable<Want> Apart(IEnumerable<PartName> inside)
    {
        var here = inside.ToHashSet();
        foreach (var group in _record.Together.Where(g => g.Parts.Any(here.Contains)))
        {
            var left = group.Parts.Where(p => !_plan.IsFitted(p)).ToList();
            if (left.Count > 0 && left.Count < group.Parts.Count)
                yield return new(WantKind.Together, WorkItem.Of(left[0]), $"{group.Said}: {string.Join(" and ", group.Parts.Except(left))} to be fitted, {string.Join(" and ", left)} not");
        }
    }

    /// <summary>What is wrong with the piece that is to go into a part.</summary>
    public Want? Chosen(PartName part)
    {
        var item = WorkItem.Of(part);
        if (_record.Index.ChosenFor(part)?.Piece is { } chosen)
            return State(part, chosen, item);
        return _record.Index.PlacedIn(part) is null && _record.Pieces.Any(p => p.For == part)
            ? new(WantKind.Part, item, $"no piece is chosen for {part}")
            : null;
    }

    /// <summary>How far a joint is short of a state; null: of all that it asks for.</summary>
    public Want? Joint(JointName name, JointStage? upTo = null)
    {
        var joint = _joints.GetValueOrDefault(name) ?? new Joint(name) { Tightening = "" };
        var last = upTo ?? joint.Last;
        var now = StageOf(name);
        if (now >= last || (joint.Parts.Count > 0 && !joint.Parts.Any(_plan.IsFitted)))
            return null;
        var kind = now == JointStage.Tightened && last == JointStage.Locked ? WantKind.Locking : WantKind.Joint;
        return new(kind, WorkItem.Of(name), now is null ? $"{name} is not made" : $"{name} is {now.Value.Word()} and not {last.Word()}")
        {
            IsHalfDone = now is not null,
        };
    }

    public JointStage? StageOf(JointName name)
    {
        if (!_stages.TryGetValue(name, out var stage))
            _stages[name] = stage = _record.Index.StatesOf(name).LastOrDefault(s => Standing.Of(s, _record).Stands)?.Stage;
        return stage;
    }

    public Want? Hold(Step step, HoldPoint hold)
    {
        if (AcceptanceOf(step, hold) is not null)
            return null;
        var item = WorkItem.Of(step.Name, hold);
        if (hold.Figure is { } figure)
        {
            var judged = _terms.Judged is { } judge ? judge(figure) : (WantKind.Verdict, $"{figure} is not accepted");
            return judged is null || _record.Decisions.Any(d => d.Figure == figure && d.Choice == DecisionChoice.Keep && Standing.Of(d, _record).Stands)
                ? null
                : new(judged.Value.Item1, item, judged.Value.Item2);
        }

        var kind = hold.Kind switch
        {
            HoldKind.Finding => WantKind.Finding,
            HoldKind.Cleanliness => WantKind.Cleanliness,
            HoldKind.Orientation => WantKind.Orientation,
            HoldKind.Identity => WantKind.Identity,
            HoldKind.Access => WantKind.Access,
            _ => WantKind.Judgement,
        };
        if (kind == WantKind.Finding && Last(hold) is { Outcome: FindingOutcome.Sound })
            return null;
        return new(kind, item, $"{hold.What}: not accepted for {step.Name}");
    }

    public Accepted? AcceptanceOf(Step step, HoldPoint hold) => _accepted[(step.Name, hold.What)].LastOrDefault(a => Standing.Of(a, _record).Stands);

    /// <summary>What was counted out of these spaces and has not been counted in.</summary>
    public IEnumerable<Want> Counts(Func<SpaceName?, bool> isInside) => _record.Counts
        .Where(c => isInside(c.Space) && Standing.Of(c, _record).Stands)
        .GroupBy(c => c.What, StringComparer.OrdinalIgnoreCase)
        .Select(g => (What: g.Key, Out: g.Where(c => c.Way == CountedWay.Out).Sum(c => c.Number), In: g.Where(c => c.Way == CountedWay.In).Sum(c => c.Number)))
        .Where(c => c.Out != c.In)
        .Select(c => new Want(WantKind.Count, new(ItemKind.Count, c.What), $"{c.Out} {c.What} counted out and {c.In} in"));

    private Finding? Last(HoldPoint hold) => _record.Findings.LastOrDefault(f =>
        string.Equals(f.What, hold.What, StringComparison.OrdinalIgnoreCase)
        && (hold.Part is not { } part || f.Part == part || (f.Piece is not null && f.Piece == PieceIn(part)))
        && _record.Index.StrikeOutOf(f.Id) is null);

    private PieceTag? PieceIn(PartName part) => _record.Index.PlacedIn(part)?.Piece ?? _record.Index.ChosenFor(part)?.Piece;

    private Want? State(PartName part, PieceTag tag, WorkItem item)
    {
        var (place, piece) = (_record.Index.Part(part), _record.Index.Piece(tag));
        if (place?.ModificationState is { } wanted && piece?.ModificationState is { } got && !string.Equals(wanted, got, StringComparison.OrdinalIgnoreCase))
            return new(WantKind.WrongPiece, item, $"{tag} belongs to {got}, and {part} to {wanted}");
        var decision = _record.Decisions.LastOrDefault(d => d.Piece == tag && d.Figure is null && Standing.Of(d, _record).Stands);
        if (decision is { Choice: not DecisionChoice.Keep })
            return new(WantKind.Decision, item, $"{tag} is to be {Done(decision.Choice)}");
        var finding = _record.Findings.LastOrDefault(f => f.Piece == tag && f.Outcome != FindingOutcome.Noted && _record.Index.StrikeOutOf(f.Id) is null);
        return finding is { Outcome: FindingOutcome.NotSound } && (decision is null || !RecordIndex.IsAfter(decision, finding))
            ? new(WantKind.Decision, item, $"{tag} was found not sound: {finding.What}")
            : null;
    }

    private static string Done(DecisionChoice choice) => choice switch
    {
        DecisionChoice.Rework => "reworked",
        DecisionChoice.Replace => "replaced",
        DecisionChoice.Make => "made",
        _ => "held",
    };

    private List<Signature> Looks(Step step) => [.. _signatures[step.Name].Where(s => Standing.Of(s, _record).Stands)];

    private Want? Signed(Step step)
    {
        if (!_plan.IsCalledFor(step))
            return null;
        var item = WorkItem.Of(step.Name);
        var looks = Looks(step);
        if (looks.Find(l => !l.SecondLook) is not { } first)
        {
            return _signatures[step.Name].LastOrDefault(s => !s.SecondLook) is { } fallen
                ? new(WantKind.Signature, item, $"the signature of {step.Name} no longer stands: {Standing.Of(fallen, _record).Why}")
                : new(WantKind.Step, item, $"{step.Name} is not signed");
        }

        if (step.Photograph is { } photograph && !looks.Exists(l => l.Photographed))
            return new(WantKind.Photograph, item, $"{step.Name}: no photograph of {photograph}");
        return step.SecondLook && !looks.Exists(l => l.SecondLook && CloseUp.IsAnother(l, first))
            ? new(WantKind.SecondLook, item, $"{step.Name} wants a second look by another person, or by the same on another day")
            : null;
    }
}
