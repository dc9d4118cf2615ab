using System.Diagnostics;
using System.Text;
using CsCheck;
using Thoubook.Files.EngineFiles;
using Thoubook.Files.Text;
using Thoubook.Record;

namespace Thoubook.Files.Tests.EngineFiles;

public sealed class HostileFileTests
{
    private const string Head = "engine: { name: Sandpiper six, purpose: stand-run }\n";

    private static readonly string Example = TestFiles.Block("docs/engine-file.md", "yaml");

    [Fact]
    public void AFileOfTwoHundredMegabytes_IsRefusedBeforeItIsRead()
    {
        var path = Path.GetTempFileName();
        try
        {
            using (var file = File.OpenWrite(path))
                file.SetLength(200L * 1024 * 1024);
            var before = GC.GetAllocatedBytesForCurrentThread();
            Assert.Equal("file-too-large", Refused(TextFile.ReadPath(path)).Code);
            Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 1024 * 1024);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void AStreamWithoutEnd_IsRefusedAtTheLargestSize() => Assert.Equal("file-too-large", Refused(TextFile.Read(new Endless(), "endless.yaml")).Code);

    [Fact]
    public void AFolderAndAMissingFile_AreRefused()
    {
        Assert.Equal("file-folder", Refused(TextFile.ReadPath(Path.GetTempPath())).Code);
        Assert.Equal("file-missing", Refused(TextFile.ReadPath("/no/such/file.yaml")).Code);
    }

    [Fact]
    public void Bytes_AreReadAsTextOrRefusedWithTheirPlace()
    {
        Assert.Equal("ab°", Text([0xEF, 0xBB, 0xBF, .. "ab°"u8]));
        Assert.Equal("ab°", Text([0xFF, 0xFE, .. Encoding.Unicode.GetBytes("ab°")]));
        Assert.Equal("a\r\nb", Text([.. "a\r\nb"u8]));
        Assert.Equal(("not-text", 2, 3), Place([.. "engine:\nab"u8, 0]));
        Assert.Equal(("not-text", 1, 2), Place([.. "a\u0007"u8]));
        Assert.Equal(("not-utf8", 2, 2), Place([.. "a\nb"u8, 0xB0, .. "C"u8]));
        Assert.Equal(("not-text", 1, 1), Place([.. "PK\u0003\u0004"u8]));

        static string Text(byte[] bytes) => TextFile.Read(bytes, "bytes").IsOk(out var text, out var problems) ? text : throw new InvalidOperationException(string.Join('\n', problems));
        static (string, int, int) Place(byte[] bytes) => Refused(TextFile.Read(bytes, "bytes")) is var problem ? (problem.Code, problem.At!.Line, problem.At.Column) : default;
    }

    [Theory]
    [InlineData("[", 100_000)]
    [InlineData("{a: ", 100_000)]
    [InlineData("- ", 100_000)]
    [InlineData("[", 13)]
    public void DeepNesting_IsRefused(string opening, int times)
    {
        var watch = Stopwatch.StartNew();
        var problem = Assert.Single(Problems(Head + "parts: " + (opening == "- " ? "\n" : "") + string.Concat(Enumerable.Repeat(opening, times))));
        Assert.Contains(problem.Code, new[] { "yaml-depth", "yaml-shape" });
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(10), $"{watch.Elapsed}");
    }

    [Fact]
    public void TwelveLevels_AreReadAndThirteenRefused()
    {
        Assert.DoesNotContain(Problems(Nested(12)), p => p.Code == "yaml-depth");
        Assert.Contains(Problems(Nested(13)), p => p.Code == "yaml-depth");

        static string Nested(int levels) => Head + "parts: " + new string('[', levels - 2) + "x" + new string(']', levels - 2);
    }

    [Fact]
    public void ABombOfAliases_IsRefusedAtItsFirstAnchor()
    {
        var bomb = new StringBuilder(Head).Append("parts:\n  a: &a [x,x,x,x,x,x,x,x,x]\n");
        for (var c = 'b'; c <= 'z'; c++)
            bomb.Append("  ").Append(c).Append(": &").Append(c).Append(" [").AppendJoin(',', Enumerable.Repeat($"*{(char)(c - 1)}", 9)).Append("]\n");

        var problem = Assert.Single(Problems(bomb.ToString()));
        Assert.Equal(("yaml-anchor", 3), (problem.Code, problem.At!.Line));
    }

    [Fact]
    public void ManyProblems_AreToldUpToAHundred()
    {
        var problems = Problems(Head + "parts:\n" + string.Concat(Enumerable.Range(0, 500).Select(i => $"  part-{i}: {{ colour: green }}\n")));
        Assert.Equal(ProblemList.Most + 1, problems.Count);
        Assert.Equal("more-problems", problems[^1].Code);
    }

    [Fact]
    public void MarkOfTheBeginningAndLineEnds_MakeNoDifference()
    {
        var plain = Read(Example);
        foreach (var bytes in new[] { Encoding.UTF8.GetBytes("\uFEFF" + Example), Encoding.UTF8.GetBytes(Example.ReplaceLineEndings("\r\n")) })
        {
            Assert.True(TextFile.Read(bytes, "example.yaml").IsOk(out var text, out _));
            Assert.Equal(EngineFile.Write(plain), EngineFile.Write(Read(text)));
        }
    }

