using Thoubook.Appraisal.Estimates;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Oil;

/// <summary>The sizes of one element, in SI, by the keys of its kind.</summary>
/// <param name="shape">Its keys.</param>
/// <param name="si">[SI] in the order of the keys; NaN where one is left out.</param>
internal readonly struct ElementSizes(ElementShape shape, double[] si)
{
    public double this[string key] => si[Place(key)];

    public double At(int place) => si[place];

    public double? Maybe(string key) => this[key] is var value && double.IsNaN(value) ? null : value;

    /// <summary>The same with one size changed.</summary>
    public ElementSizes With(int place, double value)
    {
        var changed = (double[])si.Clone();
        changed[place] = value;
        return new ElementSizes(shape, changed);
    }

    public ElementSizes Copy() => new(shape, (double[])si.Clone());

    /// <summary>Moves a size of this copy, within what its kind allows.</summary>
    public void Move(int place, double by)
    {
        var key = shape.Keys[place];
        var room = key.Greatest * (key.IsBelowGreatest ? 1 - 1e-6 : 1);
        si[place] = Math.Clamp(si[place] + by, Math.Max(key.Least, key.IsAboveLeast ? key.Least + (1e-2 * Math.Abs(si[place])) : key.Least), room);
    }

    public int Place(string key)
    {
        for (var i = 0; i < shape.Keys.Count; i++)
        {
            if (shape.Keys[i].Name == key)
                return i;
        }

        throw new ArgumentException($"A {shape.Kind.Word()} has no {key}.", nameof(key));
    }
}

/// <summary>Where one uncertain figure enters the circuit.</summary>
/// <param name="Element">Place of the element.</param>
/// <param name="Key">Place of the key in its kind; −1: the flow of the law itself, by its logarithm.</param>
/// <param name="Of">The figure, or what is assumed in the place of one.</param>
/// <param name="Figure">Null for what is assumed.</param>
internal sealed record SizeInput(int Element, int Key, Estimate Of, CircuitFigure? Figure);

/// <summary>The sizes of every element of a circuit at one oil temperature, and what is uncertain in them.</summary>
internal sealed class CircuitSizes
{
    /// <summary>[m] A gap that closes is left this much, so that the circuit can still be solved.</summary>
    private const double HardlyAGap = 1e-7;

    private readonly ElementSizes[] _sizes;
    private readonly double[]?[] _lawSlopes;
    private (IReadOnlyList<Contribution> Sources, (int, double)[][] ByInput)? _shares;

    private CircuitSizes(OilCircuit circuit, ElementSizes[] sizes, IReadOnlyList<SizeInput> inputs, IReadOnlyList<Caution> cautions, double[]?[]? lawSlopes = null)
    {
        Circuit = circuit;
        _sizes = sizes;
        _lawSlopes = lawSlopes ?? new double[]?[inputs.Count];
        Inputs = inputs;
        Cautions = cautions;
    }

    public OilCircuit Circuit { get; }

    public IReadOnlyList<SizeInput> Inputs { get; }

    public IReadOnlyList<Caution> Cautions { get; }

    public ElementSizes this[int element] => _sizes[element];

    /// <summary>Every source of doubt, once; the value of each is left open.</summary>
    public IReadOnlyList<Contribution> Sources => Shares.Sources;

    /// <summary>What an input owes to each source, by its place in <see cref="Sources"/>.</summary>
    public (int Source, double Share)[] SharesOf(int input) => Shares.ByInput[input];

    /// <summary>How the numbers of the laws of an input's element change with it; worked out once.</summary>
    /// <param name="input">Which.</param>
    /// <param name="numbers">The numbers of an element's laws with another value of one of its sizes.</param>
    public double[] LawSlopes(int input, Func<int, int, double, double[]> numbers)
    {
        if (_lawSlopes[input] is { } known)
            return known;
        var (element, key) = (Inputs[input].Element, Inputs[input].Key);
        var value = _sizes[element].At(key);
        var h = Math.Max(Math.Abs(value) * 1e-5, 1e-12);
        var (more, less) = (numbers(element, key, value + h), numbers(element, key, value - h));
        var slopes = new double[more.Length];
        for (var i = 0; i < slopes.Length; i++)
            slopes[i] = double.IsNaN(more[i] - less[i]) ? 0 : (more[i] - less[i]) / (2 * h);
        return _lawSlopes[input] = slopes;
    }

    /// <summary>The same sizes but for one figure, which is exactly so.</summary>
    public CircuitSizes Exactly(FigureName figure, double value)
    {
        var sizes = (ElementSizes[])_sizes.Clone();
        var inputs = new List<SizeInput>(Inputs.Count);
        var slopes = new List<double[]?>(Inputs.Count);
        var changed = Inputs.Where(i => i.Figure?.Name == figure).ToList();
        foreach (var input in changed)
            sizes[input.Element] = sizes[input.Element].With(input.Key, value);
        for (var i = 0; i < Inputs.Count; i++)
        {
            if (Inputs[i].Figure?.Name == figure)
                continue;
            inputs.Add(Inputs[i]);
            slopes.Add(changed.Exists(c => c.Element == Inputs[i].Element) ? null : _lawSlopes[i]);
        }

        return new CircuitSizes(Circuit, sizes, inputs, Cautions, [.. slopes]);
    }

