namespace Thoubook.Record.Closing;

/// <summary>A line that permission to run asks for, and the facts on which it can be granted.</summary>
/// <param name="Line">Which.</param>
/// <param name="What">In words.</param>
/// <param name="Missing">What is not there on which it could be granted; null where all is.</param>
/// <param name="ReliesOn">The facts that are its ground.</param>
public sealed record PermissionGround(LineKey Line, string What, string? Missing, IReadOnlyList<FactId> ReliesOn);

/// <summary>A line of the permission, as it stands now.</summary>
/// <param name="Ground">What it asks for.</param>
/// <param name="Last">The line as it was granted last; null: never.</param>
/// <param name="Standing">Of what was granted last.</param>
public sealed record LineNow(PermissionGround Ground, PermissionLine? Last, Standing? Standing)
{
    /// <summary>Granted and standing; it does not outlive its ground.</summary>
    public bool IsGranted => Standing is { Stands: true } && Ground.Missing is null;

    public bool HasLapsed => Last is not null && !IsGranted;

    public bool CanBeGranted => !IsGranted && Ground.Missing is null;

    /// <summary>Why it lapsed, and what is missing; empty where neither.</summary>
    public string Why => string.Join("; ", new[] { Standing is { Stands: false } ? Standing.Why : null, Ground.Missing }.OfType<string>());
}

/// <summary>
/// Permission to run: a list, granted line by line, each by name. A line lapses when what it relied on is disturbed, not the whole.
/// It never says that an engine is fit for use by a licence, and loosens no limit at which it is stopped.
/// </summary>
public sealed class PermissionToRun
{
    private readonly CloseUp _closeUp;
    private readonly Plan _plan;
    private readonly EngineRecord _record;

    private PermissionToRun(CloseUp closeUp, IReadOnlyList<PermissionGround> oil)
    {
        (_closeUp, _plan, _record) = (closeUp, closeUp.Plan, closeUp.Plan.Record);
        var granted = _record.Permissions.ToLookup(p => p.Line);
        Lines = [.. Spaces().Concat(Joints()).Concat(Debts()).Concat(Departures()).Concat(oil).Concat(ByHand()).Select(g => Now(g, granted[g.Line]))];
    }

    /// <param name="closeUp">How far the engine is.</param>
    /// <param name="oil">The verdicts on the oil pressure, where there is a circuit.</param>
    public static PermissionToRun Of(CloseUp closeUp, IReadOnlyList<PermissionGround> oil) => new(closeUp, oil);

    public Purpose Purpose => _record.Engine.Purpose;

    public IReadOnlyList<LineNow> Lines { get; }

    /// <summary>Why nothing is granted here for such a purpose; null where it is.</summary>
    public string? NotGrantedHere => Purpose switch
    {
        Purpose.Display => "An engine for display is not run. Change what it is for first.",
        Purpose.Licensed => "This use is released by the licensed body that answers for it, and by nobody here. The list is kept as evidence for that body; no line of it is granted.",
        _ => null,
    };

    /// <summary>Every line granted, and none lapsed.</summary>
    public bool IsGranted => NotGrantedHere is null && Lines.Count > 0 && Lines.All(l => l.IsGranted);

    private LineNow Now(PermissionGround ground, IEnumerable<PermissionLine> granted)
    {
        var all = granted.Where(p => _record.Index.StrikeOutOf(p.Id) is null).ToList();
        var last = all.FindLast(p => Standing.Of(p, _record).Stands) ?? all.LastOrDefault();
        return new(ground, last, last is null ? null : Standing.Of(last, _record));
    }

    private IEnumerable<PermissionGround> Spaces()
    {
        foreach (var space in _plan.Spaces.All.Where(s => s.In is null))
        {
            var closing = _plan.Closing(space.Name).Where(_plan.IsCalledFor).ToList();
            var unsigned = closing.Where(s => !_closeUp.IsDone(s.Name)).Select(s => $"{s.Name} is not signed, or no longer stands").ToList();
            var open = closing.Count == 0 ? [$"no step closes {space.Name}"]
                : unsigned.Count > 0 ? unsigned
                : _closeUp.BeforeYouClose(space.Name).Missing.Where(m => m.CoveredBy is null).Select(m => m.Want.Why).ToList();
            yield return new(new(LineKind.Space, space.Name.Text), $"{space.What ?? space.Name.Text} closed", Told(open), [.. closing.SelectMany(s => Looks(s.Name))]);
        }
    }

