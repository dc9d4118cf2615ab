using Thoubook.Mechanics.Pumps;
using Thoubook.Mechanics.Sums;
using AllSums = Thoubook.Mechanics.Sums.Sums;

namespace Thoubook.Mechanics.Tests.Pumps;

/// <summary>The sums on pumps, valves and trains, asked by name.</summary>
public sealed class PumpSumsTests
{
    private const double Inch = 25.4e-3;
    private const double Psi = 6894.757293168;
    private static readonly (string, double)[] Bench =
    [
        ("teeth", 11), ("tip-diameter", 1.625 * Inch), ("centre-distance", 1.375 * Inch), ("width", 1.5 * Inch), ("end-float", 3e-3 * Inch),
        ("speed", 450 * Math.PI / 30), ("pressure-rise", 30 * Psi), ("viscosity", 0.02),
    ];

    [Fact]
    public void GearPump_FromModule_NeedsNeitherTipsNorCentres()
    {
        var drawn = Ask("gear-pump", [("teeth", 11), ("module", Inch / 8), ("width", 1.5 * Inch)]);
        var measured = Ask("gear-pump", [("teeth", 11), ("tip-diameter", 13.0 / 8 * Inch), ("centre-distance", 11.0 / 8 * Inch), ("width", 1.5 * Inch), ("speed", 2 * Math.PI)]);
        Assert.Equal(drawn["displacement"], measured["displacement"], 1e-15);
        Assert.Equal(measured["displacement"], measured["flow"], 1e-15);

        // Centres without backlash, from the shifts: the reference pair GP1 has a centre distance of 51.296412 mm with tips of 30 mm.
        var shifted = Ask("gear-pump", [("teeth", 12), ("module", 4e-3), ("shift", 0.5), ("tip-diameter", 60e-3), ("width", 20e-3)]);
        Assert.Equal(28971.7023e-9, shifted["displacement"], 28971.7023e-9 * 1e-6);
        Assert.Equal(1.281814, shifted["contact-ratio"], 1e-6);
        var unequal = Ask("gear-pump", [("teeth", 12), ("driven-teeth", 16), ("module", 3e-3), ("shift", 0.4), ("driven-shift", 0.25), ("width", 20e-3)]);
        Assert.InRange(unequal["displacement"] * 9 / 15073.3113, 8.9e-9, 9.3e-9);
    }

