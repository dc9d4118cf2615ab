using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Files.Tests.EngineFiles;

public sealed class ClosingFileTests
{
    private const string Head = """
        engine: { name: Sandpiper six, purpose: stand-run }
        parts: { pump/body: {}, pump/gear: {}, pump/cover: {} }

        """;

    private static EngineRecord Read(string text) => EngineFile.Read(text, "engine.yaml", TestFiles.Terms).IsOk(out var record, out var problems) ? record : throw new InvalidOperationException(string.Join('\n', problems));

    private static IReadOnlyList<Problem> Refused(string text)
    {
        Assert.False(EngineFile.Read(Head + text, "engine.yaml", TestFiles.Terms).IsOk(out _, out var problems));
        return problems;
    }

    [Fact]
    public void TheExample_ComesOutAsItWentIn()
    {
        var record = Read(TestFiles.Block("docs/closing.md", "yaml"));
        var text = EngineFile.Write(record);
        Assert.Equal(text, EngineFile.Write(Read(text)));
        Assert.Equal(5, record.Steps.Count);
        Assert.Equal(120 * 60, record.Steps.Single(s => s.Name.Text == "cover-on").CureSeconds);
        Assert.Equal([Purpose.Display, Purpose.StandRun], record.Departures[0].Purposes);
        Assert.Equal(new WorkItem(ItemKind.Step, "cover-locked"), record.Debts[0].Item);
        Assert.Equal([null, "the tabs are bent with the gear turned to clear the drift"], record.Steps.Single(s => s.Name.Text == "cover-locked").After.Select(a => a.Why).Order());
    }

    [Fact]
    public void TheExample_IsAPlanWithoutFaults()
    {
        var plan = Plan.Of(Read(TestFiles.Block("docs/closing.md", "yaml")));
        Assert.Equal(["gear-in", "end-float", "cover-on", "cover-locked", "sump-on"], plan.InOrder.Select(s => s.Name.Text));
        Assert.Empty(plan.Faults);
    }

    [Fact]
    public void LaidOverWhatTheWorkshopHolds_TakesThePlaceOfTheStepsThatItNames()
    {
        var known = Read(TestFiles.Block("docs/closing.md", "yaml"));
        Assert.True(EngineFile.Read("engine: { name: Sandpiper six, purpose: stand-run }\nsteps: { sump-on: { closes: [crankcase], after: [cover-locked] } }", "more.yaml", TestFiles.Terms with { Known = _ => known }).IsOk(out var file, out _));
        var joined = Joining.Join(known, file);
        Assert.Equal(5, joined.Steps.Count);
        Assert.Single(joined.Steps.Single(s => s.Name.Text == "sump-on").After);
    }

