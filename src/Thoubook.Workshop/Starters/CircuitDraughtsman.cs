using System.Globalization;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;
using static Thoubook.Workshop.Starters.CircuitSizes;

namespace Thoubook.Workshop.Starters;

/// <summary>Draws one circuit, from the pick-up to the last jet, in the order in which the oil flows.</summary>
internal sealed class CircuitDraughtsman(EngineRecord record, CircuitAnswers answers)
{
    private const double MainPressure = 50;
    private const double LowPressure = 8;

    private const string Sump = "sump";
    private const string Tank = "tank";

    private readonly CircuitSizes _sizes = new(record);
    private readonly List<ElementDefinition> _elements = [];
    private readonly List<OilGauge> _gauges = [];
    private readonly OilDemand _demand = new();

    /// <summary>[in] Small on full pressure, so that it does not take all of it.</summary>
    private double JetBore => answers.Relief == ReliefBody.Single ? 0.020 : 0.031;

    public Outcome<StartedCircuit> Draw()
    {
        var mains = Bearings("mains-at", answers.Mains, answers.Journal.Si);
        var journal = mains[0].Journal;
        var bigEnds = answers.BigEndFeed == BigEndFeed.Crank ? Bearings("big-ends-at", answers.BigEnds, journal * 0.9) : [];
        var camshaft = Bearings("camshaft-at", answers.CamshaftBearings, journal * 0.7);
        var pump = _sizes.Part("pump-at", answers.Place("pump-at"));
        var scavenge = Enumerable.Range(1, answers.ScavengePumps).Select(n => _sizes.Part("scavenge-at", Nth(answers.Place("scavenge-at"), n))).ToList();
        if (_sizes.Problems.Count > 0)
            return new Outcome<StartedCircuit>.Refused(_sizes.Problems);

        mains.ForEach(b => _demand.AddGrooved(b.Journal, Clearance(b)));
        bigEnds.ForEach(b => _demand.AddHoleFed(Clearance(b)));
        camshaft.ForEach(b => _demand.AddHoleFed(Clearance(b)));
        if (answers.Consumer != OilConsumer.None && !answers.IsConsumerBlanked)
            _demand.AddConsumer();
        for (var n = 0; n < answers.TimingJets; n++)
            _demand.AddJet(JetBore * 0.0254, answers.Relief == ReliefBody.Single ? MainPressure : LowPressure);
        var gears = OilDemand.GearsFor(_demand.DisplacementAt(2 * answers.Idle.Si));

        var delivery = Suction(pump!.Value, gears);
        var (feed, rail) = Relief(delivery, gears, journal);
        Gallery(feed, mains, bigEnds, journal);
        LowPressureSide(rail, camshaft);
        Scavenge(scavenge, gears);
        var circuit = new OilCircuit
        {
            Oil = new OilChoice { Grade = answers.Oil },
            Nodes = answers.Sump == Starters.Sump.Dry
                ? [new(new(Tank)) { Pressure = Psi(0), Height = Quantity("12 in", QuantityKind.Length), Label = "oil tank, its height assumed" }, new(new(Sump)) { Pressure = Psi(0) }]
                : [new(new(Sump)) { Pressure = Psi(0) }],
            Elements = _elements,
            Gauges = _gauges,
            States =
            [
                new(OilState.HotIdle, answers.Idle, Celsius("80 °C")),
                new(OilState.Cruise, Speed(3), Celsius("75 °C")),
                new(OilState.ColdStart, answers.Idle, Celsius("5 °C")),
            ],
            FlowTest = new(new NodeName("gallery-1"), Psi(30), Celsius("30 °C")),
        };
        var problems = CircuitCheck.Of(circuit, _sizes.Whole);
        return problems.Count > 0 ? new Outcome<StartedCircuit>.Refused([.. problems.Select(p => p.Placed)]) : new StartedCircuit(circuit, _sizes.Added);
    }

    private List<DrawnBearing> Bearings(string key, int number, double journal) =>
        [.. Enumerable.Range(1, number).Select(n => _sizes.Bearing(key, answers.Place(key), n, journal))];

