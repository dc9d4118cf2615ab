using System.Text.RegularExpressions;
using Thoubook.Appraisal;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Documents;
using Thoubook.Web.Drawings.Closing;
using Thoubook.Web.Sheets;

namespace Thoubook.Web.Pages.Closing;

/// <summary>What the sheets of closing up show, all of it worked out from one record.</summary>
public sealed partial class CloseUpSheet
{
    private readonly Dictionary<StepName, ReadyStep> _ready;
    private readonly Dictionary<StepName, WaitingStep> _waiting;
    private readonly Dictionary<StepName, int> _order;
    private readonly Dictionary<StepName, StepState> _states;
    private readonly Dictionary<JointName, Joint> _joints;
    private readonly ILookup<JointName, Step> _making;
    private readonly ILookup<StepName, Signature> _signatures;
    private readonly Lazy<IReadOnlyList<Casing>> _casings;
    private readonly Lazy<IReadOnlyList<CrewTime>> _left;

    /// <summary>All that is shown of one engine.</summary>
    /// <param name="engine">As it is appraised.</param>
    /// <param name="closeUp">How far it is closed up.</param>
    /// <param name="left">What is left for one and for two people, worked out when it is asked for and then kept.</param>
    public CloseUpSheet(EngineAppraisal engine, CloseUp closeUp, Lazy<IReadOnlyList<CrewTime>> left)
    {
        (Engine, CloseUp, _left) = (engine, closeUp, left);
        _ready = closeUp.Now.ToDictionary(r => r.Step.Name);
        _waiting = closeUp.Later.ToDictionary(w => w.Step.Name);
        _order = Plan.InOrder.Select((s, i) => (s.Name, i)).ToDictionary(p => p.Name, p => p.i);
        _joints = Record.Joints.ToDictionary(j => j.Name);
        _making = Plan.Steps.SelectMany(s => s.Joints.Select(j => (Joint: j, Step: s))).ToLookup(m => m.Joint, m => m.Step);
        _signatures = Record.Signatures.ToLookup(s => s.Step);
        _states = Plan.Steps.ToDictionary(s => s.Name, State);
        _casings = new(() => [.. Plan.Spaces.All.Where(s => s.In is not { } around || Plan.Spaces.Find(around) is null).Select(Draw)]);
    }

    public EngineAppraisal Engine { get; }

    public CloseUp CloseUp { get; }

    public EngineRecord Record => Engine.Record;

    public EngineName Name => Record.Engine.Name;

    public Plan Plan => CloseUp.Plan;

    /// <summary>What is left for one and for two people; empty where the plan has no order.</summary>
    public IReadOnlyList<CrewTime> Left => _left.Value;

    public CasingAddresses Addresses => new(s => Where.Space(Name, s), s => Where.Step(Name, s), s => Sheets.Said.Sentence(SpaceSaid(s.Name)), Said);

    /// <summary>The outermost spaces.</summary>
    public IReadOnlyList<Casing> Casings => _casings.Value;

    /// <summary>The steps that lie in no space and close none.</summary>
    public IReadOnlyList<DrawnStep> Outside => Drawn(Plan.Steps.Where(s => s.Closes.Count == 0 && Innermost(s) is null));

    public StepState StateOf(StepName step) => _states[step];

    public int Count(StepState state) => _states.Values.Count(s => s == state);

    /// <summary>What a step wants before it is begun; empty where it is done or can be done now.</summary>
    public IReadOnlyList<Want> WantsOf(StepName step) => _waiting.TryGetValue(step, out var waiting) ? waiting.Wants : [];

    /// <summary>The space that a step lies in, of several the one within the others; null: none.</summary>
    public SpaceName? Innermost(Step step)
    {
        var open = Plan.SpacesOf(step.Name);
        foreach (var space in Plan.Spaces.All)
        {
            if (open.Contains(space.Name) && !open.Any(other => other != space.Name && Plan.Spaces.Upwards(other).Contains(space.Name)))
                return space.Name;
        }

        return null;
    }

    public CoverState CoverOf(SpaceName space)
    {
        var closers = Plan.Closing(space);
        if (closers.Count == 0)
            return CoverState.None;
        var signed = closers.Count(s => CloseUp.IsDone(s.Name));
        return signed == closers.Count ? CoverState.On
            : signed > 0 || closers.Any(s => _states[s.Name] == StepState.HalfDone) ? CoverState.HalfOn
            : CoverState.Off;
    }

    /// <summary>A space in words.</summary>
    public string SpaceSaid(SpaceName space) => Plan.Spaces.Find(space)?.What ?? Sheets.Said.Words(space.Text);

    /// <summary>A step in words.</summary>
    public static string Said(Step step) => step.What ?? Sheets.Said.Words(step.Name.Text.Replace("/", ", ", StringComparison.Ordinal));

    /// <summary>A joint by its name in words.</summary>
    public static string Said(JointName joint) => Sheets.Said.Words(string.Join(' ', joint.Text.Split('/').TakeLast(2)));

