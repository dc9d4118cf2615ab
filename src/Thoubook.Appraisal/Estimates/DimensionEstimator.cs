using Thoubook.Mechanics.Heat;
using Thoubook.Mechanics.Metrology;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal.Estimates;

/// <summary>
/// Readings to estimates. Readings at one place are averaged first; the least and the greatest are over places. Each is taken to 20 °C, and each
/// share of the uncertainty keeps the name of its source, so that figures measured with one gauge share its error.
/// </summary>
internal sealed class DimensionEstimator(EngineRecord record)
{
    /// <summary>[m] Standard uncertainty where the gauge was not noted or was never checked. Common practice: a hand micrometer is good to some 0.2 thou.</summary>
    public const double UncheckedGauge = 5e-6;

    /// <summary>[m] Standard deviation of a reading repeated by hand, where neither gauge nor readings say. Common practice: repeats to ±0.2 thou.</summary>
    public const double UnknownRepeatability = 2.54e-6;

    /// <summary>[-] Share of the value taken for both where the figure is not a length.</summary>
    public const double UncheckedShare = 0.01;

    private const double Rectangular = 0.57735026918962573;

    // Half widths [K]: of a temperature noted and of one that was not, and of the difference between piece and gauge.
    private const double NotedTemperature = 1, UnnotedTemperature = 5, NotedDifference = 0.5, UnnotedDifference = 1;

    private const double OutlierRisk = 0.01, OutlierScatters = 6;

    private static readonly Material Steel = Materials.TryFind("steel", out var steel, out _) ? steel : throw new InvalidOperationException("No steel among the materials.");

    private readonly RecordIndex _index = record.Index;
    private readonly Dictionary<GaugeTag, UncertaintySource> _gauges = [];
    private readonly Dictionary<PieceTag, UncertaintySource> _temperatures = [];
    private readonly Dictionary<string, Material?> _materials = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The material of what is in the part: the piece's own, else the part's; null where neither says or the name is not known.</summary>
    public Material? MaterialOf(PartName part, PieceTag? piece)
    {
        var name = (piece is { } tag ? _index.Piece(tag)?.Material : null) ?? _index.Part(part)?.Material;
        return name is null ? null : MaterialNamed(name);
    }

    public DimensionEstimate Of(Dimension dimension, BindingLimits limits)
    {
        var piece = _index.ChosenFor(dimension.Name.Part)?.Piece;
        if (record.Supposed.TryGetValue(dimension.Name, out var supposed))
        {
            var estimate = new Estimate(supposed, []);
            return new DimensionEstimate { Basis = EstimateBasis.Supposed, Counting = estimate, Least = estimate, Greatest = estimate };
        }

        var all = piece is { } tag ? _index.ReadingsOf(tag, dimension.Name.Local) : [];
        List<Reading> counting = [], not = [];
        foreach (var reading in all)
            (_index.StrikeOutOf(reading.Id) is null && _index.WorkSince(reading) is null ? counting : not).Add(reading);
        return counting.Count > 0 ? FromReadings(dimension, limits, counting, not) : FromDrawing(dimension, limits, not);
    }

    private static DimensionEstimate FromDrawing(Dimension dimension, BindingLimits limits, List<Reading> not)
    {
        Estimate? estimate = limits is { NewLeast: { } least, NewGreatest: { } greatest }
            ? new Estimate((least + greatest) / 2, [new(new(SourceKind.Drawing, $"limits of {dimension.Name}"), (greatest - least) / 2 * Rectangular, double.PositiveInfinity)])
            : null;
        return new DimensionEstimate
        {
            Basis = estimate is null ? EstimateBasis.Nothing : EstimateBasis.DrawingLimits,
            Counting = estimate,
            Least = estimate,
            Greatest = estimate,
            MissingPlaces = dimension.Places,
            NotCounting = not,
        };
    }