    private double Clearance(DrawnBearing bearing) =>
        _sizes.Middle(_sizes.Whole.Index.Figure(((CircuitValue.Taken)bearing.Clearance.Value).Figure)) ?? bearing.Journal * 1.1e-3;

    private string Suction(PartName pump, DrawnGears gears)
    {
        var from = answers.Sump == Starters.Sump.Dry ? Tank : Sump;
        Add("pick-up-gauze", ElementKind.Strainer, from, "suction-gauze", null, [Assumed("area", TradeUnit.SquareInch.Show(Math.Max(2 * 0.0254 * 0.0254, 20 * gears.SuctionBore * gears.SuctionBore), 0)), Assumed("pitch", "40 thou"), Assumed("wire", "12 thou")]);
        Add("suction-pipe", ElementKind.Pipe, "suction-gauze", "suction", null, [Assumed("bore", gears.SuctionBore), Assumed("length", answers.Sump == Starters.Sump.Dry ? "24 in" : "8 in"), Assumed("losses", "1.5")]);
        Pump("pressure-pump", "suction", "delivery", pump, gears, gears.Width, []);
        var node = "delivery";
        if (answers.HasFilter)
            Add("filter", ElementKind.Filter, node, node = "filtered", null, [Assumed("rated-flow", TradeUnit.LitrePerMinute.Show(gears.FlowAt(1000), 2)), Assumed("rated-loss", "3 psi"), Assumed("rated-viscosity", "20 cP")]);
        if (answers.HasCooler && answers.Sump == Starters.Sump.Wet)
            Cooler(node, node = "cooled");
        return node;
    }

    private void Cooler(string from, string to) => Add(
        "cooler",
        ElementKind.Cooler,
        from,
        to,
        null,
        [Assumed("tubes", "40"), Assumed("bore", "0.2 in"), Assumed("length", "10 in"), Assumed("by-pass", "20 psi"), Assumed("by-pass-bore", "0.5 in")]);

    /// <summary>The relief body. The low-pressure rail is its own node where the body makes one; else the gallery feeds it.</summary>
    private (string Feed, string? Rail) Relief(string delivery, DrawnGears gears, double journal)
    {
        const string Rail = "low-pressure";
        var hasLow = answers.Relief != ReliefBody.Single;
        _gauges.Add(new(new OilGaugeName("main"), new NodeName("gallery-1")));
        if (hasLow)
            _gauges.Add(new(new OilGaugeName("low pressure"), new NodeName(Rail)));
        switch (answers.Relief)
        {
            case ReliefBody.Cascade:
                Valve("first-stage", delivery, Rail, MainPressure, gears);
                Valve("second-stage", Rail, Sump, LowPressure, gears);
                break;
            case ReliefBody.ReducingValve:
                Valve("relief-valve", delivery, Sump, MainPressure, gears);
                Add("reducing-valve", ElementKind.ReducingValve, delivery, Rail, null, [Assumed("seat", "0.25 in"), Assumed("setting", "8 psi"), Assumed("spring", "20 lbf/in"), Assumed("piston", "0.5 in"), Assumed("lift", "0.0625 in")]);
                break;
            case ReliefBody.JetAndRelief:
                Valve("relief-valve", delivery, Sump, MainPressure, gears);
                Add("low-pressure-jet", ElementKind.Jet, delivery, Rail, null, [Assumed("bore", "60 thou")]);
                Valve("low-pressure-valve", Rail, Sump, LowPressure, gears);
                break;
            default:
                Valve("relief-valve", delivery, Sump, MainPressure, gears);
                break;
        }

        if (answers.Consumer != OilConsumer.None)
            Add(answers.Consumer.Word(), ElementKind.Consumer, delivery, Sump, null, [Assumed("flow", "0.2 imp gal/min"), Assumed("full-at", "20 psi")], answers.IsConsumerBlanked);
        Add("gallery-feed", ElementKind.Drilling, delivery, "gallery-1", null, [Assumed("bore", journal * 0.2), Assumed("length", "6 in")]);
        return ("gallery-1", hasLow ? Rail : null);
    }

