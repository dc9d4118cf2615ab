using System.Runtime.CompilerServices;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

/// <summary>The blocks of <c>docs/scripts.md</c>, run as they stand there.</summary>
public sealed class ScriptsPageTests
{
    private const string StatusLine = "(exit status ";

    [Fact]
    public void ScriptsPage_EveryBlock_AnswersAsItStands()
    {
        var root = Path.Combine(Path.GetDirectoryName(Here())!, "..", "..");
        var folder = Path.Combine(Path.GetTempPath(), "thoubook-page-" + Guid.NewGuid().ToString("N"));
        Spoken.Here(folder, "demo", "--no-serve").Is(ExitStatus.Good);
        try
        {
            var commands = Commands(File.ReadAllLines(Path.Combine(root, "docs", "scripts.md")));
            Assert.True(commands.Count > 10, $"Only {commands.Count} command lines were found.");
            foreach (var (line, expected) in commands)
            {
                var words = ShellWords.Split(line)[1..].Select(w => w.StartsWith("docs/", StringComparison.Ordinal) ? Path.Combine(root, w) : w);
                var spoken = Spoken.Here(folder, [.. words]);
                var status = expected is [.., var last] && last.StartsWith(StatusLine, StringComparison.Ordinal) ? last[StatusLine.Length] - '0' : 0;
                Assert.True(spoken.Status == status, $"{line}\nexpected exit status {status}, got {spoken.Status}\n{spoken.Out}{spoken.Error}");
                var wanted = expected.Where(l => !l.StartsWith(StatusLine, StringComparison.Ordinal)).ToArray();
                Assert.True(Matches(wanted, spoken.Out.TrimEnd('\n').Split('\n')), $"{line}\nexpected:\n{string.Join('\n', wanted)}\n\ngot:\n{spoken.Out}");
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static List<(string Line, List<string> Expected)> Commands(IEnumerable<string> page)
    {
        var commands = new List<(string, List<string>)>();
        var inBlock = false;
        foreach (var line in page)
        {
            if (line.StartsWith("```", StringComparison.Ordinal))
                inBlock = line == "```console";
            else if (inBlock && line.StartsWith("$ ", StringComparison.Ordinal))
                commands.Add((line[2..], []));
            else if (inBlock)
                commands[^1].Item2.Add(line);
        }

        return commands;
    }

    /// <summary>Whether the lines agree, a line <c>…</c> standing for any number of them.</summary>
    private static bool Matches(ReadOnlySpan<string> wanted, ReadOnlySpan<string> got)
    {
        if (wanted.IsEmpty)
            return got.IsEmpty;
        if (wanted[0] != "…")
            return !got.IsEmpty && wanted[0] == got[0] && Matches(wanted[1..], got[1..]);
        for (var i = 0; i <= got.Length; i++)
        {
            if (Matches(wanted[1..], got[i..]))
                return true;
        }

        return false;
    }

    private static string Here([CallerFilePath] string here = "") => here;
}
