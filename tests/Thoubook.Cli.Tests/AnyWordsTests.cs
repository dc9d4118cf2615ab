using CsCheck;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

/// <summary>Whatever is typed, the command answers in words: never with a fault of its own.</summary>
public sealed class AnyWordsTests
{
    private static readonly string[] Known =
    [
        "engines", "export", "appraise", "read", "reading", "add", "strike", "list", "piece", "choose", "place", "lift", "sum", "verify", "conformance", "stack", "oil", "show", "log", "accept",
        "--suppose", "--change", "pump.end-float=2", "--speed", "450", "--oil-temp", "80°C", "--blank", "--oil", "SAE 40", "--caught",
        "--json", "--engine", "--for", "--confirm", "unit-in", "--part", "pump", "--state", "hot", "--by", "owner", "--piece", "--temp", "-5 °C", "--at", "--id", "--", "-", "-o", "-h", "--help",
        "value=1in", "u=1thou", "min=", "=", Bench.Engine, Bench.Depth, Bench.EndFloat, "1.2535", "-0.5thou", "pump/body", "",
    ];

    private static readonly string[][] Verbs = [[], .. Command.Verbs.Select(v => v.Name).Where(v => v is not ("demo" or "serve" or "import")).Select(v => v.Split(' '))];

    // Three words of four are known ones, so that many lines get past the reader of command lines.
    private static readonly Gen<string[]> Lines = Gen.Select(
        Gen.Int[0, Verbs.Length - 1],
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, Known.Length - 1], Gen.String[0, 12]).Select((which, at, any) => which > 0 ? Known[at] : any).Array[0, 6],
        (verb, words) => (string[])[.. Verbs[verb], .. words]);

    [Fact]
    public void AnyWords_AreAnsweredOrRefused()
    {
        using var bench = new Bench();
        Lines.Where(words => !words.Contains("-o")).Sample(
            words =>
            {
                var spoken = Spoken.Here(bench.Folder, words);
                return spoken.Status is >= 0 and <= 2 && (spoken.Status != 2 || spoken.Error.Length > 0);
            },
            iter: 2000,
            threads: 1,
            print: words => string.Join(" | ", words));
    }

    [Fact]
    public void Sum_OpensNoWorkshop()
    {
        using var bench = new Bench();
        File.WriteAllText(Path.Combine(bench.Folder, "workshop.db"), "not a database");
        Spoken.RunIn(bench.Folder, null, "sum", "stack", "nominal=1mm", "--json").Is(ExitStatus.Good);
        Spoken.RunIn(bench.Folder, null, "read", "1 mm").Is(ExitStatus.Good);
        Spoken.RunIn(bench.Folder, null, "engines").Is(ExitStatus.BadInput);
    }
}
