using CsCheck;
using Thoubook.Mechanics.Valves;

namespace Thoubook.Mechanics.Tests.Valves;

public sealed class ValveStagesTests
{
    private const double Psi = 6894.757293168;
    private static readonly SpringValve Main = Cracks(60 * Psi);
    private static readonly SpringValve Low = Cracks(4 * Psi);
    private static readonly Reducer Reduces = new(6e-3, 5 * Psi, 800, 12e-3, 1.5e-3, 0.65);

    private static SpringValve Cracks(double pressure)
    {
        var disc = Closure.Disc(14e-3);
        return new(disc, pressure * disc.LiftingArea, pressure * disc.LiftingArea / 20e-3, 3.5e-3, 0.65);
    }

    private static StageDemand Demand(double delivery) => new(delivery, 2e-4 / (60 * Psi), 5e-5 / (4 * Psi), 0.015, 870);

    [Fact]
    public void Cascade_StarvesTheLowStageWithTheMainValveShut()
    {
        var idle = ValveStages.Cascade(Demand(1.5e-4), Main, Low);
        Assert.Equal(45 * Psi, idle.Main, 1e-6);
        Assert.Equal(0, idle.Low);
        Assert.Equal(0, idle.ToLow);
        Assert.Equal(0, ValveStages.Cascade(Demand(1.5e-4) with { LowTaken = 0 }, Main, Low).Low);
        var running = ValveStages.Cascade(Demand(6e-4), Main, Low);
        Assert.InRange(running.Low / Psi, 4, 6);
        // The low pressure stands behind the main valve and adds to its setting.
        Assert.True(running.Main > 60 * Psi + running.Low);
        Assert.Equal(6e-4, (running.Main * 2e-4 / (60 * Psi)) + running.ToLow, 1e-14);
        Assert.Equal(running.ToLow, (running.Low * 5e-5 / (4 * Psi)) + running.Spilled, 1e-14);
    }

    [Fact]
    public void Reducing_FeedsTheLowStageEvenAtIdle_AndHoldsItAtSpeed()
    {
        var idle = ValveStages.Reducing(Demand(1.5e-4), Main, Reduces);
        Assert.InRange(idle.Low / Psi, 2, 5);
        Assert.Equal(0, idle.Spilled);
        var running = ValveStages.Reducing(Demand(6e-4), Main, Reduces);
        Assert.InRange(running.Low, idle.Low, 5 * Psi);
        Assert.Equal(6e-4, (running.Main * 2e-4 / (60 * Psi)) + running.ToLow + running.Spilled, 1e-14);
        Assert.Equal(running.ToLow, running.Low * 5e-5 / (4 * Psi), 1e-14);
        Assert.True(running.ToLow > 0 && running.Spilled > 0);
    }

    [Fact]
    public void JetAndRelief_ServesTheLowStageInStepWithMainPressure()
    {
        var idle = ValveStages.JetAndRelief(Demand(1.5e-4), Main, 2.5e-3, 0.62, Low);
        var running = ValveStages.JetAndRelief(Demand(6e-4), Main, 2.5e-3, 0.62, Low);
        Assert.True(idle.Low > 0 && idle.Low < running.Low);
        var jet = 0.62 * Math.PI / 4 * 2.5e-3 * 2.5e-3 * Math.Sqrt(2 * (running.Main - running.Low) / 870);
        Assert.Equal(jet, running.ToLow, 1e-12);
        var lowSpill = running.ToLow - (running.Low * 5e-5 / (4 * Psi));
        var mainSpill = 6e-4 - (running.Main * 2e-4 / (60 * Psi)) - running.ToLow;
        Assert.True(lowSpill > 0 && mainSpill > 0);
        Assert.Equal(lowSpill + mainSpill, running.Spilled, 1e-13);
    }

    [Fact]
    [CommonPractice("main circuit about 60 psi; feeds to gears and rolling bearings about 4 psi")]
    public void TwoStageBody_HoldsItsTwoPressures()
    {
        var running = ValveStages.Cascade(Demand(4e-4), Main, Low);
        Outside.Check("main pressure of a body set to 60 psi above a low stage of 4, psi", 60 + 4, running.Main / Psi, 4);
        Outside.Check("low pressure of that body, psi", 4, running.Low / Psi, 1);
    }

    [Fact]
    public void MoreDelivery_NeverLowersAPressure_AndEveryDropIsAccountedFor()
    {
        Gen.Select(Gen.Double[0, 2e-3], Gen.Double[0, 2e-3]).Sample((a, b) =>
        {
            var (less, more) = (Math.Min(a, b), Math.Max(a, b));
            foreach (var body in (Func<StageDemand, StagePressures>[])[d => ValveStages.Cascade(d, Main, Low), d => ValveStages.Reducing(d, Main, Reduces), d => ValveStages.JetAndRelief(d, Main, 2e-3, 0.62, Low)])
            {
                var (first, second) = (body(Demand(less)), body(Demand(more)));
                Assert.True(first.Main <= second.Main + 1e-6);
                Assert.True(first.Low <= second.Low + 1e-6);
                Assert.Equal(more, (second.Main * 2e-4 / (60 * Psi)) + (second.Low * 5e-5 / (4 * Psi)) + second.Spilled, 1e-12);
            }
        });
    }

    [Fact]
    public void Reducer_ShutsAtItsSetting_AndOpensToItsStop()
    {
        Assert.Equal(0, Reduces.Opening(5 * Psi));
        Assert.Equal(0, Reduces.Opening(9 * Psi));
        Assert.Equal(1.5e-3, Reduces.Opening(0));
        Assert.Equal(Psi * Math.PI * 36e-6 / 800, (Reduces with { Lift = 1 }).Opening(4 * Psi), 1e-12);
        Assert.Equal(0, Reduces.Flow(60 * Psi, 6 * Psi, 870));
        // Wide open it is the bore, a quarter of whose diameter of lift is enough.
        var wide = Reduces with { Lift = 10e-3, Setting = 50 * Psi };
        Assert.Equal(0.65 * Math.PI * 9e-6 * Math.Sqrt(2 * 59 * Psi / 870), wide.Flow(60 * Psi, Psi, 870), 1e-12);
        Assert.Equal(-wide.Flow(2 * Psi, Psi, 870), (wide with { Setting = 51 * Psi }).Flow(Psi, 2 * Psi, 870), 1e-12);
    }

    [Fact]
    public void NothingThatTakesTheDelivery_IsRefused()
    {
        var stuck = Main with { Preload = double.MaxValue };
        Assert.Throws<ArgumentOutOfRangeException>(() => ValveStages.Cascade(Demand(1e-4) with { MainTaken = 0 }, stuck, Low));
        Assert.Throws<ArgumentOutOfRangeException>(() => ValveStages.Cascade(Demand(-1), Main, Low));
        Assert.Throws<ArgumentOutOfRangeException>(() => ValveStages.JetAndRelief(Demand(1e-4), Main, 0, 0.62, Low));
    }
}
