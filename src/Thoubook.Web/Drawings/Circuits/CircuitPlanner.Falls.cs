namespace Thoubook.Web.Drawings.Circuits;

// Above the floor: to height.
internal sealed partial class CircuitPlanner
{
    private const double GaugeHeight = 116;

    private double MarkRow => _floor + 19;

    private double FigureRow => _floor + 50;

    private double FlowRow => _floor + 67;

    private double NameRow => _floor + 76;

    /// <summary>A node with all that hangs at it: what lifts oil into it, its gauges, what takes oil, its branches, and last the way on: to the next of its own name, as along a gallery, else to where most hangs.</summary>
    private void Place(int node)
    {
        var elements = _side.At(node).Where(e => !_drawn[e] && e != _side.ReachedBy(node)).ToList();
        if (_side.ReachedBy(node) < 0 && _sketch.Nodes[node].IsReservoir)
            PlaceFeed(node);
        foreach (var pump in elements.Where(e => _side.LiftsInto(e, node)))
            PlacePump(pump, node);
        foreach (var gauge in _sketch.Gauges.Where(g => g.Node == node))
            PlaceGauge(gauge);
        foreach (var e in elements.Where(e => !_drawn[e] && !_side.Holds(_side.Other(e, node))))
            PlaceFall(e, node);

        var ways = elements.Where(e => _side.Holds(_side.Other(e, node)) && _side.ReachedBy(_side.Other(e, node)) == e).ToList();
        var on = ways.Select(e => (int?)e).MaxBy(e => (IsNext(node, _side.Other(e!.Value, node)), _side.Weight(_side.Other(e.Value, node)), _sketch.Nodes[_side.Other(e.Value, node)].Pressure));
        foreach (var e in ways.OrderBy(e => e == on))
        {
            var child = _side.Other(e, node);
            foreach (var beside in elements.Where(b => b != e && !_drawn[b] && _side.Other(b, node) == child && _side.ReachedBy(node) != b))
                PlaceBeside(beside, node, child);
            PlaceWay(e, node, child);
            Place(child);
        }

        foreach (var e in elements.Where(e => !_drawn[e] && _side.Holds(_side.Other(e, node))))
            PlaceJoin(e, node);
        if (!double.IsFinite(_left[node]))
            Reach(node, _cursor);
    }

    /// <summary>gallery 5 and gallery 6: numbers of one thing, in a row.</summary>
    private bool IsNext(int node, int other) =>
        Stem(_sketch.Nodes[node].Name) is { Length: > 0 } stem && stem == Stem(_sketch.Nodes[other].Name) && _sketch.Nodes[node].Name != stem;

    private static string Stem(string name) => name.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9', ' ', '-');

    private void PlaceFeed(int node)
    {
        var lines = LetterWidth.Lines(_sketch.Nodes[node].Name, Lettered.Usual, LongestLabel);
        var (left, right) = Column(lines.Max(l => LetterWidth.Of(l, Lettered.Usual)) + 14);
        var y = Y(node);
        Reach(node, right);
        Line(left + 4, y, right, y, "c-heavy");
        Stack(lines, left + 6, y + 16, Anchor.Start);
    }

    private void PlacePump(int pump, int node)
    {
        _drawn[pump] = true;
        var of = _sketch.Elements[pump];
        var name = LetterWidth.Lines(of.Label, Lettered.Usual, LongestLabel);
        string[] says = _sketch.IsImagined ? [] : [of.IsBlanked ? "blanked" : $"{FlowText(of.Flow)} {_sketch.FlowUnit}", .. of.Says is { } s ? LetterWidth.Lines(s, Lettered.Usual, LongestLabel) : []];
        var text = name.Select(l => LetterWidth.Of(l, Lettered.Usual, true)).Concat(says.Select(l => LetterWidth.Of(l, Lettered.Usual))).Max();
        var (_, right) = Column(text + 60);
        var x = right - 28;
        var top = Y(node);
        Reach(node, x);
        Line(x, top, x, _floor + 32, StyleOf(of));
        Mark(pump, x, _floor);
        _lifts.Add((pump, of.From, x));
        var y = ((top + _floor) / 2) - ((name.Count + says.Length - 2) * LineHeight / 2);
        Stack(name, x - 30, y, Anchor.End, bold: true);
        Stack(says, x - 30, y + (name.Count * LineHeight), Anchor.End, quiet: true);
    }

