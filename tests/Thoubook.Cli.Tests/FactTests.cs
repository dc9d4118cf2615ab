using System.Text.Json;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

public sealed class FactTests
{
    private static readonly string[] Reading = ["reading", "add", Bench.Engine, Bench.Depth];

    [Fact]
    public void ReadingAdd_SentTwiceWithOneIdentifier_IsStoredOnce()
    {
        using var bench = new Bench();
        const string id = "01932c5e-0000-7000-8000-0000000000aa";
        for (var i = 0; i < 2; i++)
            Assert.Equal(id, bench.Says([.. Reading, "1.2535", "--by", "owner", "--at", "2026-11-01T11:00:00+00:00", "--id", id]).Is(ExitStatus.Good).Out.Trim());
        Assert.Single(Listed(bench, Bench.Depth));
    }

    [Fact]
    public void ReadingAdd_LeadingMinus_IsPartOfTheValue()
    {
        using var bench = new Bench();
        bench.Says("reading", "add", Bench.Engine, Bench.EndFloat, "-0.5thou", "--method", "feeler", "--by", "owner").Is(ExitStatus.Good);
        Assert.Equal(-1.27e-5, Assert.Single(Listed(bench, Bench.EndFloat)).GetProperty("value").GetDouble(), 1e-15);
    }

    [Fact]
    public void ReadingAdd_ThousandTimesOff_AsksAndTakesTheAnswer()
    {
        using var bench = new Bench();
        var asked = bench.Says([.. Reading, "1253.5", "--by", "owner", "--json"]).Is(ExitStatus.BadInput).Json;
        var codes = asked.GetProperty("codes").EnumerateArray().Select(c => c.GetString()!).ToArray();
        Assert.Empty(Listed(bench, Bench.Depth));
        var thou = Assert.Single(codes, c => c.Contains("thou", StringComparison.Ordinal));
        var recorded = bench.Says([.. Reading, "1253.5", "--by", "owner", "--json", "--confirm", thou]).Is(ExitStatus.Good).Json;
        Assert.Equal(1.2535 * 0.0254, recorded.GetProperty("value").GetDouble(), 1e-12);
    }

    [Theory]
    [InlineData("1.2.3")]
    [InlineData("1.2535 psi")]
    [InlineData("=1+1")]
    [InlineData("one")]
    public void ReadingAdd_BadValue_IsRefusedAndNothingIsWritten(string value)
    {
        using var bench = new Bench();
        var spoken = bench.Says([.. Reading, value, "--by", "owner"]).Is(ExitStatus.BadInput);
        Assert.StartsWith("thoubook: value: found ", spoken.Error, StringComparison.Ordinal);
        Assert.Empty(Listed(bench, Bench.Depth));
    }

    [Theory]
    [InlineData("--at", "yesterday")]
    [InlineData("--id", "17")]
    [InlineData("--method", "eye")]
    [InlineData("--temp", "19 mm")]
    [InlineData("--gauge", "M-9")]
    public void ReadingAdd_BadOption_IsRefusedAndNothingIsWritten(string option, string value)
    {
        using var bench = new Bench();
        bench.Says([.. Reading, "1.2535", "--by", "owner", option, value]).Is(ExitStatus.BadInput);
        Assert.Empty(Listed(bench, Bench.Depth));
    }

    [Fact]
    public void ReadingAdd_Lines_AreAcknowledgedOneByOne()
    {
        using var bench = new Bench();
        const string lines = """
            # depths of the body
            pump/body.depth 1.2535 --place A1 --gauge M-1
            pump/body.depth 1.2534 in --place A2 --note "second try"

            pump/driver.width -x
            pump/driver.width 1.2511 --place B1
            """;
        var spoken = Spoken.RunIn(bench.Folder, lines, "reading", "add", Bench.Engine, "--from", "-", "--by", "bench", "--temp", "20 °C").Is(ExitStatus.BadInput);
        var ids = spoken.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(3, ids.Length);
        Assert.Contains("standard input(5,1)", spoken.Error, StringComparison.Ordinal);
        var listed = Listed(bench, null).ToDictionary(r => r.GetProperty("id").GetString()!);
        Assert.Equal("A1", listed[ids[0]].GetProperty("place").GetString());
        Assert.Equal("second try", listed[ids[1]].GetProperty("note").GetString());
        Assert.Equal("bench", listed[ids[2]].GetProperty("by").GetString());
        Assert.Equal("20 °C", listed[ids[2]].GetProperty("temperature").GetString());
    }

