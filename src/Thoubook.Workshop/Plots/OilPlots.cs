using ScottPlot;
using ScottPlot.TickGenerators;
using Thoubook.Appraisal.Oil;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Plots;

/// <summary>The oil system drawn as plots, for the command and the book.</summary>
public static class OilPlots
{
    /// <summary>Room for one bar and for what stands above and below them all.</summary>
    private const int BarHeight = 22;
    private const int RoundBars = 150;

    private const int LetterSize = 15;

    private static readonly TradeUnit Psi = TradeUnit.Psi;

    /// <summary>The main gauge over speed: a line for each oil temperature, within its band.</summary>
    public static DrawnPlot Map(OilMap map, string engine, string gauge, TradeUnit speed, TradeUnit temperature)
    {
        var plot = Blank(engine, $"{gauge} gauge over speed and oil temperature");
        double[] speeds = [.. map.Speeds.Select(speed.FromSi)];
        for (var i = 0; i < map.Temperatures.Count; i++)
        {
            var points = map.Points[i];
            var ink = Ink(map.Temperatures.Count > 1 ? (double)i / (map.Temperatures.Count - 1) : 0);
            var band = plot.Add.FillY(speeds, [.. points.Select(p => Psi.FromSi(p.Low))], [.. points.Select(p => Psi.FromSi(p.High))]);
            band.FillColor = ink.WithAlpha(0.09);
            band.LineWidth = 0;
            band.MarkerSize = 0;
            var line = plot.Add.Scatter(speeds, points.Select(p => Psi.FromSi(p.Pressure)).ToArray());
            line.Color = ink;
            line.LineWidth = 2;
            line.MarkerSize = 0;

            // Said where the lines lie apart: at the slow end.
            var label = plot.Add.Text($"{temperature.Show(map.Temperatures[i])} ", speeds[0], Psi.FromSi(points[0].Pressure));
            label.LabelAlignment = Alignment.MiddleRight;
            label.LabelFontColor = ink;
            label.LabelFontSize = 12;
        }

        plot.XLabel($"engine speed, {speed.Symbol}", LetterSize);
        plot.YLabel($"{gauge} gauge, {Psi.Symbol}; the bands hold it 95 times in 100", LetterSize);
        plot.Axes.SetLimitsX(speeds[0] - (0.1 * (speeds[^1] - speeds[0])), speeds[^1] + (0.02 * (speeds[^1] - speeds[0])));
        plot.Axes.SetLimitsY(0, Math.Max(1, map.Points.SelectMany(r => r).Max(p => Psi.FromSi(p.High))) * 1.05);
        return new(plot);
    }

    /// <summary>The main gauge over the end float of a pump, within its band, the choices of its card marked on it: how far it pays to lap.</summary>
    public static DrawnPlot Pump(PumpCard card, string engine, string where, OilCircuit circuit)
    {
        var (small, unit) = (circuit.PressureUnit == Psi ? TradeUnit.Thou : TradeUnit.Micrometre, circuit.PressureUnit);
        var closest = card.EndFloats.MinBy(f => card.Choices[0].Floats.First(c => c.Fit == f).Float.Value)!;
        var plot = Blank(engine, $"{card.Part.Leaf}: what its end float makes of the {card.Choices[0].Oil!.Main!.Gauge.Name} gauge at {where}");
        double[] floats = [.. card.Curve.Select(p => small.FromSi(p.Float))];
        var gauges = card.Curve.Select(p => p.Oil.Main!).ToArray();
        var band = plot.Add.FillY(floats, [.. gauges.Select(g => unit.FromSi(g.Low))], [.. gauges.Select(g => unit.FromSi(g.High))]);
        band.FillColor = Ink(0.2).WithAlpha(0.12);
        band.LineWidth = 0;
        band.MarkerSize = 0;
        var line = plot.Add.Scatter(floats, gauges.Select(g => unit.FromSi(g.Pressure.Value)).ToArray());
        line.Color = Ink(0);
        line.LineWidth = 2;
        line.MarkerSize = 0;
        foreach (var choice in card.Choices)
        {
            if (choice.Oil is not { Main: { } main } oil || choice.Floats.FirstOrDefault(f => f.Fit == closest) is not { } at)
                continue;
            var (x, y) = (small.FromSi(at.Float.Value), unit.FromSi(main.Pressure.Value));
            var mark = plot.Add.Marker(x, y, MarkerShape.FilledCircle, 9);
            mark.Color = Ink(1);
            // Up and away from the line, or from below where there is no room on the right.
            var isLeft = x < floats[^1] / 2;
            var label = plot.Add.Text($"  {choice.Name}: slip {TradeUnit.Percent.Show(oil.Slip, 1)}  ", x, y);
            label.LabelAlignment = isLeft ? Alignment.LowerLeft : Alignment.UpperRight;
            label.LabelFontColor = Ink(1);
            label.LabelFontSize = 12;
            label.LabelRotation = -45;
        }

        plot.XLabel($"{closest.Figure.Name.Local} at {card.Choices[0].Floats[0].State}, {small.Symbol}, total", LetterSize);
        plot.YLabel($"gauge, {unit.Symbol}; the band holds it 95 times in 100", LetterSize);
        plot.Axes.SetLimitsX(0, floats[^1] * 1.02);
        plot.Axes.SetLimitsY(Math.Min(0, gauges.Min(g => unit.FromSi(g.Low))), gauges.Max(g => unit.FromSi(g.High)) * 1.45);
        return new(plot);
    }

