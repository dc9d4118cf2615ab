using System.Globalization;
using Thoubook.Appraisal.Estimates;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Oil;

public sealed partial class OilSystem
{
    /// <summary>[-] standard relative uncertainty of oil caught and timed: volume, time and the oil's temperature together (common practice).</summary>
    private const double CaughtDoubt = 0.04;

    /// <summary>[-] Beyond so many standard uncertainties something is said.</summary>
    private const double Remarkable = 2;

    /// <summary>[-] So many times what was expected, or so many times less, is a plug or a slip of the pen and no clearance: nothing is fitted to it.</summary>
    private const double FarOff = 5;

    /// <summary>What the flow test is expected to give as it is planned.</summary>
    public Outcome<FlowTestExpected> FlowTestExpected() => _circuit.FlowTest is { } setting
        ? Expected(setting).Then<FlowTestExpected>(expected => new FlowTestExpected(setting, expected.Total, expected.Each))
        : new Problem("no-flow-test", "flow test", "nothing", "The circuit does not say how the flow test is to be made.", "Say where the oil is fed in, at which pressure and temperature.");

    /// <summary>The flow tests of the record, read against what was expected.</summary>
    public IReadOnlyList<FlowTestReading> FlowTests() => [.. Record.FlowTests.Select(Read).OfType<FlowTestReading>()];

    private FlowTestReading? Read(FlowTest test)
    {
        if (!Expected(SettingOf(test)).IsOk(out var expected, out _))
            return null;
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
        return Math.Log(caught / expected.Value) / Math.Sqrt((u * u) + (CaughtDoubt * CaughtDoubt));
    }

    private FlowTestSetting SettingOf(FlowTest test) => new(test.FedAt, test.Pressure, test.OilTemperature) { Eccentricity = _circuit.FlowTest?.Eccentricity };

    /// <summary>Oil from outside at a node, the pumps disconnected, the crank barely turned, its shafts in their bottom shells.</summary>
    private Outcome<(Estimate Total, IReadOnlyList<ExpectedFlow> Each)> Expected(FlowTestSetting setting)
    {
        var lying = setting.Eccentricity?.Si ?? FlowTestSetting.UsualEccentricity;
        var circuit = _circuit with
        {
            Nodes = [.. _circuit.Nodes.Where(n => n.Name != setting.At), (_circuit.Node(setting.At) ?? new NodeDefinition(setting.At)) with { Pressure = setting.Pressure }],
            Elements = [.. _circuit.Elements.Select(e => IsPump(e) ? e with { Blanked = true } : OilAnswers.IsBearing(e.Kind) ? Lying(e, lying) : e)],
        };
        circuit = circuit with { Elements = [.. circuit.Elements.Select(e => OnlyFed(circuit, e))] };
        var point = new OilPoint(0, setting.OilTemperature.Si);
        return RunningOil.Of(_oil, point).Then(oil => CircuitSizes.Of(circuit, _figures, point.OilTemperature).Then(sizes => SolvedCircuit.Of(sizes, point, oil))).Then<(Estimate, IReadOnlyList<ExpectedFlow>)>(solved =>
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
            return (new Estimate(total, sum.Contributions), consumers.OrderByDescending(c => c.Flow.Value).ToList());
        });
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
        var source = string.Create(CultureInfo.InvariantCulture, $"the flow test of {test.At.Date:uuuu-MM-dd}");
        return new FlowFit(log, Math.Log(test.Flow.Si), new Contribution(new UncertaintySource(SourceKind.Repeatability, source), CaughtDoubt, double.PositiveInfinity));
    }

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