    [Theory]
    [InlineData("spaces: { chamber: { parts: [pump/gear] } }\nsteps:\n  gear-in: { places: [pump/gear], closes: [chamber] }", "step-closes-itself-in", 5, "gear-in closes chamber and lies in it: it puts pump/gear into it")]
    [InlineData("spaces: { chamber: {} }\nsteps:\n  shut: { in: [chamber], closes: [chamber] }", "step-closes-itself-in", 5, "shut closes chamber and lies in it: it says so")]
    [InlineData("joints:\n  studs: { parts: [pump/body] }", "joint-of-one-part", 4, "pump/body alone")]
    [InlineData("joints:\n  studs: { parts: [pump/body, pump/body] }", "joint-of-one-part", 4, "pump/body alone")]
    [InlineData("joints:\n  studs: { parts: [pump/body, pump/cower] }", "file-part-missing", 4, "\"pump/cower\"")]
    [InlineData("steps:\n  one: {}\n  two: { after: [oen] }", "step-missing", 5, "\"oen\"")]
    [InlineData("steps:\n  one: { after: [one] }", "step-after-itself", 4, "one after itself")]
    [InlineData("steps:\n  one: { joints: [studs] }", "joint-missing", 4, "\"studs\"")]
    [InlineData("steps:\n  one: { closes: [crankcase] }\n  two: { in: [cranckase] }", "space-missing", 5, "\"cranckase\"")]
    [InlineData("spaces:\n  chamber: { in: case }\n  case: { in: chamber }", "space-in-itself", 4, "chamber in case")]
    [InlineData("spaces:\n  chamber: { in: crankcase }", "space-missing", 4, "\"crankcase\"")]
    [InlineData("steps:\n  one: { time: -5 min }", "step-time-impossible", 4, "-5 min")]
    [InlineData("steps:\n  one: { cure: -1 h }", "step-time-impossible", 4, "-1 h")]
    [InlineData("steps:\n  one: { cure: 2 h, open: 90 min }", "step-time-impossible", 4, "90 min, and cure 2 h")]
    [InlineData("steps:\n  one: { time: 5 thou }", "unit-wrong-kind", 4, "\"5 thou\"")]
    [InlineData("steps:\n  one: { people: 0 }", "step-people", 4, "0")]
    [InlineData("steps:\n  one: { people: 1.5 }", "file-whole-number", 4, "\"1.5\"")]
    [InlineData("steps:\n  one: { holds: [{ kind: fit }] }", "hold-without-figure", 4, "a fit that is not named")]
    [InlineData("steps:\n  one: { holds: [{ what: turns free }, { what: Turns free }] }", "hold-twice", 4, "\"turns free\" twice")]
    [InlineData("steps:\n  one: { brings: locked }", "step-brings-nothing", 4, "\"locked\" and no joint")]
    [InlineData("steps: { one: {} }\nsignatures:\n  - { step: two }", "file-step-missing", 5, "\"two\"")]
    [InlineData("steps: { one: { holds: [{ what: turns free }] } }\nacceptances:\n  - { step: one, hold: turns fre }", "file-hold-point-missing", 5, "\"turns fre\"")]
    [InlineData("debts:\n  - { what: locking, deadline: before the start, item: joint studs }", "file-joint-missing", 4, "\"studs\"")]
    [InlineData("debts:\n  - { what: locking, deadline: before the start, item: studs }", "work-item", 4, "\"studs\"")]
    [InlineData("settlements:\n  - { of: 01932c5e-0000-7000-8000-000000000001 }", "file-debt-missing", 4, "01932c5e-0000-7000-8000-000000000001")]
    [InlineData("together:\n  pump: { parts: [pump/body] }", "together-of-one", 4, "pump/body alone")]
    [InlineData("permission:\n  dry: { on: [joint studs] }", "file-joint-missing", 4, "\"studs\"")]
    [InlineData("as-found:\n  - { what: end float, value: 4 thou }", "file-found-of-what", 4, "neither a part nor a joint")]
    [InlineData("as-found:\n  - { part: pump/gear, what: end float, of: pump.end-float }", "file-dimension-or-fit-missing", 4, "\"pump.end-float\"")]
    [InlineData("permissions:\n  - { line: everything, purpose: stand-run }", "permission-line", 4, "\"everything\"")]
    [InlineData("undoings:\n  - { of: 01932c5e-0000-7000-8000-000000000001 }", "file-signature-missing", 4, "01932c5e-0000-7000-8000-000000000001")]
    [InlineData("steps: { one: {} }\nsignatures:\n  - { step: one, relies-on: [01932c5e-0000-7000-8000-000000000001] }", "file-fact-missing", 5, "01932c5e-0000-7000-8000-000000000001")]
    public void BadInput_IsNamedByItsLineAndInWords(string text, string code, int line, string found)
    {
        var problems = Refused(text);
        var problem = problems.FirstOrDefault(p => p.Code == code);
        Assert.True(problem is not null, string.Join('\n', problems.Select(p => p.Code)));
        Assert.Equal(line, problem.At!.Line);
        Assert.Equal(found, problem.Found);
        Assert.NotEmpty(problem.DoThis);
    }
}