    /// <summary>Where a step or a joint stands written: overhaul-book, row 22.</summary>
    public static string Said(Citation source) => string.Join(", ", new[] { source.Document.Text, source.Row }.OfType<string>());

    public string StepSaid(StepName step) => Plan.Find(step) is { } known ? Said(known) : Sheets.Said.Words(step.Text);

    /// <summary>A joint in its own words: 6 × 1/4 BSF, 60 lbf in, locked by tab washers.</summary>
    public static string JointSaid(Joint joint) => string.Join(", ", new[]
    {
        joint.Number is { } number ? $"{number} × {joint.Thread ?? "fastener"}" : joint.Thread,
        joint.Tightening,
        joint.Locking is { } locking ? $"locked by {locking}" : null,
        joint.Sealing is { } sealing ? $"sealed by {sealing}" : null,
    }.OfType<string>());

    /// <summary>The steps that make a joint.</summary>
    public IEnumerable<Step> Making(JointName joint) => _making[joint];

    public Joint? Joint(JointName name) => _joints.GetValueOrDefault(name);

    /// <summary>The state to which a step brings a joint.</summary>
    public static JointStage Brings(Step step, Joint joint) => step.Brings ?? joint.Last;

    /// <summary>A sentence that names steps, joints, parts and figures, with each said as a person says it.</summary>
    public string InWords(string text) => Sheets.Said.Sentence(Names().Replace(text, name =>
        StepName.TryRead(name.Value, out var step, out _) && Plan.Find(step) is { } of ? Said(of)
        : JointName.TryRead(name.Value, out var joint, out _) && Joint(joint) is not null ? Said(joint)
        : SpaceName.TryRead(name.Value, out var space, out _) && Plan.Spaces.Find(space) is not null ? SpaceSaid(space)
        : FigureName.TryRead(name.Value, out var figure, out _) && Engine[figure] is not null ? $"{Sheets.Said.Words(figure.Part.Leaf)} {Sheets.Said.Words(figure.Local)}"
        : PartName.TryRead(name.Value, out var part, out _) && Record.Index.Part(part) is not null ? Sheets.Said.Title(part).ToLowerInvariant()
        : name.Value));

    /// <summary>A thing that is wanted, in words.</summary>
    public string ItemSaid(WorkItem item) => item.Kind switch
    {
        ItemKind.Part => Sheets.Said.Title(PartName.Of(item.Name)),
        ItemKind.Step => Sheets.Said.Sentence(StepSaid(new StepName(item.Name))),
        ItemKind.Hold => HoldOf(item) is var (step, what) && Plan.Find(step)?.Holds.FirstOrDefault(h => h.What == what) is { } hold ? HoldSaid(hold) : Sheets.Said.Sentence(item.Name),
        ItemKind.Joint => Sheets.Said.Sentence(Said(new JointName(item.Name))),
        _ => Sheets.Said.Sentence(item.Name),
    };

    /// <summary>A hold point in words.</summary>
    public string HoldSaid(HoldPoint hold) => hold.Figure is { } figure && hold.What == figure.ToString() ? InWords(hold.What) : Sheets.Said.Sentence(hold.What);

    /// <summary>What is so in a space, each in a line: pieces, joints, what was accepted, photographs.</summary>
    public IReadOnlyList<string> SoIn(InsideLook look, IReadOnlyList<StepName> closes)
    {
        var inside = Plan.Steps.Where(s => Plan.SpacesOf(s.Name).Contains(look.Space) || closes.Contains(s.Name)).ToList();
        return
        [
            .. look.Pieces.Where(p => p.Want is null && Plan.IsFitted(p.Part)).Select(p => $"{Sheets.Said.Title(p.Part)}{(p.Piece is { } piece && piece.Text != p.Part.Path ? $", {piece}" : "")} in place"),
            .. look.Joints.Where(j => j.Want is null && j.State is not null).Select(j => $"{Sheets.Said.Sentence(Said(j.Joint.Name))} {j.State!.Stage.Word()}"),
            .. inside.SelectMany(s => s.Holds.Where(h => CloseUp.WantOf(s.Name, h) is null).Select(h => $"{HoldSaid(h)}: accepted for {Said(s)}")),
            .. look.Photographs.Where(p => p.Taken).Select(p => $"Photograph of {p.What}, {StepSaid(p.Step)}"),
        ];
    }

    /// <summary>What a step wants before it may be signed, what is its own first. A departure or a debt helps with what it closes over, not with what it builds on.</summary>
    public IReadOnlyList<MissingRow> MissingFor(StepName name)
    {
        var step = Plan.Find(name)!;
        var closedOver = Plan.Before(name).Where(e => e.Kind is EdgeKind.Space or EdgeKind.Hold).Select(e => WorkItem.Of(e.First.Name)).ToHashSet();
        var own = step.Holds.Select(h => WorkItem.Of(name, h)).Concat(step.Joints.Select(WorkItem.Of)).ToHashSet();
        return
        [
            .. CloseUp.WantsToSign(name).OrderByDescending(w => w.IsHalfDone).ThenByDescending(w => own.Contains(w.Item))
                .Select(w => new MissingRow(w, null, null, w.Kind is not (WantKind.Tool or WantKind.Cure or WantKind.Owed) && (w.Item.Kind != ItemKind.Step || closedOver.Contains(w.Item)))),
        ];
    }