    private IEnumerable<PermissionGround> Joints()
    {
        foreach (var joint in _record.Joints.Where(j => _plan.Spaces.Of(j.Name).Count == 0 && j.Parts.Any(_plan.IsFitted)))
        {
            var want = _closeUp.WantOf(joint.Name);
            var departure = want is null ? null : _closeUp.CoverOf(want) as Departure;
            var missing = want is null || departure is not null ? null : want.Why;
            yield return new(new(LineKind.Joint, joint.Name.Text), $"{joint.Name} {joint.Last.Word()}", missing, [.. StateOf(joint.Name), .. departure is null ? Array.Empty<FactId>() : [departure.Id]]);
        }
    }

    private IEnumerable<PermissionGround> Debts()
    {
        foreach (var debt in _record.Debts.Where(d => _record.Index.StrikeOutOf(d.Id) is null))
        {
            var settled = _record.Index.SettlementOf(debt.Id);
            yield return new(new(LineKind.Debt, debt.Id.ToString()), $"owed {debt.Deadline.Word()}: {debt.What}", settled is null ? "it is still owed" : null, settled is null ? [] : [settled.Id]);
        }
    }

    private IEnumerable<PermissionGround> Departures()
    {
        foreach (var departure in PurposeChange.Here(_record))
        {
            var standing = Standing.Of(departure, _record);
            var missing = !standing.Stands ? $"it no longer stands: {standing.Why}"
                : departure.StandsFor(Purpose) ? null
                : $"it stands for {(departure.Purposes.Count == 0 ? "no purpose" : string.Join(" and ", departure.Purposes.Select(p => p.Word())))}, and the engine is for {Purpose.Word()}{(departure.Undoing is { } undoing ? $"; to undo it: {undoing}" : "")}";
            yield return new(new(LineKind.Departure, departure.Id.ToString()), departure.Headline, missing, [departure.Id]);
        }
    }

    private IEnumerable<PermissionGround> ByHand()
    {
        foreach (var item in _record.PermissionItems.Where(p => p.Purposes.Count == 0 || p.Purposes.Contains(Purpose)))
        {
            var grounds = item.On.Select(Ground).ToList();
            yield return new(new(LineKind.Line, item.Name.Text), item.Said, Told([.. grounds.Select(g => g.Missing).OfType<string>()]), [.. grounds.SelectMany(g => g.Facts).Distinct()]);
        }
    }

    /// <summary>What is missing of a thing on which a written line relies, and the facts by which it is as it should be.</summary>
    private (string? Missing, IEnumerable<FactId> Facts) Ground(WorkItem item)
    {
        switch (item.Kind)
        {
            case ItemKind.Part when PartName.TryRead(item.Name, out var part, out _):
                var placed = _record.Index.PlacedIn(part);
                return (_closeUp.WantOf(part)?.Why ?? (placed is null && _plan.IsFitted(part) && _plan.Steps.All(s => !s.Places.Contains(part)) ? $"{part} is not in place" : null),
                    placed is not null ? [placed.Id] : _plan.Steps.Where(s => s.Places.Contains(part)).SelectMany(s => Looks(s.Name)));
            case ItemKind.Joint when JointName.TryRead(item.Name, out var joint, out _) && _record.Joints.Any(j => j.Name == joint):
                return (_closeUp.WantOf(joint)?.Why, StateOf(joint));
            case ItemKind.Step when StepName.TryRead(item.Name, out var step, out _) && _plan.Find(step) is not null:
                return (_closeUp.IsDone(step) ? null : $"{step} is not signed", Looks(step));
            case ItemKind.Hold when item.Name.Split(": ", 2) is [var of, var what] && StepName.TryRead(of, out var name, out _) && _plan.Find(name)?.Holds.FirstOrDefault(h => h.What == what) is { } hold:
                return (_closeUp.WantOf(name, hold)?.Why, _record.Acceptances.Where(a => a.Step == name && a.Hold == what && Standing.Of(a, _record).Stands).Select(a => a.Id));
            case ItemKind.Count:
                return (_closeUp.LeftOver.FirstOrDefault(w => w.Item == item)?.Why, []);
            default:
                return ($"{item} is not in the record", []);
        }
    }

    private IEnumerable<FactId> StateOf(JointName joint) =>
        _record.Index.StatesOf(joint).LastOrDefault(s => Standing.Of(s, _record).Stands) is { } state ? [state.Id] : [];

    /// <summary>The signatures of a step that stand: the first and the second look.</summary>
    private IEnumerable<FactId> Looks(StepName step) => _record.Signatures.Where(s => s.Step == step && Standing.Of(s, _record).Stands).Select(s => s.Id);

    private static string? Told(IReadOnlyList<string> missing) => missing.Count switch
    {
        0 => null,
        <= 3 => string.Join("; ", missing),
        _ => $"{string.Join("; ", missing.Take(3))}; and {missing.Count - 3} more",
    };
}
