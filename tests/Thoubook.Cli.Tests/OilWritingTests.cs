using System.Text.Json;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

/// <summary>What is written down moves what the oil is predicted to do.</summary>
public sealed class OilWritingTests : IDisposable
{
    private const string Journal = "crankshaft.main-3";

    private readonly DemoShop _demo = new();

    public void Dispose() => _demo.Dispose();

    [Fact]
    public void StrikingOutAReading_ChangesTheBandOfHotIdle_AndStrikingThatOutBringsItBack()
    {
        var before = MainGauge();
        var reading = _demo.Says("reading", "list", DemoShop.Engine, Journal, "--json").Json.EnumerateArray().First(r => r.GetProperty("stands").GetBoolean()).GetProperty("id").GetString()!;

        var strike = _demo.Says("reading", "strike", DemoShop.Engine, reading, "--why", "read on the fillet", "--by", "bench").Is(ExitStatus.Good).Out.Trim();
        var after = MainGauge();
        _demo.Says("reading", "strike", DemoShop.Engine, strike, "--why", "it was not", "--by", "bench").Is(ExitStatus.Good);

        Assert.NotEqual(before.High - before.Low, after.High - after.Low);
        Assert.Equal(before, MainGauge());
    }

    [Fact]
    public void FlowTest_LoggedAndAccepted_CalibratesUntilItIsStruckOut()
    {
        var before = MainGauge();
        var expected = _demo.Says("oil", "flow-test", DemoShop.Engine, "--json").Json.GetProperty("total").GetProperty("value").GetDouble();
        var litres = (expected * 60000 * 1.1).ToString("F3", System.Globalization.CultureInfo.InvariantCulture);

        var log = _demo.Says("oil", "flow-test", DemoShop.Engine, "log", $"{litres} l/min", "--caught", "main-bearing-3=40 cc/min", "--by", "bench", "--json").Is(ExitStatus.Good).Json;
        var test = log.GetProperty("id").GetString()!;
        Assert.False(log.GetProperty("reading").GetProperty("calibrates").GetBoolean());
        Assert.Single(log.GetProperty("reading").GetProperty("each").EnumerateArray());
        Assert.Equal(before, MainGauge());

        _demo.Says("oil", "flow-test", DemoShop.Engine, "accept", test, "--why", "plugs seen in place", "--by", "owner").Is(ExitStatus.Good);
        var calibrated = MainGauge();
        Assert.True(calibrated.Value < before.Value, "More ran through than was expected, so the gauge reads less.");
        Assert.True(calibrated.High - calibrated.Low < before.High - before.Low, "What was tested is known better.");

        _demo.Says("reading", "strike", DemoShop.Engine, test, "--why", "another oil", "--by", "bench").Is(ExitStatus.Good);
        Assert.Equal(before, MainGauge());
    }

    [Fact]
    public void FlowTest_AsAVolumeInATime_IsTheSameFlow()
    {
        _demo.Says("oil", "flow-test", DemoShop.Engine, "log", "1 imp gal in 5 min", "--by", "bench").Is(ExitStatus.Good);

        var test = Assert.Single(_demo.Says("oil", "flow-test", DemoShop.Engine, "--json").Json.GetProperty("tests").EnumerateArray());
        Assert.Equal(4.54609e-3 / 300, test.GetProperty("flow").GetDouble(), 1e-12);
    }

    [Theory]
    [InlineData("FLOW", "log")]
    [InlineData("no flow test", "accept")]
    [InlineData("log", "logg")]
    [InlineData("--caught", "log", "1 l/min", "--caught", "main-bearing-3")]
    public void FlowTest_RefusedInWords(string says, params string[] words) =>
        Assert.Contains(says, _demo.Says(["oil", "flow-test", DemoShop.Engine, .. words]).Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);

    private (double Value, double Low, double High) MainGauge()
    {
        var main = _demo.Says("oil", "show", DemoShop.Engine, "--json").Json.GetProperty("gauges")[0];
        return (Figure(main, "value"), Figure(main, "low"), Figure(main, "high"));
    }

    private static double Figure(JsonElement gauge, string name) => gauge.GetProperty(name).GetDouble();
}
