using Thoubook.Mechanics.Metrology;

namespace Thoubook.Mechanics.Tests.Metrology;

/// <summary>Tolerances are four standard errors of this sample (deviation/√n for a mean, deviation/√(2n) widened for tails by the density there) beside those the reference states for itself.</summary>
public sealed class MonteCarloTests
{
    private const int Draws = 400_000;

    [Fact]
    public void AdditiveModel_AgreesWithTheSupplement()
    {
        var example = new WorkedExample("U5");
        Check("four normal N(0,1)", [.. Enumerable.Repeat(Draw.Normal(0, 1), 4)]);
        Check("four rectangular (0,1)", [.. Enumerable.Repeat(Draw.Rectangular(0, Math.Sqrt(3)), 4)]);
        Check("three rectangular (0,1) and one rectangular (0,10)", [.. Enumerable.Repeat(Draw.Rectangular(0, Math.Sqrt(3)), 3), Draw.Rectangular(0, 10 * Math.Sqrt(3))]);

        void Check(string what, Draw[] inputs)
        {
            var sample = MonteCarlo.Propagate(inputs, Sum, Draws, 7);
            var s = sample.StandardDeviation;
            example.Check($"{what}: u(y)", s, 0, (4 * s / Math.Sqrt(2 * Draws)) + 0.002);
            example.Check($"{what}: 95 % interval low", sample.Quantile(0.025), 0, (11 * s / Math.Sqrt(Draws)) + 0.003);
            example.Check($"{what}: 95 % interval high", sample.Quantile(0.975), 0, (11 * s / Math.Sqrt(Draws)) + 0.003);
        }
    }

    [Fact]
    public void MassCalibration_AgreesWithTheSupplement()
    {
        var example = new WorkedExample("U6");
        var sample = MonteCarlo.Propagate(
            [Draw.Normal(100000, 0.05), Draw.Normal(1.234, 0.02), Draw.Rectangular(1.2, 0.1), Draw.Rectangular(8000, 1000), Draw.Rectangular(8000, 50)],
            x => ((x[0] + x[1]) * (1 + ((x[2] - 1.2) * ((1 / x[3]) - (1 / x[4]))))) - 100000,
            Draws,
            11);
        example.Check("MCM estimate", sample.Mean, 0, (4 * 0.0754 / Math.Sqrt(Draws)) + 1e-4);
        example.Check("MCM standard uncertainty", sample.StandardDeviation, 0, (4 * 0.0754 / Math.Sqrt(Draws)) + 1e-4);
        var shortest = sample.Shortest(0.95);

        // A shortest interval is flat at its optimum, so its ends wander more than its width.
        example.Check("MCM shortest 95 % low", shortest.Least, 0, 0.006);
        example.Check("MCM shortest 95 % high", shortest.Greatest, 0, 0.006);
        example.Check("GUM first order u", Uncertainty.Combined([0.05, 0.02]));
        example.Check("GUM first order 95 % high", 1.234 + Uncertainty.Expanded(Uncertainty.Combined([0.05, 0.02]), 0.95, double.PositiveInfinity));
    }

    [Fact]
    public void GaugeBlock_AgreesWithTheSupplement()
    {
        const int Fewer = 100_000;
        var example = new WorkedExample("U7");
        var sample = MonteCarlo.Propagate(
            [Draw.Student(50000623, 25, 18), Draw.Student(215, 6, 24), Draw.Student(0, 4, 5), Draw.Student(0, 7, 8), Draw.Rectangular(11.5e-6, 2e-6), Draw.Normal(-0.1, 0.2), Draw.Arcsine(0, 0.5), Draw.Trapezoid(0, 1e-6, 0.1e-6), Draw.Trapezoid(0, 0.05, 0.025)],
            x => x[0] + x[1] + x[2] + x[3] - (x[0] * ((x[7] * (x[5] + x[6])) + (x[4] * x[8]))) - 50e6,
            Fewer,
            3);
        example.Check("estimate", sample.Mean, 0, 4 * 36 / Math.Sqrt(Fewer));
        example.Check("MCM standard uncertainty", sample.StandardDeviation, 0, 4 * 36 / Math.Sqrt(Fewer));
        example.Check("MCM 99 % low", sample.Quantile(0.005), 0, 20 * 36 / Math.Sqrt(Fewer));
        example.Check("MCM 99 % high", sample.Quantile(0.995), 0, 20 * 36 / Math.Sqrt(Fewer));
    }

