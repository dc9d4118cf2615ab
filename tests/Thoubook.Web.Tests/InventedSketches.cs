using Thoubook.Web.Drawings.Circuits;

namespace Thoubook.Web.Tests;

/// <summary>Oil circuits of invented figures for the drawing: one like a real engine's, and any number at random.</summary>
internal static class InventedSketches
{
    /// <summary>A dry-sump six: a pressure pump, two scavenge pumps, seven mains, six big ends, a low-pressure rail.</summary>
    public static CircuitSketch DrySumpSix()
    {
        var nodes = new List<SketchNode>();
        var elements = new List<SketchElement>();
        var (tank, sump) = (Node("tank", 0, true), Node("sump", 0, true));
        var (suction, delivery, feed, rail) = (Node("suction", -0.7), Node("delivery", 16.9), Node("feed", 15.4), Node("rail", 3.1));
        Add(new("tank strainer", tank, suction, SketchMark.Strainer) { Flow = 2.66 });
        Add(new("pressure pump", suction, delivery, SketchMark.Pump) { Flow = 2.66, Says = "slip 22 in 100" });
        Add(new("main relief", delivery, sump, SketchMark.Valve) { Says = "shut, 52 to open" });
        Add(new("filter", delivery, feed, SketchMark.Filter) { Flow = 2.66 });
        Add(new("filter by-pass", delivery, feed, SketchMark.Valve) { Says = "shut" });
        Add(new("low-pressure stage", feed, rail, SketchMark.Valve) { Flow = 0.4, Says = "open 11 thou" });
        for (var i = 1; i <= 7; i++)
            Add(new($"camshaft bearing {i}", rail, sump, SketchMark.Bearing) { Flow = 0.04, Figure = "2.1", IsMeasured = i != 3 });
        Add(new("timing gear jets", rail, sump, SketchMark.Jet) { Flow = 0.12, Figure = "1/16 in" });
        Add(new("governor drive", rail, sump, SketchMark.Consumer) { IsBlanked = true });
        var before = feed;
        for (var i = 1; i <= 7; i++)
        {
            var gallery = Node($"gallery-{i}", 13.6 - (0.15 * i));
            Add(new($"gallery {i}", before, gallery, SketchMark.Line) { Flow = 2.3 - (0.3 * i) });
            before = gallery;
            var main = Node($"main-{i}", 11.9 - (0.2 * (i % 3)));
            Add(new($"feed of main {i}", gallery, main, SketchMark.Line) { Flow = 0.3 });
            Add(new($"main {i}", main, sump, SketchMark.Bearing) { Flow = 0.14 + (0.06 * i), Figure = $"{2.3 + (0.4 * i):0.0}", IsMeasured = i != 7 });
            if (i == 7)
                continue;
            var pin = Node($"pin-{i}", 10.2 - (0.3 * (i % 4)));
            Add(new($"crank drilling {i}", main, pin, SketchMark.Line) { Flow = 0.1 });
            Add(new($"big end {i}", pin, sump, SketchMark.Bearing) { Flow = 0.07, Figure = "2.6" });
        }

        var gauge = Node("gauge", 13.45);
        Add(new("gauge line", nodes.FindIndex(n => n.Name == "gallery-1"), gauge, SketchMark.Line));
        var cooled = Node("cooler-in", 4.1);
        foreach (var end in new[] { "front", "rear" })
        {
            var pick = Node($"{end} pick-up", -0.2);
            Add(new($"{end} gauze", sump, pick, SketchMark.Strainer) { Flow = 1.5 });
            Add(new($"{end} scavenge pump", pick, cooled, SketchMark.ScavengePump) { Flow = 1.5, Says = "1.5 times what arrives" });
        }

        Add(new("cooler", cooled, tank, SketchMark.Cooler) { Flow = 3 });
        return new CircuitSketch
        {
            Title = "Oil circuit at hot idle",
            Spoken = "The pump lifts the oil to 16.9 psi.",
            PressureUnit = "psi",
            FlowUnit = "gal/min",
            FigureUnit = "thou",
            Nodes = nodes,
            Elements = elements,
            Gauges =
            [
                new("main", gauge, "13.5") { Band = "± 3.1 psi", Least = 12 },
                new("low pressure", rail, "3.1") { Band = "± 0.9 psi", Least = 2, Greatest = 8 },
            ],
        };

        int Node(string name, double pressure, bool reservoir = false)
        {
            nodes.Add(new(name, pressure) { IsReservoir = reservoir });
            return nodes.Count - 1;
        }

        void Add(SketchElement element) => elements.Add(element);
    }

    /// <summary>Any nodes, joined in any way, with names long and short.</summary>
    public static CircuitSketch AtRandom(int seed, int count)
    {
        var chance = new Random(seed);
        string[] words = ["main", "rear", "camshaft", "timing", "gear", "lower", "bush", "of", "the", "idler", "thrust", "hydraulic", "governor", "jet", "W"];
        var nodeCount = Math.Max(3, count * 2 / 3);
        var scale = Math.Pow(10, chance.NextDouble() * 3 - 1);
        var nodes = Enumerable.Range(0, nodeCount).Select(i => new SketchNode(i < 2 ? $"sump-{i}" : $"node-{Name(chance.Next(1, 3))}-{i}", i < 2 ? 0 : chance.Next(12) == 0 ? -0.1 * scale : scale * Math.Pow(chance.NextDouble(), 2)) { IsReservoir = i < 2 || chance.Next(30) == 0 }).ToList();
        var elements = new List<SketchElement>();
        for (var i = 0; i < count; i++)
        {
            var from = i < nodeCount - 2 ? i + 2 : chance.Next(nodeCount);
            var to = chance.Next(3) == 0 ? chance.Next(2) : chance.Next(nodeCount);
            if (to == from)
                to = (to + 1) % nodeCount;
            var mark = i == 0 ? SketchMark.Pump : (SketchMark)chance.Next(Enum.GetValues<SketchMark>().Length);
            elements.Add(new(Name(chance.Next(1, 7)), from, to, mark)
            {
                Flow = (chance.NextDouble() - 0.2) * scale,
                Figure = chance.Next(2) == 0 ? $"{chance.NextDouble() * 9:0.0}" : null,
                Says = chance.Next(3) == 0 ? Name(chance.Next(1, 6)) : null,
                IsMeasured = chance.Next(3) > 0,
                IsBlanked = chance.Next(9) == 0,
            });
        }

        return new CircuitSketch
        {
            Title = "At random",
            Spoken = "At random.",
            PressureUnit = "psi",
            FlowUnit = "gal/min",
            FigureUnit = "thou",
            Nodes = nodes,
            Elements = elements,
            Gauges = [.. Enumerable.Range(0, chance.Next(4)).Select(_ => new SketchGauge(Name(2), chance.Next(nodeCount), $"{chance.NextDouble() * 100:0.0}") { Band = "± 3.1 psi", Least = chance.Next(2) == 0 ? scale / 3 : null, Greatest = chance.Next(2) == 0 ? scale : null })],
        };

        string Name(int length) => string.Join(' ', Enumerable.Range(0, length).Select(_ => words[chance.Next(words.Length)]));
    }
}