    private (IReadOnlyList<Contribution> Sources, (int, double)[][] ByInput) Shares
    {
        get
        {
            if (_shares is { } known)
                return known;
            var places = new Dictionary<UncertaintySource, int>();
            var sources = new List<Contribution>();
            var byInput = new (int, double)[Inputs.Count][];
            for (var i = 0; i < byInput.Length; i++)
            {
                var own = Inputs[i].Of.Contributions;
                byInput[i] = new (int, double)[own.Count];
                for (var c = 0; c < own.Count; c++)
                {
                    if (!places.TryGetValue(own[c].Source, out var place))
                    {
                        places[own[c].Source] = place = sources.Count;
                        sources.Add(own[c]);
                    }

                    byInput[i][c] = (place, own[c].Value);
                }
            }

            _shares = (sources, byInput);
            return _shares.Value;
        }
    }

    /// <summary>The sizes at an oil temperature.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="figures">What its dimensions and fits are.</param>
    /// <param name="oilTemperature">[K]</param>
    public static Outcome<CircuitSizes> Of(OilCircuit circuit, FigureValues figures, double oilTemperature)
    {
        var problems = new List<Problem>();
        var cautions = new List<Caution>();
        var inputs = new List<SizeInput>();
        var sizes = new ElementSizes[circuit.Elements.Count];
        var seen = new Dictionary<FigureName, CircuitFigure?>();
        for (var i = 0; i < sizes.Length; i++)
        {
            var element = circuit.Elements[i];
            var shape = element.Shape;
            var si = new double[shape.Keys.Count];
            for (var k = 0; k < si.Length; k++)
                si[k] = Size(element, shape.Keys[k], i, k);
            sizes[i] = new ElementSizes(shape, si);
            if (element.Blanked)
                continue;
            TradeUnit? UnitOf(string key) => element.Value(key) is CircuitValue.Taken taken ? figures.UnitOf(taken.Figure) : element.UnitOf(key);
            problems.AddRange(shape.Check(key => new ElementSizes(shape, si).Maybe(key), UnitOf).Select(p => CircuitFaults.At(element, p.Field, p)));
            if (element.Kind is ElementKind.GroovedBearing or ElementKind.HalfGroovedBearing or ElementKind.HoleFedBearing)
                inputs.Add(new SizeInput(i, -1, Assumed(0, OilDoubts.BearingLaw, OilDoubts.BearingLaw.Value), null));
        }

        return problems.Count > 0 ? new Outcome<CircuitSizes>.Refused(problems) : new CircuitSizes(circuit, sizes, inputs, cautions);

        double Size(ElementDefinition element, ElementKey key, int i, int k)
        {
            switch (element.Value(key.Name))
            {
                case CircuitValue.Taken taken:
                    if (!seen.TryGetValue(taken.Figure, out var figure))
                        seen[taken.Figure] = figure = figures.At(taken.Figure, oilTemperature);
                    if (figure is null)
                    {
                        if (!element.Blanked)
                            problems.Add(CircuitFaults.At(element, key.Name, new("circuit-figure-unknown", "", taken.Figure.ToString(), "A figure with readings or with limits.", "Measure it, give its limits, or write a quantity in the circuit.")));
                        return double.NaN;
                    }

                    if (!element.Blanked)
                        inputs.Add(new SizeInput(i, k, figure.Value, figure));
                    return Gap(key, figure.Value.Value, element);
                case CircuitValue.Given given:
                    Doubt(key.Name, given.Quantity.Si, element, i, k);
                    return given.Quantity.Si;
                default:
                    if (key.Default is { } usual)
                        Doubt(key.Name, usual, element, i, k);
                    return key.Default ?? double.NaN;
            }
        }

        double Gap(ElementKey key, double value, ElementDefinition element)
        {
            if (value >= HardlyAGap || key.Name is not ("clearance" or "end-float" or "driven-end-float" or "tip-clearance" or "bush-clearance" or "gap" or "leak-gap" or "seat-gap"))
                return value;
            cautions.Add(new Caution(OilAnswer.NilGap, $"{element.Name}: nothing is left of its {key.Name} at this temperature. It binds; the oil is worked out as if a hair were left."));
            return HardlyAGap;
        }

        void Doubt(string key, double value, ElementDefinition element, int i, int k)
        {
            if (element.Blanked)
                return;
            var (doubt, of) = key switch
            {
                "discharge" => (OilDoubts.Discharges, OilDoubts.Discharges.Value * value),
                "eccentricity" when value > 0 => (OilDoubts.Lying, OilDoubts.Lying.Value),
                "film-rise" when value > 0 => (OilDoubts.Films, OilDoubts.Films.Value),
                _ => (null, 0.0),
            };
            if (doubt is not null && of > 0)
                inputs.Add(new SizeInput(i, k, Assumed(value, doubt, of), null));
        }

        static Estimate Assumed(double value, AssumedDoubt doubt, double of) => new(value, [new Contribution(doubt.Source, of, double.PositiveInfinity)]);
    }
}
