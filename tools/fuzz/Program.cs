// Throws random texts at the reader of quantities for as long as wished and prints what it can't stand.
// dotnet run -c Release --project tools/fuzz [SECONDS [SEED]]     60 seconds and a seed of the clock unless given; exit status 1 when a fault was found
using System.Diagnostics;
using System.Globalization;
using Thoubook.Record.Tests.Quantities;

var seconds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 60;
var seed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : Environment.TickCount;
var random = new Random(seed);
var contexts = QuantityCorpus.Contexts.ToArray();
var started = Stopwatch.GetTimestamp();
long texts = 0, faults = 0;
while (Stopwatch.GetElapsedTime(started).TotalSeconds < seconds)
{
    var text = QuantityFuzz.Mutate(QuantityCorpus.Strings, random);
    var (name, context) = contexts[random.Next(contexts.Length)];
    texts++;
    string? fault;
    try
    {
        fault = QuantityFuzz.Fault(text, context) ?? QuantityFuzz.FaultOfAnswers(text, context);
    }
#pragma warning disable CA1031 // whatever is thrown is the fault that is looked for
    catch (Exception thrown)
#pragma warning restore CA1031
    {
        fault = thrown.ToString();
    }

    if (fault is null)
        continue;
    faults++;
    Console.WriteLine($"in {name}: \"{string.Concat(text.Select(c => c is >= ' ' and < '\u007f' and not '\\' ? c.ToString() : $"\\u{(int)c:X4}"))}\": {fault}");
}

Console.WriteLine($"{texts} texts, {faults} faults, seed {seed}.");
return faults == 0 ? 0 : 1;
