using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Closing;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>Permission to run as it stands: every line with its ground, and whether it is granted, lapsed or can be granted.</summary>
    public Outcome<PermissionToRun> Permission(string engine) => ClosingUp(engine).Then<PermissionToRun>(closing => PermissionToRun.Of(closing, OilGrounds(engine, closing.Plan.Record)));

    /// <summary>Grants one line by name. It relies on the facts that are its ground, and cannot be granted without them.</summary>
    public Outcome<PermissionLine> Grant(PermitEntry entry) => Engine(entry.Engine).Then(record => Permission(entry.Engine).Then(permission =>
    {
        if (entry.Id is { } known && record.Index.Fact(known) is PermissionLine before)
            return before;
        if (permission.NotGrantedHere is { } not)
            return new Problem($"permission-{permission.Purpose.Word()}", "line", permission.Purpose.Word(), not, permission.Purpose == Purpose.Licensed ? "Take the list to that body." : "Change the purpose, if it is to be run.");
        if (!Line(permission, entry.Line).IsOk(out var line, out var problems))
            return new Outcome<PermissionLine>.Refused(problems);
        if (line.IsGranted)
            return new Problem("permission-granted-already", "line", line.Ground.Line.ToString(), $"{line.Last!.By} granted it on {line.Last.At.Date:uuuu-MM-dd}, and it stands.", "Nothing need be done.");
        if (line.Ground.Missing is { } missing)
            return new Problem("permission-ground", "line", line.Ground.Line.ToString(), $"It cannot be granted yet: {missing}.", "See to that first.");
        var (id, at) = Signed(entry);
        return Write(entry, record, new PermissionLine(id, at, entry.By, line.Ground.Line, record.Engine.Purpose) { ReliesOn = line.Ground.ReliesOn, Note = Blank(entry.Note) });
    }));

    /// <summary>Takes a line back that was granted and stands.</summary>
    public Outcome<Undone> Withdraw(WithdrawEntry entry) => Engine(entry.Engine).Then(record => Permission(entry.Engine).Then(permission =>
    {
        if (entry.Id is { } known && record.Index.Fact(known) is Undone before)
            return before;
        if (!Line(permission, entry.Line).IsOk(out var line, out var problems))
            return new Outcome<Undone>.Refused(problems);
        if (line.Last is not { } granted || line.Standing is not { Stands: true })
            return new Problem("permission-not-granted", "line", line.Ground.Line.ToString(), line.HasLapsed ? $"It no longer stands: {line.Why}." : "It is not granted.", "Nothing need be done.");
        var (id, at) = Signed(entry);
        return Write(entry, record, new Undone(id, at, entry.By, granted.Id) { Why = Blank(entry.Why) });
    }));

    /// <summary>What another purpose would come to, before anything is changed.</summary>
    public Outcome<PurposeChange> PurposeChange(string engine, Purpose purpose) => ClosingUp(engine).Then<PurposeChange>(closing => Record.Closing.PurposeChange.Of(closing, purpose));

    /// <summary>Changes what an engine is for. Nothing is undone by it; what no longer stands says so.</summary>
    public Outcome<Engine> ChangePurpose(PurposeEntry entry) => Engine(entry.Engine).Then(record => record.Engine.Purpose == entry.Purpose && entry.Revision is null
        ? record.Engine
        : EditEngine(record.Engine with { Purpose = entry.Purpose, Revision = entry.Revision ?? record.Engine.Revision }, entry.By));

    /// <summary>A line by its kind and name, or by its name alone where one has it.</summary>
    private static Outcome<LineNow> Line(PermissionToRun permission, string text)
    {
        var typed = text.Trim();
        var found = permission.Lines.Where(l => l.Ground.Line.ToString() == typed).ToList();
        if (found.Count == 0)
            found = [.. permission.Lines.Where(l => l.Ground.Line.Name == typed)];
        var all = permission.Lines.Select(l => l.Ground.Line.ToString()).ToList();
        return found.Count switch
        {
            1 => found[0],
            0 => new Problem("unknown-line", "line", $"\"{typed}\"", all.Count == 0 ? "The list is empty: the record shows nothing that permission to run could rest on." : "The list has no such line.", Nearest.Advice(typed, all, "Name a line of the list.")),
            _ => new Problem("unknown-line", "line", $"\"{typed}\"", $"Several lines have that name: {string.Join(", ", found.Select(l => l.Ground.Line))}.", "Write which kind is meant before the name."),
        };
    }

    /// <summary>The oil pressure in each state of running by its verdict; nothing where there is no circuit.</summary>
    private List<PermissionGround> OilGrounds(string engine, EngineRecord record)
    {
        if (record.Circuit is not { } circuit)
            return [];
        if (circuit.States.Count == 0)
            return [new(new(LineKind.Oil, "states"), "oil pressure", "the circuit names no state of running with a limit to judge by", [])];
        var relied = BehindTheOil(circuit, record);
        if (!Oil(engine).IsOk(out var system, out var problems))
            return [.. circuit.States.Select(s => new PermissionGround(new(LineKind.Oil, s.Name), $"oil pressure, {s.Name}", $"it has no answer: {problems[0].Allowed}", relied))];
        return
        [
            .. circuit.States.Zip(system.States(), (state, outcome) => new PermissionGround(
                new(LineKind.Oil, state.Name),
                $"oil pressure, {state.Name}",
                outcome.IsOk(out var answer, out var refused) ? WantingOf(answer) : $"it has no answer: {refused[0].Allowed}",
                relied)),
        ];
    }

    private static string? WantingOf(StateAnswer answer) => answer.Verdict switch
    {
        null => "no gauge has a limit in this state",
        OilVerdict.Enough => null,
        var verdict => answer.Gauges.First(g => g.Verdict == verdict).Reason,
    };

    /// <summary>The pieces, readings and checks by which the circuit has its sizes, and the test to which it is fitted.</summary>
    private static List<FactId> BehindTheOil(OilCircuit circuit, EngineRecord record)
    {
        var figures = circuit.Elements.SelectMany(e => e.Values).Select(v => v.Value).OfType<CircuitValue.Taken>().Select(t => record.Index.Figure(t.Figure)).Distinct();
        var fitted = record.Calibrations.LastOrDefault(c => Standing.Of(c, record).Stands);
        return [.. PartsOfCircuit(circuit, record).Concat(figures.SelectMany(f => Behind(record, null, f))).Concat(fitted is null ? [] : [fitted.Id]).Distinct()];
    }
}