    private DimensionEstimate FromReadings(Dimension dimension, BindingLimits limits, List<Reading> readings, List<Reading> not)
    {
        var material = MaterialOf(dimension.Name.Part, readings[0].Piece);
        var places = ByPlace(readings, dimension, material);
        var (scatter, freedom) = Scatter(places, readings, dimension);
        var disagreements = Disagreements(dimension, places, scatter);
        foreach (var d in disagreements)
        {
            // Which of the two is right is not known: the truth may lie anywhere between them.
            var at = places.Find(p => p.Place == d.Place)!;
            at.Systematic.Add(new(new(SourceKind.Gauge, $"{d.First} and {d.Second} disagree"), Math.Abs(d.Difference) / 2 * Rectangular, double.PositiveInfinity));
        }

        var shared = SharedByAll(places);

        var estimates = new List<PlaceEstimate>(places.Count);
        foreach (var place in places)
        {
            double common = 0, own = scatter * scatter / place.Values.Length;
            foreach (var share in place.Systematic)
            {
                if (shared.Contains(share.Source))
                    common += share.Value * share.Value;
                else
                    own += share.Value * share.Value;
            }

            estimates.Add(new PlaceEstimate(place.Place, place.Mean, place.Values.Length, Math.Sqrt(own), Math.Sqrt(common)));
        }

        int leastAt = 0, greatestAt = 0;
        for (var i = 1; i < places.Count; i++)
        {
            if (places[i].Mean < places[leastAt].Mean)
                leastAt = i;
            if (places[i].Mean > places[greatestAt].Mean)
                greatestAt = i;
        }

        var mean = MeanOverPlaces(places, scatter, freedom, dimension);
        var countsMean = CountingOf(dimension, limits) == Counting.Mean;
        var least = countsMean ? mean : OnePlace(places[leastAt], scatter, freedom, dimension);
        var greatest = countsMean ? mean : OnePlace(places[greatestAt], scatter, freedom, dimension);
        return new DimensionEstimate
        {
            Basis = EstimateBasis.Readings,
            Counting = CountingOf(dimension, limits) switch { Counting.Least => least, Counting.Greatest => greatest, _ => mean },
            Least = least,
            Greatest = greatest,
            Places = estimates,
            MissingPlaces = dimension.Places.Count == 0 ? [] : [.. dimension.Places.Where(p => !places.Exists(read => read.Place == p))],
            Ovality = Form(estimates, p => p.Plane, p => p.Direction),
            Taper = Form(estimates, p => p.Direction, p => p.Plane),
            RepeatScatter = scatter,
            RepeatDegreesOfFreedom = freedom,
            Readings = readings,
            NotCounting = not,
            Outliers = OutliersAmong(places, scatter),
            Disagreements = disagreements,
        };
    }

    public static Counting CountingOf(Dimension dimension, BindingLimits limits) => dimension.Counts ?? limits.Wear switch
    {
        WearDirection.Grows => Counting.Greatest,
        WearDirection.Shrinks => Counting.Least,
        _ => Counting.Mean,
    };

    private sealed record PlaceReadings(PlaceName Place, Reading[] Readings, double[] Values, double Mean, List<Contribution> Systematic)
    {
        public bool OneGauge { get; } = Array.TrueForAll(Readings, r => r.Gauge == Readings[0].Gauge);
    }

    private List<PlaceReadings> ByPlace(List<Reading> readings, Dimension dimension, Material? material)
    {
        var sorted = readings.ToArray();
        Array.Sort(sorted, static (a, b) => a.Place.CompareTo(b.Place) is var byPlace and not 0 ? byPlace : a.Id.CompareTo(b.Id));
        var places = new List<PlaceReadings>();
        for (int from = 0, to; from < sorted.Length; from = to)
        {
            for (to = from + 1; to < sorted.Length && sorted[to].Place == sorted[from].Place;)
                to++;
            places.Add(AtPlace(sorted[from].Place, sorted[from..to], dimension, material));
        }

        return places;
    }

    /// <summary>The readings at one place at 20 °C, their mean, and the shares that repeating them does not lessen.</summary>
    private PlaceReadings AtPlace(PlaceName place, Reading[] readings, Dimension dimension, Material? material)
    {
        var values = new double[readings.Length];
        var shares = new List<Contribution>(2);
        double sum = 0;
        for (var i = 0; i < readings.Length; i++)
        {
            var reading = readings[i];
            values[i] = AtReference(reading, material, out var fromTemperature, out _);
            sum += values[i];
            var weight = 1.0 / readings.Length;
            Estimate.AddShare(shares, new(GaugeSource(reading, dimension), GaugeUncertainty(reading) * weight, double.PositiveInfinity));
            if (fromTemperature > 0)
                Estimate.AddShare(shares, new(TemperatureSource(reading.Piece), fromTemperature * weight, double.PositiveInfinity));
        }

        return new PlaceReadings(place, readings, values, sum / readings.Length, shares);
    }

    /// <summary>What a reading was corrected by; null where it was taken at 20 °C or nothing is known to correct it by.</summary>
    public sealed record Correction(double Part, string PartName, double Gauge, string GaugeName, double Rise);

    /// <summary>A reading at 20 °C.</summary>
    public double AtReference(Reading reading, Dimension dimension, out Correction? correction) =>
        AtReference(reading, MaterialOf(dimension.Name.Part, reading.Piece), out _, out correction);

