using System.Globalization;
using Thoubook.Appraisal.Estimates;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Oil;

public sealed partial class OilSystem
{
    /// <summary>[-] What takes a greater share of the total hides the bearings.</summary>
    private const double Hides = 0.3;

    /// <summary>[-] Flows nearer to each other are those of one way.</summary>
    private const double Alike = 1e-3;

    /// <summary>[-] Beyond so many standard uncertainties something is said.</summary>
    private const double Remarkable = 2;

    /// <summary>[-] So many times what was expected, or so many times less, is a plug or a slip of the pen and no clearance: nothing is fitted to it.</summary>
    private const double FarOff = 5;

    /// <summary>What the flow test is expected to give as it is planned.</summary>
    public Outcome<FlowTestExpected> FlowTestExpected() => _circuit.FlowTest is { } setting
        ? Expected(setting)
        : new Problem("no-flow-test", "flow test", "nothing", "The circuit does not say how the flow test is to be made.", "Say where the oil is fed in, at which pressure and temperature.");

    /// <summary>The flow tests of the record, read against what was expected.</summary>
    public IReadOnlyList<FlowTestReading> FlowTests() => [.. Record.FlowTests.Select(Read)];

    private FlowTestReading Read(FlowTest test)
    {
        if (!Expected(SettingOf(test)).IsOk(out var expected, out var why))
            return new FlowTestReading(test, Standing.Of(test, Record), false, null, 0, $"What to expect of it cannot be worked out. {string.Join(" ", why)}", []);
        var deviation = Deviation(test.Flow.Si, expected.Total);
        var says = deviation switch
        {
            > Remarkable => "More than expected: a plug left out, a bush turned so that its hole is open, a clearance wider than measured. Look before the sump goes on.",
            < -Remarkable => "Less than expected: a way blocked, a clearance closer than measured, the feed throttled. Look at each bearing.",
            _ => "As expected. The total finds a lost plug, not one blocked bearing: see that every bearing drips.",
        };
        var each = new List<CaughtReading>();
        foreach (var caught in test.Caught)
        {
            if (expected.Each.FirstOrDefault(e => e.Element.Name == caught.Element) is not { } one)
                continue;
            var off = Deviation(caught.Flow.Si, one.Flow);
            each.Add(new CaughtReading(one.Element, one.Flow, off, off switch
            {
                > Remarkable => "more than expected: wider than measured, or its bush has turned",
                < -Remarkable => "less than expected: its way is partly blocked, or it is closer than measured",
                _ => "as expected",
            }));
        }

        return new FlowTestReading(test, Standing.Of(test, Record), Record.Index.CalibratingTest?.Id == test.Id && !IsFarOff(test, expected.Total), expected.Total, deviation, says, each) { IsFarOff = IsFarOff(test, expected.Total) };
    }

    private static bool IsFarOff(FlowTest test, Estimate expected) => !(test.Flow.Si < FarOff * expected.Value && test.Flow.Si > expected.Value / FarOff);

    private static double Deviation(double caught, Estimate expected)
    {
        if (caught <= 0 || expected.Value <= 0)
            return caught > 0 ? double.PositiveInfinity : double.NegativeInfinity;
        var u = expected.StandardUncertainty / expected.Value;
        return Math.Log(caught / expected.Value) / Math.Sqrt((u * u) + (OilDoubts.Caught.Value * OilDoubts.Caught.Value));
    }

    private FlowTestSetting SettingOf(FlowTest test) => new(test.FedAt, test.Pressure, test.OilTemperature) { Eccentricity = _circuit.FlowTest?.Eccentricity };

    /// <summary>Oil from outside at a node, the pumps disconnected, the crank barely turned, its shafts in their bottom shells.</summary>
    private Outcome<FlowTestExpected> Expected(FlowTestSetting setting)
    {
        var lying = setting.Eccentricity?.Si ?? FlowTestSetting.UsualEccentricity;
        var circuit = _circuit with
        {
            Nodes = [.. _circuit.Nodes.Where(n => n.Name != setting.At), (_circuit.Node(setting.At) ?? new NodeDefinition(setting.At)) with { Pressure = setting.Pressure }],
            Elements = [.. _circuit.Elements.Select(e => IsPump(e) ? e with { Blanked = true } : OilAnswers.IsBearing(e.Kind) ? Lying(e, lying) : e)],
        };
        circuit = circuit with { Elements = [.. circuit.Elements.Select(e => OnlyFed(circuit, e))] };
        var point = new OilPoint(0, setting.OilTemperature.Si);
        return RunningOil.Of(_oil, point).Then(oil => CircuitSizes.Of(circuit, _figures, point.OilTemperature).Then(sizes => SolvedCircuit.Of(sizes, point, oil))).Then<FlowTestExpected>(solved =>
        {
            var consumers = new List<ExpectedFlow>();
            double total = 0;
            var shares = new List<(double, Estimate)>();
            for (var i = 0; i < circuit.Elements.Count; i++)
            {
                var element = circuit.Elements[i];
                if (element.Blanked)
                    continue;
                var isReservoir = circuit.Node(element.To)?.Pressure is not null;
                var flow = solved.Flow(i);
                if (element.From == setting.At)
                    total += flow;
                if (element.To == setting.At)
                    total -= flow;
                if (isReservoir && element.To != setting.At && flow > 0)
                {
                    var estimate = solved.FlowOf(i);
                    consumers.Add(new ExpectedFlow(_circuit.Elements[i], estimate));
                    shares.Add((1, estimate));
                }
            }

            // What is fed is what falls to the reservoirs, so that their doubts, shared sources and all, add up to its own.
            var sum = Estimate.Sum([.. shares]);
            return new FlowTestExpected(setting, new Estimate(total, sum.Contributions), consumers.OrderByDescending(c => c.Flow.Value).ToList()) { Most = Most(solved, circuit, setting.At, total) };
        });
    }

