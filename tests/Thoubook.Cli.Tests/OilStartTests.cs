using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

public sealed class OilStartTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-start-").FullName;

    public OilStartTests()
    {
        var file = Path.Combine(_folder, "engine.yaml");
        File.WriteAllText(file, "engine: { name: Curlew, purpose: stand-run }\nparts: { crankcase/main-1: {} }\nfits: { crankcase/main-1.oil-clearance: { new: [2 thou, 3 thou] } }\n");
        Spoken.Here(_folder, "import", file).Is(ExitStatus.Good);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void OilStart_DrawsTheCircuit_AndSaysWhatIsAssumed()
    {
        var spoken = Spoken.Here(_folder, "oil", "start", "Curlew", "mains=2", "relief=reducing valve", "timing-jets=1", "--by", "owner").Is(ExitStatus.Good);

        Assert.Contains("reducing-valve", spoken.Out, StringComparison.Ordinal);
        Assert.Matches("(?m)^main-1 .*grooved bearing .*land", spoken.Out);
        var exported = Spoken.Here(_folder, "export", "Curlew").Is(ExitStatus.Good).Out;
        Assert.Contains("crankcase/main-2.oil-clearance:", exported, StringComparison.Ordinal);
        Assert.Contains("clearance: oil-clearance", exported, StringComparison.Ordinal);
        Assert.Contains("circuit already", Spoken.Here(_folder, "oil", "start", "Curlew").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void OilStart_Questions_AreListed()
    {
        var spoken = Spoken.Here(_folder, "oil", "start", "--questions").Is(ExitStatus.Good);
        Assert.Contains("single, cascade, reducing valve, jet and relief", spoken.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mains", "KEY=VALUE")]
    [InlineData("mians=2", "Did you mean mains?")]
    [InlineData("mains=40", "from 1 to 16")]
    public void OilStart_Wrong_IsRefused(string answer, string says) =>
        Assert.Contains(says, Spoken.Here(_folder, "oil", "start", "Curlew", answer).Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);

    [Fact]
    public void OilStart_WithoutAnEngine_SaysSo() =>
        Assert.Contains("ENGINE", Spoken.Here(_folder, "oil", "start").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
}