    private double AtReference(Reading reading, Material? material, out double uncertainty, out Correction? correction)
    {
        uncertainty = 0;
        correction = null;
        if (reading.Value.Kind != QuantityKind.Length || material is null)
            return reading.Value.Si;
        var gauge = reading.Gauge is { } tag && _index.Gauge(tag)?.Material is { } name ? MaterialNamed(name) ?? Steel : Steel;
        var noted = reading.Temperature is not null;
        var rise = (reading.Temperature?.Si ?? Expansion.Reference) - Expansion.Reference;
        if (rise != 0)
            correction = new(material.Expansion.Value, material.Name, gauge.Expansion.Value, gauge.Name, rise);
        var together = reading.Value.Si * (material.Expansion.Value - gauge.Expansion.Value) * (noted ? NotedTemperature : UnnotedTemperature) * Rectangular;
        var apart = reading.Value.Si * material.Expansion.Value * (noted ? NotedDifference : UnnotedDifference) * Rectangular;
        uncertainty = Math.Sqrt((together * together) + (apart * apart));
        return ReferenceTemperature.To20(reading.Value.Si, Expansion.Reference + rise, Expansion.Reference + rise, material.Expansion.Value, gauge.Expansion.Value);
    }

    private Material? MaterialNamed(string name)
    {
        if (!_materials.TryGetValue(name, out var material))
            _materials[name] = material = Materials.TryFind(name, out var found, out _) ? found : null;
        return material;
    }

    private UncertaintySource GaugeSource(Reading reading, Dimension dimension)
    {
        if (reading.Gauge is not { } tag)
            return new(SourceKind.Gauge, $"gauge not noted, {dimension.Name.Local} of {reading.Piece}");
        if (!_gauges.TryGetValue(tag, out var source))
            _gauges[tag] = source = new(SourceKind.Gauge, _index.Gauge(tag)?.Checked is { } day ? $"{tag}, checked {day:uuuu-MM-dd}" : $"{tag}");
        return source;
    }

    private UncertaintySource TemperatureSource(PieceTag piece)
    {
        if (!_temperatures.TryGetValue(piece, out var source))
            _temperatures[piece] = source = new(SourceKind.Temperature, $"temperature of {piece}");
        return source;
    }

    private double GaugeUncertainty(Reading reading) =>
        (reading.Gauge is { } tag ? _index.Gauge(tag)?.Uncertainty?.Si : null)
        ?? (reading.Value.Kind == QuantityKind.Length ? UncheckedGauge : Math.Abs(reading.Value.Si) * UncheckedShare);

    /// <summary>One scatter for the whole dimension: what the gauge is known for, what the repeats show and its least step, whichever is largest.</summary>
    private (double Scatter, double DegreesOfFreedom) Scatter(List<PlaceReadings> places, List<Reading> readings, Dimension dimension)
    {
        double squares = 0, stated = 0, step = 0;
        var freedom = 0;
        foreach (var place in places)
        {
            if (place.Values.Length < 2)
                continue;
            if (place.OneGauge)
            {
                foreach (var value in place.Values)
                    squares += (value - place.Mean) * (value - place.Mean);
                freedom += place.Values.Length - 1;
                continue;
            }

            foreach (var withOne in place.Readings.Select((r, i) => (r.Gauge, Value: place.Values[i])).GroupBy(x => x.Gauge))
            {
                double mean = withOne.Average(x => x.Value), count = 0;
                foreach (var (_, value) in withOne)
                {
                    squares += (value - mean) * (value - mean);
                    count++;
                }

                freedom += (int)count - 1;
            }
        }

        foreach (var reading in readings)
        {
            var gauge = reading.Gauge is { } tag ? _index.Gauge(tag) : null;
            stated = Math.Max(stated, gauge?.Repeatability?.Si ?? (dimension.Kind == QuantityKind.Length ? UnknownRepeatability : Math.Abs(reading.Value.Si) * UncheckedShare));
            step = Math.Max(step, (gauge?.Resolution?.Si ?? 0) / Math.Sqrt(12));
        }

        var floor = Math.Max(stated, step);
        var observed = freedom > 0 ? Math.Sqrt(squares / freedom) : 0;
        return freedom >= 2 && observed > floor ? (observed, freedom) : (floor, double.PositiveInfinity);
    }

    private static List<UncertaintySource> SharedByAll(List<PlaceReadings> places)
    {
        var shared = new List<UncertaintySource>(2);
        foreach (var (source, _, _) in places[0].Systematic)
        {
            if (places.TrueForAll(p => p.Systematic.Exists(s => s.Source == source)))
                shared.Add(source);
        }

        return shared;
    }

    private static Estimate OnePlace(PlaceReadings place, double scatter, double freedom, Dimension dimension)
    {
        List<Contribution> shares = [.. place.Systematic, new(new(SourceKind.Repeatability, $"repeats of {dimension.Name} at {place.Place}"), scatter / Math.Sqrt(place.Values.Length), freedom)];
        return new Estimate(place.Mean, shares);
    }

