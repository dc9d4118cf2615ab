using Thoubook.Appraisal.Oil;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;
using Thoubook.Workshop;
using Thoubook.Workshop.Oil;

namespace Thoubook.Cli.Verbs;

internal static class OilFlowTestVerb
{
    private const string Log = "log";
    private const string Accept = "accept";

    private static readonly Option FedAt = new("fed-at", "NODE", "with log: the node of the circuit that was fed; else as the circuit sets the test");
    private static readonly Option Pressure = new("pressure", "PRESSURE", "with log: at which it was fed; else as the circuit sets the test");
    private static readonly Option OilTemperature = new("oil-temp", "TEMPERATURE", "with log: of the oil fed; else as the circuit sets the test");
    private static readonly Option Caught = new("caught", "ELEMENT=FLOW", "with log: what was caught from one element by itself; may be given again") { Many = true };
    private static readonly Option Note = new("note", "TEXT", "with log: a remark kept with it");
    private static readonly Option Why = new("why", "REASON", "with accept: the reason");

    public static readonly Verb FlowTest = new("oil flow-test", "Says what to expect of the flow test before the sump goes on, writes one down, or accepts it to calibrate by.", Run)
    {
        Operands =
        [
            OilVerbs.Engine,
            new("log|accept", "log writes a test down, accept fits the circuit to one; left out: what to expect, and what earlier tests say") { Optional = true },
            new("FLOW|ID", "with log all that ran through, 0.9l/min or \"1 imp gal in 5 min\"; with accept the identifier of the test, else the last one") { Optional = true, Rest = true },
        ],
        Options = [.. OilVerbs.Supposing, FedAt, Pressure, OilTemperature, Caught, Note, Why, Option.By, Option.At, Option.Id, Option.Confirm, Option.Json],
        More = "Oil from outside goes in at a known pressure and temperature, the pump disconnected and the crank turned by hand. The total finds a plug left out; one blocked bearing shows only in what is caught from it.",
        Examples =
        [
            new("thoubook oil flow-test \"Sandpiper six\"", "what should run through, in all and from each bearing."),
            new("thoubook oil flow-test \"Sandpiper six\" --blank rocker-restrictor", "with the way to the rockers plugged, so that the bearings show."),
            new("thoubook oil flow-test \"Sandpiper six\" log 0.9l/min --caught main-bearing-3=150cc/min --by bench", "what did."),
            new("thoubook oil flow-test \"Sandpiper six\" accept --why \"plugs seen in place\" --by owner", "from now on every pressure is fitted to it."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal)
    {
        var rest = string.Join(' ', request.Operands.Skip(2));
        return request.Operands.ElementAtOrDefault(1) switch
        {
            null => Expect(request, terminal),
            Log when rest.Length > 0 => Store(request, terminal, workshop => Entry(request, workshop, rest).Then(workshop.AddFlowTest).Then<Fact>(f => f)),
            Log => terminal.Refuse(request, [new Problem("too-few", "", "no FLOW", "What was caught in all, such as 0.9l/min.", "Write it after log.")]),
            Accept => Store(request, terminal, workshop => Acceptance(request, workshop, rest).Then(workshop.Calibrate).Then<Fact>(f => f)),
            var other => terminal.Refuse(request, [new Problem("unknown-word", "", Request.Quoted(other), $"After the engine stands {Log}, {Accept} or nothing.", Nearest.Advice(other, [Log, Accept], "Leave it out to see what to expect."))]),
        };
    }

    /// <summary>What was made and caught; what is not said is as the circuit sets the test.</summary>
    private static Outcome<FlowTestEntry> Entry(Request request, OpenWorkshop workshop, string flow) => workshop.Engine(request.Operands[0]).Then(record => Facts.Signature(request).Then<FlowTestEntry>(signed =>
    {
        var problems = new List<Problem>();
        var setting = record.Circuit?.FlowTest;
        var caught = new List<(string, string)>();
        foreach (var text in request.All(Caught))
        {
            if (text.Split('=', 2) is [var element, var from])
                caught.Add((element, from));
            else
                problems.Add(new("no-value", "--caught", Request.Quoted(text), "What was caught from one element is written ELEMENT=FLOW.", "Such as main-bearing-1=40cc/min."));
        }

        if (problems.Count > 0)
            return new Outcome<FlowTestEntry>.Refused(problems);
        var (volume, time) = flow.Split(" in ", 2, StringSplitOptions.TrimEntries) is [var much, var took] ? (much, took) : (null, null);
        return new FlowTestEntry(request.Operands[0], request[Pressure] ?? setting?.Pressure.Text ?? "", request[OilTemperature] ?? setting?.OilTemperature.Text ?? "", signed.By)
        {
            Flow = volume is null ? flow : null,
            Volume = volume,
            Time = time,
            FedAt = request[FedAt],
            Caught = caught,
            Note = request[Note],
            At = signed.At,
            Id = signed.Id,
            Confirmed = request.Confirmed,
        };
    }));

    /// <summary>The acceptance of the test that is named, else of the last one.</summary>
    private static Outcome<CalibrationEntry> Acceptance(Request request, OpenWorkshop workshop, string id) => workshop.Engine(request.Operands[0]).Then(record => Facts.Signature(request).Then(signed =>
    {
        Outcome<FactId> of = id.Length > 0 ? Facts.Identifier(id)
            : record.FlowTests.LastOrDefault(t => Standing.Of(t, record).Stands) is { } last ? last.Id
            : new Problem("no-flow-test", "", "nothing", "This engine has no flow test that stands.", "Write one down first: thoubook oil flow-test ENGINE log FLOW.");
        return of.Then<CalibrationEntry>(test => new CalibrationEntry(request.Operands[0], test, signed.By) { Why = request[Why], At = signed.At, Id = signed.Id });
    }));

    private static ExitStatus Expect(Request request, Terminal terminal)
    {
        if (!OilVerbs.Ask(request, terminal, speed: null, oilTemperature: null).Then(asked => asked.System.FlowTestExpected().Then<(OilAsked, FlowTestExpected)>(expected => (asked, expected))).IsOk(out var known, out var problems))
            return terminal.Refuse(request, problems);
        var (asked, expected) = known;
        var tests = asked.Now.FlowTests();
        var left = expected.Most is { } way && asked.System.Suppose(new OilTrial("") { Blanked = [way.Element.Name] }).Then(blanked => blanked.FlowTestExpected()).IsOk(out var without, out _) ? without.Total.Value : (double?)null;
        IReadOnlyList<Caution> cautions = [OilCautions.FlowTest, OilCautions.BlankedPort, OilCautions.Prediction];
        if (request.Has(Option.Json))
        {
            terminal.Json(
                new OilFlowTestAnswer(
                    asked.Record.Engine.Name.Text,
                    asked.Record.Engine.Invented,
                    expected.Setting.At.Text,
                    expected.Setting.Pressure.Si,
                    expected.Setting.OilTemperature.Si,
                    BandAnswer.Of(expected.Total),
                    [.. expected.Each.Select(e => new OilFlowAnswer(e.Element.Name.Text, BandAnswer.Of(e.Flow)))],
                    expected.Most is { } hides ? new(hides.Element.Name.Text, hides.Flow, left) : null,
                    [.. tests.Select(OilFlowTestReadingAnswer.Of)],
                    [.. cautions.Select(c => c.Text)]),
                AnswerJson.Shapes.OilFlowTestAnswer);
            return ExitStatus.Good;
        }

        terminal.Out.WriteLine($"{asked.Name}: flow test at {expected.Setting.At}, {expected.Setting.Pressure.Text}, oil {expected.Setting.OilTemperature.Text}");
        foreach (var line in asked.Supposed)
            terminal.Out.WriteLine(line);
        terminal.Out.WriteLine($"In all {OilAsked.Flow(expected.Total.Value)}, {Band(expected.Total, OilAsked.Flow)} 95 times in 100; {QuantityText.Format(ImperialGallon / expected.Total.Value, TradeUnit.Minute, 1)} for an imperial gallon.");
        terminal.Out.WriteLine();
        var each = new Table("from", "flow", "95 times in 100");
        foreach (var one in expected.Each.Where(e => OilAsked.IsCaught(e.Flow.Value)))
            each.Add(one.Element.Name.Text, OilAsked.SmallFlow(one.Flow.Value), Band(one.Flow, OilAsked.SmallFlow));
        each.WriteTo(terminal);
        if (expected.Each.Count(e => !OilAsked.IsCaught(e.Flow.Value)) is > 0 and var dry)
            terminal.Out.WriteLine($"{dry} more give nothing that could be caught.");
        if (expected.Most is { } most && left is { } rest)
            terminal.Out.WriteLine($"{most.Element.Name} takes {OilAsked.Flow(most.Flow)} of it and feeds no bearing. Blanked, {OilAsked.Flow(rest)} would be left, in which the bearings show: --blank {most.Element.Name}.");
        terminal.Out.WriteLine();
        if (tests.Count == 0)
        {
            terminal.Out.WriteLine("No flow test is written down yet.");
        }
        else
        {
            var table = new Table("identifier", "caught", "expected", "standing", "says");
            foreach (var test in tests)
            {
                table.Add(
                    test.Test.Id.ToString(),
                    test.Test.Flow.Text,
                    test.Expected is { } should ? OilAsked.Flow(should.Value) : "—",
                    !test.Standing.Stands ? test.Standing.Why : test.Calibrates ? "calibrates" : "stands",
                    string.Join(" ", test.Each.Select(e => e.Says).Prepend(test.Says)));
            }

            table.WriteTo(terminal);
        }

        terminal.Out.WriteLine();
        foreach (var caution in cautions)
            terminal.Out.WriteLine($"Caution: {caution.Text}");
        return ExitStatus.Good;
    }

    /// <summary>Writes down a test or its acceptance, prints its identifier and says what it means for the model.</summary>
    private static ExitStatus Store(Request request, Terminal terminal, Func<OpenWorkshop, Outcome<Fact>> act) => Workshops.With(request, terminal, workshop =>
    {
        if (!act(workshop).IsOk(out var fact, out var problems))
            return terminal.Refuse(request, problems);
        var test = fact is Calibration accepted ? accepted.Of : fact.Id;
        var reading = workshop.Oil(request.Operands[0]).IsOk(out var system, out _) ? system.FlowTests().FirstOrDefault(t => t.Test.Id == test) : null;
        if (request.Has(Option.Json))
            terminal.Json(new OilTestStoredAnswer(fact.Id.ToString(), fact.Headline, reading is null ? null : OilFlowTestReadingAnswer.Of(reading)), AnswerJson.Shapes.OilTestStoredAnswer);
        else
            terminal.Out.WriteLine(fact.Id);
        terminal.Error.WriteLine(fact.Headline);
        foreach (var says in reading is null ? [] : reading.Each.Select(e => e.Says).Prepend(reading.Says))
            terminal.Error.WriteLine(says);
        return ExitStatus.Good;
    });

    private static string Band(Appraisal.Estimates.Estimate flow, Func<double, string> show) => $"{show(Math.Max(0, flow.Value - flow.Band))} to {show(flow.Value + flow.Band)}";

    /// <summary>[m³]</summary>
    private static double ImperialGallon => TradeUnit.ImperialGallon.Factor;
}
