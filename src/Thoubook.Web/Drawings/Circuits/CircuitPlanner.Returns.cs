using System.Globalization;

namespace Thoubook.Web.Drawings.Circuits;

// Below the floor, not to height: a lane for each node, a column for each element. And what frames the whole.
internal sealed partial class CircuitPlanner
{
    private const double Lane = 64;

    private readonly List<(int Pump, int From, double X)> _lifts = [];
    private double _lowest;

    private void PlaceReturns(double strip)
    {
        var falls = _cursor;
        _cursor = _lifts.Count > 0 ? _lifts[0].X + 26 : CircuitPlan.Frame + Gutter;
        var columns = new List<(int Element, double X)>();
        var labels = new Dictionary<int, double>();
        foreach (var (_, from, x) in _lifts.Where(l => !_side.IsFloor(l.From)))
            Reach(from, x);
        foreach (var node in _lifts.Select(l => l.From).Concat(Enumerable.Range(0, _sketch.Nodes.Count)).Distinct())
            Follow(node, null, isJoined: _lifts.Exists(l => l.From == node));
        (_foot, _cursor) = (_cursor, falls);

        var lanes = Lanes(labels.Keys);
        double LaneOf(int node) => _side.IsFloor(node) ? strip + 5 : strip + 60 + (lanes[node] * Lane);
        _lowest = labels.Count == 0 ? strip + 12 : labels.Keys.Max(LaneOf) + 12;

        _hatchings.Add(new(CircuitPlan.Frame + Gutter - 10, strip, Math.Max(_cursor, _foot) - CircuitPlan.Frame - Gutter + 10, 10, IsLeaning: true));
        foreach (var (node, x) in labels)
        {
            var y = LaneOf(node);
            if (_sketch.Nodes[node].IsReservoir)
                _strokes.Add(new(string.Create(CultureInfo.InvariantCulture, $"M{_left[node] - 9:0.0} {y - 22:0.0}V{y:0.0}H{_right[node] + 9:0.0}V{y - 22:0.0}"), "c-tank"));
            else
                Level(_left[node], _right[node], y, _sketch.IsImagined ? "d-dash" : Weight(Through(node)));
            Say(LaneText(node), x, y - 6);
        }

        foreach (var (pump, from, x) in _lifts)
            Drop(pump, x, _floor + 32, LaneOf(from), from);
        foreach (var (element, x) in columns)
            PlaceReturn(element, x, LaneOf);

        // A node's name stands above its lane, in the column of the element by which it is reached; else in one of its own.
        void Follow(int node, double? reachedAt, bool isJoined)
        {
            if (_side.Holds(node) || _side.IsFloor(node) || labels.ContainsKey(node) || !isJoined && _side.At(node).All(e => _drawn[e]))
                return;
            if (reachedAt is { } x)
            {
                labels[node] = x + 17;
            }
            else
            {
                var (left, right) = Column(NameWidth(node));
                labels[node] = left + 4;
                Reach(node, left);
                Reach(node, right);
            }

            foreach (var e in _side.At(node).Where(e => !_drawn[e]).ToList())
            {
                if (_drawn[e])
                    continue;
                _drawn[e] = true;
                var other = _side.Other(e, node);
                var words = ReturnWords(e).Select(l => LetterWidth.Of(l, Lettered.Usual)).DefaultIfEmpty(0).Max();
                var (start, _) = Column(Math.Max(34 + words, labels.ContainsKey(other) || _side.IsFloor(other) ? 0 : NameWidth(other) + 24));
                columns.Add((e, start + 18));
                foreach (var end in new[] { node, other }.Where(n => !_side.IsFloor(n)))
                    Reach(end, start + 18);
                Follow(other, start + 18, isJoined: true);
            }
        }

        double NameWidth(int node) => LetterWidth.Of(LaneText(node), Lettered.Usual) + 14;
    }