    private static Estimate MeanOverPlaces(List<PlaceReadings> places, double scatter, double freedom, Dimension dimension)
    {
        var weight = 1.0 / places.Count;
        double value = 0, repeats = 0, spread = 0;
        var shares = new List<Contribution>();
        foreach (var place in places)
        {
            value += place.Mean * weight;
            repeats += scatter * scatter / place.Values.Length * weight * weight;
            foreach (var share in place.Systematic)
                Estimate.AddShare(shares, share with { Value = share.Value * weight });
        }

        foreach (var place in places)
            spread += (place.Mean - value) * (place.Mean - value);
        shares.Add(new(new(SourceKind.Repeatability, $"repeats of {dimension.Name}"), Math.Sqrt(repeats), freedom));
        var beyondRepeats = places.Count > 1 ? (spread / (places.Count - 1) * weight) - repeats : 0;
        if (beyondRepeats > 0)
            shares.Add(new(new(SourceKind.Place, $"places of {dimension.Name}"), Math.Sqrt(beyondRepeats), places.Count - 1));
        return new Estimate(value, shares);
    }

    /// <summary>The greatest difference between two places that share what <paramref name="group"/> says and differ in what <paramref name="across"/> says, and where.</summary>
    private static FormEstimate? Form(List<PlaceEstimate> places, Func<PlaceName, string> group, Func<PlaceName, string> across)
    {
        (PlaceEstimate High, PlaceEstimate Low)? worst = null;
        for (var i = 0; i < places.Count; i++)
        {
            var one = places[i];
            if (group(one.Place).Length == 0 || across(one.Place).Length == 0)
                continue;
            for (var j = i + 1; j < places.Count; j++)
            {
                var other = places[j];
                if (across(other.Place).Length == 0 || !string.Equals(group(one.Place), group(other.Place), StringComparison.OrdinalIgnoreCase))
                    continue;
                if (worst is not { } w || Math.Abs(one.Value - other.Value) > w.High.Value - w.Low.Value)
                    worst = one.Value >= other.Value ? (one, other) : (other, one);
            }
        }

        return worst is var (high, low)
            ? new FormEstimate(high.Value - low.Value, Math.Sqrt((high.OwnUncertainty * high.OwnUncertainty) + (low.OwnUncertainty * low.OwnUncertainty)), high.Place, low.Place)
            : null;
    }

    /// <summary>
    /// Readings that stand out from all the others of the dimension, by Grubbs' test at 1 in 100, and by more than repeats and form would explain:
    /// a figure read the wrong way round. A hint; none is dropped.
    /// </summary>
    private static List<OutlierHint> OutliersAmong(List<PlaceReadings> places, double scatter)
    {
        double least = double.PositiveInfinity, greatest = double.NegativeInfinity;
        var count = 0;
        foreach (var place in places)
        {
            count += place.Values.Length;
            foreach (var value in place.Values)
                (least, greatest) = (Math.Min(least, value), Math.Max(greatest, value));
        }

        if (count < 3 || greatest - least < OutlierScatters * scatter)
            return [];
        var readings = places.SelectMany(p => p.Readings).ToArray();
        double[] values = [.. places.SelectMany(p => p.Values)];
        return Outliers.Farthest(values, OutlierRisk) is { IsSuspect: true } hint
            ? [new OutlierHint(readings[hint.At], hint.Distance, hint.Critical)]
            : [];
    }

    /// <summary>Gauges that differ at one place by more than what they are known for allows (99 in 100).</summary>
    private List<GaugeDisagreement> Disagreements(Dimension dimension, List<PlaceReadings> places, double scatter)
    {
        var found = new List<GaugeDisagreement>();
        foreach (var place in places)
        {
            if (place.OneGauge)
                continue;
            var byGauge = place.Readings.Select((r, i) => (r, Value: place.Values[i])).Where(x => x.r.Gauge is not null).GroupBy(x => x.r.Gauge!.Value).ToList();
            for (var i = 0; i < byGauge.Count; i++)
            {
                for (var j = i + 1; j < byGauge.Count; j++)
                {
                    var apart = byGauge[i].Average(x => x.Value) - byGauge[j].Average(x => x.Value);
                    double first = GaugeUncertainty(byGauge[i].First().r), second = GaugeUncertainty(byGauge[j].First().r);
                    var u = Math.Sqrt((first * first) + (second * second) + (scatter * scatter * ((1.0 / byGauge[i].Count()) + (1.0 / byGauge[j].Count()))));
                    if (Math.Abs(apart) > 2.5758 * u)
                        found.Add(new GaugeDisagreement(dimension.Name, place.Place, byGauge[i].Key, byGauge[j].Key, apart));
                }
            }
        }

        return found;
    }
}
