using BenchmarkDotNet.Attributes;
using Thoubook.Mechanics.Fits;
using Thoubook.Mechanics.Metrology;
using Thoubook.Mechanics.Sums;

namespace Thoubook.Benchmarks;

/// <summary>The sums that an appraisal calls thousands of times, and what telling the working costs beside the silent run.</summary>
[MemoryDiagnoser]
public class MechanicsBenchmarks
{
    private static readonly double[] Values = [2.10, 2.20, 1.90, 2.05, 2.00, 2.15, 2.30, 1.95, 2.02, 2.11, 2.08, 1.99];
    private static readonly double[] Own = [.. Enumerable.Repeat(0.1, 12)];
    private static readonly double[] Shared = [.. Enumerable.Repeat(0.1, 12)];
    private static readonly Interval Limits = Interval.Between(1.8, 2.4);
    private static readonly StackTerm[] Terms = [new(1, 31.8e-3, 1e-5), new(-1, 31.75e-3, 1e-5, Spread.Normal), new(1, 2e-5, 1e-6, Spread.Triangular)];

    [Benchmark]
    public double JointConformanceOfTwelvePlaces() => Conformance.AllWithin(Values, Own, Shared, Limits).Within;

    [Benchmark]
    public double ConformanceOfOneValue() => Conformance.Within(2.3, 0.1, Limits).Within;

    [Benchmark]
    public double ConformanceWithFewReadings() => Conformance.Within(2.3, 0.1, 4.5, Limits).Within;

    [Benchmark]
    public double NormalBelow() => Normal.Below(1.3);

    [Benchmark]
    public double WhatWouldSettleIt() => Settling.Advise(2.37, 0.05, 0.1, 2, [Limits]).Probability;

    [Benchmark(Baseline = true)]
    public double StackSilent() => Stack.Of(Terms).Nominal;

    [Benchmark]
    public double StackWithItsWorking() => Stack.Of(Terms, new WorkingWriter("m").Trace).Nominal;

    [Benchmark]
    public double StackOf100000Draws() => Stack.Draw(Terms, 100_000, 1).StandardDeviation;
}