    private void PlaceGauge(SketchGauge gauge)
    {
        var limit = Limit(gauge);
        var (text, size) = (new[] { gauge.Name, gauge.Band ?? "", limit }, Lettered.Usual);
        var (left, right) = Column(Math.Max(44, Math.Max(text.Max(t => LetterWidth.Of(t, size)), LetterWidth.Of(gauge.Figure, Lettered.Large, true)) + 10));
        var x = (left + right) / 2;
        var (y, top) = (Y(gauge.Node), _scaleTop - GaugeHeight);
        Say(gauge.Name, x, top + 11, Anchor.Middle, quiet: true);
        if (!_sketch.IsImagined)
            Say(gauge.Figure, x, top + 31, Anchor.Middle, bold: true, large: true);
        if (gauge.Band is { } band)
            Say(band, x, top + 46, Anchor.Middle);
        if (limit.Length > 0)
            Say(limit, x, top + 62, Anchor.Middle, quiet: true);
        Reach(gauge.Node, x);
        if (gauge.Least is { } least)
        {
            _hatchings.Add(new(x - 12, _scale.Y(least), 24, _floor - _scale.Y(least), IsLeaning: true));
            _strokes.Add(new(Path(x - 16, _scale.Y(least), x + 16, _scale.Y(least)), "d-heavy"));
        }

        if (gauge.Greatest is { } greatest && _scale.Y(greatest) > _scaleTop)
        {
            var shown = Math.Min(_scale.Y(greatest) - _scaleTop, 80);
            _hatchings.Add(new(x - 12, _scale.Y(greatest) - shown, 24, shown, IsLeaning: false));
            _strokes.Add(new(Path(x - 16, _scale.Y(greatest), x + 16, _scale.Y(greatest)), "d-heavy"));
        }

        Line(x, top + 102, x, y, "c-stem");
        _strokes.Add(new(Ring(x, top + 84, 17), "c-gauge"));
        _strokes.Add(new(Path(x, top + 84, x + 9, top + 75), "d-wide"));
        _strokes.Add(new(Ring(x, y, 4), "c-dot"));
    }

    /// <summary>What takes oil: it falls from its node to the floor.</summary>
    private void PlaceFall(int element, int node)
    {
        _drawn[element] = true;
        var of = _sketch.Elements[element];
        var to = _side.Other(element, node);
        var names = LetterWidth.Lines(of.Label, Lettered.Usual, LongestName);
        List<string> says = [.. of.Says is { } s ? LetterWidth.Lines(s, Lettered.Usual, LongestName) : []];
        if (of.IsBlanked)
            says.Add("blanked");
        if (!_side.IsFloor(to))
            says.AddRange(LetterWidth.Lines($"to {_sketch.Nodes[to].Name}", Lettered.Usual, LongestName));
        var flow = _sketch.IsImagined ? "" : of.IsBlanked ? "0" : FlowText(of.From == node ? of.Flow : -of.Flow);
        var widest = Math.Max(LetterWidth.Of(flow, Lettered.Usual, true), LetterWidth.Of(of.Figure ?? "", Lettered.Usual, true));
        var (left, right) = Column(Math.Max(34, Math.Max(widest + 9, ((names.Count + says.Count) * LineHeight) + 6)));
        var x = (left + right) / 2;
        Reach(node, x);
        Line(x, Y(node), x, _floor, StyleOf(of));
        Mark(element, x, MarkRow);
        var share = Math.Abs(of.Flow) > _heavy;
        if (of.Figure is { } figure)
            Say(figure, x, FigureRow, Anchor.Middle, share);
        if (flow.Length > 0)
            Say(flow, x, FlowRow, Anchor.Middle, share);
        var at = x - ((names.Count + says.Count - 1) * LineHeight / 2) + 4;
        foreach (var (line, quiet) in names.Select(n => (n, false)).Concat(says.Select(n => (n, true))))
        {
            Say(line, at, NameRow, Anchor.End, quiet: quiet, upright: true);
            at += LineHeight;
        }
    }