    [Fact]
    public void ReadingAdd_EachIdentifier_IsPrintedWhenItsReadingIsStored()
    {
        using var bench = new Bench();
        using var process = Spoken.Start(bench.Folder, "reading", "add", Bench.Engine, "--from", "-", "--by", "bench");
        try
        {
            for (var i = 0; i < 5; i++)
            {
                process.StandardInput.WriteLine($"{Bench.Depth} 1.253{i} --place A{i}");
                process.StandardInput.Flush();
                var id = process.StandardOutput.ReadLine();
                Assert.Contains(Listed(bench, Bench.Depth), r => r.GetProperty("id").GetString() == id);
            }
        }
        finally
        {
            process.Kill();
            process.WaitForExit();
        }

        Assert.Equal(5, Listed(bench, Bench.Depth).Length);
        bench.Says("verify").Is(ExitStatus.Good);
    }

    [Fact]
    public void ReadingAdd_TableFromStandardInput_IsAcknowledgedLineByLineAndStoredOnce()
    {
        using var bench = new Bench();
        string[] words = ["reading", "add", Bench.Engine, "--from", "-", "--by", "bench"];
        const string table = "of,place,value [in],gauge,temperature [°C]\npump/body.depth,A1,1.2535,M-1,19\npump/body.depth,A2,1.2.3,M-1,19\npump/body.depth,A2,1.2536,M-1,19\n";
        var spoken = Spoken.RunIn(bench.Folder, table, words).Is(ExitStatus.BadInput);
        Assert.Contains("standard input(3,", spoken.Error, StringComparison.Ordinal);
        var ids = spoken.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(ids, Listed(bench, Bench.Depth).Select(r => r.GetProperty("id").GetString()));
        Assert.Equal(2, ids.Length);
        Assert.Equal(spoken.Out, Spoken.RunIn(bench.Folder, table, words).Out);
        Assert.Equal(2, Listed(bench, Bench.Depth).Length);
        Spoken.Here(table, bench.Folder, [.. words, "--place", "A1"]).Is(ExitStatus.BadInput);
    }