    /// <summary>What each figure costs, worst at the top, with the band of the difference; what could not be seen beside the worst is left out.</summary>
    public static DrawnPlot Costs(IReadOnlyList<PressureCost> costs, string engine, string where)
    {
        var greatest = costs.Select(Reach).DefaultIfEmpty().Max();
        return Bars(
            engine,
            $"what each figure costs the main gauge at {where}",
            $"{Psi.Symbol} that the main gauge would gain with it as new",
            [.. costs.Where(c => Reach(c) >= greatest / 100).Select(c => new Bar(c.Figure.Name.ToString(), Psi.FromSi(c.Cost.Value), Psi.FromSi(c.Cost.Band)))]);

        static double Reach(PressureCost cost) => Math.Abs(cost.Cost.Value) + cost.Cost.Band;
    }

    /// <summary>What each consumer takes, most at the top.</summary>
    public static DrawnPlot Consumers(OilAnswer answer, string engine, string where) => Bars(
        engine,
        $"where the oil goes at {where}",
        TradeUnit.LitrePerMinute.Symbol,
        [.. answer.Consumers.Where(c => !c.Element.Blanked).Select(c => new Bar(c.Element.Label ?? c.Element.Name.Text, TradeUnit.LitrePerMinute.FromSi(c.Flow), 0))]);

    private static DrawnPlot Bars(string engine, string title, string axis, IReadOnlyList<Bar> bars)
    {
        var plot = Blank(engine, title);
        var drawn = bars.Select((bar, i) => new ScottPlot.Bar
        {
            Position = -i,
            Value = bar.Value,
            Error = bar.Band,
            Orientation = Orientation.Horizontal,
            FillColor = Ink(0.2).WithAlpha(0.5),
            LineColor = Ink(0),
            LineWidth = 1,
        }).ToArray();
        plot.Add.Bars(drawn).Horizontal = true;
        plot.Axes.Left.TickGenerator = new NumericManual([.. bars.Select((bar, i) => new Tick(-i, bar.Name))]);
        plot.Axes.Left.MajorTickStyle.Length = 0;
        plot.XLabel(axis, LetterSize);
        plot.Axes.SetLimitsY(-bars.Count + 0.4, 0.6);
        return new(plot, (bars.Count * BarHeight) + RoundBars);
    }

    private static Plot Blank(string engine, string title)
    {
        var plot = new Plot();
        plot.Title($"{engine}\n{title}", LetterSize);
        plot.Axes.Bottom.TickGenerator = new NumericAutomatic { LabelFormatter = value => TradeUnit.One.Show(value) };
        plot.Grid.MajorLineColor = Colors.Black.WithAlpha(0.12);
        return plot;
    }

    /// <summary>From cold blue ink to warm brown.</summary>
    private static Color Ink(double warm) => new((byte)(30 + (150 * warm)), (byte)(60 + (10 * warm)), (byte)(110 - (90 * warm)));

    private readonly record struct Bar(string Name, double Value, double Band);
}
