using BenchmarkDotNet.Running;
using Thoubook.Benchmarks;

switch (args)
{
    case ["circuits", .. var rest]:
        return CircuitBenchmark.Run(rest);
    case ["random-circuits", .. var rest]:
        return RandomCircuits.Run(rest);
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        return 0;
}
