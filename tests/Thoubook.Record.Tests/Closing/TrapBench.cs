using Thoubook.Record.Closing;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;

namespace Thoubook.Record.Tests.Closing;

/// <summary>The record of one trap: a space, the step that closes it, and inside what each safeguard asks for, seen to or not.</summary>
internal sealed class TrapBench
{
    public static readonly StepName Closing = new("closing");

    private static readonly SpaceName Inside = new("inside");

    private readonly List<string> _away = [];
    private Step _closing;
    private EngineRecord _record = Bench.Record() with { Spaces = [new Space(Inside)] };
    private int _minute;

    /// <param name="trap">Which.</param>
    /// <param name="neglected">The safeguard that was not seen to; null: all were.</param>
    public TrapBench(Trap trap, Safeguard? neglected)
    {
        _closing = Bench.Step(Closing.Text, trap.Closes) with { Closes = [Inside] };
        foreach (var safeguard in trap.Safeguards)
            Add(safeguard, isSeenTo: safeguard != neglected);
        _record = _record with { Steps = [.. _record.Steps, _closing] };
    }

    public IReadOnlyList<PlanFault> Faults => Plan.Of(_record).Faults;

    public IReadOnlyList<Want> WantsToSign() => CloseUp.Of(Plan.Of(_record), new CloseUpTerms(Bench.At(_minute + 1).ToInstant())
    {
        ToolsAway = _away,
        Judged = figure => _record.Checks.Any(c => c.Figure == figure) ? null : (WantKind.Reading, $"{figure} is not measured"),
    }).WantsToSign(Closing);

    /// <summary>The thing that a want for a safeguard names.</summary>
    public static WorkItem Item(Safeguard safeguard) => safeguard.Sort switch
    {
        "part" or "wrong piece" => WorkItem.Of(Part(safeguard)),
        "joint" => WorkItem.Of(new JointName(safeguard.Name)),
        "hold" or "finding" or "piece changed" => new(ItemKind.Hold, $"{Closing}: {safeguard.What}"),
        "fit" or "dimension" => new(ItemKind.Hold, $"{Closing}: {Figure(safeguard)}"),
        "count" => new(ItemKind.Count, safeguard.What),
        "tool" or "owed" => WorkItem.Of(Closing),
        _ => WorkItem.Of(StepOf(safeguard)),
    };

    /// <summary>The step of a safeguard, where it has one: what it wants stands with the thing itself.</summary>
    public static StepName StepOf(Safeguard safeguard) => new(safeguard.Name + "-seen-to");

    private static PartName Part(Safeguard safeguard) => PartName.Of($"within/{safeguard.Name}");

    private static FigureName Figure(Safeguard safeguard) => FigureName.Of($"within/{safeguard.Name}.{safeguard.Sort}");

    private void Add(Safeguard safeguard, bool isSeenTo)
    {
        switch (safeguard.Sort)
        {
            case "part":
                Inner(safeguard, Bench.Step("inner") with { Places = [Part(safeguard)] }, isSeenTo);
                break;
            case "wrong piece":
                var (right, wrong) = (Piece(safeguard, "right"), Piece(safeguard, "wrong"));
                Choose(right, Part(safeguard));
                Place(isSeenTo ? right : wrong, Part(safeguard));
                Inner(safeguard, Bench.Step("inner") with { Places = [Part(safeguard)] }, isSigned: true);
                break;
            case "piece changed":
                var hold = Hold(HoldKind.Judgement, safeguard.What);
                Accept(hold, Place(Piece(safeguard, "trial"), Part(safeguard)));
                var final = Place(Piece(safeguard, "final"), Part(safeguard));
                Inner(safeguard, Bench.Step("inner") with { Places = [Part(safeguard)] }, isSigned: true);
                if (isSeenTo)
                    Accept(hold, final);
                break;
            case "joint":
                Joint(safeguard, Trap.Word<JointStage>(safeguard.Stage), isSeenTo);
                break;
            case "hold":
                var point = Hold(Trap.Word<HoldKind>(safeguard.Stage), safeguard.What);
                if (isSeenTo)
                    Accept(point);
                break;
            case "finding":
                Hold(HoldKind.Finding, safeguard.What, Part(safeguard));
                if (isSeenTo)
                    _record = _record with { Findings = [.. _record.Findings, new Finding(FactId.New(), Bench.At(++_minute), "bench", null, Part(safeguard), safeguard.What) { Outcome = FindingOutcome.Sound }] };
                break;
            case "fit" or "dimension":
                Measure(safeguard, isSeenTo);
                break;
            case "count":
                Count(safeguard.What, 4, CountedWay.Out);
                Count(safeguard.What, isSeenTo ? 4 : 3, CountedWay.In);
                break;
            case "tool":
                _closing = _closing with { Tools = [.. _closing.Tools, safeguard.What] };
                if (!isSeenTo)
                    _away.Add(safeguard.What);
                break;
            case "owed":
                var debt = new Owed(FactId.New(), Bench.At(++_minute), "bench", safeguard.What, Deadline.BeforeItIsTurned);
                _record = _record with { Debts = [.. _record.Debts, debt], Settlements = isSeenTo ? [new Settled(FactId.New(), Bench.At(++_minute), "bench", debt.Id)] : [] };
                break;
            case "first":
                _closing = _closing with { After = [.. _closing.After, new ComesAfter(StepOf(safeguard), "else it is too late")] };
                _record = _record with { Steps = [.. _record.Steps, new Step(StepOf(safeguard)) { Kind = StepKind.Inspect }] };
                if (isSeenTo)
                    Sign(safeguard);
                break;
            case "second look":
                Inner(safeguard, Bench.Step("inner", StepKind.Inspect) with { SecondLook = true }, isSigned: true);
                if (isSeenTo)
                    Sign(safeguard, isSecondLook: true);
                break;
            case "photograph":
                Inner(safeguard, Bench.Step("inner", StepKind.Inspect) with { Photograph = safeguard.What }, isSigned: false);
                Sign(safeguard, isPhotographed: isSeenTo);
                break;
            default:
                Inner(safeguard, Bench.Step("inner", Trap.Word<StepKind>(safeguard.Sort)), isSeenTo);
                break;
        }
    }

