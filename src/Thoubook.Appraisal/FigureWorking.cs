using Thoubook.Appraisal.Estimates;
using Thoubook.Mechanics.Sums;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Appraisal;

/// <summary>
/// How a figure was worked out, line by line, down to the readings and the gauge. Made when it is asked for; every formula gives its value from the
/// lines above it.
/// </summary>
public static class FigureWorking
{
    public static Working Of(FigureAppraisal figure, EngineRecord record)
    {
        var writer = new WorkingWriter(TradeUnit.Default(figure.Figure.Kind).Symbol);
        var trace = writer.Trace;
        var unit = TradeUnit.Default(figure.Figure.Kind).Symbol;
        switch (figure)
        {
            case DimensionAppraisal dimension:
                Dimension(dimension, record, trace, unit);
                break;
            case FitAppraisal fit:
                Fit(fit, trace, unit);
                break;
        }

        if (figure.Estimate is { } estimate)
        {
            Uncertainty(estimate, trace, unit);
            Probabilities(figure, estimate, trace, unit);
        }

        return writer.Working;
    }

    private static void Dimension(DimensionAppraisal appraisal, EngineRecord record, Written trace, string unit)
    {
        var details = appraisal.Details;
        if (details.Basis != EstimateBasis.Readings)
        {
            if (details.Counting is { } given)
                trace.Given("d", details.Basis == EstimateBasis.Supposed ? "supposed for a trial" : "middle of the drawing's limits", given.Value, unit);
            return;
        }

        var estimator = new DimensionEstimator(record);
        var told = new Dictionary<string, string>(StringComparer.Ordinal);
        var number = 0;
        var placeNumber = 0;
        var means = new List<double>();
        foreach (var place in details.Readings.GroupBy(r => r.Place).OrderBy(g => g.Key))
        {
            var symbols = new List<string>();
            double sum = 0;
            foreach (var reading in place)
            {
                number++;
                var symbol = $"r{number}";
                trace.Given(symbol, $"read at {place.Key}", reading.Value.Si, unit, Source(reading));
                var reduced = estimator.AtReference(reading, appraisal.Dimension, out var correction);
                if (correction is { } c)
                {
                    var part = Once("a", c.PartName, "expansion of the piece", c.Part, Units.PerKelvin, c.PartName);
                    var gauge = c.GaugeName == c.PartName ? part : Once("g", c.GaugeName, "expansion of the gauge", c.Gauge, Units.PerKelvin, c.GaugeName);
                    var rise = Once("T", $"{c.Rise:R}", "above 20 °C", c.Rise, Units.Kelvin, reading.Temperature!.Text);
                    symbol = $"q{number}";
                    reduced = trace.Line(symbol, "at 20 °C", $"r{number} × (1 − {part} × {rise} + {gauge} × {rise})", reduced, unit, "ISO 1");
                }

                symbols.Add(symbol);
                sum += reduced;
            }

            placeNumber++;
            var mean = sum / symbols.Count;
            means.Add(trace.Line($"m{placeNumber}", $"mean at {place.Key}", symbols.Count == 1 ? symbols[0] : $"({string.Join(" + ", symbols)}) / {symbols.Count}", mean, unit));
        }

        var all = Enumerable.Range(1, placeNumber).Select(i => $"m{i}").ToList();
        var counting = DimensionEstimator.CountingOf(appraisal.Dimension, appraisal.Limits);
        trace.Line("d", $"{counting.Word()} over the places: the value that counts", counting switch
        {
            Counting.Mean => all.Count == 1 ? all[0] : $"({string.Join(" + ", all)}) / {all.Count}",
            Counting.Least => Nested("min", all),
            _ => Nested("max", all),
        }, details.Counting!.Value, unit);

        // What several readings share is told once.
        string Once(string letter, string key, string what, double value, string unitOfIt, string source)
        {
            if (!told.TryGetValue(letter + key, out var symbol))
            {
                told[letter + key] = symbol = $"{letter}{told.Count + 1}";
                trace.Given(symbol, what, value, unitOfIt, source);
            }

            return symbol;
        }
    }

