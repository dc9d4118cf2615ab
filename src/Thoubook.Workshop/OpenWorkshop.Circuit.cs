using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>Writes the whole circuit. It carries the revision that it was made from; 0 says that the engine has none yet.</summary>
    public Outcome<OilCircuit> SaveCircuit(string engine, OilCircuit circuit, string by) => Engine(engine).Then(record => SaveCircuit(record, circuit, by));

    /// <summary>Adds an element (revision 0) or edits one. Somebody else's change to the same element is shown beside this one; to another, it is no hindrance.</summary>
    public Outcome<ElementDefinition> EditElement(ElementEntry entry) => CircuitOf(entry.Engine).Then(record =>
    {
        var circuit = record.Circuit!;
        if (!Element(entry, record).IsOk(out var element, out var problems))
            return new Outcome<ElementDefinition>.Refused(problems);
        if (Clash(circuit.Element(element.Name), element, entry.Revision, record) is { } clash)
            return clash;
        var elements = circuit.Element(element.Name) is null
            ? [.. circuit.Elements, element]
            : circuit.Elements.Select(e => e.Name == element.Name ? element : e);
        return SaveCircuit(record, circuit with { Elements = [.. elements] }, entry.By).Then<ElementDefinition>(saved => saved.Element(element.Name)!);
    });

    /// <summary>Takes an element out of the circuit. One that is only closed off is blanked instead, and stays in the drawing.</summary>
    public Outcome<OilCircuit> RemoveElement(string engine, string element, int revision, string by) => CircuitOf(engine).Then(record =>
    {
        var circuit = record.Circuit!;
        if (!ElementName.TryRead(element.Trim(), out var name, out var problem))
            return problem with { Field = "element" };
        if (circuit.Element(name) is not { } there)
            return MissingElement(name, circuit);
        if (there.Revision != revision)
            return new Problem("revision-clash", $"element {name}", "removed", $"Somebody has changed it since you opened it (revision {there.Revision}, yours was {revision}); it is now {Said(there, record)}.", "Look at what is there now, and remove it if that is still wanted.");
        return SaveCircuit(record, circuit with { Elements = [.. circuit.Elements.Where(e => e.Name != name)] }, by);
    });

    /// <summary>Writes down the oil temperature that was found to settle in a state of running: the state has it from now on.</summary>
    public Outcome<OilState> SettleOil(string engine, string state, string temperature, string by) => CircuitOf(engine).Then(record =>
    {
        var circuit = record.Circuit!;
        if (circuit.State(state.Trim()) is not { } of)
            return new Problem("unknown-state", "state", $"\"{state}\"", $"The circuit has the states: {string.Join(", ", circuit.States.Select(s => s.Name))}.", Nearest.Advice(state, circuit.States.Select(s => s.Name), "Name one of them."));
        return Read(temperature, TemperatureContext, "temperature").Then(settled =>
            SaveCircuit(record, circuit with { States = [.. circuit.States.Select(s => s == of ? s with { OilTemperature = settled } : s)] }, by).Then<OilState>(saved => saved.State(of.Name)!));
    });

    /// <summary>Writes down a flow test. It relies on the very pieces in place.</summary>
    public Outcome<FlowTest> AddFlowTest(FlowTestEntry entry) => CircuitOf(entry.Engine).Then(record =>
    {
        var circuit = record.Circuit!;
        var asked = new Asked(record);
        var pressure = Quantity(entry.Pressure, QuantityKind.Pressure, "pressure");
        var temperature = Quantity(entry.OilTemperature, QuantityKind.Temperature, "oil-temperature");
        var flow = Blank(entry.Flow) is { } typed ? Quantity(typed, QuantityKind.Flow, "flow") : Caught(entry.Volume, entry.Time);
        var fedAt = asked.Name<NodeName>(entry.FedAt, NodeName.TryRead, "fed-at") ?? circuit.FlowTest?.At;
        if (fedAt is null && Blank(entry.FedAt) is null)
            asked.Refuse(new("fed-at-missing", "fed-at", "nothing", "The node that the oil was fed to; the circuit names none for its flow test.", "Name it."));
        else if (fedAt is { } at && !circuit.NodeNames.Contains(at))
            asked.Refuse(new("circuit-node-missing", "fed-at", $"\"{at}\"", "A node of the circuit.", Nearest.Advice(at.Text, circuit.NodeNames.Select(n => n.Text), "Name one that is there.")));
        var caught = new List<CaughtFlow>();
        foreach (var (name, text) in entry.Caught)
        {
            if (asked.Name<ElementName>(name, ElementName.TryRead, "caught") is not { } element)
                continue;
            if (circuit.Element(element) is null)
                asked.Refuse(MissingElement(element, circuit) with { Field = "caught" });
            else if (Quantity(text, QuantityKind.Flow, $"caught {element}") is { } of)
                caught.Add(new(element, of));
        }

        Within(pressure, CircuitRanges.FeedPressure, "The pressure of a flow test", "pressure");
        Within(temperature, CircuitRanges.OilTemperature, "An oil's temperature", "oil-temperature");
        Within(flow, CircuitRanges.CaughtFlow, "The flow of a flow test", "flow");

        if (asked.Problems.Count > 0)
            return asked.Refused<FlowTest>();
        var (id, when) = Signed(entry);
        return Write(entry, record, new FlowTest(id, when, entry.By, pressure!, temperature!, flow!)
        {
            FedAt = fedAt!.Value,
            Caught = caught,
            ReliesOn = PartsOfCircuit(circuit, record),
            Note = Blank(entry.Note),
        });

        void Within(Quantity? quantity, SizeRange allowed, string says, string field)
        {
            if (quantity is { } of && allowed.Against(of, says, field) is { } odd)
                asked.Refuse(odd);
        }

        Quantity? Quantity(string text, QuantityKind kind, string field) => asked.Take(Read(text, new ReadingContext { Kind = kind, Confirmed = entry.Confirmed }, field));

        Quantity? Caught(string? volume, string? time)
        {
            if (Blank(volume) is null || Blank(time) is null)
            {
                asked.Refuse(new("flow-missing", "flow", "nothing", "The flow, or the volume that was caught and the time that it took.", "Give the flow, or both."));
                return null;
            }

            if (Quantity(volume!, QuantityKind.Volume, "volume") is not { } much || Quantity(time!, QuantityKind.Time, "time") is not { } took)
                return null;
            if (took.Si > 0)
                return new Quantity(much.Si / took.Si, QuantityKind.Flow, TradeUnit.LitrePerMinute, $"{much.Text} in {took.Text}");
            asked.Refuse(new("circuit-size", "time", took.Text, "The time that it took is above 0.", "Correct it."));
            return null;
        }
    });

    /// <summary>Accepts a flow test: the circuit is fitted to it from now on, as long as what it relied on stands.</summary>
    public Outcome<Calibration> Calibrate(CalibrationEntry entry) => Engine(entry.Engine).Then(record =>
    {
        if (record.Index.Fact(entry.FlowTest) is not FlowTest test)
            return new Problem("unknown-flow-test", "of", entry.FlowTest.ToString(), "This engine has no flow test with that identifier.", "Take the identifier from the list of flow tests.");
        if (Standing.Of(test, record) is { Stands: false } standing)
            return new Problem("flow-test-fallen", "of", test.Headline, $"It no longer stands: {standing.Why}.", "Make the flow test again.");
        if (Oil(entry.Engine).IsOk(out var oil, out _) && oil.FlowTests().FirstOrDefault(t => t.Test.Id == test.Id) is { IsFarOff: true } reading)
            return new Problem("flow-test-far-off", "of", test.Headline, $"A circuit is fitted to a test that its sizes may explain, and this one lies too far off. {reading.Says}", "Find the cause and make the test again, or strike out what was written down wrong.");
        var (id, at) = Signed(entry);
        return Write(entry, record, new Calibration(id, at, entry.By, test.Id) { Why = Blank(entry.Why) });
    });

    private Outcome<OilCircuit> SaveCircuit(EngineRecord record, OilCircuit circuit, string by)
    {
        var problems = CircuitCheck.Of(circuit, record);
        return problems.Count > 0
            ? new Outcome<OilCircuit>.Refused([.. problems.Select(p => p.Placed)])
            : Define(record.Engine.Name, by, c => c with { Circuit = circuit }, r => r.Circuit);
    }

    private Outcome<EngineRecord> CircuitOf(string engine) => Engine(engine).Then<EngineRecord>(record => record.Circuit is not null
        ? record
        : new Problem("no-circuit", "engine", record.Engine.Name.Text, "This engine has no circuit yet.", "Make one by the circuit starter, or import it in the engine's file."));

    private static Outcome<ElementDefinition> Element(ElementEntry entry, EngineRecord record)
    {
        var asked = new Asked(record);
        var name = Needed<ElementName>(entry.Element, ElementName.TryRead, "element");
        var from = Needed<NodeName>(entry.From, NodeName.TryRead, "from");
        var to = Needed<NodeName>(entry.To, NodeName.TryRead, "to");
        var vent = asked.Name<NodeName>(entry.Vent, NodeName.TryRead, "vent");
        var part = asked.Name<PartName>(entry.Part, PartName.TryRead, "part");
        if (!Words.Read<ElementKind>(entry.Kind ?? "", "kind").IsOk(out var kind, out var unknown))
        {
            unknown.ToList().ForEach(asked.Refuse);
            return asked.Refused<ElementDefinition>();
        }

        var shape = ElementKinds.Of(kind);
        var values = new List<ElementValue>();
        foreach (var (key, text) in entry.Values.Where(v => Blank(v.Text) is not null))
        {
            if (shape.Key(key) is not { } known)
                asked.Refuse(new("circuit-key-unknown", key, $"\"{text}\"", $"A {kind.Word()} has the keys {string.Join(", ", shape.Keys.Select(k => k.Name))}.", Nearest.Advice(key, shape.Keys.Select(k => k.Name), "Leave it out, or use one of these.")));
            else if (asked.Take(CircuitText.Read(text, known, part, record, entry.Confirmed)) is { } value)
                values.Add(new(key, value));
        }

        if (asked.Problems.Count > 0)
            return asked.Refused<ElementDefinition>();
        return new ElementDefinition(name, kind, from, to)
        {
            Revision = entry.Revision,
            Vent = vent,
            Part = part,
            Blanked = entry.Blanked,
            Label = Blank(entry.Label),
            Note = Blank(entry.Note),
            Values = [.. values.OrderBy(v => shape.Keys.TakeWhile(k => k.Name != v.Key).Count())],
        };

        T Needed<T>(string? text, Asked.NameReader<T> read, string field)
            where T : struct
        {
            if (Blank(text) is null)
                asked.Refuse(new("name-missing", field, "nothing", field == "element" ? "The name of the element." : "The node at this end of the element.", "Name it."));
            return asked.Name(text, read, field) ?? default;
        }
    }

    private static Problem? Clash(ElementDefinition? there, ElementDefinition given, int revision, EngineRecord record)
    {
        var field = $"element {given.Name}";
        return (there, revision) switch
        {
            (null, 0) => null,
            (null, _) => new("revision-clash", field, Said(given, record), "Somebody has removed it since you opened it.", "Add it again if it is still wanted."),
            ({ } known, 0) => new("there-already", field, Said(given, record), $"It is there already, as {Said(known, record)}.", "Choose another name, or edit the one that is there."),
            ({ } known, _) when known.Revision != revision => new("revision-clash", field, Said(given, record), $"Somebody has changed it since you opened it (revision {known.Revision}, yours was made from {revision}); it is now {Said(known, record)}.", "Look at what is there now, and make your change again if it is still wanted."),
            _ => null,
        };
    }

    /// <summary>An element in one line: <c>pipe from delivery to gallery, bore 1/2 in, length 8 in</c>.</summary>
    private static string Said(ElementDefinition element, EngineRecord record) => string.Join(", ",
    [
        $"{(element.Blanked ? "blanked " : "")}{element.Kind.Word()} from {element.From} to {element.To}",
        .. element.Values.Select(v => $"{v.Key} {CircuitText.Write(v.Value, element.Part, record)}"),
    ]);

    private static Problem MissingElement(ElementName name, OilCircuit circuit) =>
        new("unknown-element", "element", $"\"{name}\"", "The circuit has no element of that name.", Nearest.Advice(name.Text, circuit.Elements.Select(e => e.Name.Text), "Name one that is there."));

    /// <summary>The facts by which every piece is where it is whose sizes the circuit takes.</summary>
    private static List<FactId> PartsOfCircuit(OilCircuit circuit, EngineRecord record)
    {
        var figures = circuit.Elements.SelectMany(e => e.Values).Select(v => v.Value).OfType<CircuitValue.Taken>().Select(t => t.Figure);
        var dimensions = figures.SelectMany(f => record.Index.Figure(f) is Record.Measures.Fit { Gap.Count: > 0 } fit ? fit.Gap.Select(t => t.Of) : [f]);
        var parts = dimensions.Select(d => d.Part).Concat(circuit.Elements.Select(e => e.Part).OfType<PartName>()).Distinct();
        return [.. parts.Select(p => record.Index.PlacedIn(p)?.Id ?? record.Index.ChosenFor(p)?.Id).OfType<FactId>().Distinct()];
    }
}