    /// <summary>A step that lies in the space.</summary>
    private void Inner(Safeguard safeguard, Step step, bool isSigned)
    {
        _record = _record with
        {
            Steps = [.. _record.Steps, step with { Name = StepOf(safeguard), In = [Inside] }],
            Spaces = [.. _record.Spaces.Select(s => s with { Parts = [.. s.Parts, .. step.Places] })],
            Parts = [.. _record.Parts, .. step.Places.Select(p => new Part(p))],
        };
        if (isSigned)
            Sign(safeguard);
    }

    /// <summary>Neglected, a joint that goes further than one state is half done; another is not made at all.</summary>
    private void Joint(Safeguard safeguard, JointStage last, bool isSeenTo)
    {
        var joint = new Joint(new JointName(safeguard.Name))
        {
            Parts = Bench.Parts("case", "cover"),
            In = Inside,
            Sealing = last == JointStage.PulledUp ? "joint" : null,
            Tightening = last >= JointStage.Tightened ? "to its figure" : null,
            Locking = last >= JointStage.Locked ? "tab washers" : null,
            Inspected = last == JointStage.Inspected,
        };
        _record = _record with { Joints = [.. _record.Joints, joint] };
        Inner(safeguard, Bench.Step("inner", StepKind.Join) with { Joints = [joint.Name] }, isSeenTo);
        var stage = isSeenTo ? last : last - 1;
        if (stage > JointStage.Placed)
            _record = _record with { JointStates = [.. _record.JointStates, new JointState(FactId.New(), Bench.At(++_minute), "bench", joint.Name, stage)] };
    }

    private void Measure(Safeguard safeguard, bool isSeenTo)
    {
        var figure = Figure(safeguard);
        Inner(safeguard, Bench.Step("inner", StepKind.Measure) with { Measures = [figure] }, isSeenTo);
        _closing = _closing with { Holds = [.. _closing.Holds, new HoldPoint(Trap.Word<HoldKind>(safeguard.Sort), figure.ToString()) { Figure = figure }] };
        if (isSeenTo)
            _record = _record with { Checks = [.. _record.Checks, new Check(FactId.New(), Bench.At(++_minute), "bench", figure, Bench.Q("5 thou"))] };
    }

    private HoldPoint Hold(HoldKind kind, string what, PartName? part = null)
    {
        var hold = new HoldPoint(kind, what) { Part = part };
        _closing = _closing with { Holds = [.. _closing.Holds, hold] };
        return hold;
    }

    private void Accept(HoldPoint hold, Placed? reliesOn = null) => _record = _record with
    {
        Acceptances = [.. _record.Acceptances, new Accepted(FactId.New(), Bench.At(++_minute), "owner", Closing, hold.What) { ReliesOn = reliesOn is null ? [] : [reliesOn.Id] }],
    };

    private PieceTag Piece(Safeguard safeguard, string which)
    {
        var piece = new Piece(new PieceTag($"{which} {safeguard.Name}")) { For = Part(safeguard) };
        _record = _record with { Pieces = [.. _record.Pieces, piece] };
        return piece.Tag;
    }

    private void Choose(PieceTag piece, PartName part) => _record = _record with { Choices = [.. _record.Choices, new Chosen(FactId.New(), Bench.At(++_minute), "owner", piece, part)] };

    private Placed Place(PieceTag piece, PartName part)
    {
        var placed = new Placed(FactId.New(), Bench.At(++_minute), "bench", piece, part);
        _record = _record with { Placings = [.. _record.Placings, placed] };
        return placed;
    }

    private void Count(string what, int number, CountedWay way) => _record = _record with { Counts = [.. _record.Counts, new Counted(FactId.New(), Bench.At(++_minute), "bench", what, number, way) { Space = Inside }] };

    private void Sign(Safeguard safeguard, bool isSecondLook = false, bool isPhotographed = false) => _record = _record with
    {
        Signatures = [.. _record.Signatures, new Signature(FactId.New(), Bench.At(++_minute), isSecondLook ? "owner" : "bench", StepOf(safeguard)) { SecondLook = isSecondLook, Photographed = isPhotographed }],
    };
}
