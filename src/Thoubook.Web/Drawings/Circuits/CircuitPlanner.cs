using System.Globalization;

namespace Thoubook.Web.Drawings.Circuits;

/// <summary>
/// Lays a circuit out. A node is a level line at the height of its pressure; an element is a fall (or, at a pump, a rise) in a column of its own, so that
/// no line of lettering can come over another. Columns follow the oil: what hangs at a node, then its branches, last the way on.
/// </summary>
internal sealed partial class CircuitPlanner
{
    private const double ScaleHeight = 370;
    private const double Gutter = 92;
    private const double Edge = 18;
    private const double LineHeight = 15;
    private const double LongestName = 132;
    private const double LongestLabel = 118;
    private const double Steep = 46;
    private const double LeastWidth = 1180;

    private readonly CircuitSketch _sketch;
    private readonly PressureSide _side;
    private readonly double _slack;
    private readonly List<Stroke> _strokes = [];
    private readonly List<Hatching> _hatchings = [];
    private readonly List<PlacedMark> _marks = [];
    private readonly List<Lettered> _letters = [];
    private readonly List<(double X1, double Y1, double X2, double Y2)> _segments = [];
    private readonly (double X, double Y)[] _at;
    private readonly bool[] _drawn;
    private readonly double[] _left;
    private readonly double[] _right;
    private readonly double _floor;
    private readonly double _scaleTop;
    private readonly PressureScale _scale;
    private readonly double _wide;
    private readonly double _heavy;
    private double _cursor = CircuitPlan.Frame + Gutter;
    private double _foot;
    private int _columns;

    private CircuitPlanner(CircuitSketch sketch, double slack)
    {
        _sketch = sketch;
        _side = new PressureSide(sketch);
        _slack = slack;
        _at = new (double, double)[sketch.Elements.Count];
        _drawn = new bool[sketch.Elements.Count];
        (_left, _right) = (new double[sketch.Nodes.Count], new double[sketch.Nodes.Count]);
        Array.Fill(_left, double.PositiveInfinity);
        Array.Fill(_right, double.NegativeInfinity);

        _scaleTop = CircuitPlan.Frame + 46 + (sketch.Gauges.Any(g => _side.Holds(g.Node)) ? GaugeHeight : 0);
        _floor = _scaleTop + ScaleHeight;
        var drawn = Enumerable.Range(0, sketch.Nodes.Count).Where(_side.Holds).Select(n => sketch.Nodes[n].Pressure);
        _scale = PressureScale.Of(drawn.Concat(sketch.Gauges.Where(g => _side.Holds(g.Node)).Select(g => g.Least ?? 0)), _floor, ScaleHeight);

        var most = sketch.Elements.Where(e => e.Mark is SketchMark.Pump).Select(e => Math.Abs(e.Flow)).DefaultIfEmpty(0).Sum();
        if (most == 0)
            most = sketch.Elements.Select(e => Math.Abs(e.Flow)).DefaultIfEmpty(0).Max();
        (_wide, _heavy) = (TwoFigures(most / 25), TwoFigures(most / 9));
    }

    public static CircuitPlan Plan(CircuitSketch sketch)
    {
        var plain = new CircuitPlanner(sketch, 0);
        var plan = plain.Draw();
        return plan.Width >= LeastWidth || plain._columns == 0 ? plan : new CircuitPlanner(sketch, Math.Min(26, (LeastWidth - plan.Width) / plain._columns)).Draw();
    }

