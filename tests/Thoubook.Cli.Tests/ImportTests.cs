using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

public sealed class ImportTests : IDisposable
{
    private static readonly string[] OfEachRow = ["row", "kind", "name", "new", "worn", "unit", "ask", "wearAmount", "desired", "rule", "continuationOf"];

    private const string Schedule = """
        Item,New (in),Worn limit (in)
        Pump body depth,1.2530-1.2540,1.2560
        Pump driver width,1.2505-1.2515,1.2490
        Driver end float,0.0015-0.0035,0.005
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-import-").FullName;

    public static TheoryData<string> Schedules => [.. Directory.EnumerateFiles(Path.Combine(Reference(), "schedules"), "s*.csv").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [MemberData(nameof(Schedules))]
    public void DryRun_EveryLine_HasARowOfTheShapeOfTheContract(string file)
    {
        var path = Path.Combine(Reference(), "schedules", file);
        var spoken = Spoken.RunIn(Nowhere, null, "import", path, "--dry-run", "--json");
        var rows = spoken.Json.GetProperty("rows").EnumerateArray().ToArray();
        Assert.Equal(Enumerable.Range(1, File.ReadAllLines(path).Length), rows.Select(r => r.GetProperty("row").GetInt32()));
        foreach (var row in rows)
        {
            Assert.Subset(row.EnumerateObject().Select(p => p.Name).ToHashSet(), OfEachRow.ToHashSet());
            foreach (var limit in (string[])["new", "worn"])
                Assert.Equal(["min", "max"], row.GetProperty(limit).EnumerateObject().Select(p => p.Name));
            if (row.GetProperty("ask") is { ValueKind: JsonValueKind.Object } ask)
            {
                Assert.Subset(ask.EnumerateObject().Select(p => p.Name).ToHashSet(), new HashSet<string> { "code", "why", "meanings" });
                Assert.Equal(ask.GetProperty("meanings").GetArrayLength(), ask.GetProperty("codes").GetArrayLength());
                Assert.Equal(ask.GetProperty("code").GetString(), ask.GetProperty("codes")[0].GetString());
            }
        }

        spoken.Is(rows.Any(r => r.GetProperty("ask").ValueKind != JsonValueKind.Null) ? ExitStatus.BadInput : ExitStatus.Good);
        Assert.False(Path.Exists(Nowhere));
    }

    [Fact]
    public void DryRun_AllUnderstood_IsGood()
    {
        var rows = Says("import", Write("schedule.csv", Schedule), "--dry-run", "--json").Is(ExitStatus.Good).Json.GetProperty("rows").EnumerateArray().ToArray();
        Assert.Equal(["heading", "dimension", "dimension", "end float"], rows.Select(r => r.GetProperty("kind").GetString()));
        Assert.Equal(1.2530 * 0.0254, rows[1].GetProperty("new").GetProperty("min").GetDouble(), 1e-12);
        Assert.Equal(1.2560 * 0.0254, rows[1].GetProperty("worn").GetProperty("max").GetDouble(), 1e-12);
        Assert.Equal(1.2490 * 0.0254, rows[2].GetProperty("worn").GetProperty("min").GetDouble(), 1e-12);
        Assert.Equal("m", rows[3].GetProperty("unit").GetString());
    }

    [Fact]
    public void WholeFileQuestion_StandsOnEveryRowAndIsAnsweredOnce()
    {
        var file = Write("schedule.csv", Schedule.Replace(" (in)", "", StringComparison.Ordinal));
        var asked = Says("import", file, "--dry-run", "--json").Is(ExitStatus.BadInput).Json.GetProperty("rows").EnumerateArray().Skip(1).ToArray();
        Assert.All(asked, r => Assert.Equal("unit-in", r.GetProperty("ask").GetProperty("code").GetString()));
        Assert.All(asked, r => Assert.Equal(JsonValueKind.Null, r.GetProperty("new").GetProperty("min").ValueKind));
        foreach (var answer in (string[][])[["--unit", "in"], ["--confirm", "unit-in"]])
        {
            var rows = Says(["import", file, "--dry-run", "--json", .. answer]).Is(ExitStatus.Good).Json.GetProperty("rows").EnumerateArray().ToArray();
            Assert.Equal(1.2530 * 0.0254, rows[1].GetProperty("new").GetProperty("min").GetDouble(), 1e-12);
        }

        Says("import", file, "--dry-run", "--unit", "cm").Is(ExitStatus.BadInput);
        Says("import", file, "--dry-run", "--decimal", "dot").Is(ExitStatus.BadInput);
    }

    [Fact]
    public void Schedule_IntoAnEngine_IsAllOrNothingAndIdempotent()
    {
        using var bench = new Bench();
        var file = Write("overhaul book.csv", Schedule);
        bench.Says("import", file, "--by", "owner").Is(ExitStatus.BadInput);
        var undecided = Write("undecided.csv", Schedule.Replace("1.2505-1.2515", "125.05-1.2515", StringComparison.Ordinal));
        bench.Says("import", undecided, "--engine", Bench.Engine).Is(ExitStatus.BadInput);
        var before = bench.Says("appraise", Bench.Engine, "--json").Json.GetProperty("dimensions").GetArrayLength();
        var first = bench.Says("import", file, "--engine", Bench.Engine, "--by", "owner", "--json").Is(ExitStatus.Good).Json;
        Assert.True(first.GetProperty("added").GetInt32() > 0, $"{first}");
        var after = bench.Says("appraise", Bench.Engine, "--json").Json.GetProperty("dimensions").GetArrayLength();
        Assert.Equal(before + 2, after);
        var again = bench.Says("import", file, "--engine", Bench.Engine, "--by", "owner", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal(0, again.GetProperty("added").GetInt32() + again.GetProperty("changed").GetInt32());
        Assert.Contains("overhaul-book", bench.Says("export", Bench.Engine).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Mapping_IsKeptAndUsedAgain()
    {
        var file = Write("schedule.csv", Schedule);
        var mapping = Path.Combine(_folder, "mapping.txt");
        var found = Says("import", file, "--dry-run", "--json", "--keep-mapping", mapping).Is(ExitStatus.Good).Out;
        Assert.Equal(found, Says("import", file, "--dry-run", "--json", "--mapping", mapping).Is(ExitStatus.Good).Out);
        Says("import", file, "--dry-run", "--keep-mapping", mapping).Is(ExitStatus.BadInput);
        File.WriteAllText(mapping, "1: descripshun");
        Says("import", file, "--dry-run", "--mapping", mapping).Is(ExitStatus.BadInput);
    }

    [Fact]
    public void EngineFile_ExportedAndImported_GivesTheSameFile()
    {
        using var bench = new Bench();
        bench.Says("reading", "add", Bench.Engine, Bench.Depth, "1.2535", "--place", "A1", "--by", "owner").Is(ExitStatus.Good);
        var text = bench.Says("export", Bench.Engine).Out;
        var file = Write("engine.yaml", text);
        var other = Path.Combine(_folder, "other");
        Spoken.Here(other, "import", file, "--dry-run").Is(ExitStatus.Good);
        Assert.False(Path.Exists(other));
        Spoken.Here(other, "import", file, "--by", "owner").Is(ExitStatus.Good);
        Assert.Equal(text, Spoken.Here(other, "export", Bench.Engine).Out);
        var again = Spoken.Here(other, "import", file, "--by", "owner", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal(0, again.GetProperty("added").GetInt32() + again.GetProperty("changed").GetInt32());
    }

    [Fact]
    public void ReadingsTable_IntoAnEngine()
    {
        using var bench = new Bench();
        var file = Write("readings.csv", "of,place,value [in],gauge,by\npump/body.depth,A1,1.2535,M-1,bench\npump/body.depth,A2,1.2536,M-1,bench\n");
        bench.Says("import", file).Is(ExitStatus.BadInput);
        bench.Says("import", file, "--engine", Bench.Engine).Is(ExitStatus.Good);
        Assert.Equal(2, bench.Says("reading", "list", Bench.Engine, Bench.Depth, "--json").Json.GetArrayLength());
    }

    public static TheoryData<string, string> Hostile => new()
    {
        { "binary.yaml", "engine:\0\0\0" },
        { "deep.yaml", "engine: { name: A, purpose: display }\nparts: " + new string('[', 500) },
        { "aliases.yaml", "engine: { name: A, purpose: display }\na: &a [x, x]\nb: &b [*a, *a]\nparts: *b\n" },
        { "unknown.yaml", "engine: { name: A, purpose: display }\npartss: {}\n" },
        { "cut.yaml", "engine: { name: A, purpose: display\n" },
        { "two-points.yaml", "engine: { name: A, purpose: display }\nparts: { a: {} }\ndimensions: { a.b: { new: [1.2.3 in, 1.3 in] } }\n" },
        { "wrong-unit.yaml", "engine: { name: A, purpose: display }\nparts: { a: {} }\ndimensions: { a.b: { new: [1 psi, 2 psi] } }\n" },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public void HostileFile_IsRefusedWithItsPlaceAndNothingIsWritten(string name, string content)
    {
        var workshop = Path.Combine(_folder, "w");
        var spoken = Spoken.Here(workshop, "import", Write(name, content), "--engine", "A").Is(ExitStatus.BadInput);
        Assert.Matches(@"^thoubook: " + name.Replace(".", @"\.", StringComparison.Ordinal) + @"\(\d+,\d+\): ", spoken.Error);
        Assert.DoesNotContain("\"A\"", Path.Exists(workshop) ? Spoken.Here(workshop, "engines", "--json").Out : "", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("@SUM(A1)")]
    [InlineData("1.2.3")]
    [InlineData("1253.5")]
    public void ReadingsTable_BadCell_IsRefusedWithItsPlaceAndNothingIsWritten(string cell)
    {
        using var bench = new Bench();
        var file = Write("readings.csv", $"of,place,value [in]\n{Bench.Depth},A1,1.2535\n{Bench.Depth},A2,{cell}\n");
        var spoken = bench.Says("import", file, "--engine", Bench.Engine).Is(ExitStatus.BadInput);
        Assert.StartsWith("thoubook: readings.csv(3,", spoken.Error, StringComparison.Ordinal);
        Assert.Empty(bench.Says("reading", "list", Bench.Engine, Bench.Depth, "--json").Json.EnumerateArray());
    }

    [Fact]
    public void FileOf200Megabytes_IsRefusedUnread()
    {
        var path = Path.Combine(_folder, "large.yaml");
        using (var stream = File.Create(path))
            stream.SetLength(200_000_000);
        Assert.Contains("at most ", Says("import", path).Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void OneBadFileOfTwo_NothingIsWritten()
    {
        using var bench = new Bench();
        var good = Write("engine.yaml", "engine: { name: Second, purpose: display }\nparts: { a: {} }\ndimensions: { a.b: { new: [1 in, 2 in] } }\n");
        var bad = Write("readings.csv", "of,place,value\na.c,A1,1 in\n");
        bench.Says("import", good, bad).Is(ExitStatus.BadInput);
        Assert.Single(bench.Says("engines", "--json").Json.EnumerateArray());
    }

    [Fact]
    public void MissingFile_IsSaid() => Assert.Contains("nothere.yaml", Says("import", "nothere.yaml").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);

    [Fact]
    public void DryRun_InWords_AsApproved()
    {
        var file = Write("schedule.csv", Schedule.Replace("1.2505-1.2515", "125.05-1.2515", StringComparison.Ordinal));
        var spoken = Spoken.Here("", Nowhere, ["import", file, "--dry-run"], width: 100).Is(ExitStatus.BadInput);
        Approved.Check("import-dry-run", spoken.Out + "--- standard error\n" + spoken.Error);
    }

    private string Nowhere => Path.Combine(_folder, "nowhere");

    private Spoken Says(params string[] words) => Spoken.Here(Nowhere, words);

    private string Write(string name, string content)
    {
        var path = Path.Combine(_folder, name);
        File.WriteAllText(path, content, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        return path;
    }

    private static string Reference([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "..", "reference");
}