    [Fact]
    public void LinesSaidTwice_AreKeptAsRepeats_AndAlwaysGetTheSameIdentifiers()
    {
        const string Lines = Head + "parts: { pump/body: {} }\ndimensions: { pump/body.depth: { new: [1.2530 in, 1.2540 in] } }\nreadings:\n"
            + "  - { of: pump/body.depth, value: 1.2535 }\n  - { of: pump/body.depth, value: 1.2535 }\n  - { of: pump/body.depth, value: 1.2536 }\n";
        var first = Read(Lines);
        var later = EngineFile.Read(Lines, "again.yaml", TestFiles.Terms with { At = TestFiles.Terms.At.PlusHours(5), By = "bench" }).IsOk(out var record, out _) ? record : null;

        Assert.Equal(3, first.Readings.Select(r => r.Id).Distinct().Count());
        Assert.Equal(first.Readings.Select(r => r.Id), later!.Readings.Select(r => r.Id));
        Assert.Equal(first.Choices.Select(r => r.Id), later.Choices.Select(r => r.Id));
        Assert.All(first.Readings, r => Assert.Equal(8, r.Id.Value.Version));
    }

    [Fact]
    public void AnAnswer_IsForItsLineOrForTheWholeFile()
    {
        const string Lines = Head + "parts: { pump/body: {} }\ndimensions: { pump/body.depth: { new: [1.2530 in, 1.2540 in] } }\nreadings:\n"
            + "  - { of: pump/body.depth, value: 1253.5 in }\n  - { of: pump/body.depth, value: 1254.5 in }\n";
        Assert.Equal(2, Problems(Lines).Count);

        var one = Answered(Lines, "slip-thousand-times-less@5");
        Assert.False(one.IsOk(out _, out var problems));
        Assert.Equal(6, Assert.Single(problems).At!.Line);
        Assert.True(Answered(Lines, "slip-thousand-times-less@5", "slip-as-typed@6").IsOk(out var mixed, out _));
        Assert.Equal([1.2535 * 0.0254, 1254.5 * 0.0254], mixed.Readings.Select(r => r.Value.Si), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.True(Answered(Lines, "slip-thousand-times-less").IsOk(out var all, out _));
        Assert.Equal(2, all.Readings.Count);

        static Outcome<EngineRecord> Answered(string text, params string[] codes) =>
            EngineFile.Read(text, "asked.yaml", TestFiles.Terms with { Confirmed = codes.ToHashSet(StringComparer.Ordinal) });
    }

    /// <summary>Letters of the example changed, doubled or dropped at random: it is read or refused with a place, and never breaks.</summary>
    [Theory]
    [InlineData("docs/engine-file.md", 4000)]
    [InlineData("docs/circuit.md", 2000)]
    public void AnExampleWithRandomSlips_IsReadOrRefused(string page, int times)
    {
        var example = TestFiles.Block(page, "yaml");
        var slip = Gen.Select(Gen.Int[0, example.Length - 1], Gen.Int[0, 5], Gen.Char["{}[]:,-#&*!|>'\"%@`~?\t\n \\0a9.="]);
        slip.Array[1, 6].Sample(
            slips =>
            {
                var text = new StringBuilder(example);
                foreach (var (at, way, letter) in slips)
                {
                    if (at >= text.Length)
                        continue;
                    _ = way switch
                    {
                        0 => text.Remove(at, 1),
                        1 => text.Insert(at, letter),
                        2 => text.Insert(at, text.ToString(at, Math.Min(40, text.Length - at))),
                        3 => text.Remove(at, Math.Min(40, text.Length - at)),
                        _ => text.Replace(text[at], letter, at, 1),
                    };
                }

                Whole(EngineFile.Read(text.ToString(), "slips.yaml", TestFiles.Terms));
            },
            iter: times,
            threads: 1);
    }

    [Fact]
    public void RandomBytes_AreReadOrRefused() => Gen.Byte.Array[0, 400].Sample(
        bytes =>
        {
            if (TextFile.Read(bytes, "random").IsOk(out var text, out _))
                Whole(EngineFile.Read(text, "random", TestFiles.Terms));
        },
        iter: 2000,
        threads: 1);

    [Fact]
    public void RandomMarks_AreReadOrRefused() => Gen.Char["{}[]:,-#&*!|>'\"%@`~?\t\n ab1"].Array[0, 60].Sample(
        letters => Whole(EngineFile.Read(Head + new string(letters), "marks", TestFiles.Terms)),
        iter: 5000,
        threads: 1);

    /// <summary>What is refused says where; what is read can be written and read again.</summary>
    private static void Whole(Outcome<EngineRecord> outcome)
    {
        if (outcome.IsOk(out var record, out var problems))
        {
            Assert.True(EngineFile.Read(EngineFile.Write(record), "again", TestFiles.Terms).IsOk(out _, out problems), string.Join('\n', problems));
            return;
        }

        Assert.NotEmpty(problems);
        Assert.All(problems.Where(p => p.Code != "more-problems"), p => Assert.True(p.At is { Line: > 0, Column: > 0 }, p.ToString()));
    }

    private static EngineRecord Read(string text)
    {
        Assert.True(EngineFile.Read(text, "good.yaml", TestFiles.Terms).IsOk(out var record, out var problems), string.Join('\n', problems));
        return record;
    }

    private static IReadOnlyList<Problem> Problems(string text)
    {
        Assert.False(EngineFile.Read(text, "hostile.yaml", TestFiles.Terms).IsOk(out _, out var problems));
        return problems;
    }

    private static Problem Refused(Outcome<string> outcome)
    {
        Assert.False(outcome.IsOk(out _, out var problems));
        return Assert.Single(problems);
    }

    private sealed class Endless : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)'a');
            return count;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
