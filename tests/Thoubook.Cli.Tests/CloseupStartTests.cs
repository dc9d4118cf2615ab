using Thoubook.Cli.Speaking;
using Thoubook.Workshop.Starters;

namespace Thoubook.Cli.Tests;

public sealed class CloseupStartTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("thoubook-begin-").FullName;

    public CloseupStartTests()
    {
        var file = Path.Combine(_folder, "engine.yaml");
        File.WriteAllText(file, "engine: { name: Curlew, purpose: stand-run }\nparts: { oil-pump/body: {}, oil-pump/gasket: {}, oil-pump/film: {} }\n");
        Spoken.Here(_folder, "import", file).Is(ExitStatus.Good);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void CloseupStart_ListsTheStarters_AndWhatEachAsks()
    {
        var listed = Spoken.Here(null, "closeup", "start").Is(ExitStatus.Good).Out;
        Assert.All(Starter.All, s => Assert.Contains(s.Words, listed, StringComparison.Ordinal));
        Assert.Contains("film of jointing, gasket", Spoken.Here(null, "closeup", "start", "Curlew", "gear-pump", "--questions").Is(ExitStatus.Good).Out, StringComparison.Ordinal);
        Assert.Equal(Starter.All.Count, Spoken.Here(null, "closeup", "start", "--json").Is(ExitStatus.Good).Json.GetArrayLength());
        var asked = Spoken.Here(null, "closeup", "start", "Curlew", "gear-pump", "--questions", "--json").Is(ExitStatus.Good).Json[0];
        Assert.Equal(12, asked.GetProperty("questions").GetArrayLength());
    }

    [Fact]
    public void CloseupStart_AsksWhereTwoPartsMayBeMeant_SeesFirst_ThenAdds()
    {
        string[] words = ["closeup", "start", "Curlew", "gear-pump", "seal=gasket", "screws=8", "--json"];
        var asked = Spoken.Here(_folder, words).Is(ExitStatus.BadInput);
        Assert.Contains("oil-pump/joint=oil-pump/gasket", asked.Out + asked.Error, StringComparison.Ordinal);

        var seen = Spoken.Here(_folder, [.. words, "--confirm", "oil-pump/joint=oil-pump/gasket", "--see"]).Is(ExitStatus.Good).Json;
        Assert.False(seen.GetProperty("written").GetBoolean());
        Assert.Equal("oil-pump/gasket", seen.GetProperty("taken")[0].GetProperty("there").GetString());
        Assert.DoesNotContain("steps:", Spoken.Here(_folder, "export", "Curlew").Is(ExitStatus.Good).Out, StringComparison.Ordinal);

        var added = Spoken.Here(_folder, [.. words, "--confirm", "oil-pump/joint=oil-pump/gasket", "--by", "owner"]).Is(ExitStatus.Good).Json;
        Assert.True(added.GetProperty("written").GetBoolean());
        var exported = Spoken.Here(_folder, "export", "Curlew").Is(ExitStatus.Good).Out;
        Assert.Contains("number: 8", exported, StringComparison.Ordinal);
        Assert.Contains("oil-pump/cover-on:", exported, StringComparison.Ordinal);
    }

    [Fact]
    public void CloseupStart_ToldInWords_SaysWhatItTookAndLeft()
    {
        var told = Spoken.Here(_folder, "closeup", "start", "Curlew", "gear-pump", "oil-pump/joint=oil-pump/film", "--by", "owner").Is(ExitStatus.Good);
        Assert.Matches("(?m)^oil-pump/cover-on +close ", told.Out);
        Assert.Contains("Taken: oil-pump/film for oil-pump/joint.", told.Out, StringComparison.Ordinal);
        Assert.Contains("Left as it is: part oil-pump", told.Out, StringComparison.Ordinal);
        Assert.Contains("steps added", told.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gear-pomp", "seal=gasket", "Did you mean gear-pump?")]
    [InlineData("gear-pump", "seal", "KEY=VALUE")]
    [InlineData("gear-pump", "seel=gasket", "Did you mean seal?")]
    [InlineData("gear-pump", "screws=100", "from 2 to 40")]
    [InlineData("gear-pump", "at=Pump", "small letters")]
    public void CloseupStart_Wrong_IsRefused(string starter, string answer, string says) =>
        Assert.Contains(says, Spoken.Here(_folder, "closeup", "start", "Curlew", starter, answer, "oil-pump/joint=oil-pump/film").Is(ExitStatus.BadInput).Error, StringComparison.Ordinal);
}