    private void Valve(string name, string from, string to, double cracking, DrawnGears gears)
    {
        // A spring that opens the valve wholly at a quarter above its setting; wholly open is a quarter of the seat.
        var seat = gears.SeatBore;
        var spring = cracking * TradeUnit.Psi.Factor * Math.PI * seat / 4;
        Add(name, ElementKind.DiscValve, from, to, null, [Assumed("seat", seat), Assumed("cracking", $"{cracking.ToString(CultureInfo.InvariantCulture)} psi"), Assumed("spring", TradeUnit.PoundForcePerInch.Show(spring, 1)), Assumed("lift", TradeUnit.Inch.Show(seat / 4, 3))]);
    }

    private void Gallery(string first, List<DrawnBearing> mains, List<DrawnBearing> bigEnds, double journal)
    {
        var at = first;
        for (var n = 1; n <= mains.Count; n++)
        {
            if (n > 1)
                Add($"gallery-{n - 1}-{n}", ElementKind.Drilling, at, at = $"gallery-{n}", null, [Assumed("bore", journal * 0.2), Assumed("length", journal * 2)]);
            var bearing = mains[n - 1];
            var groove = $"main-{n}";
            Add($"main-{n}-feed", ElementKind.Drilling, at, groove, null, [Assumed("bore", journal * 0.12), Assumed("length", journal * 1.5)]);
            Add(
                $"main-{n}",
                answers.Groove == Groove.Full ? ElementKind.GroovedBearing : ElementKind.HalfGroovedBearing,
                groove,
                Sump,
                bearing.Part,
                [bearing.Diameter, bearing.Clearance, Assumed("land", bearing.Journal * 0.3)]);
        }

        for (var n = 1; n <= bigEnds.Count; n++)
        {
            // Each pin is fed from the main beside it.
            var main = $"main-{Math.Min(n, mains.Count)}";
            var pin = $"pin-{n}";
            var bearing = bigEnds[n - 1];
            Add($"web-{n}", ElementKind.CrankDrilling, main, pin, null, [Assumed("bore", journal * 0.12), Assumed("length", journal * 2), Assumed("from-radius", journal / 2), Assumed("to-radius", journal * 1.5)]);
            Add($"big-end-{n}", ElementKind.HoleFedBearing, pin, Sump, bearing.Part, HoleFed(bearing, 0.7));
        }
    }

    private static DrawnSize[] HoleFed(DrawnBearing bearing, double widthShare) =>
        [bearing.Diameter, bearing.Clearance, Assumed("width", bearing.Journal * widthShare), Assumed("hole", bearing.Journal * 0.12), Assumed("hole-angle", "90°")];

    /// <summary>The camshaft and the timing gears, on the low pressure where there is one.</summary>
    private void LowPressureSide(string? rail, List<DrawnBearing> camshaft)
    {
        if (camshaft.Count + answers.TimingJets == 0)
            return;
        var from = rail ?? $"gallery-{answers.Mains}";
        if (camshaft.Count > 0)
        {
            Add("camshaft-feed", ElementKind.Pipe, from, "camshaft", null, [Assumed("bore", "0.25 in"), Assumed("length", "20 in"), Assumed("losses", "3")]);
            for (var n = 1; n <= camshaft.Count; n++)
                Add($"camshaft-{n}", ElementKind.HoleFedBearing, "camshaft", Sump, camshaft[n - 1].Part, HoleFed(camshaft[n - 1], 0.8));
        }

        for (var n = 1; n <= answers.TimingJets; n++)
            Add($"timing-jet-{n}", ElementKind.Jet, from, Sump, null, [Assumed("bore", TradeUnit.Inch.Show(JetBore * 0.0254, 3))]);
    }

    private void Scavenge(List<PartName?> pumps, DrawnGears gears)
    {
        if (pumps.Count == 0)
            return;
        for (var n = 1; n <= pumps.Count; n++)
        {
            Add($"scavenge-gauze-{n}", ElementKind.Strainer, Sump, $"scavenge-{n}", null, [Assumed("area", "4 in2"), Assumed("pitch", "60 thou"), Assumed("wire", "16 thou")]);
            Pump($"scavenge-pump-{n}", $"scavenge-{n}", "return", pumps[n - 1]!.Value, gears, gears.Width * 2.5 / pumps.Count, [Assumed("need", $"{Math.Floor(100.0 / pumps.Count).ToString(CultureInfo.InvariantCulture)} %"), Assumed("air", "30 %")]);
        }

        var at = "return";
        if (answers.HasCooler)
            Cooler(at, at = "cooled");
        Add("return-pipe", ElementKind.Pipe, at, Tank, null, [Assumed("bore", gears.SuctionBore), Assumed("length", "30 in"), Assumed("losses", "3")]);
    }

