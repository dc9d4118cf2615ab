using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

public sealed class OilPumpTests
{
    private const string Read = """
          - { of: pump/body.depth, place: A1, value: 1.2535 in, gauge: M-1, temperature: 20 °C, by: owner, at: "2026-11-01T10:05:00+00:00" }
        """;

    private static readonly string Measured = Bench.TestPump + "\n" + Read;

    [Fact]
    public void OilPump_AsJson_HasFloatsOfEachChoice()
    {
        using var bench = new Bench(Measured);
        var card = bench.Says("oil", "pump", Bench.Engine, "pump", "--gasket", "8thou", "--lap", "2 thou", "--skim", "1thou", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal("pump", card.GetProperty("part").GetString());
        Assert.Equal(["pump/body.depth", "pump/driver.width"], card.GetProperty("sizes").EnumerateArray().Select(s => s.GetProperty("name").GetString()));
        var choices = card.GetProperty("choices").EnumerateArray().ToArray();
        Assert.Equal([0, 8, -2, -1], choices.Select(c => Math.Round(c.GetProperty("change").GetDouble() / 25.4e-6, 9)));
        var floats = choices[0].GetProperty("floats").EnumerateArray().ToArray();
        Assert.Equal(["20 °C", "hot"], floats.Select(f => f.GetProperty("state").GetString()));
        Assert.Equal(2.5, floats[0].GetProperty("value").GetDouble() / 25.4e-6, 1e-9);
        Assert.True(floats[0].GetProperty("low").GetDouble() < floats[0].GetProperty("value").GetDouble());
        Assert.True(floats[1].GetProperty("value").GetDouble() > floats[0].GetProperty("high").GetDouble());
        Assert.Equal(1, choices[0].GetProperty("endLeak").GetDouble());
        Assert.True(choices[2].GetProperty("floats")[0].GetProperty("riskOfNil").GetDouble() > choices[3].GetProperty("floats")[0].GetProperty("riskOfNil").GetDouble());
    }

    [Fact]
    public void OilPump_InWords_AsApproved()
    {
        using var bench = new Bench(Measured);
        Approved.Check("oil-pump", bench.Says("oil", "pump", Bench.Engine, "pump").Is(ExitStatus.Good).Out);
    }

    [Fact]
    public void OilPump_WithoutACircuit_SupposesItsSizes_AndRefusesWhatTheOilWouldAnswer()
    {
        using var bench = new Bench(Measured);
        var card = bench.Says("oil", "pump", Bench.Engine, "pump", "--suppose", "pump/body.depth=1.2525in", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal(1.5, card.GetProperty("choices")[0].GetProperty("floats")[0].GetProperty("value").GetDouble() / 25.4e-6, 1e-9);
        Assert.Equal("pump/body.depth at 1.2525 in", card.GetProperty("supposed").GetString());
        foreach (var option in (string[][])[["--speed", "450 rev/min"], ["--oil", "SAE 50"], ["--plot", "pump.svg"]])
            Assert.Contains("no oil circuit", bench.Says(["oil", "pump", Bench.Engine, "pump", .. option]).Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void OilPump_OfWhatIsNoPump_OrNotMeasured_IsRefused()
    {
        using var bench = new Bench();
        Assert.Contains("Pumps: pump.", bench.Says("oil", "pump", Bench.Engine, "pomp").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
        Assert.Contains("above nil", bench.Says("oil", "pump", Bench.Engine, "pump", "--lap", "-1thou").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
        Assert.Equal("--gasket", bench.Says("oil", "pump", Bench.Engine, "pump", "--gasket", "6 psi", "--json").Is(ExitStatus.BadInput).Json.GetProperty("problems")[0].GetProperty("field").GetString());
        Assert.Contains("unknown-engine", bench.Says("oil", "pump", "Nobody", "pump", "--json").Is(ExitStatus.BadInput).Out, StringComparison.Ordinal);
    }
}