    /// <summary>Where to go and do what is wanted.</summary>
    public string? AddressOf(Want want) => want.Item.Kind switch
    {
        ItemKind.Part => Where.Part(Name, PartName.Of(want.Item.Name)),
        ItemKind.Joint => NextFor(new JointName(want.Item.Name)) is { } step ? $"{Where.Step(Name, step.Name)}#joints" : null,
        ItemKind.Count => $"{Where.Departures(Name)}#counts",
        ItemKind.Hold when HoldOf(want.Item) is var (step, what) => want.Kind is WantKind.Reading or WantKind.Verdict && Plan.Find(step)?.Holds.FirstOrDefault(h => h.What == what)?.Figure is { } figure && Engine[figure] is not null
            ? Where.Figure(Name, figure)
            : $"{Where.Step(Name, step)}#holds",
        _ when want.Kind == WantKind.Owed => $"{Where.Departures(Name)}#debts",
        _ => Where.Step(Name, new StepName(want.Item.Name)),
    };

    /// <summary>The step that takes a joint on from where it is; null where none does.</summary>
    public Step? NextFor(JointName joint) => Making(joint).Where(s => _states[s.Name] != StepState.Signed)
        .OrderBy(s => _states[s.Name] switch { StepState.HalfDone => 0, StepState.CanDoNow => 1, _ => 2 })
        .ThenBy(s => _order.GetValueOrDefault(s.Name, int.MaxValue)).FirstOrDefault();

    private static (StepName Step, string Hold) HoldOf(WorkItem item) => item.Name.IndexOf(": ", StringComparison.Ordinal) is > 0 and var at
        ? (new StepName(item.Name[..at]), item.Name[(at + 2)..])
        : (new StepName(item.Name), item.Name);

    /// <summary>The work that is left, for one person and for two.</summary>
    public static IReadOnlyList<CrewTime> HoursLeft(CloseUp closeUp) =>
        [.. new[] { 1, 2 }.Select(people => Crew.Of(closeUp.Plan, people, s => !closeUp.IsDone(s.Name), lent: true).IsOk(out var time, out _) ? time : null).OfType<CrewTime>()];

    /// <summary>A space by itself, without those within it.</summary>
    public Casing Alone(Space space) => Draw(space) with { Within = [] };

    private Casing Draw(Space space) => new(space, CoverOf(space.Name))
    {
        Closers = Drawn(Plan.Closing(space.Name)),
        Steps = Drawn(Plan.Steps.Where(s => s.Closes.Count == 0 && Innermost(s) == space.Name)),
        Within = [.. Plan.Spaces.All.Where(s => s.In == space.Name && s.Name != space.Name).Select(Draw)],
    };

    private IReadOnlyList<DrawnStep> Drawn(IEnumerable<Step> steps) =>
        [.. steps.OrderBy(s => _order.GetValueOrDefault(s.Name, int.MaxValue)).Select(s => new DrawnStep(s, _states[s.Name], Says(s)))];

    private string Says(Step step)
    {
        var (state, wants) = (_states[step.Name], WantsOf(step.Name));
        var word = state.Word();
        return state switch
        {
            StepState.CanDoNow when step.Time is not null => $"{word}, {Sheets.Said.Time(step.Seconds / 60.0)}",
            StepState.Waits => wants.Count == 1 ? $"{word} for {WantSaid(wants[0])}" : $"{word} for {wants.Count} things",
            StepState.Stopped or StepState.Fallen when wants.Count > 0 => wants.Count == 1 ? $"{word}: {wants[0].Kind.Word()}" : $"{word}: {wants.Count} things",
            _ => word,
        };
    }

    private string WantSaid(Want want) => want.Item.Kind == ItemKind.Step && want.Kind != WantKind.Owed ? StepSaid(new StepName(want.Item.Name)) : want.Kind.Word();

    private StepState State(Step step)
    {
        if (!Plan.IsCalledFor(step))
            return StepState.NotCalledFor;
        if (CloseUp.IsDone(step.Name))
            return StepState.Signed;
        if (CloseUp.SignatureOf(step.Name) is not null || CloseUp.IsBegun(step))
            return StepState.HalfDone;
        if (_signatures[step.Name].LastOrDefault(s => !s.SecondLook) is { } last && Standing.Of(last, Record).BrokenBy is not (Undone or StrikeOut))
            return StepState.Fallen;
        if (_ready.ContainsKey(step.Name))
            return StepState.CanDoNow;
        return WantsOf(step.Name).Any(w => w.Kind is WantKind.Step or WantKind.Signature or WantKind.SecondLook or WantKind.Photograph or WantKind.Cure) ? StepState.Waits : StepState.Stopped;
    }

    [GeneratedRegex("[A-Za-z0-9_]+(?:[-/.][A-Za-z0-9_]+)+", RegexOptions.None, 1000)]
    private static partial Regex Names();
}