    [Fact]
    public void ReadingAdd_LinesWithoutEnd_AreNotReadWhole()
    {
        using var bench = new Bench();
        var spoken = Spoken.Here(new string('9', 1_000_000), bench.Folder, ["reading", "add", Bench.Engine, "--from", "-", "--by", "bench"]).Is(ExitStatus.BadInput);
        Assert.Contains("more than 4096 characters", spoken.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ReadingStrike_StaysVisibleAndIsUndoneByStrikingTheStrikeOut()
    {
        using var bench = new Bench();
        var id = bench.Says([.. Reading, "1.2545", "--by", "owner"]).Is(ExitStatus.Good).Out.Trim();
        bench.Says("reading", "strike", Bench.Engine, id, "--by", "owner").Is(ExitStatus.BadInput);
        var strike = bench.Says("reading", "strike", Bench.Engine, id, "--why", "wrong piece", "--by", "owner").Is(ExitStatus.Good).Out.Trim();
        var struck = Assert.Single(Listed(bench, Bench.Depth));
        Assert.False(struck.GetProperty("stands").GetBoolean());
        Assert.Contains("wrong piece", struck.GetProperty("why").GetString(), StringComparison.Ordinal);
        Assert.Equal("not measured", VerdictOfDepth(bench));
        bench.Says("reading", "strike", Bench.Engine, strike, "--why", "it was the right one", "--by", "owner").Is(ExitStatus.Good);
        Assert.True(Assert.Single(Listed(bench, Bench.Depth)).GetProperty("stands").GetBoolean());
        Assert.Equal("within worn limits", VerdictOfDepth(bench));
    }

    [Fact]
    public void Piece_ChosenPlacedAndLifted()
    {
        using var bench = new Bench(Bench.TestPump + "\npieces: { P-1: { for: pump/body }, P-2: { for: pump/body } }\n");
        foreach (var verb in (string[])["choose", "place"])
            Assert.True(Guid.TryParse(bench.Says("piece", verb, Bench.Engine, "P-1", "pump/body", "--by", "owner").Is(ExitStatus.Good).Out.Trim(), out _));
        bench.Says([.. Reading, "1.2535", "--piece", "P-2", "--by", "owner"]).Is(ExitStatus.Good);
        Assert.Equal("not measured", VerdictOfDepth(bench));
        bench.Says("piece", "choose", Bench.Engine, "P-2", "pump/body", "--by", "owner").Is(ExitStatus.Good);
        Assert.NotEqual("not measured", VerdictOfDepth(bench));
        bench.Says("piece", "lift", Bench.Engine, "P-1", "--why", "to lap it", "--by", "machinist").Is(ExitStatus.Good);
        Assert.Contains("Did you mean P-", bench.Says("piece", "choose", Bench.Engine, "P-3", "pump/body", "--by", "owner").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
        bench.Says("piece", "choose", Bench.Engine, "P-1", "pump/bdy", "--by", "owner").Is(ExitStatus.BadInput);
    }

    [Fact]
    public void Verify_DamagedStore_FallsShort()
    {
        using var bench = new Bench();
        Assert.True(bench.Says("verify", "--json").Is(ExitStatus.Good).Json.GetProperty("sound").GetBoolean());
        var file = Path.Combine(bench.Folder, "workshop.db");
        using (var stream = new FileStream(file, FileMode.Open))
        {
            stream.Position = stream.Length / 2;
            stream.Write(new byte[(int)(stream.Length / 4)]);
        }

        var spoken = bench.Says("verify");
        Assert.True(spoken.Status is (int)ExitStatus.FallsShort or (int)ExitStatus.Broke, $"{spoken.Status}: {spoken.Out}{spoken.Error}");
        Assert.NotEmpty(spoken.Out + spoken.Error);
    }

    [Theory]
    [InlineData("engines")]
    [InlineData("verify")]
    [InlineData("appraise", "Test pump")]
    [InlineData("export", "Test pump")]
    [InlineData("reading", "list", "Test pump")]
    public void NoWorkshop_IsSaidAndNoneIsMade(params string[] words)
    {
        var nowhere = Path.Combine(Path.GetTempPath(), "thoubook-" + Guid.NewGuid().ToString("N"));
        var spoken = Spoken.Here(null, [.. words, "--workshop", nowhere]).Is(ExitStatus.BadInput);
        Assert.Contains("no workshop", spoken.Error, StringComparison.Ordinal);
        Assert.False(Path.Exists(nowhere));
    }

    [Fact]
    public void WorkshopThatIsAnotherFile_IsRefusedInWords()
    {
        using var bench = new Bench();
        File.WriteAllText(Path.Combine(bench.Folder, "workshop.db"), new string('x', 5000));
        Spoken.RunIn(bench.Folder, null, "engines").Is(ExitStatus.BadInput);
    }

    [Fact]
    public void Export_IsTheEngineFile_AndNeverOverwrites()
    {
        using var bench = new Bench();
        var text = bench.Says("export", Bench.Engine).Is(ExitStatus.Good).Out;
        Assert.Contains("name: Test pump", text, StringComparison.Ordinal);
        var file = Path.Combine(bench.Folder, "out.yaml");
        bench.Says("export", Bench.Engine, "-o", file).Is(ExitStatus.Good);
        Assert.Equal(text, File.ReadAllText(file).ReplaceLineEndings("\n"));
        bench.Says("export", Bench.Engine, "-o", file).Is(ExitStatus.BadInput);
    }

    [Fact]
    public void ReadingList_InWords_AsApproved()
    {
        using var bench = new Bench();
        bench.Says([.. Reading, "1.2535", "--place", "A1", "--by", "owner", "--at", "2026-11-01T11:00:00+00:00", "--id", "01932c5e-0000-7000-8000-0000000000aa"]).Is(ExitStatus.Good);
        Approved.Check("reading-list", bench.Says("reading", "list", Bench.Engine, Bench.Depth).Out);
    }

    private static JsonElement[] Listed(Bench bench, string? figure) =>
        [.. bench.Says(figure is null ? ["reading", "list", Bench.Engine, "--json"] : ["reading", "list", Bench.Engine, figure, "--json"]).Is(ExitStatus.Good).Json.EnumerateArray()];

    private static string VerdictOfDepth(Bench bench) =>
        bench.Says("appraise", Bench.Engine, "--json").Json.GetProperty("dimensions").EnumerateArray().Single(d => d.GetProperty("name").GetString() == Bench.Depth).GetProperty("verdict").GetString()!;
}