    private static void Fit(FitAppraisal fit, Written trace, string unit)
    {
        switch (fit.Basis)
        {
            case FitBasis.Supposed:
                trace.Given("d", "supposed for a trial", fit.Estimate!.Value, unit);
                break;
            case FitBasis.Check:
                var number = 0;
                foreach (var (check, standing) in fit.Checks)
                {
                    if (standing.Stands)
                        trace.Given($"c{++number}", $"{check.Method.Word()} at {check.Place}", check.Value.Si, unit, $"{check.By}, {check.At:uuuu-MM-dd}");
                }

                trace.Given("d", "mean over the places: the value that counts", fit.Estimate!.Value, unit);
                break;
            case FitBasis.Dimensions:
                var terms = new List<string>();
                foreach (var (term, of) in fit.Terms)
                {
                    var symbol = $"d{terms.Count + 1}";
                    trace.Given(symbol, of.Figure.Name.ToString(), of.Details.Counting!.Value, unit, of.Piece?.Tag.Text ?? "");
                    terms.Add(Signed(term.Coefficient, symbol, terms.Count == 0));
                }

                trace.Line("d", "the gap", string.Concat(terms), fit.Estimate!.Value, unit);
                break;
        }
    }

    private static void Uncertainty(Estimate estimate, Written trace, string unit)
    {
        var symbols = new List<string>();
        foreach (var share in estimate.Contributions.OrderByDescending(c => Math.Abs(c.Value)))
        {
            var symbol = $"u{symbols.Count + 1}";
            trace.Given(symbol, $"share of the standard uncertainty: {share.Source.Name}", share.Value, unit, KindInWords(share.Source.Kind));
            symbols.Add(symbol);
        }

        if (symbols.Count > 0)
            trace.Line("u", "standard uncertainty", $"sqrt({string.Join(" + ", symbols.Select(s => $"{s}^2"))})", estimate.StandardUncertainty, unit, "JCGM 100:2008, 5.1.2");
    }

    private static void Probabilities(FigureAppraisal figure, Estimate estimate, Written trace, string unit)
    {
        if (figure.Probability is not { } p)
            return;
        One("New", "new", figure.Limits.NewLeast, figure.Limits.NewGreatest, p.New);
        One("Worn", "worn", figure.Limits.WornLeast, figure.Limits.WornGreatest, p.Worn);

        void One(string suffix, string word, double? least, double? greatest, double probability)
        {
            if (least is { } l)
                trace.Given($"L{suffix}", $"least, {word}", l, unit);
            if (greatest is { } g)
                trace.Given($"U{suffix}", $"greatest, {word}", g, unit);
            var single = IsOneValue(figure) && estimate.StandardUncertainty > 0 && double.IsPositiveInfinity(estimate.DegreesOfFreedom);
            if (single && (least is not null || greatest is not null))
            {
                var upper = greatest is null ? "1" : $"Phi((U{suffix} − d) / u)";
                trace.Line($"P{suffix}", $"probability that it is inside its {word} limits", least is null ? upper : $"{upper} − Phi((L{suffix} − d) / u)", probability, Units.None, "JCGM 106:2012, 7.4");
            }
            else
            {
                trace.Given($"P{suffix}", $"probability that it is inside its {word} limits, all places and form together, over the error that they share", probability, Units.None, "JCGM 106:2012, 7");
            }
        }
    }

    /// <summary>Whether one normal value decides, so that the probability has a closed form.</summary>
    private static bool IsOneValue(FigureAppraisal figure) => figure switch
    {
        DimensionAppraisal d => d.Dimension.Ovality is null && d.Dimension.Taper is null
            && (d.Details.Places.Count <= 1 || DimensionEstimator.CountingOf(d.Dimension, d.Limits) == Counting.Mean),
        FitAppraisal f => f.Least!.Value == f.Greatest!.Value && f.Least.StandardUncertainty == f.Greatest.StandardUncertainty,
        _ => false,
    };

    private static string Source(Reading reading) =>
        string.Join(", ", new[] { reading.Value.Text, reading.Gauge?.Text ?? "gauge not noted", reading.By, $"{reading.At:uuuu-MM-dd}" });

    private static string KindInWords(SourceKind kind) => kind switch
    {
        SourceKind.Gauge => "gauge as last checked",
        SourceKind.Repeatability => "repeated readings",
        SourceKind.Place => "places standing for the whole",
        SourceKind.Temperature => "temperature",
        SourceKind.Expansion => "coefficient of expansion",
        _ => "drawing limits, rectangular",
    };

    private static string Signed(double coefficient, string symbol, bool first)
    {
        var sign = coefficient < 0 ? (first ? "−" : " − ") : first ? "" : " + ";
        var size = Math.Abs(coefficient);
        return size == 1 ? $"{sign}{symbol}" : $"{sign}{size:R} × {symbol}";
    }

    private static string Nested(string function, List<string> symbols) =>
        symbols.Count == 1 ? symbols[0] : $"{function}({symbols[0]}, {Nested(function, symbols[1..])})";
}