    [Theory]
    [InlineData("tip-diameter", "centre-distance", 0.03)]
    [InlineData("base-pitch", "module", 0.003)]
    [InlineData("shift", "shift", 0.5)]
    public void GearPump_SaysWhatDoesNotGoTogether(string wrong, string key, double value)
    {
        (string, double)[] given = wrong switch
        {
            "base-pitch" => [("teeth", 11), ("width", 0.03), ("base-pitch", 0.009), (key, value)],
            "shift" => [("teeth", 11), ("width", 0.03), ("tip-diameter", 0.041), ("centre-distance", 0.035), (key, value)],
            _ => [("teeth", 11), ("width", 0.03), (key, value)],
        };
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find("gear-pump", out _)!.Run(Sums.EverySumTests.Request("m", given)));
        Assert.Contains(refused.Problems, problem => problem.Key == wrong);
    }

    [Fact]
    public void Counts_AreWhole()
    {
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find("meeting-teeth", out _)!.Run(Sums.EverySumTests.Request("m", ("teeth", 10.5), ("other-teeth", 11))));
        Assert.Equal("a whole number", Assert.Single(refused.Problems).Allowed);
    }

    [Fact]
    public void Slip_NamesTheWidestPath()
    {
        Assert.Contains("ends", Said("gear-pump-slip", [.. Bench, ("tip-clearance", 0)]), StringComparison.Ordinal);
        Assert.Contains("tips", Said("gear-pump-slip", [.. Bench.Where(pair => pair.Item1 != "end-float"), ("end-float", 1e-5), ("tip-clearance", 8e-3 * Inch)]), StringComparison.Ordinal);
        Assert.Contains("bushes", Said("gear-pump-slip", [.. Bench, ("tip-clearance", 0), ("bush-clearance", 20e-3 * Inch), ("bush-length", 0.02)]), StringComparison.Ordinal);
        Assert.Contains("cannot hold", Said("gear-pump-slip", [.. Bench.Where(pair => pair.Item1 != "pressure-rise"), ("pressure-rise", 7_000 * Psi)]), StringComparison.Ordinal);
        Assert.Contains("Nothing", Said("gear-pump-slip", [.. Bench.Where(pair => pair.Item1 != "pressure-rise"), ("pressure-rise", 0)]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bush-length", "bush-clearance", 1e-4)]
    [InlineData("bush-length", "bush-length", 0.02)]
    [InlineData("hub-diameter", "hub-diameter", 0.03)]
    [InlineData("module", "module", 0.0035)]
    [InlineData("tip-diameter", "tip-diameter", 0.034)]
    public void Slip_SaysWhichSizeCannotBe(string wrong, string key, double value)
    {
        var refused = Assert.IsType<SumOutcome.Refused>(AllSums.Find("gear-pump-slip", out _)!.Run(Sums.EverySumTests.Request("m", [.. Bench.Where(pair => pair.Item1 != key), (key, value)])));
        Assert.Equal(wrong, Assert.Single(refused.Problems).Key);
    }

    [Fact]
    public void Slip_IsWhatTheCircuitTakes()
    {
        var answer = Ask("gear-pump-slip", [.. Bench, ("hub-diameter", 16e-3)]);
        var pump = GearPump.Characteristic(GearPumpTests.Bench);
        Assert.Equal(pump.Displacement, answer["displacement"], 1e-15);
        Assert.Equal(pump.Flow(450 * Math.PI / 30, 30 * Psi, 0.02), answer["delivered"], 1e-15);
        Assert.Equal(answer["delivered"] / (pump.Displacement * 7.5), answer["efficiency"], 1e-12);
        var caught = Ask("gear-pump-slip", [.. Bench, ("displacement", 3e-5)]);
        Assert.Equal(3e-5 * 7.5, caught["delivered"] + caught["slip"] - caught["tip-carry"], 1e-12);
    }

    [Fact]
    public void Power_IsTheSumOfItsParts()
    {
        var answer = Ask("gear-pump-power", [.. Bench, ("bush-clearance", 3e-3 * Inch), ("bush-length", 0.02)]);
        Assert.Equal(answer["torque"], answer["pressure-torque"] + answer["end-torque"] + answer["tip-torque"] + answer["bush-torque"], 1e-12);
        Assert.Equal(answer["power"], answer["torque"] * 450 * Math.PI / 30, 1e-9);
        Assert.All(answer.Values, value => Assert.True(value > 0));
    }

    [Fact]
    public void FillingLimit_CountsHeadAndLoss()
    {
        (string, double)[] sizes = [("tip-diameter", 46.736e-3), ("root-diameter", 35.1538e-3), ("speed", 200)];
        var level = Ask("filling-limit", sizes);
        var lifted = Ask("filling-limit", [.. sizes, ("head", -0.5), ("loss", 5e3)]);
        Assert.Equal((870 * 9.80665 * 0.5) + 5e3, level["inlet-pressure"] - lifted["inlet-pressure"], 1e-6);
        Assert.True(lifted["limit-speed"] < level["limit-speed"]);
        Assert.Equal(level["fills-at"], lifted["fills-at"]);
        Assert.Contains("at no speed", Said("filling-limit", [.. sizes, ("loss", 90e3)]), StringComparison.Ordinal);
        Assert.Contains("do not fill", Said("filling-limit", [.. sizes.Take(2), ("speed", 2_000)]), StringComparison.Ordinal);
    }

    [Fact]
    public void PortSide_SaysWhichPortDelivers()
    {
        var request = new SumRequest(
            new Dictionary<string, IReadOnlyList<double>> { ["driver-teeth"] = [36, 24], ["driven-teeth"] = [24, 18], ["speed"] = [100] },
            new Dictionary<string, IReadOnlyList<string>> { ["hand"] = ["anticlockwise"], ["lies"] = ["left"] },
            "m");
        var result = Assert.IsType<SumOutcome.Answered>(AllSums.Find("port-side", out _)!.Run(request)).Result;
        Assert.Equal("The pump's driver turns anticlockwise. It carries the oil round the outside; the teeth come out of mesh at the top, which is the inlet, and the port at the bottom delivers.", result.Answer);
        Assert.Equal(200, result.Values.Single(value => value.Key == "pump-speed").Value, 1e-9);
        Assert.Equal(-1, result.Values.Single(value => value.Key == "hand").Value);
    }

    [Fact]
    public void ReliefValve_ReadsCrackingOrPreload_AndAddsBackPressure()
    {
        var area = Math.PI * 49e-6;
        var byForce = Ask("relief-valve", [("seat", 0.014), ("preload", 48.4), ("spring", 2200), ("flow", 20 / 60_000.0)]);
        var byPressure = Ask("relief-valve", [("seat", 0.014), ("cracking", 48.4 / area), ("spring", 2200), ("flow", 20 / 60_000.0), ("back-pressure", 1e4), ("friction", 2)]);
        Assert.Equal(0.42952e-3, byForce["lift"], 1e-8);
        Assert.InRange(byForce["pressure"], 0.320545e6, 0.320555e6);
        Assert.Equal(1e4, byPressure["pressure"] - byForce["pressure"], 1e-3);
        Assert.Equal(1e4, byPressure["cracking"] - byForce["cracking"], 1e-6);
        Assert.Equal(4 / area, byPressure["opens-at"] - byPressure["shuts-at"], 1e-6);
        Assert.Equal((0.32055e6 / (48.4 / area)) - 1, byForce["override"], 1e-4);
    }

    [Fact]
    public void ReliefSetting_AnswersInShimAndTurns()
    {
        var answer = Ask("relief-setting", [("setting", 3e5), ("spring", 2200), ("seat", 0.014), ("lapped", 1e-4), ("wanted", 4e5), ("pitch", 1e-3)]);
        var area = Math.PI * 49e-6;
        Assert.Equal(3e5 - (2200 * 1e-4 / area), answer["setting"], 1e-6);
        Assert.Equal((4e5 - answer["setting"]) * area / 2200, answer["shim-for-wanted"], 1e-12);
        Assert.Equal(answer["shim-for-wanted"] / 1e-3, answer["turns-for-wanted"], 1e-9);
    }

    [Fact]
    public void SeatLeak_GoesWithPressureOverViscosity()
    {
        var answer = Ask("seat-leak", [("flow", 5e-7), ("pressure", 2e5), ("viscosity", 0.08), ("seat", 0.014), ("hot-viscosity", 0.01), ("hot-pressure", 1e5)]);
        Assert.Equal(5e-7 * 8 / 2, answer["hot-flow"], 1e-12);
        Assert.Equal(2e5, 12 * 0.08 * 1e-3 * 5e-7 / (Math.PI * 0.014 * Math.Pow(answer["gap"], 3)), 1e-6);
    }

    [Fact]
    public void ReliefStages_SayThatTheLowStageStarves()
    {
        (string, double)[] body = [("main-taken", 2e-4), ("low-taken", 5e-5), ("main-seat", 0.014), ("main-cracking", 60 * Psi), ("main-spring", 3200), ("low-seat", 0.014), ("low-cracking", 4 * Psi), ("low-spring", 200)];
        Assert.Contains("gets nothing", Said("relief-stages", [.. body, ("delivery", 1.5e-4)]), StringComparison.Ordinal);
        var running = Ask("relief-stages", [.. body, ("delivery", 6e-4)]);
        Assert.InRange(running["low"] / Psi, 4, 6);
        Assert.Equal(6e-4, running["main-share"] + running["low-share"] + running["spilled"], 1e-12);
    }

    private static Dictionary<string, double> Ask(string sum, (string, double)[] given) => Answered(sum, given).Values.ToDictionary(value => value.Key, value => value.Value);

    private static string Said(string sum, (string, double)[] given) => Answered(sum, given).Answer;

    private static SumResult Answered(string sum, (string, double)[] given)
    {
        var outcome = AllSums.Find(sum, out _)!.Run(Sums.EverySumTests.Request("m", given));
        return outcome is SumOutcome.Answered(var result) ? result : throw new Xunit.Sdk.XunitException(string.Join("; ", ((SumOutcome.Refused)outcome).Problems));
    }
}
