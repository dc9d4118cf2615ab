using Thoubook.Cli.Speaking;
using Thoubook.Record;

namespace Thoubook.Cli.Tests;

public sealed class HelpTests
{
    public static TheoryData<string> Verbs => [.. Command.Verbs.Select(v => v.Name)];

    [Fact]
    public void Help_Overview_AsApproved() => Approved.Check("help", Spoken.Here(null, "--help").Is(ExitStatus.Good).Out);

    [Theory]
    [MemberData(nameof(Verbs))]
    public void Help_OfEachVerb_AsApproved(string verb)
    {
        var help = Spoken.Here(null, [.. verb.Split(' '), "--help"]).Is(ExitStatus.Good).Out;
        Assert.Contains("Examples\n  thoubook ", help, StringComparison.Ordinal);
        Approved.Check("help-" + verb.Replace(' ', '-'), help);
    }

    [Theory]
    [MemberData(nameof(Verbs))]
    public void Help_Examples_AreCommandLinesThatAreUnderstood(string verb)
    {
        foreach (var example in Command.Verbs.Single(v => v.Name == verb).Examples)
        {
            var words = ShellWords.Split(example.Line);
            Assert.Equal("thoubook", words[0]);
            Assert.True(Request.Read(words[1..], Command.Verbs).IsOk(out var request, out var problems), problems is [var first, ..] ? $"{example.Line}: {first}" : "");
            Assert.Equal(verb, request.Verb.Name);
        }
    }

    [Theory]
    [InlineData("oil", "--help")]
    [InlineData("oil", "-h")]
    [InlineData("help", "oil")]
    public void Help_OfVerbsThatBeginWithOneWord_ListsThem(params string[] words)
    {
        var help = Spoken.Here(null, words).Is(ExitStatus.Good).Out;
        Assert.All(Command.Verbs, v => Assert.Equal(v.Name.StartsWith("oil ", StringComparison.Ordinal), help.Contains(v.Purpose, StringComparison.Ordinal)));
        Assert.Contains("thoubook oil start --help", help, StringComparison.Ordinal);
    }

    [Fact]
    public void NoWords_SayWhatThereIs_AndAreAFault()
    {
        var spoken = Spoken.Here(null).Is(ExitStatus.BadInput);
        Assert.Empty(spoken.Out);
        Assert.Contains("thoubook VERB", spoken.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_NamesEveryMethodOfACheck()
    {
        var help = Spoken.Here(null, "reading", "add", "--help").Out;
        Assert.All(Words.All<CheckMethod>(), word => Assert.Contains(word, help, StringComparison.Ordinal));
    }
}