    [Fact]
    public void OneWayClutch_AgreesWithAnIndependentSample()
    {
        const string Source = "one-way clutch angle acos((a + c)/(e − c)), independent Monte Carlo of 4 million draws and exact corners";
        foreach (var (tolerance, normalMean, normalDeviation, uniformMean, uniformDeviation) in new[] { (0.0125, 7.01754, 0.10564, 7.01594, 0.18314), (0.05, 7.01215, 0.29141, 7.00002, 0.50706) })
        {
            var normal = MonteCarlo.Propagate([Draw.Normal(27.645, tolerance / 3), Draw.Normal(11.43, 0.01 / 3), Draw.Normal(50.8, tolerance / 3)], Angle, Draws, 5);
            var uniform = MonteCarlo.Propagate([Draw.Rectangular(27.645, tolerance), Draw.Rectangular(11.43, 0.01), Draw.Rectangular(50.8, tolerance)], Angle, Draws, 6);
            Check($"clutch ±{tolerance}, normal, mean", normalMean, normal.Mean, normalDeviation);
            Check($"clutch ±{tolerance}, normal, deviation", normalDeviation, normal.StandardDeviation, normalDeviation);
            Check($"clutch ±{tolerance}, uniform, mean", uniformMean, uniform.Mean, uniformDeviation);
            Check($"clutch ±{tolerance}, uniform, deviation", uniformDeviation, uniform.StandardDeviation, uniformDeviation);
        }

        void Check(string what, double expected, double got, double deviation) =>
            Outside.Check(what, expected, got, (4 * deviation / Math.Sqrt(Draws)) + (4 * deviation / 2000), Source, "computed");

        static double Angle(ReadOnlySpan<double> x) => Math.Acos((x[0] + x[1]) / (x[2] - x[1])) * 180 / Math.PI;
    }

    [Fact]
    public void Propagate_SameSeed_SameSample_WhateverTheThreads()
    {
        Draw[] inputs = [Draw.Normal(0, 1), Draw.Triangular(2, 1)];
        var first = MonteCarlo.Propagate(inputs, Sum, 20_000, 42);
        var again = MonteCarlo.Propagate(inputs, Sum, 20_000, 42);
        var alone = default(Sample)!;
        var thread = new Thread(() => alone = Task.Factory.StartNew(() => MonteCarlo.Propagate(inputs, Sum, 20_000, 42), CancellationToken.None, TaskCreationOptions.None, new OneAtATime()).GetAwaiter().GetResult());
        thread.Start();
        thread.Join();
        var other = MonteCarlo.Propagate(inputs, Sum, 20_000, 43);
        foreach (var p in new[] { 0.001, 0.1, 0.5, 0.9, 0.999 })
        {
            Assert.Equal(first.Quantile(p), again.Quantile(p));
            Assert.Equal(first.Quantile(p), alone.Quantile(p));
            Assert.NotEqual(first.Quantile(p), other.Quantile(p));
        }

        Assert.Equal(first.Mean, alone.Mean);
    }

    [Theory]
    [InlineData("normal", 1.0)]
    [InlineData("rectangular", 0.577350269189626)]
    [InlineData("triangular", 0.408248290463863)]
    [InlineData("arcsine", 0.707106781186548)]
    [InlineData("student", 1.290994448735806)]
    [InlineData("trapezoid", 0.588784057755188)]
    public void Draw_HasTheDeviationOfItsShape(string shape, double expected)
    {
        // Student with ν = 5: √(ν/(ν − 2)). Half width a = 1 in doubt by d = 0.3464: √(a²/3 + d²/9).
        var draw = shape switch
        {
            "normal" => Draw.Normal(3, 1),
            "rectangular" => Draw.Rectangular(3, 1),
            "triangular" => Draw.Triangular(3, 1),
            "arcsine" => Draw.Arcsine(3, 1),
            "student" => Draw.Student(3, 1, 5),
            _ => Draw.Trapezoid(3, 1, 0.346410161513775),
        };
        var sample = MonteCarlo.Propagate([draw], x => x[0], 200_000, 9);
        Assert.Equal(3, sample.Mean, 4 * expected / Math.Sqrt(200_000));
        Assert.Equal(expected, sample.StandardDeviation, 0.012 * expected);
    }

    [Fact]
    public void Sample_CountsAndQuantilesFit()
    {
        var sample = MonteCarlo.Propagate([Draw.Rectangular(0.5, 0.5)], x => x[0], 10_001, 1);
        Assert.Equal(10_001, sample.Count);
        var middle = sample.Quantile(0.5);
        Assert.Equal(5_001.0 / 10_001, sample.ShareWithin(Interval.AtMost(middle)), 1e-12);
        Assert.Equal(5_001.0 / 10_001, sample.ShareWithin(Interval.AtLeast(middle)), 1e-12);
        Assert.Equal(1, sample.ShareWithin(Interval.Unlimited));
        Assert.Equal(0, sample.ShareWithin(Interval.Between(2, 3)));
        Assert.InRange(sample.Shortest(0.5).Width, 0.45, 0.5);
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Propagate([Draw.Normal(0, 1)], _ => double.NaN, 10, 1));
    }

    private static double Sum(ReadOnlySpan<double> x)
    {
        var sum = 0.0;
        foreach (var one in x)
            sum += one;
        return sum;
    }

    /// <summary>Runs every task on the thread that waits for it.</summary>
    private sealed class OneAtATime : TaskScheduler
    {
        public override int MaximumConcurrencyLevel => 1;

        protected override IEnumerable<Task>? GetScheduledTasks() => null;

        protected override void QueueTask(Task task) => TryExecuteTask(task);

        protected override bool TryExecuteTaskInline(Task task, bool taskWasPreviouslyQueued) => TryExecuteTask(task);
    }
}