    /// <summary>A gear pump: what the record has of it, and gears of a usual proportion for the rest.</summary>
    private void Pump(string name, string from, string to, PartName part, DrawnGears gears, double width, DrawnSize[] more)
    {
        var tip = _sizes.At(part, "driver.tip-diameter", "driver.outside", "driver.outside-diameter");
        var over = _sizes.Middle(tip) ?? gears.Over;
        var gearWidth = _sizes.At(part, "driver.width");
        var centres = _sizes.At(part, "body.centre-distance", "body.centres");
        var endFloat = _sizes.At(part, "driver-end-float", "end-float")
            ?? _sizes.Make(part, "driver-end-float", FitKind.EndFloat, 1.5 * 25.4e-6, 3.5 * 25.4e-6);
        var tipClearance = _sizes.At(part, "driver-tip-clearance", "tip-clearance");
        List<DrawnSize> sizes =
        [
            Assumed("teeth", DrawnGears.Teeth.ToString(CultureInfo.InvariantCulture)),
            Taken("tip-diameter", tip) ?? Assumed("tip-diameter", TradeUnit.Inch.Show(over, 3)),
            Taken("centre-distance", centres) ?? Assumed("centre-distance", TradeUnit.Inch.Show(over * DrawnGears.Teeth / (DrawnGears.Teeth + 2), 3)),
            Taken("width", gearWidth) ?? Assumed("width", width),
            Taken("end-float", endFloat)!.Value,
        ];
        sizes.AddRange(new[] { Taken("driven-end-float", _sizes.At(part, "driven-end-float")), Taken("tip-clearance", tipClearance) }.OfType<DrawnSize>());
        sizes.Add(Assumed("hub-diameter", TradeUnit.Inch.Show(over * 0.4, 3)));
        if (_sizes.At(part, "driven-spindle-clearance", "spindle-clearance") is { } bush && _sizes.At(part, "driven-spindle.diameter", "spindle.diameter") is { } spindle)
            sizes.AddRange([Taken("bush-clearance", bush)!.Value, Assumed("bush-length", width), Taken("bush-diameter", spindle)!.Value]);
        sizes.Add(Assumed("speed-ratio", "1"));
        Add(name, ElementKind.GearPump, from, to, part, [.. sizes, .. more]);

        static DrawnSize? Taken(string key, Figure? figure) => figure is null ? null : new(key, new CircuitValue.Taken(figure.Name), IsAssumed: false);
    }

    private void Add(string name, ElementKind kind, string from, string to, PartName? part, DrawnSize[] sizes, bool isBlanked = false)
    {
        var shape = ElementKinds.Of(kind);
        _elements.Add(new ElementDefinition(new ElementName(name), kind, new NodeName(from), new NodeName(to))
        {
            Part = part is { } of && _sizes.Whole.Parts.Any(p => p.Name.IsWithin(of)) ? of : null,
            Blanked = isBlanked,
            Note = sizes.Any(s => s.IsAssumed) ? CircuitStarter.Assumed + string.Join(", ", sizes.Where(s => s.IsAssumed).Select(s => s.Key)) : null,
            Values = [.. sizes.OrderBy(s => shape.Keys.TakeWhile(k => k.Name != s.Key).Count()).Select(s => new ElementValue(s.Key, s.Value))],
        });
    }

    private Quantity Speed(double times) => Quantity(TradeUnit.RevolutionPerMinute.Show(answers.Idle.Si * times, 0), QuantityKind.RotationalSpeed);

    private static Quantity Psi(double psi) => Quantity($"{psi.ToString(CultureInfo.InvariantCulture)} psi", QuantityKind.Pressure);

    private static Quantity Celsius(string text) => Quantity(text, QuantityKind.Temperature);
}
