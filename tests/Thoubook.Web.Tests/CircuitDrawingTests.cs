using System.Globalization;
using System.Xml.Linq;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Thoubook.Web.Drawings.Circuits;

namespace Thoubook.Web.Tests;

/// <summary>The circuit as it is drawn, read back from the drawing itself.</summary>
public sealed class CircuitDrawingTests
{
    [Fact]
    public async Task DrySumpSix_NoLabelOverAnother_NoneOutside() => Assert.Empty(Faults(await Drawn(InventedSketches.DrySumpSix())));

    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(75)]
    [InlineData(110)]
    [InlineData(150)]
    public async Task AnyCircuit_NoLabelOverAnother_NoneOutside(int count)
    {
        var wrong = new List<string>();
        for (var seed = 0; seed < 60; seed++)
            wrong.AddRange(Faults(await Drawn(InventedSketches.AtRandom((seed * 1009) + count, count))).Select(f => $"seed {seed}: {f}"));
        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Take(20)));
    }

    [Fact]
    public void EveryElement_HasAZone_AndEveryMarkStandsInItsOwn()
    {
        var sketch = InventedSketches.DrySumpSix();
        var plan = CircuitPlan.Of(sketch);
        Assert.Equal(sketch.Elements.Count, plan.Zones.Count);
        Assert.All(plan.Zones, z => Assert.Matches("^[A-D][1-8]$", z));
        Assert.Equal(sketch.Elements.Count(e => e.Mark != SketchMark.Line), plan.Marks.Count);
        Assert.All(plan.Marks, m => Assert.Contains(CircuitPlan.Zone(m.X, m.Y, plan.Width, plan.Height), plan.Zones));
    }

    [Fact]
    public void Height_IsGaugePressure()
    {
        var sketch = InventedSketches.DrySumpSix();
        var plan = CircuitPlan.Of(sketch);
        double Y(string pressure) => plan.Letters.First(l => l.Text == pressure && !l.IsQuiet && !l.IsLarge && l.X > 120).Y;
        Assert.True(Y("16.9") < Y("15.4"));
        Assert.True(Y("15.4") < Y("11.7"));
        Assert.True(Y("11.7") < Y("3.1"));
    }

    [Fact]
    public async Task MoreOil_IsAWiderLine_BlankedHasTwoDots_NotMeasuredIsDashed()
    {
        var drawn = await Drawn(InventedSketches.DrySumpSix());
        string[] styles = [.. drawn.Descendants("path").Select(p => p.Attribute("class")!.Value)];
        Assert.Contains("c-heavy", styles);
        Assert.Contains("c-wide", styles);
        Assert.Contains("c-thin", styles);
        Assert.Contains("d-plan", styles);
        Assert.Equal(2, styles.Count(s => s.EndsWith("c-unread", StringComparison.Ordinal)));
    }

    internal static async Task<XElement> Drawn(CircuitSketch sketch)
    {
        await using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        var html = await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<CircuitDrawing>(ParameterView.FromDictionary(new Dictionary<string, object?> { ["Sketch"] = sketch, ["Plan"] = CircuitPlan.Of(sketch) }))).ToHtmlString());
        if (Environment.GetEnvironmentVariable("THOUBOOK_DRAWN") is { } folder)
            await File.WriteAllTextAsync(Path.Combine(folder, $"{sketch.Title}-{sketch.Elements.Count}.html"), html);
        return XElement.Parse(html);
    }

    /// <summary>Lettering that lies over other lettering or off the sheet, by the attributes of the drawing alone.</summary>
    private static IEnumerable<string> Faults(XElement svg)
    {
        var (width, height) = (Number(svg, "width"), Number(svg, "height"));
        var boxes = svg.Descendants("text").Select(t => (t.Value, Box: BoxOf(t))).ToList();
        for (var i = 0; i < boxes.Count; i++)
        {
            if (boxes[i].Box is var box && (box.Left < 0 || box.Top < 0 || box.Right > width || box.Bottom > height))
                yield return $"\"{boxes[i].Value}\" runs off the sheet: {box} of {width} by {height}";
            for (var j = i + 1; j < boxes.Count; j++)
            {
                if (box.Meets(boxes[j].Box))
                    yield return $"\"{boxes[i].Value}\" {box} lies over \"{boxes[j].Value}\" {boxes[j].Box}";
            }
        }
    }

    private static Box BoxOf(XElement text)
    {
        string[] classes = text.Attribute("class")!.Value.Split(' ');
        var (x, y, size) = (Number(text, "x"), Number(text, "y"), classes.Contains("l") ? 18.0 : 13.0);
        var length = LetterWidth.Of(text.Value, size, classes.Contains("b"));
        var before = classes.Contains("mid") ? length / 2 : classes.Contains("end") ? length : 0;
        var box = new Box(-before, -LetterWidth.Ascent * size, length - before, LetterWidth.Descent * size);
        // Turned a quarter to the left about its own place, along becomes up.
        return text.Attribute("transform") is null
            ? new(x + box.Left, y + box.Top, x + box.Right, y + box.Bottom)
            : new(x + box.Top, y - box.Right, x + box.Bottom, y - box.Left);
    }

    private static double Number(XElement of, string attribute) => double.Parse(of.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);
}
