using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

/// <summary>The examples in the help of closing up name what the demo has: a reader who types one sees it work.</summary>
public sealed class CloseupExamplesTests(DemoShop shop) : IClassFixture<DemoShop>
{
    public static TheoryData<string> Lines => [.. Command.Verbs.Where(v => v.Name.StartsWith("closeup ", StringComparison.Ordinal)).SelectMany(v => v.Examples).Select(e => e.Line).Where(l => l.Contains(DemoShop.Engine, StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Lines))]
    public void Example_NamesWhatIsThere(string line)
    {
        var spoken = shop.Says([.. ShellWords.Split(line)[1..]]);

        Assert.True(spoken.Status is 0 or 1 or 2, spoken.Error);
        foreach (var sign in new[] { "of that name", "Did you mean", "has the hold points", "with that identifier", "Name a ", "Name one of" })
            Assert.DoesNotContain(sign, spoken.Error, StringComparison.Ordinal);
    }
}