    private void PlaceReturn(int element, double x, Func<int, double> lane)
    {
        var of = _sketch.Elements[element];
        var (from, to) = (lane(of.From), lane(of.To));
        Line(x, from, x, to, StyleOf(of));
        foreach (var (node, y) in new[] { (of.From, from), (of.To, to) }.Where(p => !_side.IsFloor(p.Item1)))
            _strokes.Add(new(Ring(x, y, 3), "c-dot"));
        // In the lane nearest to where the oil goes, so that it stands clear of lanes that the line only crosses.
        var y0 = from < to ? to - (Lane / 2) : to + (Lane / 2);
        if (_side.IsFloor(of.To))
            y0 = from - (Lane / 2) + 3;
        _at[element] = (x, y0);
        if (of.Mark != SketchMark.Line)
            Mark(element, x, y0);
        var words = ReturnWords(element);
        Stack(words, x + (of.Mark == SketchMark.Line ? 7 : 19), y0 - ((words.Count - 1) * LineHeight / 2) - 3, Anchor.Start, quiet: true);
    }

    private void Drop(int pump, double x, double from, double to, int node)
    {
        Line(x, from, x, to, StyleOf(_sketch.Elements[pump]));
        if (!_side.IsFloor(node))
            _strokes.Add(new(Ring(x, to, 3), "c-dot"));
    }

    private string LaneText(int node) => _sketch.Nodes[node] is var n && n.IsReservoir || _sketch.IsImagined ? n.Name : $"{n.Name} {PressureText(n.Pressure)}";

    private List<string> ReturnWords(int element)
    {
        var of = _sketch.Elements[element];
        return [.. LetterWidth.Lines(of.Label, Lettered.Usual, LongestLabel).Concat(of.Says is { } says ? LetterWidth.Lines(says, Lettered.Usual, LongestLabel) : []).Take(3)];
    }

    /// <summary>Nodes whose level lines do not lie beside each other share a lane.</summary>
    private Dictionary<int, int> Lanes(IEnumerable<int> nodes)
    {
        var lanes = new Dictionary<int, int>();
        var taken = new List<List<(double Left, double Right)>>();
        foreach (var node in nodes)
        {
            var (left, right) = (_left[node] - 12, _right[node] + 12);
            var lane = taken.FindIndex(l => l.TrueForAll(t => t.Right < left || t.Left > right));
            if (lane < 0)
            {
                lane = taken.Count;
                taken.Add([]);
            }

            taken[lane].Add((left, right));
            lanes[node] = lane;
        }

        return lanes;
    }

    private void PlaceAxis(double strip, double width)
    {
        var x = CircuitPlan.Frame + Gutter - 18;
        var end = width - CircuitPlan.Frame - Edge;
        _strokes.Add(new(Path(x, _floor, end, _floor), "d-wide"));
        _strokes.Add(new(Path(x, _floor, x, _scaleTop), "d-wide"));
        if (_side.FloorName is { } floor)
            Say(LetterWidth.Lines(floor, Lettered.Usual, Gutter - 22)[0], x, strip + 10, Anchor.End);
        Say("return side, not to height", CircuitPlan.Frame + 14, _lowest + 24, quiet: true);
        Say(_sketch.IsImagined ? "its shape only, not to height" : $"height on the sheet is gauge pressure{(_scale.IsRoot ? ", by its square root" : "")}", CircuitPlan.Frame + 14, CircuitPlan.Frame + 18, quiet: true);
        if (_sketch.IsImagined)
            return;
        foreach (var (y, figure) in _scale.Marks())
        {
            _strokes.Add(new(Path(x - (figure is null ? 5 : 10), y, x, y), "d-narrow"));
            if (figure is null)
                continue;
            Say(figure, x - 14, y + 4.5, Anchor.End);
            if (y < _floor)
                _strokes.Insert(0, new(Path(x, y, end, y), "d-hair"));
        }

        Say(_sketch.PressureUnit, x - 14, _scaleTop - 14, Anchor.End);
        if (_sketch.Elements.Any(e => e.Figure is not null))
            Say(_sketch.FigureUnit, x, FigureRow, Anchor.End, quiet: true);
        Say(_sketch.FlowUnit, x, FlowRow, Anchor.End, quiet: true);
    }