    /// <summary>What takes most of the total and feeds no bearing, so that it hides what the test is made for; null where nothing takes so much.</summary>
    private (ElementDefinition Element, double Flow)? Most(SolvedCircuit solved, OilCircuit circuit, NodeName fedAt, double total)
    {
        (ElementDefinition Element, double Flow)? most = null;
        for (var i = 0; i < circuit.Elements.Count; i++)
        {
            var element = circuit.Elements[i];
            if (element.Blanked || OilAnswers.IsBearing(element.Kind) || Math.Abs(solved.Flow(i)) is var flow && flow < Hides * total)
                continue;
            var after = new List<NodeName> { solved.Flow(i) > 0 ? element.To : element.From };
            var feedsBearing = false;
            for (var n = 0; n < after.Count && !feedsBearing; n++)
            {
                if (circuit.Node(after[n])?.Pressure is not null)
                    continue;
                for (var j = 0; j < circuit.Elements.Count; j++)
                {
                    var next = circuit.Elements[j];
                    var from = solved.Flow(j) > 0 ? next.From : next.To;
                    if (next.Blanked || solved.Flow(j) == 0 || from != after[n])
                        continue;
                    feedsBearing |= OilAnswers.IsBearing(next.Kind);
                    var to = from == next.From ? next.To : next.From;
                    if (!after.Contains(to))
                        after.Add(to);
                }
            }

            // Of several one behind the other, the jet is the one that a plug closes.
            if (!feedsBearing && (most is not { } so || flow > so.Flow * (1 + Alike) || (flow > so.Flow * (1 - Alike) && element.Kind == ElementKind.Jet)))
                most = (_circuit.Elements[i], flow);
        }

        return most;
    }

    private static ElementDefinition Lying(ElementDefinition element, double eccentricity) => element with
    {
        Values = [.. element.Values.Where(v => v.Key != "eccentricity" && v.Key != "film-rise"), Given("eccentricity", eccentricity, QuantityKind.Number), Given("film-rise", 0, QuantityKind.TemperatureDifference)],
    };

    private static ElementValue Given(string key, double si, QuantityKind kind) => new(key, new CircuitValue.Given(Exactly(si, kind)));

    /// <summary>What the pumps alone joined to the rest stands apart while they are disconnected: it is left out.</summary>
    private static ElementDefinition OnlyFed(OilCircuit circuit, ElementDefinition element)
    {
        if (element.Blanked)
            return element;
        var reached = circuit.Nodes.Where(n => n.Pressure is not null).Select(n => n.Name).ToHashSet();
        for (var grown = true; grown;)
        {
            grown = false;
            foreach (var e in circuit.Elements.Where(e => !e.Blanked && reached.Contains(e.From) != reached.Contains(e.To)))
                grown |= reached.Add(e.From) | reached.Add(e.To);
        }

        return element.NodesNamed.All(reached.Contains) ? element : element with { Blanked = true };
    }

    /// <summary>The flow test that every pressure is fitted to.</summary>
    /// <param name="Log">The natural logarithm of the total expected, with what it owes to each source.</param>
    /// <param name="Caught">The logarithm of what was caught.</param>
    /// <param name="Noise">What the catching itself adds.</param>
    private sealed record FlowFit(Estimate Log, double Caught, Contribution Noise);

    private FlowFit? WorkOutFit()
    {
        if (Record.Index.CalibratingTest is not { } test || test.Flow.Si <= 0 || !Expected(SettingOf(test)).IsOk(out var expected, out _) || expected.Total.Value <= 0
            || IsFarOff(test, expected.Total))
            return null;
        var total = expected.Total;
        var log = new Estimate(Math.Log(total.Value), [.. total.Contributions.Select(c => c with { Value = c.Value / total.Value })]);
        var source = string.Create(CultureInfo.InvariantCulture, $"{OilDoubts.TestOf}{test.At.Date:uuuu-MM-dd}");
        return new FlowFit(log, Math.Log(test.Flow.Si), new Contribution(new UncertaintySource(SourceKind.Repeatability, source), OilDoubts.Caught.Value, double.PositiveInfinity));
    }

    /// <summary>What the accepted flow test says of the sources of a circuit; null where none is fitted to.</summary>
    private TestedSources? Tested(SolvedCircuit solved) => _fit.Value is { } fit ? new TestedSources(solved, fit.Log, fit.Caught, fit.Noise.Value) : null;

    /// <summary>An estimate after the flow test is taken into account: what both owe to the same sources moves it, and narrows it.</summary>
    private Estimate Fitted(Estimate estimate)
    {
        if (_fit.Value is not { } fit)
            return estimate;
        var variance = (fit.Log.StandardUncertainty * fit.Log.StandardUncertainty) + (fit.Noise.Value * fit.Noise.Value);
        var gain = estimate.CovarianceWith(fit.Log) / variance;
        var shares = Estimate.Sum([(1, estimate), (-gain, fit.Log), (-gain, new Estimate(0, [fit.Noise]))]);
        return new Estimate(estimate.Value + (gain * (fit.Caught - fit.Log.Value)), shares.Contributions);
    }
}
