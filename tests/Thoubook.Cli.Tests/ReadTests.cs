using Thoubook.Cli.Speaking;
using Thoubook.Record.Quantities;
using Thoubook.Record.Tests.Quantities;

namespace Thoubook.Cli.Tests;

/// <summary>The command as a door for measured quantities: the strings that every door shares.</summary>
public sealed class ReadTests
{
    /// <summary>The contexts that a command line can stand in: nothing known, or a figure of an engine that has such limits.</summary>
    private static readonly Dictionary<string, string[]> Doors = new()
    {
        ["none"] = [],
        ["size"] = ["--engine", "Doors", "--for", "part.size"],
        ["size-mm"] = ["--engine", "Doors", "--for", "part.size-mm"],
        ["ovality"] = ["--engine", "Doors", "--for", "part.ovality"],
        ["clearance"] = ["--engine", "Doors", "--for", "part.clearance"],
        ["clearance-thou"] = ["--engine", "Doors", "--for", "part.clearance-thou"],
        ["pressure-limits"] = ["--engine", "Doors", "--for", "part.pressure"],
    };

    private const string Engine = """
        engine: { name: Doors, purpose: display }
        parts: { part: {} }
        dimensions:
          part.size: { new: [1.2530 in, 1.2560 in] }
          part.size-mm: { new: [80.00 mm, 80.12 mm] }
          part.ovality: { worn: 0.001 in, wear: grows }
          part.pressure: { kind: pressure, new: [40 psi, 60 psi] }
        fits:
          part.clearance: { new: [0.0015 in, 0.005 in] }
          part.clearance-thou: { new: [1.5 thou, 5 thou] }
        """;

    [Fact]
    public void Read_EveryStringOfTheCorpus_IsReadRefusedOrAskedAsAtEveryDoor()
    {
        using var bench = new Bench(Engine);
        var tried = 0;
        foreach (var row in QuantityCorpus.Strings.Where(r => Doors.ContainsKey(r.Context) && !OnlyAFitMayCarry(r)))
        {
            Check(row, Spoken.Here(bench.Folder, Words(row)));
            tried++;
        }

        Assert.True(tried > 450, $"Only {tried} strings were tried.");
    }

    /// <summary>By itself the command does not know what a figure is of: what only a fit may carry is read as a fit's.</summary>
    [Theory]
    [InlineData("0.0005T in", -1.27e-5)]
    [InlineData("0.0015 in L", 3.81e-5)]
    [InlineData("(0.5 thou)", -1.27e-5)]
    [InlineData("0.0005 in tight", -1.27e-5)]
    public void Read_OfNothingInParticular_TakesTightAndLoose(string text, double expected) =>
        Assert.Equal(expected, Spoken.Here("", ["read", "--json", "--", text]).Is(ExitStatus.Good).Json.GetProperty("value").GetDouble(), 1e-12);

    private static bool OnlyAFitMayCarry(CorpusString row) => row is { Context: "none", Codes: ["tight-loose-not-here" or "brackets-not-here"] };

    [Fact]
    public void Read_ByTheProgramItself_IsTheSame()
    {
        foreach (var row in QuantityCorpus.Strings.Where(r => r.Context == "none" && r.Text.Length > 0 && !OnlyAFitMayCarry(r)).Where((_, i) => i % 40 == 0))
            Check(row, Spoken.Run(Words(row)));
    }

    [Fact]
    public void Read_LeadingMinus_NeedsNoDashes()
    {
        var rows = QuantityCorpus.Strings.Where(r => r.Context == "none" && r.Text.StartsWith('-') && !r.Text.StartsWith("--", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(rows);
        foreach (var row in rows)
            Check(row, Spoken.Here(null, ["read", "--json", row.Text, .. row.Confirm.SelectMany(c => (string[])["--confirm", c])]));
    }

    [Fact]
    public void Read_WordsWithoutQuotes_AreOneText()
    {
        var answer = Spoken.Run("read", "45", "lbf", "ft", "--json").Is(ExitStatus.Good).Json;
        Assert.Equal("N m", answer.GetProperty("unit").GetString());
        Assert.Equal("torque", answer.GetProperty("quantity").GetString());
        Assert.Equal(45 * 4.4482216152605 * 0.3048, answer.GetProperty("value").GetDouble(), 1e-9);
        Assert.Contains("45 lbf ft", answer.GetProperty("understood").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-0.0005", ExitStatus.BadInput)]
    [InlineData("-0.0005 in", ExitStatus.Good)]
    [InlineData("-.5thou", ExitStatus.Good)]
    [InlineData("-x", ExitStatus.BadInput)]
    public void Read_Minus_ByTheProgramItself(string text, object status)
    {
        Spoken.Run("read", text).Is((ExitStatus)status);
        Spoken.Run("read", "--", text).Is((ExitStatus)status);
    }

    [Fact]
    public void Read_ForWithoutEngine_IsRefused() => Spoken.Here(null, "read", "1", "--for", "a.b").Is(ExitStatus.BadInput);

    [Fact]
    public void Read_InWords_SaysWhatWasUnderstood()
    {
        Approved.Check("read", Spoken.Here(null, "read", "2.5 thou").Is(ExitStatus.Good).Out);
        Approved.Check("read-asked", Spoken.Here(null, "read", "2.5").Is(ExitStatus.BadInput).Error);
        Approved.Check("read-refused", Spoken.Here(null, "read", "1.2.3 mm").Is(ExitStatus.BadInput).Error);
    }

    private static string[] Words(CorpusString row) => ["read", "--json", .. Doors[row.Context], .. row.Confirm.SelectMany(c => (string[])["--confirm", c]), "--", row.Text];

    private static void Check(CorpusString row, Spoken spoken)
    {
        try
        {
            var answer = spoken.Is(row.Outcome == "ok" ? ExitStatus.Good : ExitStatus.BadInput).Json;
            switch (row.Outcome)
            {
                case "ok":
                    Assert.Equal(row.Si!.Value, answer.GetProperty("value").GetDouble(), Math.Abs(row.Si.Value) * 1e-12);
                    Assert.Equal(TradeUnit.Default(TradeUnit.FromCode(row.Unit)!.Kind).Symbol, answer.GetProperty("unit").GetString());
                    Assert.NotEmpty(answer.GetProperty("understood").GetString()!);
                    break;
                case "ask":
                    Assert.Equal(row.Codes, answer.GetProperty("codes").EnumerateArray().Select(c => c.GetString()));
                    Assert.Equal(row.Codes[0], answer.GetProperty("code").GetString());
                    Assert.Equal(row.Codes.Length, answer.GetProperty("ask").GetArrayLength());
                    break;
                default:
                    Assert.NotEmpty(answer.GetProperty("refused").GetString()!);
                    Assert.Equal(row.Codes, answer.GetProperty("problems").EnumerateArray().Select(p => p.GetProperty("code").GetString()));
                    break;
            }
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            throw new InvalidOperationException($"{row}: {e.Message}", e);
        }
    }
}