    private CircuitPlan Draw()
    {
        foreach (var root in _side.Roots)
            Place(root);
        for (var n = 0; n < _sketch.Nodes.Count; n++)
        {
            if (_side.Holds(n) && double.IsFinite(_left[n]))
                Level(_left[n], _right[n], Y(n), _sketch.IsImagined ? "d-dash" : Weight(_sketch.Nodes[n].IsReservoir ? 0 : Through(n)));
        }

        var rowsFoot = _letters.Where(l => l.IsUpright).Select(l => l.Box.Bottom).DefaultIfEmpty(_floor + 70).Max();
        var strip = Math.Max(rowsFoot, _floor + 76) + 10;
        PlaceReturns(strip);
        var width = Math.Max(_cursor, _foot) + Edge + CircuitPlan.Frame;
        var height = _lowest + 34 + CircuitPlan.Frame;
        PlaceAxis(strip, width);
        PlacePressures(width);
        PlaceFrame(width, height);
        return new CircuitPlan
        {
            Width = width,
            Height = height,
            Strokes = _strokes,
            Hatchings = _hatchings,
            Marks = _marks,
            Letters = _letters,
            Zones = [.. _at.Select(p => CircuitPlan.Zone(p.X, p.Y, width, height))],
            FlowSteps = (_wide, _heavy),
            IsRootScale = _scale.IsRoot,
        };
    }

    private double Y(int node) => _scale.Y(_sketch.Nodes[node].Pressure);

    /// <summary>What flows through a node.</summary>
    private double Through(int node) => _side.At(node).Sum(e => Math.Abs(_sketch.Elements[e].Flow)) / 2;

    /// <summary>A column of its own; its left and right edge.</summary>
    private (double Left, double Right) Column(double width)
    {
        var left = _cursor;
        _cursor += width + _slack;
        _columns++;
        return (left, _cursor);
    }

    private void Reach(int node, double x) => (_left[node], _right[node]) = (Math.Min(_left[node], x), Math.Max(_right[node], x));

    private void Level(double x1, double x2, double y, string style)
    {
        if (x2 - x1 > 0.1)
            Line(x1, y, x2, y, style);
    }

    private void Line(double x1, double y1, double x2, double y2, string style)
    {
        _segments.Add((x1, y1, x2, y2));
        _strokes.Add(new(string.Create(CultureInfo.InvariantCulture, $"M{x1:0.0} {y1:0.0}L{x2:0.0} {y2:0.0}"), style));
    }

    private void Say(string text, double x, double y, Anchor anchor = Anchor.Start, bool bold = false, bool large = false, bool quiet = false, bool upright = false) =>
        _letters.Add(new(text, x, y, anchor, bold, large, quiet, upright));

    private string Weight(double flow) => Math.Abs(flow) > _heavy ? "c-heavy" : Math.Abs(flow) > _wide ? "c-wide" : "c-thin";

    private string StyleOf(SketchElement element) =>
        _sketch.IsImagined ? "d-dash" : element.IsBlanked ? "d-plan" : Weight(element.Flow) + (element.IsMeasured ? "" : " c-unread");

    private void Mark(int element, double x, double y, SketchMark? as_ = null)
    {
        var of = _sketch.Elements[element];
        _at[element] = (x, y);
        _marks.Add(new(as_ ?? of.Mark, x, y, of.IsMeasured && !_sketch.IsImagined, of.IsBlanked, Title(of)));
    }

    private string Title(SketchElement of) =>
        string.Join(", ", new[] { of.Label, of.Figure is null ? null : $"{of.Figure} {_sketch.FigureUnit}".TrimEnd(), of.IsBlanked ? "blanked" : $"{FlowText(of.Flow)} {_sketch.FlowUnit}", of.Says, of.IsMeasured ? null : "not measured" }.OfType<string>());

    private string PressureText(double pressure) => double.IsFinite(pressure)
        ? (Math.Round(pressure, _sketch.PressureDigits) + 0.0).ToString("F" + _sketch.PressureDigits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('-', '−')
        : "";

    internal static string FlowText(double flow)
    {
        var size = Math.Abs(flow);
        var text = size switch
        {
            < 0.0005 => "0",
            < 0.01 => size.ToString(".000", CultureInfo.InvariantCulture),
            < 0.995 => size.ToString(".00", CultureInfo.InvariantCulture),
            < 9.95 => size.ToString("0.00", CultureInfo.InvariantCulture),
            _ => size.ToString("0.0", CultureInfo.InvariantCulture),
        };
        return flow < 0 && text != "0" ? "−" + text : text;
    }

    private static double TwoFigures(double value)
    {
        if (!(value > 0))
            return 0;
        var decade = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return Math.Round(value / decade) * decade;
    }
}
