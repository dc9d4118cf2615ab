using Thoubook.Cli.Speaking;
using Thoubook.Record;

namespace Thoubook.Cli.Tests;

public sealed class CommandLineTests
{
    private static readonly Option Deep = new("deep", null, "a flag");
    private static readonly Option Out = new("output", "FILE", "a file") { Short = "-o" };
    private static readonly Verb One = new("one", "Takes one word.", (_, _) => ExitStatus.Good) { Operands = [new("WORD", "a word")], Options = [Deep, Out], Examples = [] };
    private static readonly Verb Many = new("many things", "Takes what is left.", (_, _) => ExitStatus.Good) { Operands = [new("FIRST", "the first"), new("REST", "the rest") { Rest = true }], Options = [Option.Confirm], Examples = [] };

    private static Request Read(params string[] words) => Request.Read(words, [One, Many]).IsOk(out var request, out var problems) ? request : throw new InvalidOperationException(problems[0].ToString());

    private static Problem Refused(params string[] words)
    {
        Assert.False(Request.Read(words, [One, Many]).IsOk(out _, out var problems));
        return Assert.Single(problems);
    }

    [Theory]
    [InlineData("-0.0005")]
    [InlineData("-.5thou")]
    [InlineData("-1/2")]
    [InlineData("-x")]
    [InlineData("-deep")]
    [InlineData("-")]
    [InlineData("--0.5")]
    [InlineData("--")]
    [InlineData("---")]
    [InlineData("−0.5")]
    [InlineData("")]
    public void Read_WordWithALeadingMinus_IsText(string word)
    {
        if (word == "--")
        {
            Assert.Equal(["--"], Read("one", "--", "--").Operands);
            return;
        }

        Assert.Equal([word], Read("one", word).Operands);
        Assert.Equal([word], Read("one", "--", word).Operands);
    }

    [Fact]
    public void Read_AfterTwoDashes_AllIsText()
    {
        var request = Read("many", "things", "a", "--", "--confirm", "-h", "--");
        Assert.Equal(["a", "--confirm", "-h", "--"], request.Operands);
        Assert.False(request.Has(Option.Confirm));
    }

    [Fact]
    public void Read_OptionsAnywhere_AreTaken()
    {
        var request = Read("--workshop", "here", "many", "things", "--confirm=a", "first", "--confirm", "-b", "second", "third");
        Assert.Equal("here", request[Option.Workshop]);
        Assert.Equal(["a", "-b"], request.All(Option.Confirm));
        Assert.Equal(["first", "second", "third"], request.Operands);
    }

    [Fact]
    public void Read_ShortOption_OnlyWhereTheVerbNamesIt()
    {
        Assert.Equal("x", Read("one", "w", "-o", "x")[Out]);
        Assert.Equal(["-o", "x"], Read("many", "things", "-o", "x").Operands);
    }

    [Fact]
    public void Read_UnknownOption_NamesTheNearest()
    {
        var problem = Refused("one", "w", "--depe");
        Assert.Equal("unknown-option", problem.Code);
        Assert.Contains("--deep", problem.DoThis, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_UnknownVerb_NamesTheNearest()
    {
        Assert.Contains("one", Refused("oen").DoThis, StringComparison.Ordinal);
        Assert.Contains("many things", Refused("many", "thing").DoThis, StringComparison.Ordinal);
        Assert.Contains("many things", Refused("many").Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ValueMissing_IsRefused()
    {
        Assert.Equal("option-value", Refused("one", "w", "--output").Code);
        Assert.Equal("option-value", Refused("one", "w", "--output", "--deep").Code);
        Assert.Equal("option-value", Refused("one", "w", "--deep=yes").Code);
    }

    [Fact]
    public void Read_OptionTwice_IsRefused() => Assert.Equal("option-twice", Refused("one", "w", "-o", "a", "--output", "b").Code);

    [Fact]
    public void Read_WrongNumberOfWords_IsRefused()
    {
        Assert.Equal("too-few", Refused("one").Code);
        Assert.Equal("too-few", Refused("many", "things", "first").Code);
        Assert.Equal("too-many", Refused("one", "a", "b").Code);
    }

    [Fact]
    public void Read_HelpWithTooFewWords_IsStillHelp() => Assert.True(Read("one", "--help").Has(Option.Help));
}