    /// <summary>A way on to another node: across where little is lost, straight down where much is.</summary>
    private void PlaceWay(int element, int node, int child)
    {
        _drawn[element] = true;
        var of = _sketch.Elements[element];
        var (from, to) = (Y(node), Y(child));
        var text = Words(of, node, child);
        var width = text.Count == 0 ? 0 : text.Max(l => LetterWidth.Of(l, Lettered.Usual));
        var straight = Math.Abs(to - from) >= Steep;
        var (left, right) = Column(text.Count == 0 ? 14 : straight ? width + 30 : Math.Max(width, 34) + 12);
        Reach(child, right);
        if (straight)
        {
            Reach(node, right);
            Line(right, from, right, to, StyleOf(of));
            _at[element] = (right, (from + to) / 2);
        }
        else
        {
            Reach(node, left);
            Line(left, from, right, to, StyleOf(of));
            _at[element] = ((left + right) / 2, (from + to) / 2);
        }

        if (of.Mark == SketchMark.Line)
            return;
        var (x, y) = _at[element];
        Mark(element, x, y);
        if (straight)
            Stack(text, x - 19, y - ((text.Count - 1) * LineHeight / 2) + 4, Anchor.End);
        else
            Stack(text, (left + right) / 2, Math.Max(y + 14, Math.Max(from, to)) + 14, Anchor.Middle);
    }

    /// <summary>A second way between the same two nodes.</summary>
    private void PlaceBeside(int element, int node, int child)
    {
        _drawn[element] = true;
        var of = _sketch.Elements[element];
        var (from, to) = (Y(node), Y(child));
        var text = Words(of, node, child);
        var (left, right) = Column(text.Count == 0 ? 30 : Math.Max(34, text.Max(l => LetterWidth.Of(l, Lettered.Usual))) + 12);
        var x = (left + right) / 2;
        Reach(node, x);
        Reach(child, x);
        Line(x, from, x, to, StyleOf(of));
        _at[element] = (x, (from + to) / 2);
        if (of.Mark == SketchMark.Line)
            return;
        Mark(element, x, (from + to) / 2);
        Stack(text, x, Math.Max((from + to) / 2 + 14, Math.Max(from, to)) + 14, Anchor.Middle);
    }

    /// <summary>A way to a node that is drawn elsewhere: it ends in a ring at the height of that node, with its name.</summary>
    private void PlaceJoin(int element, int node)
    {
        _drawn[element] = true;
        var of = _sketch.Elements[element];
        var other = _side.Other(element, node);
        var (left, right) = Column(34);
        var x = (left + right) / 2;
        Reach(node, x);
        Line(x, Y(node), x, Y(other), StyleOf(of));
        _strokes.Add(new(Ring(x, Y(other), 5), "ring"));
        var (top, foot) = (Math.Min(Y(node), Y(other)), Math.Max(Y(node), Y(other)));
        _at[element] = (x, (top + foot) / 2);
        if (of.Mark != SketchMark.Line && foot - top > 40)
            Mark(element, x, (top + foot) / 2);
        var name = LetterWidth.Lines($"to {_sketch.Nodes[other].Name}", Lettered.Usual, LongestName);
        Say(name[0], x + 4, foot + 10, Anchor.End, quiet: true, upright: true);
    }

    /// <summary>What stands beside a way that has a mark: its name, what it does, and what is lost in it.</summary>
    private List<string> Words(SketchElement of, int node, int child)
    {
        if (of.Mark == SketchMark.Line)
            return [];
        List<string> words = [.. LetterWidth.Lines(of.Label, Lettered.Usual, LongestLabel), .. of.Says is { } s ? LetterWidth.Lines(s, Lettered.Usual, LongestLabel) : []];
        var lost = _sketch.Nodes[node].Pressure - _sketch.Nodes[child].Pressure;
        if (of.IsBlanked)
            words.Add("blanked");
        else if (of.Says is null && !_sketch.IsImagined && PressureText(lost) is var text && text.Any(c => c is >= '1' and <= '9'))
            words.Add($"{text} lost");
        return words;
    }

    private static string Limit(SketchGauge gauge) => (gauge.Least, gauge.Greatest) switch
    {
        ({ } least, { } greatest) => $"{least:0.##} to {greatest:0.##}",
        ({ } least, null) => $"{least:0.##} or more",
        (null, { } greatest) => $"{greatest:0.##} or less",
        _ => "",
    };

    private void Stack(IReadOnlyList<string> lines, double x, double y, Anchor anchor, bool bold = false, bool quiet = false)
    {
        for (var i = 0; i < lines.Count; i++)
            Say(lines[i], x, y + (i * LineHeight), anchor, bold: bold, quiet: quiet);
    }
}