    /// <summary>The pressure of each node where it differs from that of the node before, in a place that no other lettering has.</summary>
    private void PlacePressures(double width)
    {
        if (_sketch.IsImagined)
            return;
        var taken = _letters.Select(l => l.Box).ToList();
        var solid = _hatchings.Select(h => new Box(h.X, h.Y, h.X + h.Width, h.Y + h.Height)).Concat(_marks.Select(m => new Box(m.X - 17, m.Y - 16, m.X + 17, m.Y + 17))).ToList();
        foreach (var node in Enumerable.Range(0, _sketch.Nodes.Count).Where(n => _side.Holds(n) && double.IsFinite(_left[n])).OrderByDescending(n => _side.Weight(n)))
        {
            var text = PressureText(_sketch.Nodes[node].Pressure);
            var by = _side.ReachedBy(node);
            if (text.Length == 0 || by >= 0 && PressureText(_sketch.Nodes[_side.Other(by, node)].Pressure) == text)
                continue;
            var (y, length) = (Y(node), LetterWidth.Of(text, Lettered.Usual, by < 0));
            var best = Candidates(_left[node], _right[node], length)
                .SelectMany(x => new[] { (X: x, Y: y - 6), (X: x, Y: y + 15) })
                .Select(p => new Lettered(text, p.X, p.Y, IsBold: by < 0))
                .Where(l => l.Box.Left > CircuitPlan.Frame + Gutter - 12 && l.Box.Right < width - CircuitPlan.Frame && !taken.Exists(t => t.Meets(Wider(l.Box))) && !solid.Exists(h => h.Meets(l.Box)))
                .Select((l, i) => (Letter: l, Cost: (3 * _segments.Count(s => l.Box.Meets(s.X1, s.Y1, s.X2, s.Y2))) + (0.2 * i)))
                .OrderBy(c => c.Cost)
                .Cast<(Lettered Letter, double Cost)?>()
                .FirstOrDefault();
            if (best is not { } found)
                continue;
            _letters.Add(found.Letter);
            taken.Add(found.Letter.Box);
        }
    }

    private static IEnumerable<double> Candidates(double left, double right, double length)
    {
        yield return left + 4;
        for (var x = left + 10; x < Math.Min(right - length, left + 130); x += 10)
            yield return x;
        yield return right - length - 4;
        yield return left - length - 5;
        yield return right + 5;
    }

    private static Box Wider(Box box) => new(box.Left - 2, box.Top - 1, box.Right + 2, box.Bottom + 1);

    private void PlaceFrame(double width, double height)
    {
        const double frame = CircuitPlan.Frame;
        _strokes.Add(new(string.Create(CultureInfo.InvariantCulture, $"M1 1H{width - 1:0.0}V{height - 1:0.0}H1Z"), "d-wide"));
        _strokes.Add(new(string.Create(CultureInfo.InvariantCulture, $"M{frame} {frame}H{width - frame:0.0}V{height - frame:0.0}H{frame}Z"), "d-narrow"));
        for (var i = 0; i < CircuitPlan.ZonesAcross; i++)
        {
            var (x, next) = (width * (i + 0.5) / CircuitPlan.ZonesAcross, width * (i + 1) / CircuitPlan.ZonesAcross);
            foreach (var y in new[] { 17, height - 8 })
                Say((i + 1).ToString(CultureInfo.InvariantCulture), x, y, Anchor.Middle, quiet: true);
            if (i + 1 < CircuitPlan.ZonesAcross)
                _strokes.Add(new($"{Path(next, 1, next, frame)}{Path(next, height - frame, next, height - 1)}", "d-narrow"));
        }

        for (var i = 0; i < CircuitPlan.ZonesDown; i++)
        {
            var (y, next) = (height * (i + 0.5) / CircuitPlan.ZonesDown, height * (i + 1) / CircuitPlan.ZonesDown);
            foreach (var x in new[] { 12, width - 12 })
                Say(((char)('A' + i)).ToString(), x, y + 4, Anchor.Middle, quiet: true);
            if (i + 1 < CircuitPlan.ZonesDown)
                _strokes.Add(new($"{Path(1, next, frame, next)}{Path(width - frame, next, width - 1, next)}", "d-narrow"));
        }
    }

    private static string Path(double x1, double y1, double x2, double y2) => string.Create(CultureInfo.InvariantCulture, $"M{x1:0.0} {y1:0.0}L{x2:0.0} {y2:0.0}");

    private static string Ring(double x, double y, double r) => string.Create(CultureInfo.InvariantCulture, $"M{x - r:0.0} {y:0.0}a{r} {r} 0 1 0 {2 * r} 0a{r} {r} 0 1 0 {-2 * r} 0Z");
}
